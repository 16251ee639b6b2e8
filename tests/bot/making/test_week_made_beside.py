"""The coach's week in a process of its own: the same words, told once, and not lost with the process."""

import asyncio
import sqlite3
from collections.abc import Callable
from contextlib import nullcontext, suppress
from datetime import datetime, timedelta
from functools import partial
from pathlib import Path
from typing import Any

import msgspec
import pytest

from bot.engine.coach import digest
from bot.making import weekly
from bot.making.slow_work import Failed, SlowWork
from bot.making.weekly import Weekly
from core.facts import PlanGiven
from core.store import duties, erasure, facts, people
from core.store.duties import Planned
from core.store.people import Role
from tests.bot.training.test_history_reads import trained
from tests.practice import CLIENT, COACH, Practice


@pytest.fixture
def practice(practice_on_file: Practice) -> Practice:
    """Another process reads its file."""
    return practice_on_file


def coach_id(practice: Practice) -> int:
    coach = people.by_chat(practice.stage.engine.store, COACH)
    assert coach is not None
    return coach.id


def open_talk(practice: Practice) -> Planned:
    talk = duties.next_talk(practice.stage.engine.store, coach_id(practice), "weekly")
    assert talk is not None
    return talk


class Here(SlowWork):
    """Makes the week without a process; `before` happens first, `after` once it is made."""

    def __init__(
        self, before: Callable[[], Any] = lambda: None, after: Callable[[], Any] = lambda: None
    ) -> None:
        super().__init__()
        self.before, self.after = before, after
        self.times = 0

    async def done(self, wanted: dict[str, Any]) -> bytes:
        """As the process would."""
        self.times += 1
        self.before()
        week = weekly.made(wanted)
        self.after()
        return week


def due(practice: Practice, slow_work: SlowWork) -> datetime:
    """The moment the week is due, with all that follows; when that was."""
    engine = practice.stage.engine
    made = Weekly(engine, slow_work, Path(engine.store.path), nullcontext, lambda: None)
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
    wanted = {"what": "week", "db": engine.store.path, "talk": open_talk(practice), "now": now.isoformat()}
    made = msgspec.json.decode(asyncio.run(SlowWork().done(wanted)), type=digest.Week)
    coach = people.by_id(engine.store, coach_id(practice))
    assert made == digest.make_for(engine, coach, open_talk(practice), now)
    assert made.chart


def questions(practice: Practice, talk: Planned) -> int:
    """How often the tables are asked for this week."""
    engine, asked = practice.stage.engine, list[str]()
    coach = people.by_id(engine.store, talk.person)
    engine.store.connection.set_trace_callback(asked.append)
    digest.make_for(engine, coach, talk, practice.stage.clock.now())
    engine.store.connection.set_trace_callback(None)
    return len(asked)


def test_a_client_more_costs_the_week_few_questions_to_the_tables(practice: Practice) -> None:
    store, talk, now = practice.stage.engine.store, open_talk(practice), practice.stage.clock.now()
    before = questions(practice, talk)
    plan = facts.current(store, PlanGiven, practice.client)[0]
    for number in range(5):
        client = people.add(store, 5000 + number, "Tomas", Role.CLIENT, "UTC", now, talk.person)
        facts.put(store, client, plan, now)
    assert 0 < (questions(practice, talk) - before) / 5 <= 25


def test_the_week_is_told_once_and_the_next_one_is_planned(practice: Practice) -> None:
    first, slow_work = open_talk(practice), Here()
    now = due(practice, slow_work)
    assert sum("week" in text.lower() for text in practice.heard(COACH)) == 1
    assert slow_work.times == len(people.coaches(practice.stage.engine.store))
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
    engine, slow_work = practice.stage.engine, Here()
    talk = open_talk(practice)
    made = Weekly(engine, slow_work, Path(engine.store.path), nullcontext, lambda: None)

    async def run() -> None:
        made.begin(talk, talk.due_at)
        made.begin(talk, talk.due_at)
        await asyncio.gather(*made.under_way.values())

    asyncio.run(run())
    assert slow_work.times == 1


def test_a_coach_who_is_gone_meanwhile_is_told_nothing(practice: Practice) -> None:
    talk = open_talk(practice)
    store = practice.stage.engine.store
    due(practice, Here(lambda: duties.talk_done(store, talk.id, talk.due_at)))
    assert practice.heard(COACH) == []


def notes(practice: Practice) -> list[str]:
    """What clients will be told of their week."""
    rows = practice.stage.engine.store.rows("SELECT about FROM planned WHERE dialogue = 'note'")
    return [msgspec.json.decode(row["about"])["text"] for row in rows]


def test_killed_between_two_commits_the_week_is_told_again_to_those_only_who_have_not_got_it(
    practice: Practice,
) -> None:
    engine, talk = practice.stage.engine, open_talk(practice)
    client = people.by_chat(engine.store, CLIENT)
    assert client is not None
    name = digest.name_of(talk)
    for now in (talk.due_at, talk.due_at + timedelta(minutes=10)):
        with engine.store.transaction():
            digest.tell_clients(engine, name, [(client.id, "Three sessions.")], now)
    assert notes(practice) == ["Three sessions."]
    with engine.store.transaction():
        digest.tell_clients(engine, "the next one", [(client.id, "Two sessions.")], talk.due_at)
    assert notes(practice) == ["Three sessions.", "Two sessions."]


def test_a_client_erased_meanwhile_is_passed_over(practice: Practice) -> None:
    engine, talk = practice.stage.engine, open_talk(practice)
    with engine.store.transaction():
        digest.tell_clients(engine, "week", [(10**6, "Three sessions.")], talk.due_at)
    assert notes(practice) == []


def test_a_week_that_names_somebody_erased_meanwhile_is_made_anew(practice: Practice) -> None:
    trained(practice, 2)
    store, now = practice.stage.engine.store, practice.stage.clock.now()
    people.add(store, 5000, "Tomas", Role.CLIENT, "UTC", now, coach_id(practice))

    def erased() -> None:
        if people.find(store, practice.client) is not None:
            with store.transaction():
                erasure.erase(store, practice.client)

    slow_work = Here(after=erased)
    due(practice, slow_work)
    named = ["Ruta" in (row["body"] or "") for row in store.rows("SELECT body FROM outbox")]
    assert named
    assert not any(named)
    assert "Ruta" not in " ".join(practice.heard(COACH))
    assert sum("week" in text.lower() for text in practice.heard(COACH)) == 1
    assert slow_work.times == len(people.coaches(store)) + 1


def test_many_clients_are_told_in_several_commits_and_the_worker_has_its_turn_between(
    practice: Practice, monkeypatch: pytest.MonkeyPatch
) -> None:
    engine, talk = practice.stage.engine, open_talk(practice)
    monkeypatch.setattr(weekly, "IN_A_COMMIT", 2)
    client = people.by_chat(engine.store, CLIENT)
    assert client is not None
    commits: list[int] = []
    monkeypatch.setattr(digest, "tell_clients", lambda engine, name, some, now: commits.append(len(some)))
    week = digest.Week("Your week.", (), {}, tuple((client.id, str(number)) for number in range(5)))
    made = Weekly(engine, Here(), Path(engine.store.path), nullcontext, lambda: None)

    async def run() -> list[int]:
        telling = asyncio.ensure_future(made._tell(talk, week, talk.due_at))
        await asyncio.sleep(0)
        first = list(commits)
        await telling
        return first

    assert asyncio.run(run()) == [2]
    assert commits == [2, 2, 1]
    assert duties.open_talk(engine.store, talk.id) is None


def test_when_the_disk_is_full_the_talk_stays_open(practice: Practice) -> None:
    engine, talk = practice.stage.engine, open_talk(practice)
    client = people.by_chat(engine.store, CLIENT)
    assert client is not None
    engine.store.execute(
        "CREATE TRIGGER full BEFORE INSERT ON planned WHEN NEW.dialogue = 'note'"
        " BEGIN SELECT raise(ABORT, 'full'); END"
    )
    week = digest.Week("Your week.", (), {}, ((client.id, "Three sessions."),))
    watched = partial(suppress, sqlite3.Error)
    made = Weekly(engine, Here(), Path(engine.store.path), watched, lambda: None)
    asyncio.run(made._tell(talk, week, talk.due_at))
    assert duties.open_talk(engine.store, talk.id) == talk
    assert practice.heard(COACH) == []


@pytest.mark.parametrize("tapped", ["week", "everybody"])
def test_asked_for_it_is_made_beside_too(practice: Practice, tapped: str) -> None:
    trained(practice, 5)
    engine, aside = practice.stage.engine, Here()
    made = Weekly(engine, aside, Path(engine.store.path), nullcontext, lambda: None)
    engine.make_week = made.begin
    coach = people.by_id(engine.store, coach_id(practice))
    before, next_week = len(practice.heard(COACH)), open_talk(practice)
    now = practice.stage.clock.now()
    with engine.store.transaction():
        for _ in range(2):  # tapped twice in a hurry
            digest.ask(engine, coach, now, 0 if tapped == "everybody" else None)

    async def run() -> None:
        while engine.work():
            pass
        assert len(practice.heard(COACH)) == before
        await asyncio.gather(*made.under_way.values())
        await practice.stage.outbox.flush()

    asyncio.run(run())
    heard = practice.heard(COACH)[before:]
    assert aside.times == 1
    assert any(("Ruta" if tapped == "everybody" else "week") in text for text in heard)
    assert open_talk(practice) == next_week
    assert notes(practice) == []
