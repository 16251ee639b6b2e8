"""What set 1 of a past session was expected to bring, from what was known before it."""

from core.plans import Scheme
from core.progression.client import known, once
from core.progression.fixed_sets import fixed_range
from core.progression.open_sets import open_range
from core.progression.records import Request
from core.resistance import scale
from core.units import Load


def expected_80(request: Request, used: Load | str) -> tuple[int, int] | None:
    """The reps of set 1 at `used` that hold four times in five, after the sessions of `request` and no others.

    None: no session was known before, or `used` is none of the loads at hand. Raises ValueError as `advise`.
    """
    request = once(request)
    names = scale(request.resistance).names
    if not request.sessions or used not in names:
        return None
    client, at = known(request), names.index(used)
    return fixed_range(client, at) if request.scheme is Scheme.FIXED else open_range(client, at)
