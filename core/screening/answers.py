"""What a client answered, as stored, with typed readers, and what to ask next."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from core.cuffs.limbs import Limb
from core.screening.pressure import too_high_to_start
from core.screening.questions import ABOUT_YOU, FOLLOW_UPS, GROUPS, Form, Q, Question, form_of
from core.stored_names import names_in

YES, NO, NOT_SURE = "yes", "no", "not_sure"
ADULT = 18  # years
RANGES = {Q.AGE: (4, 110), Q.WEIGHT: (15, 350), Q.HEIGHT: (90, 230)}  # years, kg, cm: plausible people
MOST_WEEKS = 520  # ten years; older is as good as never here


@dataclass(frozen=True, slots=True)
class Answers:
    """Stored name of each question with what was said. Raises ValueError for an answer that does not fit."""

    said: Mapping[Question, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for question, answer in self.said.items():
            _check(question, answer)
        object.__setattr__(self, "said", MappingProxyType(dict(self.said)))

    def plus(self, question: Question, answer: str) -> "Answers":
        """With one more answer, or another one to the same question."""
        return Answers({**self.said, question: answer})

    def yes(self, question: Question) -> bool:
        """Whether it was affirmed: "yes", some limbs, some weeks."""
        return self.said.get(question, NO) not in (NO, NOT_SURE)

    def not_sure(self, question: Question) -> bool:
        """Whether the client was not sure."""
        return self.said.get(question) == NOT_SURE

    def number(self, question: Question) -> float | None:
        """A number or weeks; None: not asked, "no" or not sure."""
        answer = self.said.get(question, NO)
        return None if answer in (NO, NOT_SURE) else float(answer)

    def limbs(self, question: Question) -> frozenset[Limb]:
        """The limbs that were named."""
        return frozenset(_limbs(self.said[question])) if self.yes(question) else frozenset()

    @property
    def blood_pressure(self) -> tuple[int, int] | None:
        """Systolic and diastolic in mmHg; None: no reading."""
        return self._reading(Q.BLOOD_PRESSURE)

    @property
    def pressure_again(self) -> tuple[int, int] | None:
        """The same after five minutes' rest; None: not measured again."""
        return self._reading(Q.PRESSURE_AGAIN)

    def _reading(self, question: Question) -> tuple[int, int] | None:
        return pressure_of(self.said[question]) if self.yes(question) else None

    @property
    def under_age(self) -> bool:
        """Under 18."""
        age = self.number(Q.AGE)
        return age is not None and age < ADULT


def missing(answers: Answers) -> Question | None:
    """The next question; None: screening is complete."""
    return next((question for question in wanted(answers) if question not in answers.said), None)


def wanted(answers: Answers) -> Iterator[Question]:
    """All questions for this client, in order. What is asked depends on what was said before."""
    for question in ABOUT_YOU:
        yield question
        yield from _follow_ups(answers, question)
    for gate, details in GROUPS.items():
        yield gate
        if answers.yes(gate) or answers.not_sure(gate):
            for question in details:
                yield question
                yield from _follow_ups(answers, question)


def _follow_ups(answers: Answers, question: Question) -> Iterator[Question]:
    match question:
        case Q.AGE if answers.under_age:
            yield Q.GUARDIAN_AGREES
            yield Q.GUARDIAN_PRESENT
        case Q.BLOOD_PRESSURE if (value := answers.blood_pressure) and too_high_to_start(*value):
            yield Q.PRESSURE_SIGNS
            yield Q.PRESSURE_AGAIN
        case _ if answers.yes(question):
            yield from FOLLOW_UPS.get(question, ())
        case _:
            pass


def _check(question: Question, answer: str) -> None:
    if not _fits(question, answer):
        raise ValueError(f"{question}: {answer!r} does not fit")


def _fits(question: Question, answer: str) -> bool:
    match form_of(question):
        case Form.YES_NO:
            return answer in (YES, NO, NOT_SURE)
        case Form.NUMBER:
            unsure = answer == NOT_SURE and question is not Q.AGE
            return unsure or _within(answer, *RANGES[question])
        case Form.WEEKS:
            return answer in (NO, NOT_SURE) or _within(answer, 0, MOST_WEEKS)
        case Form.LIMBS:
            return answer in (NO, NOT_SURE) or bool(_limbs(answer))
        case Form.PRESSURE:
            return answer in (NO, NOT_SURE) or pressure_of(answer) is not None


def _within(answer: str, low: float, high: float) -> bool:
    try:
        value = float(answer)
    except ValueError:
        return False
    return answer.isascii() and math.isfinite(value) and low <= value <= high


def _limbs(answer: str) -> tuple[Limb, ...]:
    try:
        return tuple(Limb(name) for name in names_in(answer))
    except ValueError:
        return ()


def pressure_of(answer: str) -> tuple[int, int] | None:
    """Systolic and diastolic in mmHg of a stored answer; None: it is no reading."""
    upper, _, lower = answer.partition("/")
    if not (answer.isascii() and upper.isdigit() and lower.isdigit()):
        return None
    value = int(upper), int(lower)
    return value if 30 <= value[1] < value[0] <= 300 else None
