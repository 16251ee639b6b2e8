"""Countries as places: the one time of most, the main one of a few, and those of the large ones, to be asked back.

Names and zones are those of the IANA time zone database (iso3166.tab, zone.tab). Which zone is a country's main one,
and which ones are asked back, is from memory, no source; every zone is said back before it is kept.
"""

from functools import cache

from conversations.dates.tables import flat, rows

# Other names, by the country's code in the database.
ALIASES = {
    "GB": "uk, united kingdom, great britain, britain, england, scotland, wales, northern ireland",
    "US": "usa, united states, united states of america, us, states",
    "DE": "deutschland",
    "IT": "italia",
    "ES": "espana",
    "CH": "schweiz, suisse",
    "AT": "osterreich",
    "NL": "holland",
    "CZ": "czechia",
    "LT": "lietuva",
    "PL": "polska",
    "SE": "sverige",
    "NO": "norge",
    "DK": "danmark",
    "FI": "suomi",
    "EE": "eesti",
    "BA": "bosnia",
    "MK": "macedonia",
    "TR": "turkiye",
    "AE": "uae, emirates",
    "KR": "south korea, korea",
    "KP": "north korea",
    "VN": "viet nam",
    "MM": "myanmar, burma",
    "CI": "ivory coast, cote divoire",
    "CD": "congo, dr congo, democratic republic of congo",
    "CG": "republic of congo",
    "SZ": "eswatini, swaziland",
    "TT": "trinidad, tobago",
    "CV": "cabo verde",
}
# Most people live in this zone, though there are others.
MAIN = {
    "PT": "Europe/Lisbon",
    "ES": "Europe/Madrid",
    "UA": "Europe/Kyiv",
    "NZ": "Pacific/Auckland",
    "CL": "America/Santiago",
    "CN": "Asia/Shanghai",
    "EC": "America/Guayaquil",
    "MN": "Asia/Ulaanbaatar",
    "PG": "Pacific/Port_Moresby",
    "GL": "America/Nuuk",
    "AR": "America/Argentina/Buenos_Aires",
    "UZ": "Asia/Tashkent",
}
SEVERAL = {
    "US": ("America/New_York", "America/Chicago", "America/Denver", "America/Los_Angeles"),
    "CA": ("America/Toronto", "America/Winnipeg", "America/Edmonton", "America/Vancouver"),
    "AU": ("Australia/Sydney", "Australia/Brisbane", "Australia/Adelaide", "Australia/Perth"),
    "BR": ("America/Sao_Paulo", "America/Manaus", "America/Fortaleza", "America/Rio_Branco"),
    "MX": ("America/Mexico_City", "America/Cancun", "America/Hermosillo", "America/Tijuana"),
    "RU": ("Europe/Moscow", "Europe/Samara", "Asia/Yekaterinburg", "Asia/Novosibirsk"),
    "ID": ("Asia/Jakarta", "Asia/Makassar", "Asia/Jayapura"),
    "CD": ("Africa/Kinshasa", "Africa/Lubumbashi"),
    "KZ": ("Asia/Almaty", "Asia/Aqtobe"),
    "FM": ("Pacific/Chuuk", "Pacific/Pohnpei"),
    "KI": ("Pacific/Tarawa", "Pacific/Kiritimati"),
    "PF": ("Pacific/Tahiti", "Pacific/Marquesas"),
    "UM": ("Pacific/Midway", "Pacific/Wake"),
    "AQ": ("Antarctica/McMurdo", "Antarctica/Palmer"),
}


def zones_of(country: str) -> tuple[str, ...]:
    """The zone of a country by its plain name in small letters; several to be asked back; (): no such country."""
    code = _codes().get(country.removeprefix("the "), "")
    if code in SEVERAL:
        return SEVERAL[code]
    zone = MAIN.get(code) or _first_zones().get(code)
    return () if zone is None else (zone,)


@cache
def _codes() -> dict[str, str]:
    """Name to code. A name with a part in brackets, "Korea (South)", is known by its aliases only."""
    named = {flat(name.replace("&", "and")): code for code, name in rows("iso3166.tab") if "(" not in name}
    return named | {one.strip(): code for code, names in ALIASES.items() for one in names.split(",")}


@cache
def _first_zones() -> dict[str, str]:
    """The first zone of each country's code."""
    found: dict[str, str] = {}
    for code, _, zone, *_ in rows("zone.tab"):
        found.setdefault(code, zone)
    return found
