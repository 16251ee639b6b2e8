"""More buttons than the transport takes under one message go out under several, and each does what it says."""

import pytest

from bot.engine import letters
from bot.engine.letters import KEYBOARD_BYTES, MOST_BUTTONS, keyboards
from bot.engine.safety import alerts
from core.safety.causes import Cause
from core.store import duties, people
from core.store.people import Role
from tests.practice import COACH, START, Practice

TOKEN = "t" * 22
FEW = 5


@pytest.mark.parametrize(
    ("many", "label", "sizes"),
    [
        (0, "x", [0]),
        (MOST_BUTTONS, "x", [100]),
        (MOST_BUTTONS + 1, "x", [100, 1]),
        (2 * MOST_BUTTONS + 1, "x", [100, 100, 1]),
        (100, "x" * 33, [100]),
        (100, "x" * 34, [98, 2]),
        (100, "\u044f" * 40, [65, 35]),
        (2, "x" * KEYBOARD_BYTES, [1, 1]),
    ],
)
def test_as_few_keyboards_as_the_transport_takes(many: int, label: str, sizes: list[int]) -> None:
    rows = [(f"{label}", f"{TOKEN}{number}"[-22:]) for number in range(many)]
    made = keyboards(rows)
    assert [len(keyboard) for keyboard in made] == sizes
    assert [row for keyboard in made for row in keyboard] == rows


def test_a_coach_with_an_alert_of_everybody_is_asked_which_and_can_take_each(
    practice: Practice, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(letters, "MOST_BUTTONS", FEW)
    engine = practice.stage.engine
    coach = people.by_chat(engine.store, COACH)
    assert coach is not None
    with engine.store.transaction():
        for number in range(FEW + 2):
            client = people.add(
                engine.store, 3000 + number, f"Client {number}", Role.CLIENT, "UTC", START, coach.id
            )
            alerts.raise_alert(engine, client, Cause.NERVE, "my leg is numb", "Bands off.")
    before = len(practice.messages(COACH))
    practice.types(COACH, "call noted")
    asked = [one for one in practice.messages(COACH)[before:] if one.buttons]
    labels = [label for one in asked for row in one.buttons for label, _ in row]
    assert len({label for label in labels if label.startswith("Client ")}) == FEW + 2
    for number in (0, FEW + 1):
        practice.taps(COACH, next(label for label in labels if label.startswith(f"Client {number}:")))
    taken = [one for person in (3000, 3000 + FEW + 1) for one in open_of(practice, person)]
    assert all(one.taken_by == coach.id for one in taken)
    dropped = engine.store.rows("SELECT dropped FROM outbox WHERE dropped IS NOT NULL AND chat = ?", [COACH])
    assert dropped == []


def open_of(practice: Practice, number: int) -> list[duties.OpenAlert]:
    """The open alerts of a client."""
    client = people.by_chat(practice.stage.engine.store, number)
    assert client is not None
    return duties.open_alerts(practice.stage.engine.store, client.id)
