"""Words for the other side: the next line goes there as it is. One form, whoever writes."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta
from typing import TypeVar

from conversations.form import Form, Outcome
from conversations.protocol import Relay, Said, Say

LONGEST = 2000  # characters
B = TypeVar("B")


@dataclass(frozen=True, slots=True)
class Draft:
    """The words; None: not typed yet."""

    text: str | None = None


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
