"""Stop words come before everything, in any state: bands off, what to do, the coach told."""

from dataclasses import replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

import msgspec

from bot.engine import recording, status, turns
from bot.engine.safety import alerts, bands, said_more
from conversations.answers.taken_off import Off, taken_off
from conversations.heard import hurt_lately
from conversations.protocol import Hurts, Said, Say, TooTight
from conversations.session.looking import says_moved
from conversations.stopwords import read
from conversations.stopwords.causes import cause_of
from conversations.stopwords.finished import says_finished
from conversations.stopwords.kinds import Kind
from conversations.stopwords.spoken_for import in_first_person
from conversations.training.getting_better import off_and_fine, tells_off
from conversations.training.pressure_said import urgency
from conversations.training.trouble_ends import first_words
from conversations.training.troubled import ASK_FIRST, Brief
from conversations.words import safety
from core.facts import BandsOff, Noticed
from core.safety.causes import Cause
from core.store import duties, facts, mail, threads
from core.store.mail import Priority
from core.store.people import Person, Role
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine


TRAINS = frozenset({"session", "before", "after", "still_numb", "testing"})
ENDED_BY_OFF = frozenset({"session", "before"})  # there "bands off" before any is on says that none will be
LESS_THAN_MOVED = frozenset({Kind.NONE, Kind.UNSURE, Kind.TIGHT})  # what a slip may look like to the lexicon
SHORTLY_AFTER = timedelta(hours=1)  # own caution, no source
QUESTIONS_AROUND = frozenset({"before", "after", "still_numb", "morning"})
TROUBLES_ANSWER = QUESTIONS_AROUND | {"screening", "consent"}


def stopped(engine: "Engine", person: Person, text: str, at: datetime, message: int | None) -> bool:
    """Whether the words were about stopping; then all that follows is done."""
    if person.role is not Role.CLIENT:
        return False
    live = threads.live(engine.store, person.id)
    training = trains(engine, person, at, live)
    kind, pressure = heard(engine, person, text, training), urgency(text)
    if pressure is Cause.PRESSURE_EMERGENCY:
        kind = Kind.EMERGENCY
    calls_help = text.strip(" /!?.").casefold() == "help"
    if kind is Kind.UNSURE and calls_help and not training:  # a question about the program
        return False
    if kind in LESS_THAN_MOVED and _moved_in_a_session(engine, person, text):
        return False
    if kind is Kind.NONE and pressure is not None and not (live and live[0].dialogue == "screening"):
        too_high(engine, person, text)
        return True
    answers = _is_answer(kind, live) and not _came_before(engine, person, live[0], message)
    if kind is Kind.NONE or (answers and not calls_help):
        return False
    if not _for_the_session(engine, person, kind, text, at, message):
        # No alert carries such words: they go where they were meant to, or are offered to the coach.
        passed_on = kind in ASK_FIRST and _pass_on(engine, person, text, at, live)
        halt(engine, person, kind, text, at, live, reader="" if passed_on else coach_name(engine, person))
    return True


def _moved_in_a_session(engine: "Engine", person: Person, text: str) -> bool:
    """Whether the words say only that a band slid, which the session knows what to do about."""
    return says_moved(text) and threads.live_in(engine.store, person.id, "session") is not None


def _for_the_session(
    engine: "Engine", person: Person, kind: Kind, text: str, at: datetime, message: int | None
) -> bool:
    """Pain, and a band that is too tight, are dealt with in a session; True: there is one."""
    session = threads.live_in(engine.store, person.id, "session")
    if session is None or kind not in (Kind.HURTS, Kind.TIGHT):
        return False
    event = Hurts(at, text, message) if kind is Kind.HURTS else TooTight(at, text)
    turns.deliver(engine, person, session, event, message)
    return True


def too_high(engine: "Engine", person: Person, text: str) -> None:
    """A blood pressure at or above 180/110 without signs: no training, a doctor today, the coach told."""
    told = safety.told(Cause.PRESSURE_HIGH, status.emergency_number(engine, person.id))
    alerts.raise_alert(engine, person.id, Cause.PRESSURE_HIGH, text, told)
    banded = bool(duties.watches(engine.store, person.id))
    engine.say(person, Say(f"{safety.OFF_FIRST} {told}" if banded else told), engine.clock(), Priority.ALERT)


def heard(engine: "Engine", person: Person, text: str, training: bool) -> Kind:
    """What the words say just now: told to take the bands off, "bands off" is an answer, and "still on" is stuck."""
    kind = max((_kind(said, training) for said in _ways(engine, person, text)), key=lambda one: one.rank)
    watches = duties.watches(engine.store, person.id)
    if not watches:
        return _where_none_is_on(engine, person, text, kind)
    if not any(watch.calls for watch in watches):
        ends = kind in (Kind.NONE, Kind.UNSURE) and says_finished(text)
        return Kind.STOP if ends else kind
    match taken_off(text, asked=False):
        case Off.BOTH if kind in (Kind.STOP, Kind.UNSURE):
            return Kind.NONE
        case Off.STAYS_ON:
            return max(kind, Kind.STUCK, key=lambda one: one.rank)
        case _:
            return kind


def _where_none_is_on(engine: "Engine", person: Person, text: str, kind: Kind) -> Kind:
    """With no band on, "bands off now" ends nothing: with "all normal" it is news, else asked about."""
    if kind not in (Kind.STOP, Kind.UNSURE) or not tells_off(text):
        return kind
    if off_and_fine(text):
        return Kind.NONE
    live = threads.live(engine.store, person.id)
    return kind if any(thread.dialogue in ENDED_BY_OFF for thread in live) else Kind.UNSURE


def coach_name(engine: "Engine", client: Person) -> str:
    """To whom words can go that no question wants; "": nobody, or bands are on and come first."""
    coach = engine.coach_of(client)
    return "" if coach is None or duties.watches(engine.store, client.id) else coach.name


def _kind(text: str, training: bool) -> Kind:
    return read(text).while_training if training else read(text).kind


def _ways(engine: "Engine", person: Person, text: str) -> tuple[str, ...]:
    """As typed; where a helper types, "she can't breathe" is the client's own cry, too."""
    helped = status.detail(engine, person.id, "helper", "")
    return (text, in_first_person(text, person.name)) if helped else (text,)


def _pass_on(engine: "Engine", person: Person, text: str, at: datetime, live: list[Thread]) -> bool:
    """Words that were for the coach, though they may also be a cry; True: they are on their way."""
    from bot.engine import relaying

    if live and live[0].dialogue == "telling":
        turns.deliver(engine, person, live[0], Said(at, text))
    elif hurt_lately(text):
        relaying.to_coach(engine, person, text, at)
    else:
        return relaying.for_coach(engine, person, text, at)
    return True


def trains(engine: "Engine", person: Person, at: datetime, live: list[Thread]) -> bool:
    """Whether bands are on, or were within the hour: then heavy legs are what sets are for, and no sign."""
    if duties.watches(engine.store, person.id) or any(thread.dialogue in TRAINS for thread in live):
        return True
    off = facts.latest(engine.store, BandsOff, person.id)
    return off is not None and at - off.at < SHORTLY_AFTER


def must_be_heard(engine: "Engine", person: Person, text: str) -> bool:
    """Whether words must get through however many came before: bands are on, or they are about stopping."""
    banded = bool(duties.watches(engine.store, person.id))
    return banded or (person.role is Role.CLIENT and read(text).kind is not Kind.NONE)


def _is_answer(kind: Kind, live: list[Thread]) -> bool:
    """In the first screening and the questions around a session troubles are answers; emergencies never are."""
    if kind in (Kind.EMERGENCY, Kind.STUCK, Kind.STOP) or not live:
        return False
    return live[0].dialogue in TROUBLES_ANSWER


def _came_before(engine: "Engine", person: Person, thread: Thread, message: int | None) -> bool:
    """Whether a sign was sent before its question could be read, which then cannot be what it answers.

    Nobody trains in a screening: there it is said that the words are left out, and what is open is asked again.
    """
    if message is None or person.chat is None or thread.dialogue not in QUESTIONS_AROUND:
        return False
    return mail.asked_later(engine.store, person.chat, thread.id, message)


def halt(
    engine: "Engine",
    person: Person,
    kind: Kind,
    text: str,
    at: datetime,
    live: list[Thread],
    *,
    reader: str = "",
    mild: bool = False,
    sent: bool = False,
) -> None:
    """End training, alert, and ask what is needed; words to a trouble that is talked about already are its answer.

    `reader`, `mild`, `sent`: as in the brief of a trouble.
    """
    spells = tuple((watch.session, watch.spell) for watch in duties.watches(engine.store, person.id))
    number = status.emergency_number(engine, person.id)
    recording.record(engine, person.id, Noticed(at, f"said_{kind}", text))
    brief = Brief(kind, text, spells, number)
    if kind not in ASK_FIRST:
        cause = cause_of(kind) or Cause.SOMETHING_WRONG
        alerts.raise_alert(engine, person.id, cause, text, first_words(brief))
        bands.told_off(engine, person.id)
        turns.end_training(engine, person, f"said_{kind}", at)
    if _talked_about(engine, person, kind, text, at, live):
        return
    brief = replace(brief, reader=reader, mild=mild, sent=sent)
    turns.begin(engine, person, "trouble", msgspec.to_builtins(brief), at)


def _talked_about(
    engine: "Engine", person: Person, kind: Kind, text: str, at: datetime, live: list[Thread]
) -> bool:
    """Whether a trouble as grave is open, which these words answer; a milder one gives way to the new one."""
    for thread in live:
        if thread.dialogue != "trouble":
            continue
        # How to get it off is always told.
        if said_more.kind_of(thread).rank >= kind.rank and kind is not Kind.STUCK:
            turns.deliver(engine, person, thread, Said(at, text))
            if kind in ASK_FIRST and not tells_off(text):
                said_more.pass_on(engine, person, thread, text)
            return True
        threads.keep(engine.store, thread.id, None, None)
    return False
