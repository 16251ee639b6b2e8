"""What comes of a trouble: facts and alerts as it is told, and the last words."""

from dataclasses import replace
from datetime import datetime

from conversations.form import Outcome
from conversations.prose import is_prose
from conversations.protocol import (
    Alert,
    Begin,
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
from conversations.training.getting_better import tells_something_else
from conversations.training.troubled import ASK_FIRST, GRAVE, Brief, Draft
from conversations.training.wrong_or_not import SEND, WRONG, in_words
from conversations.words import safety
from conversations.words import trouble as words
from core.facts import GETS_BETTER, NOTHING_WRONG, BandsOff, Noticed
from core.safety.causes import Cause

SAID_STOP, QUIET = "said_stop", "quiet"  # why a session ended, stored


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
        said = in_words(answer.text, WRONG)
        return tuple(Record(Noticed(answer.at, kind, said)) for kind in (GETS_BETTER, NOTHING_WRONG))
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
