"""Italian."""

CLASSES = {
    "chest": "petto; torace; sterno; costole",
    "heart": "cuore; battito",
    "breath": "aria; respiro; respirare; fiato",
    "short": """manca; fatica; fatico; non riesco; difficile; difficoltà; a corto; resto senza; non mi entra; non
        entra; male; non posso""",
    "face": "viso; faccia; bocca; guancia; labbro; palpebra; sorriso",
    "lips": "labbro; labbra; lingua",
    "droops": "storta; storto; cade; caduta; caduto; pende; paralizzata; paralizzato; cadente",
    "limb": """mano; mani; braccio; braccia; avambraccio; dito; dita; pollice; gamba; gambe; piede; piedi;
        ginocchio; ginocchia; coscia; cosce; polpaccio; polpacci; gomito; polso; caviglia; caviglie; tallone""",
    "calf": "polpaccio; polpacci",
    "trunk": "schiena; spalla; spalle; collo; anca; pancia; inguine",
    "hurt": "male; dolore; dolori; doloroso; dolorosa; dolente; brucia; bruciore; fitta; fitte; crampo; crampi",
    "press": "oppressione; opprime; stringe; stretto; stretta; pressione; schiaccia; morsa; un peso; peso sul",
    "numb": """intorpidito; intorpidita; intorpiditi; intorpidite; intorpidimento; formicolio; formicolii;
        formicola; formicolano; addormentato; addormentata; addormentati; addormentate; insensibile; non sento; come
        morta; come morto; perso la sensibilità; nessuna sensazione""",
    "colour": """blu; viola; violaceo; violacee; bianco; bianca; bianchi; bianche; pallido; pallida; pallide;
        livido; livida""",
    "cold": "freddo; fredda; freddi; fredde; gelido; gelida; gelidi; gelide; ghiacciato; ghiacciata; ghiacciate",
    "swollen": "gonfio; gonfia; gonfi; gonfie; gonfiore; gonfiato; gonfiata",
    "warm": "caldo; calda; bollente; rossa; rosso",
    "fails": """non riesco a muovere; non riesco ad alzare; non riesco a sollevare; non muovo; non si muove; non
        risponde; senza forza; cede; paralizzato; paralizzata; non mi risponde; non obbedisce; non mi obbedisce""",
    "beats": "forte; all'impazzata; impazzata; impazzito; veloce; velocissimo; salta; irregolare; martella",
    "urine": "urina; urine; pipì",
    "dark": "scura; scure; marrone; rossa; rosse; nera; sangue; cola; coca",
}
