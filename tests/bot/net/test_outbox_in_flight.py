"""Letters on their way at the same time: a slow call holds up nobody but its own chat, and no alert at all."""

import asyncio
from collections.abc import Awaitable, Callable, Iterator
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from bot.net import outbox as sending
from bot.play.stage import Stage
from core.store import mail
from core.store.mail import Letter, Priority

START = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
COACH, CLIENT, OTHER = 1001, 2001, 2002
MANY = range(3001, 3041)


class Slow:
    """Holds every call that carries one of the words until it is let go; counts what is on its way."""

    def __init__(self, stage: Stage, *words: str) -> None:
        self.words = words
        self.gates: dict[str, asyncio.Event] = {}
        self.real = stage.api.call
        stage.api.call = self.call  # type: ignore[method-assign]

    async def call(self, method: str, params: dict[str, Any], files: dict[str, bytes]) -> dict[str, Any]:
        """As the server, once it may."""
        text = str(params.get("text", ""))
        if text in self.words:
            self.gates[text] = asyncio.Event()
            await self.gates[text].wait()
        return await self.real(method, params, files)


@pytest.fixture
def stage() -> Iterator[Stage]:
    made = Stage(START, (COACH,), "Europe/Lisbon", lambda *_: None)
    for number in (COACH, CLIENT, OTHER, *MANY):
        made.add(number, f"{number}", lambda message, now: None)
    yield made
    made.close()


def heard(stage: Stage, number: int) -> list[str]:
    return [message.text for message in stage.phones[number].history if not message.mine]


def posts(stage: Stage, chat: int, text: str, priority: Priority = Priority.TALK) -> None:
    mail.post(stage.engine.store, Letter(chat, {"text": text}, priority=priority), stage.clock.now())


def flushing(stage: Stage, act: Callable[[], Awaitable[None]]) -> None:
    """Let the outbox run while something happens; all calls must have been let go at the end."""

    async def run() -> None:
        flush = asyncio.create_task(stage.outbox.flush())
        await turns()
        await act()
        await flush

    asyncio.run(run())


async def turns() -> None:
    """Let everything go on that does not wait for a gate."""
    for _ in range(200):
        await asyncio.sleep(0)


async def until(holds: Callable[[], bool]) -> None:
    """Wait for something that comes by itself."""
    async with asyncio.timeout(10):
        while not holds():  # noqa: ASYNC110 - nobody signals what is waited for
            await asyncio.sleep(0.001)


def test_a_slow_call_holds_up_no_other_chat(stage: Stage) -> None:
    slow = Slow(stage, "slow")
    posts(stage, CLIENT, "slow")
    posts(stage, CLIENT, "behind it")
    for number in range(3):
        posts(stage, OTHER, f"{number}")

    async def act() -> None:
        await until(lambda: heard(stage, OTHER) == ["0", "1", "2"])
        assert heard(stage, CLIENT) == []
        slow.gates["slow"].set()

    flushing(stage, act)
    assert heard(stage, CLIENT) == ["slow", "behind it"]


def test_a_letter_posted_while_a_slow_call_runs_goes_at_once(stage: Stage) -> None:
    slow = Slow(stage, "slow")
    posts(stage, CLIENT, "slow")

    async def act() -> None:
        posts(stage, OTHER, "new")
        stage.outbox.look()
        await turns()
        assert heard(stage, OTHER) == ["new"]
        slow.gates["slow"].set()

    flushing(stage, act)


def test_an_alert_goes_past_a_slow_call_of_its_own_chat(stage: Stage) -> None:
    slow = Slow(stage, "slow digest")
    posts(stage, COACH, "slow digest", Priority.DIGEST)

    async def act() -> None:
        posts(stage, COACH, "alert", Priority.ALERT)
        stage.outbox.look()
        await turns()
        assert heard(stage, COACH) == ["alert"]
        slow.gates["slow digest"].set()

    flushing(stage, act)
    assert heard(stage, COACH) == ["alert", "slow digest"]


@pytest.mark.parametrize("more", [0, 1])
def test_an_alert_goes_past_as_many_slow_calls_as_may_run_at_once(stage: Stage, more: int) -> None:
    slow = Slow(stage, "slow")
    slow.words = tuple(f"slow {number}" for number in MANY)
    for number in MANY[: sending.AT_ONCE + more]:
        posts(stage, number, f"slow {number}")

    async def act() -> None:
        assert len(slow.gates) == sending.AT_ONCE
        posts(stage, COACH, "alert", Priority.ALERT)
        stage.outbox.look()
        await turns()
        assert heard(stage, COACH) == ["alert"]
        slow.words = ()
        for gate in slow.gates.values():
            gate.set()

    flushing(stage, act)
    assert all(len(heard(stage, number)) == 1 for number in MANY[: sending.AT_ONCE + more])


def test_two_alerts_to_one_chat_stay_in_order_and_come_before_the_rest(stage: Stage) -> None:
    slow = Slow(stage, "first")
    posts(stage, COACH, "talk")
    posts(stage, COACH, "first", Priority.ALERT)
    posts(stage, COACH, "second", Priority.ALERT)

    async def act() -> None:
        assert heard(stage, COACH) == []
        slow.gates["first"].set()

    flushing(stage, act)
    assert heard(stage, COACH) == ["first", "second", "talk"]


def test_a_delayed_letter_is_tried_again_while_a_slow_call_runs(stage: Stage) -> None:
    slow = Slow(stage, "slow")
    posts(stage, CLIENT, "slow")
    stage.api.fail_next("sendMessage", 1, 502)
    posts(stage, OTHER, "again")

    async def act() -> None:
        assert len(heard(stage, OTHER)) + len(heard(stage, CLIENT)) == 0
        await until(lambda: bool(stage.engine.store.rows("SELECT 1 FROM outbox WHERE attempts = 1")))
        stage.clock.skip_to(stage.clock.now() + timedelta(seconds=1))
        await until(lambda: heard(stage, OTHER) == ["again"])
        slow.gates["slow"].set()

    flushing(stage, act)


def test_what_lands_together_is_written_down_in_one_commit(stage: Stage) -> None:
    for number in MANY[: sending.AT_ONCE]:
        posts(stage, number, "hello")
    before = stage.engine.store.connection.total_changes
    commits: list[str] = []
    stage.engine.store.connection.set_trace_callback(
        lambda sql: commits.append(sql) if sql == "COMMIT" else None
    )
    asyncio.run(stage.outbox.flush())
    assert stage.engine.store.connection.total_changes - before == sending.AT_ONCE
    assert len(commits) == 1


def test_told_to_stop_it_writes_down_what_was_sent_and_sends_the_rest_the_next_time(stage: Stage) -> None:
    slow = Slow(stage, "slow")
    posts(stage, CLIENT, "slow")
    posts(stage, OTHER, "sent")

    async def stopped() -> None:
        flush = asyncio.create_task(stage.outbox.flush())
        await turns()
        flush.cancel()
        await asyncio.gather(flush, return_exceptions=True)

    asyncio.run(stopped())
    assert heard(stage, OTHER) == ["sent"]
    slow.words = ()
    asyncio.run(stage.outbox.flush())
    assert heard(stage, OTHER) == ["sent"]
    assert heard(stage, CLIENT) == ["slow"]
