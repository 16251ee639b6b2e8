"""Something is wrong: bands off, what to do, is it better. Begun by the engine when a stop word is read.

The alert is raised with the words that caused it, before this dialogue asks anything; here only "yes, something is
wrong" and "the same or worse" raise one more.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import choice, pick
from conversations.answers.taken_off import Off, taken_off
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Alert, Choice, Effect, Record, Said, Say
from conversations.stopwords.causes import cause_of
from conversations.stopwords.kinds import Kind
from conversations.words import safety
from conversations.words import trouble as words
from core.facts import BandsOff
from core.safety.causes import Cause


@dataclass(frozen=True, slots=True)
class Brief:
    """What was read, and which bands are on as (session, spell)."""

    kind: Kind
    said: str
    spells: tuple[tuple[str, str], ...] = ()
    number: str = safety.ANY_NUMBER


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers so far; None: not asked yet."""

    wrong: str | None = None
    off: str | None = None
    where: str | None = None
    now: str | None = None
    half: str = ""  # what was said instead of "off": the question is put in other words then


GRAVE = frozenset({Kind.EMERGENCY, Kind.URINE, Kind.SWELLING})  # better is not over
# Own caution, no source: asked once more, then the coach hears that there is no word.
PATIENCE = timedelta(minutes=2)
LAPSE = timedelta(minutes=10)
WRONG = (Choice(words.WRONG_YES, "yes"), Choice(words.WRONG_NO, "no"))
OFF = (Choice(words.OFF_LABEL, "off"),)
NOW = (Choice(words.BETTER, "better"), Choice(words.WORSE, "worse"))
WHERE = tuple(Choice(label, value) for label, value in words.WHERE)
YES_NO = (Choice("yes", "yes"), Choice("no", "no"))


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if brief.kind is Kind.UNSURE and draft.wrong is None:
        return "wrong"
    if draft.wrong == "no":
        return None
    if (brief.spells or brief.kind is Kind.STUCK) and draft.off is None:
        return "off"
    if brief.kind is Kind.HURTS and draft.where is None:
        return "where"
    return "now" if draft.now is None and brief.kind is not Kind.STOP else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step:
        case "wrong":
            return Say(words.ASK_WRONG, WRONG)
        case "off":
            return Say(draft.half or words.ASK_OFF, OFF)
        case "where":
            return Say(words.ASK_WHERE, WHERE)
        case _:
            return Say(words.ASK_NOW, NOW)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer."""
    match step:
        case "wrong":
            return replace(draft, wrong=pick(answer.text, WRONG, YES_NO))
        case "off":
            return _off(draft, answer.text)
        case "where":
            return replace(draft, where=choice(answer.text, WHERE))
        case _:
            return replace(draft, now=choice(answer.text, NOW))


def _off(draft: Draft, text: str) -> Draft:
    """Off, or what is asked instead. Raises `Unclear` for words about something else."""
    said = taken_off(text, asked=True)
    if said is Off.BOTH:
        return replace(draft, off="off")
    if said in words.NOT_BOTH:
        return replace(draft, half=words.NOT_BOTH[said])
    return replace(draft, off=choice(text, OFF))


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Bands off are stored, bad news goes to the coach."""
    if step == "off" and draft.off is not None:
        return tuple(
            Record(BandsOff(answer.at, session, spell, "stopped")) for session, spell in brief.spells
        )
    if step == "wrong" and draft.wrong == "yes":
        return (_alert(brief, Cause.SOMETHING_WRONG),)
    if step == "now" and draft.now == "worse":
        return (_alert(brief, Cause.NOT_BETTER),)
    return ()


def _alert(brief: Brief, cause: Cause) -> Alert:
    return Alert(cause, brief.said, safety.told(cause, brief.number))


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The last words."""
    if draft.wrong == "no":
        return Outcome((Say(words.GOOD),))
    if draft.now == "worse":
        return Outcome((Say(safety.told(Cause.NOT_BETTER, brief.number)),))
    last = words.CLOSE_GRAVE if brief.kind in GRAVE else words.CLOSE_BETTER
    return Outcome((Say(last.format(number=brief.number)),))


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """No answer to whether something is wrong: the coach hears of it. All else the coach was told at once."""
    if brief.kind is not Kind.UNSURE or draft.wrong is not None:
        return Outcome()
    return Outcome((Say(safety.told(Cause.NO_WORD, brief.number)),), (_alert(brief, Cause.NO_WORD),))


def opening(brief: Brief) -> tuple[Say, ...]:
    """What to do, first."""
    if brief.kind is Kind.UNSURE:
        return ()
    return (Say(first_words(brief)),)


def first_words(brief: Brief) -> str:
    """What the client is told at once: bands off, what to do, whom to ask."""
    cause = cause_of(brief.kind) or Cause.SOMETHING_WRONG
    return f"{safety.told(cause, brief.number)} {words.DEFER.format(number=brief.number)}"


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    opening=opening,
    patience=PATIENCE,
    lapse=LAPSE,
    lapsed=lapsed,
)
DIALOGUE = dialogue("trouble", Brief, Draft, FORM, exclusive=True)
