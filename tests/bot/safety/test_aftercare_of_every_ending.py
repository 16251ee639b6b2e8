"""However a session with bands on ends, its evening, its morning and its 48 hours are asked about."""

from collections.abc import Callable

import pytest

from bot.engine import acts
from core.facts import BandsOff, BandsOn, SessionEnded
from core.safety.causes import Cause
from core.store import duties, facts, people
from tests.practice import CLIENT, COACH, Practice

EVENING, MORNING, TWO_DAYS = "since training", "The day after", "Two days after"


def tap_what_is_offered(practice: Practice, *wanted: str, most: int = 30) -> None:
    """Tap the first of these that is offered; wait where none is."""
    for _ in range(most):
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        label = next((one for one in wanted if one in labels), None)
        if label is None:
            return
        practice.taps(CLIENT, label)


def finished(practice: Practice) -> None:
    practice.types(CLIENT, "31 16")
    practice.taps(CLIENT, "Bands are off")
    practice.taps(CLIENT, "5 or more")
    for answer in ("6", "0", "No"):
        practice.types(CLIENT, answer)


def numb(practice: Practice) -> None:
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Bands are off")
    practice.taps(CLIENT, "Better")


def dizzy(practice: Practice) -> None:
    practice.types(CLIENT, "I feel dizzy")
    practice.taps(CLIENT, "Bands are off")


def stop_typed(practice: Practice) -> None:
    practice.types(CLIENT, "stop")
    practice.taps(CLIENT, "Bands are off")


def stop_tapped(practice: Practice) -> None:
    practice.taps(CLIENT, "Stop")
    practice.taps(CLIENT, "Bands are off")


def stop_and_silence(practice: Practice) -> None:
    practice.taps(CLIENT, "Stop")


def hurts_in_the_joint(practice: Practice) -> None:
    practice.types(CLIENT, "my knee hurts")
    practice.taps(CLIENT, "A joint")
    practice.taps(CLIENT, "Bands are off")


def hurts_and_silence(practice: Practice) -> None:
    practice.types(CLIENT, "it hurts")
    practice.later(seconds=21)
    practice.taps(CLIENT, "Bands are off")


def burn_and_silence(practice: Practice) -> None:
    practice.types(CLIENT, "it hurts")
    practice.taps(CLIENT, "Working muscle, a burn")


def silent_about_reps_left(practice: Practice) -> None:
    practice.types(CLIENT, "31 16")
    practice.taps(CLIENT, "Bands are off")


def lapsed_with_a_count_missing(practice: Practice) -> None:
    practice.types(CLIENT, "31")
    practice.later(seconds=31)
    tap_what_is_offered(practice, "6", "Under 2 seconds", "Fine")
    practice.taps(CLIENT, "Set done")
    practice.taps(CLIENT, "Bands are off")


def two_failed_checks(practice: Practice) -> None:
    practice.types(CLIENT, "it is too tight")
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=3)
    tap_what_is_offered(practice, "Bands are on", "6", "Under 2 seconds", "Tingling or numb", "Bands are off")


def time_is_up(practice: Practice) -> None:
    for _ in range(9):
        practice.later(seconds=61)
        if practice.newest(CLIENT).text.startswith("All right?"):
            practice.types(CLIENT, "not numb, just slow")
    practice.later(minutes=1)
    practice.taps(CLIENT, "Bands are off")


def held_by_the_coach(practice: Practice) -> None:
    engine = practice.stage.engine
    coach = people.by_chat(engine.store, COACH)
    assert coach is not None
    with engine.store.transaction():
        acts.hold(engine, coach, people.by_id(engine.store, practice.client), engine.clock())
    practice.settle()
    practice.taps(CLIENT, "Bands are off")


def quiet_in_a_set(practice: Practice) -> None:
    practice.later(minutes=6)
    practice.taps(CLIENT, "Bands are off")


def never_off(practice: Practice) -> None:
    practice.later(hours=1)


def broken(practice: Practice) -> None:
    store = practice.stage.engine.store
    with store.transaction():
        store.execute("UPDATE thread SET state = '{}' WHERE dialogue = 'session' AND state IS NOT NULL")
    practice.types(CLIENT, "31")


ENDINGS: tuple[Callable[[Practice], None], ...] = (
    finished,
    numb,
    dizzy,
    stop_typed,
    stop_tapped,
    stop_and_silence,
    hurts_in_the_joint,
    hurts_and_silence,
    burn_and_silence,
    silent_about_reps_left,
    lapsed_with_a_count_missing,
    two_failed_checks,
    time_is_up,
    held_by_the_coach,
    quiet_in_a_set,
    never_off,
    broken,
)


def asked(practice: Practice, words: str) -> int:
    return sum(words in text for text in practice.heard(CLIENT))


def answer_fine(practice: Practice) -> None:
    tap_what_is_offered(practice, "Gone", most=1)
    practice.taps(CLIENT, "All fine")
    if "0 (none) to 10" in practice.newest(CLIENT).text:
        practice.types(CLIENT, "0")


@pytest.mark.parametrize("ending", ENDINGS, ids=lambda one: one.__name__)
def test_every_ending_is_asked_about_in_the_evening_the_next_morning_and_after_two_days(
    practice: Practice, ending: Callable[[Practice], None]
) -> None:
    practice.in_a_set()
    ending(practice)
    practice.later(hours=5)
    answer_fine(practice)
    practice.later(hours=11)
    assert asked(practice, MORNING) >= 1
    answer_fine(practice)
    practice.later(hours=36)
    days = practice.stage.engine.store.rows(
        "SELECT json_extract(about, '$.day') AS day FROM planned WHERE dialogue = 'morning' AND done_at IS NOT NULL"
    )
    assert sorted(row["day"] for row in days) == ["evening", "morning", "two_days"]
    assert asked(practice, EVENING)
    assert asked(practice, TWO_DAYS)


@pytest.mark.parametrize("ending", ENDINGS, ids=lambda one: one.__name__)
def test_no_ending_leaves_bands_on_without_a_later_off_or_an_alert_that_nobody_took(
    practice: Practice, ending: Callable[[Practice], None]
) -> None:
    practice.in_a_set()
    ending(practice)
    practice.later(minutes=30)
    store = practice.stage.engine.store
    on = facts.current(store, BandsOn, practice.client)
    off = {one.spell for one in facts.current(store, BandsOff, practice.client)}
    assert on
    if any(one.spell not in off for one in on):
        silent = {Cause.BANDS_ON, Cause.QUIET_SET, Cause.AWAY}
        assert silent & {one.cause for one in duties.open_alerts(store, practice.client)}


def test_a_session_that_ended_before_bands_went_on_is_not_asked_about(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    practice.types(CLIENT, "stop")
    practice.later(days=2)
    assert asked(practice, MORNING) == 0


def test_how_it_was_is_asked_although_nobody_told_the_reps_that_were_left(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31 16")
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=5)
    assert practice.newest(CLIENT).text.startswith("How hard was it")
    store = practice.stage.engine.store
    assert [one.why for one in facts.current(store, SessionEnded, practice.client)] == ["done"]


def test_the_coach_reads_in_the_week_that_a_session_was_left_without_a_word(practice: Practice) -> None:
    practice.in_a_set()
    lapsed_with_a_count_missing(practice)
    practice.later(hours=4)
    store = practice.stage.engine.store
    assert [one.why for one in facts.current(store, SessionEnded, practice.client)] == ["lapsed"]
    assert Cause.LAPSED in [one.cause for one in duties.open_alerts(store, practice.client)]


def test_bands_that_were_told_to_come_off_are_asked_about_after_one_minute_and_the_coach_after_two(
    practice: Practice,
) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31 16")
    practice.later(seconds=59)
    assert "Bands still on?" not in practice.newest(CLIENT).text
    practice.later(seconds=2)
    assert practice.newest(CLIENT).text.startswith("Bands still on?")
    practice.later(seconds=57)
    store = practice.stage.engine.store
    assert duties.open_alerts(store, practice.client) == []
    practice.later(seconds=3)
    assert [one.cause for one in duties.open_alerts(store, practice.client)] == [Cause.BANDS_ON]
    practice.later(hours=2)
    (alert,) = duties.open_alerts(store, practice.client)
    assert alert.count == 1


def test_off_typed_hours_later_is_heard_although_the_session_is_over(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31 16")
    practice.later(hours=4)
    assert duties.watches(practice.stage.engine.store, practice.client)
    practice.types(CLIENT, "they are off")
    assert practice.newest(CLIENT).text == "Good. Bands are off."
    assert not duties.watches(practice.stage.engine.store, practice.client)


def test_the_words_of_the_coach_do_not_wait_for_ever_behind_bands_that_nobody_took_off(
    practice: Practice,
) -> None:
    practice.in_a_set()
    practice.later(minutes=30)
    practice.types(COACH, "to Ruta: are you all right?")
    assert "it goes out when the bands are off" in practice.newest(COACH).text
    practice.later(hours=6)
    assert any("are you all right?" in text for text in practice.heard(CLIENT))
