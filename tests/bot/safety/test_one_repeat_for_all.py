"""Two causes of one client: two alerts with their own clocks, and one row of repeats that speaks for both."""

from datetime import datetime, timedelta

import pytest

from core.facts import CoachDid
from core.safety.causes import Cause
from core.safety.escalation import next_round
from core.store import duties, facts
from tests.practice import CLIENT, COACH, SECOND, Practice


def two_causes(practice: Practice, gap_min: float) -> None:
    """Numb, and `gap_min` minutes later the chest."""
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Bands are off")
    practice.taps(CLIENT, "Better")
    practice.later(minutes=gap_min)
    practice.types(CLIENT, "my chest hurts")
    practice.taps(CLIENT, "Better")


def rows(practice: Practice, who: int) -> list[str]:
    """The first lines of alerts that somebody got."""
    return [text.splitlines()[0] for text in practice.heard(who) if text.startswith("Ruta: ")]


def open_now(practice: Practice) -> dict[Cause, duties.OpenAlert]:
    found = duties.open_alerts(practice.stage.engine.store, practice.client)
    return {one.cause: one for one in found if one.tier == "now"}


# 35 to 36 messages before, with 11 sendings of each alert and those of its questions; now those of one.
@pytest.mark.parametrize("gap_min", [1, 4, 10, 20])
def test_a_day_without_an_answer_is_one_row_of_repeats(practice: Practice, gap_min: float) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=gap_min)
    practice.types(CLIENT, "my chest hurts")
    practice.later(days=1)
    assert len(rows(practice, COACH)) <= 18
    assert any(line.startswith("Ruta: emergency words; tingling or numb") for line in rows(practice, SECOND))


@pytest.mark.parametrize("gap_min", [0.5, 1, 4, 6, 14, 20, 29])
def test_no_alert_goes_out_later_or_to_fewer_than_by_its_own_clock(
    practice: Practice, gap_min: float
) -> None:
    two_causes(practice, gap_min)
    sent: dict[Cause, list[datetime]] = {cause: [] for cause in (Cause.NERVE, Cause.EMERGENCY)}
    for _ in range(600):
        before = {cause: one.calls for cause, one in open_now(practice).items()}
        practice.later(minutes=1)
        for cause, one in open_now(practice).items():
            if cause in sent and one.calls > before.get(cause, one.calls):
                sent[cause].append(practice.stage.clock.now())
    for cause, alert in open_now(practice).items():
        if cause not in sent:
            continue
        missed = alert.calls - len(sent[cause])
        for number, at in enumerate(sent[cause], start=missed):
            due = next_round(cause, alert.raised_at, number)
            assert due is not None
            assert at <= due.at + timedelta(minutes=1, seconds=5)
    assert sum("could not be reached" in text for text in practice.heard(CLIENT)) == 1
    assert len([line for line in rows(practice, SECOND) if "emergency words" in line]) >= 6


def test_on_it_takes_all_that_the_message_names_and_each_is_closed_by_itself(practice: Practice) -> None:
    two_causes(practice, 1)
    practice.later(minutes=6)
    practice.taps(COACH, "I am on it")
    assert all(one.taken_by is not None for one in open_now(practice).values())
    store = practice.stage.engine.store
    did = [one.note for one in facts.current(store, CoachDid, practice.client, action="alert_take")]
    assert sorted(did) == ["emergency", "nerve"]
    labels = [label for row in practice.newest(COACH).buttons for label, _ in row]
    assert sorted(labels) == ["Clear: emergency words", "Clear: tingling or numb", "Hold"]
    practice.taps(COACH, "Clear: tingling or numb")
    assert list(open_now(practice)) == [Cause.EMERGENCY]


def test_on_it_under_an_older_message_leaves_what_came_after_it(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    first = practice.newest(COACH)
    practice.types(CLIENT, "my chest hurts")
    practice.stage.phones[COACH].taps(first.id, "I am on it")
    practice.settle()
    taken = {cause: one.taken_by is not None for cause, one in open_now(practice).items()}
    assert taken == {Cause.NERVE: True, Cause.EMERGENCY: False}
    practice.later(minutes=6)
    assert any("emergency words" in line and "(2)" in line for line in rows(practice, SECOND))


def test_on_it_typed_takes_all_of_the_one_client(practice: Practice) -> None:
    two_causes(practice, 1)
    practice.types(COACH, "on it")
    assert all(one.taken_by is not None for one in open_now(practice).values())
