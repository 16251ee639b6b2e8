"""What a form keeps: its frozen brief, the answers so far, and the question that is open."""

from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any, Generic, TypeVar

from conversations.protocol import Effect, Say

B = TypeVar("B")
D = TypeVar("D")


@dataclass(frozen=True, slots=True)
class Outcome:
    """What comes of a finished form."""

    replies: tuple[Say, ...] = ()
    effects: tuple[Effect, ...] = ()


@dataclass(frozen=True, slots=True)
class Given:
    """One answered step and the client's message that answered it (None: a button)."""

    step: str
    message: int | None = None


@dataclass(frozen=True, slots=True)
class Asking(Generic[B, D]):
    """The state of a form: its frozen brief, the answers so far, and the question that is open."""

    brief: B
    draft: D
    asked: int = 0  # counts questions put, so that a late tap is known
    step: str = ""
    given: tuple[Given, ...] = ()
    waiting_since: datetime | None = None
    reminded: bool = False
    first_asked: int = 0  # the number under which the open question was first put; 0: not known

    @property
    def question(self) -> str:
        """The id of the open question, unique within the thread."""
        return f"{self.step}.{self.asked}"

    def is_open(self, question: str) -> bool:
        """Whether this id is the open question's, also that of an earlier copy of it."""
        step, _, number = question.rpartition(".")
        copied = step == self.step and number.isdigit() and 0 < self.first_asked <= int(number) <= self.asked
        return copied or question == self.question


def with_answer(draft: D, step: str, value: Any) -> D:
    """The draft with the field of that step set."""
    changed: D = replace(draft, **{step: value})  # type: ignore[type-var]  # every draft is a dataclass
    return changed
