"""A blood pressure typed in the middle of other talk."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.training.pressure_said import urgency
from core.safety.causes import Cause

EMERGENCY, TODAY = Cause.PRESSURE_EMERGENCY, Cause.PRESSURE_HIGH


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("185/112", TODAY),
        ("my blood pressure is 185/112", TODAY),
        ("bp 180 over 95", TODAY),
        ("178/110 this morning", TODAY),
        ("179/109", None),
        ("128/82", None),
        ("185/112 and my head is pounding", EMERGENCY),
        ("190/115, blurred vision", EMERGENCY),
        ("chest feels tight, 186/100", EMERGENCY),
        ("185/112 but no headache, no chest pain", TODAY),
        ("185/112, no chest pain but a bad headache", EMERGENCY),
        ("185/112. Numb on one side.", EMERGENCY),
        ("30/15/15/15", None),
        ("did 200/30", None),
        ("see you 12/11", None),
        ("400/200", None),
        ("2026/110", None),
    ],
)
def test_a_typed_reading_is_routed(text: str, wanted: Cause | None) -> None:
    assert urgency(text) is wanted


@given(
    st.integers(180, 300),
    st.integers(40, 170),
    st.sampled_from(["my chest hurts", "headache", "I can't see well, blurred"]),
)
def test_a_very_high_reading_with_a_sign_is_always_an_emergency(upper: int, lower: int, sign: str) -> None:
    assert urgency(f"{upper}/{lower}, {sign}") is EMERGENCY
    assert urgency(f"{sign}. It says {upper}/{lower}") is EMERGENCY
