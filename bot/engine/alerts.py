"""Alerts: raised in the same commit as the words that caused them, repeated until a human answers."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import gate, status
from conversations.protocol import Choice, Say
from conversations.words import engine as words
from core import alarms
from core.access import Action
from core.alarms import Tier
from core.facts import CoachDid, Detail
from core.store import duties, facts, people
from core.store.duties import OpenAlert
from core.store.mail import Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def raise_alert(engine: "Engine", person: int, cause: str, said: str, told: str) -> None:
    """A new alert, or one more of the same within 30 min."""
    now = engine.clock()
    known = duties.same_alert(engine.store, person, cause, now - alarms.SAME_WITHIN)
    if known is not None:
        duties.again(engine.store, known.id, now)
        return
    tier = alarms.tier(cause)
    first = None if tier is Tier.WEEK else now
    alert = duties.raise_alert(engine.store, person, cause, tier, said, told, now, first)
    if first is not None:
        send(engine, alert)


def send(engine: "Engine", alert_id: int) -> None:
    """Send it (again) to whoever is to get it by now, and set the next time."""
    now = engine.clock()
    alert = duties.alert_by_id(engine.store, alert_id)
    if alert is None or alert.settled_at is not None or alert.taken_by is not None:
        return
    tier, sent = Tier(alert.tier), alert.calls + 1
    duties.alert_sent(engine.store, alert_id, alarms.next_send(tier, alert.raised_at, sent))
    client = people.by_id(engine.store, alert.person)
    for person in _receivers(engine, client, tier, sent):
        engine.say(person, Say(text(engine, client, alert, sent), _buttons(alert)), now, Priority.ALERT)
    if alarms.client_is_told(tier, sent):
        number = status.emergency_number(engine, client.id)
        engine.say(client, Say(words.COACH_SILENT.format(number=number)), now, Priority.ALERT)


def _receivers(engine: "Engine", client: Person, tier: Tier, sent: int) -> list[Person]:
    coach = engine.coach_of(client)
    second = engine.second_contact(client) if alarms.to_second_contact(tier, sent) else None
    return [person for person in (coach, second) if person is not None]


def _buttons(alert: OpenAlert) -> tuple[Choice, ...]:
    return tuple(Choice(label, f"alert:{act}:{alert.id}") for label, act in words.ALERT_BUTTONS)


def text(engine: "Engine", client: Person, alert: OpenAlert, sent: int) -> str:
    """Who, what was said word for word, what they were told, how the last session went, how to reach them."""
    body = words.ALERT.format(
        name=client.name,
        cause=_cause(alert) + (words.ALERT_COUNT.format(count=alert.count) if alert.count > 1 else ""),
        said=alert.said or "-",
        told=alert.told or "-",
        last=status.last_session(engine, client),
        phone=status.detail(engine, client.id, "phone", "-"),
        address=status.detail(engine, client.id, "address", "-"),
        contact=status.detail(engine, client.id, "emergency_contact", "-"),
    )
    return body if sent == 1 else f"{words.ALERT_AGAIN.format(times=sent)}\n{body}"


def _cause(alert: OpenAlert) -> str:
    """The cause as the coach reads it."""
    return words.CAUSES.get(alert.cause, alert.cause.replace("_", " "))


def tapped(engine: "Engine", coach: Person, act: str, alert_id: int, now: datetime) -> None:
    """A coach's button under an alert."""
    alert = duties.alert_by_id(engine.store, alert_id)
    if alert is None:
        return
    client = people.by_id(engine.store, alert.person)
    if not gate.allows(engine, coach, Action.TAKE_ALERT, client):
        return
    facts.put(engine.store, client.id, CoachDid(now, coach.id, f"alert_{act}", alert.cause), now)
    cause = _cause(alert)
    duties.take_alert(engine.store, alert_id, coach.id, now)
    match act:
        case "settle":
            _settle(engine, client, alert, now)
            engine.say(coach, Say(words.ALERT_SETTLED.format(name=client.name, cause=cause)), now)
        case "hold":
            from bot.engine import acts

            acts.hold(engine, coach, client, now)
        case _:
            engine.say(client, Say(words.COACH_ON_IT), now)
            taken = words.ALERT_TAKEN.format(coach=coach.name, name=client.name, cause=cause)
            settle = (
                Choice(words.CLEAR_TO_TRAIN, f"alert:settle:{alert_id}"),
                Choice(words.HOLD, f"alert:hold:{alert_id}"),
            )
            engine.say(coach, Say(taken, settle), now)


def _settle(engine: "Engine", client: Person, alert: OpenAlert, now: datetime) -> None:
    if alert.settled_at is not None:
        return
    duties.settle_alert(engine.store, alert.id, "clear_to_train", now)
    if alert.cause == "unseen_refill":  # the coach has decided: this client trains without a visible refill
        facts.put(engine.store, client.id, Detail(now, "unseen_allowed", "yes"), now)
    if alert.tier == Tier.NOW:
        engine.say(client, Say(words.CLIENT_TRY_AGAIN), now)
