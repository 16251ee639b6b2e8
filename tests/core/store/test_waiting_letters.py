"""When the sender is to come back: by the letter that is next in its chat, not by those behind it."""

from datetime import UTC, datetime, timedelta

from core.store import mail
from core.store.connection import Store
from core.store.mail import Letter, Priority

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)


def test_a_letter_behind_a_delayed_one_is_not_waited_for_by_itself() -> None:
    store = Store(":memory:", synchronous="OFF")
    first = mail.post(store, Letter(1, {"text": "one"}), NOW)
    mail.post(store, Letter(1, {"text": "two"}), NOW)
    mail.later(store, first, NOW + timedelta(seconds=10))
    assert mail.waiting(store, NOW) == []
    assert mail.next_letter_at(store, NOW) == NOW + timedelta(seconds=10)


def test_an_alert_behind_a_delayed_letter_goes_at_once() -> None:
    store = Store(":memory:", synchronous="OFF")
    first = mail.post(store, Letter(1, {"text": "one"}), NOW)
    mail.later(store, first, NOW + timedelta(seconds=10))
    alert = mail.post(store, Letter(1, {"text": "alert"}, priority=Priority.ALERT), NOW)
    assert [one.id for one in mail.waiting(store, NOW)] == [alert]


def test_of_many_chats_the_more_urgent_go_first_and_the_older_before_the_younger() -> None:
    """Safety alert, running session, talk, reminder, digest: whatever there is no room for waits longest."""
    store = Store(":memory:", synchronous="OFF")
    order = [Priority.DIGEST, Priority.TALK, Priority.SESSION, Priority.REMINDER, Priority.ALERT]
    for chat, priority in enumerate([*order, *order]):
        mail.post(store, Letter(chat, {"text": "x"}, priority=priority), NOW)
    found = [(one.letter.priority, one.id) for one in mail.waiting(store, NOW)]
    assert found == sorted(found)
    assert {priority for priority, _ in found} == set(Priority)
    assert [one.letter.priority for one in mail.waiting(store, NOW, 3)] == [0, 0, 1]
