"""An event to a dialogue, and what comes of it: state, words, effects, all in the caller's transaction."""

from datetime import datetime
from functools import partial
from typing import TYPE_CHECKING, Any

import msgspec

from bot.engine import briefs, gate, recording, status
from bot.engine.coach import pauses
from bot.engine.joining import clearances, screenings
from bot.engine.safety import bands
from conversations.catalogue import CATALOGUE
from conversations.protocol import (
    Alert,
    Barred,
    Begin,
    Countdown,
    Dialogue,
    Do,
    Effect,
    EndTraining,
    Event,
    Halted,
    Opened,
    Record,
    Relay,
    Resumed,
    Said,
    Say,
    ToldOff,
    Turn,
)
from conversations.words import covering as covering_words
from conversations.words import engine as words
from core.cuffs.limbs import banded
from core.plans import Exercise
from core.safety.causes import bars_training
from core.store import duties, people, threads
from core.store.mail import Priority
from core.store.people import Person
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine

SESSION_TALK = ("session", "before", "after", "trouble")


def begin(engine: "Engine", person: Person, name: str, about: dict[str, Any], at: datetime) -> None:
    """Start a dialogue with its brief frozen from what is known now."""
    now = engine.clock()
    if name == "before" and (due := screenings.why_due(engine, person, now)) is not None:
        name, about = "screening", {"due": due.value}
    dialogue: Dialogue[Any] = CATALOGUE[name]
    if not gate.talks(engine, person, name, about):
        engine.say(person, Say(covering_words.NO_LONGER_YOURS), now)
        return
    if dialogue.trains and (why := barred(engine, person)):
        engine.say(person, Say(words.BARRED[why]), now)
        return
    if dialogue.trains and (under_way := training(engine, person)) is not None:
        deliver(engine, person, under_way, Resumed(now))  # one session at a time, whatever button began it
        return
    brief = briefs.make(engine, person, name, about)
    if brief is None:
        return
    text = msgspec.json.encode(brief).decode()
    thread_id = threads.open_thread(engine.store, person.id, name, text, dialogue.floor, now)
    thread = Thread(thread_id, person.id, name, None, None, 0)
    # The brief goes through its stored form, so that what a restart would read is what is used from the start.
    opened = Opened(at, msgspec.json.decode(text, type=dialogue.brief))
    keep(engine, person, thread, dialogue, dialogue.advance(None, opened, now), None)


def training(engine: "Engine", person: Person) -> Thread | None:
    """The session of this person that is under way, or its questions."""
    live = threads.live(engine.store, person.id)
    return next((thread for thread in live if CATALOGUE[thread.dialogue].trains), None)


def deliver(
    engine: "Engine", person: Person, thread: Thread, event: Event, message: int | None = None
) -> None:
    """Give a live thread one event and keep the outcome."""
    dialogue: Dialogue[Any] = CATALOGUE[thread.dialogue]
    state = state_of(thread)
    if not gate.talks(engine, person, thread.dialogue, client_in(state)):  # handed over since it began
        threads.keep(engine.store, thread.id, None, None)
        engine.say(person, Say(covering_words.NO_LONGER_YOURS), engine.clock())
        return
    # A halt always goes through: it ends the session, and somebody else does the talking.
    why = barred(engine, person, state) if dialogue.trains and not isinstance(event, Halted) else None
    if why is not None:
        state = bar(engine, person, thread, dialogue, state, Barred(event.at, why))
        if state is None:
            return
    from bot.engine.days import meanwhile
    from bot.engine.safety import unread

    turn = dialogue.advance(state, event, engine.clock())
    if turn.unread and _asked_aside(engine, person, thread, event):
        return
    if meanwhile.asked_once_more(engine, person, thread, state, turn, engine.clock()):
        return
    turn = meanwhile.with_days_of_now(engine, state, turn)
    more = unread.says_more(engine, person, thread, event, turn.effects)
    keep(engine, person, thread, dialogue, turn, message)
    if more and isinstance(event, Said):
        unread.ask(engine, person, event)


def _asked_aside(engine: "Engine", person: Person, thread: Thread, event: Event) -> bool:
    """Whether words that the open question could not read were asked about: health news, or a possible cry."""
    from bot.engine.safety import health_news, unread

    return health_news.asked_beside(engine, person, thread, event) or unread.asked_whether_wrong(
        engine, person, thread, event
    )


def foreseen(engine: "Engine", thread: Thread, event: Event) -> Turn[Any]:
    """What a live thread would answer; nothing comes of it."""
    return CATALOGUE[thread.dialogue].advance(state_of(thread), event, engine.clock())


def state_of(thread: Thread) -> Any:
    """What a live thread keeps."""
    assert thread.state is not None, "only live threads have a state"
    return msgspec.json.decode(thread.state, type=CATALOGUE[thread.dialogue].state)


def end_training(engine: "Engine", person: Person, why: str, at: datetime) -> None:
    """End what trains and is open. A broken dialogue must not take back what goes with it, such as an alert."""
    for thread in threads.live(engine.store, person.id):
        if CATALOGUE[thread.dialogue].trains:
            halt = partial(deliver, engine, person, thread, Halted(at, why))
            engine.guarded("halt", halt, lambda again: None)


def client_in(state: Any) -> dict[str, Any]:
    """Which client a coach talks about, as the gate reads it."""
    return {"client": getattr(getattr(state, "brief", None), "client", None)}


def to_do(state: Any) -> tuple[Exercise, ...]:
    """The movements of a session from the one under way on; none before it and in other talk."""
    exercises: tuple[Exercise, ...] = getattr(getattr(state, "brief", None), "exercises", ())
    return exercises[getattr(state, "exercise", 0) :]


def bar(
    engine: "Engine", person: Person, thread: Thread, dialogue: Dialogue[Any], state: Any, event: Barred
) -> Any:
    """Training is not allowed (any more). What stays open, such as bands to come off, still gets its events."""
    turn = dialogue.advance(state, event, engine.clock())
    if turn.replies or turn.state is None:
        engine.say(person, Say(words.BARRED_NOW[event.why]), engine.clock(), Priority.ALERT)
    if turn.state != state:
        keep(engine, person, thread, dialogue, turn, None)
    return turn.state


def keep(
    engine: "Engine",
    person: Person,
    thread: Thread,
    dialogue: Dialogue[Any],
    turn: Turn[Any],
    message: int | None,
) -> None:
    """Store the state, post the words, do the effects; hand the floor back when the thread is over."""
    now = engine.clock()
    state = None if turn.state is None else msgspec.json.encode(turn.state).decode()
    threads.keep(engine.store, thread.id, state, turn.wake_at)
    priority = Priority.SESSION if thread.dialogue in SESSION_TALK else Priority.TALK
    for reply in turn.replies:
        engine.say(person, reply, now, priority, thread.id)
    if turn.state is None and person.chat is not None:
        engine.countdowns.pop(person.chat, None)
    begun = [effect for effect in turn.effects if effect_done(engine, person, effect, message, now)]
    if state is None and not begun:
        hand_back(engine, person, thread)


def hand_back(engine: "Engine", person: Person, ended: Thread) -> None:
    """The floor goes back to the dialogue before, which asks its open question again; a later one never lost it."""
    if not CATALOGUE[ended.dialogue].floor or ended.state is None:
        return
    before = threads.floor(engine.store, person.id)
    if before is not None and before.id < ended.id:
        # A broken one must not take the answer back that ended this one.
        again = partial(deliver, engine, person, before, Resumed(engine.clock()))
        engine.guarded("hand back", again, lambda at: None)


def effect_done(engine: "Engine", person: Person, effect: Effect, message: int | None, now: datetime) -> bool:
    """Do one effect; True when it started another dialogue with this person at once."""
    from bot.engine import acts, relaying
    from bot.engine.safety import alerts

    match effect:
        case Record(fact, about):
            recording.record(engine, about or person.id, fact, message)
        case Alert():
            alerts.raise_alert(engine, effect.person or person.id, effect.cause, effect.said, effect.told)
        case Begin(name, about, whom, at):
            return begin_effect(engine, person, name, about, whom, at, now)
        case ToldOff(session, spell):
            bands.told_off(engine, person.id, session, spell)
        case EndTraining(why):
            end_training(engine, person, why, now)
        case Countdown(until):
            if person.chat is not None:
                engine.countdowns[person.chat] = until
        case Relay():
            relaying.relay(engine, person, effect)
        case Do(act, details):
            return acts.do(engine, person, act, details)
    return False


def begin_effect(
    engine: "Engine",
    person: Person,
    name: str,
    about: dict[str, Any],
    whom: int | None,
    at: datetime | None,
    now: datetime,
) -> bool:
    """Begin a dialogue now or plan it; True: now, with the same person."""
    target = person if whom is None else people.by_id(engine.store, whom)
    if at is not None:  # also when it is past: what is planned may wait for a session or the morning
        duties.plan(engine.store, target.id, name, about, at, now)
        return False
    begin(engine, target, name, about, now)
    return target.id == person.id


def barred(engine: "Engine", person: Person, state: Any = None) -> str | None:
    """Why this client may not train now (a stored name), None: they may. Read afresh at every event.

    `state`: of a session under way, whose bands may have come to sit on a limb that was closed since.
    """
    if status.without_consent(engine, person.id) is not None:
        return "no_consent"
    stands = clearances.now(engine, person.id)
    if stands.why is not None:
        return stands.why.value
    if any(not banded(one) <= stands.limbs for one in to_do(state)):
        return "limb_closed"
    if not engine.has_backup(person):
        return "no_second_contact"
    if pauses.paused_until(engine, person.id, engine.clock()) is not None:
        return "paused"
    if any(
        bars_training(alert.cause, settled=False) for alert in duties.open_alerts(engine.store, person.id)
    ):
        return "open_alert"
    return None
