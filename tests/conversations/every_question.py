"""Every question of every dialogue: where good answers, waiting and a few played beginnings lead to."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, fields, replace
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from typing import Any

from conversations.catalogue import CATALOGUE
from conversations.protocol import Dialogue, Hurts, Opened, Said, Say, Turn, Woke
from conversations.stopwords.kinds import Kind
from core.calendar.recurrence import Weekday, weekly
from core.calendar.stored import when_to_text
from core.plan_text import plan_to_text
from core.plans import FIXED_AIMS, OPEN_AIMS, Exercise, Plan, Region, Scheme, Side
from core.templates import TEMPLATES, build
from core.units import Load
from tests.conversations.test_every_dialogue import START, TEXTS, brief_of

GOOD = [text for text in TEXTS if text]
GOOD += ["34", "70 kg", "172 cm", "555 0101", "done", "4", "Ana", "5 ft 8", "0 left", "180", "190/112"]
# Answers when all goes well.
WELL = ("no", "0", "on", "6", "under_2", "fine", "done", "off", "3", "t30", "1", "yes")
STOP = "stop"  # the engine hears it, and no dialogue
# A change before a plan is sent asks what `adjusting` asks: typed answers are tried there.
ALSO_ELSEWHERE = "change_"
LONGEST = 60  # turns when all goes well: all sets of a session

TEN_KG = Load(Decimal(10))
SQUAT = Exercise("goblet_squat", Region.LEGS, Scheme.OPEN, OPEN_AIMS, TEN_KG, (TEN_KG,))
CURL = Exercise("curl", Region.ARMS, Scheme.FIXED, FIXED_AIMS, TEN_KG, (TEN_KG,))
ROW = replace(CURL, movement="one_arm_row", sides=(Side.LEFT, Side.RIGHT))
WALK = Exercise("walk", Region.LEGS, Scheme.WALK, walk_min=10, walk_kmh=4.0, limit_min=15)
DAYS = when_to_text(weekly((Weekday.MON, Weekday.THU), time(19), "Europe/Lisbon", date(2026, 1, 5)))
CHANGING = {"planned_when": DAYS, "parts": (("legs", False),), "said_at": START}
BARE = plan_to_text(build(TEMPLATES["travel"], (), {}))  # without equipment
ON = ("on", "6")  # bands on, and how tight
LOOSE = ("on", "3", "under_2", "under_2", "fine")


@dataclass(frozen=True, slots=True)
class Beginning:
    """A talk that begins so: what its brief holds beyond what it needs, and what is answered first."""

    more: dict[str, Any]
    said: tuple[str, ...] = ()


# What only some briefs or an uncommon way lead to.
BEGINNINGS: dict[str, tuple[Beginning, ...]] = {
    "adjusting": (
        Beginning({}, ("days", "from 3/4 mon 7pm")),
        Beginning({"at_loads": BARE}, ("movements", "Add one", "curl", "4, 6, 8 kg", "6 kg")),
    ),
    "changing": (
        Beginning(CHANGING | {"said": "3/4 at 7pm"}),
        Beginning(CHANGING | {"said": "move thursday to 3/4/2026", "date_order": "dd/mm"}),
        Beginning(CHANGING | {"said": "at 7 on thursday", "date_order": "dd/mm"}),
        Beginning(CHANGING | {"said": "move thursday to tuesday 7am"}),
        Beginning(CHANGING | {"said": "move thursday to tuesday 7am", "by_coach": True, "coach": 1}),
    ),
    "clearing": (
        Beginning({"tier": "clinician_first"}, ("cleared", "Dr. Silva", "today", "light loads")),
        Beginning({"tier": "clear", "answers": (("age", "34"),)}, ("held",)),
        Beginning({"tier": "clear"}, ("held", "3/4")),
    ),
    "consent": (Beginning({}, ("yes", "44", "Portland")),),
    "gauging": (Beginning({}, ("leg_18", "30", "female", "55")),),
    "morning": (Beginning({"stopped": "said_emergency", "stopped_said": "numb foot"}),),
    "planning": (
        Beginning({}, ("one_arm",)),
        Beginning({}, ("one_dumbbell", "2-20 by 2 kg", "max 40")),
        Beginning({"may_test": True}, ("one_dumbbell", "2-20 by 2 kg")),
        Beginning({}, ("one_dumbbell", "2-20 by 2 kg", "6 kg", "from 3/4 mon 7pm")),
        Beginning({}, ("one_leg", "2-20 by 2 kg", "6 kg")),
        Beginning({}, ("one_dumbbell", "2-20 by 2 kg", "6 kg", "mon tue wed and thu 7pm")),
    ),
    "preferences": (Beginning({"by_coach": True}, ("digest_at", "mon or tue 7")),),
    "pulse": (Beginning({}, ("90", "95")),),
    "saving_template": (Beginning({}, ("Ruta squats",)),),
    "session": (
        Beginning({}, (*LOOSE, *LOOSE)),
        Beginning({"exercises": (CURL, SQUAT)}),
        Beginning({"exercises": (CURL, SQUAT)}, (*ON, "can't see")),
        Beginning({"exercises": (SQUAT, CURL), "bands": {"legs": ("A", "B")}}, (*ON, "can't see")),
        Beginning({"exercises": (ROW,), "gentle": True, "number": 1}),
        Beginning({"exercises": (WALK,)}),
    ),
    "trouble": (
        Beginning({"kind": Kind.UNSURE, "reader": "Otto", "spells": (("1-1", "1.1"),)}),
        Beginning({"kind": Kind.SORE}),
        Beginning({"kind": Kind.HURTS}),
        Beginning({"spells": (("1-1", "1.1"),)}),
    ),
}


@dataclass(frozen=True, slots=True)
class Question:
    """An open question: the dialogue's state (as stored) in which it is asked, and what its buttons say and mean.

    `asks`: its id, as a reply names it.
    """

    dialogue: str
    step: str
    state: Any
    labels: tuple[str, ...]
    at: datetime
    asks: str = ""


def full_brief(dialogue: Dialogue[Any], beginning: Beginning) -> Any:
    """A brief with something to ask about."""
    more = {"at_loads": plan_to_text(Plan("squats", (SQUAT,))), "coaches": (("7", "Otto"), ("8", "Kai"))}
    brief = brief_of(dialogue)
    usual = {f.name: more[f.name] for f in fields(brief) if f.name in more}
    return replace(brief, **(usual | beginning.more))


def begun(dialogue: Dialogue[Any]) -> list[tuple[Turn[Any], datetime]]:
    """Every turn of every beginning when all goes well."""
    beginnings = (Beginning({}), *BEGINNINGS.get(dialogue.name, ()))
    return [turn for beginning in beginnings for turn in _smooth(dialogue, beginning)]


def question_of(dialogue: str, state: Any, asked: Say, at: datetime) -> Question:
    """The question that is open in this state."""
    labels = tuple(word for choice in asked.choices for word in (choice.label, choice.value))
    return Question(dialogue, step_of(asked), state, labels, at, asked.asks or "")


def step_of(asked: Say) -> str:
    """Its id without numbers."""
    return re.sub(r"\d+", "N", asked.asks or "")


def questions(dialogue: Dialogue[Any]) -> list[Question]:
    """Every question that good answers and waiting lead to, each once, also those behind a whole session that goes well.

    A session asks the same of each limb and set: only from the smooth way through it do short ways lead to all.
    """
    found: dict[str, Question] = {}
    waiting = begun(dialogue)
    while waiting:
        turn, at = waiting.pop(0)
        asked = asked_in(turn)
        if turn.state is None or asked is None:
            continue
        step = step_of(asked)
        # The beginning of its words tells the value of a pain ceiling from that of a rest.
        key = f"{step} {len(asked.choices)} {re.sub(r'[^a-z]+', ' ', asked.text.casefold())[:20]}"
        if key in found:
            continue
        found[key] = question_of(dialogue.name, turn.state, asked, at)
        waiting += [(after, at + timedelta(seconds=40)) for after in _onward(dialogue, turn, asked, at)]
    return list(found.values())


def _smooth(dialogue: Dialogue[Any], beginning: Beginning) -> Iterator[tuple[Turn[Any], datetime]]:
    """Every turn when all goes well after it began so."""
    at, first = START, list(beginning.said)
    turn = dialogue.advance(None, Opened(at, full_brief(dialogue, beginning)), at)
    for _ in range(LONGEST):
        yield turn, at
        asked = asked_in(turn)
        if turn.state is None or (asked is None and turn.wake_at is None):
            return
        at += timedelta(seconds=40)
        if asked is None:
            at = max(at, turn.wake_at or at)
            turn = dialogue.advance(turn.state, Woke(at), at)
            continue
        values = [choice.value for choice in asked.choices]
        well = next((one for one in WELL if one in values), GOOD[0])
        text = first.pop(0) if first else well
        turn = dialogue.advance(turn.state, Said(at, text, asked.asks if text in values else None), at)


def asked_in(turn: Turn[Any]) -> Say | None:
    """The open question."""
    return next((say for say in reversed(turn.replies) if say.asks), None)


def _onward(dialogue: Dialogue[Any], turn: Turn[Any], asked: Say, at: datetime) -> Iterator[Turn[Any]]:
    at += timedelta(seconds=40)
    for choice in asked.choices:
        if choice.value != STOP:
            yield dialogue.advance(turn.state, Said(at, choice.value, asked.asks), at)
    for text in () if (asked.asks or "").startswith(ALSO_ELSEWHERE) else GOOD:
        yield dialogue.advance(turn.state, Said(at, text, None, 7), at)
    if turn.wake_at is not None:
        yield dialogue.advance(turn.state, Woke(turn.wake_at), turn.wake_at)
    if dialogue.name == "session":
        yield dialogue.advance(turn.state, Hurts(at, "it hurts"), at)


def all_questions() -> list[Question]:
    """Of every dialogue."""
    return [question for name in sorted(CATALOGUE) for question in questions(CATALOGUE[name])]
