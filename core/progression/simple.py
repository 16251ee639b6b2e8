"""The one-step rule: up by the smallest step when set 1 reaches 40, down below 25 (common practice)."""

from core.plans import FIXED_AIMS, OPEN_AIMS, Scheme
from core.progression.records import Action, Advice, Because, Reason, Request
from core.resistance import Loads, scale
from core.units import Load

START = 0.30  # of the one-repetition maximum; common practice, no source


def simple_advice(request: Request) -> Advice:
    """The plain rule, kept as the yardstick of the bench."""
    names = scale(request.resistance).names
    if not request.sessions:
        return _advice(request, _start(request), Action.START, Reason.START_LIGHTEST)
    last = request.sessions[-1]
    at = names.index(last.used) if last.used in names else 0
    aim = (FIXED_AIMS if request.scheme is Scheme.FIXED else OPEN_AIMS)[0]
    if last.reps[0] < min(aim.low, 25) and at > 0:
        return _advice(request, names[at - 1], Action.LOWER, Reason.TOO_FEW)
    if request.scheme is Scheme.OPEN and last.reps[0] >= aim.high and at + 1 < len(names):
        return _advice(request, names[at + 1], Action.RAISE, Reason.TOO_MANY)
    return _advice(request, last.used, Action.HOLD, Reason.IN_RANGE)


def _start(request: Request) -> Load | str:
    if request.planned is not None:
        return request.planned
    names = scale(request.resistance).names
    if not isinstance(request.resistance, Loads) or request.resistance.one_rm is None:
        return names[0]
    goal = START * request.resistance.one_rm.kilograms
    return min(request.resistance.available, key=lambda load: abs(load.kilograms - goal))


def _advice(request: Request, use: Load | str, action: Action, reason: Reason) -> Advice:
    was = request.sessions[-1].used if request.sessions else None
    expected = (30, 15, 15, 15) if request.scheme is Scheme.FIXED else (32, 16, 8)
    because = Because(reason, was=was, use=use, low=25, high=40, expected=expected[0])
    return Advice(use, action, expected, (25, 40), 0.8, because)
