"""A healthy client is through quickly; details come only where something was said."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.screening import GROUPS, Answers, Form, Question, form_of, missing
from core.screening.answers import wanted
from core.screening.questions import ABOUT_YOU, FOLLOW_UPS, Q
from tests.core.screening.people import completed, somebody


def test_a_healthy_client_answers_fifteen_questions() -> None:
    assert len(completed(Answers()).said) == 15


def test_age_comes_first_and_nothing_is_asked_twice() -> None:
    asked = list(wanted(somebody(past_clot="yes", diabetes="yes")))
    assert asked[0] is Q.AGE
    assert len(asked) == len(set(asked))


@pytest.mark.parametrize(("said", "opens"), [("yes", True), ("not_sure", True), ("no", False)])
@pytest.mark.parametrize("gate", list(GROUPS))
def test_details_are_asked_after_yes_and_not_sure_only(gate: Question, said: str, opens: bool) -> None:
    asked = set(wanted(Answers({gate: said})))
    assert (set(GROUPS[gate]) <= asked) is opens


@pytest.mark.parametrize(("age", "guardian"), [("17", True), ("18", False), ("19", False)])
def test_a_guardian_is_asked_about_under_eighteen(age: str, guardian: bool) -> None:
    assert (missing(Answers({Q.AGE: age})) is Q.GUARDIAN_AGREES) is guardian


@pytest.mark.parametrize(
    ("value", "asks"),
    [
        ("179/109", False),
        ("180/90", True),
        ("150/110", True),
        ("181/121", True),
        ("no", False),
        ("not_sure", False),
    ],
)
def test_signs_and_a_second_reading_are_asked_for_from_180_or_110(value: str, asks: bool) -> None:
    asked = set(wanted(Answers({Q.BLOOD_PRESSURE: value})))
    assert ({Q.PRESSURE_SIGNS, Q.PRESSURE_AGAIN} & asked == {Q.PRESSURE_SIGNS, Q.PRESSURE_AGAIN}) is asks


@pytest.mark.parametrize(("said", "asks"), [("yes", True), ("not_sure", False), ("no", False)])
@pytest.mark.parametrize("question", list(FOLLOW_UPS))
def test_what_is_asked_further_is_asked_after_a_plain_yes_only(
    question: Question, said: str, asks: bool
) -> None:
    said = "left_leg" if (question, said) == (Q.FRACTURE, "yes") else said
    asked = set(wanted(somebody(**{question: said})))
    assert (set(FOLLOW_UPS[question]) <= asked) is asks


def test_every_question_can_come_up() -> None:
    reached = set(wanted(Answers({Q.AGE: "16", Q.BLOOD_PRESSURE: "190/100"})))
    everything = Answers({gate: "yes" for gate in GROUPS})
    for question in FOLLOW_UPS:
        everything = everything.plus(question, "left_arm" if question is Q.FRACTURE else "yes")
    assert reached | set(wanted(everything)) == set(Question)
    assert set(ABOUT_YOU) <= reached


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        (Q.AGE, "not_sure"),
        (Q.AGE, "3"),
        (Q.AGE, "111"),
        (Q.AGE, "nan"),
        (Q.AGE, "４１"),
        (Q.WEIGHT, "14.9"),
        (Q.HEIGHT, "231"),
        (Q.SMOKING, "maybe"),
        (Q.LYMPH_NODES, "yes"),
        (Q.LYMPH_NODES, "left_arm,tail"),
        (Q.SURGERY, "-1"),
        (Q.SURGERY, "yes"),
        (Q.BLOOD_PRESSURE, "80/120"),
        (Q.BLOOD_PRESSURE, "120"),
        (Q.BLOOD_PRESSURE, "301/100"),
    ],
)
def test_an_answer_that_does_not_fit_is_refused_by_name(question: Question, answer: str) -> None:
    with pytest.raises(ValueError, match=question.value):
        Answers({question: answer})


def test_answers_cannot_be_changed_behind_the_back() -> None:
    answers = Answers({Q.AGE: "41"})
    with pytest.raises(TypeError):
        answers.said[Q.AGE] = "17"  # type: ignore[index]


@given(st.dictionaries(st.sampled_from(list(GROUPS)), st.sampled_from(["yes", "no", "not_sure"])))
def test_screening_always_comes_to_an_end(gates: dict[Question, str]) -> None:
    answers = completed(Answers(gates))
    assert missing(answers) is None
    assert len(answers.said) <= len(Question)


def test_each_question_has_a_form() -> None:
    assert {form_of(question) for question in Question} == set(Form)
