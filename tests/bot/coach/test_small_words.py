"""Words that only the whole practice shows: a plan given in mid-set, who types in an alert, tired muscles in the load."""

from bot.engine.training.history import history
from core.facts import Answered, Detail
from core.store import duties, facts
from tests.bot.coach_room import COACH, RUTA, SQUAT, Room


def test_a_plan_given_during_a_session_holds_from_the_next_one() -> None:
    room = Room()
    room.client(RUTA, "Ruta")
    room.in_a_set(RUTA)
    room.types(COACH, "Ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "New plan")
    for said in ("travel", "none", "send it"):
        room.types(COACH, said)
    plans = [message for message in room.messages(RUTA) if "travel" in message.text]
    assert [message.text.partition(":")[0] for message in plans] == ["From your next session on"]
    assert "Start a session" not in [label for row in plans[0].buttons for label, _ in row]


def test_an_alert_says_who_types() -> None:
    room = Room()
    client = room.client(RUTA, "Ruta")
    room.put(client, Detail(room.now, "company", "alone"))
    room.put(client, Detail(room.now, "helper", "Tomas"))
    room.types(RUTA, "my foot is numb")
    assert any("alone, Tomas types for them" in message.text for message in room.messages(COACH))


def test_an_alert_says_only_who_types_where_company_was_not_said() -> None:
    room = Room()
    client = room.client(RUTA, "Ruta")
    room.put(client, Detail(room.now, "helper", "Tomas"))
    room.types(RUTA, "my foot is numb")
    assert any(" · Tomas types for them\n" in message.text for message in room.messages(COACH))


def test_an_alert_says_when_nothing_is_known_of_company_and_the_helper_has_ended() -> None:
    room = Room()
    client = room.client(RUTA, "Ruta")
    room.put(client, Detail(room.now, "helper", "Tomas"))
    room.put(client, Detail(room.now, "helper", ""))
    room.types(RUTA, "my foot is numb")
    assert any(" · alone? not said\n" in message.text for message in room.messages(COACH))


def test_where_a_helper_types_she_is_the_client() -> None:
    """Without one, "my wife can't breathe" is about somebody else or about the client, so it is asked about."""
    room = Room()
    client = room.client(RUTA, "Ruta")
    room.types(RUTA, "my wife can't breathe")
    assert "Is something wrong right now?" in room.says(RUTA)
    room.taps(RUTA, "No, all fine")
    room.put(client, Detail(room.now, "helper", "Tomas"))
    room.types(RUTA, "she can't breathe")
    assert [one.cause.value for one in duties.open_alerts(room.store, client)] == ["emergency"]
    assert "she can't breathe" in room.says(COACH)


def test_a_session_after_hard_training_elsewhere_moves_no_load() -> None:
    room = Room()
    client = room.client(RUTA, "Ruta")
    room.trained(client, "s1", (45, 30, 20), room.now)
    assert [one.tired for one in history(room.stage.engine, client, SQUAT)] == [False]
    room.put(client, Answered(room.now, "s1", "before", "heavy", "yes"))
    assert [one.tired for one in history(room.stage.engine, client, SQUAT)] == [True]
    assert facts.latest(room.store, Answered, client, question="heavy") is not None
