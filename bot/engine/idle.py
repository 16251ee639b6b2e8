"""A client's words while nothing is asked and no command fits: offered to the coach rather than met with a bare menu."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import status
from bot.engine.safety import open_alert
from conversations.answers import Reply, Unclear, yes_no
from conversations.dates.travel import place_unknown
from conversations.prose import is_prose
from conversations.protocol import Choice, Say
from conversations.stopwords import read
from conversations.words import engine as words
from core.store import duties, mail, threads
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

KEPT = "offer_later"  # a planned talk
SEND = "send_line:"  # the words themselves follow: the button is the client's own, and goes when they do


def said_yes(engine: "Engine", client: Person, text: str, now: datetime) -> bool:
    """A typed yes to "Send it to your coach?"; True: it is sent."""
    waiting = _waiting(engine, client)
    if waiting is None or not _is_yes(text):
        return False
    send(engine, client, waiting.removeprefix(SEND), now)
    return True


def offered(engine: "Engine", client: Person, text: str, now: datetime) -> bool:
    """ "Send it to your coach?" under words that somebody should read; True: asked."""
    if (
        open_alert.gravest(engine, client) is not None
        or status.without_consent(engine, client.id) is not None
    ):
        return False
    coach = engine.coach_of(client)
    if coach is None or not (is_prose(text) or read(text).heard or place_unknown(text)):
        return False
    buttons = (Choice(words.SEND_IT_LABEL, SEND + text), *_menu())
    place = place_unknown(text)
    asked = words.WHERE_IS if place else words.SEND_IT
    engine.say(client, Say(asked.format(coach=coach.name, place=place), buttons), now)
    return True


def keep(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """Words that a session could not take: offered once nobody trains, all of them together."""
    texts = [talk.about["text"] for talk in duties.planned(engine.store, client.id, KEPT)]
    duties.unplan(engine.store, client.id, KEPT)
    kept = "\n".join(dict.fromkeys((*texts, details["text"])))
    duties.plan(engine.store, client.id, KEPT, {"text": kept}, now, now)
    return False


def offer_kept(engine: "Engine", client: Person, about: dict[str, Any], now: datetime) -> None:
    """ "Shall I send it?" under what was said in a session."""
    coach = engine.coach_of(client)
    if coach is None or status.without_consent(engine, client.id) is not None:
        return
    text = about["text"]
    asked = words.SEND_KEPT.format(text=text, coach=coach.name)
    engine.say(client, Say(asked, (Choice(words.SEND_IT_LABEL, SEND + text),)), now)


def send(engine: "Engine", client: Person, line: str, now: datetime) -> None:
    """The button under the offer; once sent it holds no words any more."""
    from bot.engine import relaying

    if not line:
        engine.say(client, Say(words.SENT_ALREADY), now)
        return
    threads.change_buttons(engine.store, client.id, SEND + line, SEND)
    relaying.to_coach(engine, client, line, now)


def _menu() -> tuple[Choice, ...]:
    return tuple(Choice(label, value) for label, value in words.CLIENT_MENU_CHOICES[:2])


def _is_yes(text: str) -> bool:
    try:
        return yes_no(text) is Reply.YES
    except Unclear:
        return False


def _waiting(engine: "Engine", client: Person) -> str | None:
    """The offer that the newest message of ours makes; None: it makes none."""
    if client.chat is None:
        return None
    _, rows = mail.newest_buttons(engine.store, client.chat, last_only=True)
    found = (
        threads.button(engine.store, token, client.id)
        for label, token in rows
        if label == words.SEND_IT_LABEL
    )
    return next((button.value for button in found if button is not None), None)
