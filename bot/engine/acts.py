"""What people ask for outside a question: menus, commands, and the acts that are more than a fact."""

import base64
import re
import secrets
from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import (
    aftercare,
    agreeing,
    calendar,
    changing,
    checks,
    clips,
    emergency,
    gate,
    kit,
    loads,
    measuring,
    practice,
    quiet,
    reading,
    records,
    recovery,
    reminders,
    reports,
    resuming,
    status,
    testing,
    turns,
)
from bot.engine.coach import away, covering, digest, listing, loads_asked, plans, resting
from bot.engine.coach import clients as whose
from bot.engine.coach import menu as coach_menu
from bot.engine.coach.talks import TALKS
from conversations.protocol import Choice, Relay, Resumed, Say
from conversations.words import coach as coach_words
from conversations.words import engine as words
from conversations.words.recap import recap
from core.access import Action
from core.calendar.zones import local
from core.facts import Cleared, CoachDid, SetDone, WalkDone
from core.store import duties, facts, people, threads
from core.store.duties import Planned
from core.store.mail import Priority
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine

TO = re.compile(r"^to\s+(?P<name>[^:]{1,40}):\s*(?P<text>.+)$", re.IGNORECASE | re.DOTALL)
CLIENT = re.compile(r"^/?client\s+(?P<name>.{1,60})$", re.IGNORECASE)
REPORT = re.compile(r"^/?report(?:\s+(?:on\s+)?(?P<name>.{1,60}))?$", re.IGNORECASE)
COACH = re.compile(r"^coach[:,]?\s+(?P<text>.+)$", re.IGNORECASE | re.DOTALL)
WORDS = {
    "invite": "menu:invite",
    "clients": "menu:clients",
    "stand-in": "menu:stand_in",
    "stand in": "menu:stand_in",
    "standin": "menu:stand_in",
    "week": "menu:digest",
    "digest": "menu:digest",
    "start": "menu:start",
    "session": "menu:start",
    "plan": "menu:plan",
    "help": "menu:help",
    "menu": "menu:open",
    "calendar": "menu:calendar",
    "settings": "menu:settings",
    "travelling": "menu:travelling",
    "traveling": "menu:travelling",
    "bands": "menu:bands",
    "my bands": "menu:bands",
    "card": "menu:card",
    "my data": "menu:data",
    "delete me": "menu:leave",
}


NOT_YET = ("not_cleared", "declined", "held", "do_not_start")  # barred, and no question of theirs is open


def choices(pairs: tuple[tuple[str, str], ...]) -> tuple[Choice, ...]:
    """Buttons of the engine's own."""
    return tuple(Choice(label, value) for label, value in pairs)


def open_menu(engine: "Engine", person: Person, now: datetime) -> None:
    """What can be done now."""
    if person.role is Role.COACH:
        engine.say(person, Say(words.COACH_MENU, choices(words.COACH_MENU_CHOICES)), now)
        return
    why, how = turns.barred(engine, person), status.without_consent(engine, person.id)
    if how is not None:
        agreeing.way_back(engine, person, how, now)
    elif why in NOT_YET:
        engine.say(person, Say(words.BARRED[why], choices(words.CLIENT_MENU_CHOICES[-1:])), now)
    else:
        engine.say(person, Say(words.CLIENT_MENU, choices(words.CLIENT_MENU_CHOICES)), now)


def command(engine: "Engine", person: Person, text: str, now: datetime) -> bool:
    """A word that is a command whatever is open; True: done."""
    flat = text.strip().lower().lstrip("/")
    about = CLIENT.match(text.strip()) if person.role is Role.COACH else None
    if about is not None:
        if not listing.by_name(engine, person, about["name"], now):
            engine.say(person, Say(coach_words.NOBODY.format(typed=about["name"])), now)
        return True
    kept = plans.SAVE.match(text.strip()) if person.role is Role.COACH else None
    if kept is not None:
        plans.save_as(engine, person, kept["name"], now)
        return True
    reported = REPORT.match(text.strip())
    if reported is not None:
        report_on(engine, person, reported["name"] or "", now)
        return True
    relayed = (TO if person.role is Role.COACH else COACH).match(text.strip())
    if relayed is not None:
        words_to(engine, person, relayed, now)
        return True
    if text.strip().lower().startswith("/start"):
        arrived(engine, person, now)
        return True
    if flat not in WORDS or (flat in ("start", "plan") and person.role is Role.COACH):
        return measuring.told(engine, person, text, now) or changing.asked(engine, person, text, now)
    menu(engine, person, WORDS[flat], now)
    return True


def arrived(engine: "Engine", person: Person, now: datetime) -> None:
    """The chat's own start button: a client in the middle of something hears where we were, others get the menu."""
    from bot.engine import due

    open_talk = threads.floor(engine.store, person.id) if person.role is Role.CLIENT else None
    if person.role is Role.CLIENT and due.in_session(engine, person):
        resuming.where_we_were(engine, person, now)
    elif open_talk is None:
        open_menu(engine, person, now)
    else:
        turns.deliver(engine, person, open_talk, Resumed(now))


def report_on(engine: "Engine", person: Person, name: str, now: datetime) -> None:
    """A client gets their own report, a coach that of a client by name."""
    if person.role is Role.CLIENT:
        reports.send(engine, person, person, now)
        return
    fitting = whose.found(engine, person, name, now)
    if len(fitting) == 1 and gate.allows(engine, person, Action.SEE_CLIENT, fitting[0]):
        reports.send(engine, person, fitting[0], now)
    else:
        engine.say(person, Say(words.NO_SUCH_CLIENT), now)


def words_to(engine: "Engine", person: Person, found: re.Match[str], now: datetime) -> None:
    """Words passed on: the coach to a client by name, a client to the coach."""
    if person.role is Role.CLIENT:
        relay(engine, person, Relay(found["text"]))
        coach = engine.coach_of(person)
        asleep = coach is not None and quiet.is_quiet(engine, coach, now)
        number = status.emergency_number(engine, person.id)
        engine.say(
            person, Say(words.COACH_SLEEPS.format(number=number) if asleep else words.SAID_TO_COACH), now
        )
        return
    fitting = whose.found(engine, person, found["name"], now)
    if len(fitting) != 1:
        engine.say(person, Say(words.NOT_SENT), now)
        return
    relay(engine, person, Relay(found["text"], fitting[0].id))


def relay(engine: "Engine", person: Person, effect: Relay) -> None:
    """The coach's words wait until the client's bands are off; a client's go at once."""
    from bot.engine import due

    now = engine.clock()
    if person.role is Role.CLIENT:
        coach = engine.coach_of(person)
        if coach is not None:
            quiet.note(engine, coach, words.FROM_CLIENT.format(name=person.name, text=effect.text), now)
        return
    assert effect.person is not None, "a coach's words name their client"
    client = people.by_id(engine.store, effect.person)
    if not gate.allows(engine, person, Action.RELAY, client):
        engine.say(person, Say(words.NOT_YOURS), now)
        return
    facts.put(engine.store, client.id, CoachDid(now, person.id, "wrote", effect.text), now)
    if due.in_session(engine, client):
        duties.plan(engine.store, client.id, "words", {"text": effect.text}, now, now)
        engine.say(person, Say(words.TO_WAITS.format(name=client.name)), now)
        return
    morning = quiet.earliest(engine, client, now)
    if morning > now and not effect.urgent:
        duties.plan(engine.store, client.id, "words", {"text": effect.text}, morning, now)
        until = f"{local(morning, client.zone):%H:%M}"
        engine.say(person, Say(words.TO_SLEEPS.format(name=client.name, until=until)), now)
        return
    engine.say(client, Say(words.FROM_COACH.format(text=effect.text)), now)
    engine.say(person, Say(words.SENT_TO.format(name=client.name)), now)


# --- menus ---
def menu(engine: "Engine", person: Person, value: str, now: datetime) -> None:
    """A menu's button or its word."""
    if person.role is Role.COACH:
        if not coach_menu.chosen(engine, person, value, now):
            open_menu(engine, person, now)
    else:
        client_menu(engine, person, value, now)


def client_menu(engine: "Engine", person: Person, value: str, now: datetime) -> None:
    """The client's menu."""
    action, act = CLIENT_MENU.get(value.removeprefix("menu:"), (Action.TALK, open_menu))
    if gate.allows(engine, person, action, person):
        act(engine, person, now)


def explain(engine: "Engine", person: Person, now: datetime) -> None:
    """How to talk with the bot, how to reach the coach, and the emergency number."""
    number = status.emergency_number(engine, person.id)
    engine.say(person, Say(words.CLIENT_HELP.format(number=number)), now)


def start_session(engine: "Engine", person: Person, now: datetime) -> None:
    """The questions before a session, unless one is under way or there is no plan."""
    from bot.engine import due

    if due.in_session(engine, person):
        resuming.where_we_were(engine, person, now)
        return
    how = status.without_consent(engine, person.id)
    if how is not None:
        agreeing.way_back(engine, person, how, now)
        return
    if asks_first(engine, person, now):
        return
    if turns.barred(engine, person) == "not_screened":
        screen(engine, person, now)
        return
    if turns.barred(engine, person) is None and status.plan_of(engine, person.id) is None:
        engine.say(person, Say(words.BARRED["no_plan"]), now)
        return
    limit = recovery.too_soon(engine, person, now)
    if limit is not None:
        engine.say(person, Say(words.TOO_SOON[limit]), now)
    turns.begin(engine, person, "before", {"session": loads.new_session(engine, person.id)}, now)


def screen(engine: "Engine", person: Person, now: datetime) -> None:
    """The first questions, from where they were left."""
    names = ("screening", "consent")
    under_way = next((one for name in names if (one := threads.live_in(engine.store, person.id, name))), None)
    if under_way is None:
        turns.begin(engine, person, "screening", {}, now)
    else:
        turns.deliver(engine, person, under_way, Resumed(now))


def asks_first(engine: "Engine", person: Person, now: datetime) -> bool:
    """Questions after the last session that are still open come before the next one."""
    for name in ("still_numb", "morning"):
        thread = threads.live_in(engine.store, person.id, name)
        if thread is not None:
            engine.say(person, Say(words.FIRST_THIS), now)
            turns.deliver(engine, person, thread, Resumed(now))
            return True
    return False


# --- acts of dialogues ---
def do(engine: "Engine", person: Person, act: str, details: dict[str, Any]) -> bool:
    """An act by its stored name; True when it started a dialogue with this person. Raises KeyError."""
    action, deed = ACTS[act]
    if not gate.allows(engine, person, action, gate.about(engine, person, details)):
        engine.say(person, Say(words.NOT_YOURS), engine.clock())
        return False
    return deed(engine, person, details, engine.clock())


Act = Callable[["Engine", Person, dict[str, Any], datetime], bool]


def invite(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """An invitation: 130 random bits as a code to type, and the same as a link."""
    code = base64.b32encode(secrets.token_bytes(17)).decode()[:26]
    people.invite(engine.store, coach.id, details["name"], code, now)
    link = f"https://t.me/{engine.username}?start={code}" if engine.username else ""
    engine.say(coach, Say(words.INVITATION.format(name=details["name"], link=link, code=code)), now)
    return False


def ask_coach_to_clear(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """The screening is done: the coach sees it and decides."""
    practice.ask_to_clear(engine, client, details["screening"], now)
    return False


def cleared(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """The coach decided: the client hears it, and the plan comes next."""
    client = people.by_id(engine.store, details["client"])
    regions = details.get("regions") or ""
    regions = regions if isinstance(regions, str) else ",".join(regions)
    if regions:
        engine.say(client, Say(words.CLEARED.format(regions=regions.replace(",", " and "))), now)
        ask_for_backup(engine, coach, client, now)
        turns.begin(engine, coach, "planning", {"client": client.id}, now)
        return True
    declined = details.get("decision") == "declined"
    engine.say(client, Say(words.DECLINED if declined else words.HELD), now)
    return False


def ask_for_backup(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """A client cannot train before a second human gets alerts, or the coach says that there is none."""
    if not engine.has_backup(client):
        engine.say(coach, Say(words.ALONE, (Choice(words.ALONE_LABEL, "menu:alone"),)), now)


def hold(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """No training until the coach clears again."""
    last = facts.latest(engine.store, Cleared, client.id)
    screening = last.screening if last else ""
    facts.put(engine.store, client.id, Cleared(now, screening, "held", "", coach.id), now)
    engine.say(client, Say(words.ON_HOLD), now)
    again = Choice(words.LOOK_AT_CLEARANCE, f"menu:clearing:{client.id}")
    engine.say(coach, Say(words.CLIENT_LINE.format(name=client.name, state=words.IS_ON_HOLD), (again,)), now)


def give_recap(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """What was done, what comes next and why; the questions of the next morning are planned."""
    session = details["session"]
    plan_names = loads.names(status.plan_of(engine, client.id))
    sets = facts.current(engine.store, SetDone, client.id, session=session)
    done: dict[str, tuple[list[int], str]] = {}
    for one in sorted(sets, key=lambda each: (each.exercise_no, each.set_no)):
        done.setdefault(plan_names.get(one.movement, one.movement), ([], one.doing))[0].append(one.reps)
    walks = facts.current(engine.store, WalkDone, client.id, session=session)
    lines = [(name, reps, doing) for name, (reps, doing) in done.items()]
    moves = loads_asked.held_back(engine, client, session, loads.move(engine, client.id, session), now)
    text = recap(lines, moves, [walk.minutes for walk in walks])
    engine.say(client, Say(text), now)
    reminders.trained(engine, client, now)
    aftercare.plan_aftercare(engine, client, session, now)
    checks.tell_patterns(engine, client.id)
    return reading.ask(engine, client, session, now)


# Each with what it asks the gate for, about the client it names or else about whoever talks.
ACTS: dict[str, tuple[Action, Act]] = {
    "moved_zone": (Action.TALK, changing.moved_zone),
    "calendar_changed": (Action.MOVE_DAYS, changing.changed),
    "session_moved": (Action.MOVE_DAYS, changing.session_moved),
    "ask_coach_about_days": (Action.MOVE_DAYS, changing.ask_coach),
    "travel": (Action.MOVE_DAYS, changing.travel),
    "wish_declined": (Action.MOVE_DAYS, changing.wish_declined),
    "settings_changed": (Action.TALK, changing.settings_changed),
    "cue_given": (Action.RELAY, clips.given),
    "invite": (Action.INVITE, invite),
    "without_consent": (Action.TALK, agreeing.without),
    "ask_coach_to_clear": (Action.TALK, ask_coach_to_clear),
    "cleared": (Action.CLEAR, cleared),
    "plan_given": (Action.PLAN, plans.given),
    "plan_changed": (Action.PLAN, plans.changed),
    "leave": (Action.TALK, records.leave),
    "recap": (Action.TRAIN, give_recap),
    "read_again": (Action.TRAIN, reading.read_again),
    "paused": (Action.PLAN, resting.paused),
    "covering": (Action.COVER, covering.begun),
    "rename": (Action.PLAN, whose.rename),
    "ask_test": (Action.PLAN, testing.ask),
    "tested": (Action.TRAIN, testing.done),
    "travelling": (Action.MOVE_DAYS, away.begun),
}
CLIENT_MENU: dict[str, tuple[Action, Callable[["Engine", Person, datetime], None]]] = {
    "start": (Action.TRAIN, start_session),
    "plan": (Action.TALK, practice.show_plan),
    "calendar": (Action.TALK, calendar.send_file),
    "settings": (
        Action.TALK,
        lambda engine, person, now: turns.begin(engine, person, "preferences", {}, now),
    ),
    "bands": (Action.TALK, kit.list_bands),
    "card": (Action.TALK, emergency.card),
    "travelling": (Action.MOVE_DAYS, away.by_client),
    "home": (Action.MOVE_DAYS, away.home),
    "data": (Action.TALK, records.my_data),
    "leave": (Action.TALK, records.ask_to_leave),
    "agree": (Action.TALK, agreeing.again),
    "coach": (Action.TALK, explain),
    "help": (Action.TALK, explain),
    "open": (Action.TALK, open_menu),
}


# --- planned talks ---
def before_talk(engine: "Engine", person: Person, talk: Planned, now: datetime) -> None:
    """A planned talk begins; weekly ones plan themselves again."""
    match talk.dialogue:
        case "weekly":
            digest.show(engine, person, now)
            digest.recap_week(engine, person, now)
            calendar.plan_week(engine, person, now)
        case "erase":
            records.erase(engine, person, talk, now)
        case "note":
            engine.say(person, Say(talk.about["text"]), now, Priority.REMINDER)
        case "words":
            engine.say(person, Say(words.FROM_COACH.format(text=talk.about["text"])), now)
        case "zone":
            changing.arrived(engine, person, talk.about["zone"], now)
        case name if name in TALKS:
            TALKS[name](engine, person, talk.about, now)
        case "reminding":
            reminders.remind(engine, person, talk, now)
        case "missed":
            reminders.ask_about_missed(engine, person, talk, now)
        case _:
            turns.begin(engine, person, talk.dialogue, talk.about, now)
