"""What is said when something may be wrong: what to do first, then whom to ask. It never names an illness.

`{emergency_number}` and `{coach}` are filled in by the caller. Where bands may be on, the words begin with them.
"""

from core.cuffs import Step
from core.safety.aftercare import Route, Sign
from core.safety.causes import Cause
from core.safety.pain import Where

# --- to the client, for each cause ------------------------------------------------------------------------------
TOLD = {
    Cause.EMERGENCY: (
        "Bands off now. Stop, sit or lie down. Call {emergency_number}, your local emergency number, now, and get "
        "somebody to you. I am calling {coach}. Don't wait for an answer here."
    ),
    Cause.FAINT: (
        "Bands off now. Lie down with your legs up, or sit with your head low. Somebody with you? Tell them. If "
        "you faint, your chest hurts or breathing gets hard: {emergency_number}, your local emergency number. "
        "No more today; I am telling {coach}."
    ),
    Cause.NERVE: (
        "Bands off now. Move the fingers or toes, shake it out, sit down. If it is not gone in ten minutes, or "
        "something feels weak, tell me. I am telling {coach}."
    ),
    Cause.CIRCULATION: (
        "Bands off now. Keep the limb warm and let it hang loose. The usual colour and warmth should come back "
        "within minutes; if they don't, call {emergency_number}, your local emergency number. I am telling {coach}."
    ),
    Cause.INJURY: (
        "Bands off now. Stop, sit down, don't load it. Heavy bleeding, a crooked limb or a knock to the head: "
        "{emergency_number}, your local emergency number. Otherwise have it looked at today. I am telling {coach}."
    ),
    Cause.SWELLING: (
        "Bands off, and they stay off. Have a doctor look at it today, the same day. Short breath or chest pain: "
        "{emergency_number}, your local emergency number, at once. I am telling {coach}."
    ),
    Cause.URINE: (
        "Bands off, no more training. Drink water and see a doctor today, now rather than later: an emergency "
        "department is right for this. {emergency_number} is your local emergency number. Tell them that you "
        "trained. I am telling {coach}."
    ),
    Cause.SOMETHING_WRONG: (
        "Bands off now. Sit down. If it is your chest, your breath, your head or one side of you: "
        "{emergency_number}, your local emergency number. I am calling {coach}. What is it?"
    ),
    Cause.NO_WORD: (
        "Bands off now, please, and a word to me. I am telling {coach} that I can't reach you. Unwell? "
        "{emergency_number} is your local emergency number."
    ),
    Cause.STOPPED: "Bands off. Well done for stopping; the session ends here. Was something wrong?",
    Cause.BANDS_HURT: "Bands off. That one ends here. {coach} reads it today; if it stays, your doctor looks at it.",
    Cause.CHECKS_FAILED: (
        "Bands off; that was the second time it didn't fit, so no bands today. Nothing lost. I am telling {coach}."
    ),
    Cause.UNSEEN_REFILL: "Bands off for now. {coach} decides how we check yours, and writes to you.",
    Cause.BANDS_ON: (
        "Bands off now, please. They have been on too long. Tell me when they are off. I am telling {coach}."
    ),
    Cause.QUIET_SET: (
        "Bands off if they are on. I haven't heard from you, so I am telling {coach}. Unwell? {emergency_number} "
        "is your local emergency number."
    ),
    Cause.AWAY: "Bands off, if they are still on. I was away for a while; that was me, not you. Are they off?",
    Cause.BROKEN: "Bands off, please. Something broke on my side, not yours. I am telling {coach}.",
    Cause.PRESSURE_EMERGENCY: (
        "No training. Call {emergency_number}, your local emergency number, now, sit down and stay with somebody. "
        "I am telling {coach}."
    ),
    Cause.SCREENED: "Thank you. No bands until {coach} has looked and written to you.",
    Cause.TODAY_CHANGED: "No bands for now. {coach} reads it and writes to you.",
    Cause.NUMB_STILL: (
        "No more bands until somebody has looked. Numb or tingling for more than ten minutes goes to {coach} now. "
        "If it gets weak or spreads: {emergency_number}, your local emergency number."
    ),
    Cause.NUMB_MORNING: (
        "No bands. Please have a doctor look at it today. If something is weak, or hangs: {emergency_number}, your "
        "local emergency number. I am telling {coach}."
    ),
    Cause.WEAKNESS: (
        "No training. That needs a doctor now: an emergency department, or {emergency_number}, your local "
        "emergency number. I am telling {coach}."
    ),
    Cause.CLOT_SIGNS: (
        "No training, no massage. That needs a doctor now: an emergency department, or {emergency_number}, your "
        "local emergency number. At once if your breath or chest is not right. I am telling {coach}."
    ),
    Cause.MUSCLE_SIGNS: (
        "No training. Drink water and see a doctor today, the same day, and say that you trained. Dark urine: an "
        "emergency department at once; {emergency_number} is your local emergency number. I am telling {coach}."
    ),
    Cause.SIGNS_AFTER: (
        "Call {emergency_number}, your local emergency number, now. Sit or lie down, get somebody to you. I am "
        "telling {coach}."
    ),
    Cause.FEVER_AFTER: (
        "Rest and drink. No bands until you are well. Dark urine or muscles that get weak: a doctor the same "
        "day. {coach} reads it."
    ),
    Cause.SORE: (
        "Rest it and keep moving gently. {coach} reads it today. Swelling, dark urine or weakness: a doctor the "
        "same day."
    ),
    Cause.NOT_SURE_AFTER: "Then {coach} looks at it today. If it gets worse, your doctor; don't wait for me.",
    Cause.NO_REPLY: "How are you after the session? I need a word before the next one.",
    Cause.PAIN_PAUSED: "This movement rests until {coach} has looked. If it hurts at rest or at night: your doctor.",
    Cause.PAIN_EASED: "Then we make it easier next time.",
}

# Not told to the client: what the coach sees over weeks.
COACH_ONLY = frozenset(
    {
        Cause.UNREACHABLE,
        Cause.MISSED,
        Cause.TIGHTNESS_DRIFT,
        Cause.REFILL_SLOW_OFTEN,
        Cause.LOOSE_OFTEN,
    }
)

COACH_NOT_REACHED = (
    "I could not reach {coach} yet and keep trying. Don't wait for it: if it is not clearly better, call your "
    "doctor; with chest pain, short breath, fainting or weakness {emergency_number}, your local emergency number."
)
NOBODY_WATCHES = (
    "Nobody is watching live. If I go quiet, take the bands off when the movement is done. Never wait for me."
)
DEFER = "What your doctor or physiotherapist told you comes before anything I say."

# --- asked back ---------------------------------------------------------------------------------------------------
SOMETHING_WRONG = "Bands off, if they are on. Is something wrong right now?"
SOMETHING_WRONG_YES = "Yes, something is wrong"
SOMETHING_WRONG_NO = "No, all fine"
WHERE = "Pause. Where does it hurt? No answer in 20 seconds means: bands off."
WHERES = {
    Where.MUSCLE: "The working muscle, a burn",
    Where.JOINT: "A joint",
    Where.UNDER_BAND: "Under the band",
    Where.ELSEWHERE: "Somewhere else",
}
BURN_GOES_ON = (
    "A burn in the working muscle is fine. Go on while the reps are clean, and breathe out on the effort."
)
TOO_TIGHT = "Bands off now. Three minutes, then we fit them again, looser."

# --- the step after a check ---------------------------------------------------------------------------------------
STEPS = {
    Step.GO: "Good fit. Let's go.",
    Step.SNUGGER: "A little loose. Take it off, fit it once more, one touch snugger, and we check again.",
    Step.LOOSEN: "Loosen it a bit, then we check again.",
    Step.FIT_AGAIN: "Bands off now. Three minutes rest, then once more, looser.",
    Step.ASK_COACH: TOLD[Cause.UNSEEN_REFILL],
    Step.END: TOLD[Cause.CHECKS_FAILED],
}

# --- after a session ----------------------------------------------------------------------------------------------
SIGNS = {
    Sign.ANYTHING: (
        "How is the body? Any of these: short breath or chest pain, fainted, dark urine, weak, numb, swollen, "
        "feverish, or sorer than it should be?"
    ),
    Sign.CHEST_OR_BREATH: "Short breath, chest pain or coughing blood?",
    Sign.FAINTED: "Fainted, or nearly?",
    Sign.ONE_SIDED: "One calf or one arm swollen, warm or painful, and the other not?",
    Sign.DARK_URINE: "Dark urine, like cola or tea?",
    Sign.WEAKNESS: "A hand, foot or limb that is weak or does not do what it should?",
    Sign.SWELLING: "What you trained: clearly swollen?",
    Sign.NUMB_STILL: "Still numb or tingling anywhere?",
    Sign.FEVER: "Fever, or ill?",
    Sign.SORE_BEYOND: "Far sorer than that session explains, or getting worse instead of better?",
}
ROUTES = {
    Route.FINE: "Good. A tired, slightly sore muscle eases as you move. See you next time.",
    Route.COACH: "{coach} reads this today. No bands until then.",
    Route.CLINICIAN_TODAY: "Please see a doctor today, the same day. No bands until then. I am telling {coach}.",
    Route.EMERGENCY: (
        "Call {emergency_number}, your local emergency number, or go to an emergency department now. I am telling "
        "{coach}."
    ),
}

# --- to the coach -------------------------------------------------------------------------------------------------
COACH_READS = {
    Cause.EMERGENCY: "Emergency words from {client}",
    Cause.FAINT: "{client} feels faint or sick",
    Cause.NERVE: "{client}: tingling or numb",
    Cause.CIRCULATION: "{client}: blue, white or cold limb",
    Cause.INJURY: "{client}: hurt or bleeding",
    Cause.SWELLING: "{client}: swelling",
    Cause.URINE: "{client}: dark urine",
    Cause.SOMETHING_WRONG: "{client} says something is wrong",
    Cause.NO_WORD: "{client} gives no word after a doubtful message",
    Cause.STOPPED: "{client} stopped the session",
    Cause.BANDS_HURT: "{client}: pain, bands came off",
    Cause.CHECKS_FAILED: "{client}: two failed cuff checks",
    Cause.UNSEEN_REFILL: "{client}: refill can't be seen; your decision",
    Cause.BANDS_ON: "{client}: bands on too long, no word",
    Cause.QUIET_SET: "{client} went quiet in a set",
    Cause.AWAY: "The program was away while {client} had bands on",
    Cause.BROKEN: "The program failed while {client} may have bands on",
    Cause.PRESSURE_EMERGENCY: "{client}: very high blood pressure with signs",
    Cause.SCREENED: "{client}: a screening waits for you",
    Cause.TODAY_CHANGED: "{client}: something is different today",
    Cause.NUMB_STILL: "{client}: numb more than 10 min after bands off",
    Cause.NUMB_MORNING: "{client}: numb the morning after",
    Cause.WEAKNESS: "{client}: weakness after a session",
    Cause.CLOT_SIGNS: "{client}: one-sided swelling or warmth",
    Cause.MUSCLE_SIGNS: "{client}: sore out of proportion with other signs",
    Cause.SIGNS_AFTER: "{client}: breath, chest or fainting after a session",
    Cause.FEVER_AFTER: "{client}: fever after a session",
    Cause.SORE: "{client}: sorer than expected",
    Cause.NOT_SURE_AFTER: "{client}: not sure about a sign after a session",
    Cause.NO_REPLY: "{client}: no reply the morning after",
    Cause.PAIN_PAUSED: "{client}: pain above the limit again; movement paused",
    Cause.PAIN_EASED: "{client}: pain above the limit once; eased",
    Cause.UNREACHABLE: "{client} can't be reached here",
    Cause.MISSED: "{client} missed two sessions in a row",
    Cause.TIGHTNESS_DRIFT: "{client}: tightness drifts",
    Cause.REFILL_SLOW_OFTEN: "{client}: slow refill again and again",
    Cause.LOOSE_OFTEN: "{client}: loose bands again and again",
}
ON_IT = "I am on it"
CALL_NOTED = "Call noted"
CLEAR_TO_TRAIN = "Clear to train"
HOLD = "Hold"
