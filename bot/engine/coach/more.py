"""What can be done from the card besides the usual: a page about the plan, and one about the client."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import gate, status
from bot.engine.coach import away, covering, loads_asked, pauses
from bot.engine.coach import clients as whose
from bot.engine.safety import unseen
from conversations.protocol import Choice, Say
from conversations.words import allowing as allowing_words
from conversations.words import band_list as band_words
from conversations.words import coach as words
from conversations.words import covering as covering_words
from conversations.words import emergency as emergency_words
from conversations.words import gauging, girth, pulse
from conversations.words import review as review_words
from conversations.words import travelling as travelling_words
from conversations.words.cuffs import UNSEEN_BACK
from core.access import Action
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def the_plan(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """What can be done with the plan besides changing a part of it."""
    asks = loads_asked.asks(engine, client.id)
    pairs = [
        (words.NEW_PLAN, "planning"),
        *_with_the_plan(engine, client, now),
        (words.NEXT_LOADS_AUTO if asks else words.NEXT_LOADS_ASK, "next_loads"),
        (allowing_words.BUTTON, "allow"),
    ]
    _page(engine, coach, client, words.ABOUT_THE_PLAN, pairs, now)


def _with_the_plan(engine: "Engine", client: Person, now: datetime) -> list[tuple[str, str]]:
    """What depends on whether there is a plan, and on a travel plan."""
    travels = away.active(engine, client.id, now) is not None
    back = [(travelling_words.TRAVEL_END, "travel_end")] if travels else []
    if status.plan_of(engine, client.id) is None:
        again = [(words.SAME_PLAN_AGAIN, "again")] if pauses.is_finished(engine, client.id) else []
        return [*again, *back]
    return [
        *(back or [(travelling_words.TRAVEL, "travel")]),
        (words.SAVE_TEMPLATE, "save_template"),
        (review_words.REVIEW, "review"),
        (words.FINISH, "finish"),
    ]


def show(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """What is about the client, not the plan: what was done, bands, measures, name, whose client."""
    pairs = [
        (words.LOG, "log"),
        (band_words.BUTTON, "kit"),
        (emergency_words.BUTTON, "emergency"),
        (girth.GIRTH, "girth"),
        (gauging.CUFF_PRESSURE, "gauge"),
        (pulse.PULSE, "pulse"),
        (words.RENAME, "rename"),
    ]
    if unseen.allowed(engine, client.id):
        pairs.append((UNSEEN_BACK, "unseen_back"))
    if gate.allows(engine, coach, Action.HAND_OVER, client) and covering.others(engine, coach):
        pairs.append((covering_words.HAND_OVER, "handover"))
    _page(engine, coach, client, words.WHAT_ELSE, pairs, now)


def _page(
    engine: "Engine", coach: Person, client: Person, head: str, pairs: list[tuple[str, str]], now: datetime
) -> None:
    """Buttons about a client, and the way back to the card."""
    name = whose.name_of(engine, coach, client, now)
    buttons = (
        *(Choice(label, f"menu:{act}:{client.id}") for label, act in pairs),
        words.to_card(name, client.id),
    )
    engine.say(coach, Say(head.format(name=name), buttons), now)


def ask_to_finish(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """A plan ends only after a second tap."""
    name = whose.name_of(engine, coach, client, now)
    yes = Choice(words.FINISH_YES, f"menu:finish_yes:{client.id}")
    no = words.to_card(name, client.id)
    engine.say(coach, Say(words.FINISH_SURE.format(name=name), (yes, no)), now)
