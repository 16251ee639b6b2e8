"""What the numbers of one session say."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.progression import Explanation, Question, Reading, SessionRecord, advise
from core.progression.fall import usual_falls
from core.progression.readings import ASKS, EXPECTS, PRIOR, Expected, readings, separating
from tests.core.progression.scenes import ask, gentle, kg, session

NUMBERS = session(5, kg(12), 45, 33, 20)
USUAL = Expected(math.log(31), usual_falls())


def likeliest(*reps: int, **details: object) -> Explanation:
    return readings(session(5, kg(12), *reps, **details), USUAL)[0].name


PATTERNS = [
    ((31, 16, 8), {}, Explanation.LOAD_RIGHT),
    ((31, 15, 7), {"tightness": 7, "refill_s": 2, "effort": 8}, Explanation.LOAD_RIGHT),
    ((47, 23, 11), {}, Explanation.LOAD_LIGHT),
    ((18, 9, 5), {}, Explanation.LOAD_HEAVY),
    ((46, 34, 26), {"tightness": 4}, Explanation.BANDS_LOOSE),
    ((33, 31, 30), {"tightness": 4}, Explanation.BANDS_LOOSE),
    ((20, 6, 2), {"tightness": 9, "refill_s": 4}, Explanation.BANDS_TIGHT),
    ((25, 20, 10), {"effort": 5}, Explanation.STOPPED_SHORT),
    ((31, 23, 15), {"rest_s": (75.0, 70.0)}, Explanation.REST_LONG),
    ((40, 20, 10), {"rough": True}, Explanation.COUNT_UNCLEAN),
]


@pytest.mark.parametrize(("reps", "details", "wanted"), PATTERNS)
def test_a_clear_pattern_has_its_name(
    reps: tuple[int, ...], details: dict[str, object], wanted: Explanation
) -> None:
    assert likeliest(*reps, **details) is wanted


def test_reps_that_rise_from_set_to_set_are_the_bands_not_the_load() -> None:
    """A band that slipped, or a slip of the pen."""
    ranked = readings(session(5, kg(12), 20, 25, 28), USUAL)
    load_names = {Explanation.LOAD_RIGHT, Explanation.LOAD_LIGHT, Explanation.LOAD_HEAVY}
    assert ranked[0].name not in load_names


def test_two_close_explanations_lead_to_one_question() -> None:
    """Far too many in every set: loose bands, or simply a light load. The rating at the end tells."""
    ranked = readings(NUMBERS, USUAL)
    assert {one.name for one in ranked[:2]} == {Explanation.BANDS_LOOSE, Explanation.LOAD_LIGHT}
    assert separating(ranked, NUMBERS) is Question.HOW_TIGHT_AT_THE_END


def test_a_clear_reading_asks_nothing() -> None:
    clear = session(5, kg(12), 31, 15, 8, tightness=7, refill_s=2)
    assert separating(readings(clear, USUAL), clear) is None


CLOSE_CALLS = [
    ((Explanation.REST_LONG, Explanation.LOAD_RIGHT), {}, Question.HOW_LONG_WAS_THE_REST),
    ((Explanation.REST_LONG, Explanation.LOAD_RIGHT), {"rest_s": (31.0,)}, Question.COULD_DO_MORE),
    ((Explanation.LOAD_LIGHT, Explanation.LOAD_RIGHT), {}, Question.COULD_DO_MORE),
    ((Explanation.LOAD_LIGHT, Explanation.LOAD_RIGHT), {"reps_left": (4,)}, None),
    ((Explanation.COUNT_UNCLEAN, Explanation.LOAD_LIGHT), {}, Question.WERE_ALL_CLEAN),
    ((Explanation.COUNT_UNCLEAN, Explanation.LOAD_RIGHT), {"reps_left": (0,), "rough": True}, None),
    ((Explanation.LOAD_HEAVY, Explanation.LOAD_RIGHT), {}, Question.HOW_WAS_THE_DAY),
    ((Explanation.LOAD_HEAVY, Explanation.LOAD_RIGHT), {"tired": True}, Question.COULD_DO_MORE),
]


@pytest.mark.parametrize(("pair", "details", "wanted"), CLOSE_CALLS)
def test_nothing_is_asked_that_was_told_or_measured(
    pair: tuple[Explanation, Explanation], details: dict[str, Any], wanted: Question | None
) -> None:
    ranked = (Reading(pair[0], 0.5), Reading(pair[1], 0.4))
    assert separating(ranked, session(5, kg(12), 31, 15, 8, **details)) is wanted


@pytest.mark.parametrize(("second", "asks"), [(0.249, False), (0.25, True), (0.26, True)])
def test_close_means_half_the_odds_of_the_first(second: float, asks: bool) -> None:
    ranked = (Reading(Explanation.BANDS_LOOSE, 0.5), Reading(Explanation.LOAD_LIGHT, second))
    assert (separating(ranked, NUMBERS) is not None) is asks


def test_the_clients_own_fall_is_what_counts() -> None:
    """25 after 33 looks loose to most; for someone who always falls like that it is a good day."""
    flat = Expected(math.log(33), (math.log(33 / 25), math.log(25 / 20)))
    assert readings(session(5, kg(12), 33, 25, 20), flat)[0].name is Explanation.LOAD_RIGHT
    assert readings(session(5, kg(12), 33, 25, 20), USUAL)[0].name is not Explanation.LOAD_RIGHT


def test_an_advice_carries_its_readings_and_question() -> None:
    advice = advise(ask(*gentle(kg(12)), session(2, kg(12), 46, 34, 26, tightness=4)))
    assert advice.readings[0].name is Explanation.BANDS_LOOSE
    assert math.isclose(sum(one.odds for one in advice.readings), 1)
    assert advise(ask()).readings == ()


@given(
    st.lists(st.integers(0, 200), min_size=1, max_size=10),
    st.one_of(st.none(), st.floats(0, 10)),
    st.one_of(st.none(), st.floats(0, 60)),
    st.booleans(),
)
def test_odds_always_sum_to_one_and_are_ranked(
    reps: list[int], tightness: float | None, refill_s: float | None, rough: bool
) -> None:
    record: SessionRecord = session(5, kg(12), *reps, tightness=tightness, refill_s=refill_s, rough=rough)
    ranked = readings(record, Expected(None, usual_falls()))
    assert math.isclose(sum(one.odds for one in ranked), 1)
    assert [one.odds for one in ranked] == sorted((one.odds for one in ranked), reverse=True)
    assert {one.name for one in ranked} == set(Explanation)


@given(st.floats(0, 9), st.floats(0.1, 1))
def test_a_looser_rating_never_makes_loose_bands_less_likely_than_tight(
    tightness: float, less: float
) -> None:
    def ratio(rating: float) -> float:
        ranked = {one.name: one.odds for one in readings(session(5, kg(12), 35, 20, tightness=rating), USUAL)}
        return math.log(ranked[Explanation.BANDS_LOOSE] / ranked[Explanation.BANDS_TIGHT])

    assert ratio(max(tightness - less, 0)) >= ratio(tightness) - 1e-9


def test_every_explanation_has_a_prior_a_table_and_a_question() -> None:
    assert set(PRIOR) == set(EXPECTS) == set(ASKS) == set(Explanation)
    assert math.isclose(sum(PRIOR.values()), 1)
    assert set(ASKS.values()) == set(Question)
