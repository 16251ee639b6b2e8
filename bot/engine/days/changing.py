"""Days and times in plain words, from either side: who may, what follows, and the line for the other side."""

import re
from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING, Any

from bot.engine import briefs, gate, quiet, status, turns
from bot.engine.coach import clients as whose
from bot.engine.coach import writing_to
from bot.engine.days import calendar
from conversations.changing import Brief, is_change
from conversations.changing.form import start
from conversations.changing.meaning import meanings
from conversations.changing.trips import back_to, end_of
from conversations.protocol import Halted, Say
from conversations.words import changing as words
from conversations.words import dates as date_words
from conversations.words import engine as engine_words
from conversations.words import reminding as reminding_words
from core.access import Action
from core.calendar.changing import in_zone
from core.calendar.occurrences import Occurrence, next_occurrence, occurrences_between
from core.calendar.recurrence import When
from core.calendar.stored import when_from_text, when_to_text
from core.calendar.zones import instant
from core.facts import CalendarChanged
from core.store import duties, facts, people, threads
from core.store.mail import Priority
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine

# "ruta: move thursday to friday"; words to a client begin with "to" (see coach.writing_to).
NAMED = re.compile(r"^(?P<name>[^:]{1,40}):\s*(?P<text>.+)$", re.DOTALL)
OWN_WORDS = ("consent", "screening", "trouble", "changing")  # in these every word is an answer
OWN_TIMES = ("reminding", "missed")  # they read a new time for their own session
NEAR = timedelta(days=30)


# --- spotted ---
def asked(engine: "Engine", person: Person, text: str, at: datetime) -> bool:
    """Whether a text changed somebody's days; then the questions about it have begun."""
    if person.role is Role.COACH:
        return _coach_asked(engine, person, text, at)
    open_one = threads.floor(engine.store, person.id)
    name = open_one.dialogue if open_one is not None else ""
    if name in OWN_WORDS:
        return False
    if not is_change(text, at, person.zone, asked=bool(name), reminded=name in OWN_TIMES):
        return False
    if status.plan_of(engine, person.id) is None:
        return False
    about = {"said": text, "said_at": at.isoformat()}
    if name == "session":
        return _kept(engine, person, about, at)
    turns.begin(engine, person, "changing", about, at)
    return True


def _kept(engine: "Engine", client: Person, about: dict[str, Any], at: datetime) -> bool:
    """In a session days wait: the next word is a count. They are asked about once it is over, each line once."""
    waiting = [talk.about.get("said") for talk in duties.planned(engine.store, client.id, "changing")]
    if about["said"] not in waiting:
        duties.plan(engine.store, client.id, "changing", about, at, at)
    engine.say(client, Say(words.AFTER_SESSION), at, Priority.SESSION)
    return True


def _coach_asked(engine: "Engine", coach: Person, text: str, at: datetime) -> bool:
    named = NAMED.match(text.strip())
    if named is None:
        return _for_whom(engine, coach, text, at)
    clients = whose.found(engine, coach, named["name"], at)
    if not clients:
        return False
    if len(clients) > 1:
        engine.say(coach, Say(engine_words.NO_SUCH_CLIENT), at)
        return True
    _about(engine, coach, clients[0], named["text"], at)
    return True


def _about(engine: "Engine", coach: Person, client: Person, text: str, at: datetime) -> None:
    if not gate.allows(engine, coach, Action.MOVE_DAYS, client):
        engine.say(coach, Say(engine_words.NOT_YOURS), at)
    elif not is_change(text, at, client.zone, asked=False):
        writing_to.offer(engine, coach, client, text, words.UNREAD.format(name=client.name, text=text), at)
    else:
        about = {"client": client.id, "said": text, "said_at": at.isoformat()}
        turns.begin(engine, coach, "changing", about, at)


def _for_whom(engine: "Engine", coach: Person, text: str, at: datetime) -> bool:
    """The coach named nobody: which client, unless a question is open or there are none."""
    clients = whose.seen_by(engine, coach, at)
    if threads.floor(engine.store, coach.id) is not None or not clients:
        return False
    if not is_change(text, at, coach.zone, asked=False):
        return False
    engine.say(coach, Say(words.FOR_WHOM.format(name=clients[0].name, text=text)), at)
    return True


# --- acts of the dialogues ---
def changed(engine: "Engine", person: Person, details: dict[str, Any], now: datetime) -> bool:
    """The days are stored: reminders follow them, an open reminder ends, the other side hears of it."""
    client = people.by_id(engine.store, details["client"])
    follow(engine, client, now)
    tell_other_side(engine, client, details, now)
    return False


def follow(engine: "Engine", client: Person, now: datetime) -> None:
    """Reminders by the days as they are now."""
    for thread in threads.live(engine.store, client.id):
        if thread.dialogue in OWN_TIMES:
            turns.deliver(engine, client, thread, Halted(now, "days_changed"))
    duties.unplan(engine.store, client.id, "reminding")
    calendar.remind_next(engine, client, now)


def tell_other_side(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> None:
    """One line: the coach of what a client changed, the client of what the coach changed."""
    if details["by_coach"]:
        quiet.note(engine, client, words.COACH_CHANGED.format(told=details["told"]), now)
        return
    coach = engine.coach_of(client)
    if coach is not None:
        quiet.note(engine, coach, words.CLIENT_CHANGED.format(name=client.name, told=details["told"]), now)


def ask_coach(engine: "Engine", client: Person, about: dict[str, Any], now: datetime) -> bool:
    """The client wants what a usual limit advises against: the coach decides, after their quiet hours."""
    coach = engine.coach_of(client)
    if coach is not None:
        duties.plan(engine.store, coach.id, "changing", about, quiet.earliest(engine, coach, now), now)
    return False


def settings_changed(engine: "Engine", person: Person, details: dict[str, Any], now: datetime) -> bool:
    """When to be reminded, or quiet hours: the next reminder follows; a coach's digest its day and hour."""
    if person.role is Role.CLIENT:
        calendar.remind_next(engine, person, now)
    else:
        calendar.plan_week(engine, person, now)
    return False


def wish_declined(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """The coach keeps to the usual limit."""
    quiet.note(engine, people.by_id(engine.store, details["client"]), words.DECLINED, now)
    return False


def session_moved(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """At the reminder another time was chosen: a limit is told first, else the session moves."""
    to = datetime.fromisoformat(details["to"])
    session = session_of(engine, client, details["session_day"], now)
    if session is None or session.at == to:  # by no days, or where it is already: only the reminder moves
        again = {**details, "at": to.isoformat(), "again": True}
        duties.plan(engine.store, client.id, "reminding", again, to, now)
        _agreed(engine, client, to, now)
        return False
    about = {"move_day": session.day.isoformat(), "move_to": to.isoformat(), "said_at": now.isoformat()}
    brief: Brief = briefs.make(engine, client, "changing", about)
    readings = meanings(brief, start(brief)).readings
    if not readings or readings[0].limit:
        turns.begin(engine, client, "changing", about, now)
        return True
    change = CalendarChanged(now, readings[0].when, client.id, readings[0].told)
    facts.put(engine.store, client.id, change, now)
    _agreed(engine, client, to, now)
    return changed(engine, client, {"client": client.id, "told": readings[0].told, "by_coach": False}, now)


def _agreed(engine: "Engine", client: Person, to: datetime, now: datetime) -> None:
    when = calendar.shown(engine, client, to)
    engine.say(client, Say(reminding_words.AGREED.format(when=when)), now)


def session_of(engine: "Engine", client: Person, day: str, now: datetime) -> Occurrence | None:
    """The planned session that the rule gave that day; None: the plan has no such day."""
    plan = status.plan_of(engine, client.id)
    if plan is None or plan.when is None or not day:
        return None
    near = occurrences_between(when_from_text(plan.when), now - NEAR, now + NEAR)
    return next((one for one in near if one.day == date.fromisoformat(day)), None)


# --- elsewhere ---
def travel(engine: "Engine", person: Person, details: dict[str, Any], now: datetime) -> bool:
    """Another clock from now on, or for some days: then back by itself."""
    client = people.by_id(engine.store, details["client"])
    there, moves = details["zone"], calendar.clock_moves(engine, client.id)
    begins = (
        instant(date.fromisoformat(details["first"]), datetime.min.time(), there) if details["first"] else now
    )
    duties.unplan(engine.store, client.id, "zone")
    if details["last"]:
        _until(engine, client, moves, begins, details, now)
    if begins <= now:
        go_by(engine, client, there, now)
    else:
        duties.plan(engine.store, client.id, "zone", {"zone": there}, begins, now)
    tell_other_side(engine, client, details, now)
    return False


def _until(
    engine: "Engine",
    client: Person,
    moves: list[tuple[datetime, str]],
    begins: datetime,
    details: dict[str, Any],
    now: datetime,
) -> None:
    """The way back after the last day; trips said before stay where they have no days in common with this one."""
    home = moves[-1][1] if moves else client.zone
    ends = end_of(date.fromisoformat(details["last"]), home)
    kept = [(at, zone) for at, zone in moves if not begins <= at <= ends]
    after = back_to(moves, client.zone, details["zone"], ends)
    for at, zone in [*kept, (max(ends, begins), after)]:
        duties.plan(engine.store, client.id, "zone", {"zone": zone}, at, now)


def go_by(engine: "Engine", client: Person, zone: str, now: datetime) -> None:
    """Sessions keep their hour on the clock there; reminders follow."""
    people.move_zone(engine.store, client.id, zone)
    plan = status.plan_of(engine, client.id)
    if plan is not None and plan.when is not None:
        moved: When = in_zone(when_from_text(plan.when), zone)
        change = CalendarChanged(now, when_to_text(moved), client.id, f"zone {zone}")
        facts.put(engine.store, client.id, change, now)
    follow(engine, people.by_id(engine.store, client.id), now)


def arrived(engine: "Engine", client: Person, zone: str, now: datetime) -> None:
    """The planned change of zone has come: the client hears when the next session is."""
    go_by(engine, client, zone, now)
    plan = status.plan_of(engine, client.id)
    coming = next_occurrence(when_from_text(plan.when), now) if plan is not None and plan.when else None
    if coming is not None:
        when = calendar.shown(engine, people.by_id(engine.store, client.id), coming.at)
        there = date_words.zone_name(zone)
        quiet.note(engine, client, words.ON_THE_ROAD.format(there=there, when=when), now)


def moved_zone(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """Where the client lives, as said at the beginning."""
    go_by(engine, client, details["zone"], now)
    return False
