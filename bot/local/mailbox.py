"""Updates waiting for the bot, and the bell that wakes whoever waits for a change."""

import asyncio
from typing import Any

from bot.local.refusals import OTHER_POLL, Refusal


class Bell:
    """Wakes every waiter at once. Ringing needs no event loop, so a phone may ring it from plain code."""

    def __init__(self) -> None:
        self._waiting: set[asyncio.Future[None]] = set()

    def ring(self) -> None:
        """Wake all who wait now."""
        for waiter in self._waiting:
            if not waiter.done():
                waiter.set_result(None)

    async def wait(self, seconds: float) -> bool:
        """Wait for the next ring; False when the seconds ran out first."""
        waiter: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        self._waiting.add(waiter)
        try:
            async with asyncio.timeout(seconds):
                await waiter
        except TimeoutError:
            return False
        finally:
            self._waiting.discard(waiter)
        return True


class Mailbox:
    """Updates in order of their numbers, kept until a later offset confirms them."""

    def __init__(self, first_update_id: int) -> None:
        self._next_id = first_update_id
        self._pending: dict[int, dict[str, Any]] = {}
        self._bell = Bell()
        self._latest_poll = 0
        self.allowed: frozenset[str] = frozenset()  # kinds of update wanted; empty is every kind

    def __len__(self) -> int:
        return len(self._pending)

    def put(self, kind: str, body: dict[str, Any]) -> None:
        """Queue an update, unless the bot asked not to get this kind."""
        if self.allowed and kind not in self.allowed:
            return
        self._pending[self._next_id] = {"update_id": self._next_id, kind: body}
        self._next_id += 1
        self._bell.ring()

    def clear(self) -> None:
        """Forget every waiting update."""
        self._pending.clear()

    async def take(self, offset: int, limit: int, seconds: int) -> list[dict[str, Any]]:
        """Confirm what lies below `offset`, then return the oldest rest, waiting for it if need be.

        A negative offset keeps only that many from the end. Raises Refusal 409 in an earlier poll still waiting.
        """
        self._latest_poll += 1
        this_poll = self._latest_poll
        self._bell.ring()
        self.confirm(offset)
        clock = asyncio.get_running_loop().time
        until = clock() + seconds
        while not self._pending and (left := until - clock()) > 0:
            await self._bell.wait(left)
            if this_poll != self._latest_poll:
                raise Refusal(409, OTHER_POLL)
        return list(self._pending.values())[:limit]

    def confirm(self, offset: int) -> None:
        """Forget what lies below `offset`; a negative one keeps only that many from the end."""
        kept = list(self._pending)[offset:] if offset < 0 else [n for n in self._pending if n >= offset]
        self._pending = {number: self._pending[number] for number in kept}
