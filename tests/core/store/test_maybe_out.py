"""Which questions nobody can have seen: a kill may have fallen between sending a letter and writing that down."""

from datetime import UTC, datetime, timedelta

import pytest

from core.store import mail
from core.store.connection import Store
from core.store.mail import Letter

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
THREAD = 7


@pytest.fixture
def store() -> Store:
    return Store(":memory:", synchronous="OFF")


def post(store: Store, question: str | None, chat: int = 1) -> int:
    return mail.post(store, Letter(chat, {"text": "?"}, thread=THREAD, question=question), NOW)


def test_a_question_that_waits_was_seen_by_nobody(store: Store) -> None:
    post(store, "set.1.1")
    assert mail.unseen(store, 1, THREAD, 10) == {"set.1.1"}


def test_what_waited_when_the_program_was_killed_may_have_been_seen(store: Store) -> None:
    post(store, "set.1.1")
    mail.may_be_out(store)
    assert mail.unseen(store, 1, THREAD, 10) == set()


def test_it_stays_so_when_another_copy_goes_out_later_than_the_answer(store: Store) -> None:
    letter = post(store, "set.1.1")
    mail.may_be_out(store)
    mail.sent(store, letter, 12, NOW)
    assert mail.unseen(store, 1, THREAD, 10) == set()


def test_behind_a_letter_that_failed_nothing_was_on_its_way(store: Store) -> None:
    first = post(store, None)
    mail.later(store, first, NOW + timedelta(seconds=4))
    post(store, "set.1.1")
    post(store, "reps.1.1", chat=2)
    mail.may_be_out(store)
    assert "set.1.1" in mail.unseen(store, 1, THREAD, 10)
    assert mail.unseen(store, 2, THREAD, 10) == set()


def test_what_is_asked_after_the_start_is_as_unseen_as_ever(store: Store) -> None:
    mail.may_be_out(store)
    post(store, "set.1.2")
    assert mail.unseen(store, 1, THREAD, 10) == {"set.1.2"}
