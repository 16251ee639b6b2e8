"""The screening played as a script: what is asked, stored, said at the end, and what an emergency cuts short."""

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.answers import Unclear
from conversations.client.screening import FORM, Brief, Draft, options, value_of
from conversations.form import Asking
from conversations.protocol import Alert, Do, Effect, Opened, Record, Said, Say
from conversations.words import common, safety
from conversations.words import screening as words
from core.facts import ScreeningAnswer, ScreeningDone
from core.safety.causes import NOW as URGENT
from core.safety.causes import Cause
from core.screening import Answers, Due, Question, Tier

NOW = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
BRIEF = Brief("s1", 44, emergency_number="112")
Q = Question
USUAL = {Q.WEIGHT: "70 kg", Q.HEIGHT: "175", Q.ACTIVE: "yes", Q.BLOOD_PRESSURE: "118/76"}

Turned = tuple[Asking[Brief, Draft] | None, list[Say], list[Effect], list[Question]]


def play(brief: Brief = BRIEF, **answers: str) -> Turned:
    """A screening: these answers by question, else the usual ones, else "no"."""
    given_answers = USUAL | {Question(name): text for name, text in answers.items()}
    turn = FORM.advance(None, Opened(NOW, brief), NOW)
    said, effects = list(turn.replies), list(turn.effects)
    asked: list[Question] = []
    while turn.state is not None:
        step = Question(turn.state.step)
        assert asked.count(step) == 0, f"{step} was not understood"
        asked.append(step)
        turn = FORM.advance(turn.state, Said(NOW, given_answers.get(step, "no")), NOW)
        said += turn.replies
        effects += turn.effects
    return turn.state, said, effects, asked


def done(effects: list[Effect]) -> ScreeningDone:
    """How it ended."""
    (found,) = [
        each.fact for each in effects if isinstance(each, Record) and isinstance(each.fact, ScreeningDone)
    ]
    return found


def test_a_healthy_client_is_clear_and_waits_for_the_coach() -> None:
    _, said, effects, asked = play()
    assert done(effects) == ScreeningDone(NOW, "s1", "clear", "", "")
    assert words.UNTIL_CLEARED in said[-1].text
    assert effects[-1] == Do("ask_coach_to_clear", {"screening": "s1"})
    assert len(asked) <= 16


def test_every_answer_is_stored_at_once() -> None:
    turn = FORM.advance(None, Opened(NOW, BRIEF), NOW)
    turn = FORM.advance(turn.state, Said(NOW, "154 lb"), NOW)
    assert turn.effects == (Record(ScreeningAnswer(NOW, "s1", "weight", "69.9")),)


def after_three_answers(text: str) -> list[str]:
    """What is said to this text at the fourth question, whose name does not change."""
    turn = FORM.advance(None, Opened(NOW, BRIEF), NOW)
    for answer in ("70 kg", "175", "yes"):
        turn = FORM.advance(turn.state, Said(NOW, answer, None, 1), NOW)
    assert turn.state is not None
    step = turn.state.step
    turn = FORM.advance(turn.state, Said(NOW, text, None, 2), NOW)
    assert turn.state is not None
    assert turn.state.step == step
    return [say.text for say in turn.replies]


@pytest.mark.parametrize(
    "text",
    [
        "sorry, I do take tablets, I tapped wrong",
        "oops wrong button",
        "I pressed yes by mistake",
        "I meant no",
    ],
)
def test_who_tells_of_a_wrong_tap_hears_how_to_go_back(text: str) -> None:
    assert after_three_answers(text)[0] == common.HOW_TO_GO_BACK


@pytest.mark.parametrize("text", ["something is wrong", "what is that", "my chest hurts, I tapped wrong"])
def test_other_words_are_asked_about_as_ever(text: str) -> None:
    assert common.HOW_TO_GO_BACK not in after_three_answers(text)


def test_a_known_age_is_not_asked_and_an_unknown_one_is() -> None:
    assert Q.AGE not in play()[3]
    assert play(Brief("s1"), age="44")[3][0] is Q.AGE


@pytest.mark.parametrize(("age", "asked"), [(17, True), (18, False)])
def test_under_18_the_guardian_is_asked_for(age: int, asked: bool) -> None:
    questions = play(Brief("s1", age), guardian_agrees="yes", guardian_present="yes")[3]
    assert (Q.GUARDIAN_PRESENT in questions) is asked


@pytest.mark.parametrize(
    ("answers", "tier"),
    [
        ({"smoking": "yes"}, Tier.COACH_LOOKS),
        ({"any_medicines": "yes", "blood_thinners": "yes"}, Tier.CLINICIAN_FIRST),
        ({"any_clots": "yes", "past_clot": "yes"}, Tier.DO_NOT_START),
        ({"any_medicines": "yes", "statins": "not sure"}, Tier.COACH_LOOKS),
        ({"blood_pressure": "139/89"}, Tier.CLEAR),
        ({"blood_pressure": "140/89"}, Tier.COACH_LOOKS),
        ({"blood_pressure": "139/90"}, Tier.COACH_LOOKS),
        ({"blood_pressure": "179/109"}, Tier.COACH_LOOKS),
        ({"blood_pressure": "180/109"}, Tier.DO_NOT_START),
        ({"blood_pressure": "179/110"}, Tier.DO_NOT_START),
    ],
)
def test_the_client_hears_what_their_answers_mean(answers: dict[str, str], tier: Tier) -> None:
    _, said, effects, _ = play(BRIEF, **answers)
    assert done(effects).tier == tier.value
    assert said[-1].text.startswith(words.TIERS[tier])


def test_a_closed_limb_is_told_to_the_client_and_stored() -> None:
    _, said, effects, _ = play(any_limbs="yes", wound="left arm")
    assert done(effects).closed == "left_arm"
    assert said[-1].text == words.CLOSED.format(limbs="left arm")


def test_do_not_start_sends_to_the_clinician_and_names_no_open_limb() -> None:
    _, said, _, _ = play(any_clots="yes", past_clot="yes", any_limbs="yes", wound="left arm")
    assert said[-1].text == words.TIERS[Tier.DO_NOT_START]
    assert "your doctor" in said[-1].text


@pytest.mark.parametrize("asked", [Q.CHEST_PAIN, Q.BREATHLESS])
def test_who_has_it_right_now_is_told_whom_to_call_before_any_other_question(asked: Question) -> None:
    texts = [one.text for one in play(any_signs="yes")[1]]
    assert any(
        text.startswith(words.QUESTIONS[asked].partition("?")[0]) and "112 first" in text for text in texts
    )


@pytest.mark.parametrize("sign", ["chest_pain", "breathless", "fainting", "palpitations"])
@pytest.mark.parametrize("said", ["yes", "no"])
def test_a_sign_that_may_come_back_is_answered_with_the_emergency_number(sign: str, said: str) -> None:
    texts = [one.text for one in play(any_signs="yes", **{sign: said})[1]]
    assert (texts[-1] == words.IF_IT_COMES_BACK.format(number="112")) is (said == "yes")


@pytest.mark.parametrize("signs", ["yes", "not sure"])
@pytest.mark.parametrize("reading", ["180/100", "170/110", "190/125"])
def test_a_very_high_reading_with_signs_ends_in_emergency_words_at_once(reading: str, signs: str) -> None:
    _, said, effects, asked = play(blood_pressure=reading, pressure_signs=signs)
    assert asked[-1] is Q.PRESSURE_SIGNS, "no question comes before the call"
    assert said[-1].text == safety.told(Cause.PRESSURE_EMERGENCY, "112")
    (alert,) = [effect for effect in effects if isinstance(effect, Alert)]
    assert Cause(alert.cause) in URGENT
    assert reading in alert.said
    assert alert.told == said[-1].text
    assert done(effects).tier == "do_not_start"
    assert effects[-1] == Do("ask_coach_to_clear", {"screening": "s1"})


@pytest.mark.parametrize(("reading", "asked"), [("179/109", False), ("180/109", True), ("179/110", True)])
def test_signs_and_a_second_reading_are_asked_for_from_180_or_110(reading: str, asked: bool) -> None:
    _, said, effects, questions = play(blood_pressure=reading, pressure_signs="no")
    assert (Q.PRESSURE_SIGNS in questions) is asked
    assert (Q.PRESSURE_AGAIN in questions) is asked
    alerts = [effect.cause for effect in effects if isinstance(effect, Alert)]
    assert alerts == ([Cause.PRESSURE_HIGH] if asked else [])
    assert (safety.told(Cause.PRESSURE_HIGH, "112") in [one.text for one in said]) is asked


def test_a_reading_of_185_112_without_signs_gets_advice_for_the_same_day_before_any_other_question() -> None:
    _, said, effects, _ = play(blood_pressure="185/112", pressure_signs="no", pressure_again="184/111")
    texts = [one.text for one in said]
    signs = next(at for at, text in enumerate(texts) if text.startswith("That is very high"))
    advice = texts[signs + 1]
    assert "112" in texts[signs]
    assert all(word in advice for word in ("five minutes", "measure again", "call your doctor today", "112"))
    (alert,) = [effect for effect in effects if isinstance(effect, Alert)]
    assert (alert.cause, alert.told) == (Cause.PRESSURE_HIGH, advice)
    assert "185/112" in alert.said
    assert Cause(alert.cause) not in URGENT
    assert done(effects).tier == "do_not_start"
    assert texts[-2:] == [safety.told(Cause.PRESSURE_HIGH, "112"), words.TIERS[Tier.DO_NOT_START]]


def test_a_second_reading_that_is_normal_leaves_it_to_the_coach() -> None:
    _, said, effects, _ = play(blood_pressure="185/112", pressure_signs="no", pressure_again="128/82")
    assert done(effects).tier == "coach_looks"
    assert said[-1].text == words.TIERS[Tier.COACH_LOOKS]


def test_a_later_screening_opens_with_other_words() -> None:
    for due in Due:
        assert play(Brief("s2", 44, first=False, due=due))[1][0].text == words.DUE[due]
    assert play(Brief("s2", 44, first=False))[1][0].text == words.ONCE_MORE


def test_clear_answers_after_a_do_not_start_are_for_the_coach_to_look_at() -> None:
    _, said, effects, _ = play(Brief("s2", 44, first=False, earlier="do_not_start"))
    assert (done(effects).tier, done(effects).because) == ("coach_looks", "was_do_not_start")
    assert said[-1].text == words.TIERS[Tier.COACH_LOOKS]


@pytest.mark.parametrize(
    ("question", "typed", "value"),
    [
        (Q.WOUND, "left arm and right leg", "left_arm,right_leg"),
        (Q.WOUND, "Left arm, left leg, both arms.", "left_arm,left_leg,right_arm"),
        (Q.WOUND, "nope", "no"),
        (Q.WOUND, "my left leg", "left_leg"),
        (Q.WOUND, "on the right foot", "right_leg"),
        (Q.WOUND, "left hand and my right knee", "left_arm,right_leg"),
        (Q.WOUND, "left upper arm", "left_arm"),
        (Q.WOUND, "legs", "left_leg,right_leg"),
        (Q.WOUND, "both my knees", "left_leg,right_leg"),
        (Q.IMPLANT, "right hip", "right_leg"),
        (Q.WOUND, "none of these", "no"),
        (Q.SURGERY, "a month ago", "4"),
        (Q.SURGERY, "2 months", "8"),
        (Q.SURGERY, "10 days ago", "1"),
        (Q.SURGERY, "13 days", "1"),
        (Q.SURGERY, "14 days", "2"),
        (Q.SURGERY, "yesterday", "0"),
        (Q.SURGERY, "last week", "1"),
        (Q.SURGERY, "three weeks ago", "3"),
        (Q.SURGERY, "a year ago", "52"),
        (Q.SURGERY, "30 years ago", "520"),
        (Q.STATINS, "nope, none of these", "no"),
        (Q.STATINS, "not that I know of", "not_sure"),
        (Q.BLOOD_PRESSURE, "128/82 this morning", "128/82"),
        (Q.BLOOD_PRESSURE, "I don't have one", "no"),
        (Q.BLOOD_PRESSURE, "never measured", "no"),
        (Q.WOUND, "I don't know", "not_sure"),
        (Q.SURGERY, "6 weeks ago", "6"),
        (Q.SURGERY, "never", "no"),
        (Q.STATINS, "I don't think so", "not_sure"),
        (Q.STATINS, "yep", "yes"),
        (Q.BLOOD_PRESSURE, "no", "no"),
        (Q.BLOOD_PRESSURE, "No reading", "no"),
        (Q.BLOOD_PRESSURE, "I don't know", "not_sure"),
        (Q.WEIGHT, "80", "80.0"),
        (Q.WEIGHT, "no idea", "not_sure"),
        (Q.HEIGHT, "5 ft 10", "177.8"),
    ],
)
def test_typed_words_are_understood(question: Question, typed: str, value: str) -> None:
    assert value_of(question, typed) == value


@pytest.mark.parametrize(
    ("question", "typed"),
    [
        (Q.WOUND, "left arm and leg"),
        (Q.WOUND, "not my left arm"),
        (Q.WOUND, "yes"),
        (Q.WOUND, "left"),
        (Q.WOUND, "knee"),
        (Q.WOUND, "left arm, not the right"),
        (Q.WOUND, "left leg and arm"),
        (Q.WOUND, "left leg since May"),
        (Q.IMPLANT, "left knee"),
        (Q.SURGERY, "in May"),
        (Q.SURGERY, "2.5 weeks"),
        (Q.BLOOD_PRESSURE, "normal"),
        (Q.SURGERY, "yes"),
        (Q.STATINS, "yes, since May"),
        (Q.BLOOD_PRESSURE, "100/25"),
        (Q.BLOOD_PRESSURE, "128"),
        (Q.WEIGHT, "700"),
        (Q.AGE, "not sure"),
    ],
)
def test_what_could_be_misread_is_asked_again(question: Question, typed: str) -> None:
    with pytest.raises(Unclear):
        value_of(question, typed)


def test_every_fixed_choice_has_a_button_that_reads_back_as_itself() -> None:
    for question in Question:
        for choice in options(question):
            assert value_of(question, choice.value) == choice.value
            assert value_of(question, choice.label) == choice.value


ANYTHING = st.one_of(
    st.text(max_size=30),
    st.from_regex(r"[0-9]{1,3}( ?(/|kg|lb|ft|weeks ago) ?[0-9]{0,3})?", fullmatch=True),
    st.lists(st.sampled_from(["left arm", "both legs", "right leg", "and", ",", "no"])).map(" ".join),
)


@given(st.sampled_from(list(Question)), ANYTHING)
def test_whatever_is_taken_fits_the_rules(question: Question, text: str) -> None:
    try:
        value = value_of(question, text)
    except Unclear:
        return
    assert Answers({question: value}).said == {question: value}
