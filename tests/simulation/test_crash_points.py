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


@pytest.mark.parametrize("twice", [False, True])
@pytest.mark.parametrize("name", STORIES)
def test_killed_at_any_point_a_story_ends_in_the_same_rows(name: str, twice: bool) -> None:
    as_always = crashing.whole(STORIES[name])
    points = DICE.sample(range(1, as_always.points + 1), SAMPLE[name])
    assert wrong_at(name, points, as_always, twice) == {}


def test_there_are_ten_thousand_points() -> None:
    assert sum(crashing.whole(story).points for story in STORIES.values()) >= 10_000


@pytest.mark.parametrize(
    ("bug", "name", "points"),
    [
        ("each_statement_by_itself", "joining", range(40, 60)),
        ("timer_only_in_memory", "session", range(280, 300)),
        ("confirmed_before_the_commit", "digest", range(1, 20)),
    ],
)
def test_a_planted_bug_is_noticed_by_a_crash(bug: str, name: str, points: range) -> None:
    as_always = crashing.whole(STORIES[name])
    with PLANTED[bug]():
        assert wrong_at(name, points, as_always)
