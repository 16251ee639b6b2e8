"""A small sample of the bench: simulated clients whose curves the model does not assume.

The whole sweep is `python -m tests.bench.progression`.
"""

import pytest

from tests.bench.progression import FAMILIES, WANTED, Tally, measure, model, one_step, together

CLIENTS = 12


def sampled(step: str) -> dict[str, Tally]:
    return {family: measure(model, family, step, CLIENTS, seed=11, gentle=True) for family in FAMILIES}


@pytest.mark.parametrize("step", WANTED)
def test_the_model_finds_and_holds_the_load(step: str) -> None:
    whole = together(list(sampled(step).values()))
    assert whole.in_range / whole.sessions >= WANTED[step] - 0.03  # a small sample
    assert sum(whole.waits) / len(whole.waits) <= 1.3
    assert whole.far / whole.sessions < 0.02
    assert whole.sore_raises == 0
    assert 0.72 <= whole.in_80 / whole.sessions <= 0.88


def test_the_one_step_rule_is_slower() -> None:
    rule = together([measure(one_step, family, "0.5", CLIENTS, 11, gentle=False) for family in FAMILIES])
    ours = together(list(sampled("0.5").values()))
    assert ours.in_range > rule.in_range
    assert sum(ours.waits) < sum(rule.waits)
