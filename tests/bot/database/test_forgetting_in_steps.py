"""Old letters are forgotten once a day, a few at a time, and whoever writes meanwhile comes first."""

from datetime import timedelta

import pytest

from bot.engine import Engine
from bot.engine import core as engine_core
from core.store import inbox, mail
from core.store.mail import Letter
from tests.practice import CLIENT, START, Practice

OLD = 7  # letters, forgotten two at a time


@pytest.fixture
def engine(practice: Practice, monkeypatch: pytest.MonkeyPatch) -> Engine:
    """With letters in and out of a month ago."""
    practice.settle()  # today's forgetting is done
    monkeypatch.setattr(engine_core, "FORGOTTEN_AT_ONCE", 2)
    made, before = practice.stage.engine, START - timedelta(days=20)
    for number in range(OLD):
        inbox.receive(made.store, number, {"text": "x"}, before)
        inbox.handled(made.store, number, before)
        mail.sent(made.store, mail.post(made.store, Letter(7, {"text": "x"}), before), number, before)
    practice.stage.clock.skip_to(START + timedelta(days=1))
    while inbox.unhandled(made.store) or _is_due(made):
        made.work()
    return made


def _is_due(engine: Engine) -> bool:
    soonest = engine_core.duties.next_due(engine.store)
    return soonest is not None and soonest <= engine.clock()


def said(engine: Engine) -> int:
    """Old letters, in and out, whose words are still there."""
    row = engine.store.row(
        "SELECT (SELECT count(*) FROM inbox WHERE update_id < ? AND body IS NOT NULL)"
        " + (SELECT count(*) FROM outbox WHERE chat = 7 AND body IS NOT NULL) AS n",
        [OLD],
    )
    assert row is not None
    count: int = row["n"]
    return count


def test_each_look_forgets_a_few_until_all_are_and_then_not_before_the_next_day(engine: Engine) -> None:
    found = [said(engine)]
    while engine.work():
        found.append(said(engine))
    assert (found, said(engine)) == ([14, 10, 6, 2], 0)
    mail.sent(engine.store, mail.post(engine.store, Letter(7, {}), START), 1, START - timedelta(days=20))
    assert not engine.work()
    assert said(engine) == 1


def test_whoever_writes_meanwhile_is_answered_before_the_next_step(
    engine: Engine, practice: Practice
) -> None:
    assert engine.work()
    before = said(engine)
    message = {"message_id": 1, "date": 0, "text": "hello", "chat": {"id": CLIENT, "type": "private"}}
    sender = {"id": CLIENT, "is_bot": False, "first_name": "Ruta"}
    engine.receive([(10**6, {"update_id": 10**6, "message": message | {"from": sender}})])
    assert engine.work()
    assert inbox.unhandled(engine.store) == []
    assert said(engine) == before


def test_killed_between_two_steps_the_next_start_goes_on(engine: Engine) -> None:
    assert engine.work()
    begun = said(engine)
    again = Engine(engine.store, engine.config, engine.clock)
    assert 0 < begun < 2 * OLD
    while again.work():
        pass
    assert said(again) == 0
