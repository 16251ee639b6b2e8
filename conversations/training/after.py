"""How it was: effort, pain, anything still odd. Then the recap."""

import re
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import Unclear, pick
from conversations.form import YES_NO_NOT_SURE, Form, Outcome, dialogue
from conversations.heard import TEN, help_with, or_flagged, raised, yes_no_not_sure
from conversations.pain_said import pain_score, score
from conversations.protocol import Alert, Begin, Choice, Do, Effect, Record, Said, Say
from conversations.stopwords import read
from conversations.stopwords.kinds import Kind
from conversations.training.getting_better import SAYS_WORSE, says_better
from conversations.words import after as words
from conversations.words import safety
from core.facts import WORKED, Answered, Rated
from core.plans import PAIN_CEILING
from core.safety.aftercare import NUMB_LIMIT
from core.safety.causes import Cause
from core.safety.pain import PainDay, PainStep, Where, pain_step


@dataclass(frozen=True, slots=True)
class Brief:
    """Which session, and why it ended ("done", "time", or what stopped it).

    `pain_days`: pain of the sessions up to this one, oldest first. `off_at`: when the last bands came off.
    `worked`: a set or a walk was done, so that there was an effort.
    """

    session: str
    why: str = "done"
    pain_ceiling: int = PAIN_CEILING
    number: int = 1
    movements: tuple[str, ...] = ()
    gentle: bool = False
    emergency_number: str = safety.ANY_NUMBER
    pain_days: tuple[PainDay, ...] = ()
    off_at: datetime | None = None
    worked: bool = True


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `flagged`: a red flag was typed in between, as `said`."""

    effort: int | None = None
    pain: int | None = None
    where: str | None = None
    numb: str | None = None
    flagged: Kind | None = None
    said: str = ""


IT_WAS = re.compile(r"^(?:it was |it's |that was |felt |it felt )")
WHERES = tuple(Choice(label, value) for label, value in words.WHERES)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    match draft:
        case Draft(flagged=Kind()):
            return None
        case Draft(effort=None) if brief.worked:
            return "effort"
        case Draft(pain=None):
            return "pain"
        case Draft(pain=int(pain), where=None) if pain > 0:
            return "where"
        case Draft(numb=None):
            return "numb"
        case _:
            return None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step:
        case "effort":
            return Say(words.EFFORT, TEN)
        case "pain":
            return Say(words.PAIN, TEN)
        case "where":
            return Say(words.WHERE, WHERES)
        case _:
            return Say(words.NUMB, YES_NO_NOT_SURE)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer; a red flag instead of one ends the questions. Raises `Unclear`."""
    return or_flagged(draft, answer.text, lambda: _answered(draft, step, answer.text))


def _answered(draft: Draft, step: str, text: str) -> Draft:
    match step:
        case "effort":
            return replace(draft, effort=_effort(text))
        case "pain":
            return replace(draft, pain=pain_score(text), where=None)
        case "where":
            return replace(draft, where=pick(text, WHERES))
        case _:
            return replace(draft, numb=_numb_now(text))


def _numb_now(text: str) -> str:
    """As a yes or no; "no, all gone" is a no. Raises `Unclear`."""
    try:
        return yes_no_not_sure(text)
    except Unclear:
        if read(text).kind is not Kind.NONE or SAYS_WORSE.search(text) or not says_better(text):
            raise
        return "no"


def _effort(text: str) -> int:
    """0 to 10, or in words. Raises `Unclear`."""
    try:
        return score(text)
    except Unclear as problem:
        said = IT_WAS.sub("", text.strip().casefold()).rstrip(".! ")
        known = dict(words.EFFORT_TYPED)
        if said not in known:
            raise problem from None
        return int(known[said])


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Ratings are facts at once; what worries goes to the coach."""
    if draft.flagged is not None:
        return raised(draft.flagged, draft.said, answer.at, brief.emergency_number)
    match step:
        case "effort":
            return (Record(Rated(answer.at, brief.session, "effort", "after", draft.effort or 0)),)
        case "pain" | "where":
            fact = Record(
                Rated(answer.at, brief.session, "pain", "after", draft.pain or 0, draft.where or "")
            )
            return (fact, *_alert(brief, draft)) if step == "where" else (fact,)
        case _:
            answered = Record(Answered(answer.at, brief.session, "after", "numb", str(draft.numb)))
            return (answered,) if draft.numb == "no" else (answered, *_numb(brief, draft, answer.at))


def _numb(brief: Brief, draft: Draft, at: datetime) -> tuple[Effect, ...]:
    """The coach sees it, and the client is asked again ten minutes after the bands came off."""
    said = f"{words.NUMB} {draft.numb}".replace("_", " ")
    again = max(at, (brief.off_at or at) + NUMB_LIMIT)
    alert = Alert(Cause.NUMB_AFTER, said, safety.told(Cause.NUMB_AFTER, brief.emergency_number))
    return (alert, Begin("still_numb", {"session": brief.session}, at=again))


def pain_cause(brief: Brief, draft: Draft) -> Cause | None:
    """Why the coach is told of this pain; None: accepted, or the working muscle's burn."""
    pain = draft.pain or 0
    if draft.where in (None, Where.MUSCLE):
        return None
    if draft.where != Where.JOINT:
        return Cause.PAIN_AFTER if pain > brief.pain_ceiling else None
    days = (*brief.pain_days[:-1], PainDay(pain))
    return Cause.PAIN_PAUSED if pain_step(days, brief.pain_ceiling) is PainStep.PAUSED else None


def _alert(brief: Brief, draft: Draft) -> tuple[Effect, ...]:
    cause = pain_cause(brief, draft)
    labels = {value: label for label, value in words.WHERES}
    said = f"Pain {draft.pain} of 10: {labels[str(draft.where)].lower()}"
    return () if cause is None else (Alert(cause, said, safety.told(cause, brief.emergency_number)),)


def pain_told(brief: Brief, draft: Draft) -> str | None:
    """What to do about pain above the ceiling that is not the working muscle's; None: accepted."""
    cause = pain_cause(brief, draft)
    if cause is None and draft.where == Where.JOINT and (draft.pain or 0) > brief.pain_ceiling:
        cause = Cause.PAIN_EASED
    return None if cause is None else safety.told(cause, brief.emergency_number)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """What to do about it, then the recap; after a red flag the help comes last, so that it stays open."""
    recap = Do("recap", {"session": brief.session})
    if draft.flagged is not None:
        return Outcome((), (recap, help_with(draft.flagged, draft.said, brief.emergency_number)))
    numb = safety.told(Cause.NUMB_AFTER, brief.emergency_number) if draft.numb != "no" else None
    watch = None if brief.why in WORKED else safety.WATCH.format(number=brief.emergency_number)
    told = (numb, pain_told(brief, draft), watch)
    return Outcome(tuple(Say(text) for text in told if text is not None), (recap,))


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """No answer: the recap comes anyway."""
    return Outcome((), (Do("recap", {"session": brief.session}),))


def opening(brief: Brief) -> tuple[Say, ...]:
    """Thanks for the work, or for stopping."""
    return (Say(words.OPENING if brief.why in WORKED else words.OPENING_STOPPED),)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    opening=opening,
    patience=timedelta(minutes=20),
    lapse=timedelta(hours=2),
    lapsed=lapsed,
    cancelled=lapsed,
)
DIALOGUE = dialogue("after", Brief, Draft, FORM)
