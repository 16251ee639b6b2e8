"""Cuff pressure for clients with a gauge: an estimate of arterial occlusion pressure (AOP), or a refusal.

An equation belongs to its cuff width, limb, posture and ages; the same thighs needed 235 mmHg under a 5 cm
cuff and 144 under 13.5 cm (Loenneke et al. 2012, EJAP 112:2903). Only one published equation is used here,
for an 18 cm leg cuff in adults of 18-34 years. Outside of it the module refuses with the reason: measured
pressure, or bands by feel and refill, are the way there.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from statistics import fmean

# Rev Bras Med Esporte 2019;25(6), n = 51, 23.2 +- 5.2 years: r 0.630, standard error 15.289 mmHg.
CUFF_CM = 18.0
AGES = (18, 34)
BASE, PER_GIRTH_CM, PER_SBP_MMHG, PER_YEAR, PER_SEX = 65.290, 1.110, 0.178, 1.153, -7.984
STANDARD_ERROR_MMHG = 15.289
# 40-80 % of AOP: Patterson et al. 2019, Front Physiol 10:533.
LOW_SHARE, HIGH_SHARE = 0.40, 0.80
GIRTHS_CM = (35.0, 85.0)  # thighs; own caution, no source
SBPS_MMHG = (80.0, 179.0)  # 180 and above: no training with bands


class Limb(StrEnum):
    """Stored."""

    ARM = "arm"
    LEG = "leg"


class Sex(StrEnum):
    """As the equation was fitted. Stored."""

    MALE = "male"
    FEMALE = "female"


class Refusal(StrEnum):
    """Why there is no estimate. Stored; the words are in the conversations."""

    ARM = "arm"
    CUFF_WIDTH = "cuff_width"
    AGE = "age"


@dataclass(frozen=True, slots=True)
class Estimate:
    """AOP in mmHg, its standard error, and the range to use, 40-80 % of it."""

    aop: float
    error: float
    low: float
    high: float


def estimate(
    limb: Limb, cuff_cm: float, girth_cm: float, systolic: float, age: int, sex: Sex
) -> Estimate | Refusal:
    """AOP lying or sitting as in the study (its posture). Raises ValueError for a girth or blood pressure
    that cannot be right; returns the reason where the equation does not apply."""
    why = refused(limb, cuff_cm, age)
    if why is not None:
        return why
    _within("girth_cm", girth_cm, GIRTHS_CM)
    _within("systolic", systolic, SBPS_MMHG)
    code = 1 if sex is Sex.MALE else 2
    aop = BASE + PER_GIRTH_CM * girth_cm + PER_SBP_MMHG * systolic + PER_YEAR * age + PER_SEX * code
    return Estimate(aop, STANDARD_ERROR_MMHG, LOW_SHARE * aop, HIGH_SHARE * aop)


def refused(limb: Limb, cuff_cm: float, age: int | None) -> Refusal | None:
    """Why the equation does not apply; `age` None: not known yet."""
    if limb is not Limb.LEG:
        return Refusal.ARM
    if cuff_cm != CUFF_CM:
        return Refusal.CUFF_WIDTH
    return None if age is None or AGES[0] <= age <= AGES[1] else Refusal.AGE


def _within(name: str, value: float, limits: tuple[float, float]) -> None:
    if not (math.isfinite(value) and limits[0] <= value <= limits[1]):
        raise ValueError(f"{name}: {value} is not between {limits[0]:g} and {limits[1]:g}")


# --- elastic bands: overlap --------------------------------------------------------------------------------
START_STRETCH = 0.10  # of resting girth: lower end of 10-30 % (review, Sports Med - Open 2022)
MOST_STRETCH = {Limb.ARM: 0.15, Limb.LEG: 0.30}  # arm: own caution, since stiff bands occlude at 20-31 %


def overlap_cm(girth_cm: float, stretch: float = START_STRETCH, limb: Limb = Limb.LEG) -> float:
    """How many cm tighter than the limb to close an elastic band."""
    _within("girth_cm", girth_cm, (15.0, 100.0))
    if not 0 < stretch <= MOST_STRETCH[limb]:
        raise ValueError(f"stretch: above 0 and at most {MOST_STRETCH[limb]:g} on the {limb}")
    return girth_cm * stretch


# --- the drift of a client's own gauges -------------------------------------------------------------------
RECENT = 3  # sessions compared with those before; own judgement, no source
EARLIER = 3  # sessions needed before them
TIGHTNESS_CV = 0.12  # day to day (Bell et al. 2020, J Sport Rehabil 29:516)
REFILL_SD_S = 0.4  # own judgement, no source
LOG_REPS_SD = 0.12  # own judgement, no source
DRIFTED = 2.0  # standard errors; own judgement, no source


@dataclass(frozen=True, slots=True)
class Fit:
    """One session's gauges; None: not told. `surprise`: ln of set 1 over what was expected at that load."""

    tightness: float | None = None
    refill_s: float | None = None
    surprise: float | None = None


class Drift(StrEnum):
    """Where the fit is going. Stored."""

    STEADY = "steady"
    LOOSER = "looser"
    TIGHTER = "tighter"
    UNKNOWN = "unknown"


def drift(fits: Sequence[Fit]) -> Drift:
    """Whether tightness, refill and reps together moved, the last three sessions against those before.

    Each gauge is weak by itself, so their standard scores are added: looser bands feel less tight, refill
    sooner and allow more reps.
    """
    if len(fits) < EARLIER + RECENT:
        return Drift.UNKNOWN
    scores = [score for score in (_tightness(fits), _refill(fits), _reps(fits)) if score is not None]
    if not scores:
        return Drift.UNKNOWN
    total = sum(scores) / math.sqrt(len(scores))
    if abs(total) < DRIFTED:
        return Drift.STEADY
    return Drift.TIGHTER if total > 0 else Drift.LOOSER


def _tightness(fits: Sequence[Fit]) -> float | None:
    usual = [fit.tightness for fit in fits if fit.tightness is not None]
    return _score([fit.tightness for fit in fits], TIGHTNESS_CV * max(fmean(usual), 1.0) if usual else 1.0)


def _refill(fits: Sequence[Fit]) -> float | None:
    return _score([fit.refill_s for fit in fits], REFILL_SD_S)


def _reps(fits: Sequence[Fit]) -> float | None:
    score = _score([fit.surprise for fit in fits], LOG_REPS_SD)
    return None if score is None else -score


def _score(values: Sequence[float | None], sd: float) -> float | None:
    """Recent mean less earlier mean, in standard errors; None when a side is empty."""
    recent = [one for one in values[-RECENT:] if one is not None]
    earlier = [one for one in values[:-RECENT] if one is not None]
    if not recent or not earlier:
        return None
    return (fmean(recent) - fmean(earlier)) / (sd * math.sqrt(1 / len(recent) + 1 / len(earlier)))
