"""What can wait leaves room for whoever trains."""

import asyncio
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

import pytest

from bot.net import pace
from bot.net.pace import Pace
from bot.play.stage import Stage
from core.store import mail
from core.store.mail import Letter, Priority

START = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
COACH, CLIENT = 1001, 2001
MANY = range(3001, 3041)
TELEGRAM_A_SECOND = 30  # "about 30 messages per second": core.telegram.org/bots/faq, from memory


@pytest.fixture
def stage() -> Iterator[Stage]:
    made = Stage(START, (COACH,), "Europe/Lisbon", lambda *_: None)
    for number in (COACH, CLIENT, *MANY):
        made.add(number, str(number), lambda message, now: None)
    yield made
    made.close()


def posts(stage: Stage, chat: int, priority: Priority) -> None:
    mail.post(stage.engine.store, Letter(chat, {"text": "x"}, priority=priority), stage.clock.now())


def heard(stage: Stage) -> list[int]:
    return [number for number, phone in stage.phones.items() for one in phone.history if not one.mine]


def flushes(stage: Stage, seconds: float = 0) -> datetime | None:
    stage.clock.skip_to(stage.clock.now() + timedelta(seconds=seconds))
    return asyncio.run(stage.outbox.flush())


def test_a_few_go_at_once_and_the_next_when_there_is_room() -> None:
    some = Pace(a_second=20, at_once=5)
    assert some.room(START) == 5
    some.took(5)
    assert some.room(START) == 0
    assert some.next_at(START) == START + timedelta(milliseconds=50)
    assert some.room(START + timedelta(milliseconds=49)) == 0
    assert some.room(START + timedelta(milliseconds=50)) == 1


def test_a_long_pause_saves_up_no_more_than_a_few() -> None:
    some = Pace(a_second=20, at_once=5)
    some.took(some.room(START))
    assert some.room(START + timedelta(hours=8)) == 5


def test_a_clock_set_back_stops_nothing() -> None:
    some = Pace(a_second=20, at_once=5)
    some.took(some.room(START))
    back = START - timedelta(hours=1)
    assert some.room(back) == 0
    assert some.room(back + timedelta(seconds=1)) == 5


def test_whatever_waits_a_session_has_room_in_any_second() -> None:
    assert pace.AT_ONCE + pace.A_SECOND < TELEGRAM_A_SECOND


@pytest.mark.parametrize("priority", [Priority.REMINDER, Priority.DIGEST])
def test_of_many_that_can_wait_a_few_go_and_each_goes_once(stage: Stage, priority: Priority) -> None:
    for number in MANY:
        posts(stage, number, priority)
    again = flushes(stage)
    assert len(heard(stage)) == pace.AT_ONCE
    seconds = 0.0
    while again is not None:
        passed = (again - stage.clock.now()).total_seconds()
        seconds += passed
        again = flushes(stage, passed)
    assert heard(stage) == [*MANY]
    assert seconds == pytest.approx((len(MANY) - pace.AT_ONCE) / pace.A_SECOND)


@pytest.mark.parametrize("priority", [Priority.ALERT, Priority.SESSION, Priority.TALK])
def test_what_somebody_waits_for_goes_before_them(stage: Stage, priority: Priority) -> None:
    for number in MANY:
        posts(stage, number, Priority.REMINDER)
    flushes(stage)
    posts(stage, CLIENT, priority)
    flushes(stage)
    assert CLIENT in heard(stage)
    assert len(heard(stage)) == pace.AT_ONCE + 1


@pytest.mark.parametrize("priority", [Priority.SESSION, Priority.TALK])
def test_an_answer_takes_along_what_waits_before_it_in_its_chat(stage: Stage, priority: Priority) -> None:
    for number in MANY:
        posts(stage, number, Priority.DIGEST)
    flushes(stage)
    posts(stage, MANY[-1], priority)
    flushes(stage)
    assert heard(stage).count(MANY[-1]) == 2
    assert len(heard(stage)) == pace.AT_ONCE + 2


def test_an_alert_goes_alone(stage: Stage) -> None:
    for number in MANY:
        posts(stage, number, Priority.DIGEST)
    flushes(stage)
    posts(stage, MANY[-1], Priority.ALERT)
    flushes(stage)
    assert heard(stage).count(MANY[-1]) == 1


def test_a_practice_that_is_played_hears_them_all(stage: Stage) -> None:
    for number in MANY:
        posts(stage, number, Priority.REMINDER)
    asyncio.run(stage.run(START + timedelta(seconds=10)))
    assert heard(stage) == [*MANY]
