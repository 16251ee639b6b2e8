"""One change to the days of a plan, as a new value."""

from datetime import UTC, date, datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calendar.changing import added, in_zone, left_out, name_of, on_date, planned_in, replaced, shifted
from core.calendar.occurrences import next_occurrence, occurrences_between
from core.calendar.recurrence import Once, Recurrence, Slot, Span, Weekday, weekly
from core.calendar.stored import when_from_text, when_to_text
from core.calendar.zones import instant, local

LISBON = "Europe/Lisbon"
MON, THU = Weekday.MON, Weekday.THU
PLAN = weekly((MON, THU), time(19), LISBON, date(2026, 1, 5))
NOW = datetime(2026, 1, 6, 12, tzinfo=UTC)  # a Tuesday


def clock(month: int, day: int, hour: int) -> datetime:
    """A local time of 2026."""
    return datetime.combine(date(2026, month, day), time(hour))


def days(when: Recurrence | Once, weeks: int = 3) -> list[str]:
    """Local dates and times of the next weeks."""
    found = occurrences_between(when, NOW, NOW + timedelta(weeks=weeks))
    return [f"{local(one.at, when.zone):%a %d %H:%M}" for one in found]


def test_a_moved_session_is_found_on_its_new_date_and_can_be_moved_again() -> None:
    thursday = on_date(PLAN, date(2026, 1, 8))
    assert thursday is not None
    once = shifted(PLAN, thursday, clock(1, 9, 18))
    assert on_date(once, date(2026, 1, 8)) is None
    friday = on_date(once, date(2026, 1, 9))
    assert friday is not None
    assert days(shifted(once, friday, clock(1, 10, 9)))[:2] == ["Sat 10 09:00", "Mon 12 19:00"]


def test_an_extra_session_stands_beside_the_rule_and_moves_and_goes_like_any_other() -> None:
    more = added(PLAN, clock(1, 10, 10), LISBON)
    assert days(more)[:3] == ["Thu 08 19:00", "Sat 10 10:00", "Mon 12 19:00"]
    saturday = on_date(more, date(2026, 1, 10))
    assert saturday is not None
    assert days(shifted(more, saturday, clock(1, 11, 9)))[1] == "Sun 11 09:00"
    gone = left_out(more, Span(date(2026, 1, 10), date(2026, 1, 10)))
    assert gone is not None
    assert days(gone) == days(PLAN)


def test_a_date_with_a_session_takes_no_second_one() -> None:
    with pytest.raises(ValueError, match="has a session already"):
        added(PLAN, clock(1, 8, 7), LISBON)


def test_without_fixed_days_a_single_session_is_all_there_is() -> None:
    one = added(None, clock(1, 8, 7), LISBON)
    assert one == Once(clock(1, 8, 7), LISBON)
    two = added(one, clock(1, 10, 8), LISBON)
    assert days(two) == ["Thu 08 07:00", "Sat 10 08:00"]
    assert when_from_text(when_to_text(two)) == two
    assert left_out(two, Span(date(2026, 1, 8), date(2026, 1, 10))) is None
    assert left_out(one, Span(date(2026, 1, 8), date(2026, 1, 8))) is None


def test_new_days_from_a_later_date_leave_what_comes_before_them() -> None:
    new = weekly((Weekday.SAT,), time(9), LISBON, date(2026, 1, 17))
    assert days(replaced(PLAN, new, NOW)) == [
        "Thu 08 19:00",
        "Mon 12 19:00",
        "Thu 15 19:00",
        "Sat 17 09:00",
        "Sat 24 09:00",
    ]
    assert replaced(None, new, NOW) == new


def test_whoever_travels_keeps_the_hour_on_the_clock_there() -> None:
    there = in_zone(PLAN, "Asia/Tokyo")
    coming = next_occurrence(there, NOW)
    assert coming is not None
    assert local(coming.at, "Asia/Tokyo").hour == 19


def test_a_session_has_one_name_in_any_zone_and_another_once_it_is_moved() -> None:
    thursday = on_date(PLAN, date(2026, 1, 8))
    away = on_date(in_zone(PLAN, "Asia/Tokyo"), date(2026, 1, 8))
    assert thursday is not None
    assert away is not None
    assert name_of(PLAN, thursday) == name_of(in_zone(PLAN, "Asia/Tokyo"), away) == "2026-01-08"
    moved = shifted(PLAN, thursday, clock(1, 8, 20))
    [later] = planned_in(moved, Span(date(2026, 1, 8), date(2026, 1, 8)))
    assert name_of(moved, later) == "2026-01-08>2026-01-08T20:00"


@given(st.integers(0, 27), st.integers(0, 27), st.integers(0, 23))
def test_moving_changes_one_session_and_no_other(which: int, ahead: int, hour: int) -> None:
    before = planned_in(PLAN, Span(date(2026, 1, 5), date(2026, 3, 1)))
    session = before[which % len(before)]
    to = datetime.combine(session.day + timedelta(days=ahead - 14), time(hour))
    after = occurrences_between(
        shifted(PLAN, session, to), instant(date(2025, 12, 1), time(0), LISBON), NOW + timedelta(days=90)
    )
    kept = {one for one in before if one != session}
    assert kept <= set(after)
    assert instant(to.date(), to.time(), LISBON) in {one.at for one in after}


@given(st.dates(date(2026, 1, 1), date(2026, 3, 1)), st.integers(0, 20))
def test_what_is_left_out_is_gone_and_the_rest_stays(first: date, length: int) -> None:
    span = Span(first, first + timedelta(days=length))
    rest = left_out(PLAN, span)
    assert rest is not None
    assert planned_in(rest, span) == ()
    year = Span(date(2026, 1, 1), date(2026, 6, 1))
    assert set(planned_in(rest, year)) == {
        one for one in planned_in(PLAN, year) if local(one.at, LISBON).date() not in span
    }


def test_two_slots_of_one_weekday_are_still_refused() -> None:
    with pytest.raises(ValueError, match="slots"):
        Recurrence(
            (Slot(MON, time(7)), Slot(MON, time(19))),
            LISBON,
            date(2026, 1, 5),
            extra=(clock(1, 6, 7),),
        )
