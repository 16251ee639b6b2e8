"""Where skin hides the spot: every way through the check, and never a check that is called passed."""

import pytest

from bot.engine import status
from bot.engine.safety import checks, unseen
from bot.engine.training import history
from conversations.words import cuffs as words
from conversations.words.alerts import CLIENT_LOOKED_AT, CLIENT_TRY_AGAIN
from core.facts import Cleared, CuffChecked
from core.safety.causes import Cause
from core.store import duties, facts
from tests.practice import CLIENT, COACH, SQUAT, Practice

ON_THE_WAY = ("No", "0", "Off in under 10 seconds", "Heard it", "Done", "Bands are on", "6")
CANT_SEE = "I can't see the spot"


def to_the_refill(practice: Practice) -> None:
    """From "start" to the first limb's refill."""
    practice.types(CLIENT, "start")
    for _ in range(40):
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        if CANT_SEE in labels:
            return
        practice.taps(CLIENT, next((label for label in ON_THE_WAY if label in labels), labels[0]))
    raise AssertionError(practice.heard(CLIENT)[-3:])


def to_the_second_refill_of_a_new_fit(practice: Practice) -> None:
    """Bands off, three minutes, on again, up to the refill."""
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=3, seconds=1)
    practice.taps(CLIENT, "Bands are on")
    practice.taps(CLIENT, "6")


def causes(practice: Practice) -> list[Cause]:
    return [one.cause for one in duties.open_alerts(practice.stage.engine.store, practice.client)]


@pytest.mark.parametrize("left_is_fine", [False, True])
def test_a_leg_cool_or_odd_twice_is_asked_about_ten_minutes_after_bands_off(
    practice: Practice, left_is_fine: bool
) -> None:
    to_the_refill(practice)
    for again in (True, False):
        if left_is_fine:
            practice.taps(CLIENT, "Under 2 seconds")
        practice.taps(CLIENT, CANT_SEE)
        practice.taps(CLIENT, "Cooler or odd")
        if again:
            to_the_second_refill_of_a_new_fit(practice)
    assert causes(practice) == [Cause.CHECKS_FAILED]
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=10, seconds=1)
    assert "still tingling, numb" in practice.newest(CLIENT).text


def unseen_on_both(practice: Practice) -> None:
    """From "start" to the end of the check; nothing differs."""
    to_the_refill(practice)
    for _ in range(2):
        practice.taps(CLIENT, CANT_SEE)
        practice.taps(CLIENT, "As before")
    practice.taps(CLIENT, "Fine")


def test_the_coach_decides_and_then_they_train_without(practice: Practice) -> None:
    unseen_on_both(practice)
    assert causes(practice) == [Cause.UNSEEN_REFILL]
    practice.taps(CLIENT, "Bands are off")
    practice.types(CLIENT, "start")
    assert "coach first needs to look" in practice.newest(CLIENT).text
    practice.taps(COACH, "Clear to train")
    assert CLIENT_TRY_AGAIN in practice.heard(CLIENT)  # who was told to wait hears when that is over
    assert any("without a visible refill on: left leg, right leg." in text for text in practice.heard(COACH))
    practice.later(minutes=4)
    unseen_on_both(practice)
    assert "Set 1 of" in practice.newest(CLIENT).text
    assert any("as your coach allowed" in text for text in practice.heard(CLIENT)[-3:])


def test_who_is_on_hold_besides_hears_that_it_was_looked_at_and_not_that_they_may_train(
    practice: Practice,
) -> None:
    unseen_on_both(practice)
    store, now = practice.stage.engine.store, practice.stage.clock.now()
    with store.transaction():
        facts.put(store, practice.client, Cleared(now, "1", "held", "", 1), now)
    practice.taps(COACH, "Clear to train")
    assert CLIENT_LOOKED_AT in practice.heard(CLIENT)
    assert CLIENT_TRY_AGAIN not in practice.heard(CLIENT)


def test_what_they_do_without_counts_for_the_load_and_is_never_called_loose(practice: Practice) -> None:
    """Else whoever has dark skin would never get on: an unseen refill says nothing about reps."""
    test_the_coach_decides_and_then_they_train_without(practice)
    practice.types(CLIENT, "31")
    engine = practice.stage.engine
    looked = facts.current(engine.store, CuffChecked, practice.client)
    assert {(one.verdict, one.because) for one in looked} == {("ease", "unseen_refill")}  # never passed
    [record] = history.history(engine, practice.client, SQUAT)
    assert (record.loose, record.check_ok) == (False, True)
    assert [one.loose for one in checks.checked(engine, practice.client)] == [False, False]


def test_the_coach_takes_it_back_and_decides_again_each_time(practice: Practice) -> None:
    test_the_coach_decides_and_then_they_train_without(practice)
    practice.taps(CLIENT, "Stop")
    practice.types(COACH, "ruta")
    assert "Trains without a visible refill on: left leg, right leg" in practice.newest(COACH).text
    practice.taps(COACH, "More")
    practice.taps(COACH, words.UNSEEN_BACK)
    assert "comes to you again" in practice.newest(COACH).text
    assert status.detail(practice.stage.engine, practice.client, unseen.NAME, "") == ""
    assert words.UNSEEN_CLIENT not in practice.heard(CLIENT)  # not in the middle of a session
    practice.later(hours=14)
    assert words.UNSEEN_CLIENT in practice.heard(CLIENT)
    practice.types(COACH, "ruta")
    assert "without a visible refill" not in practice.newest(COACH).text
    practice.taps(COACH, "More")
    assert words.UNSEEN_BACK not in [label for row in practice.newest(COACH).buttons for label, _ in row]
