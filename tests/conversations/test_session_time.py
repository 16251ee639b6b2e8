"""A session that the limit of the bands cuts short is not one that was done whole."""

from dataclasses import replace

from conversations.protocol import BandsCameOff, TimeIsUp
from conversations.words import session as words
from core.facts import SessionEnded
from tests.conversations.test_session import CURL, SQUAT, Played, played


def ends(p: Played) -> list[str]:
    return [one.why for one in p.facts(SessionEnded)]  # type: ignore[attr-defined]


def test_a_session_whose_time_is_up_is_recorded_so_and_told_kindly() -> None:
    p = played().fits().types("done", 100).types("31")
    p.give(TimeIsUp(p.now, "1.1"))
    p.types("off")
    assert ends(p) == ["time"]
    assert words.OVER["time"] in p.heard


def test_time_that_went_before_any_set_was_counted_is_no_work_done() -> None:
    p = played().types("on").types("6")
    p.give(TimeIsUp(p.now, "1.1"))
    p.types("Bands are off")
    assert ends(p) == ["off_early"]
    assert words.OVER_EARLY in p.heard


def test_a_set_that_could_not_begin_in_time_is_the_same() -> None:
    p = played(replace(SQUAT, limit_min=3)).fits().types("done", 100).types("31").waits()
    assert words.BANDS_OFF_TIME in p.heard
    assert ends(p.types("off")) == ["time"]


def test_bands_taken_off_by_the_calls_own_button_are_the_same() -> None:
    p = played().fits().types("done", 100).types("31")
    p.give(BandsCameOff(p.now, "1.1"))
    assert ends(p) == ["time"]


def test_the_movement_that_was_cut_short_is_not_forgotten_when_the_next_one_is_whole() -> None:
    p = played(SQUAT, CURL).fits().types("done", 100).types("31")
    p.give(BandsCameOff(p.now, "1.1")).waits()
    p.fits("6").types("30 15 15 15", 300).types("off")
    assert ends(p) == ["time"]


def test_a_whole_session_is_done() -> None:
    assert ends(played().fits().types("31 16 8", 100).types("off")) == ["done"]
