"""Several coaches: own clients only, handed over for good or to a stand-in for dates, and everybody at once."""

from collections.abc import Iterator

import pytest

from bot.engine import gate
from core.access import Action, Actor
from core.facts import BandsOn, SetDone
from core.safety.causes import Cause
from core.store import duties, facts, people, threads
from core.store.threads import Button
from tests.bot.coach_room import COACH, MILO, RUTA, SECOND, THIRD, Room


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    yield made
    made.stage.close()


def alert(room: Room, number: int, text: str = "my foot is numb") -> None:
    """A client says something that must reach a human."""
    room.types(number, text)


# --- nobody sees another's client ------------------------------------------------------------------------
def test_each_coach_lists_and_finds_only_their_own(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.client(MILO, "Milo", coach=SECOND)
    for coach, mine, other in ((COACH, "Ruta", "Milo"), (SECOND, "Milo", "Ruta")):
        for typed in ("clients", "week"):
            room.types(coach, typed)
            assert other not in room.says(coach)
        room.types(coach, f"client {other}")
        assert "I don't find" in room.says(coach)
        room.types(coach, f"to {other}: hello")
        assert "don't find" in room.says(coach)
        room.types(coach, mine)
        assert room.says(coach).startswith(mine)


@pytest.mark.parametrize(
    "what",
    ["client", "log", "the_plan", "more", "clearing", "planning", "message", "pause", "resume", "finish", "finish_yes", "again",
     "next_loads", "handover", "load_use", "load_keep", "give", "plan_back"],
)  # fmt: skip
def test_no_button_about_anothers_client_does_anything(room: Room, what: str) -> None:
    client = room.client(RUTA, "Ruta")
    third = room.person(THIRD)
    with room.store.transaction():
        value = f"menu:{what}:{client}/goblet_squat/12 kg"
        [token] = threads.add_buttons(room.store, [Button(third.id, None, None, value)], room.now)
    room.stage.engine.receive(
        [
            (
                999_000,
                {"callback_query": {"id": "1", "from": {"id": THIRD, "first_name": "Kai"}, "data": token}},
            )
        ]
    )
    room.settle()
    assert room.says(THIRD) == "That button isn't for this chat."
    assert threads.live(room.store, third.id) == []


def test_a_second_contact_may_take_an_alert_and_see_nothing_else(room: Room) -> None:
    room.client(RUTA, "Ruta")
    client, engine = room.person(RUTA), room.stage.engine
    second, third = room.person(SECOND), room.person(THIRD)
    assert gate.actor(engine, second, client) is Actor.SECOND_CONTACT
    assert gate.actor(engine, third, client) is Actor.OTHER_COACH
    assert [a for a in Action if gate.allows(engine, second, a, client)] == [Action.TAKE_ALERT]


def test_an_old_button_about_a_client_who_left_is_answered_kindly(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    with room.store.transaction():
        room.store.execute("UPDATE person SET role = 'left' WHERE id = ?", [client])
    room.taps(COACH, "More")
    assert room.says(COACH) == "That client is not here any more."


# --- handing over ----------------------------------------------------------------------------------------
def test_a_client_handed_over_is_the_other_coachs_from_then_on(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    room.taps(COACH, "More")
    room.taps(COACH, "Hand over")
    assert room.labels(COACH) == ["Otto", "Kai", "Back to Ruta"]
    room.taps(COACH, "Kai")
    assert "Vera hands Ruta over to you" in room.says(THIRD)
    assert "From now on Kai is your coach" in room.says(RUTA)
    room.taps(THIRD, "Open the card")
    assert room.says(THIRD).startswith("Ruta")
    room.types(COACH, "client ruta")
    assert "I don't find" in room.says(COACH)
    room.taps(COACH, "More")  # the old card
    assert room.says(COACH) == "That button isn't for this chat."
    heard = len(room.messages(COACH))
    alert(room, RUTA)
    assert "my foot is numb" in room.says(THIRD)
    assert len(room.messages(COACH)) == heard
    room.types(THIRD, "ruta")
    room.taps(THIRD, "More")
    room.taps(THIRD, "Log")
    assert "Vera: handed over: Kai" in room.says(THIRD)


def test_what_a_coach_had_begun_about_a_client_ends_with_the_handing_over(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    room.taps(COACH, "Pause")
    with room.store.transaction():
        people.hand_over(room.store, client, room.person(SECOND).id)
    room.taps(COACH, "One week")
    assert "no longer yours" in room.says(COACH)
    assert duties.next_talk(room.store, client, "pause_over") is None


# --- a stand-in ------------------------------------------------------------------------------------------
def away(room: Room, days: str = "from 5 march to 11 march") -> None:
    room.types(COACH, "stand-in")
    assert room.labels(COACH) == ["Otto", "Kai"]
    room.taps(COACH, "Kai")
    room.types(COACH, days)


def test_a_stand_in_sees_and_gets_alerts_in_that_time_only(room: Room) -> None:
    room.client(RUTA, "Ruta")
    away(room)
    assert "You stand in for Vera from Thursday 5 March to Wednesday 11 March" in room.says(THIRD)
    room.types(THIRD, "client ruta")
    assert "I don't find" in room.says(THIRD)  # not yet
    room.later(days=3)
    room.taps(THIRD, "My clients")
    assert "Ruta" in room.says(THIRD)
    room.types(THIRD, "ruta")
    assert "Vera is away; you stand in." in room.says(THIRD)
    room.taps(THIRD, "More")
    assert "Hand over" not in room.labels(THIRD)
    heard = len(room.messages(COACH))
    alert(room, RUTA)
    assert "my foot is numb" in room.says(THIRD)
    assert len(room.messages(COACH)) == heard
    room.later(minutes=6)  # nobody answered: the coach who is away is the second contact
    assert "my foot is numb" in room.says(COACH)
    room.taps(THIRD, "I am on it")
    room.later(days=7)
    assert any("Vera is back" in message.text for message in room.messages(THIRD))
    assert any("Your clients are with you again" in message.text for message in room.messages(COACH))
    room.types(THIRD, "client ruta")
    assert "I don't find" in room.says(THIRD)


def test_the_coach_is_back_before_the_last_day(room: Room) -> None:
    room.client(RUTA, "Ruta")
    away(room, "two weeks")
    room.types(THIRD, "ruta")
    assert "you stand in" in room.says(THIRD)
    room.later(days=1)
    room.types(COACH, "stand-in")
    assert "Kai stands in for you from" in room.says(COACH)
    room.taps(COACH, "I am back")
    assert "Vera is back" in room.says(THIRD)
    room.types(THIRD, "client ruta")
    assert "I don't find" in room.says(THIRD)
    room.later(days=20)
    assert sum("Vera is back" in message.text for message in room.messages(THIRD)) == 1


def test_words_of_a_client_reach_who_looks_after_them(room: Room) -> None:
    room.client(RUTA, "Ruta")
    away(room, "one week")
    room.types(RUTA, "coach my knee is fine again")
    assert "Ruta: my knee is fine again" in room.says(THIRD)


def test_a_lone_coach_cannot_hand_over_nor_have_a_stand_in() -> None:
    room = Room((COACH,))
    room.client(RUTA, "Ruta")
    room.types(COACH, "stand-in")
    assert "no other coach" in room.says(COACH)
    room.types(COACH, "ruta")
    room.taps(COACH, "More")
    assert "Hand over" not in room.labels(COACH)
    room.stage.close()


# --- all at once -----------------------------------------------------------------------------------------
def test_two_coaches_and_two_clients_answering_at_once_do_not_mix(room: Room) -> None:
    ruta, milo = room.client(RUTA, "Ruta"), room.client(MILO, "Milo", coach=SECOND)
    room.in_a_set(RUTA)
    room.in_a_set(MILO)
    room.types(COACH, "ruta")
    room.types(SECOND, "milo")
    room.taps(COACH, "Pause")
    room.taps(SECOND, "Message")
    phones = room.stage.phones
    phones[RUTA].types("31")  # all four before the bot hears any of them
    phones[MILO].types("28")
    phones[COACH].types("one week")
    phones[SECOND].types("looking good")
    phones[RUTA].types("no, 32")
    room.settle()
    for client, reps in ((ruta, 32), (milo, 28)):
        assert [one.reps for one in facts.current(room.store, SetDone, client)] == [reps]
        assert len(facts.current(room.store, BandsOn, client)) == 1
    assert "Why?" in room.says(COACH)
    assert "it goes out when the bands are off" in room.says(SECOND)
    assert not any("looking good" in message.text for message in room.messages(MILO))
    assert not any("looking good" in message.text for message in room.messages(RUTA))


def test_an_alert_that_both_coaches_take_at_once_is_taken_and_repeats_end(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    alert(room, RUTA)
    room.later(minutes=6)
    assert "my foot is numb" in room.says(SECOND)
    phones = room.stage.phones
    for coach in (COACH, SECOND):
        newest = room.newest(coach)
        phones[coach].taps(newest.id, "I am on it")
    room.settle()
    [known] = duties.open_alerts(room.store, client)
    assert known.cause is Cause.NERVE
    assert known.taken_by in (room.person(COACH).id, room.person(SECOND).id)
    heard = [len(room.messages(coach)) for coach in (COACH, SECOND)]
    room.later(minutes=5)
    room.types(RUTA, "no")  # to "still numb?"
    room.later(hours=4)
    assert [len(room.messages(coach)) for coach in (COACH, SECOND)] == heard


@pytest.mark.parametrize("said", ["I am back", "i'm back"])
def test_a_coach_who_writes_that_they_are_back_has_their_clients_again(room: Room, said: str) -> None:
    room.client(RUTA, "Ruta")
    away(room, "two weeks")
    room.types(COACH, said)
    assert "Your clients are with you again" in room.says(COACH)
    assert "Vera is back" in room.says(THIRD)
