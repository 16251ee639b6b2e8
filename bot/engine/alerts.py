"""Alerts: raised in the same commit as the words that caused them, repeated until a human answers."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import never_on, status
from conversations.protocol import Choice, Say
from conversations.words import engine as words
from conversations.words import safety
from core.calendar.zones import local
from core.facts import BandsOff, CoachDid, Detail
from core.safety.causes import GRAVE, OBSERVED, Cause, Tier, bars_training, tier_of
from core.safety.escalation import TOGETHER, Who, asked_again_at, joins, next_round, sounds_again
from core.store import duties, facts, people
from core.store.duties import OpenAlert
from core.store.mail import Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

SESSIONS_SHOWN = 2
SAME_DAY = timedelta(hours=18)  # bands that came off longer ago are no part of the alert; own choice
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
    """Send it (again) to whoever is to get it by now, and set the next time."""
    now = engine.clock()
    alert = duties.alert_by_id(engine.store, alert_id)
    if alert is None or alert.settled_at is not None:
        return
    if alert.taken_by is not None:
        _ask_settled(engine, alert, alert.taken_by, now)
        return
    raised = min(alert.raised_at, now)  # it may bear the time of a clock that ran ahead
    this = next_round(alert.cause, raised, alert.calls)
    coming = next_round(alert.cause, raised, alert.calls + 1)
    duties.alert_sent(engine.store, alert_id, None if coming is None else max(coming.at, now + NO_BURST))
    client = people.by_id(engine.store, alert.person)
    for who in _whom(engine, client, alert, this.to) if this is not None else ():
        _send_to(engine, who, client, alert, now)


def _send_to(engine: "Engine", who: Who, client: Person, alert: OpenAlert, now: datetime) -> None:
    if who is Who.CLIENT:
        known = alert.calls > 0 and _told_by_another(engine, alert)
        if not somebody_answered(engine, client, alert) and not known:
            _nobody_reached(engine, client, now)
        return
    person = engine.coach_of(client) if who is Who.COACH else engine.second_contact(client)
    if person is not None:
        say = Say(text(engine, person, client, alert, alert.calls + 1), _buttons(alert))
        engine.say(person, say, now, Priority.ALERT)


def _nobody_reached(engine: "Engine", client: Person, now: datetime) -> None:
    number = status.emergency_number(engine, client.id)
    engine.say(client, Say(words.COACH_SILENT.format(number=number)), now, Priority.ALERT)


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
    asked = words.ALERT_STILL_OPEN.format(name=client.name, cause=cause_line(alert))
    engine.say(people.by_id(engine.store, coach), Say(asked, _to_close(alert.id)), now)


def _buttons(alert: OpenAlert) -> tuple[Choice, ...]:
    return tuple(Choice(label, f"alert:{act}:{alert.id}") for label, act in words.ALERT_BUTTONS)


def _to_close(alert: int) -> tuple[Choice, ...]:
    return (
        Choice(words.CLEAR_TO_TRAIN, f"alert:settle:{alert}"),
        Choice(words.HOLD, f"alert:hold:{alert}"),
    )


def text(engine: "Engine", reader: Person, client: Person, alert: OpenAlert, sent: int) -> str:
    """Who, what was said word for word and when, what they were told, bands, what they did last, how to reach them.

    Times are the reader's, and of this moment: a repeated alert says how things stand when it goes out.
    """
    said_often = alert.count > 1 and alert.cause not in OBSERVED
    count = words.ALERT_COUNT.format(count=alert.count) if said_often else ""
    again = words.ALERT_AGAIN.format(times=sent) if sent > 1 else ""
    return words.ALERT.format(
        name=client.name,
        cause=cause_line(alert) + count,
        banded=_banded(engine, client),
        again=again,
        call=_call(engine, client),
        said=_said(engine, reader, alert),
        told=alert.told or "-",
        bands=_bands(engine, reader, client, alert),
        also=_also(engine, alert),
        last=status.last_sessions(engine, client, SESSIONS_SHOWN),
        reach=_reach(engine, client),
    )


def _said(engine: "Engine", reader: Person, alert: OpenAlert) -> str:
    """The first words and the newest, each with its time."""
    line = words.ALERT_SEEN if alert.cause in OBSERVED else words.ALERT_SAID
    first = line.format(at=_clock(engine, reader, alert.raised_at), said=alert.said or "-")
    if alert.newest in ("", alert.said):
        return first
    return first + words.ALERT_NEWEST.format(at=_clock(engine, reader, alert.last_at), said=alert.newest)


def _also(engine: "Engine", alert: OpenAlert) -> str:
    """What else about this client nobody took yet: each goes on in its own time, and whoever reads one knows of all."""
    others = [
        cause_line(one)
        for one in duties.open_alerts(engine.store, alert.person)
        if one.id != alert.id and one.taken_by is None and one.tier is Tier.NOW
    ]
    return words.ALERT_ALSO.format(causes="; ".join(others)) if others else ""


def _banded(engine: "Engine", client: Person) -> str:
    long = _on_for(engine, client)
    text = words.ALERT_MAYBE if never_on.alarm(engine, client.id) is not None else words.ALERT_BANDED
    return "" if long is None else text.format(long=long)


def _on_for(engine: "Engine", client: Person) -> str | None:
    """For how long bands are on, in whole minutes or hours; None: none is."""
    watches = duties.watches(engine.store, client.id)
    return words.how_long(engine.clock() - watches[0].on_at) if watches else None


def _bands(engine: "Engine", reader: Person, client: Person, alert: OpenAlert) -> str:
    """Whether they are on now, for what may have to do with them; nothing when none were on that day."""
    watches, long = duties.watches(engine.store, client.id), _on_for(engine, client)
    if watches:
        known = never_on.alarm(engine, client.id) is None
        line = words.ALERT_BANDS_ON if known else words.ALERT_MAYBE_ON
        return line.format(at=_clock(engine, reader, watches[0].on_at), long=long)
    off = facts.latest(engine.store, BandsOff, client.id)
    if off is None or off.at < alert.raised_at - SAME_DAY:
        return ""
    return words.ALERT_BANDS_OFF.format(at=_clock(engine, reader, off.at))


def _clock(engine: "Engine", reader: Person, at: datetime) -> str:
    """The reader's clock, with the day when it is another one."""
    here = local(at, reader.zone)
    today = here.date() == local(engine.clock(), reader.zone).date()
    return f"{here:%H:%M}" if today else f"{here:%a %d %b %H:%M}"


def _call(engine: "Engine", client: Person) -> str:
    """Whom to ring: the client, else their contact."""
    phone = status.detail(engine, client.id, "phone", "")
    contact = status.detail(engine, client.id, "emergency_contact", "")
    without = words.ALERT_NO_PHONE if contact else words.ALERT_NO_NUMBER
    line = words.ALERT_CALL if phone else without
    company = status.company(engine, client.id)
    return line.format(phone=phone, contact=contact, alone=words.ALERT_ALONE if company == "-" else company)


def _reach(engine: "Engine", client: Person) -> str:
    def detail(name: str) -> str:
        return status.detail(engine, client.id, name, "-").replace("_", " ")

    return words.ALERT_REACH.format(
        address=detail("address"),
        contact=detail("emergency_contact"),
        number=detail("emergency_number"),
    )


def cause_line(alert: OpenAlert) -> str:
    """The cause as the coach reads it."""
    return safety.COACH_READS[alert.cause]


def show(engine: "Engine", coach: Person, alert: OpenAlert, now: datetime) -> None:
    """The alert once more for a coach who asks, with its buttons; one that was settled has none."""
    client = people.by_id(engine.store, alert.person)
    choices = () if alert.settled_at is not None else _buttons(alert)
    engine.say(coach, Say(text(engine, coach, client, alert, 1), choices), now)


def tapped(engine: "Engine", coach: Person, act: str, alert_id: int, now: datetime) -> None:
    """A coach's button under an alert."""
    alert = duties.alert_by_id(engine.store, alert_id)
    if alert is None:
        return
    client = people.by_id(engine.store, alert.person)
    facts.put(engine.store, client.id, CoachDid(now, coach.id, f"alert_{act}", alert.cause.value), now)
    duties.take_alert(engine.store, alert_id, coach.id, now, asked_again_at(now))
    match act:
        case "settle" if alert.cause in GRAVE:
            asked = words.SEEN_BY_CLINICIAN.format(name=client.name, cause=cause_line(alert))
            sure = (
                Choice(words.SEEN_YES, f"alert:settle_seen:{alert_id}"),
                Choice(words.HOLD, f"alert:hold:{alert_id}"),
            )
            engine.say(coach, Say(asked, sure), now)
        case "settle" | "settle_seen":
            _settle(engine, client, alert, now)
            closed = words.ALERT_SETTLED.format(name=client.name, cause=cause_line(alert))
            engine.say(coach, Say(closed), now)
        case "hold":
            from bot.engine import acts

            acts.hold(engine, coach, client, now)
        case _:
            engine.say(client, Say(words.COACH_ON_IT.format(coach=coach.name)), now)
            taken = words.ALERT_TAKEN.format(coach=coach.name, name=client.name, cause=cause_line(alert))
            engine.say(coach, Say(taken, _to_close(alert_id)), now)
            own = engine.coach_of(client)
            if own is not None and own.id != coach.id:
                engine.say(own, Say(taken), now)


def _settle(engine: "Engine", client: Person, alert: OpenAlert, now: datetime) -> None:
    if alert.settled_at is not None:
        return
    duties.settle_alert(engine.store, alert.id, "clear_to_train", now)
    if (
        alert.cause is Cause.UNSEEN_REFILL
    ):  # the coach has decided: this client trains without a visible refill
        facts.put(engine.store, client.id, Detail(now, "unseen_allowed", "yes"), now)
    others = duties.open_alerts(engine.store, client.id)
    if tier_of(alert.cause) is Tier.NOW and not any(
        bars_training(one.cause, settled=False) for one in others
    ):
        engine.say(client, Say(words.CLIENT_TRY_AGAIN), now)
