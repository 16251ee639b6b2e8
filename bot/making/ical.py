"""The days of a plan as an iCalendar file (RFC 5545), for the client's own calendar."""

from collections.abc import Sequence
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from icalendar import Calendar, Event

from core.calendar.export import Entry, entries
from core.calendar.recurrence import When

PRODUCT = "-//cuffline//training days//EN"


def calendar_file(
    parts: Sequence[When], minutes: int, title: str, owner: str, now: datetime, version: int = 0
) -> bytes:
    """The file of days one after the other, each on its own clock.

    `minutes` is the length of a session, `owner` makes its ids unique to one client. The ids stay from file to
    file and `version` grows, so a calendar that reads a newer file updates its entries instead of doubling them.
    """
    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("method", "PUBLISH")
    for number, when in enumerate(parts):
        listed = entries(when, minutes)
        tag = f"-{listed[0].start:%Y%m%d}" if number else ""
        for entry in listed:
            calendar.add_component(_event(entry, title, f"{owner}-{_series(entry)}{tag}", now, version))
    calendar.add_missing_timezones()
    data: bytes = calendar.to_ical()
    return data


def _event(entry: Entry, title: str, uid: str, now: datetime, version: int) -> Event:
    zone = ZoneInfo(entry.zone)
    event = Event()
    event.add("uid", f"{uid}@cuffline")
    event.add("sequence", version)
    event.add("dtstamp", now)
    event.add("summary", title)
    event.add("dtstart", entry.start.replace(tzinfo=zone))
    event.add("duration", timedelta(minutes=entry.minutes))
    if entry.rule:
        event.add("rrule", entry.rule)
    if entry.without:
        event.add("exdate", [at.replace(tzinfo=zone) for at in entry.without])
    if entry.instead_of is not None:
        event.add("recurrence-id", entry.instead_of.replace(tzinfo=zone))
    return event


def _series(entry: Entry) -> str:
    """What stays of a series when its other times change: its hour; of a single session: its date and hour."""
    if entry.rule or entry.instead_of is not None:
        return f"{entry.instead_of or entry.start:%H%M}"
    return f"{entry.start:%Y%m%dT%H%M}"
