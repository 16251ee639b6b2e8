""" "Bands off now, all normal" while no band is known to be on: news, no cry, and never a stop."""

import pytest

from conversations.words import engine as engine_words
from conversations.words import trouble as words
from core.facts import BandsOff
from core.safety.causes import Cause
from core.store import duties, facts, threads
from tests.practice import CLIENT, Practice

FINE = (
    "bands off now, all normal",
    "bands are off now, feeling fine",
    "took the bands off, everything is fine",
    "they are off, all good",
)
BARE = ("bands off now", "bands are off now", "took the bands off")


def causes(practice: Practice) -> list[Cause]:
    return [one.cause for one in duties.open_alerts(practice.stage.engine.store, practice.client)]


@pytest.mark.parametrize("text", FINE)
def test_with_all_normal_it_is_thanked_for_and_kept(practice: Practice, text: str) -> None:
    practice.types(CLIENT, text)
    assert practice.newest(CLIENT).text == engine_words.TIME_UP_THANKS
    off = facts.latest(practice.stage.engine.store, BandsOff, practice.client)
    assert off is not None
    assert off.why == "unasked"
    assert causes(practice) == []


@pytest.mark.parametrize("text", [*BARE, "bands off please"])
def test_alone_it_is_asked_about(practice: Practice, text: str) -> None:
    practice.types(CLIENT, text)
    assert practice.newest(CLIENT).text == words.ASK_WRONG
    assert causes(practice) == []


@pytest.mark.parametrize(
    "text", ["bands off now, my knee hurts", "bands off, i feel dizzy", "bands off now, not normal"]
)
def test_whatever_else_is_wrong_is_never_taken_for_news(practice: Practice, text: str) -> None:
    practice.types(CLIENT, text)
    assert causes(practice) != [] or practice.newest(CLIENT).text == words.ASK_WRONG


@pytest.mark.parametrize(
    ("text", "closed"), [*((text, True) for text in FINE), *((text, False) for text in BARE)]
)
def test_it_answers_whether_something_is_wrong_only_with_all_normal(
    practice: Practice, text: str, closed: bool
) -> None:
    practice.types(CLIENT, "help me")
    practice.types(CLIENT, text)
    assert causes(practice) == []
    assert (threads.floor(practice.stage.engine.store, practice.client) is None) is closed


@pytest.mark.parametrize("text", BARE)
def test_it_is_no_worse(practice: Practice, text: str) -> None:
    practice.types(CLIENT, "my foot is numb")
    practice.types(CLIENT, text)
    assert causes(practice) == [Cause.NERVE]
    assert practice.newest(CLIENT).text == words.ASK_NOW


def test_before_any_band_is_on_it_still_ends_the_session(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    practice.types(CLIENT, "bands off now")
    assert causes(practice) == [Cause.STOPPED]
