"""Small builders for played sessions."""

from datetime import date, timedelta
from decimal import Decimal
from typing import Any

from core.plans import Scheme
from core.progression import Request, SessionRecord
from core.resistance import Loads
from core.units import Load, Unit

DAY = date(2026, 1, 5)


def kg(value: float | str) -> Load:
    return Load(Decimal(str(value)))


def lb(value: float | str) -> Load:
    return Load(Decimal(str(value)), Unit.LB)


def rack(low: float = 2, high: float = 30, step: float = 1, one_rm: float | None = 40) -> Loads:
    """Dumbbells from `low` to `high` kg."""
    count = int((high - low) / step) + 1
    loads = tuple(kg(low + step * at) for at in range(count))
    return Loads(loads, None if one_rm is None else kg(one_rm))


def session(number: int, used: Load | str, *reps: int, **details: Any) -> SessionRecord:
    """Session `number` (from 0), every third day."""
    return SessionRecord(DAY + timedelta(days=3 * number), used, reps, **details)


def gentle(used: Load | str) -> tuple[SessionRecord, ...]:
    """The two gentle first sessions at `used`, about 31 reps to be had."""
    return (
        session(0, used, 27, 11, reps_left=(4, 4)),
        session(1, used, 27, 12, reps_left=(4, 4)),
    )


def ask(*sessions: SessionRecord, resistance: Loads | None = None, **details: Any) -> Request:
    return Request("curl", details.pop("scheme", Scheme.OPEN), resistance or rack(), sessions, **details)
