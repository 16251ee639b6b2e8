"""Before each session: is anything different today? One question; details only after "yes" or "not sure"."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from core.safety.sources import Source


class Today(StrEnum):
    """Asked before each session. Stored."""

    ANYTHING = "anything"  # any of these today?
    FEVER = "fever"
    ALCOHOL = "alcohol"
    LONG_TRAVEL = "long_travel"  # more than 4 h sitting since yesterday
    PREGNANT = "pregnant"  # possible
    NEW = "new"  # new medicine, diagnosis, hospital stay, injury
    HEAT = "heat"  # very hot where the client trains


class Route(StrEnum):
    """What follows for this session, mildest first. Stored."""

    GO = "go"
    GENTLE = "gentle"  # half the sets, stop early, asked again in the evening
    COACH_FIRST = "coach_first"  # not before the coach has answered
    NOT_TODAY = "not_today"
    SCREEN_AGAIN = "screen_again"  # and not before that is decided

    @property
    def rank(self) -> int:
        """0 for GO; the higher, the stricter."""
        return RANKS[self]


RANKS = {route: rank for rank, route in enumerate(Route)}
YES, NO, NOT_SURE = "yes", "no", "not_sure"

WHEN_YES: dict[Today, tuple[Route, Source]] = {
    Today.FEVER: (Route.NOT_TODAY, Source.TABATA_2016),
    Today.ALCOHOL: (Route.NOT_TODAY, Source.BEFORE_SESSION),
    Today.LONG_TRAVEL: (Route.COACH_FIRST, Source.VTE_EUROPEAN),
    Today.PREGNANT: (Route.SCREEN_AGAIN, Source.BEFORE_SESSION),
    Today.NEW: (Route.SCREEN_AGAIN, Source.BEFORE_SESSION),
    Today.HEAT: (Route.GENTLE, Source.TABATA_2016),
}


@dataclass(frozen=True, slots=True)
class Routed:
    """The strictest route and the answers that led to a route, strictest first."""

    route: Route
    because: tuple[Today, ...]


def missing_today(said: Mapping[Today, str]) -> Today | None:
    """The next question; None: all there."""
    if Today.ANYTHING not in said:
        return Today.ANYTHING
    if said[Today.ANYTHING] == NO:
        return None
    return next((question for question in WHEN_YES if question not in said), None)


def route_today(said: Mapping[Today, str]) -> Routed:
    """What the answers mean; "not sure" means that the coach looks first. Raises ValueError while one is open."""
    question = missing_today(said)
    if question is not None:
        raise ValueError(f"{question}: not answered yet")
    found = [(_route(one, answer), one) for one, answer in said.items() if one in WHEN_YES and answer != NO]
    found.sort(key=lambda pair: -pair[0].rank)
    return Routed(found[0][0] if found else Route.GO, tuple(one for _, one in found))


def _route(question: Today, answer: str) -> Route:
    if answer not in (YES, NOT_SURE):
        raise ValueError(f"{question}: {answer!r} is not yes, no or not_sure")
    route = WHEN_YES[question][0]
    return min(route, Route.COACH_FIRST, key=lambda one: one.rank) if answer == NOT_SURE else route
