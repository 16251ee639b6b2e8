"""What went up in a week, and the one thing to try."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from conversations.words.week import THINGS, week_text
from core.facts import LoadMoved, Rated, SetDone
from core.plans import PAIN_CEILING, Side
from core.week_recap import IN_TURN, LONG_REST_S, Lived, Risen, Try, one_thing, risen

NOW = datetime(2026, 1, 5, 19, tzinfo=UTC)
QUIET = Lived(2, 2)
FIRST = SetDone(NOW, "1-1", 1, "goblet_squat", 1, Side.BOTH, "10 kg", 30, False, NOW, None, 7, False)


def moved(was: str, use: str, action: str = "raise", applied: bool = True) -> LoadMoved:
    """A load that moved."""
    return LoadMoved(NOW, "1-1", "goblet_squat", was, use, action, "because", applied)


def test_two_raises_of_one_week_are_one_rise() -> None:
    week = replace(QUIET, moved=[moved("10 kg", "12 kg"), moved("12 kg", "14 kg")])
    assert risen(week) == (Risen("goblet_squat", "10 kg", "14 kg"),)


def test_what_was_lowered_or_waits_for_the_coach_did_not_rise() -> None:
    week = replace(QUIET, moved=[moved("10 kg", "8 kg", "lower"), moved("10 kg", "12 kg", applied=False)])
    assert risen(week) == ()


@pytest.mark.parametrize(("reps", "rose"), [(31, False), (32, True)])
def test_more_reps_than_ever_at_one_load_are_a_rise_from_two_on(reps: int, rose: bool) -> None:
    week = replace(QUIET, sets=[replace(FIRST, reps=reps)], before=[FIRST, replace(FIRST, reps=28)])
    assert bool(risen(week)) is rose


def test_a_rough_count_is_no_rise_and_another_load_is_not_compared() -> None:
    rough = replace(QUIET, sets=[replace(FIRST, reps=40, rough=True)], before=[FIRST])
    heavier = replace(QUIET, sets=[replace(FIRST, reps=40, doing="12 kg")], before=[FIRST])
    assert risen(rough) == risen(heavier) == ()


@pytest.mark.parametrize(
    ("pain", "thing"), [(PAIN_CEILING, IN_TURN[0]), (PAIN_CEILING + 1, Try.SPARE_THE_JOINT)]
)
def test_pain_above_the_ceiling_comes_first(pain: int, thing: Try) -> None:
    week = replace(QUIET, rated=[Rated(NOW, "1-1", "pain", "before", pain, "joint")])
    assert one_thing(week, 0) is thing
    burn = replace(QUIET, rated=[Rated(NOW, "1-1", "pain", "after", 9, "muscle")])
    assert one_thing(burn, 0) is IN_TURN[0]


@pytest.mark.parametrize(("rest", "thing"), [(LONG_REST_S, IN_TURN[0]), (LONG_REST_S + 1, Try.REST_SHORT)])
def test_long_rests_are_named(rest: float, thing: Try) -> None:
    week = replace(QUIET, sets=[FIRST, replace(FIRST, set_no=2, rest_s=rest)])
    assert one_thing(week, 0) is thing


def test_a_missed_day_loose_bands_and_lost_counts_are_named_in_this_order() -> None:
    sets = [replace(FIRST, loose=True, rough=True), FIRST]
    assert one_thing(replace(QUIET, done=1, sets=sets), 0) is Try.KEEP_A_DAY
    assert one_thing(replace(QUIET, sets=sets), 0) is Try.FIT_FIRST
    assert one_thing(replace(QUIET, sets=[replace(one, loose=False) for one in sets]), 0) is Try.COUNT_ALOUD


def test_when_nothing_stands_out_the_advice_changes_from_week_to_week() -> None:
    assert [one_thing(QUIET, week) for week in range(4)] == [*IN_TURN, IN_TURN[0]]


def test_every_advice_has_its_words() -> None:
    assert set(THINGS) == set(Try)


def test_the_week_is_four_short_lines() -> None:
    up = (Risen("goblet_squat", "10 kg", "12 kg"), Risen("curl", "28", "31", "4 kg"))
    text = week_text(
        QUIET,
        up,
        Try.SLOW_DOWN,
        ["Monday 12 January 2026, 19:00 (Lisbon time)"],
        {"goblet_squat": "Goblet squat"},
    )
    assert text.splitlines() == [
        "Your week: 2 of 2, all of it.",
        "Up: Goblet squat 10 kg to 12 kg; curl 28 to 31 reps at 4 kg.",
        "One thing to try: two seconds up, two seconds down, no stop at either end.",
        "Next: Monday 12 January 2026, 19:00 (Lisbon time).",
    ]


@pytest.mark.parametrize(
    ("planned", "done", "begins"),
    [(2, 1, "Your week: 1 of 2 sessions."), (1, 1, "Your week: 1 of 1 session."), (2, 3, "Your week: 3 sessions."),
     (0, 2, "Your week: 2 sessions."), (2, 0, "No session this week; that happens.")],
)  # fmt: skip
def test_the_first_line_counts_without_guilt(planned: int, done: int, begins: str) -> None:
    lines = week_text(Lived(planned, done), (), Try.SLOW_DOWN, [], {}).splitlines()
    assert lines[0] == begins
    assert len(lines) == (3 if done else 2)
