"""What is said when something may be wrong: what to do first, then whom to ask. It never names an illness.

`{number}` is the local emergency number as written for this client (`emergency`). Where bands may be on, the words
begin with them.
"""

import re

from core.safety.causes import Cause

ANY_NUMBER = "your local emergency number"


def emergency(number: str | None) -> str:
    """The emergency number as it stands in a sentence; None: not known."""
    return f"{number} ({ANY_NUMBER})" if number else ANY_NUMBER


OFF_FIRST = "Bands off now."
COACH_HEARS = "Your coach is being told."

# --- to the client, for each cause ------------------------------------------------------------------------------
TOLD = {
    Cause.EMERGENCY: (
        "Bands off now. Call {number} now. Unlock the door, sit or lie down, get somebody to you. Your coach is "
        "being told; don't wait for an answer here."
    ),
    Cause.FAINT: (
        "Bands off now. Lie down with your legs up, or sit with your head low. Somebody with you? Tell them. If "
        "you pass out, your chest hurts or breathing gets hard: {number}. No more today; your coach is being told."
    ),
    Cause.STUCK: (
        "Bands off now: cut it with scissors, away from the skin. Get someone to help; {number} if you cannot. Your "
        "coach is being told."
    ),
    Cause.NERVE: (
        "Bands off now. Move the fingers or toes, shake the limb loose, sit down. If it is not gone in ten minutes, "
        "or something feels weak, tell me; a weak hand or foot: {number}. Your coach is being told."
    ),
    Cause.CIRCULATION: (
        "Bands off now. Keep the limb warm, let it hang, move the fingers or toes. The usual colour and warmth "
        "should be back within ten minutes; if not, call {number}. Your coach is being told."
    ),
    Cause.INJURY: (
        "Bands off now. Stop and sit or lie down. If it bleeds, press on it. Heavy bleeding, a crooked limb, a knock "
        "to the head, or you can't use it: {number}. Otherwise have it looked at today. Your coach is being told."
    ),
    Cause.SWELLING: (
        "Bands off, and they stay off. No training, don't rub it. Have a doctor look at it today. Short breath or "
        "chest pain: {number} at once. Your coach is being told."
    ),
    Cause.URINE: (
        "Bands off, no more training. Drink water and see a doctor now: an emergency department is right for this. "
        "Say that you trained. With weak or very painful muscles call {number}. Your coach is being told."
    ),
    Cause.SOMETHING_WRONG: (
        "Bands off now. Sit down. If it is your chest, your breath, your head or one side of you: {number}. Your "
        "coach is being told."
    ),
    Cause.NO_WORD: (
        "Bands off now, please, and a word to me. Your coach is being told that I can't reach you. Unwell? Call "
        "{number}."
    ),
    Cause.NOT_BETTER: (
        "Bands off, and don't wait for us: call {number} or your own clinician now. Your coach is told as well."
    ),
    Cause.STOPPED: "Bands off now. We stop here; sit down for a moment. Your coach is being told.",
    Cause.TOO_TIGHT: (
        "Bands off now. Too tight is too tight. We stop here for today and start looser next time. Your coach is "
        "being told."
    ),
    Cause.HURTS: (
        "Bands off, if any are on. Stop; don't train through it. If it stays or gets worse, ask your doctor or "
        "physiotherapist; if it is urgent, {number}. Your coach is being told."
    ),
    Cause.BANDS_HURT: (
        "Bands off. That one ends here. Your coach reads it today; if it stays, your doctor looks at it, and if it "
        "is urgent call {number}."
    ),
    Cause.CHECKS_FAILED: (
        "Bands off; that was the second time it didn't fit, so no more bands today. Nothing is lost. Your coach is "
        "being told."
    ),
    Cause.UNSEEN_REFILL: "Bands off for now. Your coach decides how we check yours, and writes to you.",
    Cause.BANDS_ON: "Bands off now. They have been on too long. Your coach is being told.",
    Cause.QUIET_SET: (
        "Bands off if they are on. I haven't heard from you, so your coach is being told. Unwell? Call {number}."
    ),
    Cause.MAYBE_ON: (
        "Bands off if they are on. I asked whether they are and heard nothing, so your coach is being told. Never on? "
        "Write: not on. Unwell? Call {number}."
    ),
    Cause.AWAY: "Bands off, if they are still on. I was away for a while; that was me, not you. Are they off?",
    Cause.BROKEN: "Bands off, please. Something broke on my side, not yours. Your coach is being told.",
    Cause.PRESSURE_EMERGENCY: (
        "No training. Such a reading with those signs is an emergency: call {number} now, sit down, don't drive "
        "yourself. Your coach is being told."
    ),
    Cause.PRESSURE_HIGH: (
        "No training with that blood pressure. Rest five minutes and measure again; still 180/110 or above: call your "
        "doctor today. With chest pain, short breath, headache, blurred sight, weakness or numbness: call {number} "
        "now. Your coach is being told."
    ),
    Cause.SCREENED: "Thank you. No bands until your coach has looked and written to you.",
    Cause.TODAY_CHANGED: (
        "Then your coach looks at that first and writes to you. No bands today; good that you said so. What your "
        "doctor told you comes before anything I say."
    ),
    Cause.UNWELL: (
        "Then no bands today. Rest and drink; we go on when you're well. Your coach is told. If you feel worse, "
        "ring your doctor; short breath or chest pain: {number}."
    ),
    Cause.PAIN_BEFORE: (
        "That is above what we train on. No bands today; rest it, your coach is told. If it gets worse or stays, "
        "ask your doctor or physiotherapist."
    ),
    Cause.DRILL_FAILED: (
        "Then no bands today: they go on only when they come off fast. If one is still on and stuck, cut it. Your "
        "coach is told and helps you with it."
    ),
    Cause.PAIN_AFTER: (
        "That is more than I'd like. Rest it; your coach reads it today. If it doesn't ease, your clinician; if it "
        "is urgent, {number}."
    ),
    Cause.NUMB_AFTER: (
        "Bands off, both? Shake the limb loose and move about. I ask again in ten minutes. If it gets weak, cold or "
        "blue: {number}. Your coach is told."
    ),
    Cause.NUMB_STILL: (
        "No more bands until somebody has looked. Numb or tingling for more than ten minutes goes to your coach "
        "now. If it gets weak or spreads: {number}."
    ),
    Cause.NUMB_MORNING: (
        "No bands. Please have a doctor look at it today. If something is weak, or hangs: {number}. Your coach is "
        "being told."
    ),
    Cause.WEAKNESS: (
        "No training. A doctor should look at it now: an emergency department, or {number}. If it is one side of "
        "you, or your face or speech, {number} at once. Your coach is being told."
    ),
    Cause.CLOT_SIGNS: (
        "No training, don't rub it. This needs a doctor now: an emergency department, or {number}. At once if your "
        "breath or chest is not right. Your coach is being told."
    ),
    Cause.MUSCLE_SIGNS: (
        "No training. Drink water and see a doctor today, and say that you trained. Dark urine or a weak limb: an "
        "emergency department at once, or {number}. Your coach is being told."
    ),
    Cause.SIGNS_AFTER: (
        "Call {number} now. Sit or lie down, get somebody to you, don't drive yourself. Your coach is being told; "
        "don't wait for them."
    ),
    Cause.FEVER_AFTER: (
        "Rest and drink. No bands until you are well. Dark urine or muscles that get weak: a doctor the same day, "
        "or {number}. Your coach reads it."
    ),
    Cause.SORE: (
        "Rest it, drink enough, keep moving gently; no training until your coach has written. Swelling, dark urine "
        "or weakness: a doctor the same day, or {number}."
    ),
    Cause.NOT_SURE_AFTER: "Then your coach looks at it today. If it gets worse, your doctor; don't wait for me.",
    Cause.OTHER_AFTER: (
        "Thank you. Your coach reads it today; no training until then. If it gets worse, don't wait: your clinician, "
        "or {number} if it is urgent."
    ),
    Cause.NO_REPLY: (
        "No word from you about the last session. Before the next one I need it. Unwell? Your clinician, or {number}."
    ),
    Cause.PAIN_PAUSED: (
        "Too much, or too long. No training until your coach has looked. If it hurts at rest or at night, your "
        "doctor; if it is urgent, {number}."
    ),
    Cause.PAIN_EASED: "More than I'd like to see. Rest it; next time we make it easier.",
}

WATCH = (
    "Until tomorrow watch for a limb that is numb, weak or swollen, dark urine, trouble with chest, breath or head. Any "
    "of these: {number}, and tell me. I ask again how you are, this evening or tomorrow. Your coach may call you."
)

# Not told to the client: what the coach sees over weeks.
COACH_ONLY = frozenset(
    {
        Cause.UNREACHABLE,
        Cause.MISSED,
        Cause.TIGHTNESS_DRIFT,
        Cause.REFILL_SLOW_OFTEN,
        Cause.LOOSE_OFTEN,
        Cause.LAPSED,
    }
)
LAPSED_SAID = "no answer any more before the session was finished"


def told(cause: Cause, number: str) -> str:
    """What the client is told; `number` as `emergency` gives it. Raises KeyError for what only the coach sees."""
    return TOLD[cause].format(number=number)


# --- to the client again, while the alert stays open ---------------------------------------------------------------
# What was told in so many words about bands, or about a silence, once it is neither any more.
TOLD_SINCE = {
    Cause.STUCK: "A limb that stays numb, cold or blue for ten minutes after the band came off, or a cut: {number}.",
    Cause.BANDS_ON: "They were on too long. A limb that stays numb, weak, cold or blue: {number}.",
    Cause.NOT_BETTER: "Don't wait for us: call {number} or your own clinician now.",
    Cause.CHECKS_FAILED: "It didn't fit twice, so no more bands until your coach has looked at it with you.",
    Cause.NO_WORD: "I asked whether something is wrong and had no answer then. Unwell? Call {number}.",
    Cause.QUIET_SET: "I heard nothing from you in the middle of a session. Unwell? Call {number}.",
    Cause.AWAY: "I was away for a while with your bands on; that was me, not you. Unwell? Call {number}.",
    Cause.MAYBE_ON: "I asked whether the bands are on and heard nothing. Never on? Write: not on. Unwell? Call {number}.",
}
BANDS_BEGIN = re.compile(r"^Bands off\b[^.?]*[.?] ")


def told_since(cause: Cause, number: str) -> str:
    """What holds of it now that the client writes, and the bands are off as they say."""
    said = TOLD_SINCE.get(cause) or BANDS_BEGIN.sub("", TOLD[cause])
    return said.format(number=number)


# --- to the coach: what it is, after the client's name -----------------------------------------------------------
COACH_READS = {
    Cause.EMERGENCY: "emergency words",
    Cause.FAINT: "dizzy, sick or near fainting",
    Cause.STUCK: "a band does not come off",
    Cause.NERVE: "tingling or numb",
    Cause.CIRCULATION: "limb blue, white or cold",
    Cause.INJURY: "hurt or bleeding",
    Cause.SWELLING: "swelling",
    Cause.URINE: "dark urine",
    Cause.SOMETHING_WRONG: "something is wrong",
    Cause.NO_WORD: "no answer to a question about their safety",
    Cause.NOT_BETTER: "not better after bands off",
    Cause.STOPPED: "stopped the session",
    Cause.TOO_TIGHT: "band too tight",
    Cause.HURTS: "pain",
    Cause.BANDS_HURT: "pain in the session, told to take the bands off",
    Cause.CHECKS_FAILED: "two failed band checks",
    Cause.UNSEEN_REFILL: "the refill can't be seen; you decide whether they train without",
    Cause.BANDS_ON: "bands on too long",
    Cause.QUIET_SET: "went quiet with bands on",
    Cause.MAYBE_ON: "no word since 'bands on'",
    Cause.AWAY: "the program was away while bands were on",
    Cause.BROKEN: "the program failed while bands may be on",
    Cause.PRESSURE_EMERGENCY: "very high blood pressure with signs",
    Cause.PRESSURE_HIGH: "blood pressure 180/110 or above, no signs said; a doctor today",
    Cause.SCREENED: "a screening waits for you",
    Cause.TODAY_CHANGED: "something new in their health",
    Cause.UNWELL: "not well today, no session",
    Cause.PAIN_BEFORE: "pain above the ceiling before the session",
    Cause.DRILL_FAILED: "could not get the bands off fast enough",
    Cause.PAIN_AFTER: "pain after the session, not in the joint",
    Cause.NUMB_AFTER: "numb or tingling right after the session",
    Cause.NUMB_STILL: "numb more than 10 min after bands off",
    Cause.NUMB_MORNING: "numb the morning after",
    Cause.WEAKNESS: "a weak limb after the session",
    Cause.CLOT_SIGNS: "one limb swollen, warm or painful",
    Cause.MUSCLE_SIGNS: "swollen, or sore out of proportion with other signs",
    Cause.SIGNS_AFTER: "breath, chest or fainting after the session",
    Cause.FEVER_AFTER: "fever after the session",
    Cause.SORE: "far sorer than the session explains",
    Cause.NOT_SURE_AFTER: "not sure about a sign after the session",
    Cause.OTHER_AFTER: "something else after the session",
    Cause.NO_REPLY: "no answer after the session",
    Cause.PAIN_PAUSED: "joint pain too high, or too high twice in a row; training waits for you",
    Cause.PAIN_EASED: "joint pain above the ceiling once; next time is eased",
    Cause.UNREACHABLE: "can't be reached by chat any more (blocked or left)",
    Cause.MISSED: "missed two sessions in a row",
    Cause.TIGHTNESS_DRIFT: "rates the tightness higher or lower over weeks",
    Cause.REFILL_SLOW_OFTEN: "slow refill again and again",
    Cause.LOOSE_OFTEN: "loose bands again and again",
    Cause.LAPSED: "left a session without finishing its questions",
}
