"""The coach's buttons and commands: each names what to do and, after the colon, about whom."""

from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import alerts, gate, practice, turns
from bot.engine.coach import card, digest, listing, more, resting
from conversations.protocol import Say
from conversations.words import engine as words
from core.access import Action
from core.store import duties, people
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

Plain = Callable[["Engine", Person, str, datetime], None]
About = Callable[["Engine", Person, Person, datetime], None]


def chosen(engine: "Engine", coach: Person, value: str, now: datetime) -> bool:
    """Do what a button or a command says; False: it says nothing known."""
    what, _, rest = value.removeprefix("menu:").partition(":")
    if what in PLAIN:
        PLAIN[what](engine, coach, rest, now)
    elif what in ABOUT_CLIENT:
        action, act = ABOUT_CLIENT[what]
        client = people.by_id(engine.store, int(rest))
        if gate.allows(engine, coach, action, client):
            act(engine, coach, client, now)
        else:
            engine.say(coach, Say(words.NOT_YOURS), now)
    else:
        return False
    return True


def _dialogue(name: str) -> About:
    """Begin a dialogue with the coach about the client."""
    return lambda engine, coach, client, now: turns.begin(engine, coach, name, {"client": client.id}, now)


def _clear(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    practice.ask_to_clear(engine, client, None, now, coach)


def _alert(engine: "Engine", coach: Person, rest: str, now: datetime) -> None:
    alert = duties.alert_by_id(engine.store, int(rest))
    if alert is None or not gate.allows(
        engine, coach, Action.TAKE_ALERT, people.by_id(engine.store, alert.person)
    ):
        engine.say(coach, Say(words.NOT_YOURS), now)
        return
    alerts.show(engine, coach, alert, now)


def _alone(engine: "Engine", coach: Person, rest: str, now: datetime) -> None:
    """There is no second human, and the coach said so."""
    duties.set_setting(engine.store, f"alone:{coach.id}", "yes")
    engine.say(coach, Say(words.ALONE_NOTED), now)


PLAIN: dict[str, Plain] = {
    "invite": lambda engine, coach, rest, now: turns.begin(engine, coach, "inviting", {}, now),
    "clients": lambda engine, coach, rest, now: listing.show(engine, coach, now, int(rest or 0)),
    "digest": lambda engine, coach, rest, now: digest.show(engine, coach, now),
    "everybody": lambda engine, coach, rest, now: digest.everybody(engine, coach, now, int(rest or 0)),
    "alert": _alert,
    "alone": _alone,
    "help": lambda engine, coach, rest, now: engine.say(coach, Say(words.COACH_HELP), now),
}
ABOUT_CLIENT: dict[str, tuple[Action, About]] = {
    "client": (Action.SEE_CLIENT, card.show),
    "log": (Action.SEE_CLIENT, card.log),
    "more": (Action.SEE_CLIENT, more.show),
    "clearing": (Action.CLEAR, _clear),
    "planning": (Action.PLAN, _dialogue("planning")),
    "message": (Action.RELAY, _dialogue("writing")),
    "pause": (Action.PLAN, _dialogue("pausing")),
    "resume": (Action.PLAN, resting.resume),
    "finish": (Action.PLAN, more.ask_to_finish),
    "finish_yes": (Action.PLAN, resting.finish),
    "again": (Action.PLAN, resting.again),
}
