"""How it was: effort, pain, anything still odd. Then the recap."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import Reply, choice, whole_number, yes_no
from conversations.form import YES_NO, Form, Outcome, dialogue
from conversations.protocol import Alert, Choice, Do, Effect, Record, Said, Say
from conversations.words import after as words
from core.facts import Answered, Rated
from core.plans import PAIN_CEILING


@dataclass(frozen=True, slots=True)
class Brief:
    """Which session, and why it ended."""

    session: str
    why: str = "done"
    pain_ceiling: int = PAIN_CEILING
    emergency_number: str = "your local emergency number"


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet."""

    effort: int | None = None
    pain: int | None = None
    where: str | None = None
    numb: str | None = None


WHERES = tuple(Choice(label, value) for label, value in words.WHERES)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    match draft:
        case Draft(effort=None):
            return "effort"
        case Draft(pain=None):
            return "pain"
        case Draft(pain=int(score), where=None) if score > 0:
            return "where"
        case Draft(numb=None):
            return "numb"
        case _:
            return None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step:
        case "effort":
            return Say(words.EFFORT, tuple(Choice(label, value) for label, value in words.EFFORT_CHOICES))
        case "pain":
            return Say(words.PAIN, tuple(Choice(str(n), str(n)) for n in range(6)))
        case "where":
            return Say(words.WHERE, WHERES)
        case _:
            return Say(words.NUMB, YES_NO)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    match step:
        case "effort":
            return replace(draft, effort=whole_number(answer.text, 0, 10))
        case "pain":
            return replace(draft, pain=whole_number(answer.text, 0, 10, zero=("none", "no", "no pain")))
        case "where":
            return replace(draft, where=choice(answer.text, WHERES))
        case _:
            return replace(draft, numb="no" if yes_no(answer.text) is Reply.NO else "yes")


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Ratings are facts at once; what worries goes to the coach."""
    match step:
        case "effort":
            return (Record(Rated(answer.at, brief.session, "effort", "after", draft.effort or 0)),)
        case "pain" if not draft.pain:
            return (Record(Rated(answer.at, brief.session, "pain", "after", 0)),)
        case "where":
            return _pain(brief, draft, answer)
        case "numb":
            fact = Record(Answered(answer.at, brief.session, "after", "numb", draft.numb or ""))
            alert = Alert(
                "numb_after", "Still tingling or numb", words.NUMB_TOLD.format(number=brief.emergency_number)
            )
            return (fact, alert) if draft.numb == "yes" else (fact,)
        case _:
            return ()


def _pain(brief: Brief, draft: Draft, answer: Said) -> tuple[Effect, ...]:
    score, where = draft.pain or 0, draft.where or ""
    fact = Record(Rated(answer.at, brief.session, "pain", "after", score, where))
    if score > brief.pain_ceiling and where != "muscle":
        return (fact, Alert("pain_after", f"Pain {score} of 10, {where}", words.PAIN_TOLD))
    return (fact,)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """What to do about it, then the recap."""
    replies = []
    if draft.numb == "yes":
        replies.append(Say(words.NUMB_TOLD.format(number=brief.emergency_number)))
    if (draft.pain or 0) > brief.pain_ceiling and draft.where != "muscle":
        replies.append(Say(words.PAIN_TOLD))
    return Outcome(tuple(replies), (Do("recap", {"session": brief.session}),))


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """No answer: the recap comes anyway."""
    return Outcome((), (Do("recap", {"session": brief.session}),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    patience=timedelta(minutes=20),
    lapse=timedelta(hours=2),
    lapsed=lapsed,
    cancelled=lapsed,
)
DIALOGUE = dialogue("after", Brief, Draft, FORM)
