"""A strength test at home, without bands: one hard set of at most ten clean reps. Or none at all."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations import heard
from conversations.answers import pick, whole_number
from conversations.answers.measures import best_lift
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Do, Effect, Record, Said, Say
from conversations.stopwords.kinds import Kind
from conversations.words import safety
from conversations.words import testing as words
from core.facts import Detail
from core.strength import MOST_REPS, estimate_in_unit
from core.units import Load, Unit

MOST_TRIES = 3  # in one day; own caution, no source
MOST_TYPED = 100


@dataclass(frozen=True, slots=True)
class Brief:
    """Which movement, as stored and as the client calls it, and in which unit their equipment is."""

    movement: str
    movement_name: str
    unit: Unit = Unit.KG
    emergency_number: str = safety.ANY_NUMBER


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `tries` counts sets that were too light to tell."""

    ready: str | None = None
    load: Load | None = None
    reps: int | None = None
    tries: int = 0
    flagged: Kind | None = None
    said: str = ""


READY = (Choice(words.READY, "ready"), Choice(words.LEAVE, "leave"))
LEAVE = (Choice(words.LEAVE, "leave"),)


def over(draft: Draft) -> bool:
    """Left, or tried often enough."""
    return draft.flagged is not None or draft.ready == "leave" or draft.tries >= MOST_TRIES


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if over(draft):
        return None
    return next((step for step in ("ready", "load", "reps") if getattr(draft, step) is None), None)


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    name = brief.movement_name.lower()
    match step:
        case "ready":
            return Say(words.BEGIN.format(name=name), READY)
        case "load":
            text = words.HEAVIER if draft.tries else words.LOAD
            return Say(text.format(most=MOST_REPS), LEAVE)
        case _:
            return Say(words.REPS.format(load=draft.load), LEAVE)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer; a red flag instead of one ends the test. Raises `Unclear`."""
    return heard.or_flagged(draft, answer.text, lambda: _answered(brief, draft, step, answer.text))


def _answered(brief: Brief, draft: Draft, step: str, text: str) -> Draft:
    if text.strip().lower() in ("leave", "leave it", "skip", words.LEAVE.lower()):
        return replace(draft, ready="leave")
    match step:
        case "ready":
            return replace(draft, ready=pick(text, READY, (Choice("yes", "ready"), Choice("no", "leave"))))
        case "load":
            return replace(draft, load=best_lift(text, brief.unit))
        case _:
            reps = whole_number(text, 1, MOST_TYPED)
            if reps > MOST_REPS:  # it says nothing about the maximum: once more, heavier
                return replace(draft, load=None, reps=None, tries=draft.tries + 1)
            return replace(draft, reps=reps)


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """The estimate is kept; a red flag goes to the coach."""
    if draft.flagged is not None:
        return heard.raised(draft.flagged, draft.said, answer.at, brief.emergency_number)
    if draft.load is None or draft.reps is None:
        return ()
    best = estimate_in_unit(draft.load, draft.reps)
    return (Record(Detail(answer.at, f"best:{brief.movement}", str(best))),)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Thanks, and the numbers to the coach."""
    about = {"movement": brief.movement, "load": "", "reps": draft.reps}
    if draft.flagged is not None:
        help_now = heard.help_with(draft.flagged, draft.said, brief.emergency_number)
        return Outcome((), (Do("tested", about), help_now))
    if draft.load is None or draft.reps is None:
        return Outcome((Say(words.LEFT),), (Do("tested", about),))
    return Outcome((Say(words.THANKS),), (Do("tested", {**about, "load": str(draft.load)}),))


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """No answer: there is no test, and that is fine."""
    return finish(brief, replace(draft, ready="leave"), at)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    patience=timedelta(hours=3),
    lapse=timedelta(hours=48),
    lapsed=lapsed,
    cancelled=lapsed,
)
DIALOGUE = dialogue("testing", Brief, Draft, FORM)
