"""When something is wrong: what to do, before anything else. {number} is the local emergency number."""

from conversations.stopwords.kinds import Kind

BANDS = "Bands off now. "
DEFER = "If in doubt, ask your own clinician or call {number}. Nobody is watching this chat live."
FIRST = {
    Kind.UNSURE: "Is something wrong right now?",
    Kind.HURTS: "Stop. Don't train through it.",
    Kind.TIGHT: "Too tight is too tight.",
    Kind.STOP: "We stop here. Sit down for a moment.",
    Kind.INJURY: "Stop and sit or lie down. If it bleeds, press on it. If you can't use the limb, call {number}.",
    Kind.URINE: "No training. Drink water. Dark urine needs a clinician today; with muscle pain or weakness "
    "call {number} now.",
    Kind.SWELLING: "No training, don't rub it. One-sided swelling needs a clinician today; with breathlessness "
    "or chest pain call {number} now.",
    Kind.CIRCULATION: "Let the limb hang and move the fingers or toes. If the colour is not back in 10 minutes, "
    "call {number}.",
    Kind.NERVE: "Shake the limb loose. Tingling or numb is never part of it. If it lasts more than 10 minutes, "
    "ring your coach or clinician.",
    Kind.FAINT: "Lie down or sit with your head low. Somebody with you? Tell them. If you pass out or it doesn't "
    "lift in a few minutes, call {number}.",
    Kind.EMERGENCY: "Call {number} now. Unlock the door, sit or lie down, tell somebody near you.",
}
TOLD = "Your coach is being told."
ASK_WRONG = "Bands off if you have any on. Is something wrong right now?"
WRONG_YES = "Yes, something is wrong"
WRONG_NO = "No, all fine"
GOOD = "Good. We go on where we were."
ASK_OFF = "Are the bands off?"
OFF_LABEL = "Bands are off"
ASK_NOW = "How is it now?"
BETTER = "Better"
WORSE = "The same or worse"
CLOSE_BETTER = "Good. No more training today. Your coach will write."
CLOSE_WORSE = "Then don't wait for us: call {number} or your clinician now. Your coach is told as well."
ASK_WHERE = "Where does it hurt?"
WHERE = (
    ("Working muscle, sore", "muscle"),
    ("A joint", "joint"),
    ("Where the band was", "band"),
    ("Somewhere else", "elsewhere"),
)
