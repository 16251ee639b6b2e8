"""Sending when the server refuses, is slow, or the person is gone."""

import asyncio
from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta

import pytest

from bot.play.stage import Stage
from core.store import mail, people
from core.store.mail import Letter, Priority
from core.store.people import Role
from core.store.set_back import pull_back

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


def outage(stage: Stage, seconds: float, then: Callable[[], None] = lambda: None) -> None:
    """An alert to the coach fails at 0, 0.5, 1.5, 3.5 and 7.5 s; then the client gets a letter, `seconds` after 0."""
    stage.api.lose_next("sendMessage", 5, chat_id=COACH)
    posts(stage, COACH, "alert", Priority.ALERT)
    for gap in (0, 0.5, 1, 2, 4):
        flushes(stage, gap)
    then()
    posts(stage, CLIENT, "hello")
    flushes(stage, seconds - 7.5)


@pytest.mark.parametrize(("seconds", "out"), [(9.9, []), (10, ["alert"]), (10.1, ["alert"])])
def test_the_first_answer_in_any_chat_after_ten_silent_seconds_sets_the_alerts_going(
    stage: Stage, seconds: float, out: list[str]
) -> None:
    outage(stage, seconds)
    assert heard(stage, CLIENT) == ["hello"]
    assert heard(stage, COACH) == out


def test_a_try_that_fails_after_an_outage_is_repeated_soon(stage: Stage) -> None:
    outage(stage, 10, lambda: stage.api.lose_next("sendMessage", 1, chat_id=COACH))
    assert heard(stage, COACH) == []
    flushes(stage, 0.5)
    assert heard(stage, COACH) == ["alert"]


def test_an_alert_that_was_told_to_wait_waits_whatever_else_is_answered(stage: Stage) -> None:
    outage(stage, 11.5, lambda: stage.api.fail_next("sendMessage", 1, 429, 30, chat_id=COACH))
    stage.api.lose_next("sendMessage", 5, chat_id=CLIENT)
    posts(stage, CLIENT, "after a second outage")
    for gap in (0, 0.5, 1, 2, 4, 8):
        flushes(stage, gap)
    assert heard(stage, CLIENT) == ["hello", "after a second outage"]
    flushes(stage, 30 - 15.5 - 0.1)
    assert heard(stage, COACH) == []
    flushes(stage, 0.1)
    assert heard(stage, COACH) == ["alert"]


def test_a_pause_of_all_ends_when_the_clock_that_ran_ahead_is_set_back(stage: Stage) -> None:
    """Nothing may wait until the time that was wrong comes, least of all an alert."""
    stage.clock.skip_to(START + timedelta(days=30))
    stage.api.fail_next("sendMessage", 2, 429, 30)
    posts(stage, CLIENT, "one")
    posts(stage, COACH, "two")
    flushes(stage)
    stage.clock._now = START
    pull_back(stage.engine.store, START)
    flushes(stage)
    assert heard(stage, CLIENT) == ["one"]
    assert heard(stage, COACH) == ["two"]
