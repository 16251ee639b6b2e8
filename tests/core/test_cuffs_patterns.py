"""Several sessions together: slow refill often, loose often, and gauges that move together."""

import pytest

from core.cuffs.patterns import Checked, patterns
from core.pressure import Fit
from core.safety.causes import Cause

RIGHT, SLOW, LOOSE = Checked(False, False), Checked(True, False), Checked(False, True)


@pytest.mark.parametrize(("slow", "said"), [(2, ()), (3, (Cause.REFILL_SLOW_OFTEN,))])
def test_a_slow_refill_in_three_of_four_sessions_is_a_pattern(slow: int, said: tuple[Cause, ...]) -> None:
    assert patterns([SLOW] * slow + [RIGHT] * (4 - slow)) == said


def test_what_was_five_sessions_ago_no_longer_counts() -> None:
    assert patterns([SLOW, SLOW, SLOW, RIGHT, RIGHT]) == ()
    assert patterns([RIGHT, LOOSE, RIGHT, LOOSE, LOOSE]) == (Cause.LOOSE_OFTEN,)


def test_tightness_that_sinks_while_reps_rise_is_drift() -> None:
    before = [Checked(False, False, Fit(7, 2.0, 0.0))] * 4
    after = [Checked(False, False, Fit(5, 1.5, 0.3))] * 3
    assert patterns(before + after) == (Cause.TIGHTNESS_DRIFT,)
    assert patterns(before + before) == ()
