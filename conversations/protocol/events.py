"""What happens to a dialogue. Every event carries `at`, when it happened for the client."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import Any


@dataclass(frozen=True, slots=True)
class Opened:
    """The dialogue begins. `brief` is what it needs to know, frozen from now on."""

    at: datetime
    brief: Any


@dataclass(frozen=True, slots=True)
class Said:
    """Words or a tap. `to` is the question a button or a reply belongs to; None: typed freely.

    For a tap `text` is the button's value. `message` identifies the client's message for later edits. `unseen`:
    questions of this dialogue that reached the client only after these words were sent, or not yet.
    """

    at: datetime
    text: str
    to: str | None = None
    message: int | None = None
    unseen: frozenset[str] = frozenset()

    def too_soon_for(self, question: str) -> bool:
        """Whether nobody can have typed these words as the answer to this question."""
        return self.to is None and question in self.unseen


@dataclass(frozen=True, slots=True)
class Corrected:
    """The client edited the message `of`; it now says `text`."""

    at: datetime
    text: str
    of: int


class Media(StrEnum):
    """What came instead of words."""

    PHOTO = "photo"
    STICKER = "sticker"
    VOICE = "voice"
    VIDEO = "video"
    FILE = "file"
    LOCATION = "location"  # `Sent.file` is "38.72, -9.14"
    OTHER = "other"


@dataclass(frozen=True, slots=True)
class Sent:
    """Something that is not text. `file` is the transport's handle, for relaying."""

    at: datetime
    kind: Media
    file: str = ""
    message: int | None = None


@dataclass(frozen=True, slots=True)
class WentBack:
    """`back`: the last answer is to be asked again."""

    at: datetime


@dataclass(frozen=True, slots=True)
class Cancelled:
    """`cancel`: the client wants out of this dialogue (nothing hurts)."""

    at: datetime


@dataclass(frozen=True, slots=True)
class Woke:
    """The time in `wake_at` has come (or passed while nobody was running)."""

    at: datetime


@dataclass(frozen=True, slots=True)
class Resumed:
    """The floor came back to this dialogue after another one: ask the open question again."""

    at: datetime


@dataclass(frozen=True, slots=True)
class Hurts:
    """The client says that it hurts, without saying where. Only live sessions get this."""

    at: datetime
    text: str
    message: int | None = None


@dataclass(frozen=True, slots=True)
class TooTight:
    """The client says that a band is too tight. Only live sessions get this."""

    at: datetime
    text: str


@dataclass(frozen=True, slots=True)
class Halted:
    """A stop word was read, or the coach stopped it: end now, say nothing; others do the talking."""

    at: datetime
    why: str


@dataclass(frozen=True, slots=True)
class BandsCameOff:
    """The bands of spell `spell` came off by another way than this dialogue's own question; `never`: were never on."""

    at: datetime
    spell: str
    never: bool = False


@dataclass(frozen=True, slots=True)
class TimeIsUp:
    """The time limit of spell `spell` passed; the client was told to take the bands off."""

    at: datetime
    spell: str


@dataclass(frozen=True, slots=True)
class Barred:
    """Training is not allowed (any more): clearance, hold or an open alert. `why` is a stored name."""

    at: datetime
    why: str


Event = (
    Opened
    | Said
    | Corrected
    | Sent
    | WentBack
    | Cancelled
    | Woke
    | Resumed
    | Hurts
    | TooTight
    | Halted
    | BandsCameOff
    | TimeIsUp
    | Barred
)
