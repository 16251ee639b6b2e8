"""How a `When` is written down: JSON text of strings and numbers, readable by a person."""

from typing import Any

import msgspec

from core.calendar.recurrence import Once, Recurrence, When

KINDS: dict[str, type[Recurrence] | type[Once]] = {"weekly": Recurrence, "once": Once}


def when_to_text(when: When) -> str:
    """JSON with a `kind`, local times and the zone's name."""
    kind = "once" if isinstance(when, Once) else "weekly"
    return msgspec.json.encode({"kind": kind, **msgspec.to_builtins(when)}).decode()


def when_from_text(text: str) -> When:
    """The `When` that was stored. Raises ValueError for anything else."""
    try:
        plain: dict[str, Any] = msgspec.json.decode(text, type=dict[str, Any])
        kind = KINDS[plain.pop("kind", "")]
        return msgspec.convert(plain, kind)
    except (msgspec.MsgspecError, KeyError, TypeError) as problem:
        raise ValueError(f"when: {problem}") from None
