"""Blood pressure readings and what they are called, and the exercise check, against their tables."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.screening.exercise import Advice, advice
from core.screening.pressure import (
    Category,
    category,
    coach_must_look,
    is_crisis,
    too_high_to_start,
)


@pytest.mark.parametrize(
    ("systolic", "diastolic", "wanted"),
    [
        (119, 79, Category.NORMAL),
        (120, 79, Category.ELEVATED),
        (129, 79, Category.ELEVATED),
        (130, 79, Category.STAGE_1),
        (120, 80, Category.STAGE_1),
        (139, 89, Category.STAGE_1),
        (138, 90, Category.STAGE_2),
        (140, 79, Category.STAGE_2),
        (180, 120, Category.STAGE_2),
        (181, 100, Category.CRISIS),
        (170, 121, Category.CRISIS),
    ],
)
def test_the_higher_category_counts(systolic: int, diastolic: int, wanted: Category) -> None:
    """ACC/AHA 2017 (read): < 120 and < 80; 120-129 and < 80; 130-139 or 80-89; >= 140 or >= 90; > 180 or > 120."""
    assert category(systolic, diastolic) is wanted


@pytest.mark.parametrize(
    ("systolic", "diastolic", "out"),
    [(179, 109, False), (180, 90, True), (178, 110, True), (150, 109, False)],
)
def test_training_with_bands_is_ruled_out_at_180_or_110(systolic: int, diastolic: int, out: bool) -> None:
    """Nascimento et al. 2022, Front Physiol 13:808622, table 5 (read): 180/110."""
    assert too_high_to_start(systolic, diastolic) is out


@pytest.mark.parametrize(
    ("systolic", "diastolic", "looks"), [(139, 89, False), (140, 89, True), (139, 90, True)]
)
def test_the_coach_looks_from_140_or_90(systolic: int, diastolic: int, looks: bool) -> None:
    """Own caution, no source: other published cut-offs for bands were not confirmed."""
    assert coach_must_look(systolic, diastolic) is looks


@pytest.mark.parametrize(("systolic", "diastolic"), [(120, 120), (80, 120), (120, 0)])
def test_swapped_numbers_are_refused(systolic: int, diastolic: int) -> None:
    with pytest.raises(ValueError, match="systolic"):
        category(systolic, diastolic)


@given(st.integers(60, 260), st.integers(31, 59), st.integers(0, 20), st.integers(0, 20))
def test_a_higher_reading_is_never_called_lower(systolic: int, diastolic: int, more: int, less: int) -> None:
    names = list(Category)
    low, high = category(systolic, diastolic), category(systolic + more, min(diastolic + less, systolic - 1))
    assert names.index(high) >= names.index(low)
    assert not is_crisis(systolic, diastolic) or too_high_to_start(systolic, diastolic)


@pytest.mark.parametrize(
    ("active", "disease", "signs", "wanted"),
    [
        (False, False, False, Advice.NOT_NEEDED),
        (False, True, False, Advice.RECOMMENDED),
        (False, False, True, Advice.RECOMMENDED),
        (False, True, True, Advice.RECOMMENDED),
        (True, False, False, Advice.NOT_NEEDED),
        (True, True, False, Advice.BEFORE_VIGOROUS),
        (True, False, True, Advice.STOP),
        (True, True, True, Advice.STOP),
    ],
)
def test_the_general_check_before_exercise(active: bool, disease: bool, signs: bool, wanted: Advice) -> None:
    """Riebe et al. 2015, MSSE 47:2473: inputs read in an excerpt, outcomes second-hand."""
    assert advice(active=active, disease=disease, signs=signs) is wanted
