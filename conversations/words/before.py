"""Before the bands: fit today? safe today?"""

OPENING = (
    "Good that you're here. Session {number}. If I go quiet, take the bands off when the movement is done. "
    "Never wait for me."
)
ASK = {
    "news": "Anything new since last time: hospital, a new medicine, a new diagnosis?",
    "today": "Fever, alcohol, a long trip, possibly pregnant, or unwell today?",
    "pain": "Pain right now in the joint we look after, 0 (none) to 10?",
    "heavy": "Did you train the same muscles hard yesterday or today?",
    "drill": "First a drill, without training: bands on, then both off again with one hand, in under 10 seconds. "
    "Practise until that works.",
    "sound": "Sound on, phone charged and within reach? You should have heard this message.",
    "warm": "Warm up without bands: one easy set, light, no hurry.",
}
DRILL = "Off in under 10 seconds"
HEARD = "Heard it"
WARM = "Done"
NOT_TODAY_NEWS = "Then your coach looks at that first. No bands today; that's the right call."
NOT_TODAY_UNWELL = "Then no bands today. Rest; we go on when you're well."
NOT_TODAY_PAIN = "{pain} is above what we train on. No bands today; your coach is told. If it gets worse, see your clinician."
LAPSED = "We leave it for today. Write 'start' when you want to train."
CANCELLED = "All right, no session now. Write 'start' when you want to."
