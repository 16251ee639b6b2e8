"""A shared location to the time zones whose principal places are nearest; they are asked back, never just taken.

A zone's border is not known here, only where its principal place lies: the IANA table `zone1970.tab`.
"""

import re
from functools import cache
from math import asin, cos, radians, sin, sqrt

from conversations.dates.tables import rows

MOST = 3
COORDINATES = re.compile(r"^(-?\d{1,2}(?:\.\d+)?), (-?\d{1,3}(?:\.\d+)?)$")
# ISO 6709 as in the table: +DDMM+DDDMM, or with seconds.
PLACE = re.compile(r"^([+-])(\d{2})(\d{2})(?:\d{2})?([+-])(\d{3})(\d{2})(?:\d{2})?$")


def near(coordinates: str) -> tuple[str, ...]:
    """The nearest zones, nearest first, of "38.72, -9.14" (latitude and longitude in degrees). () for other text."""
    found = COORDINATES.match(coordinates)
    if found is None:
        return ()
    here = float(found[1]), float(found[2])
    return tuple(sorted(_places(), key=lambda zone: _apart(here, _places()[zone]))[:MOST])


@cache
def _places() -> dict[str, tuple[float, float]]:
    """Zone to latitude and longitude of its principal place."""
    return {row[2]: _degrees(row[1]) for row in rows("zone1970.tab")}


def _degrees(text: str) -> tuple[float, float]:
    found = PLACE.match(text)
    assert found is not None, "the table is ours"
    south, latitude, west, longitude = found[1] == "-", found.group(2, 3), found[4] == "-", found.group(5, 6)
    return _signed(south, *latitude), _signed(west, *longitude)


def _signed(negative: bool, degrees: str, minutes: str) -> float:
    size = int(degrees) + int(minutes) / 60
    return -size if negative else size


def _apart(one: tuple[float, float], other: tuple[float, float]) -> float:
    """The great-circle distance as an angle, by the haversine formula."""
    (lat, lon), (there, across) = (radians(one[0]), radians(one[1])), (radians(other[0]), radians(other[1]))
    half = sin((there - lat) / 2) ** 2 + cos(lat) * cos(there) * sin((across - lon) / 2) ** 2
    return 2 * asin(sqrt(min(1.0, half)))
