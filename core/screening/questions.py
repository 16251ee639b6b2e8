"""The questions of screening, their order, and which are asked at all.

A healthy client answers fifteen: a few about themselves and one "any of these?" for each group. The details
of a group are asked only after "yes" or "not sure".
"""

from enum import StrEnum


class Question(StrEnum):
    """Stored: add freely, never rename."""

    # about you
    AGE = "age"  # years
    GUARDIAN_AGREES = "guardian_agrees"  # under 18 only
    GUARDIAN_PRESENT = "guardian_present"
    WEIGHT = "weight"  # kg
    HEIGHT = "height"  # cm
    ACTIVE = "active"  # 30 min, 3 days a week, for 3 months
    SMOKING = "smoking"
    BLOOD_PRESSURE = "blood_pressure"  # mmHg, the latest reading if there is one
    PRESSURE_SIGNS = "pressure_signs"  # only with a reading at or above 180/110
    PRESSURE_AGAIN = "pressure_again"  # mmHg, after five minutes' rest, where there were no signs
    # signs during effort or at rest
    ANY_SIGNS = "any_signs"
    CHEST_PAIN = "chest_pain"
    ANGINA = "angina"  # only with chest pain
    BREATHLESS = "breathless"
    FAINTING = "fainting"
    DIZZY_STANDING = "dizzy_standing"
    PRESSURE_DROPS = "pressure_drops"  # on standing up, measured
    PALPITATIONS = "palpitations"
    SWOLLEN_ANKLES = "swollen_ankles"
    LEG_PAIN_WALKING = "leg_pain_walking"
    # clots
    ANY_CLOTS = "any_clots"
    PAST_CLOT = "past_clot"
    CLOTTING_DISORDER = "clotting_disorder"
    FAMILY_CLOT = "family_clot"
    BLEEDING_DISORDER = "bleeding_disorder"
    # heart and vessels
    ANY_HEART = "any_heart"
    HEART_LATELY = "heart_lately"  # heart attack, unstable chest pain, heart failure now
    HEART_DISEASE = "heart_disease"
    HEART_ARTERIES = "heart_arteries"  # these four only with heart disease
    HEART_WEAK = "heart_weak"
    HEART_BORN = "heart_born"
    HEART_TEST = "heart_test"
    IRREGULAR_HEARTBEAT = "irregular_heartbeat"
    HEARTBEAT_LOOSE = "heartbeat_loose"  # not under control, on effort, or a heart that stopped
    STROKE = "stroke"
    AORTA = "aorta"
    ARTERY_DISEASE = "artery_disease"
    HIGH_PRESSURE = "high_pressure"
    CHOLESTEROL = "cholesterol"
    VARICOSE_VEINS = "varicose_veins"
    # arms and legs: answered with limbs
    ANY_LIMBS = "any_limbs"
    LYMPH_NODES = "lymph_nodes"
    LYMPHOEDEMA = "lymphoedema"
    VESSEL_ACCESS = "vessel_access"
    WOUND = "wound"
    SKIN_GRAFT = "skin_graft"
    NUMB_LIMB = "numb_limb"
    IMPLANT = "implant"
    # the last twelve weeks
    ANY_LATELY = "any_lately"
    SURGERY = "surgery"  # weeks ago
    FRACTURE = "fracture"  # limbs
    FRACTURE_WEEKS = "fracture_weeks"
    PLASTER = "plaster"  # limbs
    BED_REST = "bed_rest"  # weeks ago
    LONG_JOURNEY = "long_journey"
    ILL_LATELY = "ill_lately"
    FEVER_NOW = "fever_now"
    # illnesses
    ANY_ILLNESS = "any_illness"
    CANCER = "cancer"
    DIABETES = "diabetes"
    DIABETES_NUMBNESS = "diabetes_numbness"
    KIDNEY = "kidney"
    SICKLE_CELL = "sickle_cell"
    EYE_PRESSURE = "eye_pressure"
    SKULL_PRESSURE = "skull_pressure"
    MUSCLE_BREAKDOWN = "muscle_breakdown"
    JOINT_INFLAMMATION = "joint_inflammation"
    WEAK_BONES = "weak_bones"
    # medicines
    ANY_MEDICINES = "any_medicines"
    BLOOD_THINNERS = "blood_thinners"
    HORMONES = "hormones"
    STATINS = "statins"
    STIMULANTS = "stimulants"
    MUSCLE_DRUGS = "muscle_drugs"
    # skin, falls
    ANY_OTHER = "any_other"
    LATEX = "latex"
    FRAGILE_SKIN = "fragile_skin"
    RAYNAUD = "raynaud"
    FALLS = "falls"
    # pregnancy
    ANY_PREGNANCY = "any_pregnancy"
    PREGNANT = "pregnant"
    BIRTH_LATELY = "birth_lately"


class Form(StrEnum):
    """How a question is answered."""

    YES_NO = "yes_no"  # "yes", "no", "not_sure"
    NUMBER = "number"  # a number, or "not_sure"
    PRESSURE = "pressure"  # "128/82", "no" when there is no reading, or "not_sure"
    LIMBS = "limbs"  # "no", "not_sure", or limbs with commas: "left_arm,left_leg"
    WEEKS = "weeks"  # "no", "not_sure", or whole weeks ago


Q = Question

ABOUT_YOU = (Q.AGE, Q.WEIGHT, Q.HEIGHT, Q.ACTIVE, Q.SMOKING, Q.BLOOD_PRESSURE)
GROUPS: dict[Question, tuple[Question, ...]] = {
    Q.ANY_SIGNS: (
        Q.CHEST_PAIN,
        Q.BREATHLESS,
        Q.FAINTING,
        Q.DIZZY_STANDING,
        Q.PALPITATIONS,
        Q.SWOLLEN_ANKLES,
        Q.LEG_PAIN_WALKING,
    ),
    Q.ANY_CLOTS: (Q.PAST_CLOT, Q.CLOTTING_DISORDER, Q.FAMILY_CLOT, Q.BLEEDING_DISORDER),
    Q.ANY_HEART: (
        Q.HEART_LATELY,
        Q.HEART_DISEASE,
        Q.IRREGULAR_HEARTBEAT,
        Q.STROKE,
        Q.AORTA,
        Q.ARTERY_DISEASE,
        Q.HIGH_PRESSURE,
        Q.CHOLESTEROL,
        Q.VARICOSE_VEINS,
    ),
    Q.ANY_LIMBS: (
        Q.LYMPH_NODES,
        Q.LYMPHOEDEMA,
        Q.VESSEL_ACCESS,
        Q.WOUND,
        Q.SKIN_GRAFT,
        Q.NUMB_LIMB,
        Q.IMPLANT,
    ),
    Q.ANY_LATELY: (
        Q.SURGERY,
        Q.FRACTURE,
        Q.PLASTER,
        Q.BED_REST,
        Q.LONG_JOURNEY,
        Q.ILL_LATELY,
        Q.FEVER_NOW,
    ),
    Q.ANY_ILLNESS: (
        Q.CANCER,
        Q.DIABETES,
        Q.KIDNEY,
        Q.SICKLE_CELL,
        Q.EYE_PRESSURE,
        Q.SKULL_PRESSURE,
        Q.MUSCLE_BREAKDOWN,
        Q.JOINT_INFLAMMATION,
        Q.WEAK_BONES,
    ),
    Q.ANY_MEDICINES: (Q.BLOOD_THINNERS, Q.HORMONES, Q.STATINS, Q.STIMULANTS, Q.MUSCLE_DRUGS),
    Q.ANY_OTHER: (Q.LATEX, Q.FRAGILE_SKIN, Q.RAYNAUD, Q.FALLS),
    Q.ANY_PREGNANCY: (Q.PREGNANT, Q.BIRTH_LATELY),
}

# What is asked only after a plain "yes" to something else.
FOLLOW_UPS: dict[Question, tuple[Question, ...]] = {
    Q.CHEST_PAIN: (Q.ANGINA,),
    Q.DIZZY_STANDING: (Q.PRESSURE_DROPS,),
    Q.HEART_DISEASE: (Q.HEART_ARTERIES, Q.HEART_WEAK, Q.HEART_BORN, Q.HEART_TEST),
    Q.IRREGULAR_HEARTBEAT: (Q.HEARTBEAT_LOOSE,),
    Q.FRACTURE: (Q.FRACTURE_WEEKS,),
    Q.DIABETES: (Q.DIABETES_NUMBNESS,),
}

NUMBERS = frozenset({Q.AGE, Q.WEIGHT, Q.HEIGHT})
LIMB_QUESTIONS = frozenset({*GROUPS[Q.ANY_LIMBS], Q.FRACTURE, Q.PLASTER})
WEEKS_QUESTIONS = frozenset({Q.SURGERY, Q.BED_REST, Q.FRACTURE_WEEKS})
PRESSURE_QUESTIONS = frozenset({Q.BLOOD_PRESSURE, Q.PRESSURE_AGAIN})


def form_of(question: Question) -> Form:
    """How this question is answered."""
    if question in NUMBERS:
        return Form.NUMBER
    if question in LIMB_QUESTIONS:
        return Form.LIMBS
    if question in WEEKS_QUESTIONS:
        return Form.WEEKS
    return Form.PRESSURE if question in PRESSURE_QUESTIONS else Form.YES_NO
