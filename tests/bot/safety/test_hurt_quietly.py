"""Nobody gets hurt quietly: what the engine does with signs over hours and days."""

from datetime import timedelta

from bot.engine.due import SILENCE
from core.facts import Answered, BandsOff, SessionEnded
from core.safety.causes import Cause
from core.store import duties, facts
from tests.practice import CLIENT, COACH, START, Practice


def test_whoever_asks_whether_somebody_is_there_reads_of_the_bands_first(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.later(minutes=16)
    practice.types(CLIENT, "is anybody there??")
    told, asked = practice.heard(CLIENT)[-2:]
    assert told.startswith("Bands off now. No more bands until somebody has looked.")
    assert asked.endswith("Is something wrong right now?")


def causes(practice: Practice) -> list[Cause]:
    """Open alerts about the client."""
    return [one.cause for one in duties.open_alerts(practice.stage.engine.store, practice.client)]


def finish(practice: Practice, numb: str = "No") -> None:
    """From set 1 to the end of the questions after the session."""
    practice.types(CLIENT, "31")
    answers = {"Bands are on": 0, "6": 0, "Under 2 seconds": 0, "Fine": 0, "Bands are off": 0, "5 or more": 0}
    for _ in range(30):
        newest = practice.newest(CLIENT)
        labels = [label for row in newest.buttons for label, _ in row]
        if "tingling or numb" in newest.text:
            practice.taps(CLIENT, numb)
            return
        if newest.text.startswith("Go"):
            practice.types(CLIENT, "16")
        elif "How hard" in newest.text or "Any pain" in newest.text:
            practice.types(CLIENT, "0" if "pain" in newest.text else "6")
        elif fitting := [label for label in answers if label in labels]:
            practice.taps(CLIENT, fitting[0])
        else:
            practice.later(seconds=31)
    raise AssertionError(practice.heard(CLIENT)[-5:])


def test_numb_after_the_session_is_asked_again_ten_minutes_after_bands_off(practice: Practice) -> None:
    practice.in_a_set()
    finish(practice, numb="Yes")
    assert causes(practice) == [Cause.NUMB_AFTER]
    practice.later(minutes=10)
    assert "still tingling, numb" in practice.newest(CLIENT).text
    practice.taps(CLIENT, "Yes")
    assert causes(practice) == [Cause.NUMB_AFTER, Cause.NUMB_STILL]
    assert "numb more than 10 min" in practice.newest(COACH).text


def test_the_first_session_is_asked_about_in_the_evening_the_morning_and_after_two_days(
    practice: Practice,
) -> None:
    practice.in_a_set()
    finish(practice)
    asked = []
    for hours in (4, 12, 34):
        practice.later(hours=hours)
        asked.append(practice.newest(CLIENT).text)
        practice.taps(CLIENT, "All fine")
        practice.types(CLIENT, "0")
    assert ["since training" in asked[0], "The day after" in asked[1], "Two days" in asked[2]] == [True] * 3
    parts = {one.part for one in facts.current(practice.stage.engine.store, Answered, practice.client)}
    assert {"evening", "morning", "two_days"} <= parts


def test_an_open_question_about_the_last_session_comes_before_the_next(practice: Practice) -> None:
    practice.in_a_set()
    finish(practice)
    practice.later(hours=15)
    practice.types(CLIENT, "start")
    assert any("Before the next session" in text for text in practice.heard(CLIENT)[-2:])
    practice.later(hours=13)
    assert Cause.NO_REPLY in causes(practice)
    practice.types(CLIENT, "start")
    assert "coach first needs to look" in practice.newest(CLIENT).text


def test_too_tight_in_a_set_is_bands_off_three_minutes_and_a_new_fit(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "it is too tight")
    assert causes(practice) == []
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=3, seconds=1)
    practice.taps(CLIENT, "Bands are on")
    practice.types(CLIENT, "too tight again")
    assert causes(practice) == [Cause.CHECKS_FAILED]
    practice.taps(CLIENT, "Bands are off")
    store = practice.stage.engine.store
    assert len(facts.current(store, BandsOff, practice.client)) == 2
    assert facts.latest(store, SessionEnded, practice.client) is not None


def test_a_taken_alert_is_asked_about_after_a_day_until_it_is_settled(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.taps(CLIENT, "Bands are off")
    practice.taps(CLIENT, "Better")
    practice.taps(COACH, "I am on it")
    before = len(practice.heard(COACH))
    practice.later(minutes=10)
    practice.types(CLIENT, "no")  # to "still numb?"
    practice.later(hours=4)
    practice.taps(CLIENT, "Gone")
    practice.taps(CLIENT, "All fine")
    practice.later(hours=19, minutes=49)
    assert len(practice.heard(COACH)) == before
    practice.later(minutes=2)
    assert "Still open since you took it" in practice.newest(COACH).text
    practice.taps(COACH, "Clear to train")
    practice.later(days=2)
    assert not any("Still open" in text for text in practice.heard(COACH)[before + 2 :])


def test_the_same_sign_again_after_somebody_took_it_is_a_new_alert(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my foot is numb")
    practice.taps(COACH, "I am on it")
    practice.types(CLIENT, "my foot is numb again")
    assert causes(practice) == [Cause.NERVE, Cause.NERVE]


def test_a_doubtful_word_without_an_answer_reaches_the_coach(practice: Practice) -> None:
    practice.types(CLIENT, "help me")
    assert causes(practice) == []
    practice.later(minutes=11)
    assert causes(practice) == [Cause.NO_WORD]
    assert (
        timedelta(0)
        <= practice.stage.clock.now()
        - duties.open_alerts(practice.stage.engine.store, practice.client)[0].raised_at
        <= timedelta(minutes=1)
    )


def test_bands_that_nobody_takes_off_make_one_alert_and_no_flood(practice: Practice) -> None:
    practice.in_a_set()
    practice.later(days=3)
    store = practice.stage.engine.store
    raised = [one.cause for one in duties.alerts_since(store, practice.client, START)]
    assert [one for one in raised if one in SILENCE] == [Cause.QUIET_SET]
    assert len(practice.heard(COACH)) < 80  # rounds with a growing gap, not one alert a call


def test_whoever_had_chest_pain_is_not_asked_to_answer_when_they_are_ready(practice: Practice) -> None:
    practice.types(CLIENT, "my chest feels tight")
    practice.later(minutes=2)
    assert any("no word from you yet" in text for text in practice.heard(CLIENT))
    assert not any("Still here" in text for text in practice.heard(CLIENT))
    assert "How is it now?" in practice.newest(CLIENT).text
