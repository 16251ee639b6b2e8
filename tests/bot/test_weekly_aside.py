"""The coach's week in a process of its own: the same words, told once, and not lost with the process."""

import asyncio
from collections.abc import Callable
from contextlib import nullcontext
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import msgspec
import pytest

from bot import weekly
from bot.aside import Aside, Failed
from bot.engine.coach import digest
from bot.weekly import Weekly
from core.store import duties, people
from core.store.duties import Planned
from tests.bot.test_history_reads import trained
from tests.practice import COACH, Practice


def coach_id(practice: Practice) -> int:
    coach = people.by_chat(practice.stage.engine.store, COACH)
    assert coach is not None
    return coach.id


def open_talk(practice: Practice) -> Planned:
    talk = duties.next_talk(practice.stage.engine.store, coach_id(practice), "weekly")
    assert talk is not None
    return talk


class Here(Aside):
    """Makes the week without a process; `before` happens first."""

    def __init__(self, before: Callable[[], Any] = lambda: None) -> None:
        super().__init__()
        self.before = before
        self.times = 0

    async def done(self, wanted: dict[str, Any]) -> bytes:
        """As the process would."""
        self.times += 1
        self.before()
        return weekly.made(wanted)


def due(practice: Practice, aside: Aside) -> datetime:
    """The moment the week is due, with all that follows; when that was."""
    engine = practice.stage.engine
    made = Weekly(engine, aside, Path(engine.store.path), nullcontext, lambda: None)
    engine.make_week = made.begin
    practice.stage.clock.skip_to(open_talk(practice).due_at)

    async def run() -> None:
        while engine.work():
            await asyncio.gather(*made.under_way.values())
        await practice.stage.outbox.flush()

    asyncio.run(run())
    return practice.stage.clock.now()


def test_a_process_of_its_own_makes_the_same_week(practice: Practice) -> None:
    trained(practice, 5)
    engine, now = practice.stage.engine, practice.stage.clock.now()
    wanted = {"what": "week", "db": engine.store.path, "coach": coach_id(practice), "now": now.isoformat()}
    made = msgspec.json.decode(asyncio.run(Aside().done(wanted)), type=digest.Week)
    assert made == digest.make_for_all(engine, people.by_id(engine.store, coach_id(practice)), now)
    assert made.chart


def test_the_week_is_told_once_and_the_next_one_is_planned(practice: Practice) -> None:
    first, aside = open_talk(practice), Here()
    now = due(practice, aside)
    assert sum("week" in text.lower() for text in practice.heard(COACH)) == 1
    assert aside.times == len(people.coaches(practice.stage.engine.store))
    assert open_talk(practice).due_at > now
    assert not duties.open_talk(practice.stage.engine.store, first.id)


def test_a_week_that_no_process_can_make_is_made_here(
    practice: Practice, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level("CRITICAL")

    def fails() -> None:
        raise Failed("no room")

    due(practice, Here(fails))
    assert sum("week" in text.lower() for text in practice.heard(COACH)) == 1


def test_a_week_that_was_lost_with_the_process_comes_ten_minutes_later(practice: Practice) -> None:
    engine = practice.stage.engine
    begun: list[Planned] = []
    engine.make_week = lambda talk, now: begun.append(talk)
    practice.stage.clock.skip_to(open_talk(practice).due_at)
    while engine.work():
        pass
    assert {talk.person for talk in begun} == {one.id for one in people.coaches(engine.store)}
    assert open_talk(practice).due_at == practice.stage.clock.now() + timedelta(minutes=10)
    due(practice, Here())
    assert sum("week" in text.lower() for text in practice.heard(COACH)) == 1


def test_asked_for_twice_at_once_it_is_made_once(practice: Practice) -> None:
    engine, aside = practice.stage.engine, Here()
    talk = open_talk(practice)
    made = Weekly(engine, aside, Path(engine.store.path), nullcontext, lambda: None)

    async def run() -> None:
        made.begin(talk, talk.due_at)
        made.begin(talk, talk.due_at)
        await asyncio.gather(*made.under_way.values())

    asyncio.run(run())
    assert aside.times == 1


def test_a_coach_who_is_gone_meanwhile_is_told_nothing(practice: Practice) -> None:
    talk = open_talk(practice)
    store = practice.stage.engine.store
    due(practice, Here(lambda: duties.talk_done(store, talk.id, talk.due_at)))
    assert practice.heard(COACH) == []
