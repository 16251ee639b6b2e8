"""Typed places to zones: found, asked back, or refused; never guessed."""

from datetime import datetime
from itertools import groupby
from zoneinfo import ZoneInfo, available_timezones

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.dates import ZoneFound, ZoneNotFound, ZoneProblem, ZonesPossible, countries, read_zone
from conversations.dates.cities import AMBIGUOUS_CITIES, BIG_CITIES
from conversations.dates.tables import rows
from conversations.words.dates import zone_name, zone_not_found

FOUND = [
    ("Lisbon", "Europe/Lisbon"),
    ("lisbon", "Europe/Lisbon"),
    ("  LISBON! ", "Europe/Lisbon"),
    ("in Lisbon", "Europe/Lisbon"),
    ("I'm in Lisbon", "Europe/Lisbon"),
    ("Lisboa", "Europe/Lisbon"),
    ("Europe/Lisbon", "Europe/Lisbon"),
    ("europe/lisbon", "Europe/Lisbon"),
    ("New York", "America/New_York"),
    ("new_york", "America/New_York"),
    ("NYC", "America/New_York"),
    ("São Paulo", "America/Sao_Paulo"),
    ("Zürich", "Europe/Zurich"),
    ("München", "Europe/Berlin"),
    ("Buenos Aires", "America/Argentina/Buenos_Aires"),
    ("Mumbai", "Asia/Kolkata"),
    ("Lord Howe", "Australia/Lord_Howe"),
    ("UTC", "UTC"),
]


@pytest.mark.parametrize(("text", "zone"), FOUND)
def test_a_city_or_a_zone_is_found(text: str, zone: str) -> None:
    assert read_zone(text) == ZoneFound(zone)


@pytest.mark.parametrize(
    ("text", "zones"),
    [
        ("San Jose", ("America/Los_Angeles", "America/Costa_Rica")),
        ("birmingham", ("Europe/London", "America/Chicago")),
        ("St. John's", ("America/St_Johns", "America/Antigua")),
        ("Lisb", ("Europe/Lisbon",)),
        ("London, Ontario", ("Europe/London",)),
        ("Birmingham, Alabama", ("Europe/London", "America/Chicago")),
    ],
)
def test_what_could_be_another_place_is_asked_back(text: str, zones: tuple[str, ...]) -> None:
    assert read_zone(text) == ZonesPossible(zones)


@pytest.mark.parametrize(
    ("country", "zone"),
    [
        ("Portugal", "Europe/Lisbon"),
        ("I live in Estonia", "Europe/Tallinn"),
        ("spain", "Europe/Madrid"),
        ("the UK", "Europe/London"),
        ("UK", "Europe/London"),
        ("Argentina", "America/Argentina/Buenos_Aires"),
        ("Germany", "Europe/Berlin"),
        ("Ukraine", "Europe/Kyiv"),
        ("South Korea", "Asia/Seoul"),
        ("Trinidad & Tobago", None),
        ("Trinidad and Tobago", "America/Port_of_Spain"),
        ("Côte d'Ivoire", "Africa/Abidjan"),
        ("USA", ("America/New_York", "America/Chicago", "America/Denver", "America/Los_Angeles")),
        ("Indonesia", ("Asia/Jakarta", "Asia/Makassar", "Asia/Jayapura")),
    ],
)
def test_a_country_is_a_place_and_one_with_several_times_is_asked_back(
    country: str, zone: str | tuple[str, ...] | None
) -> None:
    wanted = ZoneFound(zone) if isinstance(zone, str) else ZonesPossible(zone or ())
    assert read_zone(country) == (wanted if zone else ZoneNotFound(ZoneProblem.UNKNOWN_PLACE))


def test_each_country_has_zones_of_its_own_in_the_database() -> None:
    """IANA time zone database: zone.tab, and iso3166.tab for the names."""
    of_country: dict[str, set[str]] = {}
    for code, _, zone, *_ in rows("zone.tab"):
        of_country.setdefault(code, set()).add(zone)
    assert set(countries.ALIASES) <= set(of_country)
    assert all(zone in of_country[code] for code, zone in countries.MAIN.items())
    assert all(set(zones) <= of_country[code] for code, zones in countries.SEVERAL.items())


def test_a_country_that_is_not_asked_back_keeps_one_time_or_has_a_main_zone() -> None:
    """The offsets of all its zones in the middle of each month of 2026, by the same database."""
    for code, zones in groupby(sorted(rows("zone.tab")), key=lambda row: row[0]):
        offsets = {
            tuple(datetime(2026, month, 15, tzinfo=ZoneInfo(row[2])).utcoffset() for month in range(1, 13))
            for row in zones
        }
        assert len(offsets) == 1 or code in countries.MAIN or code in countries.SEVERAL, code


OFFSETS = ["UTC+2", "utc +5:30", "GMT-1", "+2", "-03:00", "CET", "est", "GMT"]
UNKNOWN = ["", "xyz", "Li", "Europe", "America", "🇵🇹", "Atlantis", "a" * 500, "../etc/passwd", "Etc/GMT+5"]


@pytest.mark.parametrize("text", OFFSETS)
def test_an_offset_is_refused_with_help(text: str) -> None:
    assert read_zone(text) == ZoneNotFound(ZoneProblem.OFFSET)
    assert "city" in zone_not_found(ZoneNotFound(ZoneProblem.OFFSET))


@pytest.mark.parametrize("text", UNKNOWN)
def test_an_unknown_place_is_no_zone(text: str) -> None:
    assert read_zone(text) == ZoneNotFound(ZoneProblem.UNKNOWN_PLACE)


def test_every_city_of_the_lists_has_a_zone_that_exists() -> None:
    listed = set(BIG_CITIES.values()) | {zone for zones in AMBIGUOUS_CITIES.values() for zone in zones}
    assert listed
    assert listed <= available_timezones()
    assert not set(BIG_CITIES) & set(AMBIGUOUS_CITIES)
    assert all(len(set(zones)) == len(zones) >= 2 for zones in AMBIGUOUS_CITIES.values())


@pytest.mark.parametrize("city", sorted(BIG_CITIES))
def test_every_city_of_the_list_is_found(city: str) -> None:
    assert read_zone(city.title()) == ZoneFound(BIG_CITIES[city])


@given(
    st.sampled_from(sorted(name for name in available_timezones() if name.startswith(("Europe/", "Asia/"))))
)
def test_every_full_zone_name_is_found_in_any_spelling(name: str) -> None:
    assert read_zone(name) == read_zone(name.upper()) == read_zone(name.replace("_", " ")) == ZoneFound(name)


@given(st.text(max_size=30))
def test_any_text_gives_existing_zones_or_a_question(text: str) -> None:
    match read_zone(text):
        case ZoneFound(zone):
            assert zone in available_timezones()
        case ZonesPossible(zones):
            assert 1 <= len(zones) <= 4
            assert set(zones) <= available_timezones()
        case ZoneNotFound() as reading:
            assert zone_not_found(reading)


def test_a_zone_is_named_by_its_city() -> None:
    assert zone_name("America/New_York") == "New York time"
    assert zone_name("UTC") == "UTC"
