"""Whom an update is for: strangers, buttons, edits, pictures, words. Stop words first, always."""

from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import buttons, limits, outside_questions, turns
from bot.engine.days import whereabouts
from bot.engine.joining import strangers
from bot.engine.safety import stopping
from bot.engine.safety.bands_off import said_off
from bot.engine.safety.bands_on import said_on
from bot.engine.training import clips, corrections, edited_counts
from bot.engine.updates import Incoming, Kind
from conversations.heard import red_flag
from conversations.protocol import Cancelled, Corrected, Media, Said, Say, Sent, WentBack
from conversations.words import engine as words
from core.facts import SetDone
from core.store import facts, inbox, mail, people, threads
from core.store.people import Person, Role
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine

BACK = ("back", "/back", "go back")
CANCEL = ("cancel", "/cancel")


def route(engine: "Engine", incoming: Incoming, now: datetime) -> None:
    """Deal with one update."""
    if incoming.kind is Kind.NOTHING:
        return
    if incoming.kind is Kind.ELSEWHERE:
        strangers.once(engine, incoming.chat, words.PRIVATE_ONLY, now, ever=True)
        return
    if incoming.kind is Kind.INLINE:
        strangers.inline(engine, incoming.chat, incoming.query, now)
        return
    person = people.by_chat(engine.store, incoming.chat)
    if person is None:
        allowed = engine.limits.allow(incoming.chat, limits.STRANGER, incoming.at or now)
        if allowed or red_flag(incoming.text) is not None:
            stranger(engine, incoming, now)
        return
    if too_fast(engine, person, incoming, now):
        return
    if person.unreachable_at is not None:
        people.unreachable(engine.store, incoming.chat, None)
    known(engine, named(engine, person, incoming), incoming, now)


def named(engine: "Engine", person: Person, incoming: Incoming) -> Person:
    """A coach is known by number only; the first name comes with the first message."""
    if person.role is not Role.COACH or person.name != words.COACH_NAME or not incoming.name.strip():
        return person
    people.rename(engine.store, person.id, incoming.name.strip())
    return people.by_id(engine.store, person.id)


def too_fast(engine: "Engine", person: Person, incoming: Incoming, now: datetime) -> bool:
    """Whether this is one of far too many; said once. Never where bands are on, or the words are about stopping."""
    if engine.limits.allow(incoming.chat, limits.CLIENT, incoming.at or now):
        return False
    if stopping.must_be_heard(engine, person, incoming.text) or stops(engine, person, incoming):
        return False
    if engine.limits.first_refusal(incoming.chat, limits.CLIENT):
        engine.say(person, Say(words.TOO_FAST), now)
    return True


def stops(engine: "Engine", person: Person, incoming: Incoming) -> bool:
    """Whether a tap is one that ends something at once."""
    button = threads.button(engine.store, incoming.token, person.id) if incoming.token else None
    return button is not None and (
        button.value == "stop" or button.value.startswith(("bands_off", "never_on", "alert"))
    )


def stranger(engine: "Engine", incoming: Incoming, now: datetime) -> None:
    """A code opens the door; anything else gets a polite refusal with the sender's own number."""
    found = strangers.answer(engine, incoming.chat, incoming.text, now)
    if found is None:
        return
    invitation, coach_id, name = found
    coach = people.by_id(engine.store, coach_id)
    client = people.add(engine.store, incoming.chat, name, Role.CLIENT, coach.zone, now, coach_id)
    people.used(engine.store, invitation, client, now)
    called = incoming.name or "-"
    engine.say(coach, Say(words.JOINED.format(name=name, called=called, number=incoming.chat)), now)
    person = people.by_id(engine.store, client)
    engine.say(person, Say(words.WELCOME.format(name=name, coach=coach.name)), now)
    turns.begin(engine, person, "consent", {}, incoming.at or now)


def known(engine: "Engine", person: Person, incoming: Incoming, now: datetime) -> None:
    """An update from somebody we know."""
    inbox.heard_from(engine.store, incoming.update_id, person.id)
    at = min(incoming.at or now, now)
    match incoming.kind:
        case Kind.TAP:
            buttons.tap(engine, person, incoming, now)
        case Kind.EDIT:
            edit(engine, person, incoming, at)
        case Kind.MEDIA:
            media(engine, person, incoming, at)
        case _:
            text(engine, person, incoming, at)


# --- words ---
def text(engine: "Engine", person: Person, incoming: Incoming, at: datetime) -> None:
    """Typed words: stop words, then the message replied to, then the floor, then the menu."""
    if stopping.stopped(engine, person, incoming.text, at, incoming.message):
        return
    thread, question = addressed(engine, person, incoming)
    if thread is not None and incoming.message is not None:
        inbox.heard_in(engine.store, incoming.update_id, person.id, incoming.message, thread.id)
    flat = incoming.text.strip().lower()
    if somebody_elses(engine, person, incoming, at):
        return
    if incoming.reply_to is not None and thread is not None and states_again(engine, person, incoming):
        edit(engine, person, replace(incoming, message=incoming.reply_to), at)
        return
    first = (said_off, said_on, *outside_questions.before_the_question(thread, flat))
    if any(dealt(engine, person, incoming.text, at) for dealt in first):
        return
    if thread is None:
        outside_questions.nothing_open(engine, person, incoming.text, at, incoming.message)
    elif flat in BACK:
        turns.deliver(engine, person, thread, WentBack(at))
    elif flat in CANCEL:
        turns.deliver(engine, person, thread, Cancelled(at))
    else:
        answer(engine, person, thread, Said(at, incoming.text, question, incoming.message), incoming)


def somebody_elses(engine: "Engine", person: Person, incoming: Incoming, at: datetime) -> bool:
    """Whether it is forwarded, and so no answer and no film of theirs; several at once are refused once."""
    if incoming.forwarded and engine.limits.allow(incoming.chat, limits.FORWARDED, at):
        said = words.NOT_FORWARDED if incoming.kind is Kind.TEXT else words.NOT_FORWARDED_MEDIA
        engine.say(person, Say(said), at)
    return incoming.forwarded


def answer(engine: "Engine", person: Person, thread: Thread, said: Said, incoming: Incoming) -> None:
    """Words for a talk, with what they cannot be the answer to."""
    said = replace(said, unseen=unseen(engine, thread, incoming))
    late = said.to is None and corrections.too_late(engine, person, thread, said.text, said.unseen, said.at)
    if not late:
        turns.deliver(engine, person, thread, said, incoming.message)


def addressed(engine: "Engine", person: Person, incoming: Incoming) -> tuple[Thread | None, str | None]:
    """The thread the words are for: of the message replied to, else the floor."""
    if incoming.reply_to is not None:
        thread_id, question = mail.question_of(engine.store, incoming.chat, incoming.reply_to)
        thread = None if thread_id is None else threads.by_id(engine.store, thread_id)
        if thread is not None and thread.state is not None and thread.person == person.id:
            return thread, question
    return threads.floor(engine.store, person.id), None


def states_again(engine: "Engine", person: Person, incoming: Incoming) -> bool:
    """Whether a number is typed as a reply to the client's own message that had stated sets: as good as an edit."""
    stated = facts.by_message(engine.store, SetDone, person.id, incoming.reply_to or 0)
    return bool(stated) and any(sign.isdigit() for sign in incoming.text)


def unseen(engine: "Engine", thread: Thread, incoming: Incoming) -> frozenset[str]:
    """The thread's questions that this message cannot answer: they reached its chat only after it."""
    if incoming.message is None:
        return frozenset()
    return mail.unseen(engine.store, incoming.chat, thread.id, incoming.message)


def edit(engine: "Engine", person: Person, incoming: Incoming, at: datetime) -> None:
    """An edited message: stop words, then its thread, then the sets it had stated."""
    if stopping.stopped(engine, person, incoming.text, at, incoming.message) or incoming.message is None:
        return
    thread_id = inbox.thread_of_heard(engine.store, person.id, incoming.message)
    thread = None if thread_id is None else threads.by_id(engine.store, thread_id)
    stated = facts.by_message(engine.store, SetDone, person.id, incoming.message)
    if thread is not None and thread.state is not None:
        event = Corrected(at, incoming.text, incoming.message)
        turns.deliver(engine, person, thread, event, incoming.message)
        if stated != facts.by_message(engine.store, SetDone, person.id, incoming.message):
            return  # the session had these sets in hand; those of a movement before, it has not
    edited_counts.amend(engine, person, incoming.text, incoming.message, at)


def media(engine: "Engine", person: Person, incoming: Incoming, at: datetime) -> None:
    """A picture, a sticker, a voice note: to the floor; the caption may hold a stop word."""
    if incoming.text and stopping.stopped(engine, person, incoming.text, at, incoming.message):
        return
    if somebody_elses(engine, person, incoming, at):
        return
    if clips.sent(engine, person, incoming, at) or whereabouts.shared(engine, person, incoming, at):
        return
    thread, _ = addressed(engine, person, incoming)
    if thread is None or incoming.media is None:
        outside_questions.media(engine, person, incoming.media or Media.OTHER, at)
        return
    turns.deliver(
        engine, person, thread, Sent(at, incoming.media, incoming.file, incoming.message), incoming.message
    )
