"""After the bands are off."""

OPENING = "Well done. Tired, shaky limbs are fine now and pass. A few short questions."
OPENING_STOPPED = "Good that you stopped. A few short questions, then rest."
EFFORT = (
    "How hard was it, 0 (nothing at all) to 10 (the most you could do)? 3 is easy work, 5 hard, 7 very hard."
)
PAIN = "Any pain now, 0 (none) to 10? A tired muscle doesn't count."
WHERE = "Where?"
WHERES = (
    ("Working muscle", "muscle"),
    ("A joint", "joint"),
    ("Where the band was", "band"),
    ("Somewhere else", "elsewhere"),
)
NUMB = "Anything still tingling or numb?"
NUMB_TOLD = (
    "Keep the bands off and move the limb. Your coach is told now. If it is still there in 10 minutes, ring "
    "your coach or your clinician; if the limb turns weak, cold or blue, call {number}."
)
PAIN_TOLD = {
    "joint": (
        "That's more than we want in a joint. Rest it; your coach is told. If it's not settled tomorrow morning, "
        "say so then; if it gets worse, ask your clinician."
    ),
    "band": (
        "That's more than a band should leave. Nothing tight on it today; your coach is told. If the skin is "
        "broken or it gets worse, ask your clinician."
    ),
    "elsewhere": (
        "That's not from the work, so take it seriously: rest, and ask your clinician if it stays. Your coach is "
        "told. Chest pain or short breath: {number}, now."
    ),
}
