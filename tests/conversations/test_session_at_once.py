"""What may not wait: a band far too tight, a count said after a burn, the other side's count, a gentle Go."""

from dataclasses import replace
from datetime import timedelta

import pytest

from conversations.protocol import Alert, Hurts, WentBack
from conversations.session.state import Brief, Phase
from conversations.words import session as words
from core.facts import BandsOff, CuffChecked, SessionEnded, WalkDone
from core.plans import Exercise, Region, Scheme, Side
from core.safety.causes import Cause
from tests.conversations.test_session import CURL, ROW, SQUAT, Played, by_set, played


@pytest.mark.parametrize("text", ["9", "10", "9 or 10", "8-9", "ten"])
def test_far_too_tight_comes_off_before_any_other_question(text: str) -> None:
    p = played().types("on").types(text)
    assert p.said[0].text.startswith("Bands off now")
    assert p.state is not None
    assert p.state.phase is Phase.OFF
    checked = p.facts(CuffChecked)
    assert [(one.limb, one.refill, one.feeling, one.verdict) for one in checked] == [  # type: ignore[attr-defined]
        ("left_leg", "", "", "stop"),
        ("right_leg", "", "", "stop"),
    ]


def test_an_eight_is_loosened_before_any_other_question_and_then_checked_from_the_start() -> None:
    p = played().types("on").types("8")
    assert "Loosen it a little" in p.heard
    p.types("loosened")
    assert p.heard == words.TIGHTNESS


def test_far_too_tight_twice_ends_the_session() -> None:
    p = played().types("on").types("9").types("off").waits().types("on").types("9")
    assert words.TWICE in p.heard
    p.types("off")
    assert p.over


def test_a_leg_that_feels_cooler_comes_free_before_the_other_leg_is_asked_about() -> None:
    p = played().types("on").types("6").types("I can't see the spot").types("Cooler or odd")
    assert p.said[0].text.startswith("Bands off now")


def test_a_slow_refill_waits_for_the_feeling_which_may_be_worse() -> None:
    p = played().types("on").types("6").types("Longer")
    assert "Right leg" in p.heard
    p.types("Under 2 seconds").types("Tingling or numb")
    assert p.said[0].text.startswith("Bands off now")


def burning() -> Played:
    """In set 1; it burned, and nothing was said about going on."""
    p = played().fits()
    p.give(Hurts(p.now, "burns"))
    return p.types("burn")


@pytest.mark.parametrize("text", ["31", "31 reps", "done", "Set done"])
def test_a_count_or_set_done_after_a_burn_is_taken_as_going_on(text: str) -> None:
    p = burning().types(text, 60)
    assert p.state is not None
    assert p.state.phase is Phase.REST
    if text.startswith("31"):
        assert p.sets() == {1: 31}


def test_the_button_under_the_set_still_works_after_a_burn() -> None:
    p = burning().taps("done", "done.1.1", 60)
    assert "how many" in p.heard.lower()


def test_other_words_after_a_burn_are_still_asked_about() -> None:
    p = burning().types("hmm")
    assert p.state is not None
    assert p.state.phase is Phase.BURN


@pytest.mark.parametrize("apart", [1, 3, 5, 6])
def test_equal_counts_of_both_sides_both_count_however_fast(apart: int) -> None:
    p = played(ROW).fits().types("done", 200).types("28 left").types("28 right", apart)
    assert by_set(p) == {(1, 1, Side.LEFT): 28, (1, 1, Side.RIGHT): 28}


@pytest.mark.parametrize("exercise", [SQUAT, CURL], ids=["open", "fixed"])
def test_every_go_of_a_gentle_session_says_that_reps_are_to_be_left(exercise: object) -> None:
    p = Played(Brief("1-1", 5, (exercise,), gentle=True))  # type: ignore[arg-type]
    p.fits("6").types("done", 60).types("12").waits()
    assert p.heard.startswith("Go · set 2 · ")
    assert "3 to 5 left" in p.heard
    assert len(p.heard) < 60  # a lock screen's line


def test_bands_off_is_stored_once_after_far_too_tight() -> None:
    p = played(replace(SQUAT, scheme=Scheme.OPEN)).types("on").types("10").types("off")
    assert len(p.facts(BandsOff)) == 1


@pytest.mark.parametrize("text", ["yes burn", "it's burning", "muscle burn", "just the muscle"])
def test_a_burn_said_to_where_does_it_hurt_is_the_answer_and_no_new_pain(text: str) -> None:
    p = played().fits()
    p.give(Hurts(p.now, "pfff burning"))
    p.give(Hurts(p.now, text))
    assert p.heard == words.BURN
    p.types("k")
    assert p.state is not None
    assert p.state.phase is Phase.SET


@pytest.mark.parametrize("text", ["burns under the band", "my knee burns", "elbow hurts"])
def test_a_band_or_a_joint_goes_before_the_burn(text: str) -> None:
    p = played().fits()
    p.give(Hurts(p.now, "ouch"))
    p.give(Hurts(p.now, text))
    assert p.heard == words.HURTS_OFF


@pytest.mark.parametrize("text", ["sharp burning", "it stings"])
def test_a_sharp_burn_is_asked_about_again(text: str) -> None:
    p = played().fits()
    p.give(Hurts(p.now, "ouch"))
    p.give(Hurts(p.now, text))
    assert p.heard == words.HURTS


@pytest.mark.parametrize(
    ("text", "told"), [("abt 2 secs", "Right leg"), ("about 3", "Right leg"), ("~2", "Right leg")]
)
def test_a_refill_told_about_is_read(text: str, told: str) -> None:
    assert told in played().types("on").types("6").types(text).heard


def test_the_last_count_asked_for_again_says_that_the_tap_was_heard() -> None:
    p = played().fits().types("31 16", 200).waits().types("done", 60).types("off")
    assert p.heard == words.REPS_BANDS_OFF
    assert p.said[-1].asks == "reps.1.3.0"


def test_a_tired_fine_is_fine() -> None:
    p = played().types("onn").types("6").types("2").types("2").types("fien")
    assert "Set 1 of" in p.heard


@pytest.mark.parametrize("text", ["under 2", "undre 2 sec", "less than 2s", "<2", "Under two seconds"])
def test_a_short_refill_in_short_words_is_read(text: str) -> None:
    assert "Right leg" in played().types("on").types("6").types(text).heard


def test_bands_that_came_off_before_any_set_are_no_work_done() -> None:
    p = played(SQUAT).fits().types("off").types("Bands are off")
    assert p.over
    assert [one.why for one in p.facts(SessionEnded)] == ["off_early"]  # type: ignore[attr-defined]
    assert p.heard == words.OVER_EARLY


def test_after_a_set_they_are_work_done() -> None:
    p = played(SQUAT).fits().types("done", 60).types("31").types("off").types("Bands are off")
    assert [one.why for one in p.facts(SessionEnded)] == ["done"]  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    "text", ["they're off", "bands came off", "took them off", "they are off now", "both off"]
)
def test_off_in_the_middle_of_the_check_is_asked_about_at_once_and_then_fitted_anew(text: str) -> None:
    p = played().types("on").types("6").types(text)
    assert p.heard == words.OFF_ALREADY
    p.types("yes")
    assert [one.why for one in p.facts(BandsOff)] == ["off_early"]  # type: ignore[attr-defined]
    p.waits()
    assert "Bands on" in p.heard


def test_off_in_the_middle_of_a_set_ends_the_sets_of_that_movement() -> None:
    p = played().fits().types("they slipped off").types("yes")
    assert len(p.facts(BandsOff)) == 1


@pytest.mark.parametrize("text", ["my form was off", "off we go"])
def test_other_words_with_off_in_a_set_are_not_about_the_bands(text: str) -> None:
    p = played().fits().types(text)
    assert p.state is not None
    assert p.state.phase is Phase.SET


@pytest.mark.parametrize("text", ["cant see", "I can't see it", "no spot", "can't tell"])
def test_a_spot_that_cannot_be_seen_in_own_words_leads_to_the_other_look(text: str) -> None:
    assert "as warm as before" in played().types("on").types("6").types(text).heard


@pytest.mark.parametrize("text", ["31 dne", "31 done", "31, don", "31 doen!"])
def test_a_count_with_a_tired_done_is_a_count(text: str) -> None:
    assert played().fits().types(text, 60).sets() == {1: 31}


WALK = Exercise("walk", Region.LEGS, Scheme.WALK, walk_min=10, walk_kmh=4.0, limit_min=15)


def test_back_is_the_end_of_a_walk_and_not_a_question_back() -> None:
    p = played(WALK).fits()
    p.now += timedelta(minutes=6)
    p.give(WentBack(p.now))
    assert p.heard == words.BANDS_OFF
    assert [one.minutes for one in p.facts(WalkDone)] == [6.0]  # type: ignore[attr-defined]


def test_when_the_minutes_are_over_every_answer_is_about_the_bands() -> None:
    p = played(WALK).fits().waits()
    assert p.heard == words.WALK_TIME.format(minutes=10)
    assert p.types("bit tired", 20).heard == words.WALK_TIME.format(minutes=10)
    p.types("both off", 5)
    assert len(p.facts(WalkDone)) == len(p.facts(BandsOff)) == 1
    assert p.over


def test_a_side_with_a_slip_is_a_side() -> None:
    p = played(ROW).fits().types("done", 200).types("28 letf").types("31 rigth", 7)
    assert by_set(p) == {(1, 1, Side.LEFT): 28, (1, 1, Side.RIGHT): 31}


def asked_whether_all_is_right() -> Played:
    p = played(SQUAT).fits().waits()
    assert p.heard == words.QUIET
    return p


@pytest.mark.parametrize("text", ["yes", "all good", "I'm fine", "yep"])
def test_a_yes_to_all_right_breaks_the_silence_for_a_minute(text: str) -> None:
    p = asked_whether_all_is_right().types(text, 40)
    assert p.heard == words.ALL_RIGHT
    assert p.wake_at == p.now + timedelta(seconds=60)
    assert not [one for one in p.effects if isinstance(one, Alert)]
    p.waits()
    assert words.QUIET_ALARM in p.heard


@pytest.mark.parametrize("text", ["no", "nope", "No!"])
def test_a_no_to_all_right_takes_the_bands_off_and_tells_the_coach(text: str) -> None:
    p = asked_whether_all_is_right().types(text)
    assert p.heard.startswith("Bands off now. Sit down.")
    (alert,) = [one for one in p.effects if isinstance(one, Alert)]
    assert (alert.cause, alert.said) == (Cause.SOMETHING_WRONG, f"Asked whether all is right: {text}")
    p.types("Bands are off")
    assert p.over


@pytest.mark.parametrize("text", ["yes", "no", "all good"])
def test_unasked_it_is_no_word_about_that(text: str) -> None:
    p = played(SQUAT).fits().types(text)
    assert not [one for one in p.effects if isinstance(one, Alert)]
    assert p.heard != words.ALL_RIGHT


def test_a_count_answers_it_too() -> None:
    p = asked_whether_all_is_right().types("no, 31")
    assert p.sets() == {1: 31}
