"""A check that cannot fail is no check: bugs on purpose, three of them each day, all of them in the bench."""

from datetime import UTC, datetime

import pytest

from tests.simulation.catching import caught
from tests.simulation.planted import PLANTED, RARE

EACH_DAY = 3
COMMON = sorted(set(PLANTED) - RARE)
TODAY = datetime.now(UTC).toordinal() * EACH_DAY
TODAYS = [COMMON[(TODAY + number) % len(COMMON)] for number in range(EACH_DAY)]


def test_there_are_at_least_30_planted_bugs() -> None:
    assert len(PLANTED) >= 30
    assert len(COMMON) >= 30


@pytest.mark.parametrize("name", sorted(PLANTED))
def test_what_a_planted_bug_breaks_is_still_there(name: str) -> None:
    with PLANTED[name]():
        pass  # it asserts that something changed: code that moved away would be broken nowhere


@pytest.mark.parametrize("name", TODAYS)
def test_a_planted_bug_is_noticed(name: str) -> None:
    assert caught(name, range(1, 13)) is not None


def test_who_may_not_train_and_tries_to_is_looked_after_in_every_story() -> None:
    assert "without clearance" in (caught("clearance_never_read", [1], clients=1) or "")


def test_without_a_bug_the_same_stories_pass() -> None:
    assert caught(None, range(1, 5)) is None
