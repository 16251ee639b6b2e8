"""The morning after: what to do first, then whom to ask. It never names an illness."""

HOW = {
    "morning": "Good morning. Anything out of the ordinary after training?",
    "48h": "Good morning. Two days on: anything out of the ordinary?",
}
HOWS = (("All fine", "fine"), ("Sore", "sore"), ("Something else", "else"))
SORE = "Like after any hard work, or far more than that session explains?"
SORES = (("Ordinary soreness", "ordinary"), ("Far more", "far_more"))
WHAT = "Is it one of these?"
WHAT_ALONG = "Any of these with it?"
WHAT_MORE = "Anything else here?"
WHATS = (
    ("Out of breath or chest pain", "breathless"),
    ("One arm or leg swollen, warm or painful", "one_sided_swelling"),
    ("I fainted", "fainted"),
    ("Dark urine, like tea or cola", "dark_urine"),
    ("A limb is weak", "weakness"),
    ("What I trained is clearly swollen", "muscles_swollen"),
    ("Still numb or tingling", "numb_next_day"),
)
NONE = "None of these"
OTHER = "Something not listed"
OTHER_WHAT = "What is it? In your own words; your coach reads it."
PAIN = "Pain this morning in the joint we look after, 0 (none) to 10?"

TOLD = {
    "breathless": (
        "Call {number} now. Sit up, get somebody to you, don't drive yourself. Don't wait for your coach; they "
        "are being told too."
    ),
    "one_sided_swelling": (
        "No training, don't rub it. This needs a doctor now: go to an emergency department, or call {number}. At "
        "once if your breath or chest is not right. Your coach is being told."
    ),
    "fainted": (
        "Sit or lie down, get somebody to you, and call {number} now. Don't drive. No training. Your coach is "
        "being told."
    ),
    "dark_urine": (
        "No training. Drink water and see a doctor now: an emergency department is right for this. Say that you "
        "trained. With weak or very painful muscles call {number}. Your coach is being told."
    ),
    "weakness": (
        "No training. A doctor should look at it now: an emergency department, or {number}. If it is one side of "
        "you, or your face or speech, {number} at once. Your coach is being told."
    ),
    "muscles_swollen": (
        "No training, drink water, and see your doctor today; say that you trained. If the urine turns dark or "
        "the limb weak: {number}. Your coach is being told."
    ),
    "numb_next_day": (
        "No bands. See your own clinician today. If the limb turns weak, cold or blue: {number}. Your coach is "
        "being told."
    ),
    "sore_out_of_proportion": (
        "Rest it and drink enough; no training until your coach has written. If the urine turns dark, or it swells "
        "or gets weak: a doctor today, or {number}."
    ),
    "other_next_day": (
        "Thank you. Your coach reads it today; no training until then. If it gets worse, don't wait: your "
        "clinician, or {number} if it is urgent."
    ),
    "pain_not_settled": (
        "More than I'd like to see by now. Rest it; your coach is told and decides about the next session. If it "
        "hurts at rest or gets worse, ask your clinician; if it is urgent, {number}."
    ),
}
THANKS = "Good. A tired, slightly sore muscle eases as you move. See you next time."
NO_REPLY = "No word from you about the last session. Before the next one I need it. Unwell? Your clinician, or {number}."
