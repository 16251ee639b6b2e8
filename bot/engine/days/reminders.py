"""Reminders when they are due: once for each session, one honest word after an absence, and the day after."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import turns
from bot.engine.days import calendar, changing
from bot.engine.safety import alerts
from core.calendar.missed import TELL_COACH_AFTER, Attendance
from core.calendar.zones import local
from core.facts import SessionStarted
from core.safety.causes import Cause
from core.store import duties, facts
from core.store.duties import Planned
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

TOO_LATE = timedelta(hours=3)  # a reminder is of no use any more; own judgement, no source
LATE = timedelta(minutes=10)  # said with a word of apology from then on
MINUTE = timedelta(minutes=1)
ABOUT_SESSIONS = ("reminding", "missed")
DAY = timedelta(days=1)


def remind(engine: "Engine", client: Person, talk: Planned, now: datetime) -> None:
    """It is time for a session, or long past it because nobody was running."""
    at = datetime.fromisoformat(talk.about["at"])
    if turns.barred(engine, client) is None and not _done(engine, client, at):
        if now - at > TOO_LATE:
            catch_up(engine, client, talk, now)
        else:
            about = {**talk.about, "late": now - at > LATE, "ahead_min": round((at - now) / MINUTE)}
            turns.begin(engine, client, "reminding", about, now)
    if not talk.about.get("again"):
        calendar.remind_next(engine, client, now)


def ask_about_missed(engine: "Engine", client: Person, talk: Planned, now: datetime) -> None:
    """The day after: unless it was done after all; two in a row go to the coach's list."""
    at = datetime.fromisoformat(talk.about["at"])
    if _done(engine, client, at) or _moved(engine, client, talk, at, now):
        return
    if turns.barred(engine, client) is not None:
        return
    tell_coach(engine, client, now)
    if now - talk.due_at > TOO_LATE:
        catch_up(engine, client, talk, now)
    else:
        turns.begin(engine, client, "missed", talk.about, now)


def catch_up(engine: "Engine", client: Person, talk: Planned, now: datetime) -> None:
    """Nobody was running for hours or days: one message about all that passed, not one for each."""
    for dialogue in ABOUT_SESSIONS:
        duties.unplan_due(engine.store, client.id, dialogue, now)
    since = datetime.fromisoformat(talk.about["at"])
    passed = [
        one.occurrence
        for one in calendar.kept(engine, client, since - DAY, now)
        if not _is_done(one.attendance)
    ]
    passed = [one for one in passed if since <= one.at]
    last = passed[-1] if passed else None
    about = {**talk.about, "away": max(len(passed), 1)}
    if last is not None:
        about |= {"session_day": last.day.isoformat(), "at": last.at.isoformat()}
    tell_coach(engine, client, now)
    turns.begin(engine, client, "missed", about, now)
    # The reminder that would have planned the next may be among the passed.
    calendar.remind_next(engine, client, now)


def _is_done(attendance: Attendance) -> bool:
    return attendance is Attendance.DONE


def tell_coach(engine: "Engine", client: Person, now: datetime) -> None:
    """Two missed in a row: on the coach's list, once until a session is done."""
    known = any(alert.cause is Cause.MISSED for alert in duties.open_alerts(engine.store, client.id))
    count = calendar.missed_in_a_row(engine, client, now)
    if count >= TELL_COACH_AFTER and not known:
        alerts.raise_alert(engine, client.id, Cause.MISSED, f"{count}", "")


def trained(engine: "Engine", client: Person, now: datetime) -> None:
    """A session was done: what was missed before it is settled."""
    for alert in duties.open_alerts(engine.store, client.id):
        if alert.cause is Cause.MISSED:
            duties.settle_alert(engine.store, alert.id, "trained", now)


def _moved(engine: "Engine", client: Person, talk: Planned, at: datetime, now: datetime) -> bool:
    """Whether that session has another day by now: then it was not missed."""
    session = changing.session_of(engine, client, talk.about.get("session_day", ""), now)
    return session is not None and local(session.at, client.zone).date() != local(at, client.zone).date()


def _done(engine: "Engine", client: Person, at: datetime) -> bool:
    """Whether a session was begun on the local date of `at`."""
    day = local(at, client.zone).date()
    started = facts.since(engine.store, SessionStarted, client.id, at - 2 * DAY)
    return any(local(one.at, client.zone).date() == day for one in started)
