"""States of dialogues as databases out there hold them. `python -m tests.conversations.stored_states` adds to them.

Nothing is ever taken out of `stored_states.json`: somebody may have stopped in the middle of that talk.
"""

import json
import random
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

import msgspec

from conversations.catalogue import CATALOGUE
from conversations.protocol import Dialogue, Opened
from core.plan_text import plan_to_text
from core.plans import Plan
from tests.conversations.test_every_dialogue import KINDS, START, TEXTS, brief_of, event_of
from tests.practice import SQUAT

FILE = Path(__file__).parent / "stored_states.json"
PLAYS, LONGEST, MOST = 150, 14, 4  # tries a dialogue, events in one, states kept of one
PLAN = plan_to_text(Plan("squats", (SQUAT,)))
MORE: dict[str, dict[str, Any]] = {  # of a brief, beyond what it needs: without it the talk is over at once
    "adjusting": {"at_loads": PLAN},
    "covering": {"coaches": (("2", "Otto"), ("3", "Kai"))},
    "saving_template": {"at_loads": PLAN},
}

Stored = dict[str, list[Any]]


def kept() -> Stored:
    """All states, by the name of their dialogue."""
    found: Stored = json.loads(FILE.read_text(encoding="utf-8")) if FILE.exists() else {}
    return found


def met(dialogue: Dialogue[Any], dice: random.Random) -> list[Any]:
    """States that random talk comes through, each with another set of fields filled than those before."""
    brief = replace(brief_of(dialogue), **MORE.get(dialogue.name, {}))
    seen: dict[frozenset[str], Any] = {}
    for _ in range(PLAYS):
        now = START
        turn = dialogue.advance(None, Opened(now, brief), now)
        for _ in range(LONGEST):
            if turn.state is None:
                break
            seen.setdefault(_filled(turn.state), json.loads(msgspec.json.encode(turn.state)))
            asked = next((say.asks for say in reversed(turn.replies) if say.asks), None)
            now += timedelta(seconds=40)
            turn = dialogue.advance(
                turn.state, event_of(dice.choice(KINDS), dice.choice(TEXTS), now, asked), now
            )
    fullest = sorted(seen, key=lambda names: (-len(names), sorted(names)))
    return [seen[names] for names in fullest[:: max(1, len(fullest) // MOST)][:MOST]]


def _filled(state: Any) -> frozenset[str]:
    plain = json.loads(msgspec.json.encode(state))
    inner = plain.get("draft") if isinstance(plain.get("draft"), dict) else {}
    return frozenset(name for part in (plain, inner) for name, value in part.items() if value)


def main() -> None:
    """Add states of dialogues that have none yet."""
    states = kept()
    for name, dialogue in CATALOGUE.items():
        if name not in states:
            states[name] = met(dialogue, random.Random(name))
    lines = [f"{json.dumps(name)}: {json.dumps(states[name], ensure_ascii=False)}" for name in sorted(states)]
    FILE.write_text("{\n" + ",\n".join(lines) + "\n}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
