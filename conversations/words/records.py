"""Everything kept about a client, as a text to read."""

import json
from collections.abc import Mapping, Sequence
from contextlib import suppress
from datetime import datetime
from typing import Any

from conversations.words.before import ASK
from conversations.words.coach import DID
from conversations.words.movements import NAMES
from conversations.words.plan import plan_text
from conversations.words.screening import QUESTIONS
from core.calendar.zones import local
from core.plan_text import plan_from_text

FILES = (
    ("text", "my-data.txt", "Everything kept about you, to read."),
    ("json", "my-data.json", "The same for programs, complete."),
)
HEAD = (
    "Everything kept about {name} on {day}. Times are those of {zone}. Something wrong or missing? Tell your coach. "
    "'delete me' in the chat erases it."
)
CORRECTED = " (corrected later)"
# Tables in the order of reading; a table without a title here comes last under its own name.
TITLES = {
    "person": "You",
    "agreed": "What you agreed to",
    "detail": "Details",
    "screening_answer": "Your health answers",
    "screening_done": "What came of them",
    "cleared": "What your coach decided",
    "plan_given": "Your plans",
    "calendar_changed": "Days that were changed",
    "coach_did": "What your coach did",
    "session_started": "Sessions begun",
    "session_ended": "Sessions ended",
    "answered": "Questions around your sessions",
    "bands_on": "Bands on",
    "bands_off": "Bands off",
    "cuff_checked": "Looks at the bands",
    "set_done": "Sets",
    "walk_done": "Walks",
    "rated": "Pain and effort",
    "load_moved": "Loads that were moved",
    "noticed": "Other things you said",
    "alert": "Alerts about you",
    "planned": "What is planned",
    "watch": "Bands that are on now",
    "inbox": "What you wrote in the last two weeks",
    "outbox": "What I wrote in the last two weeks",
    "thread": "Conversations",
    "coach_thread": "What your coach is in the middle of about you",
    "coach_planned": "What your coach is to be asked about you",
    "invitation": "The invitation you used",
}
# Numbers of rows and the like: in the JSON file only.
HIDDEN = frozenset(
    "id person message replaces noted_at update_id thread chat priority attempts not_before failures floor"
    " brief state wake_at calls next_at handled_at failed created_at dropped".split()
)
HIDDEN_IN = {
    "outbox": {"question", "kind"},
    "thread": {"question"},
    "planned": {"about", "made_at"},
    "coach_planned": {"about"},
    "screening_answer": {"screening"},
    "screening_done": {"screening"},
    "cleared": {"screening"},
}
# Stored names as the client read them; any other is shown as it is stored.
AS_SAID: dict[tuple[str, str], Mapping[str, str]] = {
    ("coach_did", "action"): DID,
    ("screening_answer", "question"): {one.value: text for one, text in QUESTIONS.items()},
    ("answered", "question"): ASK,
}
NUMBER = "{number}", "the emergency number"  # in a question, as it was asked and as it is shown
YES_OR_NO = {"rough", "loose", "applied"}
WHEN = ("at", "received_at", "sent_at", "raised_at", "on_at", "due_at", "begun_at", "used_at")


def readable(
    sections: Mapping[str, Sequence[dict[str, Any]]], people: Mapping[int, str], zone: str, now: datetime
) -> str:
    """One line a row under its table's title; `people` names the coaches by number."""
    name = sections["person"][0]["name"]
    parts = [HEAD.format(name=name, day=local(now, zone).strftime("%d %B %Y"), zone=zone)]
    known = [table for table in TITLES if sections.get(table)]
    others = [table for table in sections if table not in TITLES and sections[table]]
    for table in (*known, *others):
        replaced = {row.get("replaces") for row in sections[table]} - {None}
        lines = (
            f"- {line}{CORRECTED * (row.get('id') in replaced)}"
            for row in sections[table]
            if (line := _line(table, row, people, zone))
        )
        parts.append("\n".join([_title(table), *lines]))
    return "\n\n".join(parts) + "\n"


def _title(table: str) -> str:
    title = TITLES.get(table, table.replace("_", " "))
    return f"{title}\n{'=' * len(title)}"


def _line(table: str, row: dict[str, Any], people: Mapping[int, str], zone: str) -> str:
    """When and what; nothing for a row without words, such as a tap."""
    when = next((row[name] for name in WHEN if isinstance(row.get(name), datetime)), None)
    hidden = {*HIDDEN, *WHEN, *HIDDEN_IN.get(table, ())}
    shown = ((name, _as_said(table, name, value)) for name, value in row.items() if name not in hidden)
    fields = [_field(name, value, people, zone) for name, value in shown]
    said = ", ".join(field for field in fields if field)
    if not said and "body" in row:
        return ""
    return f"{_time(when, zone)}  {said}".strip() if when else said


def _as_said(table: str, name: str, value: Any) -> Any:
    known = AS_SAID.get((table, name), {})
    return known[value].replace(*NUMBER) if value in known else value


def _field(name: str, value: Any, people: Mapping[int, str], zone: str) -> str:
    if value is None or value == "":
        return ""
    match name:
        case "by" | "taken_by" | "coach":
            shown = people.get(value, str(value))
        case "movement":
            shown = NAMES.get(value, value)
        case "plan":
            shown = _plan(value)
        case "body":
            return _words(value)
        case _ if name in YES_OR_NO:
            shown = "yes" if value else "no"
        case _:
            shown = _time(value, zone) if isinstance(value, datetime) else str(value)
    return f"{name.replace('_', ' ')}: {shown}"


def _plan(text: str) -> str:
    with suppress(ValueError):
        return plan_text(plan_from_text(text)).replace("\n", " ")
    return text


def _words(body: str) -> str:
    """What was said in an update or a letter; nothing for a tap."""
    plain = json.loads(body)
    message = plain.get("message") or plain.get("edited_message") or plain
    return str(message.get("text", "")).replace("\n", " ")


def _time(at: datetime, zone: str) -> str:
    return local(at, zone).strftime("%Y-%m-%d %H:%M")
