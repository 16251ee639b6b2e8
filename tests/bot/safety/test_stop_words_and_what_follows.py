"""After a stop word: what the client hears, what is an answer to what, and when the coach is told."""

import pytest

from core.facts import BandsOff
from core.safety.causes import Cause
from core.store import duties, facts, threads
from tests.practice import CLIENT, COACH, Practice


def causes(practice: Practice) -> list[Cause]:
    return [one.cause for one in duties.open_alerts(practice.stage.engine.store, practice.client)]


def last_words(practice: Practice, count: int) -> str:
    return "\n".join(practice.heard(CLIENT)[-count:])


@pytest.fixture
def in_set(practice: Practice) -> Practice:
    practice.in_a_set()
    return practice


def test_unsure_words_in_a_set_and_a_minute_of_silence_are_bands_off_and_an_alert_now(
    in_set: Practice,
) -> None:
    in_set.types(CLIENT, "help")
    in_set.later(seconds=59)
    assert causes(in_set) == []
    in_set.later(seconds=2)
    assert causes(in_set) == [Cause.NO_WORD]
    assert in_set.newest(CLIENT).text.startswith("Bands off now")
    in_set.later(minutes=2)
    assert causes(in_set) == [Cause.NO_WORD, Cause.BANDS_ON]


def test_no_go_sounds_while_something_may_be_wrong(in_set: Practice) -> None:
    in_set.types(CLIENT, "31")
    in_set.types(CLIENT, "help")
    in_set.later(seconds=50)
    assert not any(text.startswith(("Go ·", "Quick look")) for text in in_set.heard(CLIENT))
    in_set.taps(CLIENT, "No, all fine")
    in_set.later(seconds=6)
    assert any(text.startswith(("Go ·", "Quick look")) for text in in_set.heard(CLIENT))


def test_a_second_cry_is_a_yes_and_ends_the_session(in_set: Practice) -> None:
    in_set.types(CLIENT, "help")
    in_set.types(CLIENT, "help me please")
    assert causes(in_set) == [Cause.SOMETHING_WRONG]
    assert threads.live_in(in_set.stage.engine.store, in_set.client, "session") is None
    assert in_set.newest(CLIENT).text.startswith("Bands off now")
    in_set.taps(CLIENT, "Bands are off")
    assert in_set.newest(CLIENT).text == "How is it now?"


@pytest.mark.parametrize(
    "words", ["The same or worse", "still numb", "same", "no", "no change", "not better", "not sure"]
)
def test_typed_words_to_how_is_it_now_weigh_as_much_as_the_button(in_set: Practice, words: str) -> None:
    in_set.types(CLIENT, "my foot is numb")
    in_set.taps(CLIENT, "Bands are off")
    in_set.types(CLIENT, words)
    assert causes(in_set) == [Cause.NERVE, Cause.NOT_BETTER]
    assert "don't wait for us" in last_words(in_set, 2)
    assert words in in_set.newest(COACH).text


@pytest.mark.parametrize(
    "words", ["Better", "it's gone", "fine now", "ok", "much better", "no longer numb, all good"]
)
def test_typed_words_that_it_is_better_are_better(in_set: Practice, words: str) -> None:
    in_set.types(CLIENT, "my foot is numb")
    in_set.taps(CLIENT, "Bands are off")
    in_set.types(CLIENT, words)
    assert causes(in_set) == [Cause.NERVE]
    assert "Your coach has been told" in last_words(in_set, 2)
    assert "Until tomorrow watch for" in in_set.newest(CLIENT).text


def test_how_is_it_now_is_asked_once_whatever_is_said_in_between(in_set: Practice) -> None:
    in_set.types(CLIENT, "my foot is numb")
    in_set.types(CLIENT, "it is still numb")
    assert in_set.newest(CLIENT).text.startswith("I hear you. First the bands: both off now, then tap.")
    in_set.taps(CLIENT, "Bands are off")
    assert in_set.heard(CLIENT).count("How is it now?") == 1
    live = threads.live(in_set.stage.engine.store, in_set.client)
    assert [one.dialogue for one in live] == ["trouble"]


def test_something_graver_takes_the_place_of_what_was_talked_about(in_set: Practice) -> None:
    in_set.types(CLIENT, "my foot is numb")
    in_set.types(CLIENT, "now my chest hurts")
    assert causes(in_set) == [Cause.NERVE, Cause.EMERGENCY]
    assert any("Call your local emergency number now" in text for text in in_set.heard(CLIENT)[-2:])
    live = threads.live(in_set.stage.engine.store, in_set.client)
    assert [one.dialogue for one in live] == ["trouble"]


@pytest.mark.parametrize(
    ("words", "alert"),
    [("same", True), ("still numb", True), ("not sure", True), ("no", False), ("gone", False)],
)
def test_ten_minutes_after_bands_off_numbness_is_asked_about_whatever_was_said(
    in_set: Practice, words: str, alert: bool
) -> None:
    in_set.types(CLIENT, "my foot is numb")
    in_set.later(seconds=50)
    in_set.taps(CLIENT, "Bands are off")
    in_set.taps(CLIENT, "Better")
    in_set.later(minutes=9, seconds=59)
    assert "Ten minutes" not in in_set.newest(CLIENT).text
    in_set.later(seconds=2)
    assert in_set.newest(CLIENT).text.startswith("Ten minutes with the bands off")
    in_set.types(CLIENT, words)
    assert (Cause.NUMB_STILL in causes(in_set)) is alert


def test_a_band_that_is_stuck_is_cut_and_the_coach_told(in_set: Practice) -> None:
    in_set.taps(CLIENT, "Stop")
    in_set.types(CLIENT, "I can't get it off")
    assert any("cut it" in text for text in in_set.heard(CLIENT)[-2:])
    assert "I can't get it off" in in_set.newest(COACH).text
    in_set.types(CLIENT, "it is off now")
    assert facts.latest(in_set.stage.engine.store, BandsOff, in_set.client) is not None


def test_the_button_of_a_call_answers_the_question_about_the_bands_too(in_set: Practice) -> None:
    in_set.types(CLIENT, "I feel dizzy")
    in_set.later(seconds=61)
    in_set.taps(CLIENT, "Bands are off")
    assert in_set.newest(CLIENT).text == "How is it now?"


def test_a_plain_stop_asks_what_any_session_asks_afterwards(in_set: Practice) -> None:
    in_set.taps(CLIENT, "Stop")
    in_set.taps(CLIENT, "Bands are off")
    assert any("Good that you stopped" in text for text in in_set.heard(CLIENT)[-3:])


def test_ok_to_whether_something_is_wrong_is_asked_once_more_and_alerts_nobody(practice: Practice) -> None:
    practice.types(CLIENT, "something feels off")
    for said in ("ok", "ok thank you dear", "👍"):
        practice.types(CLIENT, said)
        assert causes(practice) == []
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        assert labels == ["Yes, something is wrong", "No, all fine", "All fine: send it to Coach"]
    practice.types(CLIENT, "I'm fine")
    assert practice.newest(CLIENT).text == "Good. We go on where we were."


@pytest.mark.parametrize("fine", ["all good", "everything is fine", "no I'm ok", "nothing is wrong"])
def test_words_that_all_is_well_are_a_no(practice: Practice, fine: str) -> None:
    practice.types(CLIENT, "something feels off")
    practice.types(CLIENT, fine)
    assert causes(practice) == []
    assert practice.newest(CLIENT).text == "Good. We go on where we were."


@pytest.mark.parametrize("not_fine", ["not fine", "i'm not ok", "yes", "no I feel sick", "not sure"])
def test_words_that_leave_a_doubt_are_a_yes(practice: Practice, not_fine: str) -> None:
    practice.types(CLIENT, "something feels off")
    practice.types(CLIENT, not_fine)
    assert causes(practice) != []


@pytest.mark.parametrize("said", ["ok", "Ok will do", "alright", "got it", "👍🏽"])
def test_ok_after_emergency_words_is_no_better(practice: Practice, said: str) -> None:
    practice.types(CLIENT, "my face is drooping on one side")
    practice.types(CLIENT, said)
    assert "Call now" in practice.newest(CLIENT).text
    assert practice.newest(CLIENT).text.startswith("How is it now?")
    practice.types(CLIENT, "better")
    assert "Still call" in last_words(practice, 2)


def test_every_question_after_emergency_words_repeats_the_number(in_set: Practice) -> None:
    in_set.types(CLIENT, "my chest is tight")
    in_set.types(CLIENT, "what do I do")
    assert "your local emergency number" in in_set.newest(CLIENT).text
    in_set.types(CLIENT, "off now")
    assert "your local emergency number" in in_set.newest(CLIENT).text


WORDS = ("please help me", "puffing like mad", "temp 39 and shivering")


@pytest.mark.parametrize("words", WORDS)
def test_words_that_the_question_about_the_bands_cannot_take_reach_the_coach(
    in_set: Practice, words: str
) -> None:
    in_set.types(CLIENT, "my foot is numb")
    in_set.later(seconds=5)
    in_set.types(CLIENT, words)
    assert in_set.newest(CLIENT).text.startswith("I hear you. First the bands")
    in_set.later(minutes=5)
    assert f"Now 18:00: {words}" in in_set.newest(COACH).text


@pytest.mark.parametrize("words", WORDS)
def test_they_sound_anew_for_a_coach_who_is_on_it_already(in_set: Practice, words: str) -> None:
    in_set.types(CLIENT, "my foot is numb")
    in_set.taps(COACH, "I am on it")
    in_set.later(seconds=5)
    in_set.types(CLIENT, words)
    assert f"Said 18:00: {words}" in in_set.newest(COACH).text


@pytest.mark.parametrize("words", ["bands off now", "better", "I am at home", "the same"])
def test_an_answer_is_no_more_words(in_set: Practice, words: str) -> None:
    in_set.types(CLIENT, "my foot is numb")
    in_set.taps(CLIENT, "Bands are off")
    in_set.later(seconds=5)
    in_set.types(CLIENT, words)
    found = duties.open_alerts(in_set.stage.engine.store, in_set.client)
    (alert,) = [one for one in found if one.cause is Cause.NERVE]
    assert alert.count == 1
