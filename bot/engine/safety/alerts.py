"""Alerts: raised in the same commit as the words that caused them, repeated until a human answers."""

from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import status
from bot.engine.safety import alert_text, unseen
from bot.engine.safety.alert_text import cause_line
from conversations.protocol import Choice, Say
from conversations.words import alerts as alert_words
from conversations.words import engine as words
from core.facts import CoachDid
from core.safety.causes import GRAVE, Cause, Tier, bars_training
from core.safety.escalation import TOGETHER, Who, asked_again_at, joins, next_round, sounds_again
from core.store import duties, facts, people
from core.store.duties import OpenAlert
from core.store.mail import Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

HOURLY = 4  # sendings after which the next lies an hour and more ahead
NO_BURST = timedelta(minutes=5)  # between two sendings, also when several are late; own caution, no source


def raise_alert(engine: "Engine", person: int, cause: Cause, said: str, told: str) -> None:
    """A new alert, or one more of the same that nobody took yet; after half an hour it sounds at once."""
    now = engine.clock()
    known = duties.same_alert(engine.store, person, cause)
    if known is not None and joins(cause, known.cause, taken=known.taken_by is not None):
        duties.again(engine.store, known.id, now, said)
        if sounds_again(now, known.last_at):
            send(engine, known.id)
        return
    first = next_round(cause, now, 0)
    alert = duties.raise_alert(engine.store, person, cause, said, told, now, first.at if first else None)
    if first is not None:
        send(engine, alert)


def send(engine: "Engine", alert_id: int) -> None:
    """Send it (again) to whoever is to get it by now, and set the next time. One repeat speaks for all that are near."""
    now = engine.clock()
    alert = duties.alert_by_id(engine.store, alert_id)
    if alert is None or alert.settled_at is not None:
        return
    if alert.taken_by is not None:
        _ask_settled(engine, alert, alert.taken_by, now)
        return
    client = people.by_id(engine.store, alert.person)
    going = (alert, *_near(engine, alert, now))
    to = [who for one in going for who in _whom(engine, client, one, _recipients(one, now))]
    for one in going:
        raised = min(one.raised_at, now)  # it may bear the time of a clock that ran ahead
        coming = next_round(one.cause, raised, one.calls + 1)
        duties.alert_sent(engine.store, one.id, None if coming is None else max(coming.at, now + NO_BURST))
    for who in dict.fromkeys(to):
        _send_to(engine, who, client, alert, now)


def _recipients(alert: OpenAlert, now: datetime) -> tuple[Who, ...]:
    """Who gets it this time."""
    this = next_round(alert.cause, min(alert.raised_at, now), alert.calls)
    return () if this is None else this.to


def _near(engine: "Engine", alert: OpenAlert, now: datetime) -> list[OpenAlert]:
    """Others of this client whose repeat is due soon, too: it goes out with this one, never later than its time.

    The client is never told before its time that nobody could be reached.
    """
    if alert.tier is not Tier.NOW or alert.calls == 0:
        return []
    told = _recipients(alert, now)
    return [
        one
        for one in alert_text.others(engine, alert)
        if one.calls > 0
        and one.next_at is not None
        and one.next_at <= now + _soon(alert, one)
        and (Who.CLIENT in told or Who.CLIENT not in _recipients(one, now))
    ]


def _soon(alert: OpenAlert, other: OpenAlert) -> timedelta:
    """Half an hour once both have come to rounds that lie an hour apart and more."""
    return TOGETHER if min(alert.calls, other.calls) >= HOURLY else NO_BURST


def _send_to(engine: "Engine", who: Who, client: Person, alert: OpenAlert, now: datetime) -> None:
    if who is Who.CLIENT:
        known = alert.calls > 0 and _told_by_another(engine, alert)
        if not somebody_answered(engine, client, alert) and not known:
            _nobody_reached(engine, client, now)
        return
    person = engine.coach_of(client) if who is Who.COACH else engine.second_contact(client)
    if person is not None:
        said = alert_text.text(engine, person, client, alert, alert.calls + 1)
        say = Say(said, _buttons(engine, alert))
        engine.say(person, say, now, Priority.ALERT)


def _nobody_reached(engine: "Engine", client: Person, now: datetime) -> None:
    number = status.emergency_number(engine, client.id)
    engine.say(client, Say(alert_words.COACH_SILENT.format(number=number)), now, Priority.ALERT)


def _told_by_another(engine: "Engine", alert: OpenAlert) -> bool:
    """Whether an alert of shortly before, which nobody took either, tells the client the same."""
    before = duties.alerts_since(engine.store, alert.person, alert.raised_at - TOGETHER)
    return any(
        one.id < alert.id and one.tier is Tier.NOW and one.taken_by is None and one.settled_at is None
        for one in before
    )


def _reachable(engine: "Engine", who: Who, client: Person) -> bool:
    person = engine.coach_of(client) if who is Who.COACH else engine.second_contact(client)
    return person is not None and person.chat is not None and person.unreachable_at is None


def _whom(engine: "Engine", client: Person, alert: OpenAlert, to: tuple[Who, ...]) -> tuple[Who, ...]:
    """As the rounds say; at once the second contact, else the client, when the coach's chat takes no messages."""
    if alert.tier is not Tier.NOW or alert.calls > 0 or _reachable(engine, Who.COACH, client):
        return to
    return (*to, Who.SECOND if _reachable(engine, Who.SECOND, client) else Who.CLIENT)


def somebody_answered(engine: "Engine", client: Person, alert: OpenAlert) -> bool:
    """Whether a coach already answered an alert raised with this one or since: an older answer says nothing."""
    recent = duties.alerts_since(engine.store, client.id, alert.raised_at)
    return any(one.taken_by is not None for one in recent)


def _ask_settled(engine: "Engine", alert: OpenAlert, coach: int, now: datetime) -> None:
    """A day after somebody took it: is it settled?"""
    duties.alert_sent(engine.store, alert.id, asked_again_at(now))
    client = people.by_id(engine.store, alert.person)
    asked = alert_words.ALERT_STILL_OPEN.format(name=client.name, cause=cause_line(alert))
    engine.say(people.by_id(engine.store, coach), Say(asked, _to_close(alert)), now)


def _buttons(engine: "Engine", alert: OpenAlert) -> tuple[Choice, ...]:
    """ "I am on it" takes all that the message names; what is decided is decided of this one."""
    named = [alert, *(alert_text.others(engine, alert) if alert.tier is Tier.NOW else [])]
    which = {"take": "+".join(str(one.id) for one in named)}
    return tuple(
        Choice(label, f"alert:{act}:{which.get(act, alert.id)}") for label, act in alert_words.ALERT_BUTTONS
    )


def _to_close(*found: OpenAlert) -> tuple[Choice, ...]:
    """Clear, of several each by its cause; and hold."""
    several = len(found) > 1
    clear = [
        Choice(
            words.CLEAR_ONE.format(cause=cause_line(one)) if several else alert_words.CLEAR_TO_TRAIN,
            f"alert:settle:{one.id}",
        )
        for one in found
    ]
    return (*clear, Choice(alert_words.HOLD, f"alert:hold:{found[0].id}"))


def show(engine: "Engine", coach: Person, alert: OpenAlert, now: datetime) -> None:
    """The alert once more for a coach who asks, with its buttons; one that was settled has none."""
    client = people.by_id(engine.store, alert.person)
    choices = () if alert.settled_at is not None else _buttons(engine, alert)
    engine.say(coach, Say(alert_text.text(engine, coach, client, alert, 1), choices), now)


def tapped(
    engine: "Engine", coach: Person, act: str, alert_id: int, now: datetime, more: Sequence[int] = ()
) -> None:
    """A coach's button under an alert; `more`: others that "I am on it" was said of."""
    alert = duties.alert_by_id(engine.store, alert_id)
    if alert is None:
        return
    client = people.by_id(engine.store, alert.person)
    facts.put(engine.store, client.id, CoachDid(now, coach.id, f"alert_{act}", alert.cause.value), now)
    duties.take_alert(engine.store, alert_id, coach.id, now, asked_again_at(now))
    match act:
        case "settle" if alert.cause in GRAVE:
            asked = alert_words.SEEN_BY_CLINICIAN.format(name=client.name, cause=cause_line(alert))
            sure = (
                Choice(alert_words.SEEN_YES, f"alert:settle_seen:{alert_id}"),
                Choice(alert_words.HOLD, f"alert:hold:{alert_id}"),
            )
            engine.say(coach, Say(asked, sure), now)
        case "settle" | "settle_seen":
            _settle(engine, coach, client, alert, now)
            closed = alert_words.ALERT_SETTLED.format(name=client.name, cause=cause_line(alert))
            engine.say(coach, Say(closed), now)
        case "hold":
            from bot.engine import acts

            acts.hold(engine, coach, client, now)
        case _:
            _taken(engine, coach, client, [alert, *_take_too(engine, coach, alert, more, now)], now)


def _take_too(
    engine: "Engine", coach: Person, alert: OpenAlert, more: Sequence[int], now: datetime
) -> list[OpenAlert]:
    """The others that the message named and that nobody took or settled since."""
    found = [one for one in duties.open_alerts(engine.store, alert.person) if one.id in more]
    fresh = [one for one in found if one.taken_by is None and one.id != alert.id]
    for one in fresh:
        facts.put(engine.store, one.person, CoachDid(now, coach.id, "alert_take", one.cause.value), now)
        duties.take_alert(engine.store, one.id, coach.id, now, asked_again_at(now))
    return fresh


def _taken(engine: "Engine", coach: Person, client: Person, found: list[OpenAlert], now: datetime) -> None:
    """The client hears who is on it, and so does the client's own coach."""
    engine.say(client, Say(alert_words.COACH_ON_IT.format(coach=coach.name)), now)
    causes = "; ".join(cause_line(one) for one in found)
    taken = alert_words.ALERT_TAKEN.format(coach=coach.name, name=client.name, cause=causes)
    engine.say(coach, Say(taken, _to_close(*found)), now)
    own = engine.coach_of(client)
    if own is not None and own.id != coach.id:
        engine.say(own, Say(taken), now)


def _settle(engine: "Engine", coach: Person, client: Person, alert: OpenAlert, now: datetime) -> None:
    if alert.settled_at is not None:
        return
    duties.settle_alert(engine.store, alert.id, "clear_to_train", now)
    if alert.cause is Cause.UNSEEN_REFILL:
        unseen.allow(engine, coach, client, now)
    if bars_training(alert.cause, settled=False):
        _tell_what_holds(engine, client, now)


def _tell_what_holds(engine: "Engine", client: Person, now: datetime) -> None:
    """Whoever heard "your coach first needs to look" hears that they have; to train again only who really may."""
    from bot.engine import turns

    why = turns.barred(engine, client)
    if why is None:
        engine.say(client, Say(alert_words.CLIENT_TRY_AGAIN), now)
    elif why != "open_alert":
        engine.say(client, Say(alert_words.CLIENT_LOOKED_AT), now)
