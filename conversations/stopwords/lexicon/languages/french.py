"""French."""

CLASSES = {
    "chest": "poitrine; thorax; côtes; torse",
    "heart": "coeur; pouls",
    "breath": "air; souffle; respirer; respire; respiration",
    "short": """manque; peux pas; peux plus; du mal; peine; difficile; difficulté; difficultés; n'arrive pas;
        n'arrive plus; coupé; à bout de; à court de; mal""",
    "face": "visage; bouche; joue; lèvre; lèvres; paupière; sourire",
    "lips": "lèvre; lèvres; langue",
    "droops": "tombe; tombée; tordu; tordue; paralysé; paralysée; affaissé; affaissée; de travers",
    "limb": """main; mains; bras; jambe; jambes; pied; pieds; doigt; doigts; orteil; orteils; genou; genoux; cuisse;
        cuisses; mollet; mollets; coude; poignet; cheville; chevilles; pouce""",
    "calf": "mollet; mollets",
    "trunk": "dos; épaule; épaules; nuque; cou; hanche; ventre; aine",
    "hurt": """mal; douleur; douleurs; douloureux; douloureuse; brûle; brûlent; brûlure; crampe; crampes;
        élancement; élancements""",
    "press": "serre; serrée; serré; serrement; pression; oppression; oppressé; écrase; étau; un poids sur",
    "numb": """engourdi; engourdie; engourdis; engourdies; engourdissement; fourmis; fourmille; fourmillement;
        fourmillements; picotement; picotements; picote; insensible; insensibles; endormi; endormie; endormis; sens
        plus; sens pas; sens rien; aucune sensation; plus de sensation; perdu la sensibilité""",
    "colour": """bleu; bleus; bleue; bleues; bleuit; blanc; blancs; blanche; blanches; pâles; violets; violette;
        violacé; violacés; livide""",
    "cold": "froid; froids; froide; froides; glacé; glacés; glacée; glacées; gelé; gelés; gelées",
    "swollen": "gonflé; gonflée; gonflés; gonflées; enflé; enflée; enflés",
    "warm": "chaud; chaude; brûlant; rouge",
    "fails": """n'arrive pas à bouger; n'arrive plus à bouger; arrive plus à bouger; peux pas bouger; peux plus
        bouger; n'arrive pas à lever; n'arrive plus à lever; peux pas lever; peux plus lever; plus de force; répond
        plus; paralysé; paralysée; inerte; me lâche; ne répond plus""",
    "beats": "vite; emballe; saute; irrégulier; palpite; cogne; trop fort; très fort",
    "urine": "urine; urines; pipi",
    "dark": "foncé; foncée; foncées; brun; brune; brunes; rouge; rouges; coca; du sang",
}
