"""Words of a training session: short, sure, what to do before why."""

from core.cuffs import Limb, Refill
from core.plans import Region
from core.safety.pain import Where

COLD_HAND = "Cold hand? Warm it first; cold is slow."
SPOT = {Region.ARMS: "the palm of that hand", Region.LEGS: "the thigh just above the kneecap"}
PLACE = {
    Region.ARMS: "high on the upper arm, close to the armpit",
    Region.LEGS: "high on the thigh, close to the groin",
}
TARGET = {Region.ARMS: "6", Region.LEGS: "6 to 7"}
BANDS_ON = (
    "{name}. Bands on: {place}, snug, {target} out of 10 tight (10 is the tightest you can imagine). "
    "Tap when they are on."
)
FIT_AGAIN = "{name}. Fit the bands anew: {place}, snug, {target} out of 10 tight. Tap when that's done."
LOOSER = "One new fit, a little looser than before. "
MAYBE_ON = "Are the bands on? Take them off if you stopped. Tap either way."
NOT_ON_LABEL = "Not on"
NOT_ON_YET = "Fine, no hurry. Tap when they are on; write stop if you'd rather leave it for today."
ON_TOO_EARLY = (
    "Too early: bands off again, please, and tap. Then {minutes} minutes without them, and I call you."
)
QUIET_SAID_MAYBE = 'No answer to "Are the bands on?"'
BANDS_ON_LABEL = "Bands are on"
BAND_ON_LABEL = "On: band {letter}"
MARK = "Band {letter} closes at {mark}."
TIGHTNESS = "How tight are they, 0 to 10? If one is tighter, take that one."
TIGHTNESS_CHOICES = (("5 or less", "5"), ("6", "6"), ("7", "7"), ("8", "8"), ("9 or 10", "9"))
REFILL = (
    "{limb}: press {spot} with your thumb for 5 seconds, let go, count. How long until the pale spot is gone?"
)
REFILL_LABELS = {
    Refill.UNDER_2: "Under 2 seconds",
    Refill.ABOUT_3: "About 3 seconds",
    Refill.LONGER: "Longer",
    Refill.CANT_SEE: "I can't see the spot",
}
CANT_SEE_ARMS = "{limb}: then press a fingernail instead, let go, count. How long until the colour is back?"
CANT_SEE_LEGS = "{limb}: then feel below the band. Is it as warm as before, and does it feel as before?"
CANT_SEE_NAIL = "I can't see that either"
WARM_LABELS = (("As before", "same"), ("Cooler or odd", "different"))
BAND_ON = (
    "{name}. One band only, on your {limb}: {place}, snug, {target} out of 10 tight (10 is the tightest you can "
    "imagine). The other side stays without. Tap when it is on."
)
LIMBS = {
    Limb.LEFT_ARM: "Left arm",
    Limb.RIGHT_ARM: "Right arm",
    Limb.LEFT_LEG: "Left leg",
    Limb.RIGHT_LEG: "Right leg",
}
FEELING = "How do they feel? A reddish skin is fine."
FEELING_LABELS = {
    "fine": "Fine",
    "tingling": "Tingling or numb",
    "colour": "Blue, white or cold",
    "pinching": "A band pinches",
    "slid": "A band slid down",
}
RIGHT = "Good fit, from what you tell me."
ANOTHER_BAND = "Good. Another band than last time, so the load stays as it is today."
SNUG_ARM = "Good. 7 is snug for an arm: a touch looser next time."
UNSEEN_GO_ON = (
    "Without that look, as your coach allowed. Cooler, tingling or odd at any time: bands off, and tell me."
)
LOOSE_AGAIN = "A bit loose. Open them, close them a touch tighter, and tap."
LOOSE_GO_ON = "Still loose, so we go on with that and leave the load alone today. Never tighten during a set."
LOOSEN = "Loosen it a little now. Tap when that's done and we check again."
SET_HIGH = "Open the one that slid, set it back: {place}. Close it, and tap."
SET_HIGH_LOOSER = "Open the one that slid, set it back: {place}. Close it looser than before, and tap."
SET_BACK = "No more reps now. Open the one that slid or came loose, set it back: {place}. Close it, and tap."
LOOSENED = "Loosened"
OFF_NOW = "Bands off now, both. Shake the limbs loose. Tap when they are off."
OFF_WHY = {
    "tingling": "Tingling or numb is never part of it.",
    "blue": "Blue, white or cold means too tight.",
    "numb": "Tingling or numb is never part of it.",
    "hurts": "A band may be felt. It may not hurt.",
    "feels_different": "Cooler or odd means too tight.",
    "far_too_tight": "That's too tight.",
}
ASK_COACH = "Where the spot can't be seen your coach decides first. No bands today; they will write."
FIT_LOOSER = "Then fit it looser. Take your time."
NEW_FIT = "{minutes} minutes off. I'll tell you when; then one new fit, looser."
TWICE = "That's twice, so no more bands today; your coach is told. If a limb still feels odd in 10 minutes, write."
GO_FIRST = "Set 1 of {total} · {name}{doing}. Aim: {aim} clean reps. {stop} {breathe} {loose}"
GO = "Go · set {set} · {aim}"
GO_ON_GENTLY = "Go · set {set} · {most} at most, stop with 3 to 5 left"
STOP_WHEN_FORM_GOES = "Stop when the form goes."
STOP_AT_NUMBER = "Stop at the number, or when the form goes."
SLOW = "Slow: 2 s up, 2 s down, no stop at either end."
GO_GENTLY = (
    "Set 1 of {total} · {name}{doing}. Gentle today: stop while 3 to 5 clean reps are left, at {most} at the latest. "
    "{breathe} {loose}"
)
BREATHE = "Breathe out on the effort."
SET_DONE = "Set done"
REPS = "Rest. How many clean reps?"
REPS_FIRST_SIDE = "Rest. {side}: how many clean reps?"
REPS_LAST = "How many clean reps?"
REPS_BANDS_OFF = "Good, bands off. That set is still open: how many clean reps?"
REPS_OF = "Set {n}: how many clean reps?"
REPS_SIDE = "{side}: how many clean reps?"
LOST_COUNT = "Lost count"
BEST_GUESS = "No matter. Your best guess?"
LEAVE_BLANK = "Leave it blank"
LEFT_BLANK = "Fine, we leave that one blank."
ONES = "Set {n}{side}: which number?"
NOTED = "{reps}, noted."
NOTED_IN_RANGE = "{reps}, in range."
NOTED_ABOVE = "{reps}, above the range. Strong."
NOTED_BELOW = "{reps}. That's what it is; honest counts move you on."
NOTED_FIXED = "{reps} done."
NOTED_SHORT = "{reps} of {aim}. Fine; we count what was clean."
ONLY_SIDE = ", {side}"
ALREADY = "Already noted: {reps}."
WHICH_SET = "{reps}: set {last} again, or set {next}?"
WHICH_MISSING = "{reps}: for set {last}, or set {next}?"
WHICH_SETS = "{reps} came while the line was slow: sets {sets}?"
SETS_N = "Sets {sets}"
WHICH_SIDE = "{reps}: for {next}, or {last} again instead of {was}?"
SIDES_SAID = ("left", "right")
SIDE_IS = "{side} {reps}"
ALREADY_READ = "{reps}: I have that. One tap on the question above, please."
SET_N = "Set {n}"
CHANGED = "Set {n} is {reps} now."
MANY_NOTED = "Noted: {sets}."
REST_LEFT = "{left} s to go"  # how long the rest is stands here only
QUIET = "All right? Bands off if not. Tap when the set is done."
ALL_RIGHT = "Good. Tap Set done when it is, or write again within a minute: after that I call your coach."
NOT_RIGHT_SAID = "Asked whether all is right: {said}"
QUIET_ALARM = "No answer, so I'm telling your coach. Bands off now, please. Tap when they are off."
QUIET_SAID = "No answer during set {set} of {name}, bands on"
MAYBE_ALARM = (
    "No answer, so I'm telling your coach. Bands off now, please, and tap. Never put them on? Say so: that ends "
    "the alarm."
)
NEVER_ON_LABEL = "They were never on"
NEVER_ON = "Good to know; I tell your coach that nothing was on. Write 'start' when you want to train."
BANDS_OFF = "Done. Bands off now, and tap."
BANDS_OFF_TIME = "Time's nearly up, so no more sets here. Bands off now, and tap."
OFF_FIRST = "Bands off first, please, and tap. If one won't come off, write: stuck."
OFF_ALREADY = "Off already? Tap when both are off."
BANDS_OFF_LABEL = "Bands are off"
OFF_JUST_NOW = "Your bands came off only just now. {minutes} minutes without first; I'll call you."
BREAK = "Good. {minutes} minutes without bands. Sip some water; I'll call you for {name}."
REPS_LEFT = "One thing: after set {set}, how many more clean reps could you have done?"
REPS_LEFT_LABELS = (("None", "0"), ("1 or 2", "2"), ("3", "3"), ("4", "4"), ("5 or more", "5"))
THANKS = "Thank you."
HURTS = "Stop moving. Where does it hurt?"
HURTS_LABELS = (
    ("Working muscle, a burn", Where.MUSCLE.value),
    ("A joint", Where.JOINT.value),
    ("Under the band", Where.BAND.value),
    ("Somewhere else", Where.ELSEWHERE.value),
)
BURN = "A burn in the working muscle is expected. Go on when you like, or stop here."
GO_ON = "Go on"
HURTS_OFF = "Then we stop here. Bands off now, and tap."
HURTS_SILENCE = "No answer, so bands off now, please. Tap when they are off."
HURTS_SAID = "{said}. Asked where: {answer}"
NO_ANSWER = "no answer"
NOT_A_NUMBER = "A number, please; for another set, the set first: set 1 21."
GO_COMES = "Rest. Go comes by itself."
RESTING = "Rest. Go comes by itself. To change a count, type the number."
IN_A_SET = "Tap Set done, or type the clean reps as a number. Something wrong? Say stop."
SETS_TO_GO = "{done} of {sets} sets done, {left} to go."
THEN_MORE = " Then {movements} more."
SAID_KEPT = "Kept. After the session I ask whether it goes to your coach."
GOOD_TO_HEAR = "Good to hear. The reps come as a number, when the set is done."
NO_HALVES = "Whole reps only. For two sets leave a space between the numbers."
TOO_MANY = "That is {numbers} numbers, and today has {sets} sets. One number a set, please."
NO_SUCH_SET = "There is no set {n} yet. Its number comes when it is done."
EDIT_OF_WHAT = "I saw you changed a message. Which set is it? Like: set 1 21."
EDIT_CHECK = "You changed an answer, so the band check once more from the top."
EDIT_UNCOUNTED = (
    "I saw you changed a message. If it was about the bands: too tight, tingling, numb, cold or blue, take them off "
    "and tell me."
)
CHANGE_ASK = "{reps}: change set {n} from {was} to that?"
CHANGE = "Set {n} is {reps}"
KEEP = "Leave it"
KEPT = "Left as it is."
NO_COUNT = "no count"
NOTHING_TO_COUNT = "No set has begun yet, so there is nothing to count."
LAPSED = "We leave it there for today. What you did is noted. Write 'start' for the next one."
LAPSED_UNCOUNTED = "Set {n} has no count yet. When you have it, write 'set {n}' and the number."
LAPSED_BANDED = "I close this session. If the bands are still on, take them off now and write 'off'. Your coach has been told."
WALK = "Walk {minutes} min at an easy pace, about {kmh} km/h. Phone with you, support or company near."
WALK_SHORTER = "Shorter than planned: the time of the check counts too."
WALK_LABEL = "I'm back"
WALK_TIME = "{minutes} minutes. Stop, sit or hold on to something. Bands off now, and tap."
OVER = {
    "done": "That's the work done.",
    "time": "The time with bands is up, so we end here. What you did counts.",
}
OVER_EARLY = "We leave it there for today."
SIDES = {"left": "Left", "right": "Right", "both": ""}
ONE_SIDE = " · {first} side"
BOTH_SIDES = " · {first} side first, then {second}"
STALE = "That one is done already."
QUIET_CHECK = "Still there? The bands are on. Off with them if anything is odd; else:"
QUIET_SAID_BURN = 'No answer after "it hurts: a burn", bands on'
QUIET_SAID_WALK = "No answer when the minutes of the walk were over, bands on"
QUIET_SAID_CHECK = "No answer during a band check, bands on"
BARRED = "No training just now: {why}. If bands are on, take them off."
RECHECK = "Quick look at the bands before set 2."
