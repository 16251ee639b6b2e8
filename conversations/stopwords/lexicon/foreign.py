"""The gravest words in other languages: a client in pain falls back on the first one they learnt.

German, Spanish, French, Italian, Portuguese, Lithuanian, Polish, Russian. Accents need not be typed.
"""

EMERGENCY = """
brust|brustkorb .. schmerz|schmerzen|weh|eng|druck|tut; schmerz|schmerzen|druck|enge|stechen .. brust
brustschmerz|brustschmerzen
keine luft; kann nicht|kaum atmen; kriege|bekomme kaum|keine luft; atemnot; ohnmachtig; bewusstlos
schlaganfall; herzinfarkt
notarzt|rettungswagen|krankenwagen
pecho .. duele|dolor|presion|aprieta; duele|dolor|presion .. pecho; no puedo respirar; me ahogo
falta .. aire; me .. desmayado|desmayada; me desmaye; me desmaye
infarto; ambulancia; derrame cerebral
poitrine .. mal|douleur|serre; mal|douleur|serrement .. poitrine; peux pas|plus respirer; jetouffe|metouffe
manque air; respire plus
jarrive|narrive pas|plus .. respirer; evanoui|evanouie; infarctus; ambulance
petto .. male|dolore|fa|oppresso; male|dolore|oppressione .. petto; non riesco .. respirare; non respiro
manca .. aria
svenuto|svenuta; ambulanza
peito .. doi|dor|dores|aperta; doi|dor|dores|aperto .. peito; dor|dores|aperto|pressao no peito
nao consigo respirar; falta .. ar; desmaiei; ambulancia
krutine|krutineje|krutines .. skauda|spaudzia|degina; skauda|spaudzia|skausmas .. krutine|krutineje|krutines
negaliu|sunku .. kvepuoti|ikvepti; trukst .. oro; dustu; apalpau|nualpau|apalpusi|nualpusi|apalpes|nualpes; insultas|infarktas
greitoji|greitaja
klatka|klatce|klatke .. boli|bol|piersiowa; boli|bol .. klatka|klatce|klatke|piersiach; nie moge oddychac; nie oddycham
brak .. tchu|powietrza
dusze sie; zemdlalem|zemdlalam; udar|zawal; karetka|pogotowie
mund|mundwinkel|gesicht .. schief|hangt|taub|gelahmt; halb|halbseitig gelahmt; lalle|lallt|lallen
kann .. nicht .. sprechen|reden; schlimmste|schlimmsten|plotzlich|plotzliche .. kopfschmerz|kopfschmerzen|kopfweh
cara|boca|rostro .. torcida|torcido|caida|caido|dormida|dormido|paralizada; no puedo hablar
peor|repentino .. dolor de cabeza; dolor de cabeza .. repentino|explosivo|insoportable
visage|bouche .. tombe|tordu|tordue|paralyse|paralysee|engourdi|engourdie; peux pas|plus parler; narrive pas|plus a parler
pire|soudain mal de tete; mal de tete .. soudain|brutal|insupportable
viso|bocca|faccia .. storta|storto|cade|paralizzato|paralizzata; non riesco .. parlare; peggior|improvviso mal di testa
cara|boca|rosto .. torta|torto|caida|dormente|paralisada; nao consigo falar; pior|subita dor de cabeca
veidas|burna .. perkreiptas|perkreipta|persikreipe|iskrypo|nusviro|nutirpes; negaliu .. kalbeti
staigus|baisus|baisiausias galvos skausmas
twarz|usta|kacik .. krzywa|krzywe|wykrzywiona|wykrzywione|opada|opadla|zdretwiala; nie moge .. mowic; belkocze
najgorszy|nagly bol glowy
лицо|рот|губа .. перекосило|перекошено|перекошен|онемело|обвисло|опустился; не могу говорить; язык .. заплетается
самая|внезапная|резкая .. головная боль
груди|грудь|грудная .. болит|боль|давит|жжет; болит|боль|давит|жжет .. груди|грудь; не могу дышать|вдохнуть
задыхаюсь
трудно|тяжело дышать; потерял|потеряла сознание; в обморок|обмороке; инсульт|инфаркт; скорая|скорую
"""

FAINT = """
schwindelig|schwindlig|schwindel; mir .. ubel|schlecht|schwarz; schwarz vor; herzrasen; herz rast|stolpert
mareado|mareada|mareo|mareos; nauseas; ganas de vomitar; todo .. vueltas; veo|vi estrellas|negro
corazon .. rapido|acelerado|salta
vertige|vertiges|etourdi|etourdie; tete .. tourne; tournee; nausee|nausees; envie de vomir
vois|voyais flou|noir|etoiles
coeur .. vite|emballe|saute
capogiro|capogiri|vertigini; gira .. testa; testa .. gira; nausea; voglia di vomitare
cuore .. forte|allimpazzata|impazzata; sto per svenire
tontura|tonturas|tonto|tonta; enjoo|enjoado|enjoada; vontade de vomitar; coracao .. rapido|acelerado
vou desmaiar
svaigsta|svaigulys|svaigulis; pykina; silpna darosi; darosi silpna|bloga; bloga man; man bloga
aptemo|temsta .. akyse|akys; sirdis .. dauzosi|daužosi|permusa
kreci|zawroty .. glowie|glowy; kreci mi; niedobrze|mdli; ciemno .. oczami; zaraz zemdleje
serce .. wali|kolacze
кружится .. голова; голова .. кружится; головокружение; тошнит; мутит; темнеет|потемнело .. глазах
сейчас упаду; сердце .. колотится|бьется|выскакивает
"""

NERVE = """
taub|taube|tauber|taubes|tauben|taubheit|kribbelt|kribbeln|ameisenlaufen; eingeschlafen .. hand|arm|arme|bein|beine|fuss|finger
hand|arm|bein|fuss|finger .. eingeschlafen
spure|fuhle .. nicht|nichts|kaum; kein gefuhl
hormigueo|hormigueos|entumecido|entumecida|entumecidos|entumecidas
adormecido|adormecida|adormecidos|adormecidas; se me duerme|durmio|duermen
dormida|dormido .. mano|brazo|pierna|pie
mano|brazo|pierna|pie|dedos .. dormida|dormido|dormidos
no siento .. mano|manos|brazo|brazos|pierna|piernas|pie|pies|dedos
insensible|insensibles .. main|mains|bras|jambe|pied|pieds|doigts; main|mains|bras|jambe|pied|doigts .. insensible|insensibles
engourdi|engourdie|engourdis|engourdies|engourdissement; fourmis|fourmille|fourmillements|picotements
sens plus .. main|mains|bras|jambe|jambes|pied|pieds|doigts
endormi|endormie .. main|bras|jambe|pied; main|bras|jambe|pied .. endormi|endormie
intorpidito|intorpidita|intorpiditi|intorpidite|intorpidimento; formicolio|formicolii|formicola
addormentato|addormentata .. mano|braccio|gamba|piede
mano|braccio|gamba|piede .. addormentato|addormentata
non sento .. mano|mani|braccio|braccia|gamba|gambe|piede|piedi|dita
dormente|dormentes|dormencia|formigueiro|formigamento|formigando
nutirpo|nutirpes|nutirpusi|nutirpusios|tirpsta|tirpimas|dilgcioja|dilgciojimas|badymas
nejauciu .. rankos|ranku|kojos|koju|pirstu|pedos
dretwe|dretwa|dretwy|scierpniete|dretwieje|dretwieja|zdretwiala|zdretwialy|zdretwialo|zdretwiale
dretwienie|mrowienie|mrowki|scierpla|scierply|cierpnie; nie czuje .. reki|rak|nogi|nog|palcow|stopy|dloni
немые|онемевшие|онемевшая|онемела|онемел|онемели|онемело|онемение|немеет|немеют|покалывает|покалывание|мурашки
не чувствую .. руку|руки|рук|ногу|ноги|ног|пальцы|пальцев|стопу; отнялась|отнялись; затекла|затекли
"""

STOP = """
hor|hort auf; aufhoren; ich will nicht mehr; kann nicht mehr; genug; abbrechen; band|bander ab
= para; = para para; = pare; = parar; parad; ya basta; = basta; = basta ya; no puedo mas; quiero parar
arrete|arretez|arreter; je peux plus; jen peux plus; ca suffit
fermati|fermate|fermare; = ferma; non ce la faccio; voglio smettere
= chega; quero parar; nao aguento; nao posso mais
sustok|sustokim|sustoti|stabdyk|stabdom|baikim|baigiam; uzteks|uztenka|pakanka; nebegaliu
przestan|przestanmy|zatrzymaj; dosc; koniec; nie dam rady; juz nie moge
стоп|стой|хватит|прекрати|прекратить|остановись|остановить|довольно; не могу больше; больше не могу
"""

HURTS = """
schmerz|schmerzen|schmerzt; tut .. weh; tuts weh; weh tut; tun .. weh; aua|autsch; brennt|brennen; krampf
duele|duelen|dolor|dolores|doliendo; quema; calambre
mal au|aux|a|partout; jai mal; ca .. mal; fait mal; douleur|douleurs|douloureux|douloureuse; brule
crampe|crampes
fa|fanno .. male; ho male|dolore; dolore|dolori; brucia; crampo|crampi
doi|doem|doendo|dor|dores; queima|ardendo; caimbra|caimbras
skauda|skaudejo|skausmas|skausma|skaudu|sopa|gelia; degina; meslungis
boli|bola|bolalo|bol|bole; piecze; skurcz
болит|болят|боль|больно|болело|ноет; жжет|жжёт; судорога; ой
"""

TIGHT = """
zu eng|fest|straff; demasiado apretado|apretada|fuerte; trop serre|serree; troppo stretto|stretta
apertado|apertada demais; muito apertado|apertada
per stipriai|ankstu; za ciasno|ciasna|ciasne|mocno; слишком туго|тугая; туго
"""

CIRCULATION = """
hand|hande|arm|arme|bein|beine|fuss|fusse|finger .. blau|weiss|kalt|blass
mano|manos|brazo|pierna|pie|pies|dedos .. azul|azules|blanca|blanco|blancos|fria|frio|frios
main|mains|bras|jambe|pied|pieds|doigts .. bleu|bleue|bleus|blanc|blanche|blancs|froid|froide|froids
mano|mani|braccio|gamba|piede|dita .. blu|bianca|bianco|bianche|fredda|freddo|fredde|viola
mao|maos|braco|perna|pe|pes|dedos .. azul|azuis|branca|branco|brancos|fria|frio|frios|roxa|roxo
ranka|rankos|koja|kojos|pirstai|pirstas .. melyna|melynos|melyni|melynas|balta|baltos
ranka|rankos|koja|kojos|pirstai|pirstas .. balti|salta|saltos|salti|pamelo|pamelynavo|pabalo; pamelo|pabalo
reka|rece|dlon|noga|nogi|palce|stopa .. sina|sine|blada|blade|biala|biale|zimna|zimne
рука|руки|нога|ноги|пальцы|кисть .. синяя|синие|синеет|синеют|посинела|посинели
рука|руки|нога|ноги|пальцы|кисть .. белая|белые|побелела|побелели|холодная|холодные
"""

URINE = """
urine .. dunkel|braun|rot|cola; dunkler|brauner|roter urine; orina .. oscura|marron|roja|cola
urine|pipi .. fonce|foncee|brun|brune|rouge; urina .. scura|escura|marrone|castanha|rossa|vermelha
slapimas .. tamsus|rudas|raudonas; tamsus|rudas slapimas; mocz .. ciemny|brazowy|czerwony; ciemny mocz
моча .. темная|коричневая|красная; темная моча
"""

FEVER = """
fieber; fiebre; fievre; febbre; febre; karsciuoju|karsciavimas|karsciavau; goraczka|goraczke|goraczkuje
температура|жар|лихорадка
"""

LIMP = """
kann .. arm|arme|hand|bein|beine|finger|fuss nicht bewegen|heben
no puedo mover|levantar .. mano|brazo|brazos|pierna|piernas|dedos
peux pas|plus bouger|lever .. main|bras|jambe|jambes|doigts; non riesco .. muovere|alzare|sollevare
nao consigo mexer|mover|levantar
negaliu|nebegaliu pajudinti|pakelti|judinti .. ranka|rankos|ranku|koja|kojos|koju|pirstu
nie moge ruszyc|poruszyc|podniesc .. reka|reki|noga|nogi|palcami
не могу поднять|двигать|пошевелить|согнуть .. руку|рукой|руки|ногу|ногой|ноги|пальцами
"""

UNSURE = """
hilfe|hilf; ayuda|ayudame|socorro; aide|aidez moi; au secours; aiuto|aiutami; ajuda|ajudem
padek|padekit|gelbekit|pagalba|pagalbos; pomocy|pomoz|pomozcie|ratunku; помогите|помоги|помощь|спасите
irgendwas|etwas stimmt nicht; mir gehts nicht gut; no me siento|encuentro bien; algo va|esta mal
me siento mal; me sens pas|mal; ca va pas; non mi sento|sto bene; sto male; nao me sinto|estou bem
sinto me mal; estou mal
kazkas negerai|blogai; blogai jauciuosi; jauciuosi blogai; silpna; cos jest nie tak; zle sie czuje
мне плохо; плохо мне; что то не так
"""
