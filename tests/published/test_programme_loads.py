"""Sets, loads and times of a programme against the position paper and common practice."""

import math

from core.plans import FIXED_AIMS, OPEN_AIMS, REST_S, TEMPO_S, Scheme
from core.progression.choosing import MOST_OF_MAX
from core.progression.fixed_sets import REPS, past_open
from core.progression.prior import GROWTH_A_DAY, START
from core.progression.records import SessionRecord
from tests.core.progression.scenes import DAY, ask, kg


def minutes(reps: int, tempo_s: float, rest_s: float, sets: int = 4) -> float:
    return (reps * tempo_s + (sets - 1) * rest_s) / 60


def test_the_fixed_scheme_is_75_reps_in_four_sets() -> None:
    """30/15/15/15 (Patterson et al. 2019, Front Physiol 10:533, table from memory)."""
    assert REPS == (30, 15, 15, 15)
    assert sum(aim.high for aim in FIXED_AIMS) == 75


def test_the_open_scheme_is_common_practice() -> None:
    """25-40, 10-20, 5-10; 30 s of rest: common practice, no source."""
    assert [(aim.low, aim.high) for aim in OPEN_AIMS] == [(25, 40), (10, 20), (5, 10)]
    assert REST_S == 30


def test_the_start_lies_in_the_published_20_to_40_percent() -> None:
    """20-40 % of the maximum (Patterson et al. 2019, second-hand); about 30 %: common practice."""
    assert 0.20 <= START <= 0.40
    assert START * 100 == 30  # bench press 100 -> work with 30: common practice
    assert math.isclose(math.exp(MOST_OF_MAX), 0.50)  # BFR trials stay below 50 % (Lixandrao et al. 2018)


def test_a_movement_fits_into_five_to_ten_minutes() -> None:
    """Derived: 75 reps at 2 s + 2 s with three rests of 30 s take 390 s; 315 at 1.5 + 1.5; 240 at 1 + 1."""
    assert minutes(75, TEMPO_S, REST_S) * 60 == 390
    assert minutes(75, 3, 30) * 60 == 315
    assert minutes(75, 2, 30) * 60 == 240
    assert minutes(75, 4, 60) * 60 == 480
    assert 5 <= minutes(75, TEMPO_S, REST_S) <= 10
    assert 2 * minutes(75, TEMPO_S, REST_S) > 10  # two movements need bands off between them


def test_an_open_last_set_raises_above_fifteen_reps() -> None:
    """Smallest possible load when set 4 brings more than 15 (trial protocol PMC7534706, table 3, read)."""
    left_open = ask(scheme=Scheme.FIXED, open_last=True)
    assert not past_open(left_open, SessionRecord(DAY, kg(10), (30, 15, 15, 15)))
    assert past_open(left_open, SessionRecord(DAY, kg(10), (30, 15, 15, 16)))


def test_growth_is_of_the_size_that_trials_found() -> None:
    """1RM +7.3 % in 3 weeks (Abe et al. 2009, read), +8.6 % force in 6 weeks (Yasuda et al. 2012, read)."""
    assert 0.03 <= math.expm1(21 * GROWTH_A_DAY) <= 0.10
    assert 0.06 <= math.expm1(42 * GROWTH_A_DAY) <= 0.14
