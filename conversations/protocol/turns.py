"""The outcome of one event, and what the catalogue knows of a dialogue."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from typing import Any, Generic, TypeVar

from conversations.protocol.effects import Effect
from conversations.protocol.events import Event
from conversations.protocol.saying import Say

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
