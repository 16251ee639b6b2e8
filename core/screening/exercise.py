"""The general check before exercise: who should see a clinician first (ACSM 2015, Riebe et al., MSSE 47:2473)."""

from enum import StrEnum


class Advice(StrEnum):
    """Stored."""

    NOT_NEEDED = "not_needed"  # no clearance needed, light to moderate effort
    BEFORE_VIGOROUS = "before_vigorous"  # only before vigorous effort
    RECOMMENDED = "recommended"  # clearance first
    STOP = "stop"  # stop exercise, seek clearance


def advice(*, active: bool, disease: bool, signs: bool) -> Advice:
    """`active`: 30 min or more on 3 days a week for 3 months; `disease`: of heart, metabolism or kidneys;
    `signs`: signs or symptoms of one."""
    if signs:
        return Advice.STOP if active else Advice.RECOMMENDED
    if disease:
        return Advice.BEFORE_VIGOROUS if active else Advice.RECOMMENDED
    return Advice.NOT_NEEDED
