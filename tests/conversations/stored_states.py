"""States of dialogues as databases out there hold them.

`python -m tests.conversations.stored_states [DIALOGUE...]` adds samples of what has none yet. Nothing is ever taken out
of `stored_states.json`: somebody may have stopped in the middle of that talk.
"""

import json
import random
import re
import sys
from collections.abc import Iterator
from dataclasses import fields
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, get_args

import msgspec

from conversations.catalogue import CATALOGUE
from conversations.protocol import Dialogue, Event, Resumed, Said, Turn
from conversations.session.state import After, Phase
from core.screening.questions import Q
from tests.conversations.every_question import STOP, Question, asked_in, begun, question_of, questions
from tests.conversations.test_every_dialogue import KINDS, START, TEXTS, event_of

FILE = Path(__file__).parent / "stored_states.json"
PLAYS, LONGEST = 4, 14  # talks from each turn of a beginning, events in one

TIMES = re.compile(r"2026-\d\d-\d\dT[\d:.]+Z")
SAID = [*TEXTS, *"Springfield|3/4|chest pain|40 kg|max 40|my arm tingles|friday|lost count|5|2.5".split("|")]
SAID += "yes please|31 left 28 right|Dr. Silva|can't see|it burns|set 1 was 30|16".split("|")
# Answers that end their talk, so that no state holds them.
LAST = {
    "after": {"flagged", "said"},
    "before": {"flagged", "said"},
    "morning": {"flagged", "said"},
    "planning": {"test"},
    "still_numb": {"said"},
    "testing": {"flagged", "said"},
    "trouble": {"said"},
}

Stored = dict[str, list[Any]]


def kept() -> Stored:
    """All states, by the name of their dialogue."""
    found: Stored = json.loads(FILE.read_text(encoding="utf-8")) if FILE.exists() else {}
    return found


def shown(stored: Any) -> frozenset[str]:
    """What a state is a sample of: "at" each question, and each answer that is kept."""
    answers = stored["draft"] if isinstance(stored.get("draft"), dict) else stored
    given = {name for name, value in answers.items() if value and name != "brief"}
    step = re.sub(r"\d+", "N", stored.get("step") or stored.get("phase", ""))
    return frozenset(
        {f"at {step}", *given, *(f"after {stored[name]}" for name in ("after",) if name in stored)}
    )


def missing(dialogue: Dialogue[Any], states: list[Any]) -> set[str]:
    """What of its questions and answers no state shows."""
    seen = frozenset[str]().union(*map(shown, states))
    if dialogue.name == "session":
        wanted = {f.name for f in fields(dialogue.state)} - {"brief"}
        wanted |= {f"at {one}" for one in Phase} | {f"after {one}" for one in After}
    else:
        draft = get_args(dialogue.state)[1]
        wanted = {f.name for f in fields(draft) if f"at {f.name}" not in seen}
    if dialogue.name == "screening":
        wanted |= {f"at {one}" for one in Q}
    return wanted - seen - LAST.get(dialogue.name, set())


def met(dialogue: Dialogue[Any]) -> Iterator[Any]:
    """States that played beginnings, good answers and then random talk come through."""
    dice = random.Random(dialogue.name)
    yield from (turn.state for turn, _ in begun(dialogue))
    yield from (question.state for question in questions(dialogue))
    for turn, now in begun(dialogue) * PLAYS:
        for _ in range(LONGEST):
            if turn.state is None:
                break
            yield turn.state
            now += timedelta(seconds=40)
            turn = dialogue.advance(turn.state, _event(turn, dice, now), now)


def _event(turn: Turn[Any], dice: random.Random, now: datetime) -> Event:
    """Any event; what is tapped is one of the buttons."""
    asked = next((say for say in reversed(turn.replies) if say.asks), None)
    kind, text = dice.choice(KINDS), dice.choice(SAID)
    values = [choice.value for choice in asked.choices if choice.value != STOP] if asked is not None else []
    if kind == "tap" and asked is not None and values:
        return Said(now, dice.choice(values), asked.asks)
    return event_of("said" if kind == "tap" else kind, text, now, None)


def add(dialogue: Dialogue[Any], states: list[Any]) -> None:
    """Each state that shows what none before it did."""
    seen = set[str]().union(*map(shown, states))
    for state in met(dialogue):
        if state is None:
            continue
        stored = json.loads(msgspec.json.encode(state))
        if not shown(stored) <= seen:
            seen |= shown(stored)
            states.append(stored)
    states += _not_asked_yet(dialogue, states)


def _not_asked_yet(dialogue: Dialogue[Any], states: list[Any]) -> list[Any]:
    """A state for each question that no sample puts again; a session puts none about counts."""
    known = {question.step for question in put_again(dialogue, states)}
    found = {} if dialogue.name == "session" else {one.step: one.state for one in questions(dialogue)}
    return [json.loads(msgspec.json.encode(state)) for step, state in found.items() if step not in known]


def stored_questions(dialogue: Dialogue[Any]) -> list[Question]:
    """The open question of each sample, put again as after a restart."""
    return put_again(dialogue, kept()[dialogue.name])


def put_again(dialogue: Dialogue[Any], states: list[Any]) -> list[Question]:
    """The same of these states."""
    found = []
    for stored in states:
        state = msgspec.json.decode(msgspec.json.encode(stored), type=dialogue.state)
        at = max(map(datetime.fromisoformat, TIMES.findall(json.dumps(stored))), default=START)
        asked = asked_in(dialogue.advance(state, Resumed(at), at))
        if asked is not None:
            found.append(question_of(dialogue.name, state, asked, at))
    return found


def main() -> None:
    """Add samples of what has none yet, and say what is left."""
    states = kept()
    for name in sys.argv[1:] or CATALOGUE:
        dialogue = CATALOGUE[name]
        add(dialogue, states.setdefault(name, []))
        left = missing(dialogue, states[name])
        print(f"{name}: {len(states[name])} states" + (f", none of {sorted(left)}" if left else ""))
    lines = [f"{json.dumps(name)}: {json.dumps(states[name], ensure_ascii=False)}" for name in sorted(states)]
    FILE.write_text("{\n" + ",\n".join(lines) + "\n}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
