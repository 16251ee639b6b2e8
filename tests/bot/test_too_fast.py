"""How fast somebody may write at all; words about stopping are never limited."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.engine.limits import CLIENT as CLIENT_RATE
from bot.engine.limits import REMEMBERED, Limits, Rate
from bot.engine.limits import STRANGER as STRANGER_RATE
from core.store import duties, people
from tests.bot.arriving import NUMBERS, invitation, message
from tests.practice import CLIENT, OTHER, START, Practice


@pytest.fixture
def flooded(practice: Practice) -> Iterator[Practice]:
    """A client who has written as much as may be."""
    engine = practice.stage.engine
    burst = int(CLIENT_RATE.burst)
    engine.receive([(next(NUMBERS), {"message": message(CLIENT, f"hm {number}")}) for number in range(burst)])
    practice.settle()
    return practice


def test_a_flood_is_answered_once_and_then_not_at_all(flooded: Practice) -> None:
    before = len(flooded.heard(CLIENT))
    for _ in range(5):
        flooded.types(CLIENT, "hm")
    [said] = flooded.heard(CLIENT)[before:]
    assert "a lot at once" in said
    flooded.later(seconds=1)
    flooded.types(CLIENT, "plan")
    assert "plan" in flooded.newest(CLIENT).text


@pytest.mark.parametrize(
    "text", ["stop", "chest pain", "my foot is numb", "it hurts", "dizzy", "I can't feel my leg"]
)
def test_words_about_stopping_are_never_limited(flooded: Practice, text: str) -> None:
    for _ in range(3):
        flooded.types(CLIENT, "hm")
    flooded.types(CLIENT, text)
    assert "a lot at once" not in flooded.newest(CLIENT).text
    client = people.by_chat(flooded.stage.engine.store, CLIENT)
    assert client is not None
    assert duties.open_alerts(flooded.stage.engine.store, client.id) or "off" in flooded.newest(CLIENT).text


def test_nobody_with_bands_on_is_limited(practice: Practice) -> None:
    practice.in_a_set()
    for _ in range(int(CLIENT_RATE.burst) + 5):
        practice.stage.engine.limits.allow(CLIENT, CLIENT_RATE, practice.stage.clock.now())
    practice.types(CLIENT, "31")
    assert practice.sets() == {1: 31}


def test_what_waited_during_an_outage_is_no_flood(practice: Practice) -> None:
    def later(number: int) -> dict[str, Any]:
        return message(CLIENT, "hm") | {"date": int(START.timestamp()) + 10 * number}

    practice.stage.clock.skip_to(START + timedelta(hours=2))
    practice.stage.engine.receive([(next(NUMBERS), {"message": later(number)}) for number in range(300)])
    practice.settle()
    assert not any("a lot at once" in text for text in practice.heard(CLIENT))


@given(st.lists(st.floats(0, 5), max_size=80), st.floats(1, 5), st.floats(0.1, 2))
def test_no_more_gets_through_than_burst_and_rate_allow(
    gaps: list[float], burst: float, per_s: float
) -> None:
    limits, at, through = Limits(), START, 0
    for gap in gaps:
        at += timedelta(seconds=gap)
        through += limits.allow(1, Rate(burst, per_s), at)
    assert through <= burst + per_s * sum(gaps) + 0.001
    assert through >= min(len(gaps), int(burst))


def test_only_so_many_chats_are_remembered() -> None:
    limits = Limits()
    for chat in range(REMEMBERED + 100):
        limits.allow(chat, STRANGER_RATE, datetime(2026, 3, 2, tzinfo=UTC))
    assert len(limits.buckets) == REMEMBERED
    assert (0, STRANGER_RATE) not in limits.buckets


def test_who_joins_after_many_words_as_a_stranger_begins_afresh(practice: Practice) -> None:
    code = invitation(practice)
    for _ in range(int(STRANGER_RATE.burst) - 1):
        practice.types(OTHER, "hello?")
    practice.types(OTHER, code)
    for _ in range(20):
        practice.types(OTHER, "hm")
    assert not any("a lot at once" in text for text in practice.heard(OTHER))
