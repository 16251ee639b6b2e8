"""A sample of the flips of `tests/bench/damage.py`: no damaged backup passes, no changed value goes unnoticed."""

from tests.bench.damage import count


def test_no_flip_goes_unnoticed_that_changes_what_is_said_and_no_damaged_backup_passes() -> None:
    found = count(flips=60, seed=7)
    assert (found.silent, found.passed) == (0, 0)
    assert found.check > 0, "a sample in which nothing was hit proves nothing"
