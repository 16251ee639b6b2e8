"""Lithuanian."""

CLASSES = {
    "chest": "krūtinė; krūtinę; krūtinėje; krūtinės",
    "heart": "širdis; širdies; pulsas",
    "breath": "oro; kvėpuoti; kvapo; įkvėpti; kvėpavimas",
    "short": "trūksta; trūkst; pritrūksta; sunku; negaliu; vos; nėra",
    "face": "veidas; veido; burna; lūpa; lūpos; skruostas; vokas",
    "lips": "lūpa; lūpos; liežuvis",
    "droops": "nusviręs; nusviro; nusvirusi; perkreiptas; perkreipta; iškrypo; iškrypęs; nukaro; paralyžiuota",
    "limb": """ranka; ranką; rankos; rankų; delnas; delnai; pirštas; pirštą; pirštai; pirštų; koja; koją; kojos;
        kojų; pėda; pėdą; pėdos; pėdų; kelis; kelį; kelio; kelius; šlaunis; šlaunį; blauzda; blauzdą; blauzdos;
        alkūnė; riešas; kulkšnis; žastas; nykštys; kulnas; piršto; pirštelis; pirštelio; delną; kojoje;
        rankoje; pėdoje; pirštuose; delne""",
    "calf": "blauzda; blauzdą; blauzdos",
    "trunk": "nugara; nugarą; petys; petį; peties; kaklas; klubas; pilvas; pilvą",
    "hurt": "skauda; skaudėjo; skausmas; skausmą; skaudu; sopa; gelia; degina; peršti; duria; diegia; mėšlungis",
    "press": "spaudžia; spaudimas; veržia; slegia; gniaužia",
    "numb": """nutirpo; nutirpęs; nutirpusi; nutirpusios; nutirpę; tirpsta; tirpimas; dilgčioja; dilgčiojimas;
        badymas; bado; nejaučiu; nejautri; nejautrus; skruzdėlės; be jausmo""",
    "colour": """mėlyna; mėlynos; mėlyni; mėlynas; mėlynuoja; pamėlo; pamėlynavo; pamėlę; pamėlusi; pamėlusios;
        balta; baltos; balti; baltas; pabalo; pabalę; pabalusi; violetiniai""",
    "cold": "šalta; šaltos; šalti; šaltas; ledinė; lediniai; ledinai; ledinis; ledinės",
    "swollen": "ištinusi; ištinęs; ištinę; ištino; tinsta; patinusi; patinęs; patino; patinę; sutino; sutinusi",
    "warm": "karšta; karštos; karšti; raudona",
    "fails": """negaliu pajudinti; negaliu pakelti; negaliu judinti; negaliu sulenkti; nepakeliu; nejuda; nevaldau;
        neklauso; suglebusi; be jėgų""",
    "beats": "daužosi; permuša; greitai; kalasi; šokinėja",
    "urine": "šlapimas; šlapimo",
    "dark": "tamsus; rudas; raudonas; juodas; kruvinas; kola",
}
