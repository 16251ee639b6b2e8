"""The morning after: what to do first, then whom to ask. It never names an illness."""

from core.safety.aftercare import Sign
from core.safety.asking import Part

HOW = {
    Part.EVENING: "How is the body since training: anything out of the ordinary?",
    Part.MORNING: "The day after training: anything out of the ordinary?",
    Part.TWO_DAYS: "Two days after training: anything out of the ordinary?",
}
HOWS = (("All fine", "fine"), ("Sore", "sore"), ("Something else", "else"))
STOPPED = 'You stopped that session with the words "{said}". How is that now?'
STOPPED_LABELS = {"better": "Gone", "worse": "Still there"}
STAYS = "{said}. Asked later how that is: {now}"
SORE = "Like after any hard work, or far more than that session explains?"
SORES = (("Ordinary soreness", "ordinary"), ("Far more", "far_more"))
WHAT = "Is it one of these?"
WHAT_ALONG = "Any of these with it?"
WHAT_MORE = "Anything else here?"
WHATS = {
    Sign.CHEST_OR_BREATH: "Out of breath or chest pain",
    Sign.ONE_SIDED: "One arm or leg swollen, warm or painful",
    Sign.FAINTED: "I fainted",
    Sign.DARK_URINE: "Dark urine, like tea or cola",
    Sign.WEAKNESS: "A limb is weak",
    Sign.SWELLING: "What I trained is clearly swollen",
    Sign.NUMB_STILL: "Still numb or tingling",
    Sign.FEVER: "Fever",
}
NONE = "None of these"
OTHER = "Something not listed"
OTHER_WHAT = "What is it? In your own words; your coach reads it."
PAIN = "Any joint pain now, 0 (none) to 10?"
PAIN_SAID = "Pain {pain} of 10"

THANKS = "Good. A tired, slightly sore muscle eases as you move. See you next time."
