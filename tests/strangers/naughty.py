"""Strange strings, and what becomes of them as answers."""

import json
import re
import unicodedata
from dataclasses import fields, is_dataclass
from datetime import timedelta
from pathlib import Path
from typing import Any

import msgspec

from bot.engine.updates import sound
from conversations.answers.choices import NO, NOT_SURE, YES
from conversations.answers.lexing import words
from conversations.catalogue import CATALOGUE
from conversations.protocol import Begin, Dialogue, Do, Record, Said
from tests.conversations.every_question import Question

HERE = Path(__file__).parent
STRINGS: tuple[str, ...] = tuple(
    dict.fromkeys(
        sound(text) for name in ("blns", "own") for text in json.loads((HERE / f"{name}.json").read_text())
    )
)

# Questions whose answer is kept word for word.
FREE_TEXT = frozenset(
    "phone address emergency_contact emergency_number helper guardian name note news_what".split()
)
FREE_TEXT |= frozenset("why other said sure text what words cue mark clinician limits over".split())


# --- what was made of an answer --------------------------------------------------------------------------------
BOOKKEEPING = frozenset(
    "brief asked first_asked given waiting_since reminded step at message heard_at said_at"  # when and where, not what
    " unclear lost again kept problem tries long asked_both half guess names"  # that it was not understood
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


def made(question: Question, text: str, to: str | None = None) -> list[str]:
    """What the dialogue took from the text as something else than text: its values, as "where = value".

    `to`: the question that it is typed as a reply to. Raises whatever the dialogue raises; the new state must survive storage.
    """
    dialogue = CATALOGUE[question.dialogue]
    at = question.at + timedelta(seconds=60)
    turn = dialogue.advance(question.state, Said(at, text, to, 9), at)
    assert turn.state is None or stored(dialogue, turn.state) == turn.state
    before = list(leaves(question.state).items())
    after = leaves(turn.state) if turn.state is not None else {}
    lasting = (effect for effect in turn.effects if isinstance(effect, Record | Do | Begin))
    for number, effect in enumerate(lasting):
        after |= {f"effect{number}{where}": value for where, value in leaves(effect).items()}
    # What is offered to the coach later is the words themselves.
    new = {
        where: value
        for where, value in after.items()
        if (where, value) not in before and not (where.endswith(".details.text") and _is_piece(value, text))
    }
    if question.step.split(".")[0] in FREE_TEXT and _kept_as_words(new, text, {value for _, value in before}):
        return []
    return [f"{where} = {value!r}" for where, value in new.items() if value not in (None, "", ())]


def _kept_as_words(new: dict[str, Any], text: str, known: set[Any]) -> bool:
    """Whether it stands there as the words it is, after words that were said before, or gave way to those."""
    earlier = {value for value in known if isinstance(value, str)}
    behind = {f"{value} {' '.join(text.split())}" for value in earlier}
    return any(_is_piece(value, text) or value in earlier | behind for value in new.values())


def _is_piece(value: Any, text: str) -> bool:
    """Whether a value is the text itself, words out of it (a name begins with a large letter), or with more behind it."""
    if not isinstance(value, str) or not value:
        return False
    squeezed, plain = _seen(value), " ".join(text.split())
    if " ".join(value.split()) == plain or value.startswith(f"{plain}; "):
        return True
    seen = _seen(text)
    return squeezed != "" and squeezed[:40].casefold() in seen.casefold()


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
    "no idea yes": "to a count: it was lost",
    "A:": "a band, by its letter",
    "'; DELETE FROM fact; --": "to the list of bands: the only one goes, and that is said",
    "\u2029test\u2029": "the button that begins so",
    "Scunthorpe General Hospital": "a hospital before a session is news for the coach: the safe side",
}
# "bands on?": any "on" or "yes" starts the clock under the bands, which only makes it stricter.
SAFE_SIDE = "on."


# Several sets at once, as "31-16-8" is typed, where a count is asked; and "no" to "as before?" is the safe side.
COUNTS = ("done.", "reps.", "off.", "which.")
SETS = re.compile(r"\(?[0-9]+(?:(?:\.\.|[-/\u2044]|\)\()[0-9]+)+\)?")


SETS_IN_WORDS = ("seven eight nine", "thirty-one-two")  # said back, set by set
ONE_SIDE = re.compile(r"[0-9]*l[0-9]*")  # "3l": three on the left
# To "still numb?" and "is something wrong?" whatever is not a plain no is a yes.
YES_IS_SAFE = {"numb.": "effect0.fact.answer = 'yes'", "wrong.": ".draft.wrong = 'yes'"}
YES_IS_SAFE["stopped."] = ".draft.stopped = 'worse'"


def _is_meant(question: Question, text: str, found: list[str]) -> bool:
    sets = SETS.fullmatch(unicodedata.normalize("NFKC", text)) or text in SETS_IN_WORDS
    if question.step.startswith(COUNTS) and (sets or ONE_SIDE.fullmatch(text)):
        return True
    if question.step.startswith(COUNTS) and any(one.endswith(".blank = True") for one in found):
        return True  # "lost count", which never raises a load
    if question.step.startswith(("nail.", "warmth.")):
        return any(".failed_checks" in one or "Phase.OFF" in one for one in found)
    if question.dialogue == "changing":  # other days are said back with a way out before anything holds
        return all(one.startswith(".draft.said = ") for one in found)
    return any(found[0] == safe for step, safe in YES_IS_SAFE.items() if question.step.startswith(step))


def wrong(question: Question, text: str) -> list[str]:
    """What was made of a text, typed freely and as a reply, that nobody would read so; [] is right."""
    found = [made(question, text), made(question, text, question.asks or None)]
    if question.step.startswith(SAFE_SIDE) or text in MEANT or not text.strip() or is_fair(question, text):
        return []  # it must not raise all the same
    return [one for each in found if each and not _is_meant(question, text, each) for one in each]
