"""What tired people type: on and off in other words, corrections, the same button twice, a half rep, silence."""

from dataclasses import replace
from datetime import timedelta

import pytest

from conversations.protocol import Alert, Corrected, TooTight, WentBack
from conversations.session.state import Phase
from conversations.words import session as words
from core.facts import BandsOff, BandsOn, SetDone, WalkDone
from core.plans import Exercise, Region, Scheme, Side
from core.safety.causes import Cause
from tests.conversations.test_session import SQUAT, Played, played

ROW = replace(SQUAT, movement="one_arm_row", region=Region.ARMS)


def causes(p: Played) -> list[Cause]:
    """Why the coach is told."""
    return [effect.cause for effect in p.effects if isinstance(effect, Alert)]


def in_the_break(*reps: str) -> Played:
    """All sets of the first of two movements done, bands off."""
    p = played(SQUAT, SQUAT).fits()
    for no, count in enumerate(reps):
        p.types("done", 60).types(count)
        if no < len(reps) - 1:
            p.waits()
    return p.types("off")


@pytest.mark.parametrize(
    "text", ["bands on", "they're on", "ok on", "both on now", "Done.", "yes they are on"]
)
def test_bands_on_in_any_words_starts_their_clock(text: str) -> None:
    assert len(played().types(text).facts(BandsOn)) == 1


@pytest.mark.parametrize("text", ["not on yet", "wait", "one is off", "how tight?", "can't get it on", "31"])
def test_words_that_doubt_it_start_nothing(text: str) -> None:
    p = played().types(text)
    assert p.facts(BandsOn) == []
    assert p.said[-1].asks == "on.1.1"


@pytest.mark.parametrize("text", ["bands off", "they're off", "ok, off", "both off now"])
def test_bands_off_in_any_words_is_heard(text: str) -> None:
    p = played().fits().types("31 16 8", 200).types(text)
    assert len(p.facts(BandsOff)) == 1


@pytest.mark.parametrize("text", ["not off yet", "I can't get it off", "one is still on"])
def test_bands_that_stay_on_are_not_taken_for_off(text: str) -> None:
    assert played().fits().types("31 16 8", 200).types(text).facts(BandsOff) == []


@pytest.mark.parametrize(
    ("text", "sets"),
    [
        ("no, set 1 was 21", {1: 21, 2: 16, 3: 8}),
        ("set 1 21", {1: 21, 2: 16, 3: 8}),
        ("sorry, set 2 is 18", {1: 31, 2: 18, 3: 8}),
        ("no wait 15 reps", {1: 31, 2: 16, 3: 15}),
        ("oops, I meant 9", {1: 31, 2: 16, 3: 9}),
        ("that was 9 reps", {1: 31, 2: 16, 3: 9}),
    ],
)
def test_a_correction_changes_the_set_that_it_names_else_the_last(text: str, sets: dict[int, int]) -> None:
    assert in_the_break("31", "16", "8").types(text).sets() == sets


def test_a_bare_number_that_nobody_asked_for_changes_nothing_by_itself() -> None:
    p = in_the_break("31", "16", "8").types("26")
    assert p.heard == "26: change set 3 from 8 to that?"
    assert p.sets() == {1: 31, 2: 16, 3: 8}
    assert p.types("no").sets() == {1: 31, 2: 16, 3: 8}
    assert p.types("26").types("yes").sets() == {1: 31, 2: 16, 3: 26}


def test_a_set_that_is_not_there_yet_is_not_invented() -> None:
    p = in_the_break("31", "16", "8").types("set 5 was 9")
    assert p.heard == words.NO_SUCH_SET.format(n=5)


def test_one_comma_is_no_half_rep_and_does_not_end_the_work() -> None:
    p = played().fits().types("12,5", 60)
    assert p.heard == words.NO_HALVES
    assert p.sets() == {}


def test_more_numbers_than_sets_are_said_to_be_too_many() -> None:
    p = played(gentle=True).fits().types("31 16 8", 200)
    assert p.heard == words.TOO_MANY.format(numbers=3, sets=2)
    assert p.sets() == {}


def test_the_lost_count_button_twice_is_one_answer() -> None:
    p = played().fits().types("done", 100)
    p.taps("lost", "reps.1.1.0").taps("lost", "reps.1.1.0")
    assert p.said[-1].text == words.BEST_GUESS
    p.taps("blank", "reps.1.1.0")
    assert p.heard == words.LEFT_BLANK


def test_set_done_twice_says_one_short_thing() -> None:
    p = played().fits().types("31 16", 100)
    p.taps("done", "done.1.1")
    assert p.heard == words.STALE


def test_an_edit_of_a_message_that_stated_nothing_is_asked_about() -> None:
    p = played().fits().types("31", 100)
    p.give(Corrected(p.now, "13", 999))
    assert p.heard == words.EDIT_OF_WHAT


def test_a_count_after_a_set_that_went_quiet_still_counts() -> None:
    p = played().fits()
    p.waits().waits()
    assert causes(p) == [Cause.QUIET_SET]
    p.types("sorry phone was away, 31 reps")
    assert p.sets() == {1: 31}
    assert "Bands off" in p.said[-1].text


def test_a_check_left_open_with_bands_on_is_asked_about_and_then_the_coach_hears() -> None:
    p = played().types("on").types("6")
    p.now += timedelta(seconds=119)
    p.waits()
    assert words.QUIET_CHECK in p.heard
    p.waits()
    assert causes(p) == [Cause.QUIET_SET]
    assert "Bands off" in p.heard


def test_an_answer_after_still_there_goes_on_as_if_nothing_was() -> None:
    p = played().types("on").types("6").waits()
    p.types("Under 2 seconds")
    assert causes(p) == []
    assert p.said[-1].asks == "refill.1.1.1.1"


def test_back_in_the_check_asks_the_question_before() -> None:
    p = played().types("on").types("6").types("Under 2 seconds").types("About 3 seconds")
    assert p.state is not None
    assert p.state.phase is Phase.FEEL
    for phase, limb in ((Phase.REFILL, 1), (Phase.REFILL, 0), (Phase.TIGHT, 0), (Phase.TIGHT, 0)):
        p.give(WentBack(p.now))
        assert p.state is not None
        assert (p.state.phase, p.state.limb) == (phase, limb)


def test_too_tight_before_the_bands_are_on_is_advice_and_no_failure() -> None:
    p = played()
    p.give(TooTight(p.now, "too tight"))
    assert p.heard == words.FIT_LOOSER


def test_the_second_failed_check_begins_with_bands_off() -> None:
    p = played().fits(feeling="tingling")
    p.types("off").waits()
    p.fits(feeling="tingling")
    assert causes(p) == [Cause.CHECKS_FAILED]
    assert p.said[0].text.startswith("Bands off now")
    assert len(p.said) == 1


def test_arms_aim_at_six_and_a_seven_is_called_snug() -> None:
    p = played(ROW)
    assert "snug, 6 out of 10" in p.heard
    assert words.SNUG_ARM in p.fits(tightness="7").heard


# --- sides ---------------------------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("sides", "said"),
    [
        ((Side.LEFT, Side.RIGHT), "left side first, then right"),
        ((Side.RIGHT, Side.LEFT), "right side first, then left"),
        ((Side.LEFT,), "left side"),
    ],
)
def test_the_first_set_names_the_side(sides: tuple[Side, ...], said: str) -> None:
    p = played(replace(ROW, sides=sides))
    p.types("on").types("6")
    for _ in sides:
        p.types("Under 2 seconds")
    assert said in p.types("Fine").heard


def test_the_rest_asks_for_the_first_side_once() -> None:
    p = played(replace(ROW, sides=(Side.LEFT, Side.RIGHT))).fits("6").types("done", 200)
    assert p.said[0].text == "Rest. Left: how many clean reps?"


def test_both_sides_said_to_a_plan_of_one_side_count_for_that_side() -> None:
    p = played(replace(ROW, sides=(Side.LEFT,)))
    p.types("on").types("6").types("Under 2 seconds").types("Fine").types("done", 100).types(
        "28 left 31 right"
    )
    assert p.sets() == {1: 28}
    assert p.facts(SetDone)[-1].side is Side.LEFT  # type: ignore[attr-defined]


# --- walking -------------------------------------------------------------------------------------------------------
@pytest.mark.parametrize(("text", "minutes"), [("7 minutes", 7.0), ("7", 7.0), ("99", 10.0)])
def test_minutes_said_after_a_walk_are_kept_up_to_the_clock(text: str, minutes: float) -> None:
    walk = Exercise("walk", Region.LEGS, Scheme.WALK, limit_min=15, walk_min=10, walk_kmh=4.0)
    p = played(walk).fits().types(text, 600)
    assert [one.minutes for one in p.facts(WalkDone)] == [minutes]  # type: ignore[attr-defined]


# --- pain ----------------------------------------------------------------------------------------------------------
def test_a_joint_named_in_words_is_a_joint() -> None:
    from conversations.protocol import Hurts

    p = played().fits()
    p.give(Hurts(p.now, "ouch")).types("my elbow")
    assert causes(p) == [Cause.BANDS_HURT]


def test_an_unclear_place_is_asked_again_with_the_buttons_only() -> None:
    from conversations.protocol import Hurts

    p = played().fits()
    p.give(Hurts(p.now, "ouch")).types("hmm")
    assert "a burn, it burns" not in p.heard


@pytest.mark.parametrize("text", ["not numb", "tingling is gone", "no pain at all"])
def test_good_news_in_a_set_is_no_mistake(text: str) -> None:
    assert played().fits().types(text).heard == words.GOOD_TO_HEAR


def test_other_words_in_a_set_are_told_what_counts_here() -> None:
    assert played().fits().types("what?").heard == words.IN_A_SET


@pytest.mark.parametrize(
    "text", ["phew finished", "Done now", "ok, all done", "that's set one done", "finished, thanks"]
)
def test_a_set_is_done_in_any_words_that_say_nothing_else(text: str) -> None:
    p = played(SQUAT).fits().types(text, 90)
    assert p.state is not None
    assert p.state.phase is Phase.REST


@pytest.mark.parametrize("text", ["not done", "almost done", "done in", "I'm done with this", "done 31"])
def test_words_that_say_more_or_less_do_not_end_the_set_unread(text: str) -> None:
    p = played(SQUAT).fits().types(text, 90)
    assert p.state is not None
    assert p.state.phase is Phase.SET or p.sets()


@pytest.mark.parametrize("text", ["ok I'm back", "back home", "I am back now", "home again"])
def test_back_from_a_walk_in_any_words(text: str) -> None:
    walk = Exercise("walk", Region.LEGS, Scheme.WALK, walk_min=10, walk_kmh=4.0, limit_min=15)
    assert played(walk).fits().types(text, 300).heard == words.BANDS_OFF


@pytest.mark.parametrize("text", ["ready", "I'm ready!", "go", "next set", "what do i do now"])
def test_ready_in_a_rest_is_told_that_go_comes_by_itself(text: str) -> None:
    p = played().fits().types("done", 60).types(text, 2)
    assert [say.text for say in p.said] == [words.GO_COMES, words.REPS_LAST]
    p.types("31", 2).types(text, 2)
    assert p.heard == words.GO_COMES
    assert p.sets() == {1: 31}


def test_other_words_in_a_rest_with_its_count_say_how_to_change_it() -> None:
    p = played().fits().types("done", 60).types("31", 2).types("that was easy", 2)
    assert p.heard == words.RESTING
