"""After the bands are off."""

EFFORT = "How hard was it, 0 (nothing) to 10 (the most you can imagine)?"
EFFORT_CHOICES = (
    ("2, easy", "2"),
    ("3, moderate", "3"),
    ("5, hard", "5"),
    ("7, very hard", "7"),
    ("10, everything", "10"),
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
    "Move the limb, keep the bands off. If it is still there in 10 minutes, ring your coach or your clinician; "
    "if the limb turns weak, call {number}."
)
PAIN_TOLD = "That's more than we want. Your coach is told. If it's not settled tomorrow morning, say so then."
