"""Every dialogue answers any event in any state it can be stored in, and its state survives storage."""

from dataclasses import MISSING, fields
from datetime import UTC, datetime, timedelta
from typing import Any, get_type_hints

import msgspec
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from conversations.catalogue import CATALOGUE
from conversations.protocol import (
    BandsCameOff,
    Barred,
    Cancelled,
    Corrected,
    Dialogue,
    Event,
    Halted,
    Hurts,
    Media,
    Opened,
    Resumed,
    Said,
    Sent,
    TimeIsUp,
    WentBack,
    Woke,
)
from conversations.stopwords.kinds import Kind
from core.plans import OPEN_AIMS, Exercise, Region, Scheme

START = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
FILLED: dict[str, Any] = {
    "session": "1-1",
    "number": 3,
    "client": 5,
    "coach": 1,
    "client_name": "Ruta",
    "coach_name": "Coach",
    "plan_name": "squats",
    "screening": "5-1",
    "tier": "coach_looks",
    "kind": Kind.NERVE,
    "said": "my foot is numb",
    "exercises": (Exercise("goblet_squat", Region.LEGS, Scheme.OPEN, OPEN_AIMS),),
    "regions": ("arms", "legs"),
    "zone": "Europe/Lisbon",
    "today": "2026-03-02",
    "owned": {"A": "Upper legs, 7 cm wide"},
    "movement": "goblet_squat",
    "movement_name": "Goblet squat",
    "question": "could_do_more",
}
TEXTS = [
    "yes", "no", "not sure", "31", "7", "0", "Lisbon", "done", "off", "on", "mon and thu 7pm", "12 kg", "2-20 by 2 kg",
    "124/78", "all fine", "skip", "send it", "", "NaN", "１５", "🙂", "stop it", "half past", "x" * 300,
]  # fmt: skip
KINDS = [
    "said",
    "tap",
    "edit",
    "woke",
    "back",
    "resumed",
    "sent",
    "hurts",
    "up",
    "off",
    "cancel",
    "halted",
    "barred",
]


def brief_of(dialogue: Dialogue[Any]) -> Any:
    """A brief with every field that has no default."""
    needed = [f.name for f in fields(dialogue.brief) if f.default is MISSING and f.default_factory is MISSING]
    unknown = set(needed) - set(FILLED)
    assert not unknown, f"{dialogue.name}: give this test a value for {unknown}"
    return dialogue.brief(**{name: FILLED[name] for name in needed})


def event_of(kind: str, text: str, at: datetime, question: str | None) -> Event:
    events: dict[str, Event] = {
        "said": Said(at, text, None, 7),
        "tap": Said(at, text, question),
        "edit": Corrected(at, text, 7),
        "woke": Woke(at),
        "back": WentBack(at),
        "resumed": Resumed(at),
        "sent": Sent(at, Media.PHOTO, "file", 8),
        "hurts": Hurts(at, text),
        "up": TimeIsUp(at, "1.1"),
        "off": BandsCameOff(at, "1.1"),
        "cancel": Cancelled(at),
        "halted": Halted(at, "said_nerve"),
        "barred": Barred(at, "open_alert"),
    }
    return events[kind]


@pytest.mark.parametrize("name", sorted(CATALOGUE))
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(script=st.lists(st.tuples(st.sampled_from(KINDS), st.sampled_from(TEXTS)), max_size=14))
def test_any_event_in_any_stored_state_gets_a_turn_that_can_be_stored(
    name: str, script: list[tuple[str, str]]
) -> None:
    dialogue, now = CATALOGUE[name], START
    turn = dialogue.advance(None, Opened(now, brief_of(dialogue)), now)
    for kind, text in script:
        if turn.state is None:
            return
        asked = next((say.asks for say in reversed(turn.replies) if say.asks), None)
        stored = msgspec.json.decode(msgspec.json.encode(turn.state), type=dialogue.state)
        assert stored == turn.state
        now += timedelta(seconds=40)
        turn = dialogue.advance(stored, event_of(kind, text, now, asked), now)
        if kind in ("said", "tap") and turn.state is not None and name != "session":
            assert turn.replies, f"{name} said nothing to {text!r}"


@pytest.mark.parametrize("name", sorted(CATALOGUE))
def test_the_types_of_a_brief_can_be_read_from_what_is_stored(name: str) -> None:
    dialogue = CATALOGUE[name]
    brief = brief_of(dialogue)
    assert msgspec.json.decode(msgspec.json.encode(brief), type=dialogue.brief) == brief
    assert set(get_type_hints(dialogue.brief)) == {field.name for field in fields(dialogue.brief)}
