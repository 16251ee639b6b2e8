"""Elastic bands and variations of which only the order is known."""

import math
import random
from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.plans import Rung, Scheme
from core.progression import Action, Request, SessionRecord, advise
from core.progression.client import known
from core.resistance import Ladder
from tests.core.progression.scenes import DAY, ask, gentle, kg, session

COLOURS = Ladder(tuple(Rung(f"{colour} band") for colour in ("yellow", "red", "green", "blue", "black")))
NAMES = [rung.name for rung in COLOURS.rungs]


def asked(*sessions: SessionRecord, ladder: Ladder = COLOURS) -> Request:
    return Request("curl", Scheme.OPEN, ladder, sessions)


def done(number: int, band: str, *reps: int) -> SessionRecord:
    return session(number, band, *reps)


def played(step: float, true: float) -> list[tuple[int, int]]:
    """Sixteen sessions of somebody whose reps fall by `step` (log load) a band: which band, and reps of set 1."""
    draw, found = random.Random(3), []
    sessions: tuple[SessionRecord, ...] = ()
    for number in range(16):
        used = str(advise(asked(*sessions)).use)
        at = NAMES.index(used)
        reps = max(1, min(150, round(31.5 * math.exp(-2.6 * step * (at - true) + draw.gauss(0, 0.1)))))
        sessions = (*sessions, done(number, used, reps, max(1, reps // 2), max(1, reps // 4)))
        found.append((at, reps))
    return found


@pytest.mark.parametrize("step", [0.1, 0.2, 0.3, 0.45, 0.6])
@pytest.mark.parametrize("true", [0.5, 1.3, 2.5])
def test_however_far_apart_the_bands_are_nobody_goes_past_the_first_that_is_too_hard(
    step: float, true: float
) -> None:
    for (at, reps), (then, _) in zip(played(step, true), played(step, true)[1:], strict=False):
        assert then <= at + 1
        assert not (reps < 25 and then > at)
    assert max(at for at, _ in played(step, true)) <= math.ceil(true) + 1


def test_with_no_band_in_range_one_is_kept_for_weeks() -> None:
    """51 reps with red, 13 with green: red it is, and green is not tried every other week."""
    bands = [at for at, _ in played(0.45, 1.3)]
    assert bands[3:] == [1] * len(bands[3:])


def test_too_few_reps_never_lead_to_a_harder_band_whatever_came_before() -> None:
    easy = [done(number, "yellow band", 150, 80, 40) for number in range(3)]
    advice = advise(asked(*easy, done(3, "red band", 19, 9, 4)))
    assert advice.action is not Action.RAISE


@pytest.mark.parametrize(("reps", "raised"), [(24, False), (25, True)])
def test_a_load_does_not_rise_after_a_set_below_its_range(reps: int, raised: bool) -> None:
    """Even where all before spoke for more."""
    much = [session(number, kg(12), 90, 45, 22) for number in (2, 3)]
    advice = advise(ask(*gentle(kg(12)), *much, session(4, kg(12), reps, 12, 6)))
    assert (advice.action is Action.RAISE) is raised


def test_a_band_that_was_never_tried_is_foretold_less_surely() -> None:
    tried = asked(*(done(number, "red band", 30, 15, 8) for number in range(5)))
    client = known(tried)
    spread = [client.now[at].log_sd(client.places.x[at]) for at in range(len(NAMES))]
    assert spread[1] == min(spread)
    assert spread[2] < spread[3] < spread[4]


@st.composite
def histories(draw: st.DrawFn) -> tuple[Ladder, tuple[SessionRecord, ...]]:
    """Ladders with and without fractions, and sessions all over them."""
    shares = sorted(draw(st.lists(st.integers(5, 120), min_size=1, max_size=7, unique=True)))
    rungs = tuple(
        Rung(f"rung {at}", share / 100 if draw(st.booleans()) else None) for at, share in enumerate(shares)
    )
    day, sessions = DAY, []
    for _ in range(draw(st.integers(1, 6))):
        day += timedelta(days=draw(st.integers(0, 20)))
        reps = tuple(draw(st.lists(st.integers(0, 90), min_size=1, max_size=3)))
        used = draw(st.sampled_from(rungs)).name
        sessions.append(SessionRecord(day, used, reps, tightness=draw(st.sampled_from([None, 4, 7, 9]))))
    return Ladder(rungs, 80), tuple(sessions)


@given(histories(), st.integers(0, 5), st.integers(1, 80))
def test_more_reps_on_any_rung_never_lower_the_next_one(
    history: tuple[Ladder, tuple[SessionRecord, ...]], at: int, more: int
) -> None:
    ladder, sessions = history
    at %= len(sessions)
    better = replace(sessions[at], reps=(sessions[at].reps[0] + more, *sessions[at].reps[1:]))
    changed = (*sessions[:at], better, *sessions[at + 1 :])
    if len(set(changed)) == len(set(sessions)):
        names = [rung.name for rung in ladder.rungs]
        before, after = (advise(asked(*one, ladder=ladder)).use for one in (sessions, changed))
        assert names.index(str(after)) >= names.index(str(before))


@given(histories())
def test_a_harder_rung_never_raises_expected_reps(
    history: tuple[Ladder, tuple[SessionRecord, ...]],
) -> None:
    ladder, sessions = history
    client = known(asked(*sessions, ladder=ladder))
    middles = [client.forecast(at).middle for at in range(len(client.places.x))]
    assert middles == sorted(middles, reverse=True)
