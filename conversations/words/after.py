"""After the bands are off."""

from core.safety.pain import Where

OPENING = "Well done. Tired, shaky limbs are fine now and pass. A few short questions."
OPENING_STOPPED = "Good that you stopped. A few short questions, then rest."
EFFORT = (
    "How hard was it, 0 (nothing at all) to 10 (the most you could do)? 3 is moderate, 5 hard, 7 very hard."
)
# Typed instead of a number; by the question's own anchors, in between by category-ratio scales (from memory).
EFFORT_TYPED = (
    ("nothing", "0"),
    ("very easy", "1"),
    ("easy", "2"),
    ("moderate", "3"),
    ("medium", "3"),
    ("a bit hard", "4"),
    ("a little hard", "4"),
    ("somewhat hard", "4"),
    ("hard", "5"),
    ("pretty hard", "6"),
    ("quite hard", "6"),
    ("very hard", "7"),
    ("really hard", "7"),
    ("extremely hard", "9"),
    ("the most i could do", "10"),
    ("maximal", "10"),
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
STILL_NUMB_SINCE = (
    "Bands off if you have any on. Ten minutes later: still tingling, numb, cold or off-colour anywhere?"
)
NOT_NUMB = "Good, that's over. Rest now."
NO_ANSWER = "no answer"
