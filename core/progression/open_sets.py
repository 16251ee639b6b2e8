"""Open sets: the next load, and what it will bring."""

from core.plans import GENTLE_SETS, OPEN_AIMS
from core.progression.cautions import EASING, FREEZING
from core.progression.choosing import (
    AIM,
    EASED,
    FOUND_VAR,
    NONE_FITS,
    Bounds,
    Choice,
    Limit,
    best,
    bounds,
    easiest_fit,
    nearest,
    reach,
)
from core.progression.client import Client
from core.progression.fall import following
from core.progression.forecast import range_80
from core.progression.records import Caution, Reason, Request
from core.resistance import Loads


def open_choice(request: Request, client: Client, held: tuple[Caution, ...]) -> Choice:
    """The load or rung for the next session, and why."""
    if not client.sessions:
        return first_choice(request, client)
    last = client.places.place(client.last.used)
    allowed = bounds(client.places, request.resistance, last, _found(client))
    if held:
        allowed = min(allowed, Bounds(reach(client.places, last), Limit.CAUTION))
    if _reps(client) < AIM.low:
        allowed = min(allowed, Bounds(reach(client.places, last), Limit.TOO_FEW))
    if allowed.index < 0:
        return NONE_FITS
    if EASING & set(held):
        easier = easiest_fit(client.off, EASED)
        return Choice(min(easier, _step_down(client, last), allowed.index), Reason.CAUTION)
    if FREEZING & set(held):
        return Choice(allowed.index, Reason.CAUTION)
    goal = best(client.places, client.off, client.last.used)
    at = min(goal, allowed.index)
    return Choice(at, Reason.CAUTION if held else _why(client, at, goal, allowed.limit))


def _found(client: Client) -> bool:
    """Whether the client's load is known well enough to rise one step at a time."""
    return client.now[0].var <= FOUND_VAR


def _reps(client: Client) -> int:
    """Set 1 of the last session with those said to be left; below its range nothing rises."""
    return client.last.reps[0] + (client.last.reps_left or (0,))[0]


def _step_down(client: Client, last: float) -> int:
    """The index one step below place `last`; `last` itself when a step down would bring more reps than wanted."""
    at = reach(client.places, last)
    if at < 1:
        return at
    return at - 1 if client.forecast(at - 1).middle <= AIM.high else at


def first_choice(request: Request, client: Client) -> Choice:
    """Before any session: the coach's load, else about 30 % of the maximum, else the lightest."""
    allowed = bounds(client.places, request.resistance, None, found=False)
    if allowed.index < 0:
        return NONE_FITS
    if request.planned is not None:
        return Choice(min(client.places.names.index(request.planned), allowed.index), Reason.START_AS_PLANNED)
    if isinstance(request.resistance, Loads) and request.resistance.one_rm is not None:
        at = min(nearest(client.places, client.now[0].theta), allowed.index)
        return Choice(at, Reason.START_FROM_MAX)
    return Choice(0, Reason.START_LIGHTEST)


def _why(client: Client, at: int, goal: int, limit: Limit) -> Reason:
    reps = _reps(client)
    move = client.places.x[at] - client.places.place(client.last.used)
    if abs(move) < 1e-9:
        return _why_hold(client, at, goal, limit)
    if client.left:
        return Reason.SECOND_GENTLE
    if move > 0:
        return Reason.TOO_MANY if reps > AIM.high else Reason.CLIMBING
    return Reason.TOO_FEW if reps < AIM.low else Reason.SLIDING


def _why_hold(client: Client, at: int, goal: int, limit: Limit) -> Reason:
    if at < goal and limit in LIMITED:
        return LIMITED[limit]
    if client.left:
        return Reason.SECOND_GENTLE
    expected = round(client.forecast(at).middle)
    if AIM.low <= expected <= AIM.high:
        return _in_range(_reps(client))
    if expected > AIM.high and at == len(client.places.x) - 1:
        return Reason.TOP_OF_EQUIPMENT
    return Reason.BOTTOM_OF_EQUIPMENT if expected < AIM.low and at == 0 else Reason.BEST_REACHABLE


def _in_range(last: int) -> Reason:
    """Why the load stays although the last set 1 lay outside of its range, or as it lay inside."""
    if last > AIM.high:
        return Reason.HIGH_ONCE
    return Reason.LOW_ONCE if last < AIM.low else Reason.IN_RANGE


LIMITED = {Limit.STEP: Reason.STEP_TOO_LARGE, Limit.HALF_OF_MAX: Reason.HALF_OF_MAX}


def open_expected(client: Client, at: int) -> tuple[int, ...]:
    """Reps of each set; in the gentle sessions fewer sets, each with reps left."""
    reps = following(client.forecast(at).middle, client.falls, GENTLE_SETS if client.left else len(OPEN_AIMS))
    return tuple(max(1, round(count - client.left)) for count in reps)


def open_range(client: Client, at: int) -> tuple[int, int]:
    """The reps of set 1, four times in five."""
    return range_80(client.forecast(at, client.left))


def open_chance(client: Client, at: int) -> float:
    """That set 1, taken to failure, lands in its range."""
    return client.forecast(at).between(AIM.low, AIM.high)
