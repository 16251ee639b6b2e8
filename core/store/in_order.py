"""What is decided last holds, whatever the clocks of typed words and of taps say."""

from dataclasses import replace
from datetime import datetime
from typing import Any

from core.facts import CalendarChanged, Cleared, Fact, Paused, PlanEnded, PlanGiven, Travelling
from core.store.connection import Store
from core.store.naming import snake
from core.store.times import moment, ms

# Decisions, and the other kinds that each may take the place of. Of one kind the later row of the same moment counts.
PLANS = (PlanGiven, CalendarChanged, PlanEnded)
DECISIONS: dict[Any, tuple[Any, ...]] = {
    kind: tuple(one for one in PLANS if one is not kind) for kind in PLANS
} | dict.fromkeys((Travelling, Paused, Cleared), ())


def not_before(store: Store, person: int, fact: Fact, noted_at: datetime) -> Fact:
    """A decision, not earlier than those about this person noted before it; any other fact as it is.

    Typed words carry only the whole second in which they were typed (https://core.telegram.org/bots/api#message, date),
    a tap its millisecond: "yes" typed in the second of a coach's tap, and after it, would count as before it.
    """
    kind: Any = type(fact)
    if kind not in DECISIONS:
        return fact
    kinds = [(kind, 0), *((one, 1) for one in DECISIONS[kind])]
    asked = " UNION ALL ".join(
        f"SELECT max(at) + {later} AS at FROM {snake(one.__name__)} WHERE person = ? AND noted_at <= ?"
        for one, later in kinds
    )
    row = store.row(f"SELECT max(at) AS at FROM ({asked})", [person, ms(noted_at)] * len(kinds))
    earliest = None if row is None else row["at"]
    return fact if earliest is None or ms(fact.at) >= earliest else replace(fact, at=moment(earliest))
