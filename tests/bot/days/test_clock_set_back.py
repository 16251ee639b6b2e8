"""The wall clock ran a month ahead for a moment and was set back: nothing waits for the time that was wrong."""

from collections.abc import Iterator
from datetime import datetime, timedelta

import pytest

from bot.engine import turns
from bot.engine.safety import alerts
from core.safety.causes import Cause
from core.store import duties, mail, people, settings
from core.store.mail import Letter
from core.store.set_back import pull_back
from core.store.times import moment
from tests.practice import COACH, Practice

MONTH = timedelta(days=30)
HOUR = timedelta(hours=1)


@pytest.fixture
def practice() -> Iterator[Practice]:
    made = Practice()
    yield made
    made.stage.close()


class Ahead:
    """The engine's clock, which may be wrong."""

    def __init__(self, practice: Practice) -> None:
        self.practice, self.engine = practice, practice.stage.engine
        self.right, self.wrong_by = self.engine.clock(), timedelta(0)
        self.engine.clock = lambda: self.right + self.wrong_by

    @property
    def now(self) -> datetime:
        return self.engine.clock()

    def works(self) -> None:
        while self.engine.work():
            pass

    def set_back(self) -> None:
        self.wrong_by = timedelta(0)
        self.engine.clock_was_set()


@pytest.fixture
def ahead(practice: Practice) -> Ahead:
    """A month ahead, with the program at work."""
    made = Ahead(practice)
    made.wrong_by = MONTH
    with made.engine.store.transaction():
        settings.put(made.engine.store, "awake_at", made.now.isoformat())
    return made


def test_a_planned_talk_keeps_its_distance_and_is_pulled_back_once_only(ahead: Ahead) -> None:
    store = ahead.engine.store
    with store.transaction():
        duties.plan(store, ahead.practice.client, "note", {"text": "x"}, ahead.now + HOUR, ahead.now)
    ahead.set_back()
    for later in (timedelta(0), timedelta(minutes=5)):
        with store.transaction():
            pull_back(store, ahead.right - later)
        talk = duties.next_talk(store, ahead.practice.client, "note")
        assert talk is not None
        assert talk.due_at == ahead.right + HOUR


def test_a_talk_from_before_stays_where_it_was(ahead: Ahead) -> None:
    store, due = ahead.engine.store, ahead.right + 2 * MONTH
    with store.transaction():
        duties.plan(store, ahead.practice.client, "note", {"text": "x"}, due, ahead.right)
    ahead.set_back()
    talk = duties.next_talk(store, ahead.practice.client, "note")
    assert talk is not None
    assert talk.due_at == due


def test_an_alert_raised_meanwhile_goes_on_being_sent(ahead: Ahead) -> None:
    store = ahead.engine.store
    with store.transaction():
        alerts.raise_alert(ahead.engine, ahead.practice.client, Cause.SIGNS_AFTER, "said", "told")
    ahead.set_back()
    [alert] = duties.open_alerts(store, ahead.practice.client)
    assert alert.next_at is not None
    assert alert.next_at <= ahead.right + timedelta(days=1)
    ahead.right = alert.next_at
    ahead.works()
    [again] = duties.open_alerts(store, ahead.practice.client)
    assert again.calls > alert.calls
    assert again.next_at is not None
    assert again.next_at <= ahead.right + timedelta(days=1)


def test_a_letter_that_was_put_off_goes_out_now(ahead: Ahead) -> None:
    store = ahead.engine.store
    with store.transaction():
        letter = mail.post(store, Letter(COACH, {"text": "x"}), ahead.now)
        mail.later(store, letter, ahead.now + HOUR)
    ahead.set_back()
    row = store.row("SELECT not_before FROM outbox WHERE id = ?", [letter])
    assert row is not None
    assert moment(row["not_before"]) <= ahead.right


def test_a_question_asked_meanwhile_is_repeated_as_if_asked_now(ahead: Ahead) -> None:
    engine = ahead.engine
    with engine.store.transaction():
        client = people.by_id(engine.store, ahead.practice.client)
        turns.begin(engine, client, "morning", {"session": "1"}, ahead.now)
    ahead.set_back()
    ahead.works()
    row = engine.store.row("SELECT wake_at FROM thread WHERE state IS NOT NULL")
    assert row is not None
    assert moment(row["wake_at"]) == ahead.right + 3 * HOUR


def test_a_jump_forward_changes_nothing(practice: Practice) -> None:
    clock = Ahead(practice)
    store = clock.engine.store
    with store.transaction():
        settings.put(store, "awake_at", clock.now.isoformat())
        duties.plan(store, practice.client, "note", {"text": "x"}, clock.now + HOUR, clock.now)
    clock.right += timedelta(minutes=10)
    clock.engine.clock_was_set()
    talk = duties.next_talk(store, practice.client, "note")
    assert talk is not None
    assert talk.due_at == clock.right + timedelta(minutes=50)
