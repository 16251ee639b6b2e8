"""Words for the other side: the next line goes there as it is. One form, whoever writes."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta
from typing import TypeVar

from conversations.form import Form, Outcome
from conversations.protocol import Relay, Said, Say

LONGEST = 2000  # characters
POLITELY = r"^(?:(?:please|pls|can you|could you|would you|will you),? )*"
TELLS = "tell|let|message|text|inform|write(?: to)?"
# What stands between the name and the words.
THEN = r"(?: know)?(?: please)?[,:]?\s+(?:that )?"
COACH = re.compile(r"^coach[:,]?\s+(?P<text>.+)$", re.IGNORECASE | re.DOTALL)
TO_CLIENT = re.compile(
    rf"{POLITELY}(?P<verb>to|tell(?! me\b)|let|inform|ask|remind|(?:message|text|write)(?: to)?)\s+(?P<rest>\w.*)$",
    re.IGNORECASE | re.DOTALL,
)
# "she did great", "to rest": as the coach says it of somebody, not to them.
ABOUT_THEM = re.compile(r"(?:s?he|they|his|hers?|him|their|them|if|whether|to|about)\b", re.IGNORECASE)
NO_WORDS = ("a message", "a line", "something", "a note", "back")  # "write Nora a message"
SAYS_NOTHING = frozenset("please pls now it this that know yes ok okay something".split())
B = TypeVar("B")


@dataclass(frozen=True, slots=True)
class Draft:
    """The words; None: not typed yet."""

    text: str | None = None


def for_coach(text: str, name: str = "") -> str | None:
    """The words that a client wants to go to the coach: "coach, ...", "tell my coach that ..."; None: it is no such line.

    "ask coach if friday works" goes as it is. `name`: how the coach is called.
    """
    said = text.strip()
    if (found := COACH.match(said)) is not None:
        return found["text"]
    first = name.split()[0] if name.split() else "coach"
    who = rf"(?:(?:my |the )?coach|{re.escape(first)})\b"
    told = re.match(rf"{POLITELY}(?:{TELLS}) {who}{THEN}(?P<text>.+)$", said, re.IGNORECASE | re.DOTALL)
    if told is not None:
        bare = set(re.findall(r"\w+", told["text"].casefold())) <= SAYS_NOTHING
        return None if bare else told["text"]
    asks = re.match(rf"{POLITELY}ask {who}\s+\w+\W+\w", said, re.IGNORECASE)
    return said if asks is not None else None


@dataclass(frozen=True, slots=True)
class ToClient:
    """What a coach wants done with words, and all that follows: a name first."""

    verb: str
    rest: str


def to_client(text: str) -> ToClient | None:
    """ "to Nora ...", "tell Nora ...", "say hi to Nora"; None: it is no such line."""
    greeted = re.match(rf"{POLITELY}say (?P<text>.+?) to (?P<rest>\w.*)$", text.strip(), re.IGNORECASE)
    if greeted is not None:
        return ToClient("say", f"{greeted['rest']} {greeted['text']}")
    found = TO_CLIENT.match(text.strip())
    return None if found is None else ToClient(found["verb"].casefold().split()[0], found["rest"])


def as_said(verb: str, line: str) -> str:
    """The words as the client reads them; "": they are about the client, not to them, or there are none."""
    line = line.strip()
    match verb:
        case "to" | "say":
            return line
        case "let":
            line = line[5:] if line.casefold().startswith("know ") else ""
        case "ask" | "remind":
            return ""
        case _:
            pass
    line = re.sub(r"^that\s+", "", line, flags=re.IGNORECASE)
    return "" if ABOUT_THEM.match(line) or line.casefold().rstrip(".!") in NO_WORDS else line


def form(
    ask: Callable[[B], Say],
    to: Callable[[B], int | None],
    patience: timedelta = timedelta(hours=1),
    lapse: timedelta | None = None,
) -> Form[B, Draft]:
    """`to`: the client they go to, None: the coach. That they went out is said by whoever sends them."""
    return Form(
        start=lambda brief: Draft(),
        missing=lambda brief, draft: "text" if draft.text is None else None,
        ask=lambda brief, draft, step: ask(brief),
        fill=_fill,
        finish=lambda brief, draft, at: Outcome((), (Relay(draft.text or "", to(brief)),)),
        patience=patience,
        lapse=lapse,
    )


def _fill(brief: B, draft: Draft, step: str, answer: Said) -> Draft:
    """The words as they came; nothing at all is asked for again."""
    return Draft(answer.text.strip()[:LONGEST] or None)
