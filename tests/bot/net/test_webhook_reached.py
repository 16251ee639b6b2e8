"""A webhook that the server cannot reach any more leaves the bot deaf; the operator hears it from the bot itself."""

import asyncio
from datetime import UTC, datetime, timedelta
from typing import cast

import pytest
from telegram import Bot, WebhookInfo
from telegram.error import NetworkError

from bot.net import reached
from bot.net.reached import Reached

HERE, ELSEWHERE = "https://bot.example.org/hook", ""
NOON = datetime(2026, 3, 2, 12, 0, tzinfo=UTC)


class Server:
    """Says what it is told to say about the webhook, one after the other."""

    def __init__(self, *answers: tuple[str, int, int | None] | None) -> None:
        self.answers = list(answers)

    async def get_webhook_info(self) -> WebhookInfo:
        answer = self.answers.pop(0)
        if answer is None:
            raise NetworkError("none")
        url, waiting, minute = answer
        at = None if minute is None else NOON + timedelta(minutes=minute)
        return WebhookInfo(url, False, waiting, last_error_date=at, last_error_message="SSL error")


def told(*answers: tuple[str, int, int | None] | None) -> list[str]:
    """What the operator hears until the webhook is gone."""
    heard: list[str] = []
    asyncio.run(Reached(cast(Bot, Server(*answers, (ELSEWHERE, 0, None))), HERE, heard.append).lost())
    return heard[:-1]


@pytest.fixture(autouse=True)
def at_once(monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture) -> None:
    monkeypatch.setattr(reached, "LOOK_EVERY_S", 0)
    caplog.set_level("CRITICAL")


def test_failures_that_go_on_while_messages_wait_are_told_with_their_reason() -> None:
    [text] = told((HERE, 3, 1), (HERE, 4, 3))
    assert "SSL error" in text
    assert "4 of its messages wait" in text


@pytest.mark.parametrize(
    "answers",
    [
        [(HERE, 0, None), (HERE, 0, None)],
        [(HERE, 3, 1), (HERE, 3, 1)],  # of an hour ago, and somebody writes just now
        [(HERE, 3, 1), (HERE, 0, 3)],  # it got through since
        [(HERE, 3, None), (HERE, 3, 1)],  # the first one may be of our own restart
        [(HERE, 3, 1), None],
    ],
)
def test_what_passes_by_itself_is_not_told(answers: list[tuple[str, int, int | None] | None]) -> None:
    assert told(*answers) == []


def test_only_a_server_that_reaches_it_counts_as_a_sign_of_life() -> None:
    answered: list[int] = []
    answers = ((HERE, 0, None), None, (HERE, 3, 1), (HERE, 4, 3), (ELSEWHERE, 0, 3))
    server = Server(*answers)
    asyncio.run(
        Reached(
            cast(Bot, server), HERE, lambda text: None, lambda: answered.append(len(server.answers))
        ).lost()
    )
    assert answered == [4, 2, 0]


def test_a_webhook_that_another_program_took_away_is_told() -> None:
    heard: list[str] = []
    asyncio.run(Reached(cast(Bot, Server((HERE, 0, None), (ELSEWHERE, 0, None))), HERE, heard.append).lost())
    [text] = heard
    assert "Another program" in text
