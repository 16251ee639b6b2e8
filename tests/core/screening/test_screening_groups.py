"""Whoever has a condition can say yes to its group from the group's own words; a healthy person is through quickly."""

import pytest

from conversations.words.screening import QUESTIONS
from core.screening import GROUPS, Answers, Question
from core.screening.questions import Q
from tests.core.screening.people import completed

# What a person who has it would look for, in everyday words; every one stands in the group's question.
NAMED: dict[Question, tuple[str, ...]] = {
    Q.CHEST_PAIN: ("chest pain",),
    Q.BREATHLESS: ("hard to breathe",),
    Q.FAINTING: ("fainting",),
    Q.DIZZY_STANDING: ("dizzy", "standing up"),
    Q.PALPITATIONS: ("heart racing or stumbling",),
    Q.SWOLLEN_ANKLES: ("swollen ankles",),
    Q.LEG_PAIN_WALKING: ("legs that hurt when you walk",),
    Q.PAST_CLOT: ("blood clots", "one of your own", "leg, arm or lung"),
    Q.CLOTTING_DISORDER: ("blood that clots", "too easily"),
    Q.FAMILY_CLOT: ("in your close family",),
    Q.BLEEDING_DISORDER: ("bleeds too easily",),
    Q.HEART_LATELY: ("heart trouble",),
    Q.HEART_DISEASE: ("heart trouble", "even long ago"),
    Q.IRREGULAR_HEARTBEAT: ("irregular heartbeat", "pacemaker"),
    Q.STROKE: ("a stroke", "even long ago"),
    Q.AORTA: ("aneurysm",),
    Q.ARTERY_DISEASE: ("narrowed arteries",),
    Q.HIGH_PRESSURE: ("high blood pressure", "tablets for it", "well treated"),
    Q.CHOLESTEROL: ("very high cholesterol",),
    Q.VARICOSE_VEINS: ("varicose veins",),
    Q.LYMPH_NODES: ("lymph nodes taken out or treated",),
    Q.LYMPHOEDEMA: ("swelling that stays",),
    Q.VESSEL_ACCESS: ("dialysis access", "operated vessel"),
    Q.WOUND: ("wound", "rash", "infection"),
    Q.SKIN_GRAFT: ("skin graft",),
    Q.NUMB_LIMB: ("nerve injury", "numbness"),
    Q.IMPLANT: ("metal", "port"),
    Q.SURGERY: ("an operation",),
    Q.FRACTURE: ("broken bone",),
    Q.PLASTER: ("plaster", "splint"),
    Q.BED_REST: ("days in bed",),
    Q.LONG_JOURNEY: ("a journey of hours sitting", "to come"),
    Q.ILL_LATELY: ("covid", "ill enough for a doctor"),
    Q.FEVER_NOW: ("fever now",),
    Q.CANCER: ("ever: cancer",),
    Q.DIABETES: ("diabetes",),
    Q.KIDNEY: ("kidney",),
    Q.SICKLE_CELL: ("sickle cell", "trait"),
    Q.EYE_PRESSURE: ("glaucoma", "eye trouble"),
    Q.SKULL_PRESSURE: ("high pressure in the skull",),
    Q.MUSCLE_BREAKDOWN: ("muscles that broke down", "dark urine"),
    Q.JOINT_INFLAMMATION: ("rheumatism",),
    Q.WEAK_BONES: ("thin bones", "osteoporosis"),
    Q.BLOOD_THINNERS: ("blood thinners",),
    Q.HORMONES: ("the pill", "hormones"),
    Q.STATINS: ("statin", "cholesterol"),
    Q.STIMULANTS: ("stimulants", "pre-workout"),
    Q.MUSCLE_DRUGS: ("build muscle", "testosterone"),
    Q.LATEX: ("latex allergy",),
    Q.FRAGILE_SKIN: ("tears or bruises easily",),
    Q.RAYNAUD: ("fingers or toes that turn white in the cold",),
    Q.FALLS: ("a fall in the last year",),
    Q.PREGNANT: ("pregnant, possibly pregnant",),
    Q.BIRTH_LATELY: ("a birth in the last three months",),
}
DETAILS = [(gate, detail) for gate, details in GROUPS.items() for detail in details]
MOST_QUESTIONS = 15
MOST_WORDS = 320  # two minutes at 160 words a minute, reading without hurry: own estimate, no source


@pytest.mark.parametrize(("gate", "detail"), DETAILS)
def test_the_group_names_each_of_its_conditions(gate: Question, detail: Question) -> None:
    asked = QUESTIONS[gate].lower()
    assert NAMED[detail]
    assert not [words for words in NAMED[detail] if words not in asked]


def test_no_condition_is_named_that_nobody_asks_about() -> None:
    assert set(NAMED) == {detail for _, detail in DETAILS}


def test_a_healthy_person_reads_it_all_in_two_minutes() -> None:
    asked = list(completed(Answers()).said)
    read = " ".join(QUESTIONS[question] for question in asked)
    assert len(asked) <= MOST_QUESTIONS
    assert len(read.split()) <= MOST_WORDS
