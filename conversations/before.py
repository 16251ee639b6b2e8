"""The questions before the bands go on. Anything that does not fit today ends here, kindly."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import Reply, choice, whole_number, yes_no
from conversations.form import YES_NO, YES_NO_NOT_SURE, Form, Outcome, dialogue, with_answer
from conversations.protocol import Alert, Begin, Choice, Effect, Record, Said, Say
from conversations.words import before as words
from core.facts import Answered, Rated, SessionEnded
from core.plans import PAIN_CEILING

DONE_WORDS = ("done", "ok", "yes", "heard", "ready")


@dataclass(frozen=True, slots=True)
class Brief:
    """Which session; whether the release drill was done before; up to which pain is trained (0-10)."""

    session: str
    number: int
    pain_ceiling: int = PAIN_CEILING
    drill_done: bool = False


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet."""

    news: str | None = None
    today: str | None = None
    pain: int | None = None
    heavy: str | None = None
    drill: str | None = None
    sound: str | None = None
    warm: str | None = None


def against(brief: Brief, draft: Draft) -> str | None:
    """What speaks against training today, as a stored cause."""
    if draft.news not in (None, "no"):
        return "anything_new"
    if draft.today not in (None, "no"):
        return "not_well_today"
    if draft.pain is not None and draft.pain > brief.pain_ceiling:
        return "pain_before"
    return None


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question; none once something speaks against it."""
    if against(brief, draft) is not None:
        return None
    steps = ["news", "today", "pain", "heavy", *([] if brief.drill_done else ["drill"]), "sound", "warm"]
    return next((step for step in steps if getattr(draft, step) is None), None)


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    text = words.ASK[step]
    match step:
        case "news" | "today":
            return Say(text, YES_NO_NOT_SURE)
        case "heavy":
            return Say(text, YES_NO)
        case "pain":
            return Say(text, tuple(Choice(str(n), str(n)) for n in range(6)))
        case "drill":
            return Say(text, (Choice(words.DRILL, "done"),))
        case "sound":
            return Say(text, (Choice(words.HEARD, "done"),))
        case _:
            return Say(text, (Choice(words.WARM, "done"),))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    match step:
        case "news" | "today" | "heavy":
            said = {Reply.YES: "yes", Reply.NO: "no"}.get(yes_no(answer.text), "not_sure")
            return with_answer(draft, step, said)
        case "pain":
            return replace(draft, pain=whole_number(answer.text, 0, 10, zero=("none", "no", "no pain")))
        case _:
            labels = (words.DRILL, words.HEARD, words.WARM, *DONE_WORDS)
            choice(answer.text, tuple(Choice(label, "done") for label in labels))
            return with_answer(draft, step, "done")


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Each answer is a fact at once; what speaks against training goes to the coach."""
    value = str(getattr(draft, step))
    facts: list[Effect] = [Record(Answered(answer.at, brief.session, "before", step, value))]
    if step == "pain" and draft.pain is not None:
        facts.append(Record(Rated(answer.at, brief.session, "pain", "before", draft.pain, "joint")))
    cause = against(brief, draft)
    if cause is not None:
        facts.append(Alert(cause, f"{step}: {value}", told(draft, cause)))
    return tuple(facts)


def told(draft: Draft, cause: str) -> str:
    """What the client hears when something speaks against it."""
    match cause:
        case "anything_new":
            return words.NOT_TODAY_NEWS
        case "not_well_today":
            return words.NOT_TODAY_UNWELL
        case _:
            return words.NOT_TODAY_PAIN.format(pain=draft.pain)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Into the session, or home."""
    cause = against(brief, draft)
    if cause is None:
        return Outcome((), (Begin("session", {"session": brief.session}),))
    ended = Record(SessionEnded(at, brief.session, cause))
    return Outcome((Say(told(draft, cause)),), (ended,))


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Nobody answered for three hours."""
    return Outcome((Say(words.LAPSED),), (Record(SessionEnded(at, brief.session, "lapsed")),))


def cancelled(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The client thinks better of it."""
    return Outcome((Say(words.CANCELLED),), (Record(SessionEnded(at, brief.session, "cancelled")),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    opening=lambda brief: (Say(words.OPENING.format(number=brief.number)),),
    lapse=timedelta(hours=3),
    lapsed=lapsed,
    cancelled=cancelled,
)
DIALOGUE = dialogue("before", Brief, Draft, FORM, trains=True, exclusive=True)
