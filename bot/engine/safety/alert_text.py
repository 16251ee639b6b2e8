"""What an alert says: who, the words and when, what was told, whether bands are on, what was done, how to reach them."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import status
from bot.engine.safety import never_on
from bot.engine.safety.bands import said_off
from conversations.words import alerts as alert_words
from conversations.words import safety
from core.calendar.zones import local
from core.facts import GETS_BETTER, Answered, Noticed
from core.safety.causes import GRAVE, OBSERVED, Tier
from core.store import duties, facts
from core.store.duties import OpenAlert
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

SESSIONS_SHOWN = 2
SAME_DAY = timedelta(hours=18)  # bands that came off longer ago are no part of the alert; own choice


def text(engine: "Engine", reader: Person, client: Person, alert: OpenAlert, sent: int) -> str:
    """Who, what was said word for word and when, what they were told, bands, what they did last, how to reach them.

    Times are the reader's, and of this moment: a repeated alert says how things stand when it goes out. It speaks
    for all about this client that nobody took yet, the gravest first; a new one speaks for itself.
    """
    all_open = sorted((alert, *others(engine, alert)), key=lambda one: (one.cause not in GRAVE, one.id))
    told_of = all_open if sent > 1 else [alert]
    again = alert_words.ALERT_AGAIN.format(times=sent) if sent > 1 else ""
    return alert_words.ALERT.format(
        name=client.name,
        cause="; ".join(cause_line(one) + _count(one) for one in told_of),
        banded=_banded(engine, client),
        again=again,
        call=_call(engine, client),
        said="\n".join(_said(engine, reader, one) for one in told_of),
        told=told_of[0].told or "-",
        bands=_bands(engine, reader, client, alert),
        since=_since(engine, reader, alert),
        also="" if sent > 1 else _also(engine, alert),
        last=status.last_sessions(engine, client, SESSIONS_SHOWN),
        reach=_reach(engine, client),
    )


def _count(alert: OpenAlert) -> str:
    said_often = alert.count > 1 and alert.cause not in OBSERVED
    return alert_words.ALERT_COUNT.format(count=alert.count) if said_often else ""


def _said(engine: "Engine", reader: Person, alert: OpenAlert) -> str:
    """The first words and the newest, each with its time."""
    line = alert_words.ALERT_SEEN if alert.cause in OBSERVED else alert_words.ALERT_SAID
    first = line.format(at=_clock(engine, reader, alert.raised_at), said=alert.said or "-")
    if alert.newest in ("", alert.said):
        return first
    return first + alert_words.ALERT_NEWEST.format(
        at=_clock(engine, reader, alert.last_at), said=alert.newest
    )


def _since(engine: "Engine", reader: Person, alert: OpenAlert) -> str:
    """What the client answered since it was raised: better, no longer numb."""
    store, who, raised = engine.store, alert.person, alert.raised_at
    noticed = facts.since(store, Noticed, who, raised)
    better = [(one.at, one.said) for one in noticed if one.kind == GETS_BETTER]
    answers = facts.since(store, Answered, who, raised, question="still_numb", answer="no")
    said = sorted([*better, *((one.at, alert_words.NOT_NUMB) for one in answers)])
    lines = [alert_words.SAID_SINCE.format(at=_clock(engine, reader, at), said=text) for at, text in said]
    return alert_words.ALERT_SINCE.format(said=", ".join(lines[-2:])) if lines else ""


def others(engine: "Engine", alert: OpenAlert) -> list[OpenAlert]:
    """What else cannot wait about this client and nobody took yet, oldest first."""
    return [
        one
        for one in duties.open_alerts(engine.store, alert.person)
        if one.id != alert.id and one.taken_by is None and one.tier is Tier.NOW
    ]


def _also(engine: "Engine", alert: OpenAlert) -> str:
    """Whoever reads one knows of all."""
    causes = "; ".join(cause_line(one) for one in others(engine, alert))
    return alert_words.ALERT_ALSO.format(causes=causes) if causes else ""


def _banded(engine: "Engine", client: Person) -> str:
    long = _on_for(engine, client)
    text = (
        alert_words.ALERT_MAYBE if never_on.alarm(engine, client.id) is not None else alert_words.ALERT_BANDED
    )
    return "" if long is None else text.format(long=long)


def _on_for(engine: "Engine", client: Person) -> str | None:
    """For how long bands are on, in whole minutes or hours; None: none is."""
    watches = duties.watches(engine.store, client.id)
    return alert_words.how_long(engine.clock() - watches[0].on_at) if watches else None


def _bands(engine: "Engine", reader: Person, client: Person, alert: OpenAlert) -> str:
    """Whether they are on now, for what may have to do with them; nothing when none were on that day."""
    watches, long = duties.watches(engine.store, client.id), _on_for(engine, client)
    if watches:
        known = never_on.alarm(engine, client.id) is None
        line = alert_words.ALERT_BANDS_ON if known else alert_words.ALERT_MAYBE_ON
        return line.format(at=_clock(engine, reader, watches[0].on_at), long=long)
    off = said_off(engine, client.id, alert.raised_at - SAME_DAY)
    return "" if off is None else alert_words.ALERT_BANDS_OFF.format(at=_clock(engine, reader, off.at))


def _clock(engine: "Engine", reader: Person, at: datetime) -> str:
    """The reader's clock, with the day when it is another one."""
    here = local(at, reader.zone)
    today = here.date() == local(engine.clock(), reader.zone).date()
    return f"{here:%H:%M}" if today else f"{here:%a %d %b %H:%M}"


def _call(engine: "Engine", client: Person) -> str:
    """Whom to ring: the client, else their contact."""
    phone = status.detail(engine, client.id, "phone", "")
    contact = status.detail(engine, client.id, "emergency_contact", "")
    without = alert_words.ALERT_NO_PHONE if contact else alert_words.ALERT_NO_NUMBER
    line = alert_words.ALERT_CALL if phone else without
    company = status.company(engine, client.id)
    return line.format(
        phone=phone, contact=contact, alone=alert_words.ALERT_ALONE if company == "-" else company
    )


def _reach(engine: "Engine", client: Person) -> str:
    def detail(name: str) -> str:
        return status.detail(engine, client.id, name, "-").replace("_", " ")

    return alert_words.ALERT_REACH.format(
        address=detail("address"),
        contact=detail("emergency_contact"),
        number=detail("emergency_number"),
    )


def cause_line(alert: OpenAlert) -> str:
    """The cause as the coach reads it."""
    return safety.COACH_READS[alert.cause]
