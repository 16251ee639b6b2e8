"""Every question of every dialogue, and what becomes of a strange answer to it."""

import json
import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass, replace
from datetime import datetime, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any

import msgspec

from bot.engine.updates import sound
from conversations.answers.choices import NO, NOT_SURE, YES
from conversations.answers.lexing import words
from conversations.catalogue import CATALOGUE
from conversations.protocol import Begin, Dialogue, Do, Hurts, Opened, Record, Said, Say, Turn, Woke
from core.plan_text import plan_to_text
from core.plans import OPEN_AIMS, Exercise, Plan, Region, Scheme
from core.units import Load
from tests.conversations.test_every_dialogue import START, TEXTS, brief_of

HERE = Path(__file__).parent
STRINGS: tuple[str, ...] = tuple(
    dict.fromkeys(
        sound(text) for name in ("blns", "own") for text in json.loads((HERE / f"{name}.json").read_text())
    )
)
GOOD = [text for text in TEXTS if text] + [
    "34",
    "70 kg",
    "172 cm",
    "555 0101",
    "done",
    "4",
    "Ana",
    "5 ft 8",
    "0 left",
]
WELL = (
    "no",
    "0",
    "on",
    "6",
    "under_2",
    "fine",
    "done",
    "off",
    "3",
    "t30",
    "1",
    "yes",
)  # answers when all goes well
STOP = "stop"  # the engine hears it, and no dialogue
LONGEST = 60  # turns when all goes well: all sets of a session


@dataclass(frozen=True, slots=True)
class Question:
    """An open question: the dialogue's state (as stored) in which it is asked, and what its buttons say and mean."""

    dialogue: str
    step: str
    state: Any
    labels: tuple[str, ...]
    at: datetime


def full_brief(dialogue: Dialogue[Any]) -> Any:
    """A brief with something to ask about."""
    exercise = Exercise(
        "goblet_squat", Region.LEGS, Scheme.OPEN, OPEN_AIMS, Load(Decimal(10)), (Load(Decimal(10)),)
    )
    more = {"at_loads": plan_to_text(Plan("squats", (exercise,))), "coaches": (("7", "Otto"), ("8", "Kai"))}
    brief = brief_of(dialogue)
    return replace(brief, **{f.name: more[f.name] for f in fields(brief) if f.name in more})


def questions(dialogue: Dialogue[Any]) -> list[Question]:
    """Every question that good answers and waiting lead to, each once, also those behind a whole session that goes well.

    A session asks the same of each limb and set: only from the smooth way through it do short ways lead to all.
    """
    found: dict[str, Question] = {}
    waiting = list(_smooth(dialogue))
    while waiting:
        turn, at = waiting.pop(0)
        asked = _asked(turn)
        if turn.state is None or asked is None:
            continue
        step = re.sub(r"\d+", "N", asked.asks or "")
        # The beginning of its words tells the value of a pain ceiling from that of a rest.
        key = f"{step} {len(asked.choices)} {re.sub(r'[^a-z]+', ' ', asked.text.casefold())[:20]}"
        if key in found:
            continue
        found[key] = Question(
            dialogue.name, step, turn.state, tuple(w for c in asked.choices for w in (c.label, c.value)), at
        )
        waiting += [(after, at + timedelta(seconds=40)) for after in _onward(dialogue, turn, asked, at)]
    return list(found.values())


def _smooth(dialogue: Dialogue[Any]) -> Iterator[tuple[Turn[Any], datetime]]:
    """Every turn when all goes well."""
    at = START
    turn = dialogue.advance(None, Opened(at, full_brief(dialogue)), at)
    for _ in range(LONGEST):
        yield turn, at
        asked = _asked(turn)
        if turn.state is None or (asked is None and turn.wake_at is None):
            return
        at += timedelta(seconds=40)
        if asked is None:
            at = max(at, turn.wake_at or at)
            turn = dialogue.advance(turn.state, Woke(at), at)
            continue
        values = [choice.value for choice in asked.choices]
        turn = dialogue.advance(
            turn.state, Said(at, next((one for one in WELL if one in values), GOOD[0]), asked.asks), at
        )


def _asked(turn: Turn[Any]) -> Say | None:
    return next((say for say in reversed(turn.replies) if say.asks), None)


def _onward(dialogue: Dialogue[Any], turn: Turn[Any], asked: Say, at: datetime) -> Iterator[Turn[Any]]:
    at += timedelta(seconds=40)
    for choice in asked.choices:
        if choice.value != STOP:
            yield dialogue.advance(turn.state, Said(at, choice.value, asked.asks), at)
    for text in GOOD:
        yield dialogue.advance(turn.state, Said(at, text, None, 7), at)
    if turn.wake_at is not None:
        yield dialogue.advance(turn.state, Woke(turn.wake_at), turn.wake_at)
    if dialogue.name == "session":
        yield dialogue.advance(turn.state, Hurts(at, "it hurts"), at)


def all_questions() -> list[Question]:
    """Of every dialogue."""
    return [question for name in sorted(CATALOGUE) for question in questions(CATALOGUE[name])]


# Questions whose answer is kept word for word.
FREE_TEXT = frozenset(
    "phone address emergency_contact emergency_number helper guardian name note news_what".split()
)
FREE_TEXT |= frozenset("why other said sure text what words cue mark".split())


# --- what was made of an answer --------------------------------------------------------------------------------
BOOKKEEPING = frozenset(
    "brief asked first_asked given waiting_since reminded step at message heard_at said_at"  # when and where, not what
    " unclear lost again kept problem tries long asked_both half guess"  # that it was not understood
    " zones readings when heard"  # what it may mean, asked back before anything follows from it
    " session part question screening what number limits shown act".split()  # which question it was
)


def leaves(value: Any, path: str = "") -> dict[str, Any]:
    """Every value inside, by where it is; not what is only bookkeeping."""
    if is_dataclass(value) and not isinstance(value, type):
        named = [(f.name, getattr(value, f.name)) for f in fields(value) if f.name not in BOOKKEEPING]
    elif isinstance(value, dict):
        named = [(str(key), inner) for key, inner in value.items() if str(key) not in BOOKKEEPING]
    elif isinstance(value, list | tuple | set | frozenset):
        named = [(str(number), inner) for number, inner in enumerate(value)]
    else:
        return {path: value}
    found: dict[str, Any] = {}
    for name, inner in named:
        found |= leaves(inner, f"{path}.{name}")
    return found


def made(question: Question, text: str) -> list[str]:
    """What the dialogue took from the text as something else than text: its values, as "where = value".

    Raises whatever the dialogue raises; the new state must survive storage.
    """
    dialogue = CATALOGUE[question.dialogue]
    at = question.at + timedelta(seconds=60)
    turn = dialogue.advance(question.state, Said(at, text, None, 9), at)
    assert turn.state is None or stored(dialogue, turn.state) == turn.state
    before = list(leaves(question.state).items())
    after = leaves(turn.state) if turn.state is not None else {}
    lasting = (effect for effect in turn.effects if isinstance(effect, Record | Do | Begin))
    for number, effect in enumerate(lasting):
        after |= {f"effect{number}{where}": value for where, value in leaves(effect).items()}
    new = {where: value for where, value in after.items() if (where, value) not in before}
    if question.step.split(".")[0] in FREE_TEXT and any(_is_piece(value, text) for value in new.values()):
        return []  # kept as the words they are
    return [f"{where} = {value!r}" for where, value in new.items() if value not in (None, "", ())]


def _is_piece(value: Any, text: str) -> bool:
    """Whether a value is the text itself, or words out of it."""
    if not isinstance(value, str) or not value:
        return False
    squeezed = _seen(value)
    return " ".join(value.split()) == " ".join(text.split()) or (
        squeezed != "" and squeezed[:40] in _seen(text)
    )


def _seen(text: str) -> str:
    """What of a text can be seen, on one line."""
    return " ".join("".join(sign for sign in text if sign.isprintable() or sign.isspace()).split())


def stored(dialogue: Dialogue[Any], state: Any) -> Any:
    """The state as it comes back from storage."""
    return msgspec.json.decode(msgspec.json.encode(state), type=dialogue.state)


# Numbers as anybody reads them, in any script's figures, with quotes or an exclamation mark around; or several.
NUMBERS = re.compile(r"[\"'#*~\[(-]*[0-9]+(?:[.,/;: \n\t][0-9]+)*(?: (?:kg|lb))?[\"'*~\])!?,.-]*")
UNSEEN = re.compile("[\u200b-\u200f\u2060\ufeff\u20e3\u2028\u2029]")


def is_fair(question: Question, text: str) -> bool:
    """Whether the text is an answer that anybody would read as one: a number, yes or no, a button's words."""
    said = unicodedata.normalize("NFKC", UNSEEN.sub("", text)).strip()
    said = "".join(str(unicodedata.digit(sign)) if sign.isdigit() else sign for sign in said)
    known = {label.casefold() for label in question.labels}
    begins = len(said) > 2 and any(label.startswith(said.casefold().lstrip("/")) for label in known)
    return (
        bool(NUMBERS.fullmatch(said))
        or words(said) in YES | NO | NOT_SURE
        or said.casefold() in known
        or begins
    )


# Readings that look strange and are meant so, with why.
MEANT = {
    "nil": "zero",
    "NIL": "zero",
    "12 stones": "a weight",
    "one and a": "one, with idle words around",
    "start.1": "for days: said back with the day and a way out",
    "tomorrow yesterday": "for days: said back with the day and a way out",
    "not yes": "to the look at a nail: not the same, the safe side",
    "bands_off:1": "to whether it is still numb: a wish to stop, the safe side",
    "\u2029test\u2029": "the button that begins so",
}
SAFE_SIDE = (
    "on."  # "bands on?": any "on" or "yes" starts the clock under the bands, which only makes it stricter
)


# Several sets at once, as "31-16-8" is typed, where a count is asked; and "no" to "as before?" is the safe side.
COUNTS = ("done.", "reps.", "off.", "which.")
SETS = re.compile(r"\(?[0-9]+(?:(?:\.\.|[-/\u2044]|\)\()[0-9]+)+\)?")


SETS_IN_WORDS = ("seven eight nine", "thirty-one-two")  # said back, set by set


def _is_meant(question: Question, text: str, found: list[str]) -> bool:
    sets = SETS.fullmatch(unicodedata.normalize("NFKC", text)) or text in SETS_IN_WORDS
    if question.step.startswith(COUNTS) and sets:
        return True
    if question.step.startswith("numb."):  # still numb? "Yes" is the safe side: the coach is told
        return all(one.endswith(".answer = 'yes'") for one in found)
    return question.step.startswith("nail.") and any(".failed_checks" in one for one in found)


def wrong(question: Question, text: str) -> list[str]:
    """What was made of a text that nobody would read so; [] is right."""
    if question.step.startswith(SAFE_SIDE) or text in MEANT or not text.strip() or is_fair(question, text):
        made(question, text)  # must not raise all the same
        return []
    found = made(question, text)
    return [] if _is_meant(question, text, found) else found
