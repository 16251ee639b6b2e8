"""A whole session on an encrypted database, killed and with a full disk: the same facts as on a plain one."""

import pytest

from tests.simulation import scripted
from tests.simulation.disk import Fate

pytestmark = pytest.mark.usefixtures("key")


@pytest.fixture(scope="module")
def plain_outcome() -> scripted.Outcome:
    return scripted.after(lambda fate: None)


@pytest.mark.parametrize("name", ["kill_before", "kill_after", "full_commits", "kill_writes"])
def test_whatever_befalls_it_the_session_ends_in_the_same_facts(
    name: str, plain_outcome: scripted.Outcome
) -> None:
    def befalls(fate: Fate) -> None:
        getattr(fate, name).update((40, 120))

    assert scripted.after(befalls) == plain_outcome
