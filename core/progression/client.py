"""From a request to everything known about the client: places, belief, falls."""

import math
from dataclasses import dataclass, replace

from core.progression.belief import Belief, after_illness, believe, prior, until
from core.progression.cautions import next_day
from core.progression.evidence import evidence
from core.progression.fall import own_falls
from core.progression.prior import GENTLE_LEFT, GENTLE_SESSIONS, START, START_SD, UNKNOWN_SD
from core.progression.readings import Expected
from core.progression.records import Request, SessionRecord
from core.resistance import Loads, Resistance, Scale, scale


@dataclass(frozen=True, slots=True)
class Client:
    """`before` is the belief on the day of the last session, `now` on the day of the next."""

    sessions: tuple[SessionRecord, ...]
    places: Scale
    before: Belief
    now: Belief
    falls: tuple[float, ...]
    falls_before: tuple[float, ...]

    @property
    def last(self) -> SessionRecord:
        return self.sessions[-1]

    @property
    def left(self) -> int:
        """Clean reps to leave undone next time: the first sessions are gentle."""
        return GENTLE_LEFT if len(self.sessions) < GENTLE_SESSIONS else 0

    @property
    def expected_last(self) -> Expected:
        """What was expected of the last session before it; the very first one surprises nobody."""
        known = len(self.sessions) > 1
        log_first = self.before.log_reps(self.places.place(self.last.used)) if known else None
        return Expected(log_first, self.falls_before)


def once(request: Request) -> Request:
    """The same request with every session told only once."""
    return replace(request, sessions=tuple(dict.fromkeys(request.sessions)))


def known(request: Request) -> Client:
    """Everything the sessions of `request` say."""
    sessions = request.sessions
    places = scale(request.resistance)
    seen = [evidence(one, places.place(one.used), request.scheme) for one in sessions]
    start = _start(request.resistance, places, request)
    if not seen:
        return Client(sessions, places, start, start, own_falls(()), own_falls(()))
    before = until(believe(start, seen[:-1]), seen[-1].day)
    now = until(believe(before, seen[-1:]), next_day(request))
    return Client(
        sessions,
        places,
        before,
        after_illness(now) if request.ill else now,
        own_falls(sessions),
        own_falls(sessions[:-1]),
    )


def _start(resistance: Resistance, places: Scale, request: Request) -> Belief:
    """30 % of the maximum; without one, where the first session was or will be, and much less surely."""
    if isinstance(resistance, Loads) and resistance.one_rm is not None:
        return prior(math.log(START * resistance.one_rm.kilograms), START_SD)
    first = request.sessions[0].used if request.sessions else request.planned
    return prior(places.x[0] if first is None else places.place(first), UNKNOWN_SD)
