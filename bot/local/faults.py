"""Failures a test asks for: refusals, and connections lost before or after the work was done."""

from collections.abc import Callable
from dataclasses import dataclass

from bot.local.refusals import Refusal
from bot.local.request import Request


class Lost(Exception):
    """The connection broke and the caller got no answer; `done` says whether the call took effect before."""

    def __init__(self, done: bool) -> None:
        super().__init__("answer lost" if done else "connection lost")
        self.done = done


@dataclass(slots=True)
class _Planned:
    method: str
    chat_id: int | None
    left: int
    make: Callable[[], Refusal | Lost]

    def meets(self, method: str, request: Request) -> bool:
        """Say whether this call is one of those that must fail."""
        here = self.chat_id is None or str(request.params.get("chat_id")) == str(self.chat_id)
        return self.left > 0 and self.method == method and here


class Faults:
    """What is still to fail, in the order it was planned."""

    def __init__(self) -> None:
        self._planned: list[_Planned] = []

    def plan(self, method: str, chat_id: int | None, times: int, make: Callable[[], Refusal | Lost]) -> None:
        """Let the next calls of a method fail; `chat_id` None is every chat."""
        self._planned.append(_Planned(method.lower(), chat_id, times, make))

    def take(self, method: str, request: Request) -> Refusal | Lost | None:
        """Return how this call must fail, if it must, and count it."""
        for planned in self._planned:
            if planned.meets(method.lower(), request):
                planned.left -= 1
                return planned.make()
        return None
