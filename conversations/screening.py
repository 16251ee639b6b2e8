"""The first screening: plain questions, each answer stored at once, a tier at the end. The coach decides."""

from dataclasses import dataclass, field, replace
from datetime import datetime

from conversations.answers import Unclear, Why, blood_pressure, centimetres, choice, load, whole_number
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Alert, Choice, Do, Effect, Record, Said, Say
from conversations.words import common
from conversations.words import screening as words
from core.facts import ScreeningAnswer, ScreeningDone
from core.screening import Answers, Question, assess, form_of
from core.screening import Form as Kind
from core.screening import missing as next_question
from core.units import Unit

YES_NO = ((common.YES, "yes"), (common.NO, "no"), (common.NOT_SURE, "not_sure"))
UNSURE = ((common.NOT_SURE, "not_sure"),)
NO_OR_UNSURE = ((common.NO, "no"), *UNSURE)
LIMBS = (
    (common.NO, "no"),
    *((words.LIMBS[limb].capitalize(), limb) for limb in ("left_arm", "right_arm", "left_leg", "right_leg")),
    ("Both arms", "left_arm,right_arm"),
    ("Both legs", "left_leg,right_leg"),
    *UNSURE,
)
RANGES = {Question.AGE: (5, 110), Question.WEIGHT: (20, 300), Question.HEIGHT: (100, 230)}


@dataclass(frozen=True, slots=True)
class Brief:
    """Which screening this is; the age when it was asked already."""

    screening: str
    age: int | None = None
    first: bool = True
    emergency_number: str = "your local emergency number"


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers by the stored names of their questions."""

    said: dict[str, str] = field(default_factory=dict)

    @property
    def answers(self) -> Answers:
        """As the rules want them; names that are no longer asked are left out."""
        known = {question.value for question in Question}
        return Answers({Question(name): value for name, value in self.said.items() if name in known})


def start(brief: Brief) -> Draft:
    """The age is not asked twice."""
    return Draft({} if brief.age is None else {Question.AGE.value: str(brief.age)})


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    return next_question(draft.answers)


def options(question: Question) -> tuple[Choice, ...]:
    """The buttons of a question."""
    pairs: tuple[tuple[str, str], ...]
    match form_of(question):
        case Kind.YES_NO:
            pairs = YES_NO
        case Kind.LIMBS:
            pairs = LIMBS
        case Kind.WEEKS:
            pairs = NO_OR_UNSURE
        case Kind.NUMBER | Kind.PRESSURE:
            pairs = () if question is Question.AGE else UNSURE
    return tuple(Choice(label, value) for label, value in pairs)


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    question = Question(step)
    return Say(words.QUESTIONS[question], options(question))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    question = Question(step)
    return replace(draft, said={**draft.said, step: value_of(question, answer.text)})


def value_of(question: Question, text: str) -> str:
    """The stored value of an answer: a button's, or what was typed."""
    buttons = options(question)
    try:
        return choice(text, buttons)
    except Unclear:
        match form_of(question):
            case Kind.NUMBER:
                return _number(question, text)
            case Kind.WEEKS:
                return str(whole_number(text, 0, 104))
            case Kind.PRESSURE:
                reading = blood_pressure(text)
                return f"{reading.systolic}/{reading.diastolic}"
            case _:
                raise


def _number(question: Question, text: str) -> str:
    """Years, kg (pounds are turned into kg) or cm."""
    low, high = RANGES[question]
    match question:
        case Question.WEIGHT:
            kg = round(load(text, Unit.KG).kilograms)
            if not low <= kg <= high:
                raise Unclear(Why.TOO_LOW if kg < low else Why.TOO_HIGH, low=low, high=high)
            return str(kg)
        case Question.HEIGHT:
            return str(centimetres(text, low, high))
        case _:
            return str(whole_number(text, low, high, also=("years", "year", "old")))


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Each answer is a fact at once."""
    return (Record(ScreeningAnswer(answer.at, brief.screening, step, draft.said[step])),)


def forget(draft: Draft, step: str) -> Draft:
    """Without that answer."""
    return replace(draft, said={name: value for name, value in draft.said.items() if name != step})


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The tier; the coach sees it and decides."""
    found = assess(draft.answers)
    closed = ",".join(sorted(limb.value for limb in found.closed))
    because = ",".join(finding.rule for finding in found.findings)
    done = ScreeningDone(at, brief.screening, found.tier.value, closed, because)
    effects: list[Effect] = [Record(done), Do("ask_coach_to_clear", {"screening": brief.screening})]
    replies = [Say(words.TIERS[found.tier])]
    if found.emergency:
        emergency = words.PRESSURE_EMERGENCY.format(emergency_number=brief.emergency_number)
        effects.insert(0, Alert("screening_emergency", because, emergency))
        replies.insert(0, Say(emergency))
    return Outcome(tuple(replies), tuple(effects))


FORM: Form[Brief, Draft] = Form(
    start=start,
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    forget=forget,
    opening=lambda brief: (Say(words.OPENING),),
)
DIALOGUE = dialogue("screening", Brief, Draft, FORM)
