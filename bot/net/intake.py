"""Taking updates off the server: raw, committed first, confirmed after the commit.

The library parses a whole batch and confirms it before anybody has stored it; one malformed update makes it
fetch the same batch for ever. So the raw JSON is fetched by the library's own request class, kept, and only
then is `last + 1` confirmed. Start without an offset, and leave it out after an empty answer: the server may
begin again at another number after a quiet week.
"""

import asyncio
import logging
from collections.abc import Awaitable, Callable
from typing import Any

from telegram import Bot
from telegram.error import BadRequest, Conflict, InvalidToken, RetryAfter, TelegramError

from bot.net.calls import call

log = logging.getLogger("cuffline")

Numbered = tuple[int, dict[str, Any]]  # an update's number and the update as it came
Receive = Callable[[list[Numbered]], None]  # commits before it returns, else raises NotKept
Called = Callable[[], None]


class NotKept(Exception):
    """The updates could not be committed; they must not be confirmed."""


# What the server is asked for; the rest (reactions, polls, business messages, edits in channels) it keeps.
KINDS = ["message", "edited_message", "callback_query", "inline_query", "channel_post"]
HIGHEST = 2**63 - 1  # what an INTEGER column holds
POLL_S = 25
PAUSE_S = 1.0
LONGEST_PAUSE_S = 30.0
# Conflicts one after the other, half a minute with the pauses: longer than a poll that was left by a restart.
CROWDED = 6


async def fetch(bot: Bot, offset: int | None, wait_s: int = POLL_S) -> list[dict[str, Any]]:
    """One long poll; raw updates as the server gave them."""
    wanted: dict[str, Any] = {
        "timeout": wait_s,
        "allowed_updates": KINDS,
    }
    if offset is not None:
        wanted["offset"] = offset
    found = await call(bot, "getUpdates", wanted, read_timeout=wait_s + 10)
    return found if isinstance(found, list) else []


def numbered(update: Any) -> Numbered | None:
    """An update with its number; None: it has none that can be kept, so nothing can be made of it."""
    number = update.get("update_id") if isinstance(update, dict) else None
    return (number, update) if type(number) is int and 0 <= number <= HIGHEST else None


async def insist(what: str, call: Callable[[], Awaitable[Any]]) -> None:
    """Make a call until the server has taken it. Raises BadRequest and InvalidToken; waits out the rest."""
    pause = PAUSE_S
    while True:
        try:
            await call()
            return
        except (BadRequest, InvalidToken):
            raise
        except TelegramError as problem:
            log.warning("%s: %s", what, type(problem).__name__)
            await asyncio.sleep(_seconds(problem) if isinstance(problem, RetryAfter) else pause)
            pause = min(2 * pause, LONGEST_PAUSE_S)


class Line:
    """How the polls fare. `crowded` is called when others fetch with the same token, `answered` by each answer."""

    def __init__(self, crowded: Called = lambda: None, answered: Called = lambda: None) -> None:
        self.crowded = crowded
        self.answered = answered
        self._begin_anew()

    def good(self) -> None:
        """A poll was answered."""
        self._begin_anew()
        self.answered()

    def _begin_anew(self) -> None:
        self.pause = PAUSE_S
        self.conflicts = 0

    async def wait(self, problem: TelegramError) -> None:
        """Until the next poll: as long as the server says, else longer each time."""
        if isinstance(problem, RetryAfter):
            await asyncio.sleep(_seconds(problem))
            return
        log.warning("no updates just now: %s", type(problem).__name__)
        self.conflicts = self.conflicts + 1 if isinstance(problem, Conflict) else 0
        if self.conflicts >= CROWDED:
            self.crowded()
        await asyncio.sleep(self.pause)
        self.pause = min(2 * self.pause, LONGEST_PAUSE_S)


async def fetch_all(bot: Bot, receive: Receive, line: Line | None = None) -> None:
    """Take any webhook away (what waits there is kept by the server), then fetch for ever."""
    await insist("no answer about the webhook", bot.delete_webhook)
    await poll(bot, receive, line)


async def poll(bot: Bot, receive: Receive, line: Line | None = None) -> None:
    """Fetch for ever. `receive` commits before it returns. Raises InvalidToken; waits out everything else."""
    offset: int | None = None
    line = line or Line()
    while True:
        try:
            updates = await fetch(bot, offset)
        except InvalidToken:
            raise
        except TelegramError as problem:
            await line.wait(problem)
            continue
        line.good()
        kept = [one for one in map(numbered, updates) if one is not None]
        try:
            if kept:
                receive(kept)
        except NotKept:
            await asyncio.sleep(PAUSE_S)  # not confirmed, so the server gives the same again
            continue
        offset = max(number for number, _ in kept) + 1 if kept else None


def _seconds(wait: RetryAfter) -> float:
    after = wait.retry_after
    return float(after) if isinstance(after, int | float) else after.total_seconds()
