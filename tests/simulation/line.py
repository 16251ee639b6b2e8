"""The Bot API behind a bad line: outages, refusals, answers lost before and after the effect.

Faults are drawn from the world's own dice, so that a seed tells the whole story. A poll that finds nothing
ends in `Quiet`: there the real one would wait, and here nothing happens while nothing happens.
"""

import random
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from bot.local.api import LocalApi
from bot.local.faults import Lost
from bot.local.messages import ChatMessage
from bot.local.refusals import Refusal, refusal_for
from tests.simulation.disk import Killed

TOKEN = "1:simulation"
FIRST_UPDATE = 1_000_000
MOST_CALLS = 300  # at one moment


class InCircles(BaseException):
    """Calls without end at one moment."""


class Quiet(BaseException):
    """A poll with nothing to fetch."""


@dataclass
class Weather:
    """How often a call fails, as chances of one call."""

    refused: float = 0.01  # 429, with a time to wait
    broken: float = 0.01  # 5xx
    lost_before: float = 0.01
    lost_after: float = 0.01
    poll_lost: float = 0.03


FINE = Weather(0, 0, 0, 0, 0)


class Line(LocalApi):
    """`arrived` hears of each message that reaches a phone."""

    def __init__(self, now: Callable[[], datetime], dice: random.Random, weather: Weather) -> None:
        super().__init__(now, TOKEN, first_update_id=FIRST_UPDATE, first_message_id=5000)
        self.dice = dice
        self.weather = weather
        self.down = False
        self.dead = False
        self.numbers: list[int] = []  # of all updates the phones made
        self.confirmed: set[int] = set()  # those the bot told us to forget
        self.lost_poll = False
        self.mischief: random.Random | None = None  # shuffles what a poll gives, and gives some of it again
        self.given: list[dict[str, Any]] = []
        self.calls: dict[datetime, int] = {}
        self.waits: list[tuple[datetime, int]] = []  # seconds that a call was told to wait, and when
        self._watch_mailbox()
        self.arrived: Callable[[int, ChatMessage], None] = lambda chat, message: None

    async def call(self, method: str, params: dict[str, Any], files: dict[str, bytes]) -> dict[str, Any]:
        """One call, if the line holds."""
        if self.dead:
            raise Killed
        if method.lower() == "getupdates":
            return await self._poll(method, params)
        if self.down:
            self._not_in_circles()
            raise Lost(done=False)
        if method.lower() == "getme":
            return await super().call(method, params, files)
        return await self._send(method, params, files)

    def _watch_mailbox(self) -> None:
        mailbox = self._exchange.mailbox
        put = mailbox.put

        def noted(kind: str, body: dict[str, Any]) -> None:
            before = mailbox._next_id
            put(kind, body)
            self.numbers += range(before, mailbox._next_id)

        mailbox.put = noted  # type: ignore[method-assign]

    def renumber(self) -> None:
        """After a quiet week the server begins at another number, perhaps a lower one."""
        if len(self._exchange.mailbox) == 0:
            lowest = min([FIRST_UPDATE, *self.numbers])
            self._exchange.mailbox._next_id = lowest - 10_000

    def forge(self, number: int, token: str) -> None:
        """Somebody taps with a button's data that was never on their phone."""
        query = {"id": self._exchange.open_query(number), "from": {"id": number, "first_name": "?"}}
        self._exchange.mailbox.put("callback_query", query | {"chat_instance": "1", "data": token})

    async def _poll(self, method: str, params: dict[str, Any]) -> dict[str, Any]:
        self.lost_poll = not self.down and self.dice.random() < self.weather.poll_lost
        if self.down or self.lost_poll:
            raise Quiet
        waiting = set(self._exchange.mailbox._pending)
        answer = await super().call(method, params | {"timeout": "0"}, {})
        self.confirmed |= waiting - set(self._exchange.mailbox._pending)
        if not answer.get("result"):
            raise Quiet
        return self._shuffled(answer) if self.mischief else answer

    def _shuffled(self, answer: dict[str, Any]) -> dict[str, Any]:
        assert self.mischief is not None, "asked before"
        fresh = answer["result"]
        again = self.mischief.sample(self.given, min(len(self.given), self.mischief.randint(0, 3)))
        self.given += fresh
        mixed = [*fresh, *again, *self.mischief.choices(fresh, k=1)]
        self.mischief.shuffle(mixed)
        return answer | {"result": mixed}

    async def _send(self, method: str, params: dict[str, Any], files: dict[str, bytes]) -> dict[str, Any]:
        self._not_in_circles()
        fault = self._fault()
        if isinstance(fault, Refusal):
            self.waits += [(self.now(), fault.retry_after)] if fault.retry_after else []
            return fault.envelope()
        if isinstance(fault, Lost) and not fault.done:
            raise fault
        answer = await super().call(method, params, files)
        result = answer.get("result")
        if isinstance(result, dict) and "message_id" in result and not method.lower().startswith("edit"):
            chat = int(result["chat"]["id"])
            self.arrived(chat, self.phones[chat].message(result["message_id"]))
        if fault is not None:
            raise fault
        return answer

    def _not_in_circles(self) -> None:
        at = self.now()
        self.calls = {at: self.calls.get(at, 0) + 1}
        if self.calls[at] > MOST_CALLS:
            raise InCircles(f"{MOST_CALLS} calls at one moment")

    def _fault(self) -> Refusal | Lost | None:
        roll, weather = self.dice.random(), self.weather
        for chance, make in (
            (weather.refused, lambda: refusal_for(429, self.dice.choice((1, 3, 10, 30)))),
            (weather.broken, lambda: refusal_for(self.dice.choice((500, 502)))),
            (weather.lost_before, lambda: Lost(done=False)),
            (weather.lost_after, lambda: Lost(done=True)),
        ):
            if roll < chance:
                return make()
            roll -= chance
        return None
