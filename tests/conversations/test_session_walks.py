"""A walk with bands as it is played: its minutes, the bands that come off at its end, and who went quiet."""

from datetime import UTC, datetime, timedelta

import pytest

from conversations.protocol import Alert
from conversations.words import session as words
from core.facts import BandsOff, SessionEnded, WalkDone
from core.plans import Exercise, Region, Scheme
from tests.conversations.test_session import Played, played

WALK = Exercise("walk", Region.LEGS, Scheme.WALK, walk_min=10, walk_kmh=4.0, limit_min=15)


def over_its_minutes() -> Played:
    """Ten minutes walked, and told to take the bands off."""
    p = played(WALK).fits().waits()
    assert p.heard == words.WALK_TIME.format(minutes=10)
    return p


def tap_the_only_button(p: Played) -> Played:
    asked = p.said[-1]
    button = next(one for one in asked.choices if one.value != "stop")
    return p.taps(button.value, asked.asks or "", 20)


def test_one_tap_on_bands_are_off_is_enough_when_the_minutes_are_over() -> None:
    p = tap_the_only_button(over_its_minutes())
    assert [one.why for one in p.facts(BandsOff)] == ["done"]  # type: ignore[attr-defined]
    assert len(p.facts(WalkDone)) == 1
    assert p.over


@pytest.mark.parametrize("text", ["off", "both off", "removed"])
def test_a_plain_off_is_understood_when_the_minutes_are_over(text: str) -> None:
    assert over_its_minutes().types(text, 20).over


def test_the_tap_on_im_back_still_asks_for_the_bands() -> None:
    p = tap_the_only_button(played(WALK).fits())
    assert p.heard == words.BANDS_OFF
    assert p.facts(BandsOff) == []


def test_the_coach_reads_that_it_was_a_walk_that_went_quiet() -> None:
    p = over_its_minutes().waits()
    [alert] = [one for one in p.effects if isinstance(one, Alert)]
    assert alert.said == words.QUIET_SAID_WALK
    p.types("off")
    assert [one.why for one in p.facts(SessionEnded)] == ["quiet"]  # type: ignore[attr-defined]
    assert words.OVER_EARLY in p.heard


def test_the_minutes_without_bands_are_said_as_long_as_they_last() -> None:
    p = played(WALK).fits(feeling="tingling").types("off")
    assert p.heard == words.NEW_FIT.format(minutes=5)
    since = p.now
    assert words.LOOSER in p.waits().heard
    assert p.now - since == timedelta(minutes=5)


def test_a_walk_right_after_bands_came_off_says_how_long_it_waits() -> None:
    off_at = datetime(2026, 3, 2, 17, 59, tzinfo=UTC)
    p = played(WALK, bands_off_at=off_at)
    assert p.heard.endswith(words.OFF_JUST_NOW.format(minutes=5))
    assert words.LOOSER not in p.waits().heard
    assert p.now - off_at == timedelta(minutes=5)
