"""What each answer of a cuff check means, on every limit and on either side of it."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.cuffs import (
    Colour,
    Compared,
    CuffCheck,
    Feeling,
    Limb,
    Look,
    Place,
    Refill,
    Verdict,
    judge,
    limb_suffers,
    limbs_of,
    next_look,
    refill_of,
    strictest,
)
from core.cuffs.rules import RULES
from core.plans import Region, Side

GOOD_ARM = CuffCheck(Limb.LEFT_ARM, 6, Refill.UNDER_2, None, Colour.REDDISH, Feeling.FINE, Place.HIGH)
GOOD_LEG = CuffCheck(Limb.LEFT_LEG, 7, Refill.ABOUT_3, None, Colour.USUAL, Feeling.FINE, Place.HIGH)

checks = st.builds(
    CuffCheck,
    limb=st.sampled_from(Limb),
    tightness=st.integers(0, 10),
    refill=st.sampled_from(Refill),
    refill_s=st.none() | st.floats(0, 60),
    colour=st.sampled_from(Colour),
    feeling=st.sampled_from(Feeling),
    place=st.none() | st.sampled_from(Place),
    look=st.none() | st.sampled_from(Look),
    compared=st.none() | st.sampled_from(Compared),
)


def verdict(check: CuffCheck) -> Verdict:
    return strictest(judge(check))


def because(check: CuffCheck) -> list[str]:
    return [finding.because for finding in judge(check)]


def test_a_good_check_goes() -> None:
    assert judge(GOOD_ARM) == ()
    assert verdict(GOOD_LEG) is Verdict.GO


@pytest.mark.parametrize(
    ("tightness", "arm", "leg"),
    [
        (0, Verdict.EASE, Verdict.EASE),
        (5, Verdict.EASE, Verdict.EASE),
        (6, Verdict.GO, Verdict.GO),
        (7, Verdict.EASE, Verdict.GO),
        (8, Verdict.LOOSEN, Verdict.LOOSEN),
        (9, Verdict.STOP, Verdict.STOP),
        (10, Verdict.STOP, Verdict.STOP),
    ],
)
def test_tightness_on_each_line(tightness: int, arm: Verdict, leg: Verdict) -> None:
    assert verdict(replace(GOOD_ARM, tightness=tightness)) is arm
    assert verdict(replace(GOOD_LEG, tightness=tightness)) is leg


@pytest.mark.parametrize(
    ("seconds", "wanted"),
    [(0, Verdict.GO), (2.99, Verdict.GO), (3, Verdict.GO), (3.01, Verdict.LOOSEN), (60, Verdict.LOOSEN)],
)
def test_a_typed_refill_above_three_seconds_loosens(seconds: float, wanted: Verdict) -> None:
    assert verdict(replace(GOOD_ARM, refill_s=seconds)) is wanted


@pytest.mark.parametrize(
    ("refill", "wanted"),
    [(Refill.UNDER_2, Verdict.GO), (Refill.ABOUT_3, Verdict.GO), (Refill.LONGER, Verdict.LOOSEN)],
)
def test_a_tapped_refill(refill: Refill, wanted: Verdict) -> None:
    assert verdict(replace(GOOD_LEG, refill=refill)) is wanted


@pytest.mark.parametrize("feeling", [each for each in Feeling if each is not Feeling.FINE])
def test_any_feeling_but_fine_takes_the_bands_off(feeling: Feeling) -> None:
    assert verdict(replace(GOOD_ARM, feeling=feeling)) is Verdict.STOP


@pytest.mark.parametrize(
    ("colour", "wanted"),
    [
        (Colour.USUAL, Verdict.GO),
        (Colour.REDDISH, Verdict.GO),
        (Colour.BLUE, Verdict.STOP),
        (Colour.WHITE, Verdict.STOP),
    ],
)
def test_reddish_is_expected_blue_and_white_are_not(colour: Colour, wanted: Verdict) -> None:
    assert verdict(replace(GOOD_LEG, colour=colour)) is wanted


@pytest.mark.parametrize("place", [Place.LOW, Place.ELSEWHERE])
def test_a_band_in_the_wrong_place_is_fitted_again(place: Place) -> None:
    assert verdict(replace(GOOD_LEG, place=place)) is Verdict.LOOSEN


def test_another_band_is_no_band_to_raise_on() -> None:
    assert because(replace(GOOD_ARM, band="B", fitted_band="A")) == ["another_band"]
    assert because(replace(GOOD_ARM, band="A", fitted_band="A")) == []
    assert because(replace(GOOD_ARM, band="B")) == []


def test_dark_skin_on_the_arms_looks_at_the_fingernail_then_compares() -> None:
    palm = replace(GOOD_ARM, refill=None)
    assert next_look(palm) is Look.PALM
    unseen = replace(GOOD_ARM, refill=Refill.CANT_SEE, look=Look.PALM)
    assert next_look(unseen) is Look.FINGERNAIL
    assert next_look(replace(unseen, look=Look.FINGERNAIL)) is Look.COMPARED
    assert next_look(replace(unseen, look=Look.FINGERNAIL, refill=Refill.UNDER_2)) is None


def test_dark_skin_on_the_legs_compares_warmth_and_feeling() -> None:
    assert next_look(replace(GOOD_LEG, refill=None)) is Look.ABOVE_KNEE
    unseen = replace(GOOD_LEG, refill=Refill.CANT_SEE)
    assert next_look(unseen) is Look.COMPARED
    assert next_look(replace(unseen, compared=Compared.SAME)) is None


def test_an_unseen_refill_is_never_a_passed_check() -> None:
    same = replace(GOOD_LEG, refill=Refill.CANT_SEE, compared=Compared.SAME)
    assert because(same) == ["unseen_refill"]
    assert verdict(replace(same, compared=Compared.DIFFERENT)) is Verdict.STOP


@pytest.mark.parametrize(
    ("because", "suffers"),
    [
        ("tingling", True),
        ("numb", True),
        ("cold", True),
        ("blue", True),
        ("white", True),
        ("feels_different,unseen_refill", True),
        ("slow_refill,numb", True),
        ("hurts", False),
        ("far_too_tight", False),
        ("slow_refill,loose", False),
        ("unseen_refill", False),
        ("", False),
    ],
)
def test_what_says_that_nerve_or_blood_suffers(because: str, suffers: bool) -> None:
    assert limb_suffers(because) is suffers


@pytest.mark.parametrize(
    ("seconds", "wanted"),
    [
        (0, Refill.UNDER_2),
        (1.99, Refill.UNDER_2),
        (2, Refill.ABOUT_3),
        (3, Refill.ABOUT_3),
        (3.01, Refill.LONGER),
    ],
)
def test_a_typed_time_as_an_answer(seconds: float, wanted: Refill) -> None:
    assert refill_of(seconds) is wanted


@pytest.mark.parametrize("seconds", [-0.1, float("nan"), float("inf")])
def test_a_time_that_cannot_be_is_refused(seconds: float) -> None:
    with pytest.raises(ValueError, match="seconds"):
        refill_of(seconds)
    with pytest.raises(ValueError, match="refill_s"):
        CuffCheck(Limb.LEFT_ARM, refill_s=seconds)


@pytest.mark.parametrize("tightness", [-1, 11])
def test_a_tightness_off_the_scale_is_refused(tightness: int) -> None:
    with pytest.raises(ValueError, match="tightness"):
        CuffCheck(Limb.LEFT_ARM, tightness)


def test_a_check_is_complete_when_all_four_were_answered() -> None:
    assert GOOD_ARM.complete
    for name in ("tightness", "refill", "colour", "feeling"):
        assert not replace(GOOD_ARM, **{name: None}).complete  # type: ignore[arg-type]
    assert not replace(GOOD_ARM, refill=Refill.CANT_SEE).complete


def test_limbs_of_one_side_and_of_both() -> None:
    assert limbs_of(Region.ARMS, Side.BOTH) == (Limb.LEFT_ARM, Limb.RIGHT_ARM)
    assert limbs_of(Region.LEGS, Side.RIGHT) == (Limb.RIGHT_LEG,)
    assert [limb.side for limb in Limb] == [Side.LEFT, Side.RIGHT, Side.LEFT, Side.RIGHT]


def test_each_rule_says_where_it_comes_from() -> None:
    assert all(sources for sources in RULES.values())
    assert judge(replace(GOOD_ARM, refill=Refill.LONGER))[0].sources == RULES[_rule("slow_refill")]


def _rule(name: str) -> object:
    return next(rule for rule in RULES if rule.__name__ == name)


@given(checks)
def test_the_strictest_finding_comes_first(check: CuffCheck) -> None:
    ranks = [finding.verdict.rank for finding in judge(check)]
    assert ranks == sorted(ranks, reverse=True)
    assert verdict(check).rank == max(ranks, default=0)


@given(
    checks,
    st.sampled_from(
        [
            {"feeling": Feeling.TINGLING},
            {"feeling": Feeling.NUMB},
            {"feeling": Feeling.COLD},
            {"colour": Colour.BLUE},
            {"colour": Colour.WHITE},
            {"refill": Refill.LONGER},
            {"refill_s": 3.5},
            {"tightness": 8},
            {"tightness": 10},
            {"place": Place.LOW},
            {"compared": Compared.DIFFERENT},
        ]
    ),
)
def test_one_worse_answer_more_never_loosens_the_verdict(check: CuffCheck, worse: dict[str, object]) -> None:
    good = replace(check, **{name: getattr(GOOD_ARM, name) for name in worse})
    assert verdict(replace(good, **worse)).rank >= verdict(good).rank  # type: ignore[arg-type]


@given(checks, st.integers(6, 9))
def test_tighter_is_never_judged_milder(check: CuffCheck, tightness: int) -> None:
    tight, tighter = replace(check, tightness=tightness), replace(check, tightness=tightness + 1)
    assert verdict(tighter).rank >= verdict(tight).rank
