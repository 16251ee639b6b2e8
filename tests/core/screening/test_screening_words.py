"""Every question, rule, refusal and route has words, plain and short ones."""

import pytest

from conversations.words import screening as words
from core.cuffs.limbs import Limb
from core.screening import Due, Question, Refusal, Route, Ruling, Tier, Today
from core.screening.assessment import WAS_BARRED
from core.screening.grades import WHEN_YES
from core.screening.rules import RULES

TEXTS = [*words.QUESTIONS.values(), *words.TIERS.values(), *words.TODAY.values(), *words.ROUTES.values()]


@pytest.mark.parametrize(
    ("kind", "texts"),
    [
        (Question, words.QUESTIONS),
        (Tier, words.TIERS),
        (Ruling, words.RULINGS),
        (Refusal, words.REFUSALS),
        (Due, words.DUE),
        (Today, words.TODAY),
        (Route, words.ROUTES),
        (Limb, words.LIMBS),
    ],
)
def test_every_stored_name_has_words(kind: type, texts: dict[object, str]) -> None:
    assert set(texts) == set(kind)  # type: ignore[call-overload]
    assert all(text.strip() for text in texts.values())


def test_every_rule_can_be_named_to_the_coach() -> None:
    rules = {str(question) for question in WHEN_YES} | {rule.__name__ for rule in RULES}
    assert set(words.RULES) == rules | {WAS_BARRED}


@pytest.mark.parametrize("text", list(words.QUESTIONS.values()))
def test_a_question_is_short_and_asks(text: str) -> None:
    assert "?" in text or text == words.QUESTIONS[Question.PRESSURE_AGAIN]
    assert len(text) <= 250


def test_the_words_defer_and_do_not_diagnose() -> None:
    assert "doctor" in words.TIERS[Tier.CLINICIAN_FIRST]
    assert "doctor" in words.TIERS[Tier.DO_NOT_START]
    assert "don't diagnose" in words.OPENING


@pytest.mark.parametrize("text", TEXTS)
def test_words_that_are_not_used_here(text: str) -> None:
    assert not [word for word in ("dialled", "readiness", "strain", "useless") if word in text.lower()]
