"""Words that nobody can read: asked about around training, offered to the coach, and never lost."""

import pytest

from bot.engine import turns
from conversations.words import after as after_words
from conversations.words import trouble as words
from core.facts import BandsOff
from core.safety.causes import Cause
from core.store import duties, facts, people
from tests.practice import CLIENT, COACH, START, Practice

UNREAD = "the cupboard dances a jig"


def causes(practice: Practice) -> list[Cause]:
    """What the coach was told about."""
    return [alert.cause for alert in duties.open_alerts(practice.stage.engine.store, practice.client)]


def trained(practice: Practice, hours: int) -> None:
    """Bands came off so long ago."""
    store = practice.stage.engine.store
    with store.transaction():
        facts.put(store, practice.client, BandsOff(START, "s1", "1.1", "done"), START)
    practice.later(hours=hours)


@pytest.mark.parametrize("typed", ["settings", "menu"])
@pytest.mark.parametrize(("hours", "asked"), [(47, True), (49, False)])
def test_within_two_days_of_bands_unread_words_are_asked_about_whatever_is_open(
    practice: Practice, typed: str, hours: int, asked: bool
) -> None:
    trained(practice, hours)
    practice.types(CLIENT, typed)
    practice.types(CLIENT, UNREAD)
    assert (practice.newest(CLIENT).text == words.ASK_WRONG) is asked


@pytest.mark.parametrize("typed", ["settings", "menu"])
def test_words_that_touch_the_body_are_asked_about_at_any_time(practice: Practice, typed: str) -> None:
    practice.types(CLIENT, typed)
    practice.types(CLIENT, "the ribs in the oven")
    assert practice.newest(CLIENT).text == words.ASK_WRONG


@pytest.mark.parametrize("how", ["All fine: send it to Coach", "send it"])
def test_words_that_are_fine_go_to_the_coach_as_they_were_typed(practice: Practice, how: str) -> None:
    trained(practice, 40)
    practice.types(CLIENT, UNREAD)
    practice.types(CLIENT, how)
    assert practice.newest(COACH).text == f"Ruta: {UNREAD}"
    assert causes(practice) == []


@pytest.mark.parametrize(("hours", "told"), [(23, [Cause.NO_WORD]), (25, [])])
def test_no_answer_within_a_day_of_bands_calls_the_coach_later_the_coach_reads_the_words(
    practice: Practice, hours: int, told: list[Cause]
) -> None:
    trained(practice, hours)
    practice.types(CLIENT, UNREAD)
    practice.later(minutes=11)
    assert causes(practice) == told
    assert any(UNREAD in text for text in practice.heard(COACH))


def test_no_answer_about_words_that_touch_the_body_calls_the_coach(practice: Practice) -> None:
    trained(practice, 40)
    practice.types(CLIENT, "the ribs in the oven")
    practice.later(minutes=11)
    assert causes(practice) == [Cause.NO_WORD]


def test_with_bands_on_the_coach_is_no_way_out_of_the_question(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, UNREAD)
    labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
    assert labels == ["Yes, something is wrong", "No, all fine"]


def test_a_sentence_with_on_in_it_is_no_word_that_bands_are_on(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    while "Bands are on" not in [label for row in practice.newest(CLIENT).buttons for label, _ in row]:
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        known = ("No", "0", "Off in under 10 seconds", "Heard it", "Done")
        practice.taps(CLIENT, next((label for label in known if label in labels), labels[0]))
    practice.types(CLIENT, "there is a mark on the shin")
    assert practice.newest(CLIENT).text == words.ASK_WRONG
    assert duties.watches(practice.stage.engine.store, practice.client) == []


def test_an_answer_that_touches_the_body_is_kept_and_asked_about(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    while "Bands are on" not in [label for row in practice.newest(CLIENT).buttons for label, _ in row]:
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        known = ("No", "0", "Off in under 10 seconds", "Heard it", "Done")
        practice.taps(CLIENT, next((label for label in known if label in labels), labels[0]))
    practice.types(CLIENT, "bands are on, there is a mark under my knee")
    assert practice.newest(CLIENT).text == words.ASK_WRONG
    assert len(duties.watches(practice.stage.engine.store, practice.client)) == 1


@pytest.mark.parametrize(
    "typed", ["my niece moved here", "see you on friday", "that was a great session", "thrity"]
)
def test_harmless_words_are_not_asked_about(practice: Practice, typed: str) -> None:
    practice.in_a_set()
    practice.types(CLIENT, typed)
    assert words.ASK_WRONG not in practice.heard(CLIENT)


def test_unread_words_beside_an_open_alert_are_asked_about(practice: Practice) -> None:
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Better")
    practice.later(hours=60)
    practice.types(CLIENT, UNREAD)
    told, asked = practice.heard(CLIENT)[-2:]
    assert "Your coach was told" in told
    assert asked == words.ASK_WRONG


def test_a_sign_typed_at_the_question_after_a_session_opens_the_talk_about_it(practice: Practice) -> None:
    engine = practice.stage.engine
    with engine.store.transaction():
        client = people.by_id(engine.store, practice.client)
        turns.begin(engine, client, "after", {"session": "s1", "why": "done"}, engine.clock())
    practice.settle()
    practice.types(CLIENT, "my foot is numb")
    assert causes(practice) == [Cause.NERVE]
    assert practice.newest(CLIENT).text == words.ASK_NOW


def test_ten_minutes_with_the_bands_off_are_asked_about_only_where_they_came_off(practice: Practice) -> None:
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Better")
    practice.later(minutes=11)
    assert after_words.STILL_NUMB_SINCE in practice.heard(CLIENT)
    assert after_words.STILL_NUMB not in practice.heard(CLIENT)


def test_after_bands_that_came_off_the_ten_minutes_are_theirs(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Bands are off")
    practice.taps(CLIENT, "Better")
    practice.later(minutes=11)
    assert after_words.STILL_NUMB in practice.heard(CLIENT)


def to_the_pain_before(practice: Practice) -> None:
    """From "start" to the question about joints."""
    practice.types(CLIENT, "start")
    while "Any pain in a joint" not in practice.newest(CLIENT).text:
        practice.taps(CLIENT, "No")


@pytest.mark.parametrize(
    ("said", "next_words"),
    [("knee 2", "train the same muscles hard"), ("my knee a little", "Any pain in a joint right now")],
)
def test_pain_with_its_place_is_an_answer_and_no_cry(practice: Practice, said: str, next_words: str) -> None:
    to_the_pain_before(practice)
    practice.types(CLIENT, said)
    assert next_words in practice.newest(CLIENT).text
    assert not any("Is something wrong" in text for text in practice.heard(CLIENT))


def test_what_is_said_beside_the_pain_is_still_asked_about(practice: Practice) -> None:
    to_the_pain_before(practice)
    practice.types(CLIENT, "0 but my foot looks odd")
    assert "Is something wrong right now?" in practice.newest(CLIENT).text
