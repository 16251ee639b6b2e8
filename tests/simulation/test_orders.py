"""Whatever the order in which updates arrive, and however often: one effect. All seeds: `tests.bench.orders`."""

from functools import cache

import pytest

from tests.simulation.orders import REPS, outcome
from tests.simulation.planted import PLANTED

as_always = cache(lambda: outcome(None))


def test_undisturbed_everybody_trains_and_takes_the_bands_off() -> None:
    sets, ended, on, off, checks, alerts, watches, open_updates = as_always()
    assert [row[-1] for row in sets] == [reps for both in REPS.values() for reps in both]
    assert [row[-1] for row in ended] == ["done"] * 3
    assert len(on) == len(off) == 3
    assert len(checks) == 12
    assert alerts == watches == open_updates == []


@pytest.mark.parametrize("seed", range(4))
def test_in_any_order_given_again_and_from_two_phones_it_is_the_same(seed: int) -> None:
    assert outcome(seed) == as_always()


@pytest.mark.parametrize("name", ["dedupe_by_maximum", "old_button_obeyed"])
def test_this_check_can_fail(name: str) -> None:
    undisturbed = as_always()
    with PLANTED[name]():
        assert any(outcome(seed) != undisturbed for seed in range(3))
