"""Fixed sets (30/15/15/15): a plain rule for the load, the model for what to expect.

Reps stop at their number, so they say little about how much more there was. The load therefore rises on
two sessions in a row with everything done and reps to spare, and falls when much is missing.
"""

import math

from core.plans import FIXED_AIMS
from core.progression.cautions import EASING, FREEZING, settled
from core.progression.choosing import NONE_FITS, Choice, Limit, bounds, eased, nearest, reach
from core.progression.client import Client
from core.progression.forecast import range_80
from core.progression.open_sets import LIMITED, first_choice
from core.progression.prior import PUBLISHED_REPS
from core.progression.records import Caution, Reason, Request, SessionRecord

REPS = tuple(aim.high for aim in FIXED_AIMS)
SPARE = 3  # clean reps left after the last set; own caution, no source
IN_A_ROW = 2  # sessions; own caution, no source
TOO_FEW_FIRST = 25  # of 30 in set 1; common practice, no source (lower below 25)
TOO_FEW_ALL = 60  # of 75; own caution, no source


def fixed_choice(request: Request, client: Client, held: tuple[Caution, ...]) -> Choice:
    """The load or rung for the next session, and why."""
    if not client.sessions:
        return first_choice(request, client)
    last = client.places.place(client.last.used)
    allowed = bounds(client.places, request.resistance, last, found=True)
    now = min(reach(client.places, last), allowed.index)
    if now < 0:
        return NONE_FITS
    if EASING & set(held):
        return Choice(min(nearest(client.places, eased(last)), now), Reason.CAUTION)
    if too_few(client.last) and not FREEZING & set(held):
        return Choice(max(now - 1, 0), Reason.TOO_FEW if now else Reason.BOTTOM_OF_EQUIPMENT)
    if held or not earned(request, client):
        return Choice(now, Reason.CAUTION if held else _why_hold(client))
    return Choice(allowed.index, _why_raise(now, allowed.index, allowed.limit, len(client.places.x)))


def _why_hold(client: Client) -> Reason:
    if client.left:
        return Reason.SECOND_GENTLE
    if not complete(client.last):
        return Reason.NOT_ALL
    return Reason.ALL_ONCE if spare(client.last) else Reason.NO_SPARE


def _why_raise(now: int, to: int, limit: Limit, count: int) -> Reason:
    if to > now:
        return Reason.ALL_TWICE
    return LIMITED.get(limit, Reason.TOP_OF_EQUIPMENT if now == count - 1 else Reason.NOT_ALL)


def complete(session: SessionRecord) -> bool:
    """All 75 clean."""
    return len(session.reps) >= len(REPS) and all(
        done >= wanted for done, wanted in zip(session.reps, REPS, strict=False)
    )


def spare(session: SessionRecord) -> bool:
    """At least three more after set 4, as said or as done."""
    left = session.reps_left or ()
    told = session.spare if session.spare is not None else sum(left[len(REPS) - 1 : len(REPS)])
    return session.reps[len(REPS) - 1] + told >= REPS[-1] + SPARE


def past_open(request: Request, session: SessionRecord) -> bool:
    """Set 4 was left open and went past 15: enough by the published rule (trial protocol PMC7534706, table 3:
    the smallest load when set 4 brings more than 15)."""
    return request.open_last and complete(session) and session.reps[len(REPS) - 1] > REPS[-1]


def earned(request: Request, client: Client) -> bool:
    """Enough, often enough, at one load, on days when nothing spoke against it."""
    if past_open(request, client.last):
        return True
    last = client.sessions[-IN_A_ROW:]
    same = all(one.used == client.last.used for one in last)
    return len(last) == IN_A_ROW and same and all(_sound(one, request.pain_ceiling) for one in last)


def _sound(session: SessionRecord, pain_ceiling: int) -> bool:
    doubtful = session.rough or session.fast or session.loose or session.stopped or not session.check_ok
    calm = session.pain is None or session.pain <= settled(pain_ceiling)
    return complete(session) and spare(session) and calm and not doubtful


def too_few(session: SessionRecord) -> bool:
    """Set 1 below 25, or fewer than 60 of 75 in a session that was not cut short."""
    left = (session.reps_left or (0,))[0]
    if session.reps[0] + left < TOO_FEW_FIRST:
        return True
    whole = len(session.reps) >= len(REPS) and not session.stopped
    return whole and sum(session.reps) < TOO_FEW_ALL


def fixed_expected(client: Client, at: int) -> tuple[int, ...]:
    """Reps of each set: what is not used in one set is there in the next (own judgement, no source)."""
    first = client.forecast(at).middle
    reps, carried = [], 0.0
    for published, wanted in zip(PUBLISHED_REPS, REPS, strict=True):
        there = first * published / PUBLISHED_REPS[0] + carried
        carried = max(0.0, there - wanted)
        reps.append(max(1, min(wanted, math.floor(there + 0.5))))
    return tuple(reps[:2] if client.left else reps)


def fixed_range(client: Client, at: int) -> tuple[int, int]:
    """The reps of set 1, four times in five; never more than the number."""
    low, high = range_80(client.forecast(at))
    return min(low, REPS[0]), min(high, REPS[0])


def fixed_chance(client: Client, at: int) -> float:
    """That all of set 1 gets done."""
    # Rounding can put the sum of all shares just above 1.
    return max(0.0, 1.0 - client.forecast(at).at_most(REPS[0] - 1))
