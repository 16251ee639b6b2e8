"""Facts and tables say the same, nothing is overwritten, and a commit is all or nothing."""

from datetime import UTC, datetime, timedelta
from typing import Any, get_args

import pytest

from core.facts import CalendarChanged, Cleared, Fact, PlanEnded, PlanGiven, SetDone
from core.plans import Side
from core.store import facts, inbox, mail, people
from core.store.connection import Store
from core.store.mail import Letter
from core.store.people import Role
from core.store.times import moment, ms

NOW = datetime(2026, 3, 2, 18, 0, 0, 123000, tzinfo=UTC)


@pytest.fixture
def store() -> Store:
    made = Store(":memory:", synchronous="OFF")
    people.add(made, 2001, "Ruta", Role.CLIENT, "Europe/Lisbon", NOW)
    return made


def a_set(reps: int, set_no: int = 1) -> SetDone:
    return SetDone(NOW, "1-1", 1, "curl", set_no, Side.BOTH, "4 kg", reps, False, NOW, 30.0, 7, False)


@pytest.mark.parametrize("kind", get_args(Fact))
def test_the_columns_of_a_table_are_the_fields_of_its_fact(store: Store, kind: Any) -> None:
    columns = {column.name for column in store.utils[facts.table_of(kind)].columns}
    assert columns == {"id", "person", "noted_at", "message", "replaces", *facts.columns_of(kind)}


@pytest.mark.parametrize("kind", get_args(Fact))
def test_the_key_of_a_fact_names_its_fields(kind: Any) -> None:
    assert set(kind.key) <= set(facts.columns_of(kind))


def test_a_correction_is_one_more_row_and_readers_see_the_last(store: Store) -> None:
    for reps in (13, 31, 30):
        facts.put(store, 1, a_set(reps), NOW, 7)
    facts.put(store, 1, a_set(16, 2), NOW, 8)
    assert [one.reps for one in facts.current(store, SetDone, 1)] == [30, 16]
    assert store.rows("SELECT count(*) AS n FROM set_done")[0]["n"] == 4
    assert facts.by_message(store, SetDone, 1, 7) == [a_set(30)]
    assert facts.latest(store, SetDone, 1, set_no=2) == a_set(16, 2)


def test_times_keep_their_milliseconds_and_naive_ones_are_refused() -> None:
    assert moment(ms(NOW)) == NOW
    with pytest.raises(ValueError, match="zone"):
        ms(NOW.replace(tzinfo=None))


def fail_after_a_set(store: Store) -> None:
    with store.savepoint():
        facts.put(store, 1, a_set(16, 2), NOW)
        raise RuntimeError


def test_what_fails_inside_a_savepoint_is_undone_and_the_rest_stays(store: Store) -> None:
    with store.transaction():
        facts.put(store, 1, a_set(31), NOW)
        with pytest.raises(RuntimeError):
            fail_after_a_set(store)
    assert [one.set_no for one in facts.current(store, SetDone, 1)] == [1]


def test_the_same_update_is_kept_once(store: Store) -> None:
    assert inbox.receive(store, 5, {"a": 1}, NOW)
    assert not inbox.receive(store, 5, {"a": 2}, NOW)
    assert inbox.unhandled(store) == [(5, {"a": 1})]


def test_an_alert_overtakes_and_the_rest_keeps_its_order(store: Store) -> None:
    for text, priority in (("first", 2), ("second", 1), ("alert", 0)):
        mail.post(store, Letter(7, {"text": text}, priority=mail.Priority(priority)), NOW)
    order = []
    while waiting := mail.waiting(store, NOW):
        order.append(waiting[0].letter.body["text"])
        mail.sent(store, waiting[0].id, 1, NOW)
    assert order == ["alert", "first", "second"]


TAP = NOW.replace(microsecond=700_000)
TYPED = NOW.replace(microsecond=0)  # later in the same second


def test_a_decision_typed_in_the_second_of_a_tap_and_after_it_holds(store: Store) -> None:
    facts.put(store, 1, Cleared(TAP, "1", "cleared", "legs", 2), TAP)
    facts.put(store, 1, Cleared(TYPED, "1", "held", "", 2), TAP + timedelta(milliseconds=1))
    last = facts.latest(store, Cleared, 1)
    assert last is not None
    assert last.decision == "held"


@pytest.mark.parametrize(
    ("first", "then"),
    [
        (PlanGiven(TAP, "{}", 2), CalendarChanged(TYPED, "", 1, "yes")),
        (PlanEnded(TAP, 2), PlanGiven(TYPED, "{}", 2)),
        (CalendarChanged(TAP, "", 1, "yes"), PlanEnded(TAP, 2)),
    ],
)
def test_of_two_decisions_about_a_plan_the_one_noted_later_is_the_later_one(
    store: Store, first: Any, then: Any
) -> None:
    for fact in (first, then):
        facts.put(store, 1, fact, TAP)
    was, now = facts.latest(store, type(first), 1), facts.latest(store, type(then), 1)
    assert was is not None
    assert now is not None
    assert was.at < now.at


def test_a_decision_noted_before_keeps_its_time(store: Store) -> None:
    facts.put(store, 1, PlanEnded(TAP, 2), TAP)
    facts.put(store, 1, PlanGiven(TYPED, "{}", 2), TYPED)
    given = facts.latest(store, PlanGiven, 1)
    assert given is not None
    assert given.at == TYPED
