"""The position paper's table and single trials: what they did and found, beside what is planned here."""

import math
from datetime import timedelta

import pytest

from core.calendar.limits import HOURS_APART, SESSIONS_A_WEEK
from core.cuffs.limits import CAP_MIN, set_length
from core.plan_text import plan_from_text, plan_to_text
from core.plans import (
    FIXED_AIMS,
    LIMIT_MIN,
    LONGEST_MIN,
    OPEN_AIMS,
    REST_S,
    TEMPO_S,
    WALK_LIMIT_MIN,
    Aim,
    Exercise,
    Plan,
    Region,
    Scheme,
)
from core.pressure import CUFF_CM, HIGH_SHARE, LOW_SHARE
from core.progression.choosing import MOST_OF_MAX
from core.progression.prior import GROWTH_A_DAY, PUBLISHED_REPS, START
from core.templates import MOST_OF_MAX as MOST_OF_MAX_PLANNED
from core.templates import SHARE_OF_MAX
from core.units import Load
from core.walking import CEILING, START_KMH, TOP_KMH

TOTAL = sum(aim.high for aim in FIXED_AIMS)


# --- Patterson et al. 2019, Front Physiol 10:533: table cells from memory unless a test says otherwise -------------
def test_frequency_lies_in_two_to_three_a_week() -> None:
    """2-3 a week in programmes above 3 weeks (second-hand); 1-2 a day for 1-3 weeks only, which is not planned."""
    assert 2 <= SESSIONS_A_WEEK <= 3
    assert HOURS_APART > 24


def test_time_under_bands_lies_in_five_to_ten_minutes_and_a_walk_in_five_to_twenty() -> None:
    assert all(5 <= minutes <= 10 for minutes in LIMIT_MIN.values())
    assert 5 <= WALK_LIMIT_MIN <= 20
    assert max(LONGEST_MIN.values()) < 20


def test_sets_rest_and_tempo_lie_in_the_papers_ranges() -> None:
    """2-4 sets, 30-60 s between (second-hand), 1-2 s up and 1-2 s down."""
    assert len(OPEN_AIMS) == 3
    assert len(FIXED_AIMS) == 4
    assert 30 <= REST_S <= 60
    assert 1 + 1 <= TEMPO_S <= 2 + 2


def test_pressure_walking_and_width_are_those_of_the_paper() -> None:
    """40-80 % of occlusion pressure (second-hand); aerobic work below 50 % of VO2max or 4-6 km/h (Rolnick et al. 2021,
    Front Rehabil Sci 2:697082, read); a large cuff is 17-18 cm, a medium one 10-12, a small one 5."""
    assert (LOW_SHARE, HIGH_SHARE) == (0.40, 0.80)
    assert CEILING == 0.50
    assert (START_KMH, TOP_KMH) == (4.0, 6.0)
    assert 17 <= CUFF_CM <= 18


def test_the_passive_use_of_the_paper_has_no_plan_here() -> None:
    """Five-minute bouts, 3-5 of them, 3-5 min between, perhaps 70-100 %: bed rest only."""
    assert {one.value for one in Scheme} == {"open", "fixed", "walk"}
    assert HIGH_SHARE < 1.0


# --- habits and single trials --------------------------------------------------------------------------------------
def test_a_fixed_movement_is_close_to_the_mean_of_published_ankle_trials() -> None:
    """8.6 min, rest 29.4 s, 69.4 reps, pressure 75 % (World J Orthop 2025;16(6):106804, table 4, read)."""
    spell = set_length(TOTAL, TEMPO_S) + timedelta(seconds=3 * REST_S)
    assert spell == timedelta(minutes=6.5)
    assert abs(spell / timedelta(minutes=1) - 8.6) < 2.5
    assert abs(REST_S - 29.4) < 1
    assert abs(TOTAL - 69.4) < 6
    assert LOW_SHARE <= 0.75 <= HIGH_SHARE


def test_practitioners_usual_minutes_and_days_fit_the_limits() -> None:
    """About 10 min a session, 1-4 times a week (Patterson & Brandner 2018, 250 replies, 115 prescribers, abstract)."""
    assert set(LIMIT_MIN.values()) == {10}
    assert 1 <= SESSIONS_A_WEEK <= 4


def test_practitioners_pressures_for_arm_and_leg() -> None:
    """30-50 % arm, 60-80 % leg (continuing-education summary, second-hand): the leg's lies within the range used."""
    assert LOW_SHARE <= 0.60 < 0.80 <= HIGH_SHARE
    assert LOW_SHARE > 0.30  # for the arm nothing is computed, as no equation for it was read


@pytest.mark.parametrize(
    ("share", "source"),
    [
        (0.30, "Wilson et al. 2013, JSCR 27:3068, leg press, n = 12"),
        (0.30, "Yasuda et al. 2012, PLoS ONE, curl, three days a week for six weeks"),
        (0.30, "PMC7534706, table 3, at 60 % of occlusion pressure for eight weeks"),
    ],
)
def test_trials_of_thirty_fifteen_fifteen_fifteen_began_at_thirty_percent(share: float, source: str) -> None:
    """All read."""
    assert math.isclose(START, share), source
    assert [aim.high for aim in FIXED_AIMS] == [30, 15, 15, 15]


def test_a_published_variant_can_be_planned_and_fits_its_time() -> None:
    """30/20/20/20 at 20 % with 45 s of rest for seven weeks (Luebbers et al. 2014, JSCR 28:2270, n = 62, abstract)."""
    aims = tuple(Aim(reps, reps) for reps in (30, 20, 20, 20))
    one = Exercise("curl", Region.ARMS, Scheme.FIXED, aims, Load(START_LOAD), (Load(START_LOAD),), rest_s=45)
    plan = Plan("variant", (one,))
    assert plan_from_text(plan_to_text(plan)) == plan
    spell = set_length(sum(aim.high for aim in aims), TEMPO_S) + timedelta(seconds=3 * 45)
    assert spell == timedelta(seconds=495)
    assert spell < timedelta(minutes=LIMIT_MIN[Region.ARMS]) < timedelta(minutes=CAP_MIN[Region.ARMS])


START_LOAD = 10 * SHARE_OF_MAX


def test_reviews_give_twenty_to_forty_percent_and_fifty_to_eighty_reps() -> None:
    """Scott et al. 2014/15, with 30-45 s of rest: from memory."""
    assert 0.20 <= START <= 0.40
    assert 50 <= TOTAL <= 80
    assert 50 <= sum(PUBLISHED_REPS) <= 80
    assert 30 <= REST_S <= 45


def test_low_loads_of_the_meta_analysis_stay_below_half_and_heavy_ones_begin_at_65_percent() -> None:
    """Lixandrao et al. 2018, Sports Med 48:361 (abstract): below 50 % with bands against above 65 % without."""
    assert math.exp(MOST_OF_MAX) == pytest.approx(float(MOST_OF_MAX_PLANNED)) == pytest.approx(0.50)
    assert math.exp(MOST_OF_MAX) < 0.65


def test_the_tempo_and_the_days_of_a_trial_are_the_ones_planned() -> None:
    """2 s / 0 / 2 s, 30 s of rest, at least 36 h between (PMC7534706, table 3, read)."""
    assert (TEMPO_S, REST_S, HOURS_APART) == (2 + 0 + 2, 30, 36)


@pytest.mark.parametrize(
    ("weeks", "gains", "source"),
    [
        (3, (8, 10), "walking: 1RM and isometric (Abe et al. 2006, J Appl Physiol 100:1460, abstract)"),
        (3, (7.3, 8.6), "walking: leg press and leg curl 1RM (Abe et al. 2009, read)"),
        (6, (8.6, 8.6), "curl: maximum force (Yasuda et al. 2012, read)"),
        (6, (7, 16), "walking at 60-78 y: isometric 11, isokinetic 7-16 (Abe et al. 2010, read)"),
        (12, (13.7, 13.7), "elastic-band squat: knee extension force (Yasuda et al. 2016, read)"),
    ],
)
def test_assumed_growth_is_of_the_size_of_measured_strength_gains(
    weeks: int, gains: tuple[float, float], source: str
) -> None:
    """Percent. A load moved by growth alone stays within half and one and a half of what was measured."""
    grown = 100 * math.expm1(GROWTH_A_DAY * 7 * weeks)
    assert 0.5 * gains[0] <= grown <= 1.5 * gains[1], source


@pytest.mark.parametrize(
    ("weeks", "size", "source"),
    [
        (6, (10.6, 12.0), "upper arm area, lifting only; volume 12.5 (Yasuda et al. 2012, read)"),
        (3, (4, 7), "thigh area and volume (Abe et al. 2006, abstract)"),
        (3, (1.7, 2.4), "quadriceps, hamstrings, once a day (Abe et al. 2009, read)"),
        (3, (3.2, 3.8), "upper and lower leg (Sakamaki et al. 2011, JSSM 10:338, read); gluteus -0.6, n.s."),
        (6, (5.1, 5.8), "thigh and lower leg at 60-78 y (Abe et al. 2010, read)"),
        (8, (3.4, 5.1), "thigh and quadriceps, cycling (Abe et al. 2010, JSSM 9:452, read); VO2max 6.4"),
        (12, (6.9, 6.9), "quadriceps, elastic-band squats (Yasuda et al. 2016, read)"),
    ],
)
def test_muscles_gain_no_more_in_size_than_strength_is_assumed_to_gain(
    weeks: int, size: tuple[float, float], source: str
) -> None:
    """Percent a week: size is never the faster one in these trials by more than the 2 % a week assumed at first."""
    assert size[1] / weeks <= 100 * math.expm1(7 * GROWTH_A_DAY) * 1.7, source


def test_lifting_gave_more_than_lowering() -> None:
    """Upper arm +12.0 / +10.6 % against +5.1 / +0.8 % (and +2.9, +3.8) (Yasuda et al. 2012, read): both halves of a
    rep are done here, 2 s each."""
    assert min(12.0, 10.6) > max(5.1, 0.8, 2.9, 3.8)
    assert TEMPO_S / 2 == 2
