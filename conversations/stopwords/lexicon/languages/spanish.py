"""Spanish."""

CLASSES = {
    "chest": "pecho; esternón; costillas; tórax",
    "heart": "corazón; pulso",
    "breath": "aire; respirar; respiro; respiración; aliento",
    "short": """falta; no puedo; me cuesta; cuesta; apenas; dificultad; no consigo; no me llega; corta; me quedo
        sin; me ahogo; no me entra; no entra""",
    "face": "cara; boca; rostro; labio; labios; mejilla; párpado",
    "lips": "labio; labios; lengua",
    "droops": "caída; caído; torcida; torcido; colgando; cuelga; chueca; paralizada",
    "limb": """mano; manos; brazo; brazos; antebrazo; dedo; dedos; pulgar; pierna; piernas; pie; pies; rodilla;
        rodillas; muslo; muslos; pantorrilla; pantorrillas; gemelo; gemelos; codo; muñeca; tobillo; tobillos; talón;
        yemas""",
    "calf": "pantorrilla; pantorrillas; gemelo; gemelos",
    "trunk": "espalda; hombro; hombros; cuello; cadera; ingle; barriga; vientre; estómago",
    "hurt": """duele; duelen; dolía; dolor; dolores; adolorido; adolorida; doliendo; quema; punzada; punzadas;
        pinchazo; pinchazos; calambre; calambres""",
    "press": "presión; opresión; aprieta; oprime; apretado; peso encima; pesadez; nudo",
    "numb": """dormida; dormidas; dormidos; está dormido; me ha dormido; se me durmió; se me duerme; se me duermen;
        adormecido; adormecida; adormecidos; adormecidas; entumecido; entumecida; entumecidos; entumecidas;
        hormigueo; hormigueos; cosquilleo; insensible; acorchado; acorchada; acorchados; no siento; sin
        sensibilidad; como muerta; como muerto; perdí la sensibilidad""",
    "colour": """azul; azules; azulado; azulada; azulados; morado; morada; morados; moradas; amoratado; amoratados;
        blanco; blanca; blancos; blancas; pálido; pálida; pálidos; pálidas; violeta""",
    "cold": "frío; fría; fríos; frías; helado; helada; helados; heladas; congelado; congelada; congelados",
    "swollen": "hinchado; hinchada; hinchados; hinchadas; hinchazón; inflamado; inflamada",
    "warm": "caliente; calientes; roja",
    "fails": """no puedo mover; no puedo levantar; no puedo doblar; no responde; no me responde; no obedece; sin
        fuerza; se me cae; falla; paralizado; paralizada; no me obedece""",
    "beats": "rápido; rapidísimo; acelerado; salta; fuerte; irregular; desbocado; a mil",
    "urine": "orina; pis; pipí; orinando; orinar; orino",
    "dark": "oscura; oscuro; marrón; roja; rojo; negra; cola; sangre",
}
