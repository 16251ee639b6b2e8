"""The questions after a stop word. What is told first stands in `conversations/words/safety.py`."""

from conversations.answers.taken_off import Off
from core.safety.pain import Where

DEFER = "If in doubt, ask your own clinician or call {number}. Nobody is watching this chat live."
ASK_WRONG = "Bands off if you have any on. Is something wrong right now?"
WRONG_YES = "Yes, something is wrong"
WRONG_NO = "No, all fine"
WRONG_SEND = "All fine: send it to {coach}"
GOOD = "Good. We go on where we were."
GOOD_KEPT = "Good. We go on where we were. After the session I ask whether your words go to your coach."
ASK_OFF = "Are the bands off?"
OFF_LABEL = "Bands are off"
BOTH_OFF = "Both off?"
OTHER_OFF = "And the other one? Off with it now, and tap. If it won't come off, write: stuck."
OFF_FIRST = "Both bands off first, please, and tap. If one won't come off, write: stuck."
NOT_BOTH = {Off.PERHAPS: BOTH_OFF, Off.ONE: OTHER_OFF, Off.NOT_YET: OFF_FIRST, Off.STAYS_ON: OFF_FIRST}
ASK_NOW = "How is it now?"
CALL_TOO = " Not called {number} yet? Call now."
BETTER = "Better"
WORSE = "The same or worse"
CLOSE_GRAVE = (
    "Good. Still call {number}, or have a doctor look today: words like yours need it also when it is better. No "
    "training until then."
)
CLOSE_BETTER = "Good. No more training today. Your coach has been told and will write."
STOPPED = "Good. We stop here for today."
FIRST_OFF = "I hear you. First the bands: both off now, then tap. If one won't come off, write: stuck."
NOW_SAID = "{first}. Asked how it is now: {now}"
SORE = "Sore like after any hard work, or far more than that session explains?"
SORES = (("Ordinary soreness", "ordinary"), ("Far more", "far_more"))
SORE_GOOD = (
    "Good. Move gently, drink enough; it eases in a day or two. Swelling, dark urine or weakness with it: a doctor "
    "the same day, or {number}."
)
ASK_WHERE = "Where does it hurt?"
WHERE = (
    ("Working muscle, sore", Where.MUSCLE.value),
    ("A joint", Where.JOINT.value),
    ("Where the band was", Where.BAND.value),
    ("Somewhere else", Where.ELSEWHERE.value),
)
