"""Something is wrong: bands off, what to do, is it better. Begun by the engine when a stop word is read.

The alert is raised with the words that caused it, before this dialogue asks anything; here only "yes, something is
wrong" and "the same or worse" raise one more.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import Unclear, choice
from conversations.answers.taken_off import Off, taken_off
from conversations.form import Form, Outcome, dialogue
from conversations.prose import is_prose
from conversations.protocol import (
    Alert,
    Begin,
    Choice,
    Do,
    Effect,
    EndTraining,
    Record,
    Relay,
    Said,
    Say,
    ToldOff,
)
from conversations.stopwords.causes import cause_of
from conversations.stopwords.kinds import Kind
from conversations.training import wrong_or_not
from conversations.training.getting_better import how_is_it, tells_something_else
from conversations.training.wrong_or_not import SEND, WRONG
from conversations.words import safety
from conversations.words import trouble as words
from core.cuffs.limits import QUIET_ALERT
from core.facts import GETS_BETTER, BandsOff, Noticed
from core.safety.causes import Cause


@dataclass(frozen=True, slots=True)
class Brief:
    """What was read, and which bands are on as (session, spell).

    `reader`: the coach to whom the words can go when nothing is wrong, "": nobody; `mild`: nothing in them touches the body, so that
    they go there when no answer comes; `sent`: they have gone there already.
    """

    kind: Kind
    said: str
    spells: tuple[tuple[str, str], ...] = ()
    number: str = safety.ANY_NUMBER
    reader: str = ""
    mild: bool = False
    sent: bool = False


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers so far; None: not asked yet."""

    wrong: str | None = None
    off: str | None = None
    where: str | None = None
    now: str | None = None
    half: str = ""  # what was said instead of "off": the question is put in other words then
    said: str = ""  # the answer to how it is now, word for word
    sore: str | None = None


GRAVE = frozenset({Kind.EMERGENCY, Kind.URINE, Kind.SWELLING, Kind.LIMP, Kind.WEAK})  # better is not over
ASK_FIRST = frozenset({Kind.UNSURE, Kind.SORE})  # the coach is told once it is known what it is
# "How is it now?" asks for nothing.
NOTHING_MORE = frozenset({Kind.STOP, Kind.FEVER, Kind.HURT_LATELY, Kind.SORE})
# Own caution, no source: asked once more, then the coach hears that there is no word.
PATIENCE = timedelta(minutes=2)
LAPSE = timedelta(minutes=10)
OFF = (Choice(words.OFF_LABEL, "off"),)
NOW = (Choice(words.BETTER, "better"), Choice(words.WORSE, "worse"))
WHERE = tuple(Choice(label, value) for label, value in words.WHERE)
SORES = tuple(Choice(label, value) for label, value in words.SORES)
SAID_STOP, QUIET = "said_stop", "quiet"  # why a session ended, stored


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if brief.kind is Kind.UNSURE and draft.wrong is None:
        return "wrong"
    if draft.wrong in ("no", SEND):
        return None
    if (brief.spells or brief.kind is Kind.STUCK) and draft.off is None:
        return "off"
    if brief.kind is Kind.SORE and draft.sore is None:
        return "sore"
    if brief.kind is Kind.HURTS and draft.where is None:
        return "where"
    return "now" if draft.now is None and brief.kind not in NOTHING_MORE else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step:
        case "wrong":
            return Say(words.ASK_WRONG, wrong_or_not.options(brief.reader))
        case "off":
            return Say(_ask_off(brief, draft), OFF)
        case "where":
            return Say(words.ASK_WHERE, WHERE)
        case "sore":
            return Say(words.SORE, SORES)
        case _:
            return Say(_ask_now(brief, draft), NOW)


def _ask_now(brief: Brief, draft: Draft) -> str:
    if draft.wrong == "yes" and not brief.spells:
        return _with_help(brief, words.ASK_NOW)
    return f"{words.ASK_NOW}{_call_too(brief)}"


def _call_too(brief: Brief) -> str:
    """In an emergency no later question goes out without the number: whoever is afraid reads the last line only."""
    return words.CALL_TOO.format(number=brief.number) if brief.kind is Kind.EMERGENCY else ""


def _ask_off(brief: Brief, draft: Draft) -> str:
    if draft.half:
        return f"{draft.half}{_call_too(brief)}"
    return _with_help(brief, words.ASK_OFF) if draft.wrong == "yes" else words.ASK_OFF


def _with_help(brief: Brief, asked: str) -> str:
    """After "yes, something is wrong" what to do comes first."""
    return f"{safety.told(Cause.SOMETHING_WRONG, brief.number)}\n{asked}"


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer."""
    match step:
        case "wrong":
            return replace(draft, wrong=wrong_or_not.answer(answer.text, brief.reader))
        case "off":
            return _off(draft, answer.text)
        case "where":
            return replace(draft, where=choice(answer.text, WHERE))
        case "sore":
            return replace(draft, sore=choice(answer.text, SORES))
        case _:
            return replace(draft, now=_now(brief, answer.text), said=_in_words(answer.text, NOW))


def _in_words(text: str, buttons: tuple[Choice, ...]) -> str:
    """What was typed, or what stands on the button that was tapped."""
    return next((one.label for one in buttons if one.value == text), text)


def _now(brief: Brief, text: str) -> str:
    """A button, or words; after grave signs "ok" does not say that it is better. Raises `Unclear`."""
    if brief.kind in GRAVE:
        wrong_or_not.no_mere_ok(text)
    try:
        return choice(text, NOW)
    except Unclear as problem:
        try:
            return how_is_it(text)
        except Unclear:
            raise problem from None


def _off(draft: Draft, text: str) -> Draft:
    """Off, or what is asked instead: whatever else is said, the bands come first."""
    said = taken_off(text, asked=True)
    if said is Off.BOTH:
        return replace(draft, off="off")
    if said in words.NOT_BOTH:
        return replace(draft, half=words.NOT_BOTH[said])
    try:
        return replace(draft, off=choice(text, OFF))
    except Unclear:
        return replace(draft, half=words.FIRST_OFF)


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Bands off are stored, bad news goes to the coach."""
    if step == "off" and draft.off is not None:
        return tuple(
            Record(BandsOff(answer.at, session, spell, "stopped")) for session, spell in brief.spells
        )
    if step == "off":
        return _said_instead(brief, draft, answer.text)
    if step == "wrong" and draft.wrong == "yes":
        return (_alert(brief, Cause.SOMETHING_WRONG), EndTraining(f"said_{brief.kind}"), *_told_off(brief))
    if step == "now" and draft.now == "worse":
        said = words.NOW_SAID.format(first=brief.said, now=draft.said)
        return (Alert(Cause.NOT_BETTER, said, safety.told(Cause.NOT_BETTER, brief.number)),)
    if step == "now":
        return (Record(Noticed(answer.at, GETS_BETTER, draft.said)),)
    if step == "wrong" and draft.wrong == "no":
        return (Record(Noticed(answer.at, GETS_BETTER, _in_words(answer.text, WRONG))),)
    if step == "sore" and draft.sore == "far_more":
        return (_alert(brief, Cause.SORE),)
    return ()


def _said_instead(brief: Brief, draft: Draft, text: str) -> tuple[Effect, ...]:
    """What is said about something else while the bands are to come off: the coach reads it with what began it."""
    if draft.off is not None or not tells_something_else(text):
        return ()
    cause = None if brief.kind in ASK_FIRST else cause_of(brief.kind)
    return (replace(_alert(brief, cause or Cause.SOMETHING_WRONG), said=text),)


def _alert(brief: Brief, cause: Cause) -> Alert:
    return Alert(cause, brief.said, safety.told(cause, brief.number))


def _told_off(brief: Brief) -> tuple[Effect, ...]:
    return tuple(ToldOff(session, spell) for session, spell in brief.spells)


def came_off(draft: Draft) -> Draft:
    """The button of a call was tapped: nothing has to be asked about the bands."""
    return replace(draft, off="off")


def hurry(brief: Brief, draft: Draft) -> timedelta | None:
    """With bands on, "Is something wrong right now?" is a set that goes quiet: own caution, no source."""
    return QUIET_ALERT if brief.spells and brief.kind is Kind.UNSURE and draft.wrong is None else None


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The last words: what to do, what to watch, who knows; after a plain stop the questions of any session."""
    if draft.wrong == "no":
        return _all_fine(brief)
    if draft.wrong == SEND:
        return Outcome((), (Relay(brief.said),))
    if brief.kind is Kind.STOP and brief.spells:
        session = brief.spells[-1][0]
        return Outcome((Say(words.STOPPED),), (Begin("after", {"session": session, "why": SAID_STOP}),))
    if draft.now == "worse":
        return Outcome((Say(safety.told(Cause.NOT_BETTER, brief.number)), _watch(brief)))
    if brief.kind is Kind.SORE:
        far_more = safety.told(Cause.SORE, brief.number)
        return Outcome(
            (Say(far_more if draft.sore == "far_more" else words.SORE_GOOD.format(number=brief.number)),)
        )
    if brief.kind in (Kind.FEVER, Kind.HURT_LATELY):
        return Outcome()
    last = words.CLOSE_GRAVE if brief.kind in GRAVE else words.CLOSE_BETTER
    return Outcome((Say(last.format(number=brief.number)), _watch(brief)))


def _all_fine(brief: Brief) -> Outcome:
    """With bands on they came first; what was said is offered to the coach after the session."""
    if brief.spells and not brief.sent and is_prose(brief.said):
        return Outcome((Say(words.GOOD_KEPT),), (Do("offer_later", {"text": brief.said}),))
    return Outcome((Say(words.GOOD),))


def _watch(brief: Brief) -> Say:
    return Say(safety.WATCH.format(number=brief.number))


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """No answer to whether something is wrong: the coach hears of it. All else the coach was told at once."""
    if brief.kind is Kind.SORE:
        return Outcome((Say(safety.told(Cause.SORE, brief.number)),), (_alert(brief, Cause.SORE),))
    if brief.kind is not Kind.UNSURE or draft.wrong is not None:
        return Outcome((_watch(brief),))
    if brief.mild:
        return Outcome((), (Relay(brief.said),))
    told = Say(safety.told(Cause.NO_WORD, brief.number))
    return Outcome((told,), (_alert(brief, Cause.NO_WORD), EndTraining(QUIET), *_told_off(brief)))


def opening(brief: Brief) -> tuple[Say, ...]:
    """What to do, first."""
    if brief.kind in ASK_FIRST:
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
    came_off=came_off,
    hurry=hurry,
)
DIALOGUE = dialogue("trouble", Brief, Draft, FORM, exclusive=True)
