"""What comes before a session: a talk under way, an open alert, consent, questions still open, a plan."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import resuming, status, turns
from bot.engine.joining import agreeing, screenings
from bot.engine.safety import open_alert
from bot.engine.training import loads, recovery
from conversations.protocol import Choice, Resumed, Say
from conversations.words import engine as words
from conversations.words.planning import named
from core.screening import Due
from core.store import threads
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def start_session(engine: "Engine", person: Person, now: datetime) -> None:
    """The questions before a session, unless something else comes first."""
    if any(came_first(engine, person, now) for came_first in FIRST):
        return
    limit = recovery.too_soon(engine, person, now)
    if limit is not None:
        engine.say(person, Say(named(words.TOO_SOON[limit], recovery.allowed(engine, person.id))), now)
    turns.begin(engine, person, "before", {"session": loads.new_session(engine, person.id)}, now)


def _under_way(engine: "Engine", person: Person, now: datetime) -> bool:
    from bot.engine import due

    if not due.in_session(engine, person):
        return False
    resuming.where_we_were(engine, person, now)
    return True


def _no_consent(engine: "Engine", person: Person, now: datetime) -> bool:
    how = status.without_consent(engine, person.id)
    if how is None:
        return False
    agreeing.way_back(engine, person, how, now)
    return True


def _not_screened(engine: "Engine", person: Person, now: datetime) -> bool:
    if turns.barred(engine, person) != "not_screened":
        return False
    screen(engine, person, now)
    return True


def _may_be_asked_again(engine: "Engine", person: Person, now: datetime) -> bool:
    """Barred by something that may have passed: the questions are offered once more."""
    why = turns.barred(engine, person)
    if why not in ("do_not_start", "held") or not screenings.may_have_passed(engine, person):
        return False
    again = Choice(words.ASK_AGAIN_LABEL, "menu:screening")
    engine.say(person, Say(f"{words.BARRED[why]} {words.ASK_AGAIN}", (again,)), now)
    return True


def _no_plan(engine: "Engine", person: Person, now: datetime) -> bool:
    if turns.barred(engine, person) is not None or status.plan_of(engine, person.id) is not None:
        return False
    why = "no_plan" if status.home_plan_of(engine, person.id) is None else "plan_rests"
    engine.say(person, Say(words.BARRED[why]), now)
    return True


def screen(engine: "Engine", person: Person, now: datetime, due: Due | None = None) -> None:
    """The health questions, from where they were left. `due`: why they come again; None: nobody says why."""
    names = ("screening", "consent")
    under_way = next((one for name in names if (one := threads.live_in(engine.store, person.id, name))), None)
    if under_way is None:
        turns.begin(engine, person, "screening", {"due": due.value} if due else {}, now)
    else:
        turns.deliver(engine, person, under_way, Resumed(now))


def screen_again(engine: "Engine", person: Person, now: datetime) -> None:
    """The health questions once more, where what spoke against training may have passed."""
    from bot.engine import menus

    if screenings.may_have_passed(engine, person):
        screen(engine, person, now)
    else:
        menus.open_menu(engine, person, now)


def asks_first(engine: "Engine", person: Person, now: datetime) -> bool:
    """Questions after the last session that are still open come before the next one."""
    for name in ("still_numb", "morning"):
        thread = threads.live_in(engine.store, person.id, name)
        if thread is not None:
            engine.say(person, Say(words.FIRST_THIS), now)
            turns.deliver(engine, person, thread, Resumed(now))
            return True
    return False


# In this order; each says whether it had something to say.
FIRST = (
    _under_way,
    open_alert.said_first,
    _no_consent,
    asks_first,
    _not_screened,
    _may_be_asked_again,
    _no_plan,
)
