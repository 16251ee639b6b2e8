"""One scripted session, killed, with a full disk, its updates given again: it always ends in the same facts."""

import random
from pathlib import Path

import pytest

from tests.simulation import power, scripted
from tests.simulation.disk import Fate

COMMITS, WRITES, AS_ALWAYS = scripted.undisturbed()
DICE = random.Random(1)  # a fixed sample; all of them in `python -m tests.bench.simulation --crashes`


def test_the_undisturbed_session_has_its_sets_and_ends_well() -> None:
    assert [row for row in AS_ALWAYS if row[0] == "set"]
    assert [row[3] for row in AS_ALWAYS if row[0] == "ended"] == ["done"]
    assert ("watch", 0) in AS_ALWAYS
    assert len(COMMITS) > 50


@pytest.mark.parametrize("commit", DICE.sample(COMMITS, 4))
@pytest.mark.parametrize("when", ["kill_before", "kill_after"])
def test_killed_at_any_commit_the_session_ends_in_the_same_facts(commit: int, when: str) -> None:
    assert scripted.after(lambda fate: getattr(fate, when).add(commit)) == AS_ALWAYS


@pytest.mark.parametrize("write", DICE.sample(WRITES, 3))
def test_killed_inside_a_transaction_nothing_of_it_remains(write: int) -> None:
    assert scripted.after(lambda fate: fate.kill_writes.add(write)) == AS_ALWAYS


@pytest.mark.parametrize("write", DICE.sample(WRITES, 3))
@pytest.mark.parametrize("rolls_back", [True, False])
def test_a_disk_that_is_full_at_any_write_loses_nothing(write: int, rolls_back: bool) -> None:
    def fate(one: Fate) -> None:
        one.full_writes |= set(range(write, write + 3))
        one.rolls_back = rolls_back

    assert scripted.after(fate) == AS_ALWAYS


@pytest.mark.parametrize("seed", range(4))
def test_updates_that_are_given_again_have_one_effect(seed: int) -> None:
    assert scripted.after(lambda fate: None, mischief=seed) == AS_ALWAYS


@pytest.mark.skipif(not power.possible(), reason="strace records the writes")
def test_a_power_cut_loses_no_confirmed_commit_and_without_syncs_it_would(tmp_path: Path) -> None:
    found = {}
    for synchronous in ("FULL", "NORMAL"):
        (folder := tmp_path / synchronous).mkdir()
        recorded = power.record(synchronous, folder)
        cuts = random.Random(1).sample(range(len(recorded.events)), 30)
        found[synchronous] = power.lost_at_cuts(recorded, cuts, random.Random(2))
    assert found["FULL"] == (0, 0)
    assert found["NORMAL"][0] > 0
    assert found["NORMAL"][1] == 0
