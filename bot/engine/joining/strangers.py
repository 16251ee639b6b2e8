"""Somebody unknown: a code opens the door, a wrong one is told, a red flag is answered, anything else once an hour.

How fast a stranger may write at all is decided before (`limits.STRANGER`).
"""

import re
from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine.limits import Rate
from conversations.heard import red_flag
from conversations.protocol import Say
from conversations.words import engine as words
from core.store import mail, people, settings
from core.store.mail import Letter, Priority
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

CODE_LETTERS = 26
ALPHABET = re.compile(r"[A-Z2-7]+")  # base32, RFC 4648: it has no 0 and no 1
MISREAD = str.maketrans("01", "OI")
PIECE = re.compile(r"[A-Za-z0-9]+")
LONG_PIECE = 12  # letters in one piece: nobody's word, so a code; own judgement, no source
FEWEST_PIECES = 4  # of a code typed in groups
HOUR = timedelta(hours=1)
UNWELL = Rate(burst=10, per_s=10 / 3600)  # answers to red flags of one stranger; own caution, no source

INLINE = Rate(burst=5, per_s=0.1)  # answers to queries typed elsewhere; own choice


def answer(engine: "Engine", chat: int, text: str, now: datetime) -> tuple[int, int, str] | None:
    """The invitation in these words (id, coach, client's name); None: what can be said was said."""
    unwell = red_flag(text) is not None
    if unwell and engine.limits.allow(chat, UNWELL, now):
        mail.post(engine.store, Letter(chat, {"text": words.STRANGER_UNWELL}, priority=Priority.ALERT), now)
    found = (people.redeem(engine.store, code, now) for code in codes(text))
    invitation = next((one for one in found if one is not None), None)
    if invitation is None and not unwell:
        _refuse(engine, chat, text, now)
    return invitation


def _refuse(engine: "Engine", chat: int, text: str, now: datetime) -> None:
    count = meant_as_code(text)
    if count == 0:
        once(engine, chat, words.STRANGER.format(number=chat), now)
        return
    wrong = words.CODE_LENGTH.format(whole=CODE_LETTERS, count=count)
    said = words.CODE_WRONG if count == CODE_LETTERS else wrong
    mail.post(engine.store, Letter(chat, {"text": said}), now)


def invited_already(engine: "Engine", person: Person, text: str, now: datetime) -> bool:
    """A good code from somebody who is here already stays good for whom it is meant; True: that was said."""
    if not any(people.redeem(engine.store, code, now) for code in codes(text)):
        return False
    said = words.HERE_ALREADY_COACH if person.role is people.Role.COACH else words.HERE_ALREADY
    engine.say(person, Say(said), now)
    return True


def once(engine: "Engine", chat: int, text: str, now: datetime, ever: bool = False) -> None:
    """Say this to somebody unknown, at most once an hour; with `ever` once in all."""
    name = f"refused:{chat}"
    last = settings.get(engine.store, name)
    if last is None or (not ever and now - datetime.fromisoformat(last) >= HOUR):
        settings.put(engine.store, name, now.isoformat())
        mail.post(engine.store, Letter(chat, {"text": text}), now)


def inline(engine: "Engine", chat: int, query: str, now: datetime) -> None:
    """The bot's name was typed in another chat: no result there, and a button that opens the private chat.

    Every letter typed is a query; the server keeps the answer, and the few that come all the same are let go.
    """
    if engine.limits.allow(chat, INLINE, now):
        body = {"query": query, "text": words.INLINE_BUTTON}
        mail.post(engine.store, Letter(chat, body, "inline", Priority.REMINDER), now)


# --- codes in words ---
def codes(text: str) -> Iterator[str]:
    """Whatever may be a code in the words: in one piece or in groups, with 0 for O and 1 for I."""
    pieces = [piece.upper().translate(MISREAD) for piece in PIECE.findall(text)]
    for first in range(len(pieces)):
        joined = ""
        for piece in pieces[first:]:
            joined += piece
            if len(joined) >= CODE_LETTERS:
                break
        if len(joined) == CODE_LETTERS and ALPHABET.fullmatch(joined):
            yield joined


def meant_as_code(text: str) -> int:
    """How many letters and figures of the words look like a code; 0: none do."""
    pieces = PIECE.findall(re.sub(r"^/start\b", "", text))
    long = max((len(piece) for piece in pieces), default=0)
    if long >= LONG_PIECE:
        return long
    groups = [piece for piece in pieces if piece.isupper() or any(sign.isdigit() for sign in piece)]
    enough = len(groups) >= FEWEST_PIECES or (len(groups) == len(pieces) == 1)
    return len("".join(groups)) if enough else 0
