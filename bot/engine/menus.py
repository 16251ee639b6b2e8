"""What people ask for outside a question: menus, their words, and words to the other side."""

import re
from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import gate, practice, records, relaying, resuming, status, turns
from bot.engine.coach import away, listing, logbook, plans
from bot.engine.coach import clients as whose
from bot.engine.coach import menu as coach_menu
from bot.engine.days import changing, own_calendar
from bot.engine.joining import agreeing
from bot.engine.numbers import measuring, reports
from bot.engine.safety import emergency, open_alert, unread
from bot.engine.training import beats, kit, starting
from conversations.prose import is_prose
from conversations.protocol import Choice, Resumed, Say
from conversations.words import coach as coach_words
from conversations.words import engine as words
from core.access import Action
from core.store import threads
from core.store.mail import Priority
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine

CLIENT = re.compile(r"^/?clients?\s+(?P<name>.{1,60})$", re.IGNORECASE)

# Asked so, a name opens the card; anything else is read as ever.
ASKS_ABOUT = re.compile(
    r"^(?:show(?: me)?|open|how(?: is|['’]s)|what about|tell me about|who is)\s+(?P<name>.{1,60}?)(?: doing)?[?.! ]*$",
    re.IGNORECASE,
)
REPORT = re.compile(r"^/?report(?:\s+(?:on\s+)?(?P<name>.{1,60}))?$", re.IGNORECASE)

WHEN_NEXT = re.compile(
    r"^(?:hey |hi |so |and )?(?:when|what (?:day|time|date))\b[^.]*\b(?:session|training|workout|train|next)\b[^.]*$"
    r"|^(?:my )?next (?:session|training|workout)\W*$",
    re.IGNORECASE,
)
# Whole lines that mean "start" where nothing is asked; beside a question they may be its answer.
SAYS_READY = re.compile(
    r"\W*(?:(?:ok|okay|yes|right|well|hello|hi|so|now)\b[\s,.!]*)*(?:i'?m |i am |all )?"
    r"(?:(?:ready|let'?s (?:start|begin|go|train)|begin|(?:start|begin) (?:a |the |my |our )?(?:session|training|now)"
    r"|(?:i |can (?:i|we) |i want to |i'd like to )(?:start|begin|train)(?: now| today)?)[\s,.!?]*)+",
    re.IGNORECASE,
)
WORDS = {
    "alerts": "menu:alerts",
    "alert": "menu:alerts",
    "any alerts": "menu:alerts",
    "open alerts": "menu:alerts",
    "status": "menu:clients",
    "who needs me": "menu:clients",
    "who needs me first": "menu:clients",
    "invite": "menu:invite",
    "clients": "menu:clients",
    "stand-in": "menu:stand_in",
    "stand in": "menu:stand_in",
    "standin": "menu:stand_in",
    "week": "menu:digest",
    "digest": "menu:digest",
    "export": "menu:export",
    "export csv": "menu:export",
    "export data": "menu:export",
    "export records": "menu:export",
    "export everything": "menu:export",
    "csv": "menu:export",
    "csv export": "menu:export",
    "data export": "menu:export",
    "spreadsheet": "menu:export",
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
    "sound": "menu:sound",
    "beat": "menu:sound",
    "details": "menu:details",
    "my details": "menu:details",
    "my data": "menu:data",
    "log": "menu:own_log",
    "my log": "menu:own_log",
    "delete me": "menu:leave",
    "coach": "menu:coach",
    "tell my coach": "menu:coach",
    "tell coach": "menu:coach",
    "message my coach": "menu:coach",
    "write to coach": "menu:coach",
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
    if open_alert.said_first(engine, person, now):
        return
    why, how = turns.barred(engine, person), status.without_consent(engine, person.id)
    if how is not None:
        agreeing.way_back(engine, person, how, now)
    elif why in NOT_YET:
        engine.say(person, Say(words.BARRED[why], choices(words.CLIENT_MENU_CHOICES[-1:])), now)
    else:
        engine.say(person, Say(words.CLIENT_MENU, choices(words.CLIENT_MENU_CHOICES)), now)


def went_nowhere(engine: "Engine", coach: Person, text: str, now: datetime) -> None:
    """The menu; under words that may be meant for somebody, that nobody has them."""
    asked = words.COACH_WENT_NOWHERE if is_prose(text) else words.COACH_MENU
    engine.say(coach, Say(asked, choices(words.COACH_MENU_CHOICES)), now)


def command(engine: "Engine", person: Person, text: str, now: datetime) -> bool:
    """A word that is a command whatever is open; True: done."""
    own = _coach_command if person.role is Role.COACH else _client_command
    if own(engine, person, text, now):
        return True
    flat = text.strip().lower().lstrip("/").rstrip("?!. ")
    if text.strip().lower().startswith("/start"):
        arrived(engine, person, now)
        return True
    if flat not in WORDS or (flat in ("start", "plan") and person.role is Role.COACH):
        return measuring.told(engine, person, text, now) or changing.asked(engine, person, text, now)
    menu(engine, person, WORDS[flat], now)
    return True


def _coach_command(engine: "Engine", coach: Person, text: str, now: datetime) -> bool:
    """A client's card by name, what stands on it, a template, a report."""
    said = text.strip()
    if (about := CLIENT.match(said)) is not None:
        if not listing.by_name(engine, coach, about["name"], now):
            engine.say(coach, Say(coach_words.NOBODY.format(typed=about["name"])), now)
        return True
    if (asked := ASKS_ABOUT.match(said)) is not None and listing.by_name(engine, coach, asked["name"], now):
        return True
    if coach_menu.named_act(engine, coach, text, now):
        return True
    if (kept := plans.SAVE.match(said)) is not None:
        plans.save_as(engine, coach, kept["name"], now)
        return True
    return _reported(engine, coach, said, now)


def said_ready(engine: "Engine", client: Person, text: str, now: datetime) -> bool:
    """ "ok, let's start", while nothing is asked; True: as if "start" had been typed."""
    if not SAYS_READY.fullmatch(text.replace("’", "'")):
        return False
    client_menu(engine, client, "menu:start", now)
    return True


def _client_command(engine: "Engine", client: Person, text: str, now: datetime) -> bool:
    """The own report, when the next session is, a line for the coach."""
    if _reported(engine, client, text.strip(), now):
        return True
    if WHEN_NEXT.match(text.strip()):
        practice.show_plan(engine, client, now)
        return True
    if relaying.for_coach(engine, client, text, now):
        unread.asked_beside_the_coach(engine, client, text, now)
        return True
    return False


def _reported(engine: "Engine", person: Person, said: str, now: datetime) -> bool:
    found = REPORT.match(said)
    if found is not None:
        report_on(engine, person, found["name"] or "", now)
    return found is not None


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


def menu(engine: "Engine", person: Person, value: str, now: datetime) -> None:
    """A menu's button or its word."""
    if person.role is Role.COACH:
        if not coach_menu.chosen(engine, person, value, now):
            open_menu(engine, person, now)
    else:
        client_menu(engine, person, value, now)


def client_menu(engine: "Engine", person: Person, value: str, now: datetime) -> None:
    """The client's menu."""
    what = value.removeprefix("menu:")
    action, act = CLIENT_MENU.get(what, (Action.TALK, open_menu))
    if what in words.AFTER_SESSION and threads.live_in(engine.store, person.id, "session") is not None:
        later = words.LATER_THAT.format(typed=words.AFTER_SESSION[what])
        engine.say(person, Say(later), now, Priority.SESSION)
    elif gate.allows(engine, person, action, person):
        act(engine, person, now)


def explain(engine: "Engine", person: Person, now: datetime) -> None:
    """How to talk with the bot, how to reach the coach, and the emergency number."""
    number = status.emergency_number(engine, person.id)
    engine.say(person, Say(words.CLIENT_HELP.format(number=number)), now)


CLIENT_MENU: dict[str, tuple[Action, Callable[["Engine", Person, datetime], None]]] = {
    "start": (Action.TRAIN, starting.start_session),
    "screening": (Action.TALK, starting.screen_again),
    "plan": (Action.TALK, practice.show_plan),
    "calendar": (Action.TALK, own_calendar.send_file),
    "settings": (
        Action.TALK,
        lambda engine, person, now: turns.begin(engine, person, "preferences", {}, now),
    ),
    "bands": (Action.TALK, kit.list_bands),
    "card": (Action.TALK, emergency.card),
    "sound": (Action.TALK, beats.send),
    "details": (
        Action.TALK,
        lambda engine, person, now: turns.begin(engine, person, "details", {}, now),
    ),
    "travelling": (Action.MOVE_DAYS, away.by_client),
    "home": (Action.MOVE_DAYS, away.home),
    "data": (Action.TALK, records.my_data),
    "export": (Action.TALK, records.my_data),  # a client's own is all that they can mean
    "own_log": (Action.TALK, logbook.own),
    "leave": (Action.TALK, records.ask_to_leave),
    "agree": (Action.TALK, agreeing.again),
    "coach": (Action.TALK, relaying.write_to_coach),
    "help": (Action.TALK, explain),
    "open": (Action.TALK, open_menu),
}
