"""The first screening: plain questions, each answer stored at once, a tier at the end. The coach decides."""

from dataclasses import dataclass, field, replace
from datetime import datetime

from conversations.answers import (
    Reply,
    Unclear,
    Why,
    blood_pressure,
    body_weight,
    centimetres,
    choice,
    whole_number,
    yes_no,
)
from conversations.client.said_about_health import limbs, nothing_measured, weeks_ago, without_when
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Alert, Choice, Do, Effect, Record, Said, Say
from conversations.words import common, safety
from conversations.words import screening as words
from core.facts import ScreeningAnswer, ScreeningDone
from core.safety.causes import Cause
from core.screening import Answers, Assessment, Due, Question, Tier, after, form_of, preview
from core.screening import Form as Kind
from core.screening import missing as next_question

YES_NO = ((common.YES, "yes"), (common.NO, "no"), (common.NOT_SURE, "not_sure"))
UNSURE = ((common.NOT_SURE, "not_sure"),)
NO_OR_UNSURE = ((common.NO, "no"), *UNSURE)
NO_READING = ((words.NO_READING, "no"), *UNSURE)
REPLIES = {Reply.YES: "yes", Reply.NO: "no", Reply.NOT_SURE: "not_sure"}
# Signs of the heart or of a vessel: the emergency number is said with the outcome.
MAY_COME_BACK = frozenset(
    "chest_pain angina breathless fainting palpitations heart_lately heartbeat_loose".split()
)
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
    """Which screening this is; the age when it was asked already.

    `due`: why it is asked (a stored name of `Due`), "": of the client's own accord. `earlier`: the tier before.
    """

    screening: str
    age: int | None = None
    first: bool = True
    emergency_number: str = safety.ANY_NUMBER
    due: str = ""
    earlier: str = ""


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
    """The next question; none in an emergency, for then a call comes before any question."""
    return None if preview(draft.answers).emergency else next_question(draft.answers)


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
        case Kind.PRESSURE:
            pairs = NO_READING
        case Kind.NUMBER:
            pairs = () if question is Question.AGE else UNSURE
    return tuple(Choice(label, value) for label, value in pairs)


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    question = Question(step)
    text = words.QUESTIONS[question].format(number=brief.emergency_number)
    if form_of(question) is Kind.LIMBS:
        text = f"{text} {words.SEVERAL_LIMBS}"
    return Say(text, options(question))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    question = Question(step)
    return replace(draft, said={**draft.said, step: value_of(question, answer.text)})


def value_of(question: Question, text: str) -> str:
    """The stored value of an answer: a button's, or what was typed. Raises `Unclear`."""
    try:
        return choice(text, options(question))
    except Unclear as unread:
        match form_of(question):
            case Kind.YES_NO:
                return REPLIES[yes_no(text)]
            case Kind.LIMBS:
                return _without_yes(text) or _limbs(question, text, unread)
            case Kind.WEEKS:
                return _without_yes(text) or weeks_ago(text)
            case Kind.PRESSURE:
                none = "no" if nothing_measured(text) else ""
                return _without_yes(text) or none or _pressure(text)
            case Kind.NUMBER:
                unknown = "" if question is Question.AGE else _no_figure(text)
                return unknown or _number(question, text)


def _without_yes(text: str) -> str:
    """A typed no or not sure in any words, "" for anything else: a yes does not say which or when."""
    try:
        reply = yes_no(text)
    except Unclear:
        return ""
    return "" if reply is Reply.YES else REPLIES[reply]


def _no_figure(text: str) -> str:
    """Without a scale, "no" says the same as "not sure"."""
    return "not_sure" if _without_yes(text) else ""


def _limbs(question: Question, text: str, unread: Unclear) -> str:
    """Several limbs, typed. A new knee lies below the band, so for metal only the upper limb counts as named."""
    named = limbs(text, lower=question is not Question.IMPLANT)
    if not named:
        raise unread
    return named


def _pressure(text: str) -> str:
    reading = blood_pressure(without_when(text))
    value = f"{reading.systolic}/{reading.diastolic}"
    try:
        Answers({Question.BLOOD_PRESSURE: value})
    except ValueError:
        raise Unclear(Why.NOT_A_PRESSURE) from None
    return value


def _number(question: Question, text: str) -> str:
    """Years, kg (pounds are turned into kg) or cm."""
    low, high = RANGES[question]
    match question:
        case Question.WEIGHT:
            kg = round(float(body_weight(text)), 1)  # a bare number: too heavy is only stricter
            if not low <= kg <= high:
                raise Unclear(Why.TOO_LOW if kg < low else Why.TOO_HIGH, low=low, high=high)
            return str(kg)
        case Question.HEIGHT:
            return str(centimetres(text, low, high))
        case _:
            return str(whole_number(text, low, high, also=("years", "year", "old")))


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Each answer is a fact at once; a very high blood pressure is on the coach's list today."""
    fact = Record(ScreeningAnswer(answer.at, brief.screening, step, draft.said[step]))
    reading = draft.answers.blood_pressure
    if step != Question.PRESSURE_SIGNS or reading is None or preview(draft.answers).emergency:
        return (fact,)
    told = ask(brief, draft, Question.PRESSURE_AGAIN).text
    said = words.PRESSURE_HIGH_SAID.format(reading=draft.said[Question.BLOOD_PRESSURE])
    return (fact, Alert(Cause.PRESSURE_HIGH, said, told))


def forget(draft: Draft, step: str) -> Draft:
    """Without that answer."""
    return replace(draft, said={name: value for name, value in draft.said.items() if name != step})


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The tier; the coach sees it and decides. In an emergency only the emergency is talked about."""
    earlier = Tier(brief.earlier) if brief.earlier else None
    found = after(preview(draft.answers), earlier)  # complete, except in an emergency
    closed = ",".join(sorted(limb.value for limb in found.closed))
    because = ",".join(finding.rule for finding in found.findings)
    done = Record(ScreeningDone(at, brief.screening, found.tier.value, closed, because))
    to_coach = Do("ask_coach_to_clear", {"screening": brief.screening})
    if not found.emergency:
        told = (*_call_your_doctor(brief, found), *_told(found), *_if_it_comes_back(brief, found))
        return Outcome(tuple(Say(text) for text in told), (done, to_coach))
    call = safety.told(Cause.PRESSURE_EMERGENCY, brief.emergency_number)
    said = words.PRESSURE_SAID.format(
        reading=draft.said[Question.BLOOD_PRESSURE],
        signs=draft.said[Question.PRESSURE_SIGNS].replace("_", " "),
    )
    return Outcome((Say(call),), (Alert(Cause.PRESSURE_EMERGENCY, said, call), done, to_coach))


def _call_your_doctor(brief: Brief, found: Assessment) -> tuple[str, ...]:
    """A pressure that stayed very high is for a doctor today, whatever else was found."""
    if all(finding.rule != "pressure_too_high" for finding in found.findings):
        return ()
    return (safety.told(Cause.PRESSURE_HIGH, brief.emergency_number),)


def _if_it_comes_back(brief: Brief, found: Assessment) -> tuple[str, ...]:
    """The emergency number, where a sign was affirmed that may come again before anybody has looked."""
    if MAY_COME_BACK.isdisjoint(finding.rule for finding in found.findings):
        return ()
    return (words.IF_IT_COMES_BACK.format(number=brief.emergency_number),)


def _told(found: Assessment) -> tuple[str, ...]:
    """What the client hears at the end."""
    outcome = words.TIERS[found.tier]
    if found.tier is Tier.CLEAR:
        return (f"{outcome} {words.UNTIL_CLEARED}",)
    if found.tier is Tier.DO_NOT_START or not found.closed:
        return (outcome,)
    limbs = ", ".join(words.LIMBS[limb] for limb in sorted(found.closed))
    return outcome, words.CLOSED.format(limbs=limbs)


def opening(brief: Brief) -> tuple[Say, ...]:
    """What it is about, and why it is asked again."""
    if brief.first:
        return (Say(words.OPENING),)
    return (Say(words.DUE[Due(brief.due)] if brief.due else words.ONCE_MORE),)


FORM: Form[Brief, Draft] = Form(
    start=start,
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    forget=forget,
    opening=opening,
)
DIALOGUE = dialogue("screening", Brief, Draft, FORM)
