"""A client's own details, changed later."""

from collections.abc import Mapping

BUTTON = "Change my details"
NOTHING = "nothing"
WHATS = (
    ("Phone", "phone"),
    ("Where I train", "address"),
    ("Whom to ring", "emergency_contact"),
    ("Emergency number", "emergency_number"),
    ("Alone or not", "company"),
    ("Who types", "helper"),
    ("All is right", NOTHING),
)
LINES = {
    "phone": "Phone: {value}.",
    "address": "You train at: {value}.",
    "emergency_contact": "To ring if something is wrong: {value}.",
    "emergency_number": "Emergency number: {value}.",
    "company": "When you train: {value}.",
    "helper": "Types for you: {value}.",
}
NOT_SAID = "not said"
NOW = "What shall change?"
SET = "Noted. {line}"
UNCHANGED = "Good, all stays."


def now(known: Mapping[str, str]) -> str:
    """The details as they are, then the question."""
    return "\n".join([*(line(name, value) for name, value in known.items()), NOW])


def said(name: str, value: str) -> str:
    """The new value, said back."""
    return SET.format(line=line(name, value))


def line(name: str, value: str) -> str:
    """ "Phone: 555 0101."."""
    shown = value.replace("_", " ") if name == "company" else value
    return LINES[name].format(value=shown or NOT_SAID)
