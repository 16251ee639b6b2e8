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
FIRST_UPDATE = 1000


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
        self.confirmed: set[int] = set()
        self.offset = 0
        self.arrived: Callable[[int, ChatMessage], None] = lambda chat, message: None

    async def call(self, method: str, params: dict[str, Any], files: dict[str, bytes]) -> dict[str, Any]:
        """One call, if the line holds."""
        if self.dead:
            raise Killed
        if method.lower() == "getupdates":
            return await self._poll(method, params)
        if self.down:
            raise Lost(done=False)
        if method.lower() == "getme":
            return await super().call(method, params, files)
        return await self._send(method, params, files)

    def given(self) -> int:
        """How many updates the phones made."""
        return self._exchange.mailbox._next_id - FIRST_UPDATE

    async def _poll(self, method: str, params: dict[str, Any]) -> dict[str, Any]:
        if self.down or self.dice.random() < self.weather.poll_lost:
            raise Quiet
        self.offset = int(params.get("offset", 0))
        answer = await super().call(method, params | {"timeout": "0"}, {})
        if not answer.get("result"):
            raise Quiet
        return answer

    async def _send(self, method: str, params: dict[str, Any], files: dict[str, bytes]) -> dict[str, Any]:
        fault = self._fault()
        if isinstance(fault, Refusal):
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
