"""The numbers of a report, from facts."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calendar.missed import Attendance, Kept
from core.calendar.occurrences import Occurrence
from core.facts import CuffChecked, Measured, Rated, SessionEnded, SetDone, WalkDone
from core.outcomes import Change
from core.plans import Side
from core.report import Report, Taken, checks, pain_trend, report
from core.safety.asking import Part

START = datetime(2026, 1, 5, 19, tzinfo=UTC)  # a Monday
LISBON = "Europe/Lisbon"
EMPTY = Taken(LISBON, START, START + timedelta(days=28))


def at(days: float) -> datetime:
    """So many days after the first session."""
    return START + timedelta(days=days)


def kept(days: int, how: Attendance) -> Kept:
    """A planned session and what became of it."""
    return Kept(Occurrence(at(days), at(days).date()), how)


def a_set(days: int, reps: int, doing: str = "10 kg", set_no: int = 1, side: Side = Side.BOTH) -> SetDone:
    """One set of an open goblet squat."""
    done = at(days)
    return SetDone(
        done,
        f"1-{days}",
        1,
        "goblet_squat",
        set_no,
        side,
        doing,
        reps,
        False,
        done,
        None,
        7,
        False,
        None,
        25,
        40,
    )


def rated(days: float, score: int, part: str = "before", where: str = "joint") -> Rated:
    """Pain, in the session of that day."""
    return Rated(at(days), f"1-{int(days)}", "pain", part, score, where)


def check(verdict: str, tightness: int | None = 7) -> CuffChecked:
    """A look at one leg."""
    return CuffChecked(START, "1-0", "1.1", 1, "left_leg", tightness, "under_2", None, "fine", verdict, "")


def test_nothing_at_all_is_a_report_of_zeros() -> None:
    made = report(EMPTY)
    assert (made.planned, made.done, made.sessions, made.movements, made.pain, made.effort) == (
        0,
        0,
        0,
        (),
        (),
        None,
    )


def test_sessions_still_ahead_are_not_planned_yet_for_attendance() -> None:
    days = (
        kept(0, Attendance.DONE),
        kept(3, Attendance.MISSED),
        kept(14, Attendance.DONE),
        kept(17, Attendance.AHEAD),
    )
    made = report(replace(EMPTY, kept=days))
    assert (made.planned, made.done) == (3, 2)
    assert [(one.monday, one.planned, one.done) for one in made.weeks] == [
        ("2026-01-05", 2, 1),
        ("2026-01-12", 0, 0),
        ("2026-01-19", 1, 1),
    ]


def test_a_session_that_ran_into_its_time_limit_was_done_and_one_that_was_stopped_was_not() -> None:
    ended = [SessionEnded(at(n), f"1-{n}", why) for n, why in enumerate(("done", "time", "said_stop"))]
    made = report(replace(EMPTY, ended=ended))
    assert (made.sessions, made.stopped) == (2, 1)


def test_a_movement_has_its_loads_its_reps_and_how_often_set_1_was_in_range() -> None:
    sets = [a_set(0, 24), a_set(0, 12, set_no=2), a_set(3, 25), a_set(7, 40), a_set(10, 41, "12 kg")]
    [one] = report(replace(EMPTY, sets=sets)).movements
    assert (one.sessions, one.reps, one.first_load, one.last_load) == (4, 142, "10 kg", "12 kg")
    assert (one.in_range, one.ranged) == (2, 4)
    assert [first.reps for first in one.firsts] == [24, 25, 40, 41]


@pytest.mark.parametrize(("reps", "within"), [(19, 0), (20, 1), (30, 1), (31, 0)])
def test_both_ends_of_the_expected_range_belong_to_it(reps: int, within: int) -> None:
    ranges = {("1-0", "goblet_squat"): (20, 30)}
    [one] = report(replace(EMPTY, sets=[a_set(0, reps)], ranges=ranges)).movements
    assert (one.as_expected, one.expected) == (within, 1)


@pytest.mark.parametrize(("reps", "full"), [(29, 0), (30, 1), (31, 1)])
def test_a_fixed_set_counts_when_it_was_done_in_full(reps: int, full: int) -> None:
    fixed = replace(a_set(0, reps), aim_low=30, aim_high=30)
    [one] = report(replace(EMPTY, sets=[fixed])).movements
    assert (one.full, one.fixed, one.ranged, one.percent) == (full, 1, 0, None)


def test_gentle_sessions_say_nothing_of_strength() -> None:
    gentle = replace(a_set(0, 12), aim_low=None, aim_high=None)
    [one] = report(replace(EMPTY, sets=[gentle, a_set(3, 30), a_set(7, 30)])).movements
    assert one.percent == pytest.approx(0)
    assert one.ranged == 2


def test_each_side_is_a_movement_of_its_own() -> None:
    sets = [a_set(0, 28, side=Side.LEFT), a_set(0, 31, side=Side.RIGHT)]
    made = report(replace(EMPTY, sets=sets, names={"goblet_squat": "Goblet squat"}))
    assert [one.name for one in made.movements] == ["Goblet squat, left", "Goblet squat, right"]


def test_pain_is_by_session_and_the_burn_of_the_muscle_is_none() -> None:
    found = [rated(0, 3), rated(0, 6, "after", "muscle"), rated(1, 2, "morning"), rated(3, 1)]
    found[2] = replace(found[2], session="1-0")
    first, second = report(replace(EMPTY, rated=found)).pain
    assert (first.day, first.before, first.after, first.morning) == ("2026-01-05", 3, 0, 2)
    assert (second.before, second.after, second.morning) == (1, None, None)


@pytest.mark.parametrize("part", [*Part, "48h"])
def test_pain_of_every_question_after_the_session_is_in_the_report(part: str) -> None:
    found = [rated(0, 0), replace(rated(2, 4, part), session="1-0")]
    [day] = report(replace(EMPTY, rated=found)).pain
    assert (day.before, day.morning) == (0, 4)


def test_pain_went_down_by_two_points_from_the_first_to_the_last_third() -> None:
    trend = pain_trend([4, 4, 3, 3, 2, 2])
    assert trend is not None
    assert (trend.first, trend.last, trend.change) == (4, 2, Change.DOWN)
    assert pain_trend([4]) is None


def test_the_cuff_checks_are_counted_by_what_came_of_them() -> None:
    found = checks([check("go", 6), check("ease", 5), check("loosen", 9), check("stop", 10)])
    assert (found.looks, found.passed, found.loosened, found.stopped, found.tightness) == (4, 2, 1, 1, 5.5)
    assert checks([]).tightness is None


def test_a_refill_that_cannot_be_seen_is_never_counted_as_fine() -> None:
    unseen = replace(check("ease", 6), because="unseen_refill")
    found = checks([check("go", 6), unseen, replace(unseen, verdict="stop", because="numb,unseen_refill")])
    assert (found.passed, found.unseen, found.stopped) == (1, 1, 1)


def test_a_girth_needs_two_measurements_and_its_change_must_exceed_the_error() -> None:
    found = [
        Measured(at(0), "left_leg", 54.0),
        Measured(at(21), "left_leg", 56.0),
        Measured(at(0), "left_arm", 30.0),
    ]
    [one] = report(replace(EMPTY, measured=found)).girths
    assert (one.limb, one.first_cm, one.last_cm, one.change) == ("left leg", 54.0, 56.0, Change.UP)


def test_days_are_those_of_the_clients_calendar() -> None:
    late = datetime(2026, 1, 5, 20, tzinfo=UTC)
    made = report(replace(EMPTY, zone="Asia/Tokyo", sets=[replace(a_set(0, 30), done_at=late)]))
    assert made.movements[0].firsts[0].day == date(2026, 1, 6).isoformat()


def test_walks_are_added_up() -> None:
    walks = [WalkDone(at(n), f"1-{n}", 1, 10.0, 4.0) for n in range(3)]
    made = report(replace(EMPTY, walks=walks))
    assert (made.walks, made.walk_minutes) == (3, 30.0)


@given(
    st.lists(
        st.tuples(st.integers(0, 20), st.integers(0, 80)),
        min_size=1,
        max_size=30,
        unique_by=lambda pair: pair[0],
    )
)
def test_counts_never_exceed_what_they_are_counted_from(found: list[tuple[int, int]]) -> None:
    ranges = {(f"1-{days}", "goblet_squat"): (20, 30) for days, _ in found[1:]}
    made: Report = report(replace(EMPTY, sets=[a_set(days, reps) for days, reps in found], ranges=ranges))
    [one] = made.movements
    assert 0 <= one.in_range <= one.ranged == len(found)
    assert 0 <= one.as_expected <= one.expected == len(found) - 1
    assert one.reps == sum(reps for _, reps in found)
    assert [first.day for first in one.firsts] == sorted(first.day for first in one.firsts)


def test_the_load_of_the_last_seven_days_and_of_a_week_on_average() -> None:
    last = (START + timedelta(days=28)).date()
    loads = [(last - timedelta(days=ago), 100.0) for ago in (0, 3, 6, 7, 20)]
    made = report(replace(EMPTY, loads=loads))
    assert made.last_week is not None
    assert (made.last_week.load, made.mean_week) == (300.0, 125.0)


def test_without_a_rated_session_there_is_no_load_and_in_the_first_two_weeks_no_mean() -> None:
    assert (report(EMPTY).last_week, report(EMPTY).mean_week) == (None, None)
    until = START + timedelta(days=13)
    assert report(replace(EMPTY, until=until, loads=[(until.date(), 90.0)])).mean_week is None
