"""Big cities without an IANA zone of their own, and city names that several places share.

From memory, no source; every zone is said back to the client before it is kept.
"""

_BY_ZONE = {
    "America/New_York": "atlanta, baltimore, boston, brooklyn, buffalo, charlotte, cleveland, miami"
    ", new york city, nyc, orlando, philadelphia, pittsburgh, tampa, washington, washington dc",
    "America/Chicago": "austin, dallas, houston, kansas city, memphis, milwaukee, minneapolis, nashville"
    ", new orleans, oklahoma city, san antonio, st louis",
    "America/Denver": "albuquerque, salt lake city, colorado springs",
    "America/Los_Angeles": "las vegas, oakland, sacramento, san diego, san francisco, seattle, la",
    "America/Toronto": "montreal, ottawa, quebec, quebec city",
    "America/Edmonton": "calgary",
    "America/Sao_Paulo": "brasilia, rio de janeiro, rio, curitiba, belo horizonte, porto alegre",
    "America/Mexico_City": "guadalajara, puebla",
    "America/Bogota": "medellin, cali",
    "Europe/London": "aberdeen, bristol, cardiff, edinburgh, glasgow, leeds, leicester, liverpool"
    ", manchester, nottingham, sheffield",
    "Europe/Dublin": "cork, galway, limerick",
    "Europe/Lisbon": "porto, lisboa, braga, coimbra, faro",
    "Europe/Madrid": "barcelona, bilbao, malaga, sevilla, seville, zaragoza, palma",
    "Europe/Paris": "bordeaux, lille, lyon, marseille, nantes, strasbourg, toulouse",
    "Europe/Berlin": "bremen, cologne, dortmund, dresden, dusseldorf, essen, frankfurt, hamburg, hanover"
    ", koln, leipzig, munchen, munich, nuremberg, stuttgart",
    "Europe/Rome": "bologna, florence, milan, milano, naples, palermo, roma, turin, torino, venice, genoa",
    "Europe/Zurich": "basel, bern, geneva, lausanne",
    "Europe/Vienna": "graz, innsbruck, linz, salzburg, wien",
    "Europe/Amsterdam": "eindhoven, rotterdam, the hague, utrecht",
    "Europe/Brussels": "antwerp, ghent, bruges",
    "Europe/Stockholm": "gothenburg, malmo",
    "Europe/Copenhagen": "aarhus",
    "Europe/Oslo": "bergen, trondheim",
    "Europe/Helsinki": "tampere, turku, espoo",
    "Europe/Warsaw": "gdansk, krakow, lodz, poznan, wroclaw, warszawa",
    "Europe/Prague": "brno, praha",
    "Europe/Athens": "thessaloniki",
    "Europe/Moscow": "st petersburg, saint petersburg",
    "Europe/Istanbul": "ankara, izmir",
    "Asia/Kolkata": "ahmedabad, bangalore, bengaluru, chennai, delhi, new delhi, mumbai, pune, hyderabad",
    "Asia/Shanghai": "beijing, guangzhou, shenzhen, chengdu",
    "Asia/Tokyo": "kyoto, osaka, nagoya, yokohama, sapporo",
    "Asia/Seoul": "busan",
    "Asia/Ho_Chi_Minh": "hanoi, saigon",
    "Asia/Dubai": "abu dhabi",
    "Asia/Riyadh": "jeddah, mecca",
    "Asia/Jerusalem": "tel aviv, haifa",
    "Australia/Sydney": "canberra, wollongong",
    "Australia/Brisbane": "gold coast",
    "Pacific/Auckland": "christchurch, wellington",
    "Africa/Johannesburg": "cape town, durban, pretoria",
    "Africa/Lagos": "abuja",
    "Europe/Vilnius": "kaunas, klaipeda",
    "Europe/Tallinn": "tartu",
    "Europe/Kyiv": "kiev, lviv, odesa",
    "Africa/Casablanca": "rabat, marrakesh, marrakech",
}
BIG_CITIES = {city.strip(): zone for zone, cities in _BY_ZONE.items() for city in cities.split(",")}

# Names that two or more well-populated places share: asked back, with the likelier first.
AMBIGUOUS_CITIES: dict[str, tuple[str, ...]] = {
    "birmingham": ("Europe/London", "America/Chicago"),
    "cambridge": ("Europe/London", "America/New_York"),
    "cordoba": ("America/Argentina/Cordoba", "Europe/Madrid"),
    "georgia": ("Asia/Tbilisi", "America/New_York"),
    "hamilton": ("America/Toronto", "Pacific/Auckland", "Atlantic/Bermuda"),
    "kingston": ("America/Jamaica", "America/Toronto"),
    "newcastle": ("Europe/London", "Australia/Sydney"),
    "perth": ("Australia/Perth", "Europe/London"),
    "portland": ("America/Los_Angeles", "America/New_York"),
    "richmond": ("America/New_York", "America/Vancouver", "Europe/London"),
    "san jose": ("America/Los_Angeles", "America/Costa_Rica"),
    "san juan": ("America/Puerto_Rico", "America/Argentina/San_Juan"),
    "santiago": ("America/Santiago", "Europe/Madrid", "America/Santo_Domingo"),
    "springfield": ("America/Chicago", "America/New_York", "America/Los_Angeles"),
    "st johns": ("America/St_Johns", "America/Antigua"),
    "valencia": ("Europe/Madrid", "America/Caracas"),
    "victoria": ("America/Vancouver", "Australia/Melbourne", "Indian/Mahe"),
}
