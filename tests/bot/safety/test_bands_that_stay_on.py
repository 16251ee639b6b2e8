"""A band that does not come off: cut it, get help, the coach hears now, and it is asked about until both are off."""

import pytest

from core.facts import BandsOff
from core.safety.causes import Cause
from core.store import duties, facts, threads
from tests.practice import CLIENT, COACH, Practice


def causes(practice: Practice) -> list[Cause]:
    return [one.cause for one in duties.open_alerts(practice.stage.engine.store, practice.client)]


def offs(practice: Practice) -> int:
    return len(facts.current(practice.stage.engine.store, BandsOff, practice.client))


def cut(practice: Practice, since: int) -> bool:
    return any("cut it with scissors" in text for text in practice.heard(CLIENT)[since:])


@pytest.mark.parametrize(
    "text", ["my band is stuck", "I can't get it off", "the velcro won't open", "it's jammed"]
)
def test_a_stuck_band_in_a_set_is_cut_and_the_coach_hears_now(practice: Practice, text: str) -> None:
    practice.in_a_set()
    since = len(practice.heard(CLIENT))
    practice.types(CLIENT, text)
    assert cut(practice, since)
    assert "emergency number" in " ".join(practice.heard(CLIENT)[since:])
    assert practice.newest(CLIENT).text == "Are the bands off?"
    assert causes(practice) == [Cause.STUCK]
    assert text in practice.heard(COACH)[-1]


@pytest.mark.parametrize(
    "text", ["they are stuck", "still on", "one is off, one on", "can't get it off", "stuck"]
)
def test_to_are_the_bands_off_these_are_a_no_and_an_alarm(practice: Practice, text: str) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "stop")
    assert practice.newest(CLIENT).text == "Are the bands off?"
    since = len(practice.heard(CLIENT))
    practice.types(CLIENT, text)
    assert cut(practice, since)
    assert Cause.STUCK in causes(practice)
    assert practice.newest(CLIENT).text == "Are the bands off?"
    live = threads.live(practice.stage.engine.store, practice.client)
    assert [thread.dialogue for thread in live] == ["trouble"]
    said = len(practice.heard(CLIENT))
    practice.later(minutes=2)
    assert len(practice.heard(CLIENT)) > said  # asked again, not left alone
    assert offs(practice) == 0
    practice.types(CLIENT, "both off")
    assert offs(practice) == 1


def test_one_band_off_is_not_off(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "stop")
    practice.types(CLIENT, "one is off")
    assert "And the other one?" in practice.newest(CLIENT).text
    assert offs(practice) == 0
    practice.types(CLIENT, "the other is off too")
    assert offs(practice) == 1


@pytest.mark.parametrize("text", ["ok", "yes", "👍", "done"])
def test_an_ok_to_bands_off_is_asked_about(practice: Practice, text: str) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31 16")
    practice.types(CLIENT, text)
    assert practice.newest(CLIENT).text == "Both off?"
    assert offs(practice) == 0
    practice.types(CLIENT, "ok")
    assert practice.newest(CLIENT).text == "Both off?"
    practice.types(CLIENT, "yes")
    assert offs(practice) == 1


@pytest.mark.parametrize("text", ["bands off", "took them off", "off now", "they're off", "done, off"])
def test_told_to_take_them_off_bands_off_is_the_answer_and_no_new_stop(practice: Practice, text: str) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31 16")
    practice.types(CLIENT, text)
    assert offs(practice) == 1
    assert causes(practice) == []


def test_taking_them_off_is_not_off_yet(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "31 16")
    practice.types(CLIENT, "wait")
    assert offs(practice) == 0


def test_a_band_that_is_stuck_before_the_session_knew_of_it_is_asked_about_until_it_is_off(
    practice: Practice,
) -> None:
    practice.types(CLIENT, "my band is stuck")
    assert practice.newest(CLIENT).text == "Are the bands off?"
    assert causes(practice) == [Cause.STUCK]


def test_start_with_bands_left_on_after_an_emergency_asks_for_them_first(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "my chest hurts")
    practice.later(minutes=16)
    practice.types(CLIENT, "start")
    told, asked = practice.messages(CLIENT)[-2:]
    assert told.text.startswith("Bands off now. Call your local emergency number now.")
    assert asked.text == "Are the bands off?"
    practice.taps(CLIENT, "Bands are off")
    assert duties.watches(practice.stage.engine.store, practice.client) == []


def test_start_with_bands_left_on_and_no_alert_asks_for_them_first(practice: Practice) -> None:
    practice.types(CLIENT, "bands are on")
    practice.types(CLIENT, "start")
    assert practice.newest(CLIENT).text.startswith("Bands off first")
