"""Invented clients for the screening tests."""

from core.screening import GROUPS, Answers, Form, Question, form_of, missing
from core.screening.questions import FOLLOW_UPS, Q

DEFAULTS = {
    Form.YES_NO: "no",
    Form.LIMBS: "no",
    Form.WEEKS: "no",
    Form.PRESSURE: "118/76",
}
ABOUT = {
    Q.AGE: "41",
    Q.WEIGHT: "70",
    Q.HEIGHT: "172",
    Q.ACTIVE: "yes",
    Q.PRESSURE_AGAIN: "no",
    Q.FRACTURE_WEEKS: "8",
    Q.GUARDIAN_AGREES: "yes",
    Q.GUARDIAN_PRESENT: "yes",
}
GATE_OF = {detail: gate for gate, details in GROUPS.items() for detail in details}
GATE_OF |= {after: GATE_OF[question] for question, asked in FOLLOW_UPS.items() for after in asked}


def somebody(**said: str) -> Answers:
    """A healthy client of 41 who said this besides; groups open by themselves."""
    answers = Answers({Question(name): answer for name, answer in said.items()})
    for question in list(answers.said):
        gate = GATE_OF.get(question)
        if gate is not None and gate not in answers.said and answers.said[question] != "no":
            answers = answers.plus(gate, "yes")
    return completed(answers)


def completed(answers: Answers) -> Answers:
    """With the healthy answer to everything that is still asked."""
    while (question := missing(answers)) is not None:
        answers = answers.plus(question, ABOUT.get(question) or DEFAULTS[form_of(question)])
    return answers
