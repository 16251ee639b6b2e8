"""Recurrences: what falls when, what is skipped, moved and stored."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calendar.occurrences import Occurrence, next_occurrence, occurrences_between
from core.calendar.recurrence import (
    Moved,
    Once,
    Recurrence,
    Slot,
    Span,
    Weekday,
    move,
    skip,
    weekday_of,
    weekly,
)
from core.calendar.stored import when_from_text, when_to_text
from core.calendar.zones import instant, local

LISBON = "Europe/Lisbon"
MON, THU, SAT = Weekday.MON, Weekday.THU, Weekday.SAT
START = date(2026, 1, 5)  # a Monday


def clock(year: int, month: int, day: int, hour: int = 0, minute: int = 0) -> datetime:
    """A local time, without a zone."""
    return datetime.combine(date(year, month, day), time(hour, minute))


EVENINGS = weekly((MON, THU), time(19), LISBON, START)


def days(recurrence: Recurrence, first: date, last: date) -> list[date]:
    """The local dates on which something takes place, both ends included."""
    begin = datetime.combine(first, time(0), UTC) - timedelta(days=1)
    found = occurrences_between(recurrence, begin, begin + timedelta(days=(last - first).days + 3))
    on = [local(one.at, recurrence.zone).date() for one in found]
    return [day for day in on if first <= day <= last]


def test_mondays_and_thursdays_come_in_order() -> None:
    assert days(EVENINGS, date(2026, 1, 1), date(2026, 1, 16)) == [
        date(2026, 1, 5),
        date(2026, 1, 8),
        date(2026, 1, 12),
        date(2026, 1, 15),
    ]


def test_nothing_falls_before_the_start_or_after_the_end() -> None:
    six_weeks = weekly((SAT,), time(9), LISBON, date(2026, 1, 3), weeks=6)
    found = days(six_weeks, date(2025, 12, 1), date(2026, 12, 31))
    assert (found[0], found[-1], len(found)) == (date(2026, 1, 3), date(2026, 2, 7), 6)


def test_every_other_week_counts_whole_weeks_from_monday() -> None:
    every_other = weekly((MON, THU), time(19), LISBON, date(2026, 1, 7), every=2)
    assert days(every_other, date(2026, 1, 1), date(2026, 1, 31)) == [
        date(2026, 1, 8),
        date(2026, 1, 19),
        date(2026, 1, 22),
    ]


def test_different_days_may_have_different_times() -> None:
    both = Recurrence((Slot(THU, time(6)), Slot(MON, time(19))), LISBON, START)
    first = next_occurrence(both, datetime(2026, 1, 4, tzinfo=UTC))
    assert first == Occurrence(datetime(2026, 1, 5, 19, tzinfo=UTC), START)
    assert next_occurrence(both, first.at) == Occurrence(
        datetime(2026, 1, 8, 6, tzinfo=UTC), date(2026, 1, 8)
    )


def test_the_next_one_is_strictly_later() -> None:
    at = datetime(2026, 1, 5, 19, tzinfo=UTC)
    assert next_occurrence(EVENINGS, at - timedelta(seconds=1)) == Occurrence(at, START)
    following = next_occurrence(EVENINGS, at)
    assert following is not None
    assert following.day == date(2026, 1, 8)


def test_after_the_last_one_there_is_none() -> None:
    short = replace(EVENINGS, until=date(2026, 1, 8))
    assert next_occurrence(short, datetime(2026, 1, 8, 19, tzinfo=UTC)) is None


def test_a_skipped_date_and_a_skipped_week_do_not_happen() -> None:
    without = skip(skip(EVENINGS, date(2026, 1, 8)), date(2026, 1, 12), date(2026, 1, 18))
    assert days(without, START, date(2026, 1, 25)) == [START, date(2026, 1, 19), date(2026, 1, 22)]


def test_a_moved_session_keeps_its_name_and_happens_once() -> None:
    changed = move(EVENINGS, date(2026, 1, 8), clock(2026, 1, 9, 19))
    found = occurrences_between(changed, datetime(2026, 1, 6, tzinfo=UTC), datetime(2026, 1, 12, tzinfo=UTC))
    assert found == (Occurrence(datetime(2026, 1, 9, 19, tzinfo=UTC), date(2026, 1, 8)),)


def test_moving_again_replaces_the_first_move() -> None:
    once = move(EVENINGS, date(2026, 1, 8), clock(2026, 1, 9, 19))
    twice = move(once, date(2026, 1, 8), clock(2026, 1, 10, 8))
    assert twice.moved == (Moved(date(2026, 1, 8), clock(2026, 1, 10, 8)),)


def test_a_week_skipped_after_a_move_follows_where_the_session_stands() -> None:
    moved_out = move(EVENINGS, date(2026, 1, 8), clock(2026, 1, 13, 7))
    assert days(skip(moved_out, date(2026, 1, 5), date(2026, 1, 11)), START, date(2026, 1, 14)) == [
        date(2026, 1, 12),
        date(2026, 1, 13),
    ]
    assert days(skip(moved_out, date(2026, 1, 12), date(2026, 1, 18)), START, date(2026, 1, 18)) == [START]


def test_what_is_not_planned_cannot_be_moved() -> None:
    with pytest.raises(ValueError, match="day"):
        move(EVENINGS, date(2026, 1, 6), clock(2026, 1, 9, 19))
    with pytest.raises(ValueError, match="day"):
        move(skip(EVENINGS, date(2026, 1, 8)), date(2026, 1, 8), clock(2026, 1, 9, 19))


def test_a_single_time_happens_once() -> None:
    once = Once(clock(2026, 7, 1, 7, 30), LISBON)
    at = datetime(2026, 7, 1, 6, 30, tzinfo=UTC)
    assert next_occurrence(once, at - timedelta(minutes=1)) == Occurrence(at, date(2026, 7, 1))
    assert next_occurrence(once, at) is None
    assert occurrences_between(once, at, at + timedelta(1)) == (Occurrence(at, date(2026, 7, 1)),)
    assert occurrences_between(once, at + timedelta(1), at + timedelta(2)) == ()


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"slots": ()}, "slots"),
        ({"slots": (Slot(MON, time(7)), Slot(MON, time(19)))}, "slots"),
        ({"zone": "Europe/Atlantis"}, "zone"),
        ({"zone": "../etc/passwd"}, "zone"),
        ({"zone": "Europe"}, "zone"),
        ({"zone": ""}, "zone"),
        ({"every": 0}, "every"),
        ({"every": 53}, "every"),
        ({"until": date(2026, 1, 4)}, "until"),
    ],
)
def test_a_bad_field_is_named(change: dict[str, object], field: str) -> None:
    with pytest.raises(ValueError, match=field):
        replace(EVENINGS, **change)  # type: ignore[arg-type]


def test_naive_and_aware_times_are_not_mixed_up() -> None:
    with pytest.raises(ValueError, match="at"):
        next_occurrence(EVENINGS, clock(2026, 1, 1))
    with pytest.raises(ValueError, match="at"):
        Slot(MON, time(7, tzinfo=UTC))
    with pytest.raises(ValueError, match="at"):
        Slot(MON, time(7, 0, 30))
    with pytest.raises(ValueError, match="at"):
        Once(datetime(2026, 1, 1, tzinfo=UTC), LISBON)
    with pytest.raises(ValueError, match="to"):
        Moved(START, datetime(2026, 1, 1, tzinfo=UTC))
    with pytest.raises(ValueError, match="last"):
        Span(START, START - timedelta(1))
    with pytest.raises(ValueError, match="weeks"):
        weekly((MON,), time(7), LISBON, START, weeks=0)


QUARTERS = st.builds(time, st.integers(0, 23), st.sampled_from([0, 15, 30, 45]))
SLOTS = st.lists(
    st.builds(Slot, st.sampled_from(Weekday), QUARTERS), min_size=1, unique_by=lambda slot: slot.weekday
).map(tuple)
DAYS = st.dates(date(2025, 1, 1), date(2028, 12, 31))
ZONES = st.sampled_from(
    ["UTC", LISBON, "America/New_York", "Australia/Lord_Howe", "Asia/Kathmandu", "Africa/Cairo"]
)


@st.composite
def recurrences(draw: st.DrawFn) -> Recurrence:
    plain = Recurrence(draw(SLOTS), draw(ZONES), draw(DAYS), draw(st.integers(1, 5)))
    dates = [plain.start + timedelta(days=offset) for offset in range(60)]
    planned = [day for day in dates if plain.falls_on(day)]
    if draw(st.booleans()):
        # Five past: at the minute of no slot, so that no two fall together.
        to = datetime.combine(draw(DAYS), draw(QUARTERS).replace(minute=5))
        plain = move(plain, draw(st.sampled_from(planned)), to)
    for _ in range(draw(st.integers(0, 2))):
        plain = skip(plain, draw(DAYS))
    return plain


@given(recurrences())
def test_what_is_stored_comes_back_the_same(recurrence: Recurrence) -> None:
    assert when_from_text(when_to_text(recurrence)) == recurrence


@given(recurrences(), st.datetimes(clock(2025, 1, 1), clock(2028, 1, 1), timezones=st.just(UTC)))
def test_the_next_one_is_the_first_of_those_that_follow(recurrence: Recurrence, after: datetime) -> None:
    following = next_occurrence(recurrence, after)
    listed = occurrences_between(recurrence, after + timedelta(microseconds=1), after + timedelta(days=1000))
    assert following is not None or not listed
    if listed and following is not None:
        assert following.at == listed[0].at


@given(recurrences())
def test_a_date_is_never_used_twice_and_times_rise(recurrence: Recurrence) -> None:
    begin = datetime.combine(recurrence.start, time(0), UTC) - timedelta(days=2)
    found = occurrences_between(recurrence, begin, begin + timedelta(days=120))
    assert len({one.day for one in found}) == len(found)
    assert all(one.at < other.at for one, other in pairwise(found))


@given(recurrences(), DAYS)
def test_a_skipped_date_is_free_and_all_others_stay(recurrence: Recurrence, day: date) -> None:
    begin, end = datetime(2024, 12, 1, tzinfo=UTC), datetime(2029, 2, 1, tzinfo=UTC)
    before = occurrences_between(recurrence, begin, end)
    after = occurrences_between(skip(recurrence, day), begin, end)
    on_that_day = {one.day for one in before if placed(recurrence, one) == day}
    assert {one.day for one in after} == {one.day for one in before} - on_that_day


def placed(recurrence: Recurrence, one: Occurrence) -> date:
    """The date an occurrence was put on: its own, or the one it was moved to."""
    return next((moved.to.date() for moved in recurrence.moved if moved.day == one.day), one.day)


@pytest.mark.parametrize(
    "text", ["", "{}", "[]", "null", '{"kind":"weekly"}', '{"kind":"daily"}', '{"kind":["once"]}', "NaN"]
)
def test_what_was_never_stored_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="when"):
        when_from_text(text)


def test_the_stored_form_is_plain_and_stays() -> None:
    text = when_to_text(weekly((MON,), time(19), LISBON, START, every=2, weeks=6))
    assert text == (
        '{"kind":"weekly","slots":[{"weekday":"mon","at":"19:00:00"}],"zone":"Europe/Lisbon",'
        '"start":"2026-01-05","every":2,"until":"2026-02-15","skipped":[],"moved":[],"extra":[]}'
    )
    older = text.replace(',"extra":[]', "")
    assert when_from_text(older) == when_from_text(text)
    assert when_to_text(Once(clock(2026, 7, 1, 7, 30), LISBON)) == (
        '{"kind":"once","at":"2026-07-01T07:30:00","zone":"Europe/Lisbon"}'
    )


def test_a_new_zone_keeps_the_clock_time() -> None:
    travelling = replace(EVENINGS, zone="Asia/Tokyo")
    first = next_occurrence(travelling, datetime(2026, 1, 1, tzinfo=UTC))
    assert first is not None
    assert local(first.at, "Asia/Tokyo").time() == time(19)


def test_weekdays_match_the_calendar() -> None:
    assert [weekday_of(START + timedelta(days=n)) for n in range(7)] == list(Weekday)
    assert [day.number for day in Weekday] == list(range(7))


def test_an_instant_is_in_utc() -> None:
    assert instant(date(2026, 7, 1), time(7), LISBON) == datetime(2026, 7, 1, 6, tzinfo=UTC)
    assert instant(date(2026, 7, 1), time(7), LISBON).tzinfo is UTC
