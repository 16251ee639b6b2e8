"""Arterial occlusion pressure from girth, blood pressure, age and sex, against the published equation.

AOP = 65.290 + 1.110 girth + 0.178 systolic + 1.153 age - 7.984 sex (Rev Bras Med Esporte 2019;25(6), n = 51,
18 cm cuff, r 0.630, standard error 15.289; abstract read). Worked values are arithmetic on it.
"""

from core.pressure import STANDARD_ERROR_MMHG, Estimate, Limb, Refusal, Sex, estimate


def aop(girth: float, systolic: float, age: int, sex: Sex) -> Estimate:
    found = estimate(Limb.LEG, 18.0, girth, systolic, age, sex)
    assert isinstance(found, Estimate)
    return found


def test_worked_values_of_the_18_cm_equation() -> None:
    assert round(aop(55, 120, 25, Sex.MALE).aop, 2) == 168.54
    assert round(aop(55, 120, 25, Sex.FEMALE).aop, 2) == 160.56


def test_the_range_is_40_to_80_percent() -> None:
    """67.4 to 134.8 mmHg of 168.54; the shares from Patterson et al. 2019 (second-hand)."""
    found = aop(55, 120, 25, Sex.MALE)
    assert (round(found.low, 1), round(found.high, 1)) == (67.4, 134.8)
    assert (round(0.5 * found.aop, 1), round(0.6 * found.aop, 1)) == (84.3, 101.1)
    assert found.error == STANDARD_ERROR_MMHG == 15.289


def test_a_40_year_old_gets_no_number_though_the_arithmetic_would_give_193() -> None:
    """Girth 60, 130 mmHg, 40 years, male would be 193.17: outside the ages of the study, so refused."""
    assert round(65.290 + 1.110 * 60 + 0.178 * 130 + 1.153 * 40 - 7.984, 2) == 193.17
    assert estimate(Limb.LEG, 18.0, 60, 130, 40, Sex.MALE) is Refusal.AGE


def test_an_equation_is_never_used_for_another_width() -> None:
    """The same thighs: 235 (42) mmHg under 5 cm, 144 (17) under 13.5 cm (Loenneke et al. 2012, read)."""
    for width in (5.0, 11.5, 13.5, 17.9, 18.1):
        assert estimate(Limb.LEG, width, 55, 120, 25, Sex.MALE) is Refusal.CUFF_WIDTH


def test_the_estimate_lies_near_measured_legs() -> None:
    """Doppler, legs: 195.0 (31.9), range 160-272 mmHg (Arthrosc Sports Med Rehabil 2022;4:e1127, read)."""
    assert 160 <= aop(55, 120, 25, Sex.MALE).aop <= 195.0 + 31.9
