"""After the bands are off."""

from core.safety.pain import Where

OPENING = "Well done. Tired, shaky limbs are fine now and pass. A few short questions."
OPENING_STOPPED = "Good that you stopped. A few short questions, then rest."
EFFORT = (
    "How hard was it, 0 (nothing at all) to 10 (the most you could do)? 3 is easy work, 5 hard, 7 very hard."
)
PAIN = "Any pain now, 0 (none) to 10? A tired muscle doesn't count."
WHERE = "Where?"
WHERES = (
    ("Working muscle", Where.MUSCLE.value),
    ("A joint", Where.JOINT.value),
    ("Where the band was", Where.BAND.value),
    ("Somewhere else", Where.ELSEWHERE.value),
)
NUMB = "Anything still tingling or numb?"
STILL_NUMB = "Ten minutes with the bands off: still tingling, numb, cold or off-colour anywhere?"
NOT_NUMB = "Good, that's over. Rest now."
NO_ANSWER = "no answer"
