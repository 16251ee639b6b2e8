"""A session played as a script: the client speaks, time passes, the words and facts are looked at."""

from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta
from decimal import Decimal

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from conversations.protocol import (
    Alert,
    BandsCameOff,
    Begin,
    Cancelled,
    Corrected,
    Countdown,
    Effect,
    Event,
    Halted,
    Hurts,
    Media,
    Opened,
    Record,
    Resumed,
    Said,
    Say,
    Sent,
    TimeIsUp,
    WentBack,
    Woke,
)
from conversations.session import DIALOGUE
from conversations.session.machine import advance
from conversations.session.sets import begin
from conversations.session.state import Brief, Phase, State
from conversations.words import session as words
from core.facts import BandsOff, BandsOn, CuffChecked, SessionEnded, SetDone, WalkDone
from core.plans import FIXED_AIMS, OPEN_AIMS, Exercise, Region, Rung, Scheme, Side
from core.safety.causes import Cause
from core.units import Load

START = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
SQUAT = Exercise("goblet_squat", Region.LEGS, Scheme.OPEN, OPEN_AIMS, Load(Decimal("12")))
CURL = Exercise("curl", Region.ARMS, Scheme.FIXED, FIXED_AIMS, Load(Decimal("4")))


@dataclass
class Played:
    """One session under way: what was said to the client, what was stored."""

    brief: Brief
    now: datetime = START
    state: State | None = None
    said: list[Say] = field(default_factory=list)
    effects: list[Effect] = field(default_factory=list)
    wake_at: datetime | None = None
    over: bool = False
    message: int = 100

    def __post_init__(self) -> None:
        self.give(Opened(self.now, self.brief))

    def give(self, event: Event) -> "Played":
        """One event; the state goes through its stored form, as after a restart."""
        turn = advance(self.state, event, self.now)
        self.said = list(turn.replies)
        self.effects += turn.effects
        self.wake_at = turn.wake_at
        self.over = turn.state is None
        if turn.state is not None:
            self.state = msgspec.json.decode(msgspec.json.encode(turn.state), type=DIALOGUE.state)
        return self

    def types(self, text: str, after_s: float = 1) -> "Played":
        """The client types."""
        self.now += timedelta(seconds=after_s)
        self.message += 1
        return self.give(Said(self.now, text, None, self.message))

    def taps(self, value: str, question: str, after_s: float = 1) -> "Played":
        """The client taps a button of a question."""
        self.now += timedelta(seconds=after_s)
        return self.give(Said(self.now, value, question))

    def waits(self) -> "Played":
        """Time passes until the session speaks by itself."""
        assert self.wake_at is not None, "nothing would ever happen"
        self.now = self.wake_at
        return self.give(Woke(self.now))

    def fits(self, tightness: str = "7", refill: str = "under_2", feeling: str = "fine") -> "Played":
        """Bands on and checked."""
        self.types("on").types(tightness)
        for _ in range(2):
            self.types(refill if refill.isdigit() else words.REFILL_LABELS[refill])  # type: ignore[index]
        return self.types(words.FEELING_LABELS[feeling])  # type: ignore[index]

    @property
    def heard(self) -> str:
        """The last words."""
        return " | ".join(say.text for say in self.said)

    def facts(self, kind: type) -> list[object]:
        """Facts of one kind, in order."""
        return [
            effect.fact
            for effect in self.effects
            if isinstance(effect, Record) and isinstance(effect.fact, kind)
        ]

    def sets(self) -> dict[int, int]:
        """Reps by set, the latest count of each."""
        return {one.set_no: one.reps for one in self.facts(SetDone)}  # type: ignore[attr-defined]


def played(*exercises: Exercise, **brief: object) -> Played:
    return Played(Brief("1-1", 9, exercises or (SQUAT,), **brief))  # type: ignore[arg-type]


def test_a_whole_session_goes_from_bands_on_to_the_questions_after() -> None:
    p = played()
    assert "Bands on" in p.heard
    p.fits()
    assert "Set 1 of 3" in p.heard
    assert "12 kg" in p.heard
    p.types("done", 120)
    assert words.REPS in p.heard
    assert any(isinstance(effect, Countdown) for effect in p.effects)
    p.types("31", 10)
    assert p.heard == "31, in range."
    p.waits()
    assert p.heard == "Go · set 2 · 10-20"
    p.types("done", 60).types("16").waits()
    assert p.heard == "Go · set 3 · 5-10"
    p.types("done", 40)
    assert "Bands off" in p.said[0].text
    p.types("8").types("off")
    assert p.over
    assert p.sets() == {1: 31, 2: 16, 3: 8}
    assert p.facts(BandsOff)
    assert p.facts(SessionEnded)[0].why == "done"  # type: ignore[attr-defined]
    assert [effect.dialogue for effect in p.effects if isinstance(effect, Begin)] == ["after"]


def test_the_rest_runs_from_set_done_and_go_never_waits_for_the_count() -> None:
    p = played().fits().types("done", 100)
    done_at = p.now
    assert p.wake_at == done_at + timedelta(seconds=30)
    p.waits()
    assert "Go · set 2" in p.heard
    p.types("31")
    assert p.sets() == {1: 31}


def test_a_needless_wake_up_says_nothing_and_keeps_its_time() -> None:
    p = played().fits().types("done", 100)
    due = p.wake_at
    p.now += timedelta(seconds=5)
    p.give(Woke(p.now))
    assert (p.heard, p.wake_at) == ("", due)


def test_tens_then_ones_make_a_count() -> None:
    p = played().fits().types("done", 100).taps("t30", "reps.1.1.0")
    assert p.heard == "Set 1: which number?"
    assert [choice.label for choice in p.said[0].choices[:2]] == ["30", "31"]
    p.taps("31", "reps.1.1.0")
    assert p.sets() == {1: 31}
    p.taps("31", "reps.1.1.0")
    assert p.heard == "Already noted: 31."


def test_the_question_for_the_ones_names_the_set_and_the_side() -> None:
    p = played(ROW).fits().types("done", 200).taps("t20", "reps.1.1.0")
    assert p.heard == "Set 1, left: which number?"
    p.taps("28", "reps.1.1.0").taps("t30", "reps.1.1.1")
    assert p.heard == "Set 1, right: which number?"


def test_a_correction_changes_the_set_it_belongs_to() -> None:
    p = played().fits().types("done", 100).types("13").types("no, 31")
    assert p.heard == "Set 1 is 31 now."
    message = p.message
    p.waits().types("done", 50).types("16")
    p.give(Corrected(p.now, "30", message))
    assert p.sets() == {1: 30, 2: 16}


def test_the_same_number_twice_at_once_counts_once_and_another_one_is_asked_about() -> None:
    p = played().fits().types("done", 100).types("31").types("31", 3)
    assert p.heard == "Already noted: 31."
    p.types("16", 5)
    assert p.heard == "16: set 1 again, or set 2?"
    p.taps("2", "which.1.1.16")
    assert p.sets() == {1: 31, 2: 16}


def test_several_sets_in_one_message_are_taken_as_what_they_are() -> None:
    p = played().fits().types("31 16 8", 200)
    assert p.sets() == {1: 31, 2: 16, 3: 8}
    assert "Bands off" in p.heard


def test_lost_count_is_rough_and_a_second_time_blank() -> None:
    p = played().fits().types("done", 100).types("lost count").types("30")
    assert p.facts(SetDone)[-1].rough is True  # type: ignore[attr-defined]
    p.waits().types("done", 60).types("lost count").types("no idea")
    assert p.sets() == {1: 30}


@pytest.mark.parametrize(("feeling", "why"), [("tingling", "Tingling"), ("colour", "Blue")])
def test_an_odd_feeling_takes_the_bands_off_and_twice_ends_it(feeling: str, why: str) -> None:
    p = played().fits(feeling=feeling)
    assert p.heard.startswith("Bands off now")
    assert why in p.heard
    p.types("off")
    assert "3 minutes" in p.heard
    assert words.LOOSER in p.waits().heard
    p.fits(feeling=feeling)
    assert p.facts(CuffChecked)
    assert [effect.cause for effect in p.effects if isinstance(effect, Alert)] == [Cause.CHECKS_FAILED]
    p.types("off")
    assert p.over


@pytest.mark.parametrize(("seconds", "word"), [("3", "Set 1 of 3"), ("4", "Loosen")])
def test_a_refill_of_three_seconds_goes_and_longer_loosens(seconds: str, word: str) -> None:
    assert word in played().fits(refill=seconds).heard


@pytest.mark.parametrize(
    ("tightness", "word"), [("5", "loose"), ("6", "Set 1"), ("7", "Set 1"), ("8", "Loosen"), ("9", "off")]
)
def test_tightness_decides_on_its_edges(tightness: str, word: str) -> None:
    p = played().types("on").types(tightness)
    if tightness in ("5", "6", "7"):
        p = played().fits(tightness)
    assert word in p.heard


def test_still_loose_after_one_new_fit_goes_on_marked() -> None:
    p = played().fits("5").fits("5").types("done", 90).types("30")
    assert "Set 1" in p.heard or p.sets() == {1: 30}
    assert p.facts(SetDone)[0].loose is True  # type: ignore[attr-defined]


def test_loosening_keeps_the_clock_of_the_bands() -> None:
    p = played().types("on").types("8").fits()
    assert len(p.facts(BandsOn)) == 1


def test_the_bands_are_checked_again_after_set_one_in_the_first_four_sessions() -> None:
    p = Played(Brief("1-1", 4, (SQUAT,))).fits().types("done", 90).types("30").waits()
    assert words.RECHECK in p.heard
    p = Played(Brief("1-1", 5, (SQUAT,))).fits().types("done", 90).types("30").waits()
    assert "Go · set 2" in p.heard


def test_no_set_begins_that_cannot_end_in_time() -> None:
    tight = replace(SQUAT, limit_min=5)
    p = played(tight).fits().types("done", 240).types("30").waits()
    assert "Time's nearly up" in p.heard
    p.types("off")
    assert p.facts(BandsOff)[0].why == "time"  # type: ignore[attr-defined]


def test_a_quiet_set_is_asked_about_and_then_the_coach_hears() -> None:
    p = played().fits().waits()
    assert p.heard == words.QUIET
    p.waits()
    assert "Bands off" in p.heard
    assert [effect.cause for effect in p.effects if isinstance(effect, Alert)] == [Cause.QUIET_SET]


def test_a_burn_may_go_on() -> None:
    p = played().fits()
    p.give(Hurts(p.now, "it hurts"))
    assert "Where" in p.heard
    p.types("a burn").types("go on")
    assert "Set 1 of 3" in p.heard


@pytest.mark.parametrize("where", ["A joint", "Under the band", "Somewhere else"])
def test_any_other_pain_ends_it_with_bands_off(where: str) -> None:
    p = played().fits()
    p.give(Hurts(p.now, "ouch")).types(where)
    assert "Bands off" in p.heard
    assert [effect.cause for effect in p.effects if isinstance(effect, Alert)] == [Cause.BANDS_HURT]


def test_twenty_seconds_of_silence_after_pain_take_the_bands_off() -> None:
    p = played().fits()
    p.give(Hurts(p.now, "ouch"))
    hurt_at = p.now
    p.waits()
    assert p.now == hurt_at + timedelta(seconds=20)
    assert "bands off" in p.heard


def test_arms_and_legs_are_never_banded_together() -> None:
    p = played(SQUAT, CURL).fits().types("30 15 8", 200).types("off")
    assert "3 minutes" in p.heard
    off_at = p.now
    p.waits()
    assert p.now == off_at + timedelta(minutes=3)
    assert "Bands on" in p.heard
    spells = [fact.spell for fact in p.facts(BandsOn)]  # type: ignore[attr-defined]
    assert spells == ["1.1"]
    p.types("on")
    assert len(p.facts(BandsOff)) == 1


def test_fixed_sets_are_four_and_praise_the_number() -> None:
    p = played(CURL).fits().types("30", 90)
    assert p.heard == "30 done."
    p.waits()
    assert p.heard == "Go · set 2 · 15"
    p.types("12", 60)
    assert p.heard == "12 of 15. Fine; we count what was clean."


def fixed_to_the_last_set(*counts: str) -> Played:
    """Four fixed sets of one movement with these counts, the last one ended and not counted yet."""
    p = played(CURL, CURL).fits()
    for no, count in enumerate(counts):
        p = (p.waits() if no else p).types(count, 60)
    return p.waits().types("done", 60)


def test_a_late_count_of_the_last_fixed_set_is_still_followed_by_the_question() -> None:
    p = fixed_to_the_last_set("30", "15", "15").types("off")
    assert words.REPS_LEFT.format(set=4) not in p.heard
    p.types("15", 5)
    assert p.heard.endswith(words.REPS_LEFT.format(set=4))
    p.types("3", 5)
    assert {fact.reps_left for fact in p.facts(SetDone) if fact.set_no == 4} == {None, 3}  # type: ignore[attr-defined]


def test_silence_about_what_was_left_ends_the_session_as_done() -> None:
    p = played(CURL).fits()
    for no, count in enumerate(("30", "15", "15", "15")):
        p = (p.waits() if no else p).types(count, 60)
    p.types("off")
    assert p.heard.endswith(words.REPS_LEFT.format(set=4))
    assert p.waits().over
    assert p.facts(SessionEnded)[-1].why == "done"  # type: ignore[attr-defined]


def test_two_sides_are_counted_in_the_plans_order() -> None:
    row = Exercise(
        "row", Region.ARMS, Scheme.OPEN, OPEN_AIMS, Load(Decimal("8")), sides=(Side.LEFT, Side.RIGHT)
    )
    p = played(row).fits().types("done", 200).types("28 left 31 right")
    found = {fact.side: fact.reps for fact in p.facts(SetDone)}  # type: ignore[attr-defined]
    assert found == {Side.LEFT: 28, Side.RIGHT: 31}


def test_a_gentle_first_session_is_one_movement_two_sets_and_asks_what_was_left() -> None:
    p = Played(Brief("1-1", 1, (SQUAT, CURL), gentle=True)).fits()
    assert "Set 1 of 2" in p.heard
    assert "3 to 5" in p.heard
    p.types("20", 80).waits()
    p.types("7").types(words.REFILL_LABELS["under_2"]).types(words.REFILL_LABELS["under_2"]).types("Fine")  # type: ignore[index]
    p.types("12", 60).types("off")
    assert words.REPS_LEFT.format(set=1) in p.heard
    p.types("4")
    assert p.over
    assert {fact.reps_left for fact in p.facts(SetDone) if fact.set_no == 1} == {None, 4}  # type: ignore[attr-defined]


def test_a_walk_says_the_pulse_to_stay_below_where_there_is_one() -> None:
    walk = Exercise("walk", Region.LEGS, Scheme.WALK, walk_min=10, walk_kmh=4.0, limit_min=15)
    p = Played(Brief("1-1", 5, (walk,), pulse_below=110)).fits()
    assert p.heard.endswith("Pulse below 110.")
    assert "Pulse" not in played(walk).fits().heard


def test_a_slow_rung_says_how_slow() -> None:
    slow = Rung("squat, tempo 2/2")
    squat = Exercise("chair_squat", Region.LEGS, Scheme.OPEN, OPEN_AIMS, rung=slow.name, rungs=(slow,))
    assert "Slow: 2 s up, 2 s down, no stop at either end." in played(squat).fits().heard
    assert "Slow:" not in played().fits().heard


def test_a_walk_has_minutes_and_ends_with_bands_off() -> None:
    walk = Exercise("walk", Region.LEGS, Scheme.WALK, walk_min=10, walk_kmh=4.0, limit_min=15)
    p = played(walk).fits()
    assert "Walk 10 min" in p.heard
    p.waits()
    assert "10 minutes" in p.heard
    p.types("done").types("off")
    assert p.over
    assert p.facts(WalkDone)[0].minutes == pytest.approx(10, abs=0.2)  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("waited_s", "minutes"), [(0, 10), (60, 10), (240, 7), (660 - 60 * 2, 2), (660 - 60, 1)]
)
def test_a_walk_is_as_short_as_the_check_left_time_for(waited_s: int, minutes: int) -> None:
    walk = Exercise("walk", Region.LEGS, Scheme.WALK, walk_min=10, walk_kmh=4.0, limit_min=11)
    at = Played(Brief("1-1", 5, (walk,))).now
    state = replace(State(Brief("1-1", 5, (walk,))), on_at=at - timedelta(seconds=waited_s))
    done = begin(state, at)
    assert done.state is not None
    assert done.state.walk_minutes == minutes
    assert done.wake_at == at + timedelta(minutes=minutes)
    assert ("Shorter than planned" in done.replies[0].text) is (minutes < 10)


def test_a_walk_that_not_a_minute_is_left_for_does_not_start() -> None:
    walk = Exercise("walk", Region.LEGS, Scheme.WALK, walk_min=10, walk_kmh=4.0, limit_min=11)
    at = Played(Brief("1-1", 5, (walk,))).now
    done = begin(replace(State(Brief("1-1", 5, (walk,))), on_at=at - timedelta(seconds=601)), at)
    assert done.state is not None
    assert (done.state.phase, done.state.why) == (Phase.OFF, "time")


def test_a_picture_instead_of_a_number_gets_an_answer_and_the_question_again() -> None:
    p = played().fits()
    p.give(Sent(p.now, Media.VOICE))
    assert "can't listen" in p.said[0].text
    assert "Set 1" in p.said[-1].text


ROW = Exercise("row", Region.ARMS, Scheme.OPEN, OPEN_AIMS, Load(Decimal("8")), sides=(Side.LEFT, Side.RIGHT))


def by_set(p: Played) -> dict[tuple[int, int, Side], int]:
    """(exercise, set, side) -> reps, the latest fact of each."""
    found = p.facts(SetDone)
    return {(one.exercise_no, one.set_no, one.side): one.reps for one in found}  # type: ignore[attr-defined]


def test_a_second_tap_under_the_left_sides_count_is_not_the_right_sides() -> None:
    p = played(ROW).fits().types("done", 200).taps("28", "reps.1.1.0").taps("28", "reps.1.1.0", 7)
    assert p.heard == "Already noted: 28. | Right: how many clean reps?"
    p.taps("31", "reps.1.1.1")
    assert by_set(p) == {(1, 1, Side.LEFT): 28, (1, 1, Side.RIGHT): 31}


def test_a_count_that_names_its_side_never_goes_to_the_other() -> None:
    p = played(ROW).fits().types("done", 200).types("31 right")
    assert "Left: how many" in p.heard
    p.types("27 left").types("28 left", 7)
    assert "Right: how many" in p.heard
    p.types("31 right", 7)
    assert by_set(p) == {(1, 1, Side.LEFT): 28, (1, 1, Side.RIGHT): 31}


def test_both_sides_at_once_replace_what_one_side_had() -> None:
    p = played(ROW).fits().types("done", 200).types("27").types("28 left 31 right", 7)
    assert by_set(p) == {(1, 1, Side.LEFT): 28, (1, 1, Side.RIGHT): 31}


@pytest.mark.parametrize(("apart", "right"), [(0.9, None), (1, 28), (5, 28)])
def test_the_same_number_of_the_same_moment_is_a_copy_and_later_it_is_the_other_side(
    apart: float, right: int | None
) -> None:
    p = played(ROW).fits().types("done", 200).types("28").types("28", apart)
    assert by_set(p).get((1, 1, Side.RIGHT)) == right
    assert p.heard


def test_a_typed_count_right_after_a_tapped_one_is_the_other_sides_though_equal() -> None:
    p = played(ROW).fits().types("done", 200).taps("28", "reps.1.1.0").types("28", 3)
    assert by_set(p) == {(1, 1, Side.LEFT): 28, (1, 1, Side.RIGHT): 28}


def test_an_edit_changes_the_side_that_its_message_had_said() -> None:
    p = played(ROW).fits().types("done", 200).types("28").types("31", 7)
    p.give(Corrected(p.now, "30", p.message))
    assert by_set(p) == {(1, 1, Side.LEFT): 28, (1, 1, Side.RIGHT): 30}
    p.give(Corrected(p.now, "29", p.message - 1))
    assert by_set(p) == {(1, 1, Side.LEFT): 29, (1, 1, Side.RIGHT): 30}


def test_a_count_button_of_the_movement_before_fills_nothing() -> None:
    p = played(SQUAT, CURL).fits().types("31 16 8", 200).types("off").waits().fits().types("done", 120)
    p.taps("40", "reps.1.1.0")
    assert p.heard == words.STALE
    assert by_set(p).get((2, 1, Side.BOTH)) is None


def test_set_1_or_set_2_answered_after_go_does_not_skip_a_set() -> None:
    p = played().fits().types("done", 100).types("31").types("16", 8).waits()
    assert p.heard == "Go · set 2 · 10-20"
    p.taps("2", "which.1.1.16")
    assert p.sets() == {1: 31, 2: 16}


def test_set_1_or_set_2_answered_when_time_is_up_begins_nothing() -> None:
    p = played().fits().types("done", 100).types("31").types("16", 8)
    p.give(TimeIsUp(p.now, "1.1")).taps("2", "which.1.1.16")
    assert p.heard == words.STALE
    assert p.state is not None
    assert p.state.phase is Phase.OFF


def test_buttons_about_an_earlier_number_do_not_place_the_later_one() -> None:
    p = played().fits().types("done", 100).types("31").types("15", 8).types("16", 1)
    assert p.taps("2", "which.1.1.15").sets() == {1: 31, 2: 15}
    p.taps("2", "which.1.1.16")
    assert p.heard == words.STALE
    assert p.sets() == {1: 31, 2: 15}


def test_a_count_that_is_missing_when_the_bands_come_off_is_asked_for_by_its_set() -> None:
    p = played().fits().types("done", 100).waits().types("done", 60).taps("16", "reps.1.2.0")
    p.waits().types("done", 40).taps("8", "reps.1.3.0").types("off")
    assert p.heard == "Set 1: how many clean reps?"
    assert not p.over
    assert p.taps("31", "reps.1.1.0").over


def test_a_late_count_in_a_gentle_session_is_no_answer_to_what_was_left() -> None:
    p = Played(Brief("1-1", 5, (SQUAT,), gentle=True)).fits().types("20", 80).waits()
    p.types("done", 60).types("off").types("12")
    assert p.sets() == {1: 20, 2: 12}
    assert p.heard.endswith(words.REPS_LEFT.format(set=1))


def test_what_was_left_survives_a_correction() -> None:
    p = Played(Brief("1-1", 5, (SQUAT, CURL), gentle=True)).fits().types("20", 80).waits()
    p.types("12", 60).types("off").taps("4", "left.1").types("no, 21")
    last = [fact for fact in p.facts(SetDone) if fact.set_no == 1][-1]  # type: ignore[attr-defined]
    assert last.reps_left == 4  # type: ignore[attr-defined]


TEXTS = st.sampled_from(
    ["on", "7", "9", "off", "done", "31", "31 16 8", "no, 30", "lost count", "fine", "??", "", "back"]
)
OTHERS = st.sampled_from(
    ["woke", "hurts", "halted", "resumed", "back", "cancel", "photo", "up", "off", "edit", "late"]
)


@settings(max_examples=150, deadline=None)
@given(st.lists(st.one_of(TEXTS, OTHERS), max_size=25))
def test_any_event_in_any_state_is_answered_and_bands_never_stay_on_unwatched(script: list[str]) -> None:
    p = played(SQUAT, CURL)
    for word in script:
        if p.over:
            break
        p.now += timedelta(seconds=7)
        at = p.now
        events: dict[str, Event] = {
            "woke": Woke(at),
            "hurts": Hurts(at, "ouch"),
            "halted": Halted(at, "said_nerve"),
            "resumed": Resumed(at),
            "back": WentBack(at),
            "cancel": Cancelled(at),
            "photo": Sent(at, Media.PHOTO),
            "up": TimeIsUp(at, "1.1"),
            "off": BandsCameOff(at, "1.1"),
            "edit": Corrected(at, "22", 103),
            "late": Said(at, "31", "reps.1.1.0"),
        }
        p.give(events.get(word) or Said(at, word, None, 103))
    on = {fact.spell for fact in p.facts(BandsOn)}  # type: ignore[attr-defined]
    checked = {fact.spell for fact in p.facts(CuffChecked) if fact.verdict in ("go", "ease")}  # type: ignore[attr-defined]
    sets_of = {f"{fact.exercise_no}" for fact in p.facts(SetDone)}  # type: ignore[attr-defined]
    assert sets_of <= {spell.split(".")[0] for spell in checked & on}
    if p.state is not None and not p.over and p.state.phase is Phase.SET:
        assert p.wake_at is not None


@pytest.mark.parametrize(("after_s", "asks"), [(10, False), (11, True)])
def test_a_number_well_into_the_next_set_is_asked_about_when_the_last_count_is_missing(
    after_s: int, asks: bool
) -> None:
    p = played().fits().types("done", 100)
    p.waits().types("17", after_s)
    assert (p.heard == "17: for set 1, or set 2?") is asks
    assert p.sets() == ({} if asks else {1: 17})
    if asks:
        p.taps("2", "which.1.1.17")
        assert p.sets() == {2: 17}


@pytest.mark.parametrize(("chosen", "stored"), [("1", {1: 10, 2: 15}), ("3", {2: 15, 3: 10})])
def test_a_number_in_set_3_is_not_put_at_set_1_that_was_never_counted(
    chosen: str, stored: dict[int, int]
) -> None:
    p = played().fits().types("done", 100)
    p.waits().types("done", 60).types("15", 4)
    p.waits().types("10", 25)
    assert p.heard == "10: for set 1, or set 3?"
    assert p.sets() == {2: 15}
    p.taps(chosen, "which.1.2.10")
    assert p.sets() == stored


def test_one_number_after_both_sides_corrects_the_side_said_last_and_never_both() -> None:
    p = played(ROW).fits().types("done").types("17").types("16").types("no, 18")
    assert by_set(p) == {(1, 1, Side.LEFT): 17, (1, 1, Side.RIGHT): 18}
    assert "17 and 18" in p.heard
    p = played(ROW).fits().types("done").types("17 left 16 right").types("no, 18")
    assert by_set(p) == {(1, 1, Side.LEFT): 17, (1, 1, Side.RIGHT): 16}
