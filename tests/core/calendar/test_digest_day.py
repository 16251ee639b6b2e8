"""The weekly digest: the day and hour of choice, on the local clock, and never two of one week."""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import available_timezones

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calendar.digest_time import USUAL, next_digest, slot_from_text, slot_to_text
from core.calendar.recurrence import WEEK, Slot, Weekday, weekday_of
from core.calendar.zones import instant, local

LISBON = "Europe/Lisbon"
SLOTS = st.builds(Slot, st.sampled_from(WEEK), st.builds(time, st.integers(0, 23), st.integers(0, 59)))
ZONES = st.sampled_from(sorted(available_timezones()))
EPOCH = datetime(2020, 1, 1, tzinfo=UTC)
TIMES = st.builds(lambda hours: EPOCH + timedelta(hours=hours), st.integers(0, 15 * 8760))


@given(SLOTS)
def test_a_slot_comes_back_as_it_was_stored(slot: Slot) -> None:
    assert slot_from_text(slot_to_text(slot)) == slot
    assert slot_from_text("") == USUAL


@pytest.mark.parametrize("text", ["sunday 18:00", "sun", "sun 25:00", "18:00"])
def test_what_is_no_slot_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"is not|Invalid|must be in"):
        slot_from_text(text)


@given(SLOTS, ZONES, TIMES)
def test_the_first_one_comes_within_eight_days_at_that_local_time(
    slot: Slot, zone: str, now: datetime
) -> None:
    coming = next_digest(slot, zone, now, None)
    assert now < coming.at <= now + timedelta(days=8)
    assert coming.at == instant(coming.day, slot.at, zone)
    assert weekday_of(coming.day) is slot.weekday


@given(st.lists(SLOTS, min_size=1, max_size=6), ZONES, TIMES)
def test_however_often_it_is_changed_there_are_seven_dates_between_two(
    slots: list[Slot], zone: str, now: datetime
) -> None:
    last: date | None = None
    for slot in slots:
        coming = next_digest(slot, zone, now, last)
        assert coming.at > now
        assert last is None or timedelta(days=7) <= coming.day - last <= timedelta(days=14)
        now, last = coming.at, coming.day


@pytest.mark.parametrize(("days", "waits"), [(6, True), (7, False)])
def test_six_dates_are_too_soon_and_seven_are_not(days: int, waits: bool) -> None:
    sunday = Slot(Weekday.SUN, time(18))
    now = datetime(2026, 3, 3, 12, tzinfo=UTC)
    last = date(2026, 3, 8) - timedelta(days=days)
    assert next_digest(sunday, LISBON, now, last).day == date(2026, 3, 15 if waits else 8)


def test_eighteen_stays_eighteen_when_the_clocks_change() -> None:
    now, last = datetime(2026, 3, 20, tzinfo=UTC), None
    for _ in range(3):
        coming = next_digest(Slot(Weekday.SUN, time(18)), LISBON, now, last)
        assert local(coming.at, LISBON).time() == time(18)
        now, last = coming.at, coming.day
    assert [coming.at.hour] == [17]  # summer time by then
