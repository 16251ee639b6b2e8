"""Blood pressure at rest, in mmHg: what the reading is called, and what it means here."""

from enum import StrEnum

NORMAL, ELEVATED = (120, 80), 130  # ACC/AHA 2017: below 120 and below 80; elevated up to 129 and below 80
STAGE_2 = (140, 90)  # ACC/AHA 2017
CRISIS = (180, 120)  # ACC/AHA 2017: above
COACH_LOOKS_FROM = (140, 90)  # own caution, no source
DO_NOT_START_FROM = (180, 110)  # Nascimento et al. 2022, Front Physiol 13:808622, table 5


class Category(StrEnum):
    """ACC/AHA 2017; the higher of the two numbers decides. Stored."""

    NORMAL = "normal"
    ELEVATED = "elevated"
    STAGE_1 = "stage_1"
    STAGE_2 = "stage_2"
    CRISIS = "crisis"


def category(systolic: int, diastolic: int) -> Category:
    """The name of a reading. Raises ValueError when the upper number is not above the lower one."""
    if not 0 < diastolic < systolic:
        raise ValueError("systolic, diastolic: the upper number is above the lower one, both above 0")
    if is_crisis(systolic, diastolic):
        return Category.CRISIS
    if systolic >= STAGE_2[0] or diastolic >= STAGE_2[1]:
        return Category.STAGE_2
    if systolic >= ELEVATED or diastolic >= NORMAL[1]:
        return Category.STAGE_1
    return Category.ELEVATED if systolic >= NORMAL[0] else Category.NORMAL


def is_crisis(systolic: int, diastolic: int) -> bool:
    """Above 180 or above 120. With chest pain, breathlessness, headache, ...: an emergency."""
    return systolic > CRISIS[0] or diastolic > CRISIS[1]


def too_high_to_start(systolic: int, diastolic: int) -> bool:
    """180 or more, or 110 or more."""
    return systolic >= DO_NOT_START_FROM[0] or diastolic >= DO_NOT_START_FROM[1]


def coach_must_look(systolic: int, diastolic: int) -> bool:
    """140 or more, or 90 or more."""
    return systolic >= COACH_LOOKS_FROM[0] or diastolic >= COACH_LOOKS_FROM[1]
