"""The first talk played as a script: what is told, what is asked, and what is stored when."""

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.answers import Unclear
from conversations.client.consent import FORM, Brief, Draft, fill
from conversations.form import Asking
from conversations.protocol import (
    Begin,
    Cancelled,
    Corrected,
    Do,
    Effect,
    Opened,
    Record,
    Said,
    Say,
    WentBack,
)
from conversations.words import consent as words
from core.facts import Agreed, Detail

NOW = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
BRIEF = Brief("Ines Prado", "Marek")
AWAY = Brief("Ines Prado", "Marek", zone="Europe/Lisbon")
REST = ("112", "+351 900 000 000", "Rua Um 1, Lisbon", "Rui 900", "alone", "no")
WORKING = ("yes", "44", "Lisbon", *REST)

Played = tuple[Asking[Brief, Draft] | None, list[Say], list[Effect]]


def play(*texts: str, brief: Brief = BRIEF) -> Played:
    """The talk with these answers; each text is the message with its number, from 0."""
    turn = FORM.advance(None, Opened(NOW, brief), NOW)
    said, effects = list(turn.replies), list(turn.effects)
    for number, text in enumerate(texts):
        assert turn.state is not None, f"over before {text!r}"
        turn = FORM.advance(turn.state, Said(NOW, text, None, number), NOW)
        said += turn.replies
        effects += turn.effects
    return turn.state, said, effects


def stored(effects: list[Effect]) -> dict[str, str]:
    """The details on record, the latest of each."""
    facts = [effect.fact for effect in effects if isinstance(effect, Record)]
    return {fact.name: fact.value for fact in facts if isinstance(fact, Detail)}


def told_coach(how: str) -> Effect:
    """The end without consent, of which the engine tells the coach."""
    return Do("without_consent", {"how": how})


def agreements(effects: list[Effect]) -> int:
    return sum(isinstance(effect, Record) and isinstance(effect.fact, Agreed) for effect in effects)


@pytest.mark.parametrize(
    "told",
    [
        "Marek",
        "no medical device",
        "your own clinician and local rules come first",
        "Nobody watches this chat live",
        "your local emergency number",
        "Your coach sees them",
        "not end-to-end encrypted",
        "if I go quiet, take the bands off when the movement is done. Never wait for me.",
    ],
)
def test_it_is_told_before_the_first_question(told: str) -> None:
    _, said, _ = play()
    assert told in " ".join(one.text for one in said[:-1])
    assert said[-1].asks == "agree.1"


def test_a_whole_talk_stores_every_detail_and_goes_on_to_screening() -> None:
    state, _, effects = play(*WORKING)
    assert state is None
    assert stored(effects) == {
        "age": "44",
        "zone": "Europe/Lisbon",
        "emergency_number": "112",
        "phone": "+351 900 000 000",
        "address": "Rua Um 1, Lisbon",
        "emergency_contact": "Rui 900",
        "company": "alone",
        "helper": "",
    }
    assert agreements(effects) == 1
    assert Do("moved_zone", {"zone": "Europe/Lisbon"}) in effects
    assert effects[-1] == Begin("screening")


def test_a_no_ends_kindly_and_nothing_is_stored() -> None:
    state, said, effects = play("no")
    assert (state, said[-1].text, effects) == (None, words.DISAGREED, [told_coach("refused")])


def test_not_sure_is_no_consent_and_no_refusal() -> None:
    state, said, effects = play("not sure")
    assert state is not None
    assert said[-1].asks is not None
    assert said[-1].asks.startswith("agree.")
    assert effects == []


def test_an_adult_is_not_asked_for_a_guardian() -> None:
    _, said, effects = play("yes", "18")
    assert said[-1].text == words.ASK["zone"]
    assert stored(effects) == {"age": "18"}


def test_under_18_nothing_is_stored_before_the_guardian_agrees() -> None:
    _, said, effects = play("yes", "17")
    assert said[-1].text == words.ASK["guardian"]
    assert effects == []
    _, _, effects = play("yes", "17", "yes")
    assert agreements(effects) == 1
    assert stored(effects) == {"age": "17", "guardian": "yes"}


def test_without_the_guardian_it_ends_kindly_and_nothing_is_stored() -> None:
    state, said, effects = play("yes", "17", "no")
    assert (state, said[-1].text, effects) == (None, words.GUARDIAN_FIRST, [told_coach("guardian")])


def test_a_yes_taken_back_does_not_claim_that_nothing_is_kept() -> None:
    state, _, _ = play("yes", "44", "Lisbon")
    turn = FORM.advance(state, Corrected(NOW, "no", 0), NOW)
    assert turn.state is None
    assert turn.replies[-1].text == words.WITHDRAWN
    assert turn.effects == (told_coach("withdrawn"),)


def test_cancel_leaves_a_way_back() -> None:
    state, _, _ = play("yes")
    turn = FORM.advance(state, Cancelled(NOW), NOW)
    assert (turn.state, turn.replies[-1].text) == (None, words.LEFT)
    assert turn.effects == (told_coach("unfinished"),)


def test_a_place_with_several_zones_is_asked_back_with_buttons() -> None:
    _, said, effects = play("yes", "44", "Portland")
    assert said[-1].text == words.WHICH_ZONE
    assert [choice.value for choice in said[-1].choices] == ["America/Los_Angeles", "America/New_York"]
    assert "zone" not in stored(effects)
    _, _, effects = play("yes", "44", "Portland", "America/New_York")
    assert stored(effects)["zone"] == "America/New_York"


def test_an_unknown_place_is_asked_again_in_plain_words_and_another_city_counts() -> None:
    _, said, _ = play("yes", "44", "Smallvillage")
    assert said[-1].text == words.NO_SUCH_PLACE
    _, _, effects = play("yes", "44", "Smallvillage", "Lisbon")
    assert stored(effects)["zone"] == "Europe/Lisbon"


def test_the_iana_name_is_understood() -> None:
    _, _, effects = play("yes", "44", "Europe/Lisbon")
    assert stored(effects)["zone"] == "Europe/Lisbon"


@pytest.mark.parametrize("typed", ["skip", "none", "no", "I don't know", "1"])
def test_the_emergency_number_cannot_be_skipped(typed: str) -> None:
    _, said, effects = play("yes", "44", "Lisbon", typed)
    assert said[-1].text.endswith(words.ASK["emergency_number"])
    assert "emergency_number" not in stored(effects)


@pytest.mark.parametrize("typed", ["skip", "Skip.", "SKIP"])
def test_the_rest_may_be_skipped(typed: str) -> None:
    state, _, effects = play("yes", "44", "Lisbon", "112", *[typed] * 5)
    assert state is None
    skipped = ("phone", "address", "emergency_contact", "company", "helper")
    assert {stored(effects)[name] for name in skipped} == {""}


@pytest.mark.parametrize(
    ("answers", "contact"),
    [
        (("my daughter Ana", "07700 900456"), "my daughter Ana 07700 900456"),
        (("my daughter Ana", "Skip"), "my daughter Ana"),
        (("my daughter Ana", "I don't know it"), "my daughter Ana"),
        (("my daughter Ana", "Rui 900 000"), "Rui 900 000"),
        (("Ana 07700 900456",), "Ana 07700 900456"),
        (("07700 900456",), "07700 900456"),
        (("Skip",), ""),
    ],
)
def test_whom_to_ring_is_asked_for_a_number_once(answers: tuple[str, ...], contact: str) -> None:
    state, said, effects = play(*WORKING[:6], *answers)
    assert stored(effects)["emergency_contact"] == contact
    assert state is not None
    assert state.step == "company"
    asked = words.CONTACT_NUMBER.format(name=answers[0])
    assert (asked in [one.text for one in said]) is (len(answers) == 2)


@pytest.mark.parametrize("step", ["phone", "address", "emergency_contact", "company"])
def test_what_may_be_skipped_has_a_button_for_it(step: str) -> None:
    said = FORM.ask(BRIEF, Draft(), step)
    assert words.SKIP in [choice.label for choice in said.choices]


def test_back_asks_the_last_question_again() -> None:
    state, _, _ = play("yes", "44")
    turn = FORM.advance(state, WentBack(NOW), NOW)
    assert turn.replies[-1].text == words.ASK["age"]


@given(st.text())
def test_an_emergency_number_that_is_taken_has_figures_to_dial(text: str) -> None:
    try:
        draft = fill(BRIEF, Draft(), "emergency_number", Said(NOW, text))
    except Unclear:
        return
    figures = [sign for sign in draft.emergency_number or "" if sign in "0123456789"]
    assert 2 <= len(figures) <= 15


@pytest.mark.parametrize("answer", ["Same time as Lisbon", "same time as lisbon", "Lithuania", "Kaunas"])
def test_nobody_is_kept_at_the_door_for_living_where_no_place_is_known(answer: str) -> None:
    _, said, _ = play("yes", "72", "Nowhere-on-Sea", brief=AWAY)
    assert [one.label for one in said[-1].choices] == ["Same time as Lisbon"]
    _, said, _ = play("yes", "72", "Nowhere-on-Sea", answer, brief=AWAY)
    assert said[-1].text.endswith(words.ASK["emergency_number"])


@pytest.mark.parametrize(
    ("typed", "zone"),
    [
        (("Portugal",), "Lisbon time"),
        (("Canada", "Toronto time"), "Toronto time"),
        (("USA", "Chicago"), "Chicago time"),
    ],
)
def test_the_zone_of_a_place_is_said_back(typed: tuple[str, ...], zone: str) -> None:
    _, said, _ = play("yes", "44", *typed)
    assert said[-1].text.startswith(f"I go by {zone};")


@pytest.mark.parametrize(
    ("typed", "helper"),
    [
        ("sometimes my daughter", "Daughter"),
        ("mostly my son Rui", "Son Rui"),
        ("yes, my wife Ana", "Wife Ana"),
        ("Tomas types", "Tomas"),
        ("Only", "Only"),
        ("no", ""),
    ],
)
def test_who_types_is_kept_as_it_is_read_back(typed: str, helper: str) -> None:
    _, _, effects = play(*WORKING[:-1], typed)
    assert stored(effects)["helper"] == helper
