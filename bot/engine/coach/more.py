"""What can be done from the card besides the usual."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import gate, status
from bot.engine.coach import away, covering, loads_asked, pauses
from bot.engine.coach import clients as whose
from conversations.protocol import Choice, Say
from conversations.words import allowing as allowing_words
from conversations.words import band_list as band_words
from conversations.words import coach as words
from conversations.words import emergency as emergency_words
from conversations.words import gauging, girth, pulse
from conversations.words import report as report_words
from conversations.words import review as review_words
from core.access import Action
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def show(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The rest of the buttons."""
    name = whose.name_of(engine, coach, client, now)
    pairs: list[tuple[str, str]] = []
    if status.plan_of(engine, client.id) is not None:
        pairs.append((words.CHANGE, "change"))
        pairs.append((words.SAVE_TEMPLATE, "save_template"))
        pairs.append((review_words.REVIEW, "review"))
        pairs.append((words.FINISH, "finish"))
    elif pauses.is_finished(engine, client.id):
        pairs.append((words.SAME_PLAN_AGAIN, "again"))
    if away.active(engine, client.id, now) is not None:
        pairs.append((words.TRAVEL_END, "travel_end"))
    elif status.plan_of(engine, client.id) is not None:
        pairs.append((words.TRAVEL, "travel"))
    asks = loads_asked.asks(engine, client.id)
    pairs.append((words.NEXT_LOADS_AUTO if asks else words.NEXT_LOADS_ASK, "next_loads"))
    pairs += [(gauging.CUFF_PRESSURE, "gauge"), (pulse.PULSE, "pulse"), (girth.GIRTH, "girth")]
    pairs.append((allowing_words.BUTTON, "allow"))
    pairs.append((words.RENAME, "rename"))
    if gate.allows(engine, coach, Action.HAND_OVER, client) and covering.others(engine, coach):
        pairs.append((words.HAND_OVER, "handover"))
    pairs += [(band_words.BUTTON, "kit"), (emergency_words.BUTTON, "emergency")]
    pairs.append((report_words.REPORT, "report"))
    pairs.append((words.BACK_TO_CARD.format(name=name), "client"))
    buttons = tuple(Choice(label, f"menu:{act}:{client.id}") for label, act in pairs)
    engine.say(coach, Say(words.WHAT_ELSE.format(name=name), buttons), now)


def ask_to_finish(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """A plan ends only after a second tap."""
    name = whose.name_of(engine, coach, client, now)
    yes = Choice(words.FINISH_YES, f"menu:finish_yes:{client.id}")
    no = words.to_card(name, client.id)
    engine.say(coach, Say(words.FINISH_SURE.format(name=name), (yes, no)), now)
