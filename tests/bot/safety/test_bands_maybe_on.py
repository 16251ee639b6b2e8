"""Bands that may be on although nobody said so: asked about, counted, and never left alone."""

from datetime import timedelta

import pytest

from core.facts import BandsOff, BandsOn
from core.safety.causes import Cause
from core.store import duties, facts, threads
from tests.practice import CLIENT, COACH, SECOND, Practice


def asked_to_put_them_on(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    for _ in range(40):
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        if "Bands are on" in labels:
            return
        wanted = ("No", "0", "Off in under 10 seconds", "Heard it", "Done")
        practice.taps(CLIENT, next((label for label in wanted if label in labels), labels[0]))
    raise AssertionError(practice.heard(CLIENT)[-3:])


def causes(practice: Practice) -> list[Cause]:
    return [one.cause for one in duties.open_alerts(practice.stage.engine.store, practice.client)]


def test_no_word_after_bands_on_is_asked_about_and_then_the_coach_hears(practice: Practice) -> None:
    asked_to_put_them_on(practice)
    began = practice.stage.clock.now()
    practice.later(minutes=4, seconds=58)
    assert "Are the bands on?" not in practice.newest(CLIENT).text
    practice.later(seconds=7)
    assert practice.newest(CLIENT).text.startswith("Are the bands on? Take them off if you stopped.")
    on = facts.current(practice.stage.engine.store, BandsOn, practice.client)
    assert [abs(one.at - began) < timedelta(seconds=1) for one in on] == [
        True
    ]  # from when they were asked for
    assert causes(practice) == []
    practice.later(seconds=60)
    assert causes(practice) == [Cause.MAYBE_ON]
    assert "Bands off now" in practice.newest(CLIENT).text
    assert 'No answer to "Are the bands on?"' in practice.heard(COACH)[-1]


def test_on_after_all_goes_on_with_the_check_and_their_time_runs_from_the_question(
    practice: Practice,
) -> None:
    asked_to_put_them_on(practice)
    practice.later(minutes=5, seconds=5)
    practice.taps(CLIENT, "Bands are on")
    assert practice.newest(CLIENT).text.startswith("How tight")
    watches = duties.watches(practice.stage.engine.store, practice.client)
    assert [practice.stage.clock.now() - watch.on_at > timedelta(minutes=5) for watch in watches] == [True]
    practice.later(minutes=1)
    assert causes(practice) == []


@pytest.mark.parametrize("text", ["not yet", "no", "not on yet sorry", "later"])
def test_not_on_stops_their_time_and_leaves_the_question_open(practice: Practice, text: str) -> None:
    asked_to_put_them_on(practice)
    practice.later(minutes=5, seconds=5)
    practice.types(CLIENT, text)
    assert duties.watches(practice.stage.engine.store, practice.client) == []
    offs = facts.current(practice.stage.engine.store, BandsOff, practice.client)
    assert [one.why for one in offs] == ["not_on"]
    practice.taps(CLIENT, "Bands are on")
    assert practice.newest(CLIENT).text.startswith("How tight")
    assert len(duties.watches(practice.stage.engine.store, practice.client)) == 1


def test_never_on_said_after_the_alarm_is_off(practice: Practice) -> None:
    asked_to_put_them_on(practice)
    practice.later(minutes=7)
    practice.types(CLIENT, "they were never on")
    assert duties.watches(practice.stage.engine.store, practice.client) == []


def test_a_restart_while_bands_go_on_begins_with_them(practice: Practice) -> None:
    asked_to_put_them_on(practice)
    said = len(practice.heard(CLIENT))
    practice.stage.engine.resume()
    practice.settle()
    assert "bands are on" in practice.heard(CLIENT)[said]


@pytest.mark.parametrize("text", ["bands are on", "Bands on", "my bands are on", "cuffs are on now"])
def test_bands_on_without_a_session_come_off_first_and_are_called_for(practice: Practice, text: str) -> None:
    practice.types(CLIENT, text)
    assert practice.newest(CLIENT).text.startswith("Bands off first")
    practice.later(minutes=2, seconds=5)
    assert causes(practice) == [Cause.BANDS_ON]
    practice.types(CLIENT, "off")
    assert duties.watches(practice.stage.engine.store, practice.client) == []


@pytest.mark.parametrize(
    "text", ["bands are on", "My bands are on already", "both cuffs on", "I have the bands on"]
)
@pytest.mark.parametrize(
    "asked", ["start", "settings", "bands", "when is my session? move thursday to friday"]
)
def test_bands_said_to_be_on_while_something_else_is_asked_come_off_first(
    practice: Practice, asked: str, text: str
) -> None:
    """Once it was "Yes, no or not sure?", and nobody watched them."""
    practice.types(CLIENT, asked)
    practice.types(CLIENT, text)
    assert practice.newest(CLIENT).text.startswith("Bands off first")
    practice.later(minutes=2, seconds=5)
    assert causes(practice) == [Cause.BANDS_ON]
    practice.types(CLIENT, "off")
    assert duties.watches(practice.stage.engine.store, practice.client) == []


def test_bands_that_are_on_order_are_not_on(practice: Practice) -> None:
    practice.types(CLIENT, "settings")
    practice.types(CLIENT, "my bands are on order")
    assert duties.watches(practice.stage.engine.store, practice.client) == []


@pytest.mark.parametrize("text", ["bands are off", "are the bands on sale?", "the bands are not on"])
def test_other_words_about_bands_put_nothing_on(practice: Practice, text: str) -> None:
    practice.types(CLIENT, text)
    assert duties.watches(practice.stage.engine.store, practice.client) == []


# --- after the alarm --------------------------------------------------------------------------------------------
NEVER = "They were never on"
SAID_NEVER = ("not on", "never put them on", "They weren’t on", "sorry, I didn't start, bands not on", NEVER)


def nothing_is_left(practice: Practice) -> None:
    """No alert, no watch, no question about a session that never was, the coach told, and training is open again."""
    store = practice.stage.engine.store
    assert causes(practice) == []
    assert duties.watches(store, practice.client) == []
    assert [one.why for one in facts.current(store, BandsOff, practice.client)] == ["not_on"]
    assert "nothing to do" in practice.newest(COACH).text
    heard = len(practice.heard(COACH))
    practice.types(CLIENT, "start")
    assert "Anything new since" in practice.newest(CLIENT).text
    practice.types(CLIENT, "cancel")
    practice.later(days=3)
    assert not any("since training" in text or "day after" in text for text in practice.heard(CLIENT))
    assert not any("never" in text for text in practice.heard(COACH)[heard:])


@pytest.mark.parametrize("minutes", [6.2, 7, 12.1, 40])
@pytest.mark.parametrize("text", SAID_NEVER)
def test_never_on_ends_the_alarm_by_itself(practice: Practice, minutes: float, text: str) -> None:
    asked_to_put_them_on(practice)
    practice.later(minutes=minutes)
    practice.types(CLIENT, text)
    assert "nothing was on" in practice.newest(CLIENT).text
    nothing_is_left(practice)


@pytest.mark.parametrize("minutes", [6.2, 40])
def test_so_does_its_button_also_after_a_restart(practice: Practice, minutes: float) -> None:
    asked_to_put_them_on(practice)
    practice.later(minutes=minutes)
    practice.stage.engine.resume()
    practice.settle()
    practice.taps(CLIENT, NEVER)
    nothing_is_left(practice)


def test_never_on_said_hours_later_when_the_session_is_closed(practice: Practice) -> None:
    asked_to_put_them_on(practice)
    practice.later(hours=3)
    practice.types(CLIENT, "I never put them on")
    assert causes(practice) == []
    assert "nothing to do" in practice.newest(COACH).text


@pytest.mark.parametrize(("hours", "alerts"), [(5, [Cause.MAYBE_ON]), (27, [Cause.MAYBE_ON, Cause.NO_REPLY])])
def test_never_on_closes_what_was_asked_about_that_session_meanwhile(
    practice: Practice, hours: int, alerts: list[Cause]
) -> None:
    asked_to_put_them_on(practice)
    practice.later(hours=hours)
    assert causes(practice) == alerts
    practice.types(CLIENT, "never put them on")
    assert causes(practice) == []
    assert threads.live(practice.stage.engine.store, practice.client) == []
    practice.types(CLIENT, "start")
    assert "Anything new since" in practice.newest(CLIENT).text


@pytest.mark.parametrize(
    "text", ["off", "bands are off", "not on any more", "they are not on now, took them off"]
)
def test_off_after_the_alarm_leaves_it_to_the_coach(practice: Practice, text: str) -> None:
    asked_to_put_them_on(practice)
    practice.later(minutes=7)
    practice.types(CLIENT, text)
    assert causes(practice) == [Cause.MAYBE_ON]
    assert duties.watches(practice.stage.engine.store, practice.client) == []


def test_no_is_asked_about_with_both_answers(practice: Practice) -> None:
    asked_to_put_them_on(practice)
    practice.later(minutes=7)
    practice.types(CLIENT, "no")
    labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
    assert labels[:2] == ["Bands are off", NEVER]
    assert causes(practice) == [Cause.MAYBE_ON]


def test_the_coach_reads_that_nobody_knows(practice: Practice) -> None:
    asked_to_put_them_on(practice)
    practice.later(minutes=7)
    text = practice.newest(COACH).text
    assert text.startswith("Ruta: no word since 'bands on' · bands may be on, 6 min\n")
    assert "Bands: asked for at 18:00 (6 min ago); nobody said that they went on" in text


def test_whoever_was_called_hears_that_it_is_over(practice: Practice) -> None:
    asked_to_put_them_on(practice)
    practice.later(minutes=12)
    assert "not answered yet (2)" in practice.newest(SECOND).text
    practice.taps(SECOND, "I am on it")
    practice.types(CLIENT, "never put them on")
    assert "nothing to do" in practice.newest(SECOND).text
    practice.later(days=2)
    assert not any("Still open" in text for text in practice.heard(SECOND))


def test_bands_that_went_on_in_this_session_are_asked_about_though_the_next_ones_were_not(
    practice: Practice,
) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "too tight")
    practice.taps(CLIENT, "Bands are off")
    practice.later(minutes=9, seconds=10)
    assert causes(practice) == [Cause.MAYBE_ON]
    practice.types(CLIENT, "not on")
    assert causes(practice) == []
    assert "A few short questions" in practice.heard(CLIENT)[-2]
    practice.later(days=1)
    assert any("day after training" in text for text in practice.heard(CLIENT))


def test_other_alerts_stay_when_that_one_ends(practice: Practice) -> None:
    asked_to_put_them_on(practice)
    practice.later(minutes=7)
    practice.types(CLIENT, "my chest hurts")
    practice.types(CLIENT, "not on")
    assert causes(practice)[-1] is Cause.EMERGENCY
