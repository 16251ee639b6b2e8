"""What was done in each movement, beside what was wanted and expected."""

from datetime import date

from core.facts import SetDone
from core.outcomes import reps_at_equal_load
from core.plans import Side
from core.report.kinds import First, Movement, Taken, day_of


def movements(taken: Taken) -> tuple[Movement, ...]:
    """Each movement and side that was trained, in the order of first doing."""
    ordered = sorted(taken.sets, key=lambda one: (one.done_at, one.set_no))
    kinds = dict.fromkeys((one.movement, one.side) for one in ordered)
    found = [
        _movement(taken, name, side, [one for one in ordered if (one.movement, one.side) == (name, side)])
        for name, side in kinds
    ]
    return tuple(one for one in found if one.firsts)


def _movement(taken: Taken, name: str, side: Side, sets: list[SetDone]) -> Movement:
    firsts = tuple(_first(taken, one) for one in sets if one.set_no == 1)
    aimed = [one for one in firsts if one.low is not None and one.high is not None]
    ranged = [one for one in aimed if one.low != one.high]
    fixed = [one for one in aimed if one.low == one.high]
    expected = [one for one in firsts if one.expected_low is not None]
    # Gentle sessions were ended with reps left and fixed sets at their number: they say nothing of strength.
    trend = reps_at_equal_load([(date.fromisoformat(one.day), one.doing, one.reps) for one in ranged])
    called = (taken.names or {}).get(name, name.replace("_", " "))
    return Movement(
        name=called if side is Side.BOTH else f"{called}, {side.value}",
        firsts=firsts,
        sessions=len({one.session for one in sets}),
        reps=sum(one.reps for one in sets),
        in_range=sum(_within(one.reps, one.low, one.high) for one in ranged),
        ranged=len(ranged),
        full=sum(one.reps >= (one.low or 0) for one in fixed),
        fixed=len(fixed),
        as_expected=sum(_within(one.reps, one.expected_low, one.expected_high) for one in expected),
        expected=len(expected),
        at_load=str(trend.load) if trend else "",
        percent=trend.percent if trend else None,
        sure=trend.sure if trend else False,
    )


def _first(taken: Taken, one: SetDone) -> First:
    low, high = (taken.ranges or {}).get((one.session, one.movement), (None, None))
    day = day_of(one.done_at, taken.zone)
    return First(day, one.reps, one.doing, one.aim_low, one.aim_high, low, high, one.rough)


def _within(reps: int, low: int | None, high: int | None) -> bool:
    return low is not None and high is not None and low <= reps <= high
