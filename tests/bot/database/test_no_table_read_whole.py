"""What a practice asks of its store while people write and time passes never reads a whole table that grows."""

import re
from datetime import timedelta

from tests.practice import CLIENT, COACH, OTHER, START, Practice

GROWING = "person thread button inbox outbox alert planned"
READ_WHOLE = re.compile(rf"(SCAN|SEARCH) ({'|'.join(GROWING.split())})(?! USING)")


def asked(practice: Practice) -> set[str]:
    """Every statement of a session, eight days of reminders and what a coach looks at."""
    found: set[str] = set()
    practice.stage.engine.store.connection.set_trace_callback(found.add)
    practice.play_into_a_set()
    for _ in range(2):
        practice.taps(CLIENT, "Set done")
        practice.types(CLIENT, "31")
    practice.types(CLIENT, "stop")
    practice.later(days=8)
    for text in ("clients", "week", "hello", "invite"):
        practice.types(COACH, text)
    practice.types(OTHER, "hello?")
    practice.stage.engine.store.connection.set_trace_callback(None)
    return {one for one in found if re.match("SELECT|UPDATE|DELETE", one)}


def read_whole(practice: Practice, sql: str) -> list[str]:
    """Where SQLite would read all rows of a growing table."""
    plan = practice.stage.engine.store.rows(f"EXPLAIN QUERY PLAN {sql}")
    return [f"{row['detail']}: {sql}" for row in plan if READ_WHOLE.match(row["detail"])]


def test_no_message_and_no_timer_reads_a_whole_table(practice: Practice) -> None:
    statements = asked(practice)
    assert len(statements) > 500
    assert [line for sql in statements for line in read_whole(practice, sql)] == []


def test_a_lost_index_is_noticed(practice: Practice) -> None:
    practice.stage.engine.store.execute("DROP INDEX idx_thread_person_floor")
    assert read_whole(practice, "SELECT max(floor) AS top FROM thread WHERE person = 3")
    assert read_whole(practice, "SELECT count(*) AS n FROM thread WHERE person = 3")


def test_the_next_letter_of_each_chat_is_found_among_many_by_index(practice: Practice) -> None:
    """A letter may wait behind thousands; looking for it must not compare each with each."""
    from core.store import mail
    from core.store.mail import Letter, Priority

    store = practice.stage.engine.store
    with store.transaction():
        for number in range(2000):
            mail.post(store, Letter(7, {"text": str(number)}, priority=Priority.REMINDER), START)
        alert = mail.post(store, Letter(7, {"text": "now"}, priority=Priority.ALERT), START)
    steps: list[int] = []
    store.connection.set_progress_handler(lambda: steps.append(1), 1000)  # called every 1,000 steps of SQLite
    found = mail.waiting(store, START + timedelta(seconds=1))
    store.connection.set_progress_handler(None, 0)
    assert [one.id for one in found] == [alert]
    assert len(steps) < 200
