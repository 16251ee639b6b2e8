"""Small words that decide whether a client understands: names, phones, joints, tired muscles."""

from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

import pytest

from conversations.answers import Unclear
from conversations.client.consent import Brief, Draft, ask, fill
from conversations.protocol import Begin, Opened, Said, Say
from conversations.training import before, missed, reminding
from conversations.training.choosing_time import Brief as TimeBrief
from conversations.words import before as before_words
from conversations.words import consent as words
from conversations.words.answers import unclear

NOW = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
BRIEF = Brief("Ines", "Marek")
FIT = before.Brief("s1", 3, drill_done=True, sound_check=False, movements=("Walk", "Chair squat"))


# --- who types, who can be rung ---
@pytest.mark.parametrize("typed", ["+351 900 000 000", "0123 456-789", "(01) 23.45/67", "12345"])
def test_what_looks_like_a_phone_number_is_taken(typed: str) -> None:
    assert fill(BRIEF, Draft(), "phone", Said(NOW, typed)).phone == typed


@pytest.mark.parametrize("typed", ["call my wife", "1234", "at home", "+", "555 0101 after six", "9" * 16])
def test_what_cannot_be_dialled_is_asked_again(typed: str) -> None:
    with pytest.raises(Unclear):
        fill(BRIEF, Draft(), "phone", Said(NOW, typed))


def test_a_phone_can_be_skipped() -> None:
    assert fill(BRIEF, Draft(), "phone", Said(NOW, "skip")).phone == ""


def test_a_bare_yes_to_a_helper_asks_for_the_name() -> None:
    draft = fill(BRIEF, Draft(), "helper", Said(NOW, "yes"))
    assert (draft.helper, ask(BRIEF, draft, "helper").text) == (None, words.HELPER_NAME)
    assert fill(BRIEF, draft, "helper", Said(NOW, "Tomas")).helper == "Tomas"


@pytest.mark.parametrize("typed", ["Tomas", "yes, Tomas", "Tomas types for me", "Yes: Tomas."])
def test_a_helper_is_called_by_name(typed: str) -> None:
    assert fill(BRIEF, Draft(), "helper", Said(NOW, typed)).helper == "Tomas"


@pytest.mark.parametrize("typed", ["No", "nobody", "nope", "none"])
def test_nobody_types(typed: str) -> None:
    assert fill(BRIEF, Draft(), "helper", Said(NOW, typed)).helper == ""


def test_an_unclear_answer_lists_the_buttons_only() -> None:
    with pytest.raises(Unclear) as problem:
        fill(BRIEF, Draft(), "company", Said(NOW, "with my dog"))
    assert unclear(problem.value) == "One of these, please: Alone, With somebody, Skip."


# --- before a session ---
def played(brief: before.Brief, *texts: str) -> tuple[list[Say], list[Any]]:
    turn = before.DIALOGUE.advance(None, Opened(NOW, brief), NOW)
    said, effects = list(turn.replies), list(turn.effects)
    for text in texts:
        turn = before.DIALOGUE.advance(turn.state, Said(NOW, text), NOW)
        said += turn.replies
        effects += turn.effects
    return said, effects


def test_the_opening_names_the_movements_and_the_helper() -> None:
    assert "Session 3: walk, chair squat." in played(FIT)[0][0].text
    assert "Tomas types for you" in played(replace(FIT, helper="Tomas"))[0][0].text
    assert "types for you" not in played(FIT)[0][0].text


def test_pain_is_asked_of_any_joint() -> None:
    assert played(FIT, "no", "no")[0][-1].text.startswith("Any pain in a joint right now")


@pytest.mark.parametrize(("heavy", "gentle"), [("yes", True), ("no", False), ("not sure", False)])
def test_muscles_that_worked_hard_already_make_a_gentle_session_that_says_so(
    heavy: str, gentle: bool
) -> None:
    said, effects = played(FIT, "no", "no", "0", heavy, "done")
    assert (before_words.HEAVY in [one.text for one in said]) is gentle
    begun = next(one for one in effects if isinstance(one, Begin))
    assert begun.about.get("gentle", False) is gentle


# --- reminders ---
def opened(dialogue: Any, brief: TimeBrief) -> str:
    return str(dialogue.advance(None, Opened(NOW, brief), NOW).replies[0].text)


@pytest.mark.parametrize(
    ("movements", "named"),
    [
        (("Walk", "Chair squat"), "walk and chair squat"),
        (("Push-up", "Row", "Curl"), "push-up, row and curl"),
        ((), "gentle"),
    ],
)
def test_reminders_name_the_movements(movements: tuple[str, ...], named: str) -> None:
    brief = TimeBrief(plan_name="gentle", movements=movements)
    assert opened(reminding.DIALOGUE, brief) == f"Time for {named}. Start when you're ready."
    assert opened(missed.DIALOGUE, brief).startswith(f"Yesterday's {named} didn't happen")
