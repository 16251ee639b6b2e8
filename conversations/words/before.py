"""Before the bands: fit today? safe today?"""

OPENING = (
    "Good that you're here. Session {number}{plan}. If I go quiet, take the bands off when the movement is "
    "done. Never wait for me."
)
ASK = {
    "news": "Anything new since last time: hospital, a new medicine, a new diagnosis?",
    "news_what": "Thanks for saying so. What is new? One line is enough.",
    "today": "Fever, alcohol, a long trip, great heat where you train, possibly pregnant, or unwell today?",
    "which": "Which one?",
    "pain": "Any pain in a joint right now, 0 (none) to 10 (the worst you can imagine)?",
    "heavy": "Did you train the same muscles hard yesterday or today?",
    "drill": (
        "First a drill, without training: put on {where}, loosely. Then off again with one hand, in under 10 seconds. "
        "This is your way out, so it has to work. How did it go?"
    ),
    "sound": "Sound on, phone charged and within reach? You should have heard this message.",
    "warm": "Warm up without bands: one easy, light set, or before a walk two easy minutes. No hurry.",
}
NEWS_FIRST = "Anything new since the health questions: hospital, a new medicine, a new diagnosis?"
WHICH = (
    ("Fever or ill", "fever"),
    ("Alcohol", "alcohol"),
    ("Sat over 4 hours on a trip", "long_travel"),
    ("Very hot where I train", "heat"),
    ("Possibly pregnant", "pregnant"),
    ("Just unwell", "unwell"),
    ("None of these", "none"),
)
DRILL = "Off in under 10 seconds"
DRILL_SLOW = "It took longer"
DRILL_STUCK = "I can't get them off"
DRILL_STUCK_SAID = "The release drill, bands off with one hand: could not get them off."
DRILL_SLOW_SAID = (
    "The release drill, bands off with one hand: tried as often as one may in a day, not under 10 seconds."
)
DRILL_AGAIN = (
    "Once more, no hurry to train: put on {where}, loosely, the end where your thumb finds it. Then off again with one "
    "hand, in under 10 seconds."
)
DRILL_PAIR = {"legs": "both leg bands", "arms": "both arm bands", "": "both bands"}
DRILL_ONE = "one band, on your {limb}"
HEARD = "Heard it"
NOT_HEARD = "Didn't hear it"
SOUND_AGAIN = "Sound check again: silent mode off, volume up, phone next to you. Did you hear this one?"
WARM = "Done"
GENTLE = "Hot today, so gently: half the sets, stop with reps left, drink before and after."

HEAVY = "Then we stay light today: half the sets, stop with reps left. No load moves after it."
HELPER = " {helper} types for you; what you feel is what counts."
LAPSED = "We leave it for today. Write 'start' when you want to train."
CANCELLED = "All right, no session now. Write 'start' when you want to."
