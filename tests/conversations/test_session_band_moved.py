"""A band that slid or came loose between checks: set back, looked at anew, and the set is done again."""

from datetime import timedelta

import pytest

from conversations.protocol import Alert, Hurts, TooTight
from conversations.session.looking import says_moved
from conversations.words import session as words
from core.facts import Noticed
from core.plans import Region
from core.safety.causes import Cause
from tests.conversations.test_session import played


@pytest.mark.parametrize(
    "text",
    [
        "the band slid down",
        "Band slipped a bit",
        "one band is loose now",
        "band came loose!",
        "left one slid",
        "it slipped",
        "bands have slid down a bit",
        "my left band came a bit loose",
        "the right band keeps slipping down",
        "sorry, one slipped",
    ],
)
def test_said_in_many_words(text: str) -> None:
    assert says_moved(text)


@pytest.mark.parametrize(
    "text",
    [
        "the band slid and my foot is numb",
        "my face slid down",
        "the band is too tight",
        "it came off",
        "my arm dropped",
        "my knee slipped",
        "i feel loose",
        "they are fine",
        "it is gone",
    ],
)
def test_anything_beside_it_is_left_to_the_stop_words(text: str) -> None:
    assert not says_moved(text)


@pytest.mark.parametrize("resting", [False, True])
def test_it_is_set_back_and_looked_at_before_the_next_rep(resting: bool) -> None:
    p = played().fits()
    if resting:
        p.types("done", 60).types("31", 5)
    p.types("the band slid down", 3)
    said_at = p.now
    assert p.heard.startswith("No more reps now.")
    assert words.PLACE[Region.LEGS] in p.heard
    p.fits()
    assert ("Go · set 2" if resting else "Set 1 of") in p.heard
    assert p.sets() == ({1: 31} if resting else {})
    assert p.facts(Noticed) == [Noticed(said_at, "band_moved", "the band slid down")]


def test_twice_ends_it_with_bands_off_and_the_coach_told() -> None:
    p = played().fits().types("it slipped", 9).fits()
    p.types("one band came loose", 9)
    assert p.heard.startswith("Bands off now, both.")
    assert [effect.cause for effect in p.effects if isinstance(effect, Alert)] == [Cause.CHECKS_FAILED]


@pytest.mark.parametrize("resting", [False, True])
def test_too_tight_in_a_rest_leads_to_the_next_set_and_in_a_set_to_the_same(resting: bool) -> None:
    """After a new fit in the rest set 1 came again, and its count would have been written over."""
    p = played().fits()
    if resting:
        p.types("done", 60).types("31", 5)
    p.now += timedelta(seconds=3)
    p.give(TooTight(p.now, "the band is too tight"))
    assert p.heard.startswith("Bands off now, both.")
    p.types("off", 5).waits()
    p.fits()
    assert ("Go · set 2" if resting else "Set 1 of") in p.heard


def test_a_burn_in_a_rest_goes_on_with_the_next_set() -> None:
    p = played().fits().types("done", 60).types("31", 5)
    p.now += timedelta(seconds=3)
    p.give(Hurts(p.now, "it burns")).types("muscle", 2)
    p.types("go on", 2)
    while "Go · set 2" not in p.heard:
        assert "Set 1 of" not in p.heard
        p.waits()
    assert p.sets() == {1: 31}
