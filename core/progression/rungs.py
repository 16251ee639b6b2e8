"""Elastic bands and variations of which only the order is known: each rung has a belief of its own.

From one such rung to the next the reps may fall by a tenth or by two thirds, and nobody has measured it. So what
happened on one of them says of another only that it is harder or easier: the estimates of all rungs are put in
order (isotonic regression, weighted by how sure each is), and a rung that was never tried is guessed from its
neighbours, with little certainty. Every estimate still rises with every rep, so more clean reps never lower the
next advice. Loads, and rungs of known fraction, share one belief.
"""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from itertools import pairwise

from core.progression.belief import Belief, believe, prior, until
from core.progression.evidence import Evidence
from core.progression.prior import UNKNOWN_SD
from core.resistance import Scale

UNTRIED_SD = 0.20  # of the place of a rung that was never tried, log load; own judgement, no source
APART = 1e-6  # the least from rung to rung, log load, so that an order stays one

Seen = tuple[int, Evidence]  # which of the loads or rungs, and what was seen there


def beliefs(places: Scale, start: Belief, seen: Sequence[Seen], day: date) -> tuple[Belief, ...]:
    """What is believed on `day` about each load or rung, by its place."""
    if not any(places.guessed):
        return (until(believe(start, [one for _, one in seen]), day),) * len(places.x)
    tried = _tried(places, start, seen, day)
    if not tried:
        return (until(start, day),) * len(places.x)
    offs = _in_order([(at, places.x[at] - one.theta, 1 / one.var) for at, one in tried.items()])
    return tuple(_placed(at, places, tried, offs) for at in range(len(places.x)))


def _tried(places: Scale, start: Belief, seen: Sequence[Seen], day: date) -> dict[int, Belief]:
    """By index, ascending: the belief from the sessions on that rung, or on any of those with known places."""
    found = {}
    for at, guess in enumerate(places.guessed):
        mine = [one for index, one in seen if (index == at if guess else not places.guessed[index])]
        if mine:
            begin = prior(places.x[at], UNKNOWN_SD) if guess else start
            found[at] = until(believe(begin, mine), day)
    return found


def _in_order(found: list[tuple[int, float, float]]) -> dict[int, float]:
    """From (index, value, weight) by index the values nearest to these that never fall (pooled neighbours)."""
    pools: list[tuple[list[int], float, float]] = []
    for at, value, weight in found:
        pools.append(([at], value, weight))
        while len(pools) > 1 and pools[-2][1] > pools[-1][1]:
            (left, low, heavy), (right, high, light) = pools[-2:]
            mean = (low * heavy + high * light) / (heavy + light)
            pools[-2:] = [(left + right, mean, heavy + light)]
    return {at: value + APART * at for ats, value, _ in pools for at in ats}


def _placed(at: int, places: Scale, tried: dict[int, Belief], offs: dict[int, float]) -> Belief:
    """The belief about one rung, moved to where its neighbours let it be."""
    if at in tried:
        return replace(tried[at], theta=places.x[at] - offs[at])
    near = min(tried, key=lambda one: (abs(one - at), one))
    var = tried[near].var + UNTRIED_SD**2 * abs(near - at)
    return replace(tried[near], theta=places.x[at] - _guess(at, places, offs), var=var, x=places.x[at])


def _guess(at: int, places: Scale, offs: dict[int, float]) -> float:
    """Between tried rungs evenly, beyond them by the usual steps."""
    for left, right in pairwise(offs):
        if left < at < right:
            share = (at - left) / (right - left)
            return offs[left] + share * (offs[right] - offs[left])
    edge = min(offs) if at < min(offs) else max(offs)
    return offs[edge] + places.x[at] - places.x[edge]
