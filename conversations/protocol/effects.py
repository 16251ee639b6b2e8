"""What a dialogue wants done; the engine does it."""

from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

from conversations.protocol.events import Media
from core.facts import Fact
from core.safety.causes import Cause


@dataclass(frozen=True, slots=True)
class Record:
    """Store a fact about `person` (None: who is talking), with the message that said it."""

    fact: Fact
    person: int | None = None


@dataclass(frozen=True, slots=True)
class Alert:
    """Tell the coach of `person` (None: who is talking). `said` and `told` are word for word.

    `core.safety` gives the tier of the cause.
    """

    cause: Cause
    said: str
    told: str = ""
    person: int | None = None


@dataclass(frozen=True, slots=True)
class Begin:
    """Start another dialogue. The engine freezes its brief; `about` adds to it (stored with the brief).

    `person` is whom to talk to: None means the same one. `at` None: now; else at that time.
    """

    dialogue: str
    about: dict[str, Any] = field(default_factory=dict)
    person: int | None = None
    at: datetime | None = None


@dataclass(frozen=True, slots=True)
class ToldOff:
    """The client is told to take the bands of spell `spell` off: somebody must hear that they are."""

    session: str
    spell: str


@dataclass(frozen=True, slots=True)
class EndTraining:
    """Something is wrong: a session or its questions that are open end now; `why` is a stored name."""

    why: str


@dataclass(frozen=True, slots=True)
class Countdown:
    """Show the rest running down to `until` in one silent, edited message; latest wins."""

    until: datetime


@dataclass(frozen=True, slots=True)
class Relay:
    """Pass words (or a clip) to the other side: the coach when a client speaks, the client `person`."""

    text: str
    person: int | None = None
    clip: str | None = None
    kind: Media | None = None
    urgent: bool = False


@dataclass(frozen=True, slots=True)
class Do:
    """A coach's act that is more than a fact: stored name `act` with its details (see `bot.acts`)."""

    act: str
    details: dict[str, Any] = field(default_factory=dict)


Effect = Record | Alert | Begin | ToldOff | EndTraining | Countdown | Relay | Do
