"""Portuguese."""

CLASSES = {
    "chest": "peito; tórax; costelas; esterno",
    "heart": "coração; pulso",
    "breath": "ar; respirar; respiro; respiração; fôlego",
    "short": """falta; falta-me; dificuldade; difícil; custa; custa-me; não consigo; mal consigo; curta; pouco; não
        entra; não me entra; mal; não posso; não estou a conseguir""",
    "face": "cara; rosto; boca; lábio; lábios; bochecha; pálpebra",
    "lips": "lábio; lábios; língua",
    "droops": "caída; caído; torta; torto; paralisada; descaída; descaído",
    "limb": """mão; mãos; braço; braços; antebraço; dedo; dedos; polegar; perna; pernas; pé; pés; joelho; joelhos;
        coxa; coxas; panturrilha; panturrilhas; barriga da perna; gémeo; gémeos; gêmeo; cotovelo; tornozelo;
        tornozelos; calcanhar""",
    "calf": "panturrilha; panturrilhas; barriga da perna; gémeo; gémeos; gêmeo",
    "trunk": "costas; ombro; ombros; pescoço; anca; quadril; barriga; virilha",
    "hurt": """dói; doem; dói-me; dor; dores; doendo; dorido; dorida; dolorido; dolorida; queima; queimando;
        pontada; pontadas; cãibra; câimbra; fisgada; fisgadas""",
    "press": "aperto; aperta; apertado; pressão; opressão; um peso; apertar",
    "numb": """dormente; dormentes; dormência; formigueiro; formigamento; formigando; adormecido; adormecida;
        adormecidos; insensível; não sinto; sem sensibilidade; perdi a sensibilidade; perdi sensibilidade; como
        morta""",
    "colour": """azul; azuis; azulado; azulados; roxo; roxa; roxos; roxas; arroxeado; branco; branca; brancos;
        brancas; pálido; pálida; pálidos""",
    "cold": "frio; fria; frios; frias; gelado; gelada; gelados; geladas",
    "swollen": "inchado; inchada; inchados; inchadas; inchaço; inchou",
    "warm": "quente; quentes; vermelha",
    "fails": """não consigo mexer; não consigo mover; não consigo levantar; não consigo dobrar; não mexe; não
        responde; sem força; paralisado; paralisada; não obedece; não me obedece""",
    "beats": "saltos; acelerado; rápido; disparado; disparou; irregular; aos pulos",
    "urine": "urina; xixi",
    "dark": "escura; escuro; castanha; marrom; vermelha; preta; cola; coca; sangue",
}
