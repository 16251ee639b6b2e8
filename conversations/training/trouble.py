"""Something is wrong: bands off, what to do, is it better. Begun by the engine when a stop word is read.

The alert is raised with the words that caused it, before this dialogue asks anything; here only "yes, something is
wrong" and "the same or worse" raise one more.
"""

from dataclasses import replace
from datetime import timedelta

from conversations.answers import Unclear, choice
from conversations.answers.taken_off import Off, taken_off
from conversations.form import Form, dialogue
from conversations.protocol import Choice, Said, Say
from conversations.stopwords.kinds import Kind
from conversations.training import trouble_ends, wrong_or_not
from conversations.training.getting_better import how_is_it
from conversations.training.troubled import GRAVE, NOTHING_MORE, Brief, Draft
from conversations.training.wrong_or_not import SEND
from conversations.words import common, safety
from conversations.words import trouble as words
from core.cuffs.limits import QUIET_ALERT
from core.safety.causes import Cause

# Own caution, no source: asked once more, then the coach hears that there is no word.
PATIENCE = timedelta(minutes=2)
LAPSE = timedelta(minutes=10)
OFF = (Choice(words.OFF_LABEL, "off"),)
NOW = (Choice(words.BETTER, "better"), Choice(words.WORSE, "worse"))
WHERE = tuple(Choice(label, value) for label, value in words.WHERE)
SORES = tuple(Choice(label, value) for label, value in words.SORES)


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
            return replace(draft, now=_now(brief, answer.text), said=wrong_or_not.in_words(answer.text, NOW))


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


def came_off(draft: Draft) -> Draft:
    """The button of a call was tapped: nothing has to be asked about the bands."""
    return replace(draft, off="off")


def hurry(brief: Brief, draft: Draft) -> timedelta | None:
    """With bands on, "Is something wrong right now?" is a set that goes quiet: own caution, no source."""
    return QUIET_ALERT if brief.spells and brief.kind is Kind.UNSURE and draft.wrong is None else None


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=trouble_ends.finish,
    noted=trouble_ends.noted,
    opening=trouble_ends.opening,
    reminder=common.NO_WORD_YET,
    patience=PATIENCE,
    lapse=LAPSE,
    lapsed=trouble_ends.lapsed,
    came_off=came_off,
    hurry=hurry,
)
DIALOGUE = dialogue("trouble", Brief, Draft, FORM, exclusive=True)
