"""The rest runs down in one message; a server that refuses it is left alone."""

import asyncio
from datetime import UTC, datetime, timedelta
from types import SimpleNamespace
from typing import cast

import pytest
from telegram import Bot
from telegram.error import Forbidden, NetworkError, RetryAfter, TelegramError

from bot.net.countdown import Countdown
from tests.practice import CLIENT, START

REST = timedelta(seconds=30)


class Phone:
    """A bot that counts what it is asked to show, and refuses the first calls."""

    def __init__(self, refusals: list[TelegramError]) -> None:
        self.refusals = refusals
        self.calls: list[str] = []

    async def send_message(self, chat: int, text: str, **more: object) -> SimpleNamespace:
        self._asked(text)
        return SimpleNamespace(message_id=7)

    async def edit_message_text(self, text: str, chat: int, message: int) -> None:
        self._asked(text)

    def _asked(self, text: str) -> None:
        self.calls.append(text)
        if self.refusals:
            raise self.refusals.pop()


def calls(*refusals: TelegramError, rests: int = 1) -> int:
    """How many calls the rests take, looked at four times a second."""
    phone, now = Phone(list(refusals)), START.astimezone(UTC)
    running: dict[int, datetime] = {}
    countdown = Countdown(cast(Bot, phone), running, lambda: now)
    for _ in range(rests):
        running[CLIENT] = now + REST
        for _ in range(4 * 31):
            asyncio.run(_looked(countdown, running))
            now += timedelta(seconds=0.25)
    assert running == {}
    return len(phone.calls)


async def _looked(countdown: Countdown, running: dict[int, datetime]) -> None:
    for chat, until in list(running.items()):
        await countdown.step(chat, until)


def test_one_message_is_edited_at_20_10_and_5_s() -> None:
    assert calls() == 4


@pytest.mark.parametrize("refusal", [RetryAfter(30), Forbidden("blocked"), NetworkError("none")])
def test_a_server_that_refuses_is_asked_once_a_rest(refusal: TelegramError) -> None:
    """Four times a second it would lengthen the very wait that it asks for."""
    assert calls(refusal) == 1
    assert calls(refusal, rests=2) == 1 + 4
