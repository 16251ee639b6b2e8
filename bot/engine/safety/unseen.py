"""Limbs whose refill cannot be seen, and of which the coach decided that they train without: each for itself, until
they take it back."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import quiet, status
from conversations.protocol import Say
from conversations.words import cuffs as words
from conversations.words.coach import to_card
from core.cuffs.limbs import LEGS
from core.facts import CoachDid, CuffChecked, Detail
from core.store import facts
from core.store.people import Person
from core.stored_names import names_in

if TYPE_CHECKING:
    from bot.engine.core import Engine

NAME = "unseen_allowed"
# Kept before each limb was asked about; it was meant for legs, where there is no nail to look at.
EARLIER = "yes"


def allowed(engine: "Engine", client: int) -> tuple[str, ...]:
    """The limbs, by their stored names, in order."""
    kept = status.detail(engine, client, NAME, "")
    return tuple(sorted(LEGS)) if kept == EARLIER else names_in(kept)


def allow(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The coach decided on the last check: whatever was not seen on it may train without, now and later."""
    limbs = sorted({*allowed(engine, client.id), *_not_seen(engine, client.id)})
    facts.put(engine.store, client.id, Detail(now, NAME, ",".join(limbs)), now)
    engine.say(coach, Say(words.unseen_allowed(client.name, limbs)), now)


def card_lines(engine: "Engine", client: Person) -> list[str]:
    """On which limbs the client trains without; nothing where on none."""
    limbs = allowed(engine, client.id)
    return [words.UNSEEN_CARD.format(limbs=words.limbs_named(limbs))] if limbs else []


def take_back(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The coach wants to decide again each time; the client hears it before a check ends a session."""
    card = to_card(client.name, client.id)
    if not allowed(engine, client.id):
        engine.say(coach, Say(words.UNSEEN_NONE.format(name=client.name), (card,)), now)
        return
    facts.put(engine.store, client.id, Detail(now, NAME, ""), now)
    facts.put(engine.store, client.id, CoachDid(now, coach.id, "unseen_back"), now)
    quiet.note(engine, client, words.UNSEEN_CLIENT, now)
    engine.say(coach, Say(words.UNSEEN_TAKEN_BACK.format(name=client.name), (card,)), now)


def _not_seen(engine: "Engine", client: int) -> set[str]:
    store, last = engine.store, facts.latest(engine.store, CuffChecked, client)
    if last is None:
        return set()
    where = {"session": last.session, "spell": last.spell, "check_no": last.check_no}
    rows = facts.current(store, CuffChecked, client, **where)
    return {one.limb for one in rows if "unseen_refill" in names_in(one.because)}
