"""Films: a client's goes to the coach with its movement, one cue comes back, the coach's own is shown before."""

from dataclasses import replace

import pytest

from bot.engine.training import clips_asked
from bot.local.messages import Kind
from conversations.words import clips as words
from conversations.words import engine as engine_words
from core.facts import PlanEnded, PlanGiven
from core.plan_text import plan_to_text
from core.plans import Plan, Region
from core.store import facts
from tests.practice import CLIENT, COACH, SQUAT, START, Practice


def films(practice: Practice, number: int, caption: str = "") -> None:
    """Somebody sends a film."""
    practice.stage.phones[number].sends("video", b"film", caption)
    practice.settle()


def to_the_fit(practice: Practice) -> None:
    """Into the session as far as the question for the bands."""
    practice.types(CLIENT, "start")
    practice.taps(CLIENT, "No")
    for _ in range(12):
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        if "Bands are on" in labels:
            return
        wanted = ("No", "0", "Off in under 10 seconds", "Heard it", "Done")
        practice.taps(CLIENT, next(label for label in wanted if label in labels))


def test_a_film_before_the_bands_goes_to_the_coach_and_the_cue_comes_back(practice: Practice) -> None:
    to_the_fit(practice)
    films(practice, CLIENT)
    assert practice.newest(COACH).kind is Kind.VIDEO
    assert "Ruta sent a clip: goblet squat" in practice.newest(COACH).text
    practice.taps(COACH, "Give one cue")
    practice.types(COACH, "Elbows between the knees.")
    assert "on your goblet squat: Elbows between the knees." in practice.newest(CLIENT).text
    practice.types(CLIENT, "stop")
    practice.taps(COACH, "Clear to train")
    practice.later(hours=40)
    practice.types(CLIENT, "cancel")
    practice.in_a_set()
    assert "Elbows between the knees." in practice.newest(CLIENT).text


def test_many_words_under_a_film_do_not_keep_it_from_the_coach(practice: Practice) -> None:
    films(practice, CLIENT, "slow " * 204)
    heard = practice.messages(COACH)[-2:]
    assert heard[-1].kind is Kind.VIDEO
    assert sum(one.text.count("slow") for one in heard) == 204


@pytest.mark.parametrize("kind", ["video_note", "animation"])
@pytest.mark.parametrize("number", [CLIENT, COACH])
def test_a_film_that_cannot_be_passed_on_is_asked_for_as_a_video(
    practice: Practice, kind: str, number: int
) -> None:
    """A file may not change what it is when it is sent on: https://core.telegram.org/bots/api#sending-files"""
    to_the_fit(practice)
    sender = {"id": number, "is_bot": False, "first_name": "N"}
    chat = {"id": number, "type": "private"}
    message = {"message_id": 1, "date": int(START.timestamp()), "from": sender, "chat": chat}
    before = len(practice.heard(COACH))
    practice.stage.engine.receive([(10**12, {"message": message | {kind: {"file_id": "x"}}})])
    practice.settle()
    assert "send it as a video" in practice.newest(number).text
    assert len(practice.heard(COACH)) == before + (number == COACH)


def test_with_bands_on_a_film_is_asked_for_once_they_are_off(practice: Practice) -> None:
    practice.in_a_set()
    before = len(practice.heard(COACH))
    films(practice, CLIENT)
    assert len(practice.heard(COACH)) == before
    assert practice.newest(CLIENT).text == words.BANDS_FIRST
    practice.taps(CLIENT, "Set done")
    practice.types(CLIENT, "31")
    assert practice.sets() == {1: 31}


def test_a_film_sent_as_a_file_reaches_the_coach_as_one(practice: Practice) -> None:
    """The local server, like the real one, sends no document on as a video."""
    practice.stage.phones[CLIENT].sends("document", b"film", "slow enough?", "squat.mp4")
    practice.settle()
    assert practice.newest(COACH).kind is Kind.DOCUMENT
    assert practice.newest(COACH).document == b"film"
    assert practice.newest(COACH).text == "Ruta sent a clip.\nslow enough?"


def test_the_coach_s_film_as_a_file_is_shown_before_its_movement(practice: Practice) -> None:
    practice.stage.phones[COACH].sends("document", b"film", "goblet squat", "squat.mp4")
    practice.settle()
    to_the_fit(practice)
    shown = [message for message in practice.stage.phones[CLIENT].history if message.document == b"film"]
    assert [message.text.partition("\n")[0][:12] for message in shown] == ["Goblet squat"]


def test_any_other_file_is_no_film(practice: Practice) -> None:
    practice.stage.phones[CLIENT].sends("document", b"%PDF", "", "letter.pdf")
    practice.settle()
    assert practice.newest(CLIENT).text == engine_words.IDLE_MEDIA["file"]


def test_the_coach_s_film_is_shown_before_its_movement(practice: Practice) -> None:
    films(practice, COACH, "my goblet squat")
    assert "before the goblet squat" in practice.newest(COACH).text
    to_the_fit(practice)
    shown = [message for message in practice.stage.phones[CLIENT].history if message.kind is Kind.VIDEO]
    assert len(shown) == 1
    assert shown[0].text.startswith("Goblet squat")


def test_a_coach_s_film_without_a_name_is_asked_about(practice: Practice) -> None:
    films(practice, COACH)
    assert "Which movement is this?" in practice.newest(COACH).text


def test_a_cue_waits_until_the_bands_are_off(practice: Practice) -> None:
    to_the_fit(practice)
    films(practice, CLIENT)
    for label in ("Bands are on", "6", "Under 2 seconds", "Under 2 seconds", "Fine"):
        practice.taps(CLIENT, label)
    practice.taps(COACH, "Give one cue")
    practice.types(COACH, "Knees out.")
    assert not any("Knees out." in text for text in practice.heard(CLIENT))
    assert "after the session" in practice.newest(COACH).text
    practice.types(CLIENT, "stop")
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=20)
    assert any("on your goblet squat: Knees out." in text for text in practice.heard(CLIENT))


def test_a_film_in_the_coachs_night_makes_no_sound(practice: Practice) -> None:
    practice.stage.clock.skip_to(START.replace(hour=22))
    to_the_fit(practice)
    films(practice, CLIENT)
    assert practice.newest(COACH).kind is Kind.VIDEO
    assert practice.newest(COACH).quiet


def test_a_coach_asks_for_a_film_and_gets_it_with_its_movement(practice: Practice) -> None:
    practice.types(COACH, "ruta")
    practice.taps(COACH, words.ASK_FOR_FILM)
    assert practice.newest(CLIENT).text.startswith("Coach would like to see your goblet squat.")
    to_the_fit(practice)
    assert any(text.endswith(words.FILM_NOW) for text in practice.heard(CLIENT))
    films(practice, CLIENT)
    assert "Ruta sent a clip: goblet squat" in practice.newest(COACH).text
    assert clips_asked.asked(practice.stage.engine, practice.client) == ()


def test_a_film_that_was_asked_for_may_come_before_any_session(practice: Practice) -> None:
    practice.types(COACH, "film ruta")
    films(practice, CLIENT)
    assert "Ruta sent a clip: goblet squat" in practice.newest(COACH).text
    practice.taps(COACH, "Give one cue")
    practice.types(COACH, "Slower.")
    assert "on your goblet squat: Slower." in practice.newest(CLIENT).text
    films(practice, CLIENT)
    assert practice.newest(COACH).text == "Ruta sent a clip."


def test_in_a_session_the_wish_for_a_film_waits(practice: Practice) -> None:
    practice.in_a_set()
    heard = practice.heard(CLIENT)
    practice.types(COACH, "film ruta")
    practice.later(seconds=1)
    assert practice.heard(CLIENT) == heard


def test_of_several_movements_the_coach_is_asked_which(practice: Practice) -> None:
    store = practice.stage.engine.store
    curl = replace(SQUAT, movement="curl", region=Region.ARMS)
    with store.transaction():
        facts.put(
            store, practice.client, PlanGiven(START, plan_to_text(Plan("two", (SQUAT, curl))), 1), START
        )
    practice.types(COACH, "film ruta")
    practice.taps(COACH, "Curl")
    assert practice.newest(CLIENT).text.startswith("Coach would like to see your curl.")


def test_without_a_plan_there_is_nothing_to_film(practice: Practice) -> None:
    store = practice.stage.engine.store
    with store.transaction():
        facts.put(store, practice.client, PlanEnded(START, 1), START)
    practice.types(COACH, "film ruta")
    assert practice.newest(COACH).text.startswith("Ruta has no plan now")
