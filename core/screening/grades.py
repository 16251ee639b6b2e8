"""Tiers, and the answers that lead to one by themselves: this answer, this tier, from these sources.

Published lists differ in how they grade the same thing; the more careful grade is taken and both are named.
Nothing here is a diagnosis.
"""

from dataclasses import dataclass
from enum import StrEnum

from core.cuffs.limbs import Limb
from core.safety.sources import Source
from core.screening.questions import GROUPS, Q, Question


class Tier(StrEnum):
    """What screening says, mildest first. Stored."""

    CLEAR = "clear"
    COACH_LOOKS = "coach_looks"
    CLINICIAN_FIRST = "clinician_first"  # opens only with name, date, limits and expiry
    DO_NOT_START = "do_not_start"  # nobody opens this; a later screening may say otherwise

    @property
    def rank(self) -> int:
        """0 for CLEAR; the higher, the stricter."""
        return RANKS[self]


RANKS = {tier: rank for rank, tier in enumerate(Tier)}


@dataclass(frozen=True, slots=True)
class Finding:
    """The outcome of one rule: its name, the answers it rests on, limbs it closes, ids of core/SOURCES.md."""

    rule: str
    tier: Tier
    answers: tuple[Question, ...]
    closes: frozenset[Limb]
    sources: tuple[Source, ...]


Graded = tuple[Tier, tuple[Source, ...]]

COACH, CLINICIAN, NEVER = Tier.COACH_LOOKS, Tier.CLINICIAN_FIRST, Tier.DO_NOT_START
SIGNS = GROUPS[Q.ANY_SIGNS]
DISEASES = (Q.HEART_LATELY, Q.HEART_DISEASE, Q.STROKE, Q.ARTERY_DISEASE, Q.DIABETES, Q.KIDNEY)
# Answers that each raise the risk of a clot a little; several together count for more.
CLOT_RISKS = (
    Q.SMOKING,
    Q.VARICOSE_VEINS,
    Q.HORMONES,
    Q.LONG_JOURNEY,
    Q.ILL_LATELY,
    Q.JOINT_INFLAMMATION,
    Q.MUSCLE_DRUGS,
    Q.DIABETES,
    Q.HIGH_PRESSURE,
)

WHEN_YES: dict[Question, Graded] = {
    # do not start
    Q.PAST_CLOT: (NEVER, (Source.NASCIMENTO_2022, Source.VTE_ORTHOPAEDIC)),
    Q.HEART_LATELY: (NEVER, (Source.NASCIMENTO_2022,)),
    Q.AORTA: (NEVER, (Source.NASCIMENTO_2022,)),
    Q.ARTERY_DISEASE: (NEVER, (Source.NASCIMENTO_2022,)),
    Q.ANGINA: (NEVER, (Source.NASCIMENTO_2022,)),
    Q.PRESSURE_DROPS: (NEVER, (Source.NASCIMENTO_2022,)),
    Q.HEART_ARTERIES: (NEVER, (Source.NASCIMENTO_2022,)),
    Q.HEART_WEAK: (NEVER, (Source.NASCIMENTO_2022,)),
    Q.HEART_BORN: (NEVER, (Source.NASCIMENTO_2022,)),
    Q.HEART_TEST: (NEVER, (Source.NASCIMENTO_2022,)),
    Q.HEARTBEAT_LOOSE: (NEVER, (Source.NASCIMENTO_2022,)),
    Q.CHOLESTEROL: (NEVER, (Source.NASCIMENTO_2022,)),
    Q.SKULL_PRESSURE: (NEVER, (Source.EXCLUSION_LIST,)),
    Q.PREGNANT: (NEVER, (Source.NASCIMENTO_2022, Source.SCREENING_CAUTION)),
    Q.BIRTH_LATELY: (NEVER, (Source.NASCIMENTO_2022, Source.SCREENING_CAUTION)),
    Q.FEVER_NOW: (NEVER, (Source.NASCIMENTO_2022, Source.TABATA_2016)),
    # clinician first
    Q.CLOTTING_DISORDER: (CLINICIAN, (Source.VTE_ORTHOPAEDIC, Source.CAPRINI)),
    Q.FAMILY_CLOT: (CLINICIAN, (Source.VTE_ORTHOPAEDIC, Source.CAPRINI)),
    Q.BLEEDING_DISORDER: (CLINICIAN, (Source.EXCLUSION_LIST,)),
    Q.HEART_DISEASE: (CLINICIAN, (Source.NASCIMENTO_2022,)),
    Q.IRREGULAR_HEARTBEAT: (CLINICIAN, (Source.NASCIMENTO_2022,)),
    Q.STROKE: (CLINICIAN, (Source.VTE_ORTHOPAEDIC,)),
    Q.CANCER: (CLINICIAN, (Source.VTE_EUROPEAN, Source.EXCLUSION_LIST)),
    Q.DIABETES_NUMBNESS: (CLINICIAN, (Source.KACIN_2015,)),
    Q.KIDNEY: (CLINICIAN, (Source.NASCIMENTO_2022,)),
    Q.SICKLE_CELL: (CLINICIAN, (Source.EXCLUSION_LIST, Source.SCREENING_CAUTION)),
    Q.EYE_PRESSURE: (CLINICIAN, (Source.SCREENING_CAUTION,)),
    Q.MUSCLE_BREAKDOWN: (CLINICIAN, (Source.TABATA_2016,)),
    Q.BLOOD_THINNERS: (CLINICIAN, (Source.SCREENING_CAUTION,)),
    Q.PRESSURE_SIGNS: (CLINICIAN, (Source.ACC_AHA_2017,)),
    Q.CHEST_PAIN: (CLINICIAN, (Source.ACSM_2015,)),
    Q.BREATHLESS: (CLINICIAN, (Source.ACSM_2015,)),
    Q.FAINTING: (CLINICIAN, (Source.ACSM_2015,)),
    Q.DIZZY_STANDING: (CLINICIAN, (Source.ACSM_2015, Source.NASCIMENTO_2022)),
    Q.PALPITATIONS: (CLINICIAN, (Source.ACSM_2015,)),
    Q.SWOLLEN_ANKLES: (CLINICIAN, (Source.ACSM_2015,)),
    Q.LEG_PAIN_WALKING: (CLINICIAN, (Source.ACSM_2015,)),
    # the coach looks
    Q.HIGH_PRESSURE: (COACH, (Source.EXCLUSION_LIST,)),
    Q.VARICOSE_VEINS: (COACH, (Source.EXCLUSION_LIST, Source.VTE_ORTHOPAEDIC)),
    Q.SMOKING: (COACH, (Source.EXCLUSION_LIST,)),
    Q.LONG_JOURNEY: (COACH, (Source.VTE_EUROPEAN,)),
    Q.ILL_LATELY: (COACH, (Source.NASCIMENTO_2022,)),
    Q.DIABETES: (COACH, (Source.EXCLUSION_LIST,)),
    Q.JOINT_INFLAMMATION: (COACH, (Source.NASCIMENTO_2022,)),
    Q.WEAK_BONES: (COACH, (Source.SCREENING_CAUTION,)),
    Q.HORMONES: (COACH, (Source.NASCIMENTO_2022, Source.VTE_EUROPEAN)),
    Q.MUSCLE_DRUGS: (COACH, (Source.NASCIMENTO_2022,)),
    Q.STATINS: (COACH, (Source.SCREENING_CAUTION,)),
    Q.STIMULANTS: (COACH, (Source.TABATA_2016,)),
    Q.LATEX: (COACH, (Source.SCREENING_CAUTION,)),
    Q.FRAGILE_SKIN: (COACH, (Source.EXCLUSION_LIST,)),
    Q.RAYNAUD: (COACH, (Source.SCREENING_CAUTION,)),
    Q.FALLS: (COACH, (Source.SCREENING_CAUTION,)),
    # a limb is closed and the coach looks
    Q.LYMPH_NODES: (COACH, (Source.EXCLUSION_LIST, Source.CLOSED_LIMBS)),
    Q.LYMPHOEDEMA: (COACH, (Source.EXCLUSION_LIST, Source.CLOSED_LIMBS)),
    Q.VESSEL_ACCESS: (COACH, (Source.EXCLUSION_LIST, Source.CLOSED_LIMBS)),
    Q.WOUND: (COACH, (Source.EXCLUSION_LIST, Source.CLOSED_LIMBS)),
    Q.SKIN_GRAFT: (COACH, (Source.EXCLUSION_LIST, Source.CLOSED_LIMBS)),
    Q.NUMB_LIMB: (COACH, (Source.KACIN_2015, Source.CLOSED_LIMBS)),
    Q.IMPLANT: (COACH, (Source.SCREENING_CAUTION, Source.CLOSED_LIMBS)),
    Q.PLASTER: (CLINICIAN, (Source.CAPRINI, Source.CLOSED_LIMBS)),
    Q.FRACTURE: (COACH, (Source.CAPRINI, Source.CLOSED_LIMBS)),
}
