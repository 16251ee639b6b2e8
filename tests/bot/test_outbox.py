"""Sending when the server refuses, is slow, or the person is gone."""

import asyncio
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

import pytest

from bot.play.stage import Stage
from core.store import mail, people
from core.store.mail import Letter, Priority
from core.store.people import Role

START = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
COACH, CLIENT = 1001, 2001


@pytest.fixture
def stage() -> Iterator[Stage]:
    made = Stage(START, (COACH,), "Europe/Lisbon", lambda *_: None)
    made.add(COACH, "Coach", lambda message, now: None)
    made.add(CLIENT, "Ruta", lambda message, now: None)
    store = made.engine.store
    coach = people.by_chat(store, COACH)
    assert coach is not None
    people.add(store, CLIENT, "Ruta", Role.CLIENT, "Europe/Lisbon", START, coach.id)
    yield made
    made.close()


def heard(stage: Stage, number: int) -> list[str]:
    return [message.text for message in stage.phones[number].history if not message.mine]


def posts(stage: Stage, chat: int, text: str, priority: Priority = Priority.TALK) -> None:
    mail.post(stage.engine.store, Letter(chat, {"text": text}, priority=priority), stage.clock.now())


def flushes(stage: Stage, seconds: float = 0) -> None:
    stage.clock.skip_to(stage.clock.now() + timedelta(seconds=seconds))
    asyncio.run(stage.outbox.flush())


@pytest.mark.parametrize(("code", "wait"), [(429, 3), (502, 1)])
def test_a_refused_letter_waits_and_goes_out_once_and_in_order(stage: Stage, code: int, wait: int) -> None:
    stage.api.fail_next("sendMessage", 1, code, 3 if code == 429 else None)
    posts(stage, CLIENT, "one")
    posts(stage, CLIENT, "two")
    posts(stage, COACH, "other chat")
    flushes(stage)
    assert len(heard(stage, CLIENT)) + len(heard(stage, COACH)) in (1, 2)
    flushes(stage, wait)
    assert heard(stage, CLIENT) == ["one", "two"]
    assert heard(stage, COACH) == ["other chat"]


def test_an_alert_overtakes_what_waits_in_its_chat(stage: Stage) -> None:
    posts(stage, CLIENT, "digest", Priority.DIGEST)
    posts(stage, CLIENT, "alert", Priority.ALERT)
    flushes(stage)
    assert heard(stage, CLIENT) == ["alert", "digest"]


def test_somebody_who_blocked_the_bot_is_marked_and_their_coach_is_told_once(stage: Stage) -> None:
    stage.phones[CLIENT].blocks()
    posts(stage, CLIENT, "hello")
    posts(stage, CLIENT, "again")
    flushes(stage)
    person = people.by_chat(stage.engine.store, CLIENT)
    assert person is not None
    assert person.unreachable_at == START
    assert len(heard(stage, COACH)) == 1
    assert "can't be reached" in heard(stage, COACH)[0]


def test_a_letter_the_server_will_never_take_is_dropped_and_holds_nobody_up(stage: Stage) -> None:
    posts(stage, CLIENT, "x" * 5000)
    posts(stage, CLIENT, "short")
    flushes(stage)
    assert heard(stage, CLIENT) == ["short"]


def test_a_letter_that_cannot_be_made_is_dropped_and_holds_nobody_up(
    stage: Stage, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level("CRITICAL")
    mail.post(
        stage.engine.store, Letter(CLIENT, {"text": "", "picture": "no_such"}, "photo"), stage.clock.now()
    )
    posts(stage, CLIENT, "after it")
    flushes(stage)
    assert heard(stage, CLIENT) == ["after it"]
