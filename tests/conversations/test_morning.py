"""The morning after, played as scripts."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.morning import DIALOGUE, EMERGENCIES, SIGNS, Brief
from conversations.protocol import Alert, Begin, Effect, Opened, Record, Said, Say, Woke
from conversations.words import morning as words
from core.facts import Answered, Rated

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


def causes(effects: list[Effect]) -> list[str]:
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


def test_answers_of_the_second_day_are_kept_beside_those_of_the_first() -> None:
    said, effects, _ = play(replace(BRIEF, day="48h"), "fine", "0")
    assert said[0].text == words.HOW["48h"]
    assert Record(Rated(START, "7-1", "pain", "48h", 0, "joint")) in effects


def test_ordinary_soreness_is_asked_about_once_more_and_is_fine() -> None:
    said, effects, over = play(BRIEF, "sore", "Ordinary soreness", "None of these", "2")
    assert over
    assert not causes(effects)
    assert said[-1].text == words.THANKS


def test_soreness_out_of_proportion_is_told_and_asked_on() -> None:
    said, effects, _ = play(BRIEF, "Sore", "Far more")
    assert causes(effects) == ["sore_out_of_proportion"]
    assert "112" in said[-1].text
    assert step(said) == "what"
    said, effects, _ = play(BRIEF, "Sore", "Far more", "Dark urine, like tea or cola", "None of these", "3")
    assert causes(effects) == ["sore_out_of_proportion", "dark_urine"]
    assert said[-1].text == words.TOLD["dark_urine"].format(number="112")


@pytest.mark.parametrize("sign", SIGNS, ids=lambda sign: sign.value)
def test_each_sign_is_stored_alerted_and_told_at_once(sign: object) -> None:
    label, value = sign.label, sign.value  # type: ignore[attr-defined]
    said, effects, over = play(BRIEF, "Something else", label)
    told = words.TOLD[value].format(number="112")
    assert effects[-2:] == [
        Record(Answered(START, "7-1", "morning", value, "yes")),
        Alert(value, label, told),
    ]
    assert said[-1].text.startswith(told)
    assert over is (value in EMERGENCIES)


def test_a_list_of_signs_goes_on_until_none_is_left() -> None:
    said, effects, _ = play(BRIEF, "Something else", "A limb is weak", "Still numb or tingling", "none", "0")
    assert causes(effects) == ["weakness", "numb_next_day"]
    assert said[-1].text == words.TOLD["weakness"].format(number="112")


def test_what_is_not_listed_reaches_the_coach_in_the_client_s_words() -> None:
    said, effects, over = play(BRIEF, "Something else", "Something not listed", "A rash under the band", "0")
    assert over
    assert Alert("other_next_day", "A rash under the band", said[-1].text) in effects


@pytest.mark.parametrize(
    ("typed", "cause"),
    [
        ("my pee is dark", "dark_urine"),
        ("one calf is swollen", "one_sided_swelling"),
        ("hand still numb", "numb_next_day"),
    ],
)
@pytest.mark.parametrize("before", [(), ("fine",), ("Sore",), ("else",), ("else", "other")])
def test_a_sign_typed_at_any_question_counts(before: tuple[str, ...], typed: str, cause: str) -> None:
    said, effects, _ = play(BRIEF, *before, typed)
    assert causes(effects) == [cause]
    assert next(effect.said for effect in effects if isinstance(effect, Alert)) == typed
    assert words.TOLD[cause].format(number="112") in "\n".join(one.text for one in said)


def test_another_red_flag_ends_in_help() -> None:
    _, effects, over = play(BRIEF, "my arm is blue and cold")
    assert over
    assert causes(effects) == ["said_circulation"]
    assert isinstance(effects[-1], Begin)


@pytest.mark.parametrize(("pain", "settled"), [(2, True), (3, True), (4, False)])
def test_pain_above_the_ceiling_the_morning_after_has_not_settled(pain: int, settled: bool) -> None:
    said, effects, _ = play(BRIEF, "fine", str(pain))
    assert causes(effects) == ([] if settled else ["pain_not_settled"])
    assert said[-1].text == (words.THANKS if settled else words.TOLD["pain_not_settled"].format(number="112"))


def test_no_reply_is_reminded_after_three_hours_and_on_the_coach_s_list_after_twenty() -> None:
    opened = DIALOGUE.advance(None, Opened(START, BRIEF), START)
    assert opened.wake_at == START + timedelta(hours=3)
    reminded = DIALOGUE.advance(opened.state, Woke(START), START + timedelta(hours=3))
    assert reminded.replies
    early = DIALOGUE.advance(reminded.state, Woke(START), START + timedelta(hours=20, seconds=-1))
    assert not early.effects
    late = DIALOGUE.advance(early.state, Woke(START), START + timedelta(hours=20))
    assert causes(list(late.effects)) == ["no_morning_reply"]
    assert late.state is None


def test_every_told_word_names_whom_to_ask_and_the_emergency_number() -> None:
    for text in words.TOLD.values():
        assert "{number}" in text
        assert any(who in text for who in ("coach", "doctor", "clinician"))


@given(st.lists(st.sampled_from(SIGNS), max_size=5), st.integers(0, 10))
def test_no_sign_is_ever_without_its_alert(signs: list[object], pain: int) -> None:
    turn = DIALOGUE.advance(None, Opened(START, BRIEF), START)
    effects: list[Effect] = []
    said: list[str] = []
    for text in ("else", *(sign.value for sign in signs), "none", str(pain)):  # type: ignore[attr-defined]
        if turn.state is None:
            break
        if text in words.TOLD:
            said.append(text)
        turn = DIALOGUE.advance(turn.state, Said(START, text), START)
        effects += turn.effects
    assert turn.state is None
    assert [cause for cause in causes(effects) if cause != "pain_not_settled"] == said
