"""The morning after, played as scripts."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.protocol import Alert, Begin, Effect, Opened, Record, Said, Say, Woke
from conversations.training.morning import DIALOGUE, SIGNS, Brief
from conversations.training.morning_said import how_in_words
from conversations.words import morning as words
from conversations.words import safety
from core.facts import Answered, Rated
from core.safety.aftercare import WHEN_YES, Route, Sign
from core.safety.asking import Part
from core.safety.causes import Cause
from core.safety.pain import PainDay

START = datetime(2026, 3, 3, 8, 0, tzinfo=UTC)
BRIEF = Brief("7-1", emergency_number="112")


def play(brief: Brief, *texts: str) -> tuple[list[Say], list[Effect], bool]:
    """What was said and done, and whether it is over."""
    turn = DIALOGUE.advance(None, Opened(START, brief), START)
    said, effects = list(turn.replies), list(turn.effects)
    for text in texts:
        assert turn.state is not None, f"over before {text!r}"
        turn = DIALOGUE.advance(turn.state, Said(START, text), START)
        said += turn.replies
        effects += turn.effects
    return said, effects, turn.state is None


def told(cause: Cause) -> str:
    """What the client is told."""
    return safety.told(cause, "112")


def causes(effects: list[Effect]) -> list[Cause]:
    """What the coach is told about."""
    return [effect.cause for effect in effects if isinstance(effect, Alert)]


def step(said: list[Say]) -> str:
    """The open question."""
    return (said[-1].asks or "").partition(".")[0]


@pytest.mark.parametrize("typed", ["All fine", "fine", "no", "nothing"])
def test_all_fine_is_one_tap_and_the_pain_score(typed: str) -> None:
    said, effects, over = play(BRIEF, typed, "1")
    assert over
    assert said[-1].text == words.THANKS
    assert effects == [
        Record(Answered(START, "7-1", "morning", "how", "fine")),
        Record(Rated(START, "7-1", "pain", "morning", 1, "joint")),
    ]


@pytest.mark.parametrize(
    ("typed", "how"),
    [
        ("yes all fine dear", "fine"),
        ("Everything's good, thanks", "fine"),
        ("good morning, all ok", "fine"),
        ("none", "fine"),
        ("a bit sore but ok", "sore"),
        ("bit stiff in the thighs", "sore"),
        ("fine, only my legs are a little sore", "sore"),
    ],
)
def test_the_day_after_is_read_as_people_say_it(typed: str, how: str) -> None:
    _, effects, _ = play(BRIEF, typed)
    assert Record(Answered(START, "7-1", "morning", "how", how)) in effects


@pytest.mark.parametrize(
    "typed", ["not fine", "fine but something odd", "sore, not ok", "sore under the band", "my knee is stiff"]
)
def test_anything_more_is_no_such_answer(typed: str) -> None:
    assert how_in_words(typed) is None


def test_answers_of_the_second_day_are_kept_beside_those_of_the_first() -> None:
    said, effects, _ = play(replace(BRIEF, day=Part.TWO_DAYS), "fine", "0")
    assert said[0].text == words.HOW[Part.TWO_DAYS]
    assert Record(Rated(START, "7-1", "pain", "two_days", 0, "joint")) in effects


def test_ordinary_soreness_is_asked_about_once_more_and_is_fine() -> None:
    said, effects, over = play(BRIEF, "sore", "Ordinary soreness", "None of these", "2")
    assert over
    assert not causes(effects)
    assert said[-1].text == words.THANKS


def test_soreness_out_of_proportion_is_told_and_asked_on() -> None:
    said, effects, _ = play(BRIEF, "Sore", "Far more")
    assert causes(effects) == [Cause.SORE]
    assert "112" in said[-1].text
    assert step(said) == "what"
    said, effects, _ = play(BRIEF, "Sore", "Far more", "Dark urine, like tea or cola")
    assert causes(effects) == [Cause.SORE, Cause.URINE]
    assert said[-1].text == told(Cause.URINE)


def test_soreness_out_of_proportion_with_fever_is_more_than_either() -> None:
    _, effects, _ = play(BRIEF, "Sore", "Far more", "Fever")
    assert causes(effects) == [Cause.SORE, Cause.MUSCLE_SIGNS]
    _, effects, _ = play(BRIEF, "Sore", "Ordinary soreness", "Fever")
    assert causes(effects) == [Cause.FEVER_AFTER]


@pytest.mark.parametrize("sign", SIGNS, ids=lambda sign: sign.value)
def test_each_sign_is_stored_alerted_and_told_at_once(sign: object) -> None:
    label, value = sign.label, sign.value  # type: ignore[attr-defined]
    said, effects, over = play(BRIEF, "Something else", label)
    route, cause, _ = WHEN_YES[Sign(value)]
    assert effects[-2:] == [
        Record(Answered(START, "7-1", "morning", value, "yes")),
        Alert(cause, label, told(cause)),
    ]
    assert said[-1].text.startswith(told(cause))
    assert over is (route is Route.EMERGENCY)


def test_a_list_of_signs_goes_on_until_none_is_left() -> None:
    said, effects, _ = play(
        BRIEF, "Something else", "What I trained is clearly swollen", "Still numb or tingling", "none", "0"
    )
    assert causes(effects) == [Cause.MUSCLE_SIGNS, Cause.NUMB_MORNING]
    assert said[-1].text == told(Cause.MUSCLE_SIGNS)


def test_what_is_not_listed_reaches_the_coach_in_the_client_s_words() -> None:
    said, effects, over = play(BRIEF, "Something else", "Something not listed", "A rash under the band", "0")
    assert over
    assert Alert(Cause.OTHER_AFTER, "A rash under the band", said[-1].text) in effects


@pytest.mark.parametrize(
    ("typed", "cause"),
    [
        ("my pee is dark", Cause.URINE),
        ("one calf is swollen", Cause.CLOT_SIGNS),
        ("hand still numb", Cause.NUMB_MORNING),
    ],
)
@pytest.mark.parametrize("before", [(), ("fine",), ("Sore",), ("else",), ("else", "other")])
def test_a_sign_typed_at_any_question_counts(before: tuple[str, ...], typed: str, cause: Cause) -> None:
    said, effects, _ = play(BRIEF, *before, typed)
    assert causes(effects) == [cause]
    assert next(effect.said for effect in effects if isinstance(effect, Alert)) == typed
    assert told(cause) in "\n".join(one.text for one in said)


def test_another_red_flag_ends_in_help() -> None:
    _, effects, over = play(BRIEF, "my arm is blue and cold")
    assert over
    assert causes(effects) == [Cause.CIRCULATION]
    assert isinstance(effects[-1], Begin)


@pytest.mark.parametrize(
    ("days", "pain", "cause"),
    [
        ((PainDay(1),), 2, None),
        ((PainDay(1, before=2),), 3, Cause.PAIN_EASED),  # up by 30 % from before
        ((PainDay(3, before=3),), 3, None),
        ((PainDay(4),), 0, Cause.PAIN_EASED),  # above the ceiling during
        ((PainDay(4), PainDay(4)), 0, Cause.PAIN_PAUSED),  # twice in a row
        ((PainDay(1),), 6, Cause.PAIN_PAUSED),  # above 5 at once
    ],
)
def test_joint_pain_is_read_over_the_days(days: tuple[PainDay, ...], pain: int, cause: Cause | None) -> None:
    said, effects, _ = play(replace(BRIEF, pain_days=days), "fine", str(pain))
    assert causes(effects) == ([] if cause is None else [cause])
    assert said[-1].text == (words.THANKS if cause is None else told(cause))


@pytest.mark.parametrize("day", list(Part))
@pytest.mark.parametrize(
    ("pain", "cause"), [(3, None), (4, Cause.PAIN_EASED), (5, Cause.PAIN_EASED), (6, Cause.PAIN_PAUSED)]
)
def test_the_ceiling_holds_in_the_evening_the_morning_and_two_days_after(
    day: Part, pain: int, cause: Cause | None
) -> None:
    brief = replace(BRIEF, day=day, pain_days=(PainDay(3, before=3),))
    said, effects, _ = play(brief, "fine", str(pain))
    assert causes(effects) == ([] if cause is None else [cause])
    assert said[-1].text == (words.THANKS if cause is None else told(cause))


@pytest.mark.parametrize(
    ("typed", "cause"),
    [
        ("legs are weak", Cause.WEAKNESS),
        ("cant lift my arm", Cause.WEAKNESS),
        ("fever", Cause.FEVER_AFTER),
        ("so sore I can hardly move", Cause.SORE),
    ],
)
@pytest.mark.parametrize("before", [(), ("fine",), ("else",), ("else", "other")])
def test_weak_feverish_or_far_too_sore_counts_at_any_question(
    before: tuple[str, ...], typed: str, cause: Cause
) -> None:
    said, effects, _ = play(BRIEF, *before, typed)
    assert causes(effects) == [cause]
    assert told(cause) in "\n".join(one.text for one in said)


def test_far_too_sore_and_feverish_is_more_than_sore() -> None:
    _, effects, _ = play(BRIEF, "so sore I can hardly move", "fever")
    assert causes(effects) == [Cause.SORE, Cause.MUSCLE_SIGNS]


def test_no_reply_is_reminded_after_three_hours_and_on_the_coach_s_list_after_twelve() -> None:
    opened = DIALOGUE.advance(None, Opened(START, BRIEF), START)
    assert opened.wake_at == START + timedelta(hours=3)
    reminded = DIALOGUE.advance(opened.state, Woke(START), START + timedelta(hours=3))
    assert reminded.replies
    early = DIALOGUE.advance(reminded.state, Woke(START), START + timedelta(hours=12, seconds=-1))
    assert not early.effects
    late = DIALOGUE.advance(early.state, Woke(START), START + timedelta(hours=12))
    assert causes(list(late.effects)) == [Cause.NO_REPLY]
    assert late.state is None


@given(st.lists(st.sampled_from(SIGNS), max_size=5), st.integers(0, 10))
def test_no_sign_is_ever_without_its_alert(signs: list[object], pain: int) -> None:
    turn = DIALOGUE.advance(None, Opened(START, BRIEF), START)
    effects: list[Effect] = []
    said: list[str] = []
    for text in ("else", *(sign.value for sign in signs), "none", str(pain)):  # type: ignore[attr-defined]
        if turn.state is None:
            break
        if text in set(Sign):
            said.append(text)
        turn = DIALOGUE.advance(turn.state, Said(START, text), START)
        effects += turn.effects
    assert turn.state is None
    pains = (Cause.PAIN_EASED, Cause.PAIN_PAUSED)
    assert len([cause for cause in causes(effects) if cause not in pains]) == len(said)
