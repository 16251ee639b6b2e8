"""What a dialogue is: events in, words and effects out, nothing else.

    advance(state, event, now) -> Turn(state, replies, effects, wake_at)

A dialogue keeps nothing between calls but its state, reads no clock and sends nothing. The engine stores
the state with the facts in one transaction and sends the words after the commit. A timer is `wake_at`, a
stored time, so a restart loses none.

Every event carries `at`, when it happened for the client; `now` is when it is handled. After an outage they
differ by hours, and rests and bands are counted from `at`.

A question has an id that is unique within its thread ("reps.1.2"). Buttons and replies name it, so a late
tap can be told from a fresh answer.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import Any, Generic, TypeVar

from core.facts import Fact
from core.safety.causes import Cause


# --- what happens to a dialogue -------------------------------------------------------------------------
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


# --- what a dialogue says --------------------------------------------------------------------------------
@dataclass(frozen=True, slots=True)
class Choice:
    """A button: what it shows and the value that comes back."""

    label: str
    value: str


@dataclass(frozen=True, slots=True)
class Say:
    """One message. `asks` is the id of the question it puts, None when it puts none.

    `picture` names a drawing of ours (see `bot.pictures`), `clip` a file handle of the transport. `quiet`
    messages make no sound.
    """

    text: str
    choices: tuple[Choice, ...] = ()
    asks: str | None = None
    picture: str | None = None
    clip: str | None = None
    quiet: bool = False


# --- what a dialogue wants done ---------------------------------------------------------------------------
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

S = TypeVar("S")


@dataclass(frozen=True, slots=True)
class Turn(Generic[S]):
    """The outcome of one event. `state` None: over. `wake_at` replaces any earlier one; None: sleep.

    `unread`: what was typed fitted nothing that is asked.
    """

    state: S | None
    replies: tuple[Say, ...] = ()
    effects: tuple[Effect, ...] = ()
    wake_at: datetime | None = None
    unread: bool = False


@dataclass(frozen=True, slots=True)
class Dialogue(Generic[S]):
    """One line of the catalogue. `name` is stored.

    `trains`: no event reaches it while training is barred. `exclusive`: reminders and the coach's words
    wait until it is over. `floor`: typed text goes to it while it is the latest.
    """

    name: str
    state: type[S]
    brief: type[Any]
    advance: Callable[[S | None, Event, datetime], Turn[S]]
    trains: bool = False
    exclusive: bool = False
    floor: bool = True
