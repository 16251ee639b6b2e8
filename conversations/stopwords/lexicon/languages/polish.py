"""Polish."""

CLASSES = {
    "chest": "klatka; klatce; klatkę; klatki; piersi; piersiach; mostek; mostku; żebra; żebrach",
    "heart": "serce; serca; puls; tętno",
    "breath": "oddychać; oddech; oddechu; tchu; powietrza; oddycham",
    "short": "trudno; ciężko; brak; brakuje; nie mogę; ledwo; nie ma; płytki; źle",
    "face": "twarz; twarzy; usta; kącik; policzek; warga; powieka; buzia",
    "lips": "warga; wargi; usta; język",
    "droops": "opada; opadła; opadł; krzywa; krzywe; krzywo; wykrzywiona; wykrzywiło; zwisa; sparaliżowana",
    "limb": """ręka; rękę; ręki; ręką; ręce; dłoń; dłonie; dłoni; palec; palce; palców; ramię; ramiona; noga; nogę;
        nogi; nogą; stopa; stopę; stopy; kolano; kolana; udo; uda; łydka; łydkę; łydki; łokieć; nadgarstek; kostka;
        kostkę; kciuk; pięta""",
    "calf": "łydka; łydkę; łydki",
    "trunk": "plecy; plecach; bark; barki; szyja; kark; biodro; brzuch; pachwina",
    "hurt": """boli; bolą; bolało; ból; bólu; bolesny; bolesna; bolesne; piecze; skurcz; skurcze; kłuje; kłucie;
        rwie""",
    "press": "ucisk; uciska; gniecie; ściska; dusi; ciężar",
    "numb": """zdrętwiała; zdrętwiały; zdrętwiało; zdrętwiałe; drętwieje; drętwieją; drętwa; drętwe; drętwy;
        drętwienie; ścierpła; ścierpły; cierpnie; mrowienie; mrowi; mrówki; nie czuję; bez czucia; brak czucia;
        straciłem czucie; straciłam czucie""",
    "colour": """sina; sine; siny; sinieje; sinieją; zsiniała; zsiniały; blada; blade; blady; biała; białe; biały;
        fioletowa; fioletowe""",
    "cold": "zimna; zimne; zimny; lodowata; lodowate; lodowaty",
    "swollen": """spuchnięta; spuchnięty; spuchnięte; opuchnięta; opuchnięte; opuchnięty; puchnie; puchną; spuchła;
        spuchły; opuchlizna; obrzęk""",
    "warm": "gorąca; gorące; ciepła; czerwona",
    "fails": """nie mogę ruszyć; nie mogę poruszyć; nie mogę podnieść; nie mogę zgiąć; nie rusza; nie słucha;
        bezwładna; bezwładny; bezwładne; bez siły; sparaliżowana; nie reaguje""",
    "beats": "wali; kołacze; trzepocze; nierówno; szybko; skacze; łomocze",
    "urine": "mocz; moczu; siku; sikam; siusiu",
    "dark": "ciemny; brązowy; czerwony; czarny; krwisty; cola; herbata",
}
