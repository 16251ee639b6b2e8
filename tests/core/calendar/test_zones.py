"""Which clocks agree, and the last day of what ends at midnight. Expected offsets: the IANA time zone database."""

from datetime import UTC, date, datetime

import pytest

from core.calendar.zones import in_last_day, instant, local, same_clock, same_zone

LISBON = "Europe/Lisbon"
TODAY = date(2026, 3, 2)


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        (LISBON, LISBON, True),
        ("Asia/Kolkata", "Asia/Calcutta", True),  # an old name
        ("Europe/Oslo", "Europe/Berlin", True),  # one zone since 1970
        (LISBON, "Europe/London", False),  # alike today, but not in the seventies and nineties
        (LISBON, "Africa/Abidjan", False),
    ],
)
def test_two_names_are_one_zone_where_the_clocks_agree_since_1970(one: str, other: str, same: bool) -> None:
    assert same_zone(one, other, TODAY) is same


@pytest.mark.parametrize(
    ("last", "same"),
    [(date(2026, 3, 27), True), (date(2026, 3, 28), True), (date(2026, 3, 29), False)],
)
def test_clocks_agree_until_the_hour_in_which_one_of_them_changes(last: date, same: bool) -> None:
    assert same_clock(LISBON, "Africa/Abidjan", date(2026, 3, 20), last) is same


@pytest.mark.parametrize(
    "day", [date(2026, 3, 29), date(2026, 10, 25), date(2026, 3, 2)]
)  # 23, 25 and 24 hours
def test_the_last_day_is_the_one_that_ends_at_that_midnight(day: date) -> None:
    midnight = instant(date.fromordinal(day.toordinal() + 1), datetime.min.time(), LISBON)
    assert midnight.tzinfo is UTC
    assert local(in_last_day(midnight), LISBON).date() == day
