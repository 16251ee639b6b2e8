"""A blood pressure that a client types in the middle of other talk: how high, and with which signs."""

import re

from core.safety.causes import Cause
from core.screening.pressure import too_high_to_start

READING = re.compile(r"(?<![\d/.,:-])(\d{2,3})\s*(?:/|\bover\b)\s*(\d{2,3})(?![\d/:-]|\.\d)", re.IGNORECASE)
HIGHEST, LOWEST = 300, 40  # mmHg; outside of it the numbers are something else
# Signs that make a very high reading an emergency: ACC/AHA 2017, and what the screening asks for.
SIGNS = re.compile(
    r"chest|breath|head|sight|vision|blur|see(?:ing)? double|weak|numb|tingl|dizz|faint|confus|speech|sick|vomit",
    re.IGNORECASE,
)
DENIED = re.compile(
    r"\b(?:no|not|without|nor|never|isn'?t|don'?t)\b(?:(?!\bbut\b|\bonly\b|\bjust\b|\bthough\b)[^.;!?])*",
    re.IGNORECASE,
)


def urgency(text: str) -> Cause | None:
    """An emergency with signs, a doctor today without; None: no reading at or above 180/110."""
    readings = ((int(upper), int(lower)) for upper, lower in READING.findall(text))
    if not any(
        LOWEST <= lower < upper <= HIGHEST and too_high_to_start(upper, lower) for upper, lower in readings
    ):
        return None
    return Cause.PRESSURE_EMERGENCY if SIGNS.search(DENIED.sub("", text)) else Cause.PRESSURE_HIGH
