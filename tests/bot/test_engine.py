"""The engine with everything around it but the network and the clock: strangers, taps, stops, alerts."""

from datetime import timedelta

import pytest

from bot.engine import Engine, due
from core.facts import BandsOn, CoachDid, ScreeningDone
from core.store import duties, facts, people
from tests.practice import CLIENT, COACH, OTHER, SECOND, START, Practice


def test_a_stranger_gets_one_polite_refusal_with_their_own_number(practice: Practice) -> None:
    practice.types(OTHER, "let me in")
    practice.types(OTHER, "please")
    assert len(practice.heard(OTHER)) == 1
    assert str(OTHER) in practice.heard(OTHER)[0]


def test_an_update_that_comes_twice_counts_once(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31")
    engine = practice.stage.engine
    rows = engine.store.rows("SELECT update_id, body FROM inbox ORDER BY update_id DESC LIMIT 3")
    before = len(practice.heard(CLIENT))
    engine.receive([(row["update_id"], {"message": {}}) for row in rows])
    practice.settle()
    assert practice.sets() == {1: 31}
    assert len(practice.heard(CLIENT)) == before


def test_an_edited_message_changes_its_set_even_after_the_session(practice: Practice) -> None:
    practice.in_a_set()
    message = practice.types(CLIENT, "13")
    practice.types(CLIENT, "stop")
    practice.stage.phones[CLIENT].edits(message, "31")
    practice.settle()
    assert practice.sets() == {1: 31}


def test_a_stop_word_ends_the_session_alerts_the_coach_and_bars_the_next(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    assert any(text.startswith("Bands off now") for text in practice.heard(CLIENT)[-3:])
    assert "my foot is numb" in practice.newest(COACH).text
    practice.taps(CLIENT, "Bands are off")
    assert duties.watches(practice.stage.engine.store, practice.client) == []
    practice.taps(CLIENT, "Better")
    practice.types(CLIENT, "start")
    assert "No training until they have looked" in practice.newest(CLIENT).text
    practice.taps(COACH, "Clear to train")
    practice.types(CLIENT, "start")
    assert practice.newest(CLIENT).buttons


def test_an_unanswered_alert_reaches_the_second_contact_and_tells_the_client(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "chest pain")
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=4)
    assert practice.heard(SECOND) == []
    practice.later(minutes=2)
    assert "chest pain" in practice.newest(SECOND).text
    practice.later(minutes=10)
    assert any("could not be reached" in text for text in practice.heard(CLIENT))
    practice.taps(SECOND, "I am on it")
    count = len(practice.heard(COACH))
    practice.later(hours=9)
    assert len(practice.heard(COACH)) == count


def test_bands_that_stay_on_are_called_about_and_then_alarmed(practice: Practice) -> None:
    practice.in_a_set()
    engine = practice.stage.engine
    on = facts.latest(engine.store, BandsOn, practice.client)
    assert on is not None
    practice.later(minutes=14)
    assert sum("ands off now" in text for text in practice.heard(CLIENT)) >= 2
    assert any("bands on too long" in text or "went quiet" in text for text in practice.heard(COACH))
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=10)
    assert duties.watches(engine.store, practice.client) == []


def test_an_old_button_is_answered_and_not_obeyed(practice: Practice) -> None:
    practice.in_a_set()
    old = next(message for message in practice.stage.phones[CLIENT].history if "How tight" in message.text)
    practice.stage.phones[CLIENT].taps(old.id, "9 or 10")
    practice.settle()
    assert "Set 1 of" in practice.newest(CLIENT).text
    assert len(duties.watches(practice.stage.engine.store, practice.client)) == 1


def test_words_of_the_coach_wait_until_the_session_is_over(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(COACH, "to Ruta: slower on the way down")
    assert not any("slower" in text for text in practice.heard(CLIENT))
    assert facts.latest(practice.stage.engine.store, CoachDid, practice.client) is not None


def test_an_event_that_breaks_a_dialogue_is_kept_and_everybody_is_told(practice: Practice) -> None:
    practice.in_a_set()
    store = practice.stage.engine.store
    with store.transaction():
        store.execute("UPDATE thread SET state = '{}' WHERE dialogue = 'session' AND state IS NOT NULL")
    practice.types(CLIENT, "31")
    assert "Bands off now" in practice.newest(CLIENT).text
    assert "could not deal" in practice.newest(COACH).text
    failed = store.row("SELECT count(*) AS n FROM inbox WHERE failed IS NOT NULL")
    assert failed is not None
    assert failed["n"] == 1
    practice.later(minutes=13)
    assert any("bands off now" in text for text in practice.heard(CLIENT)[-4:])


def test_after_more_than_a_day_away_the_bot_says_so_to_whoever_was_in_the_middle(practice: Practice) -> None:
    practice.in_a_set()
    stage = practice.stage
    stage.clock.skip_to(stage.clock.now() + timedelta(hours=25))
    Engine(stage.engine.store, stage.engine.config, stage.clock.now)
    practice.settle()
    heard = practice.heard(CLIENT)
    assert any("I was away for 25 hours" in text for text in heard)
    assert any("If bands are still on, take them off now" in text for text in heard)


def test_a_session_that_is_left_without_bands_lapses_and_lets_reminders_through(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    practice.later(hours=5)
    engine = practice.stage.engine
    assert not due.in_session(engine, people.by_id(engine.store, practice.client))


def test_help_without_bands_explains_and_with_bands_asks_what_is_wrong(practice: Practice) -> None:
    practice.types(CLIENT, "help")
    helped = practice.newest(CLIENT).text
    assert helped.startswith("In an emergency call")
    assert max(len(line) for line in helped.splitlines()) <= 60  # a line each, for old eyes on a phone
    assert "- stop: ends a session" in helped
    practice.in_a_set()
    practice.types(CLIENT, "help")
    assert "Is something wrong right now?" in practice.newest(CLIENT).text
    practice.taps(CLIENT, "No, all fine")
    assert "Set 1 of" in practice.newest(CLIENT).text


def test_a_photo_instead_of_a_count_gets_an_answer(practice: Practice) -> None:
    practice.in_a_set()
    practice.stage.phones[CLIENT].sends("photo", b"x")
    practice.settle()
    assert any("can't read pictures" in text for text in practice.heard(CLIENT))
    assert "Set 1 of" in practice.newest(CLIENT).text


def test_the_same_history_survives_a_new_engine_on_the_same_file(practice: Practice) -> None:
    practice.in_a_set()
    stage = practice.stage
    stage.engine = Engine(stage.engine.store, stage.engine.config, stage.clock.now)
    practice.types(CLIENT, "31")
    practice.later(seconds=31)
    assert practice.sets() == {1: 31}
    assert any("How tight" in text for text in practice.heard(CLIENT)[-3:])


def test_the_same_limbs_within_36_hours_are_advised_against(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31 16")
    practice.taps(CLIENT, "Bands are off")
    practice.later(hours=20)
    practice.taps(CLIENT, "All fine")
    practice.types(CLIENT, "0")
    practice.types(CLIENT, "start")
    assert any("less than 36 hours ago" in text for text in practice.heard(CLIENT))


@pytest.mark.parametrize(("days", "asked"), [(83, False), (84, True)])
def test_the_health_questions_come_again_after_twelve_weeks(
    practice: Practice, days: int, asked: bool
) -> None:
    store = practice.stage.engine.store
    with store.transaction():
        facts.put(store, practice.client, ScreeningDone(START, "1", "clear", "", ""), START)
    practice.stage.clock.skip_to(START + timedelta(days=days))
    practice.types(CLIENT, "start")
    assert any("twelve weeks" in text for text in practice.heard(CLIENT)) is asked
