"""The practice that tests of the engine play in."""

from collections.abc import Iterator

import pytest

from tests.practice import Practice


@pytest.fixture
def practice() -> Iterator[Practice]:
    """A practice that is closed afterwards."""
    made = Practice()
    yield made
    made.stage.close()
