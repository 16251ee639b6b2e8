"""What is decided last holds, whatever the clocks of typed words and of taps say."""

from dataclasses import replace

from core.facts import CalendarChanged, Cleared, Fact, Paused, PlanEnded, PlanGiven, Travelling
from core.store.connection import Store
from core.store.naming import snake
from core.store.times import moment, ms

# Each may take the place of one before it.
DECISIONS = (PlanGiven, CalendarChanged, PlanEnded, Travelling, Paused, Cleared)
TIMES = " UNION ALL ".join(
    f"SELECT max(at) AS at FROM {snake(kind.__name__)} WHERE person = ?" for kind in DECISIONS
)


def later_than_before(store: Store, person: int, fact: Fact) -> Fact:
    """A decision, at least 1 ms later than those about this person before it; any other fact as it is.

    Typed words carry only the whole second in which they were typed (https://core.telegram.org/bots/api#message, date),
    a tap its millisecond: "yes" typed in the second of a coach's tap, and after it, would count as before it.
    """
    if not isinstance(fact, DECISIONS):
        return fact
    row = store.row(f"SELECT max(at) AS at FROM ({TIMES})", [person] * len(DECISIONS))
    last = None if row is None else row["at"]
    return fact if last is None or ms(fact.at) > last else replace(fact, at=moment(last + 1))
