"""Played stories killed in the middle, once and twice; all of their points in `python -m tests.bench.crashes`."""

import random
from collections.abc import Collection

import pytest

from tests.simulation import crashing
from tests.simulation.planted import PLANTED
from tests.simulation.stories import STORIES

DICE = random.Random(1)  # a fixed sample
LONG = {"next_morning", "numb_next_morning", "hurts", "travel"}  # one point each
SAMPLE = {name: 1 if name in LONG else 3 for name in STORIES}


def wrong_at(
    name: str, points: Collection[int], as_always: crashing.Whole, twice: bool = False
) -> dict[int, str]:
    found: dict[int, str] = {}
    crashing.crashed(STORIES[name], points, as_always, found.__setitem__, twice)
    assert set(found) == set(points)
    return {point: said for point, said in found.items() if said}


@pytest.mark.parametrize("name", STORIES)
def test_killed_at_any_point_a_story_ends_in_the_same_rows(name: str) -> None:
    as_always = crashing.whole(STORIES[name])
    points = DICE.sample(range(1, as_always.points + 1), SAMPLE[name])
    assert wrong_at(name, points, as_always) == {}
    assert wrong_at(name, points[:1], as_always, twice=True) == {}


class Noticed(Exception):
    """A crash that ends otherwise."""


def stops(point: int, said: str) -> None:
    if said:
        raise Noticed


@pytest.mark.parametrize(
    ("bug", "name", "first", "every"),
    [
        ("each_statement_by_itself", "joining", 30, 3),
        ("timer_only_in_memory", "session", 240, 15),
        ("confirmed_before_the_commit", "digest", 1, 3),
    ],
)
def test_a_planted_bug_is_noticed_by_a_crash(bug: str, name: str, first: int, every: int) -> None:
    as_always = crashing.whole(STORIES[name])
    with PLANTED[bug](), pytest.raises(Noticed):
        crashing.crashed(STORIES[name], range(first, as_always.points, every), as_always, stops)
