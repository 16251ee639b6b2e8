"""Groups of words, as used in phrases; pictures; and slips that need a line of their own."""

GROUPS = {
    "limb": """hand hands finger fingers fingertip fingertips thumb thumbs pinky palm palms nail nails
        wrist wrists arm arms forearm forearms elbow elbows leg legs thigh thighs calf calves shin shins
        foot feet toe toes ankle ankles knee knees limb limbs skin""",
    "part": "shoulder shoulders hip hips back neck joint muscle tendon knee elbow wrist ankle groin",
    "head": "chest heart head face vision eyes eye throat tongue mouth lips lip jaw speech eyelid breathing",
    "chest": "chest breast breastbone sternum",
    "side": "left right one",
    "band": "band bands cuff cuffs strap straps",
    "catch": """band bands cuff cuffs strap straps velcro buckle buckles clip clips clasp clasps fastener
        fasteners hook hooks zip zipper valve knot release ratchet""",
    "undo": """undo open loosen release unclip unbuckle unstrap unfasten unhook untie unlock remove unwrap
        unvelcro""",
    "wont": "wont doesnt dont didnt cant isnt aint not never",
    "no_way": "cant couldnt unable impossible unsuccessful",
    "these": "them it these those this that both everything the my",
    "my": "my the a any half both two three some one",
    "blue": """blue bluey bluish blueish white whiteish whitish pale purple purplish violet lilac grey
        gray greyish dusky ashen waxy cold freezing""",
    "icy": "icy ice frozen freezing",
    "turned": "turned turns turning went going gone goes getting gets looks looking feels became becoming",
    "numb": """numb numbness numbing numbs tingling tingle tingles tingled tingly prickling prickly
        prickles prickle pricking""",
    "hurts": """hurts hurt hurting pain painful pains aches ache aching achy tight tightness tightening
        pressure heavy burns burning weird strange funny squeezing squeezed crushing crushed stabbing
        stab clamped gripping""",
    "breath": "breathe breath breathing air",
    "fainted": "fainted collapsed",
    "nearly": "nearly almost practically",
    "weak": "weak weakness",
    "dark": "dark brown black red reddish pink cola coke coca tea rusty blood bloody",
    "urine": "urine pee wee piss peeing urinating",
    "awful": """sudden suddenly severe terrible worst splitting awful massive huge blinding bad horrible
        thunderclap violent excruciating intense crazy""",
    "warm": "warm hot red reddish",
    "odd": "weird strange odd funny wrong off",
    "mad": """racing races pounding hammering thumping fluttering flutters skips skipping skipped
        jumping irregular crazy mad nuts weird bursting""",
    "thing": """band bands cuff cuffs strap one ones dumbbell dumbbells plate plates kettlebell mat
        shirt shorts room garage house water shower bath weather day days morning evening night outside
        here drink drinks wine floor pack bar air wind tea coffee beer start beans paper light rabbit""",
    "chatter": """reminders reminder reminding sending texting messaging messages notifications asking
        telling calling writing pinging spamming nagging emails""",
    "cheer": "smiling laughing grinning eating thinking talking dancing singing smoking working growing",
}

# A picture instead of a word.
PICTURES = {
    "🛑": "stop",
    "✋": "stop",
    "⛔": "stop",
    "🚫": "stop",
    "🖐": "stop",
    "🆘": "help",
    "🚑": "ambulance",
    "🤮": "vomit",
    "🤢": "nausea",
    "😵": "dizzy",
    "💫": "dizzy",
    "🩸": "bleeding",
    "🥴": "woozy",
    "🤯": "not good",
    "🥵": "not good",
    "🥶": "its cold",
    "🚨": "help",
    "🫨": "dizzy",
    "🤕": "hurts",
    "😖": "not good",
    "😣": "not good",
    "😫": "not good",
    "🤒": "unwell",
}

# Slips that are words of their own or too far off to be found by distance.
MISSPELT = {
    "stp": "stop",
    "sto": "stop",
    "stoop": "stop",
    "stip": "stop",
    "srop": "stop",
    "stahp": "stop",
    "huts": "hurts",
    "pian": "pain",
    "payn": "pain",
    "oww": "ow",
    "nmb": "numb",
    "num": "numb",
    "numbed": "numb",
    "cnt": "cant",
    "cannot": "cant",
    "wierd": "weird",
    "dizzyness": "dizziness",
    "dizy": "dizzy",
    "breth": "breath",
    "ouchie": "ouch",
    "ouchy": "ouch",
    "chect": "chest",
    "stuk": "stuck",
    "stcuk": "stuck",
    "sutck": "stuck",
    "stuckk": "stuck",
    "jamed": "jammed",
    "vecro": "velcro",
    "velco": "velcro",
    "bukle": "buckle",
    "blu": "blue",
    "urin": "urine",
    "foots": "foot",
    "feets": "feet",
    "ches": "chest",
    "chst": "chest",
    "chestt": "chest",
}

# Slips are mended towards these words only.
MENDED = """stop tingling tingle tingles tingly numb numbness prickling needles asleep dizzy dizziness
    faint fainted giddy woozy lightheaded nausea nauseous vomit vomiting palpitations racing chest breastbone sternum lungful
    breathe breath breathless breathing headache stroke seizure ambulance emergency unconscious consciousness
    collapsed slurred weakness vision blue bluish white cold purple pale freezing swollen swelling puffy
    urine hurts hurt hurting pain painful burning burns aches aching cramp sharp stabbing stings
    bleeding blood fell tight tightness pressure enough continue finger fingers fingertips thumb hand
    hands foot toes shoulder elbow knee wrist ankle calf forearm cant dont doesnt isnt feel feeling ouch
    shortness squeezing squeezed crushing fluttering pounding slurring drooping droopy lopsided
    crooked gibberish garbled muddled confused ballooned mottled clammy floppy paralysed spinning
    buzzing fizzing crawling struggling gasping wheezing strangling nosebleed indigestion heartburn
    unresponsive slumped stomach tongue throat speech swelled throbbing sweating heart palpitation
    unwell vomited dizzyness blurred tummy muscle"""
