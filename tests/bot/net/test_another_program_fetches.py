"""Two programs with one token each get some of the messages: the operator is told, as nothing else would show it."""

import asyncio

import pytest

from bot.net import intake
from bot.play.stage import Stage
from tests.practice import COACH, START, run

SEVERAL = intake.CROWDED


@pytest.fixture
def stage(monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture) -> Stage:
    monkeypatch.setattr(intake, "PAUSE_S", 0)
    caplog.set_level("CRITICAL")
    made = Stage(START, (COACH,), "Europe/Lisbon", lambda *_: None, in_memory=True)
    made.add(COACH, "Coach", lambda message, now: None)
    return made


class Done(Exception):
    """The script is over."""


def told(stage: Stage, failures: list[int]) -> int:
    """How often it was told while so many polls failed with these codes; then one is answered."""
    count = 0

    def crowded() -> None:
        nonlocal count
        count += 1

    def receive(updates: list[intake.Numbered]) -> None:
        raise Done

    async def script() -> None:
        with pytest.raises(Done):
            await asyncio.wait_for(intake.poll(stage.bot, receive, intake.Line(crowded)), 10)

    for code in failures:
        stage.api.fail_next("getUpdates", 1, code)
    stage.phones[COACH].types("hello")
    run(script())
    return count


@pytest.mark.parametrize(
    ("failures", "times"),
    [
        ([409] * (SEVERAL - 1), 0),
        ([409] * SEVERAL, 1),
        ([409] * (SEVERAL - 1) + [502] + [409] * (SEVERAL - 1), 0),
        ([502] * 2 * SEVERAL, 0),
    ],
)
def test_conflicts_one_after_the_other_are_told(stage: Stage, failures: list[int], times: int) -> None:
    assert told(stage, failures) == times
