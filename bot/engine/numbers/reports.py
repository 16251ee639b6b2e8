"""A client's report from facts: its numbers, the words around them, and the letters that carry it."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

import msgspec

from bot.engine import status
from bot.engine.coach import pauses
from bot.engine.days import calendar
from bot.engine.numbers import trends
from bot.engine.safety import alert_text
from bot.engine.training import advising, history
from conversations.protocol import Say
from conversations.words import report as words
from conversations.words.movements import NAMES
from conversations.words.screening import in_words
from core.calendar.zones import local
from core.facts import (
    CalendarChanged,
    Cleared,
    CuffChecked,
    Measured,
    Paused,
    Rated,
    SessionEnded,
    SetDone,
    WalkDone,
)
from core.plans import Exercise, Plan, Scheme
from core.progression.looking_back import expected_80
from core.progression.records import Request, SessionRecord
from core.report import Report, Taken, report
from core.store import duties, facts
from core.store.mail import Letter, Priority, post
from core.store.people import Person
from core.stored_names import names_in

if TYPE_CHECKING:
    from bot.engine.core import Engine


def report_of(engine: "Engine", client: Person, now: datetime) -> Report:
    """The numbers of the plan in force (or the last one), from its beginning."""
    since = pauses.plan_began(engine, client.id) or client.joined
    plan, store, who = _plan(engine, client), engine.store, client.id
    return report(
        Taken(
            zone=client.zone,
            since=since,
            until=now,
            kept=calendar.kept(engine, client, since, now),
            ended=facts.since(store, SessionEnded, who, since),
            sets=facts.since(store, SetDone, who, since),
            walks=facts.since(store, WalkDone, who, since),
            rated=facts.since(store, Rated, who, since),
            checks=facts.since(store, CuffChecked, who, since),
            measured=facts.since(store, Measured, who, since),
            ranges=ranges(engine, client, plan),
            names=NAMES,
            loads=trends.loads(engine, client, since),
        )
    )


def _plan(engine: "Engine", client: Person) -> Plan | None:
    return status.plan_of(engine, client.id) or status.last_plan_of(engine, client.id)


def ranges(engine: "Engine", client: Person, plan: Plan | None) -> dict[tuple[str, str], tuple[int, int]]:
    """By session and movement: the reps of set 1 to expect, four times in five, from the sessions before it."""
    found: dict[tuple[str, str], tuple[int, int]] = {}
    for exercise in plan.exercises if plan else ():
        if exercise.scheme is not Scheme.WALK:
            found |= _ranges(engine, client, exercise)
    return found


def _ranges(engine: "Engine", client: Person, exercise: Exercise) -> dict[tuple[str, str], tuple[int, int]]:
    owned = advising.resistance_of(engine, client.id, exercise)
    records = history.by_session(engine, client.id, exercise)
    if owned is None:
        return {}
    before: list[SessionRecord] = []
    found: dict[tuple[str, str], tuple[int, int]] = {}
    for session, record in records:
        request = Request(exercise.movement, exercise.scheme, owned, tuple(before))
        expected = expected_80(request, record.used)
        if expected is not None:
            found[session, exercise.movement] = expected
        before.append(record)
    return found


# --- the words around it ---
def body_of(engine: "Engine", client: Person, now: datetime) -> dict[str, Any] | None:
    """All that the page needs, as plain data; None: nothing was trained or planned yet."""
    made, plan, coach = report_of(engine, client, now), _plan(engine, client), engine.coach_of(client)
    if plan is None or not (made.sessions or made.stopped or made.planned):
        return None
    return {
        "report": msgspec.to_builtins(made),
        "name": client.name,
        "code": words.CODE.format(number=client.id),
        "plan": plan.name,
        "goal": plan.goal.value,
        "coach": coach.name if coach else "-",
        "notes": notes(engine, client, pauses.plan_began(engine, client.id) or client.joined),
    }


def notes(engine: "Engine", client: Person, since: datetime) -> list[str]:
    """What else happened, a dated line each, oldest first."""
    store, who = engine.store, client.id
    cleared = facts.latest(store, Cleared, who)
    found = [(cleared.at, _cleared(client, cleared))] if cleared and cleared.regions else []
    for alert in duties.alerts_since(store, who, since):
        settled = words.NOTE_SETTLED if alert.settled_at else ""
        found.append(
            (alert.raised_at, words.NOTE_ALERT.format(cause=alert_text.cause_line(alert), settled=settled))
        )
    for pause in facts.since(store, Paused, who, since):
        if pause.until > pause.since:
            why = f": {pause.why}" if pause.why else ""
            found.append((pause.at, words.NOTE_PAUSE.format(day=_day(client, pause.until), why=why)))
    for change in facts.since(store, CalendarChanged, who, since):
        if change.limit:
            text = words.NOTE_LIMIT.format(limit=words.LIMITS[change.limit], note=change.note)
            found.append((change.at, text))
    return [f"{_day(client, at)}: {text}" for at, text in sorted(found)]


def _cleared(client: Person, cleared: Cleared) -> str:
    until = words.NOTE_UNTIL.format(day=_day(client, cleared.until)) if cleared.until else ""
    note = f": {cleared.note}" if cleared.note else ""
    return words.NOTE_CLEARED.format(regions=in_words(names_in(cleared.regions)), until=until, note=note)


def _day(client: Person, at: datetime) -> str:
    return words.day(local(at, client.zone).date().isoformat())


# --- sent ---
def send(engine: "Engine", reader: Person, client: Person, now: datetime) -> None:
    """To the coach or to the client: the page as a picture for the chat and as a PDF to pass on."""
    body, own = body_of(engine, client, now), reader.id == client.id
    if body is None:
        engine.say(
            reader, Say(words.NOTHING_YET_OWN if own else words.NOTHING_YET.format(name=client.name)), now
        )
        return
    if reader.chat is None:
        return
    first, last = words.day(body["report"]["first"]), words.day(body["report"]["last"])
    caption = (words.CAPTION_OWN if own else words.CAPTION).format(name=client.name, first=first, last=last)
    for kind, text in (("report_picture", caption), ("report", "")):
        letter = {**body, "text": text, "file": words.FILE.format(name=_file_name(client.name))}
        post(engine.store, Letter(reader.chat, letter, kind, Priority.DIGEST, reader.id), now)


def _file_name(name: str) -> str:
    kept = "".join(sign if sign.isalnum() else "-" for sign in name.lower())
    return "-".join(part for part in kept.split("-") if part) or "client"
