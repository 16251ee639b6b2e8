"""The practice that tests of the engine play in."""

from collections.abc import Iterator

import pytest

from tests.practice import Practice, PracticeOnFile


@pytest.fixture
def practice() -> Iterator[Practice]:
    """A practice that is closed afterwards."""
    made = Practice()
    yield made
    made.stage.close()


@pytest.fixture
def practice_on_file() -> Iterator[Practice]:
    """The same with a file to look at."""
    made = PracticeOnFile()
    yield made
    made.stage.close()
