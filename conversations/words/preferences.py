"""A person's own settings."""

from collections.abc import Collection, Mapping

from conversations.dates.meaning import ClockFace
from conversations.words.dates import DAY_NAMES, clock_time
from core.calendar.digest_time import slot_from_text
from core.calendar.recurrence import Slot

NOTHING = "nothing"
SETTINGS = (
    ("Reminder", "remind_before"),
    ("Quiet hours", "quiet_hours"),
    ("Dates", "date_order"),
    ("Clock", "clock_face"),
    ("Weekly digest", "digest_at"),
    ("All is well", NOTHING),
)
# By the name of the stored detail: (label, stored value).
VALUES: dict[str, tuple[tuple[str, str], ...]] = {
    "remind_before": (
        ("At its time", "0"),
        ("10 min before", "10"),
        ("30 min before", "30"),
        ("1 hour before", "60"),
    ),
    "quiet_hours": (
        ("21:00 to 7:00", "21:00-07:00"),
        ("22:00 to 6:00", "22:00-06:00"),
        ("No quiet hours", "00:00-00:00"),
    ),
    "date_order": (("3/4 is 3 April", "dd/mm"), ("3/4 is 4 March", "mm/dd")),
    "clock_face": (("19:00", "24"), ("7:00 pm", "12")),
    "digest_at": (
        ("Monday 7:00", "mon 07:00"),
        ("Friday 17:00", "fri 17:00"),
        ("Sunday 18:00", "sun 18:00"),
    ),
}
USUAL = {
    "remind_before": "0",
    "quiet_hours": "21:00-07:00",
    "date_order": "",
    "clock_face": "24",
    "digest_at": "mon 07:00",
}
ASK = {
    "remind_before": "When shall I remind you of a session? A number of minutes before is fine too.",
    "quiet_hours": "When shall I keep quiet? Like: 22:00 to 6:30. Alarms and sessions that run are never held back.",
    "date_order": "How do you write dates?",
    "clock_face": "How do you write times?",
    "digest_at": "When shall your week in numbers come? One day and time, like: sunday 6pm.",
}
NOW = "What shall change?"
LINES = {
    "remind_before": "Reminder: {value}.",
    "quiet_hours": "Quiet hours: {value}.",
    "date_order": "Dates: {value}.",
    "clock_face": "Clock: {value}.",
    "digest_at": "Weekly digest: {value}.",
}
NOT_SAID = "not said yet"
MINUTES = "{minutes} min before"
SET = "Noted. {line}"
NEXT_DIGEST = "The next one: {when}. 'week' shows it at any time."
UNCHANGED = "Good, all stays."


def now(names: Collection[str], stored: Mapping[str, str]) -> str:
    """The settings of these names as they are, then the question."""
    shown = [name for name in VALUES if name in names]
    return "\n".join([*(line(name, stored[name] or USUAL[name]) for name in shown), NOW])


def said(name: str, value: str) -> str:
    """The new value, said back."""
    return SET.format(line=line(name, value))


def line(name: str, value: str) -> str:
    """ "Quiet hours: 22:00 to 6:30."."""
    labels = {stored: label for label, stored in VALUES[name]}
    return LINES[name].format(value=labels.get(value) or _typed(name, value))


def _typed(name: str, value: str) -> str:
    if not value:
        return NOT_SAID
    match name:
        case "remind_before":
            return MINUTES.format(minutes=value)
        case "digest_at":
            return weekly(slot_from_text(value), ClockFace.H24)
        case _:
            return value.replace("-", " to ")


def weekly(slot: Slot, face: ClockFace) -> str:
    """ "Sunday 18:00"."""
    return f"{DAY_NAMES[slot.weekday]} {clock_time(slot.at, face)}"
