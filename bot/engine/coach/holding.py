"""A hold with a day: the client hears it, and on that day the coach is asked. It never ends by itself."""

from datetime import date, datetime, time
from typing import TYPE_CHECKING, Any

from bot.engine import gate, quiet, turns
from bot.engine.joining import clearances
from conversations.protocol import Choice, Say
from conversations.words import engine as words
from core.access import Action
from core.calendar.zones import instant
from core.store import duties, people
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

ASKED_AT = time(8)  # local, on the day; own choice


def decided(engine: "Engine", client: Person, hold: str | None, now: datetime) -> None:
    """A decision: an earlier hold's question is dropped; one with a day (ISO) is asked about on it."""
    duties.unplan(engine.store, client.id, "hold_over")
    coach = engine.coach_of(client)
    if hold is not None and coach is not None:
        asked = quiet.earliest(engine, coach, _asked(client, hold))
        duties.plan(engine.store, client.id, "hold_over", {}, asked, now)


def _asked(client: Person, hold: str) -> datetime:
    """In the client's morning of that day (ISO)."""
    return instant(date.fromisoformat(hold), ASKED_AT, client.zone)


def ask_until(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """After "Hold": until when. Only of whoever may clear: a second contact holds, and the coach decides."""
    duties.unplan(engine.store, client.id, "hold_over")
    if gate.allows(engine, coach, Action.CLEAR, client):
        turns.begin(engine, coach, "holding", {"client": client.id}, now)


def until(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """The coach gave a hold its day."""
    client = people.by_id(engine.store, details["client"])
    decided(engine, client, details["hold"], now)
    for alert in duties.open_alerts(engine.store, client.id):
        if alert.taken_by is not None:  # until that day nobody is asked every morning whether it is settled
            duties.ask_alert_at(engine.store, alert.id, _asked(client, details["hold"]))
    tell(engine, client, details["hold"], now)
    return False


def tell(engine: "Engine", client: Person, hold: str | None, now: datetime) -> None:
    """The client hears of the hold, and of its day."""
    day = "" if hold is None else f"{date.fromisoformat(hold):%A %-d %B}"
    engine.say(client, Say(words.HELD_UNTIL.format(day=day) if day else words.HELD), now)


def hold_over(engine: "Engine", client: Person, about: dict[str, Any], now: datetime) -> None:
    """The day has come: the coach decides."""
    coach, decision = engine.coach_of(client), clearances.decision(engine, client.id)
    if coach is None or decision is None or decision.decision != "held":
        return
    again = Choice(words.LOOK_AT_CLEARANCE, f"menu:clearing:{client.id}")
    engine.say(coach, Say(words.HOLD_OVER.format(name=client.name), (again,)), now)
