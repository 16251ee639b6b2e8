"""A hold with a day: the client hears it, and on that day the coach is asked. It never ends by itself."""

from datetime import date, datetime, time
from typing import TYPE_CHECKING, Any

from bot.engine import clearances, quiet
from conversations.protocol import Choice, Say
from conversations.words import engine as words
from core.calendar.zones import instant
from core.store import duties
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

ASKED_AT = time(8)  # local, on the day; own choice


def decided(engine: "Engine", client: Person, hold: str | None, now: datetime) -> None:
    """A decision: an earlier hold's question is dropped; one with a day (ISO) is asked about on it."""
    duties.unplan(engine.store, client.id, "hold_over")
    coach = engine.coach_of(client)
    if hold is not None and coach is not None:
        asked = instant(date.fromisoformat(hold), ASKED_AT, client.zone)
        duties.plan(engine.store, client.id, "hold_over", {}, quiet.earliest(engine, coach, asked), now)


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
