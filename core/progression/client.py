"""From a request to everything known about the client: places, belief, falls."""

import math
from dataclasses import dataclass, replace

from core.progression.belief import Belief, after_illness, prior
from core.progression.cautions import next_day
from core.progression.evidence import evidence
from core.progression.fall import own_falls
from core.progression.forecast import Forecast, forecast
from core.progression.prior import GENTLE_LEFT, GENTLE_SESSIONS, START, START_SD, UNKNOWN_SD
from core.progression.readings import Expected
from core.progression.records import Request, SessionRecord
from core.progression.rungs import Seen, beliefs
from core.resistance import Loads, Resistance, Scale, scale


@dataclass(frozen=True, slots=True)
class Client:
    """`before`: on the day of the last session, and of what was used then. `now`: on the day of the next one, of each
    load or rung."""

    sessions: tuple[SessionRecord, ...]
    places: Scale
    before: Belief
    now: tuple[Belief, ...]
    falls: tuple[float, ...]
    falls_before: tuple[float, ...]

    @property
    def last(self) -> SessionRecord:
        return self.sessions[-1]

    @property
    def off(self) -> tuple[float, ...]:
        """How much harder (+) or easier (-) each load or rung is than the one that brings 31.5 reps, log load."""
        return tuple(x - one.theta for x, one in zip(self.places.x, self.now, strict=True))

    def forecast(self, at: int, left: int = 0) -> Forecast:
        """Set 1 at the load or rung `at`, with `left` clean reps left undone."""
        return forecast(self.now[at], self.places.x[at], left)

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
    sessions, places = request.sessions, scale(request.resistance)
    seen = [_seen(request, one, places) for one in sessions]
    start = _start(request.resistance, places, request)
    falls, falls_before = own_falls(sessions), own_falls(sessions[:-1])
    if not seen:
        return Client(sessions, places, start, (start,) * len(places.x), falls, falls_before)
    last, evidence_of_last = seen[-1]
    before = beliefs(places, start, seen[:-1], evidence_of_last.day)[last]
    now = beliefs(places, start, seen, next_day(request))
    if request.ill:
        now = tuple(after_illness(one) for one in now)
    return Client(sessions, places, before, now, falls, falls_before)


def _seen(request: Request, session: SessionRecord, places: Scale) -> Seen:
    """What a session says, and at which load or rung (the nearest, where that load is owned no more)."""
    x = places.place(session.used)
    at = min(range(len(places.x)), key=lambda one: abs(places.x[one] - x))
    return at, evidence(session, x, request.scheme)


def _start(resistance: Resistance, places: Scale, request: Request) -> Belief:
    """30 % of the maximum; without one, where the first session was or will be, and much less surely."""
    if isinstance(resistance, Loads) and resistance.one_rm is not None:
        return prior(math.log(START * resistance.one_rm.kilograms), START_SD)
    first = request.sessions[0].used if request.sessions else request.planned
    return prior(places.x[0] if first is None else places.place(first), UNKNOWN_SD)
