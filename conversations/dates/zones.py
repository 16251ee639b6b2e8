"""A typed city, country or zone name to an IANA zone. Offsets are refused: they do not know when the clocks change."""

import re
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from zoneinfo import available_timezones

from conversations.answers.lexing import normal, vocabulary
from conversations.dates.cities import AMBIGUOUS_CITIES, BIG_CITIES
from conversations.dates.countries import zones_of
from conversations.dates.tables import flat

MOST_SUGGESTED = 4
LONGEST_NAME = 60  # characters
SHORTEST_START = 4  # letters from which a name may be completed to a question
# Areas of the IANA database that are places; the others are legacy names and offsets.
AREAS = vocabulary("Africa America Antarctica Arctic Asia Atlantic Australia Europe Indian Pacific")
OFFSET = re.compile(r"^(utc|gmt)? ?[+-] ?\d{1,2}(:?\d{2})?$|^[a-z]{1,5}[+-]\d+$")
ABBREVIATIONS = vocabulary(
    "gmt bst ist wet west cet cest eet eest msk sast jst est edt cst cdt mst mdt pst pdt akst akdt hst",
    "aest aedt acst awst nzst nzdt",
)


class ZoneProblem(StrEnum):
    """Why no zone was found. Stored in the log of re-asks: add freely, never rename."""

    UNKNOWN_PLACE = "unknown_place"
    OFFSET = "offset"  # "UTC+2", "CET": no summer time in it


@dataclass(frozen=True, slots=True)
class ZoneFound:
    """The one zone meant, to be said back."""

    zone: str


@dataclass(frozen=True, slots=True)
class ZonesPossible:
    """Two to four zones, to be asked back."""

    zones: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ZoneNotFound:
    """No zone, and why."""

    problem: ZoneProblem


ZoneReading = ZoneFound | ZonesPossible | ZoneNotFound


def read_zone(text: str) -> ZoneReading:
    """The zone of "Lisbon", "new york", "Portugal" or "Europe/Lisbon"; nothing is taken by nearness without asking."""
    said = flat(text)
    if said == "utc":
        return ZoneFound("UTC")
    if OFFSET.match(normal(text)) or said in ABBREVIATIONS:
        return ZoneNotFound(ZoneProblem.OFFSET)
    if not said or len(said) > LONGEST_NAME:
        return ZoneNotFound(ZoneProblem.UNKNOWN_PLACE)
    return _by_name(said)


def _by_name(said: str) -> ZoneReading:
    names, places = _zone_names(), _places()
    if said in names:
        return ZoneFound(names[said])
    if said in AMBIGUOUS_CITIES:
        return ZonesPossible(AMBIGUOUS_CITIES[said])
    if said in places:
        return ZoneFound(places[said])
    match zones_of(said):
        case ():
            return _suggestions(said)
        case (one,):
            return ZoneFound(one)
        case several:
            return ZonesPossible(several)


def _suggestions(said: str) -> ZoneReading:
    """Places that begin so, or whose country was added, as a question, even if there is only one."""
    city, comma, _ = said.partition(",")
    places = _places()
    if comma and (city in places or city in AMBIGUOUS_CITIES):
        return ZonesPossible(AMBIGUOUS_CITIES.get(city) or (places[city],))
    fitting = [zone for place, zone in sorted(places.items()) if place.startswith(said)]
    if len(said) < SHORTEST_START or not fitting:
        return ZoneNotFound(ZoneProblem.UNKNOWN_PLACE)
    return ZonesPossible(tuple(dict.fromkeys(fitting))[:MOST_SUGGESTED])


@cache
def _zone_names() -> dict[str, str]:
    """Full zone names of places as people might type them."""
    return {flat(name): name for name in sorted(available_timezones()) if _is_place(name)}


@cache
def _places() -> dict[str, str]:
    """City to its zone: the last part of each zone name, and big cities that have none of their own.

    The longer of two names is the present one: America/Argentina/Buenos_Aires, not America/Buenos_Aires.
    """
    every = available_timezones()  # reads the zone folder each time it is called
    named = sorted(filter(_is_place, every), key=lambda name: (name.count("/"), name))
    places = {flat(name.rpartition("/")[2]): name for name in named}
    return places | {city: zone for city, zone in BIG_CITIES.items() if zone in every}


def _is_place(name: str) -> bool:
    return name.partition("/")[0] in AREAS and "/" in name
