"""Played stories on an encrypted database, each killed once: they end in the same rows.

The short ones, each about something else; all stories and points: `python -m tests.bench.crashes --encrypted`.
"""

import random

import pytest

from tests.simulation import crashing
from tests.simulation.stories import STORIES

SHORT = ("digest", "words", "stand_in", "days", "export", "leaving", "details")

pytestmark = pytest.mark.usefixtures("key")


@pytest.mark.parametrize("name", SHORT)
def test_killed_under_a_key_a_story_ends_in_the_same_rows(name: str) -> None:
    as_always = crashing.whole(STORIES[name])
    point = random.Random(name).randint(1, as_always.points)
    found: dict[int, str] = {}
    crashing.crashed(STORIES[name], [point], as_always, found.__setitem__)
    assert found == {point: ""}
