"""The coach asks for a cuff pressure: an estimate where a published equation holds, else the reason why not."""

from dataclasses import dataclass, replace
from datetime import datetime

from conversations.answers import blood_pressure, centimetres, pick, whole_number
from conversations.form import Form, Outcome, dialogue, with_answer
from conversations.protocol import Choice, Record, Said, Say
from conversations.words import coach as coach_words
from conversations.words import gauging as words
from core.facts import CoachDid
from core.pressure import CUFF_CM, GIRTHS_CM, Estimate, Limb, Refusal, Sex, estimate, refused
from core.screening.pressure import too_high_to_start

CUFFS = tuple(Choice(label, value) for label, value in words.CUFFS)
SEXES = tuple(Choice(label, value) for label, value in words.SEXES)
WIDTHS = {"leg_18": (Limb.LEG, CUFF_CM), "leg_other": (Limb.LEG, 0.0), "arm": (Limb.ARM, 0.0)}  # limb, cm
OLDEST = 110


@dataclass(frozen=True, slots=True)
class Brief:
    """Whose cuff; their age in years where it is known."""

    client: int
    client_name: str
    coach: int
    age: int | None = None


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `girth` in cm, pressure in mmHg."""

    cuff: str | None = None
    age: int | None = None
    sex: str | None = None
    girth: float | None = None
    pressure: tuple[int, int] | None = None


def refusal(draft: Draft) -> Refusal | None:
    """Why there can be no estimate, as far as the answers tell."""
    if draft.cuff is None:
        return None
    limb, width = WIDTHS[draft.cuff]
    return refused(limb, width, draft.age)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question; none once there can be no estimate."""
    if refusal(draft) is not None:
        return None
    steps = ("cuff", "age", "sex", "girth", "pressure")
    return next((step for step in steps if getattr(draft, step) is None), None)


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step:
        case "cuff":
            return Say(words.CUFF.format(name=brief.client_name), CUFFS)
        case "age":
            return Say(words.AGE.format(name=brief.client_name))
        case "sex":
            return Say(words.SEX, SEXES)
        case "girth":
            return Say(words.GIRTH)
        case _:
            return Say(words.PRESSURE)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    match step:
        case "cuff":
            return replace(draft, cuff=pick(answer.text, CUFFS))
        case "age":
            return replace(draft, age=whole_number(answer.text, 1, OLDEST))
        case "sex":
            return replace(draft, sex=pick(answer.text, SEXES))
        case "girth":
            return replace(draft, girth=float(centimetres(answer.text, *GIRTHS_CM)))
        case _:
            reading = blood_pressure(answer.text)
            return with_answer(draft, "pressure", (reading.systolic, reading.diastolic))


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The estimate and its note in the log, or the reason why there is none."""
    card = (coach_words.to_card(brief.client_name, brief.client),)
    match estimated(draft):
        case Estimate() as found:
            note = words.NOTE.format(aop=found.aop, low=found.low, high=found.high)
            did = Record(CoachDid(at, brief.coach, "pressure_estimate", note), brief.client)
            return Outcome((Say(words.estimated(brief.client_name, found), card),), (did,))
        case Refusal() as why:
            return Outcome((Say(words.NO_ESTIMATE[why], card),))
        case None:
            return Outcome((Say(words.TOO_HIGH.format(name=brief.client_name), card),))


def estimated(draft: Draft) -> Estimate | Refusal | None:
    """What the equation says, why it does not apply, or None: a blood pressure that forbids bands."""
    limb, width = WIDTHS[draft.cuff or "arm"]
    match draft:
        case Draft(age=int(age), sex=str(sex), girth=float(girth), pressure=(upper, lower)):
            high = too_high_to_start(upper, lower)
            return None if high else estimate(limb, width, girth, upper, age, Sex(sex))
        case _:
            return refused(limb, width, draft.age)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(age=brief.age), missing=missing, ask=ask, fill=fill, finish=finish
)
DIALOGUE = dialogue("gauging", Brief, Draft, FORM)
