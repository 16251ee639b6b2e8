"""Screening in plain words: the questions, what follows from them, and the coach's decision.

A group is one sentence; nobody reads a list of diseases. The program routes and never diagnoses.
"""

from collections.abc import Iterable

from core.screening import Due, Question, Refusal, Route, Ruling, Tier, Today

Q = Question

OPENING = (
    "Before the first band goes on I need to know a few things about your health: about fifteen short "
    "questions, two minutes. If you are not sure, say not sure; your coach looks at those. I don't diagnose. "
    "Your coach decides, and where needed your clinician comes first."
)

QUESTIONS = {
    Q.AGE: "How old are you? Just the years.",
    Q.GUARDIAN_AGREES: "You are under 18. Does your parent or guardian agree to this training?",
    Q.GUARDIAN_PRESENT: "Will your parent or guardian be with you at every session?",
    Q.WEIGHT: "What do you weigh? In kg, lb or stone.",
    Q.HEIGHT: "How tall are you? In cm, or feet and inches.",
    Q.ACTIVE: "In the last three months: did you move for half an hour or more, three days a week?",
    Q.SMOKING: "Do you smoke?",
    Q.BLOOD_PRESSURE: "Your latest blood pressure, if you have one? Like 128/82. None is fine: no reading.",
    Q.PRESSURE_SIGNS: (
        "That is very high. Right now: chest pain, short breath, strong headache, blurred sight, weakness or "
        "numbness? If so, call {number} first, then tap Yes."
    ),
    Q.PRESSURE_AGAIN: (
        "Sit and rest for five minutes, quietly, then measure again and type both numbers. Still 180/110 or above, "
        "or you can't measure: call your doctor today. If chest pain, short breath, headache, blurred sight, "
        "weakness or numbness comes: {number} now."
    ),
    # Each group names everything its details ask about: who has it must say yes from these words alone.
    Q.ANY_SIGNS: (
        "With effort, or lately at rest: chest pain, hard to breathe, fainting, dizzy (also on standing up), heart "
        "racing or stumbling, swollen ankles, or legs that hurt when you walk?"
    ),
    Q.CHEST_PAIN: (
        "Pain or pressure in the chest, neck, jaw or arm, at rest or with effort? If it is there right now, call {number} first."
    ),
    Q.ANGINA: (
        "Does it come with effort or cold and ease with rest, is it new or getting worse, or has a doctor called it "
        "angina?"
    ),
    Q.BREATHLESS: "Out of breath at rest, lying down, or with little effort? If so right now, call {number} first.",
    Q.FAINTING: "Have you fainted, or nearly, with effort?",
    Q.DIZZY_STANDING: "Dizzy when you stand up, or dizzy spells?",
    Q.PRESSURE_DROPS: "Has anybody measured that your blood pressure falls when you stand up?",
    Q.PALPITATIONS: "Does your heart race or stumble without a reason?",
    Q.SWOLLEN_ANKLES: "Swollen ankles in the evening?",
    Q.LEG_PAIN_WALKING: "Do your legs hurt when you walk, and stop hurting when you stand?",
    Q.ANY_CLOTS: (
        "Blood clots: ever one of your own (leg, arm or lung), one in your close family, or blood that clots or "
        "bleeds too easily?"
    ),
    Q.PAST_CLOT: "Have you ever had a blood clot, in a leg, an arm or the lung?",
    Q.CLOTTING_DISORDER: "Has a doctor ever said that your blood clots too easily?",
    Q.FAMILY_CLOT: "A blood clot in a parent, brother, sister or child of yours?",
    Q.BLEEDING_DISORDER: "Do you bleed for long, or has a doctor named a bleeding disorder?",
    Q.ANY_HEART: (
        "Ever, even long ago or well treated: heart trouble, an irregular heartbeat or pacemaker, a stroke, high "
        "blood pressure or tablets for it, narrowed arteries, an aneurysm, very high cholesterol, varicose veins?"
    ),
    Q.HEART_LATELY: (
        "In the last three months: a heart attack, chest pain that is new or gets worse, an inflamed heart, or "
        "treatment for a weak heart in hospital?"
    ),
    Q.HEART_DISEASE: "Any heart disease, heart operation, stent or heart failure, ever?",
    Q.HEART_ARTERIES: "Is it narrowed heart arteries, a heart attack, a stent or a bypass, ever?",
    Q.HEART_WEAK: (
        "Is it a weak heart: washing or a slow walk tires you or takes your breath, or a doctor said that it pumps less "
        "than 30 %?"
    ),
    Q.HEART_BORN: "A heart defect you were born with?",
    Q.HEART_TEST: "Has an exercise test of your heart found something, or been stopped early?",
    Q.IRREGULAR_HEARTBEAT: "An irregular heartbeat, a pacemaker or a defibrillator?",
    Q.HEARTBEAT_LOOSE: "Is it not under control, does effort bring it on, or has your heart ever stopped?",
    Q.STROKE: "A stroke, or a small one that passed?",
    Q.AORTA: "An aneurysm, or a widened or torn main artery (aorta)?",
    Q.ARTERY_DISEASE: "Narrowed arteries in the legs or arms?",
    Q.HIGH_PRESSURE: "High blood pressure, or tablets for it?",
    Q.CHOLESTEROL: (
        "Very high cholesterol: at the last test above 310 in all or 190 LDL (8.0 and 4.9 in mmol/L), or a kind that runs "
        "in the family, with heart trouble?"
    ),
    Q.VARICOSE_VEINS: "Varicose veins?",
    Q.ANY_LIMBS: (
        "An arm or leg with: lymph nodes taken out or treated, swelling that stays, a dialysis access, an operated "
        "vessel, a wound, rash or infection, a skin graft, a nerve injury or numbness, metal or a port in its upper "
        "part?"
    ),
    Q.LYMPH_NODES: "Lymph nodes taken out or treated: next to which arm or leg?",
    Q.LYMPHOEDEMA: "An arm or leg that stays swollen: which one?",
    Q.VESSEL_ACCESS: "A dialysis access, a vessel graft or a vessel operation: in which arm or leg?",
    Q.WOUND: "An open wound, a rash or an infection: on which arm or leg?",
    Q.SKIN_GRAFT: "A skin graft: on which arm or leg?",
    Q.NUMB_LIMB: "A nerve injury, or numbness that is there on most days: in which arm or leg?",
    Q.IMPLANT: (
        "A plate, nail, port, pump or wire in the upper arm or upper leg, where a band sits: in which one? A new hip "
        "or shoulder counts; a new knee or elbow lies lower and doesn't."
    ),
    Q.ANY_LATELY: (
        "In the last twelve weeks: an operation, a broken bone, plaster or a splint, days in bed, a journey of hours "
        "sitting (or one to come), COVID, ill enough for a doctor, or fever now?"
    ),
    Q.SURGERY: "An operation: how many weeks ago?",
    Q.FRACTURE: "A broken bone: in which arm or leg?",
    Q.FRACTURE_WEEKS: "How many weeks ago was that?",
    Q.PLASTER: "Plaster or a splint now: on which arm or leg?",
    Q.BED_REST: "In bed for more than three days: how many weeks ago?",
    Q.LONG_JOURNEY: "A journey of more than four hours sitting, in the last days or the coming ones?",
    Q.ILL_LATELY: "Ill enough for a doctor or hospital, or a COVID infection?",
    Q.FEVER_NOW: "Fever or ill right now?",
    Q.ANY_ILLNESS: (
        "Ever: cancer, diabetes, kidney disease, sickle cell (also the trait), glaucoma or eye trouble, high pressure "
        "in the skull, muscles that broke down (dark urine), rheumatism, thin bones (osteoporosis)?"
    ),
    Q.CANCER: "Cancer, now or treated before?",
    Q.DIABETES: "Diabetes?",
    Q.DIABETES_NUMBNESS: "Numb or burning feet or hands with it?",
    Q.KIDNEY: "Kidney disease?",
    Q.SICKLE_CELL: "Sickle-cell disease or trait?",
    Q.EYE_PRESSURE: "Glaucoma, or an eye operation or bleeding in the eye?",
    Q.SKULL_PRESSURE: "High pressure in the skull, or a shunt there?",
    Q.MUSCLE_BREAKDOWN: "Muscle breakdown after effort before, with dark urine or a hospital stay?",
    Q.JOINT_INFLAMMATION: "Rheumatoid arthritis or another inflammatory illness?",
    Q.WEAK_BONES: "Osteoporosis?",
    Q.ANY_MEDICINES: (
        "Do you take: blood thinners, the pill or other hormones, a statin (for cholesterol), stimulants or strong "
        "pre-workout drinks, or anything to build muscle, like testosterone?"
    ),
    Q.BLOOD_THINNERS: "Blood thinners?",
    Q.HORMONES: "The pill, a patch, ring or other hormones?",
    Q.STATINS: "A statin (for cholesterol)?",
    Q.STIMULANTS: "Stimulants, prescribed or not, also strong pre-workout drinks?",
    Q.MUSCLE_DRUGS: "Testosterone, steroids or anything else to build muscle?",
    Q.ANY_OTHER: (
        "Latex allergy, skin that tears or bruises easily, fingers or toes that turn white in the cold, or a fall in "
        "the last year?"
    ),
    Q.LATEX: "Are you allergic to latex?",
    Q.FRAGILE_SKIN: "Skin that tears or bruises easily?",
    Q.RAYNAUD: "Fingers or toes that turn white or blue in the cold?",
    Q.FALLS: "Have you fallen in the last year?",
    Q.ANY_PREGNANCY: "Pregnant, possibly pregnant, or a birth in the last three months? If it can't be you: no.",
    Q.PREGNANT: "Pregnant, or possibly pregnant?",
    Q.BIRTH_LATELY: "A birth in the last three months?",
}

# What the client is told at the end.
TIERS = {
    Tier.CLEAR: "Thank you. Nothing there speaks against starting. Your coach has the last word and writes to you.",
    Tier.COACH_LOOKS: (
        "Thank you. Your coach looks at a few of your answers first and writes to you. No bands until then."
    ),
    Tier.CLINICIAN_FIRST: (
        "Thank you. No bands for now: please ask your doctor or physiotherapist first, and tell your coach "
        "who said what and until when. Your coach helps you with the question to ask."
    ),
    Tier.DO_NOT_START: (
        "Thank you for being open. Training with bands is not for you at the moment, and nobody here will "
        "override that. Your coach knows and talks with you about other ways. For the why, your doctor is the "
        "right person. Did a wrong button slip in? Write it here: your coach can have you asked again."
    ),
}


# After a sign of the heart or of a vessel, whatever the tier: what to do should it come again.
IF_IT_COMES_BACK = (
    "If chest pain, trouble breathing, a racing heart or fainting comes back: stop, sit down, call {number}; don't wait "
    "for anybody here."
)
NO_READING = "No reading"
PRESSURE_HIGH_SAID = "Blood pressure {reading}; no signs with it right now"
PRESSURE_SAID = "Blood pressure {reading}; signs with it right now: {signs}"

UNTIL_CLEARED = "No bands until then."

SEVERAL_LIMBS = "Several? Type them: left arm, right leg."

CLOSED = "Stays without a band: {limbs}. The rest is your coach's decision."


def in_words(places: Iterable[str]) -> str:
    """ "right arm and legs": what a clearance opens, from its stored names; a pair by its region."""
    return " and ".join(LIMBS.get(place, place) for place in places)


LIMBS = {
    "left_arm": "left arm",
    "right_arm": "right arm",
    "left_leg": "left leg",
    "right_leg": "right leg",
}

# Rule names as the coach reads them, with the answer beside them.
RULES = {
    "past_clot": "a blood clot before",
    "heart_lately": "heart attack, unstable chest pain or heart failure, inflamed heart in the last three months",
    "aorta": "aorta widened or torn",
    "artery_disease": "narrowed arteries in the limbs",
    "angina": "angina, or chest pain that is new or getting worse",
    "pressure_drops": "blood pressure falls on standing up",
    "heart_arteries": "narrowed heart arteries, heart attack, stent or bypass",
    "heart_weak": "a weak heart, breathless or tired with small things",
    "heart_born": "a heart defect from birth",
    "heart_test": "an exercise test of the heart found something",
    "heartbeat_loose": "irregular heartbeat not under control or on effort, or a heart that stopped",
    "cholesterol": "very high cholesterol",
    "skull_pressure": "raised pressure in the skull",
    "pregnant": "pregnant or possibly so",
    "birth_lately": "a birth in the last three months",
    "fever_now": "fever or ill now",
    "clotting_disorder": "clotting disorder",
    "family_clot": "a clot in the close family",
    "bleeding_disorder": "bleeding disorder",
    "heart_disease": "heart disease",
    "irregular_heartbeat": "irregular heartbeat, pacemaker or defibrillator",
    "stroke": "stroke before",
    "cancer": "cancer, now or treated",
    "diabetes_numbness": "diabetes with numbness",
    "kidney": "kidney disease",
    "sickle_cell": "sickle-cell disease or trait",
    "eye_pressure": "glaucoma or eye trouble",
    "muscle_breakdown": "muscle breakdown before",
    "blood_thinners": "blood thinners",
    "chest_pain": "chest pain or pressure",
    "breathless": "breathless with little effort",
    "fainting": "fainting on effort",
    "dizzy_standing": "dizzy on standing",
    "palpitations": "heart races or stumbles",
    "swollen_ankles": "swollen ankles",
    "leg_pain_walking": "legs hurt from walking",
    "high_pressure": "high blood pressure, treated or told",
    "varicose_veins": "varicose veins",
    "smoking": "smokes",
    "long_journey": "long journey",
    "ill_lately": "ill in the last twelve weeks",
    "diabetes": "diabetes",
    "joint_inflammation": "inflammatory illness",
    "weak_bones": "osteoporosis: no 10-rep strength test",
    "hormones": "hormones or the pill",
    "muscle_drugs": "drugs to build muscle",
    "statins": "a statin",
    "stimulants": "stimulants",
    "latex": "latex allergy: a band without latex",
    "fragile_skin": "fragile skin or easy bruising",
    "raynaud": "fingers or toes white in the cold: colour checks mislead",
    "falls": "falls: support or company when walking",
    "lymph_nodes": "lymph nodes taken out: limb closed",
    "lymphoedema": "lymphoedema: limb closed",
    "vessel_access": "dialysis access or vessel graft: limb closed",
    "wound": "wound or infection: limb closed",
    "skin_graft": "skin graft: limb closed",
    "numb_limb": "nerve injury or numb limb: limb closed",
    "implant": "implant under the band: limb closed",
    "plaster": "plaster or splint: limb closed",
    "fracture": "a broken bone in the last twelve weeks",
    "pressure_signs": "signs with a very high blood pressure",
    "pressure_too_high": "blood pressure 180/110 or above",
    "under_age": "under 18: guardian agrees and is present",
    "after_surgery": "operation in the last twelve weeks",
    "after_fracture": "fracture in the last twelve weeks: limb closed",
    "after_bed_rest": "bed rest in the last twelve weeks",
    "exercise_check": "the general check before exercise asks for a clinician",
    "several_clot_risks": "several small risks of a clot together",
    "pressure_high": "blood pressure 140/90 or above: no sets to failure",
    "old_age": "75 or older",
    "heavy": "body mass index 30 or above",
    "not_sure": "not sure about some answers",
    "yes_without_detail": "yes to a group of questions, then no to each of them",
    "was_do_not_start": "the answers before these said: do not start",
}

RULINGS = {
    Ruling.CLEARED: "Cleared",
    Ruling.LEGS_ONLY: "Legs only",
    Ruling.ARMS_ONLY: "Arms only",
    Ruling.HELD_UNTIL: "Hold until ...",
    Ruling.DECLINED: "Decline",
}

REFUSALS = {
    Refusal.NO_OVERRIDE: "This answer is one that nobody opens here: hold or decline. If it was a slip, have the questions asked again.",
    Refusal.NEEDS_CONSENT: "A clinician comes first: I need name, date, limits and until when it holds.",
    Refusal.CONSENT_INCOMPLETE: "I need the clinician's name and the limits (none is an answer), too.",
    Refusal.CONSENT_EXPIRED: "That consent has run out. A new one is needed.",
    Refusal.CONSENT_IN_FUTURE: "The consent is dated in the future. When was it said?",
    Refusal.NO_OPEN_LIMB: "Every limb that would open is closed by an answer. Another choice, please.",
    Refusal.NEEDS_NOTE: "One line, please: what you looked at and why it is fine. It stays on record.",
    Refusal.NEEDS_DATE: "Hold until which day? It must be after today.",
}

ONCE_MORE = "The health questions once more, two minutes. Say how it is now; your coach looks at them."
DUE = {
    Due.TWELVE_WEEKS: "It has been twelve weeks: the same few health questions again, two minutes.",
    Due.NEWS: "Something changed, so the few health questions again before the next band. Two minutes.",
    Due.NEVER_ASKED: OPENING,
}

TODAY = {
    Today.ANYTHING: (
        "Anything different today? Fever or ill, alcohol, a long journey, possibly pregnant, very hot where you "
        "train, or anything new: medicine, diagnosis, hospital, injury?"
    ),
    Today.FEVER: "Fever or ill today?",
    Today.ALCOHOL: "Any alcohol today, or a lot last night?",
    Today.LONG_TRAVEL: "More than four hours sitting in a car, train or plane since yesterday?",
    Today.PREGNANT: "Could you be pregnant?",
    Today.NEW: "A new medicine, diagnosis, hospital stay or injury since the last time?",
    Today.HEAT: "Is it very hot where you train?",
}

ROUTES = {
    Route.GO: "Good. Then let's go.",
    Route.GENTLE: "Then gently today: half the sets, drink, stop early. I ask again this evening.",
    Route.COACH_FIRST: "No bands yet: your coach has a look first and writes to you.",
    Route.NOT_TODAY: "No bands today. Rest, drink, and we go on when you are well. I tell your coach.",
    Route.SCREEN_AGAIN: "No bands yet: first the few health questions again, then your coach decides.",
}
