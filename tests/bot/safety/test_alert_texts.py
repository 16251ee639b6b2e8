"""What an alert says: who, the words and when, what was told, whether bands are on, what was done, what to tap."""

from datetime import timedelta

import pytest

from conversations.words import alerts as alert_words
from core.facts import Detail
from core.safety.causes import Cause
from core.store import duties, facts, people
from tests.practice import CLIENT, COACH, SECOND, START, Practice


def newest_about(practice: Practice, cause: str) -> str:
    return next(text for text in reversed(practice.heard(COACH)) if cause in text)


def test_pain_in_a_set_reaches_the_coach_in_the_clients_own_words_with_the_place(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my left knee hurts badly")
    practice.taps(CLIENT, "A joint")
    alert = newest_about(practice, "pain in the session")
    assert "Said 18:00: my left knee hurts badly. Asked where: A joint" in alert
    assert "Told: Then we stop here. Bands off now" in alert
    assert "Bands: on since 18:00" in alert
    labels = [label for row in practice.newest(COACH).buttons for label, _ in row]
    assert labels == ["I am on it", "Call noted", "Clear to train", "Hold"]


def test_a_repeated_alert_says_the_newest_words_and_what_was_told_and_how_the_bands_stand(
    practice: Practice,
) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.later(minutes=1, seconds=30)
    practice.types(CLIENT, "the foot is numb and so is the leg")
    practice.later(minutes=4)
    alert = newest_about(practice, "tingling or numb (said 2 times)")
    assert alert.startswith(
        "Ruta: tingling or numb (said 2 times); bands on too long · BANDS ON 5 min · not answered yet (2)\n"
        "No phone and no contact on record"
    )
    assert "Said 18:00: my foot is numb\nNow 18:01: the foot is numb and so is the leg\nSeen 18:02: " in alert
    assert "Told: Bands off now." in alert
    assert "Bands: on since 18:00 (5 min by now)" in alert
    assert "Mon 02 Mar: no sets (stopped)." in alert


def test_a_repeated_alert_says_what_the_client_answered_since(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Bands are off")
    assert "Since then" not in practice.newest(COACH).text
    practice.later(minutes=1)
    practice.types(CLIENT, "much better now")
    practice.later(minutes=5)
    assert 'Since then: 18:01 "much better now"\n' in newest_about(practice, "tingling or numb")
    practice.later(minutes=5)
    practice.types(CLIENT, "no")
    practice.later(minutes=6)
    assert ', 18:11 "not numb any more"' in newest_about(practice, "tingling or numb")


def test_the_calls_of_the_program_are_not_counted_as_words_of_the_client(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31 16")
    practice.later(hours=5)
    (alert,) = [
        one
        for one in duties.open_alerts(practice.stage.engine.store, practice.client)
        if one.cause is Cause.BANDS_ON
    ]
    assert alert.count == 1
    assert 'Seen 18:02: no answer to "bands off now"' in newest_about(practice, "bands on too long")
    assert "times)" not in newest_about(practice, "bands on too long")


def test_the_times_are_those_of_whoever_reads(practice: Practice) -> None:
    store = practice.stage.engine.store
    second = people.by_chat(store, SECOND)
    assert second is not None
    with store.transaction():
        store.execute("UPDATE person SET zone = 'Asia/Tokyo' WHERE id = ?", [second.id])
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=6)
    assert "Said 03:00: my foot is numb" in practice.newest(SECOND).text
    assert "Bands: off 03:00, as they say" in practice.newest(SECOND).text


def test_the_client_hears_once_that_nobody_could_be_reached(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Bands are off")
    practice.types(CLIENT, "still numb")
    practice.later(minutes=20)
    assert sum("could not be reached" in text for text in practice.heard(CLIENT)) == 1


def test_when_no_coach_takes_messages_the_client_hears_it_at_once(practice: Practice) -> None:
    store = practice.stage.engine.store
    practice.in_a_set()
    with store.transaction():
        people.unreachable(store, COACH, START)
    practice.types(CLIENT, "I feel dizzy")
    assert "dizzy" in practice.newest(SECOND).text
    with store.transaction():
        people.unreachable(store, SECOND, START)
    practice.types(CLIENT, "now my chest hurts")
    assert any("could not be reached" in text for text in practice.heard(CLIENT)[-4:])


def test_a_session_without_a_set_asks_for_no_effort_and_one_without_a_joint_for_no_joint_pain(
    practice: Practice,
) -> None:
    practice.in_a_set()
    practice.taps(CLIENT, "Stop")
    practice.taps(CLIENT, "Bands are off")
    assert practice.newest(CLIENT).text.startswith("Any pain now")
    for answer in ("0", "no"):
        practice.types(CLIENT, answer)
    assert any("Until tomorrow watch for" in text for text in practice.heard(CLIENT)[-3:])
    practice.later(hours=4)
    practice.taps(CLIENT, "All fine")
    assert practice.newest(CLIENT).text.startswith("Good.")


@pytest.mark.parametrize(("wrong", "quoted"), [("No, all fine", False), ("Yes, something is wrong", True)])
def test_words_that_meant_nothing_wrong_are_not_quoted_next_time(
    practice: Practice, wrong: str, quoted: bool
) -> None:
    practice.in_a_set()
    practice.taps(CLIENT, "Stop")
    practice.taps(CLIENT, "Bands are off")
    practice.types(CLIENT, "0")
    practice.types(CLIENT, "it feels odd down there")
    practice.taps(CLIENT, wrong)
    practice.taps(CLIENT, "Better" if quoted else "No")
    practice.later(hours=4)
    assert any(text.startswith("You stopped that session") for text in practice.heard(CLIENT)) is quoted


def test_what_stopped_the_session_is_asked_after_until_it_is_gone(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Bands are off")
    practice.taps(CLIENT, "Better")
    practice.later(minutes=10)
    practice.types(CLIENT, "no")
    practice.later(hours=4)
    assert practice.newest(CLIENT).text.startswith(
        'You stopped that session with the words "my foot is numb"'
    )
    practice.types(CLIENT, "still a bit numb")
    store = practice.stage.engine.store
    assert Cause.NUMB_MORNING in [one.cause for one in duties.open_alerts(store, practice.client)]
    assert "Asked later how that is: still a bit numb" in newest_about(practice, "numb the morning after")
    practice.taps(CLIENT, "All fine")
    practice.later(hours=12)
    practice.taps(CLIENT, "Gone")
    practice.taps(CLIENT, "All fine")
    practice.later(hours=34)
    assert "Two days after" in practice.newest(CLIENT).text


def test_two_lines_on_a_locked_phone_say_who_what_whether_bands_are_on_and_whom_to_ring(
    practice: Practice,
) -> None:
    store = practice.stage.engine.store
    practice.in_a_set()
    with store.transaction():
        facts.put(store, practice.client, Detail(START, "emergency_contact", "Tomas, 555 0101"), START)
        facts.put(store, practice.client, Detail(START, "company", "alone"), START)
    practice.types(CLIENT, "my foot is numb")
    assert practice.newest(COACH).text.splitlines()[:2] == [
        "Ruta: tingling or numb · BANDS ON 0 min",
        "No phone on record, call Tomas, 555 0101 · alone",
    ]
    with store.transaction():
        facts.put(store, practice.client, Detail(START, "phone", "555 0100"), START)
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=5)
    assert practice.newest(SECOND).text.splitlines()[:3] == [
        "Ruta: tingling or numb · not answered yet (2)",
        "Call 555 0100 · alone",
        "Said 18:00: my foot is numb",
    ]


def test_an_alert_names_what_else_nobody_took_yet(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Bands are off")
    assert "Also open" not in newest_about(practice, "tingling or numb")
    practice.types(CLIENT, "now my chest hurts")
    assert "\nAlso open: tingling or numb\n" in newest_about(practice, "Ruta: emergency words")
    practice.later(minutes=6)
    assert newest_about(practice, "not answered yet").startswith("Ruta: emergency words; tingling or numb ·")
    practice.taps(COACH, "I am on it")
    practice.later(minutes=20)
    assert "Also open" not in practice.newest(SECOND).text


@pytest.mark.parametrize(("minutes", "shown"), [(0, "0 min"), (119, "119 min"), (120, "2 h"), (900, "15 h")])
def test_bands_that_stay_on_are_told_in_minutes_then_in_hours(minutes: int, shown: str) -> None:
    assert alert_words.how_long(timedelta(minutes=minutes, seconds=59)) == shown


@pytest.mark.parametrize("felt", ["Tingling or numb", "Blue, white or cold"])
def test_a_session_that_two_odd_checks_ended_asks_after_ten_minutes_whether_it_is_gone(
    practice: Practice, felt: str
) -> None:
    practice.types(CLIENT, "start")
    practice.taps(CLIENT, "No")
    for _ in range(2):
        to_the_feeling(practice)
        practice.taps(CLIENT, felt)
        practice.taps(CLIENT, "Bands are off")
        practice.later(minutes=3)
    assert newest_about(practice, "two failed band checks")
    assert not any("Ten minutes with" in text for text in practice.heard(CLIENT))
    practice.types(CLIENT, "cancel")
    practice.later(minutes=7, seconds=5)
    assert any("Ten minutes with the bands off" in text for text in practice.heard(CLIENT))
    practice.later(minutes=6)
    assert newest_about(practice, "numb more than 10 min after bands off")


def to_the_feeling(practice: Practice) -> None:
    """Up to how the bands feel."""
    wanted = ("No", "Off in under 10 seconds", "Heard it", "Done", "Bands are on", "6", "Under 2 seconds")
    for _ in range(30):
        if practice.newest(CLIENT).text.startswith("How do they feel"):
            return
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        first = "0" if "10" in labels and "9" in labels else labels[0]
        practice.taps(CLIENT, next((label for label in wanted if label in labels and first != "0"), first))
    raise AssertionError(practice.heard(CLIENT)[-3:])
