"""Words are forgotten after 14 days, ids and buttons after 30, in steps; what waits never is."""

from datetime import UTC, datetime, timedelta

import pytest

from core.store import forgetting, inbox, mail, people, settings
from core.store.connection import Store
from core.store.mail import Letter
from core.store.people import Role
from core.store.times import ms

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
A_MOMENT = timedelta(milliseconds=1)
MANY = 100


@pytest.fixture
def store() -> Store:
    made = Store(":memory:", synchronous="OFF")
    people.add(made, 2001, "Ruta", Role.CLIENT, "Europe/Lisbon", NOW)
    return made


def bodies(store: Store, table: str) -> list[str | None]:
    return [row["body"] for row in store.rows(f"SELECT body FROM {table} ORDER BY rowid")]


def fill(store: Store) -> None:
    """An update, a letter that is out, one that was dropped, a button."""
    inbox.receive(store, 5, {"text": "secret"}, NOW)
    inbox.handled(store, 5, NOW)
    mail.sent(store, mail.post(store, Letter(7, {"text": "secret"}), NOW), 1, NOW)
    mail.drop(store, mail.post(store, Letter(7, {"text": "secret"}), NOW), "blocked")
    store.execute("INSERT INTO button (token, person, value, made_at) VALUES ('x', 1, '31', ?)", [ms(NOW)])


def left(store: Store) -> tuple[int, int, int]:
    """Words, rows of letters, buttons."""
    both = bodies(store, "inbox") + bodies(store, "outbox")
    buttons = len(store.rows("SELECT 1 FROM button"))
    return sum(body is not None for body in both), len(both), buttons


@pytest.mark.parametrize(
    ("after", "remains"),
    [
        (forgetting.BODIES_KEPT, (3, 3, 1)),
        (forgetting.BODIES_KEPT + A_MOMENT, (0, 3, 1)),
        (forgetting.IDS_KEPT, (0, 3, 1)),
        (forgetting.IDS_KEPT + A_MOMENT, (0, 0, 0)),
    ],
)
def test_words_go_after_fourteen_days_and_ids_and_buttons_after_thirty(
    store: Store, after: timedelta, remains: tuple[int, int, int]
) -> None:
    fill(store)
    assert not forgetting.step(store, NOW + after, MANY)
    assert left(store) == remains


@pytest.mark.parametrize(("after", "known"), [(timedelta(0), True), (A_MOMENT, False)])
def test_the_number_of_a_stranger_goes_after_thirty_days_and_a_group_stays(
    store: Store, after: timedelta, known: bool
) -> None:
    for name in ("refused:77", "refused:-77", "pruned_on"):
        settings.put(store, name, NOW.isoformat())
    forgetting.step(store, NOW + forgetting.IDS_KEPT + after, MANY)
    found = [settings.get(store, name) is not None for name in ("refused:77", "refused:-77", "pruned_on")]
    assert found == [known, True, True]


def test_what_waits_is_kept_however_old(store: Store) -> None:
    inbox.receive(store, 5, {"text": "not read yet"}, NOW)
    waits = mail.post(store, Letter(7, {"text": "not out yet"}), NOW)
    for years in range(1, 4):
        assert not forgetting.step(store, NOW + timedelta(days=365 * years), 1)
    assert inbox.unhandled(store) == [(5, {"text": "not read yet"})]
    assert [one.id for one in mail.waiting(store, NOW)] == [waits]


def test_a_letter_tried_again_for_long_counts_from_when_it_was_given_up(store: Store) -> None:
    letter = mail.post(store, Letter(7, {"text": "tried"}), NOW)
    mail.later(store, letter, NOW + timedelta(days=1))
    mail.drop(store, letter, "refused")
    forgetting.step(store, NOW + timedelta(days=1) + forgetting.BODIES_KEPT, MANY)
    assert bodies(store, "outbox") != [None]
    forgetting.step(store, NOW + timedelta(days=1) + forgetting.BODIES_KEPT + A_MOMENT, MANY)
    assert bodies(store, "outbox") == [None]


def several(store: Store, number: int) -> None:
    for update in range(number):
        at = NOW + timedelta(seconds=update)
        inbox.receive(store, 900 - update, {"text": "x"}, at)
        inbox.handled(store, 900 - update, at)
        mail.sent(store, mail.post(store, Letter(7, {"text": "x"}), at), update, at)


def test_a_step_takes_the_oldest_rows_and_no_more_than_it_may(store: Store) -> None:
    several(store, 5)
    later = NOW + forgetting.BODIES_KEPT + timedelta(hours=1)
    assert forgetting.step(store, later, 2)
    assert [body is None for body in bodies(store, "inbox")] == [False, False, False, True, True]
    assert [body is None for body in bodies(store, "outbox")] == [True, True, False, False, False]
    assert forgetting.step(store, later, 2)
    assert not forgetting.step(store, later, 2)
    assert left(store)[0] == 0


def test_rows_that_were_never_looked_after_for_a_month_go_in_steps_too(store: Store) -> None:
    several(store, 5)
    steps = 1
    while forgetting.step(store, NOW + forgetting.IDS_KEPT + timedelta(hours=1), 2):
        steps += 1
    assert left(store) == (0, 0, 0)
    assert steps == 3
