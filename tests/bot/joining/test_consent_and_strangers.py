"""No dead ends at the door: a no can be changed, a code is found in any wording, a red flag is always answered."""

import pytest

from bot.engine.joining.strangers import codes, meant_as_code
from core.facts import Agreed, Cleared, ScreeningDone
from core.store import facts, threads
from tests.bot.coach_room import COACH, RUTA, Room

NEW = 2009
CODE = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@pytest.fixture
def room() -> Room:
    return Room()


def invited(room: Room, number: int = NEW) -> str:
    """The code for a client called Nora, whose phone is there."""
    room.stage.add(number, "Nora", lambda message, now: None)
    room.types(COACH, "invite")
    room.types(COACH, "Nora")
    text = next(message.text for message in reversed(room.messages(COACH)) if "type " in message.text)
    return text.split("type ")[1].split(".")[0]


def heard(room: Room, number: int) -> list[str]:
    return [message.text for message in room.messages(number)]


def came_in(room: Room, number: int = NEW) -> bool:
    return any("Do you agree" in text for text in heard(room, number))


# --- consent ---
def test_a_no_is_told_to_the_coach_and_can_be_changed(room: Room) -> None:
    code = invited(room)
    room.types(NEW, code)
    room.taps(NEW, "No")
    room.later(minutes=1)
    assert any("Nora said no to keeping their answers" in text for text in heard(room, COACH))
    room.types(NEW, "hello?")
    assert room.says(NEW).startswith("You said no to keeping your answers, so we stop here.")
    assert room.labels(NEW) == ["I agree after all"]
    room.taps(NEW, "I agree after all")
    assert room.says(NEW) == "Do you agree to that?"
    room.types(NEW, "yes")
    room.types(NEW, "44")
    assert facts.latest(room.store, Agreed, room.person(NEW).id) is not None


@pytest.mark.parametrize("typed", ["I agree after all", "i agree."])
def test_agreeing_after_all_can_be_typed(room: Room, typed: str) -> None:
    room.types(NEW, invited(room))
    room.taps(NEW, "No")
    room.types(NEW, typed)
    assert room.says(NEW) == "Do you agree to that?"


def test_an_old_yes_and_the_old_code_lead_back_after_a_no(room: Room) -> None:
    code = invited(room)
    room.types(NEW, code)
    room.taps(NEW, "No")
    room.taps(NEW, "Yes")
    assert room.labels(NEW) == ["I agree after all"]
    room.types(NEW, f"/start {code}")
    assert room.labels(NEW) == ["I agree after all"]


def test_a_red_flag_without_consent_is_still_acted_on(room: Room) -> None:
    room.types(NEW, invited(room))
    room.taps(NEW, "No")
    room.types(NEW, "my chest hurts")
    assert any("Call" in text for text in heard(room, NEW)[-2:])


def test_the_first_questions_left_with_cancel_go_on_with_the_next_words(room: Room) -> None:
    room.types(NEW, invited(room))
    room.types(NEW, "cancel")
    room.types(NEW, "hello")
    room.taps(NEW, "Go on")
    assert room.says(NEW) == "Do you agree to that?"


def test_a_guardian_who_comes_later_goes_on(room: Room) -> None:
    room.types(NEW, invited(room))
    for word in ("yes", "15", "no"):
        room.types(NEW, word)
    room.later(minutes=1)
    assert any("waits for a parent or guardian" in text for text in heard(room, COACH))
    room.types(NEW, "we are back")
    room.taps(NEW, "They are here")
    assert room.says(NEW) == "Do you agree to that?"


def test_consent_taken_back_ends_training_and_tells_the_coach(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.in_a_set(RUTA)
    room.types(RUTA, "I take back my consent")
    assert any("ands off now" in text for text in heard(room, RUTA)[-3:])
    room.taps(RUTA, "Bands are off")
    room.types(RUTA, "start")
    assert room.labels(RUTA) == ["I agree after all"]
    room.later(hours=14)
    assert any("Ruta took back their yes" in text for text in heard(room, COACH))


# --- strangers ---
@pytest.mark.parametrize(
    "wording",
    [
        "{code}",
        "my code is {code}",
        "/start {code}",
        "Hi! {lower}.",
        "{groups}",
        "my code is {groups}, thanks",
        "{dashes}",
        "is {groups}",
    ],
)
def test_a_right_code_is_found_in_any_wording(room: Room, wording: str) -> None:
    code = invited(room)
    pieces = [code[at : at + 4] for at in range(0, len(code), 4)]
    room.types(NEW, "let me in")
    room.types(
        NEW, wording.format(code=code, lower=code.lower(), groups=" ".join(pieces), dashes="-".join(pieces))
    )
    assert came_in(room)


def test_a_zero_for_an_o_and_a_one_for_an_i_do_no_harm() -> None:
    assert list(codes("ABCDEFGH1JKLMN0PQRSTUVWXYZ")) == [CODE]


@pytest.mark.parametrize("text", ["", "hello there", "9" * 26, CODE[:-1], CODE + "A"])
def test_what_is_no_code_gives_none(text: str) -> None:
    assert list(codes(text)) == []


@pytest.mark.parametrize(
    ("text", "count"),
    [
        (CODE, 26),
        (CODE[:-1], 25),
        ("ABC234", 6),
        ("hello there, may I come in please", 0),
        ("AB12 CD34 EF56 GH7", 15),
    ],
)
def test_what_is_meant_as_a_code_is_told_from_words(text: str, count: int) -> None:
    assert meant_as_code(text) == count


def test_a_wrong_code_is_answered_every_time(room: Room) -> None:
    room.stage.add(NEW, "Nora", lambda message, now: None)
    room.types(NEW, "hello")
    for _ in range(3):
        room.types(NEW, CODE)
    assert sum("doesn't work" in text for text in heard(room, NEW)) == 3


def test_a_stranger_who_wrote_too_much_is_still_answered_when_unwell(room: Room) -> None:
    room.stage.add(NEW, "Nora", lambda message, now: None)
    for _ in range(30):
        room.types(NEW, CODE)
    room.types(NEW, "my chest hurts")
    assert "nobody reads this chat" in room.says(NEW)


def test_a_code_that_is_cut_off_is_told_so(room: Room) -> None:
    code = invited(room)
    room.types(NEW, code[:-1])
    assert "I count 25" in room.says(NEW)


def test_a_stranger_with_a_red_flag_is_answered_every_time(room: Room) -> None:
    room.stage.add(NEW, "Nora", lambda message, now: None)
    room.types(NEW, "hello")
    for text in ("my chest hurts", "chest pain"):
        room.types(NEW, text)
        assert "nobody reads this chat" in room.says(NEW)
    assert sum("nobody reads this chat" in text for text in heard(room, NEW)) == 2


# --- waiting, declined ---
def screened(room: Room, tier: str, decision: str = "") -> None:
    """Ruta's answers are in; what the coach decided."""
    client = room.client(RUTA, "Ruta", plan=None, cleared="")
    room.put(client, ScreeningDone(room.now, "1", tier, "", ""))
    if decision:
        room.put(client, Cleared(room.now, "1", decision, "", room.person(COACH).id))


@pytest.mark.parametrize("typed", ["is it done?", "start"])
def test_who_waits_hears_so_and_is_not_offered_a_session(room: Room, typed: str) -> None:
    screened(room, "coach_looks")
    room.types(RUTA, typed)
    assert "Your coach has your answers" in room.says(RUTA)
    assert "Start a session" not in room.labels(RUTA)


@pytest.mark.parametrize(
    ("tier", "decision", "truth"),
    [
        ("coach_looks", "declined", "bands are not for you now, so there is no session to start"),
        ("do_not_start", "", "Going by your answers, bands are not for you now"),
        ("coach_looks", "held", "on hold"),
    ],
)
def test_who_may_not_train_hears_the_truth(room: Room, tier: str, decision: str, truth: str) -> None:
    screened(room, tier, decision)
    room.types(RUTA, "start")
    assert truth in room.says(RUTA)
    assert "cleared" not in room.says(RUTA)


def test_who_never_finished_the_health_questions_is_asked_them_at_start(room: Room) -> None:
    room.client(RUTA, "Ruta", plan=None, cleared="")
    room.types(RUTA, "start")
    first = room.says(RUTA)
    room.types(RUTA, "start")
    assert room.says(RUTA) == first
    assert len(threads.live(room.store, room.person(RUTA).id)) == 1


def test_a_picture_without_consent_gets_the_way_back(room: Room) -> None:
    room.types(NEW, invited(room))
    room.taps(NEW, "No")
    room.stage.phones[NEW].sends("photo", b"x")
    room.settle()
    assert room.labels(NEW) == ["I agree after all"]


def test_a_coach_who_types_such_words_is_no_client(room: Room) -> None:
    room.types(COACH, "I no longer agree")
    assert "erases" not in room.says(COACH)


def test_the_coachs_list_says_declined(room: Room) -> None:
    screened(room, "coach_looks", "declined")
    room.types(COACH, "clients")
    assert "Ruta: declined" in room.says(COACH)
