"""German."""

CLASSES = {
    "chest": "brust; brustkorb; brustbein; brustkasten; rippen",
    "heart": "herz; puls",
    "breath": "luft; atem; atmen; atme; atmet",
    "short": """bleibt weg; bleibt mir weg; kaum; bekomme schlecht; kriege schlecht; krieg schlecht; schlecht; schwer; fällt schwer; knapp;
        ringe; kann nicht; nicht genug; kann kaum; kann gar nicht; kann nicht mehr""",
    "face": "gesicht; mund; mundwinkel; lippe; lippen; wange; augenlid; lid",
    "lips": "lippe; lippen; zunge",
    "droops": "hängt; hängend; schief; runter; gelähmt; verzogen; schlaff",
    "speech": "sprechen; sprache; reden; wörter; worte",
    "slurs": "lalle; lallt; lallen; verwaschen; undeutlich",
    "head": "kopf; kopfschmerz; kopfschmerzen; kopfweh; schädel",
    "sudden": "plötzlich; plötzliche; auf einmal; schlagartig",
    "awful": "schlimmste; schlimmsten; furchtbare; furchtbar; wahnsinnige; explodiert; platzt; unerträglich",
    "limb": """arm; arme; armen; hand; hände; händen; finger; fingern; daumen; bein; beine; beinen; fuß; füße;
        füßen; zeh; zehe; zehen; knie; wade; waden; oberschenkel; unterschenkel; ellbogen; ellenbogen; handgelenk;
        knöchel; unterarm; oberarm; fingerkuppen; fingerspitzen""",
    "calf": "wade; waden; unterschenkel",
    "trunk": "rücken; schulter; schultern; nacken; hüfte; bauch; leiste",
    "hurt": """schmerz; schmerzen; schmerzt; schmert; schmerzhaft; weh; sticht; stechen; stechend; brennt; brennen;
        krampf; krampft; pocht""",
    "press": "druck; drückt; drücken; eng; enge; schwer; zugeschnürt; beklemmung; spannt; schraubstock; zieht",
    "numb": """taub; taube; tauben; taubes; kribbelt; kribbeln; kribbelig; pelzig; eingeschlafen; gefühllos;
        ameisen; nadelstiche; spüre nicht; spüre nichts; spüre kaum; fühle nicht; fühle nichts; kein gefühl;
        abgestorben; wie tot""",
    "colour": "blau; bläulich; weiß; weißlich; blass; lila; violett; grau; marmoriert; bleich; verfärbt",
    "cold": "kalt; eiskalt; eisig",
    "swollen": "geschwollen; schwillt; angeschwollen; schwellung; dick; prall; aufgequollen",
    "warm": "heiß; warm",
    "fails": """gelähmt; kraftlos; schlaff; keine kraft; nicht bewegen; nicht mehr bewegen; nicht heben; nicht mehr
        heben; nicht anheben; nicht greifen; gehorcht nicht; knickt weg; sackt weg; kaum heben; kaum bewegen; kaum
        hochheben""",
    "beats": "rast; stolpert; hämmert; klopft; pocht; unregelmäßig; zu schnell; flattert",
    "urine": "urin; pipi; harn; pinkle; pinkel; pinkeln",
    "dark": "dunkel; dunkler; braun; rot; schwarz; rötlich; bräunlich; blutig; cola; tee",
}
