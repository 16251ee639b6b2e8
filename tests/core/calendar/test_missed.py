"""Missed sessions: seen the next day, forgiven when done a day off, two in a row for the coach."""

from datetime import UTC, date, datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calendar.missed import TELL_COACH_AFTER, Attendance, ask_at, attendance, missed_in_a_row
from core.calendar.occurrences import Occurrence, occurrences_between
from core.calendar.recurrence import Weekday, weekly

LISBON = "Europe/Lisbon"
DONE, MISSED, AHEAD = Attendance.DONE, Attendance.MISSED, Attendance.AHEAD
START = datetime(2026, 7, 6, tzinfo=UTC)  # a Monday
MON_WED_FRI = weekly((Weekday.MON, Weekday.WED, Weekday.FRI), time(19), LISBON, date(2026, 7, 6))
PLANNED = occurrences_between(MON_WED_FRI, START, START + timedelta(days=7))


def at(days: float) -> datetime:
    return START + timedelta(days=days, hours=18)


def became(done: list[float], now: float) -> list[Attendance]:
    return [one.attendance for one in attendance(PLANNED, [at(day) for day in done], at(now), LISBON)]


def test_today_is_not_missed_yet_and_tomorrow_it_is() -> None:
    assert became([], 0.2) == [AHEAD, AHEAD, AHEAD]
    assert became([], 0.3) == [MISSED, AHEAD, AHEAD]  # past midnight in Lisbon


@pytest.mark.parametrize(("done", "result"), [(-1, DONE), (0, DONE), (1, DONE), (-2, MISSED)])
def test_a_session_a_day_off_still_counts(done: float, result: Attendance) -> None:
    assert became([done], 1.5)[0] is result


def test_one_session_counts_for_one_plan_only() -> None:
    assert became([1], 3) == [DONE, MISSED, AHEAD]
    assert became([1, 1.1], 3) == [DONE, DONE, AHEAD]
    assert became([2], 3) == [MISSED, DONE, AHEAD]


def test_two_missed_in_a_row_are_for_the_coach_and_one_done_clears_them() -> None:
    kept = attendance(PLANNED, [at(0)], at(3), LISBON)
    assert missed_in_a_row(kept) == TELL_COACH_AFTER - 1
    kept = attendance(PLANNED, [at(0)], at(5), LISBON)
    assert missed_in_a_row(kept) == TELL_COACH_AFTER == 2
    kept = attendance(PLANNED, [at(4)], at(5), LISBON)
    assert missed_in_a_row(kept) == 0


def test_the_question_comes_the_next_morning_on_the_clients_clock() -> None:
    assert ask_at(PLANNED[0], LISBON) == datetime(2026, 7, 7, 9, tzinfo=UTC)


@given(st.lists(st.floats(-3, 10), max_size=6), st.floats(0, 10))
def test_as_many_are_done_as_sessions_at_most_and_nothing_is_lost(done: list[float], now: float) -> None:
    kept = attendance(PLANNED, [at(day) for day in done], at(now), LISBON)
    assert [one.occurrence for one in kept] == list(PLANNED)
    assert sum(one.attendance is DONE for one in kept) <= len(done)


@given(st.lists(st.floats(-3, 10), max_size=6), st.floats(0, 10), st.floats(-3, 10))
def test_one_session_more_never_adds_a_missed_one(done: list[float], now: float, extra: float) -> None:
    before, after = became(done, now), became([*done, extra], now)
    assert after.count(MISSED) <= before.count(MISSED)


def test_nothing_planned_is_nothing_missed() -> None:
    nothing: list[Occurrence] = []
    assert attendance(nothing, [at(0)], at(1), LISBON) == ()
    assert missed_in_a_row(()) == 0
