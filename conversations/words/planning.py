"""The coach makes a plan."""

from conversations.words.movements import NAMES
from conversations.words.plan import tempo
from core.calendar.limits import Limits
from core.plans import Plan, Scheme

TEMPLATES = {
    "dumbbells": "Dumbbells: goblet squat, curl",
    "one_dumbbell": "One dumbbell: goblet squat",
    "arms": "Arms: curl, floor press",
    "rehab_fixed": "Rehab: goblet squat, 30/15/15/15",
    "rehab_arms": "Rehab arms: curl, 30/15/15/15",
    "travel": "Travel: push-up, chair squat",
    "gentle": "Gentle: walk 10 min, chair squat",
    "weaker_side": "One-arm row, weaker side first",
    "one_arm": "One arm: row, curl",
    "one_leg": "One leg: split squat",
    "rehab_one_arm": "Rehab one arm: curl, 30/15/15/15",
    "rehab_one_leg": "Rehab one leg: split squat, 30/15/15/15",
}
ONE_SIDED = "The {closed} stays without a band, so for that pair there is one-sided work on the {open} only."
REFUSED = "Not this one: it would put a band on the {closed}."
TEMPLATE = "A plan for {name}. Which template?"
NOT_CLEARED = "{name} is not cleared for arms or legs, so there is no plan to make yet. Clear first."
OWNED = (
    "Which loads does {name} own? Like: 4, 6, 8, 10 kg, or 2-20 by 2 kg, or bar 10 kg, plates 2x1.25 4x2.5. "
    "Exercise bands go easiest first: bands: yellow, red, black."
)
OWNED_DEFAULT = "2-20 by 2 kg"
OWNED_AS_NOW = "As now: {first} to {last}"
AS_NOW_TYPED = ("as now", "as before", "same", "the same")
UNIT = "Kilograms or pounds?"
UNITS = (("Kilograms", "kg"), ("Pounds", "lb"))
START = "Start {movement} with which load? Or 'max 40': then about 30 % of it."
START_BEST = "Start {movement} with which load? Best single lift {best}, so about {use}."
START_BAND = "Start {movement} with which exercise band?"
TEST_FIRST = "Ask for a test set first"
TOO_HEAVY = (
    "Even {lightest} is more than half of that maximum. Go back and add something lighter, "
    "or choose a load all the same."
)
SIDE = "Which side is weaker?"
SIDES = (
    ("Left is weaker", "left,right"),
    ("Right is weaker", "right,left"),
    ("Left only", "left_only"),
    ("Right only", "right_only"),
)
SIDES_TYPED = (
    *(
        (word, "left,right")
        for word in ("left", "l", "the left", "left one", "left side", "left arm", "left first")
    ),
    *(
        (word, "right,left")
        for word in ("right", "r", "the right", "right one", "right side", "right arm", "right first")
    ),
)
WHEN = "Which days, what time ({zone})? Like: mon and thu 7pm."
WHEN_NONE = "No fixed days"
# Read as if they were typed.
USUAL_DAYS = ("Mon and Thu 18:00", "Tue and Fri 18:00", "Mon, Wed and Fri 18:00")
NOT_WEEKLY = "That is one date. A plan repeats every week, like: mon and thu 7pm."
CONFIRM = "{plan}\n{when}\n{limits}\n{notes}Send it to {name}? Tap what shall be different."
LIMITS_LINE = "Bands on {minutes} min at most, {tempo}pain up to {ceiling} is fine while training."
SEND = "Send it"
NO_FAILURE = "Note: cleared without sets to failure, so these are fixed sets."
FROM_BEST = "Max {best} → {use}. Right?"
TAKE = "Yes, {use}"
TAKE_TYPED = ("yes", "y", "ok", "right", "yes please")
NO_TYPED = ("no", "n", "wrong", "another", "other")
ANOTHER_LOAD = "Another load"
OVER = "{when}: that is {limits}, for the same limbs. Why is it right for {name}? One line for the record; or other days."
AND = ", and "
OVER_LIMITS = {
    "sessions_a_week": "more than {most} sessions in seven days",
    "hours_apart": "less than {apart} h between sessions",
}
OTHER_DAYS = "Other days"
SEND_TYPED = ("yes", "y", "ok", "send", "yes please")
AGAIN = "Start again"
SENT = "Sent to {name}."
NO_DAYS = "No fixed days."
LEAVES_REHAB = "Note: so far this was rehab. These sets go on until the form goes."
# By core.calendar.limits.Limit value: the usual limit that these days would break.
LIMITS = {
    "sessions_a_week": "Note: more than {most} sessions in seven days for the same limbs.",
    "hours_apart": "Note: less than {apart} h between sessions for the same limbs.",
    "walks_a_day": "Note: more than one walk with bands a day.",
}


def named(text: str, allowed: Limits) -> str:
    """A limit in words, with the numbers that hold for this client."""
    return text.format(most=allowed.sessions_a_week, apart=allowed.hours_apart)


def limits_line(plan: Plan) -> str:
    """What a plan allows, in one line: "Bands on 10-15 min at most, 2 s up, 2 s down, pain up to 3 is fine"."""
    minutes = sorted({one.limit_min for one in plan.exercises})
    paces = _paces(plan)
    return LIMITS_LINE.format(
        minutes="-".join(str(each) for each in (minutes[0], *minutes[1:][-1:])),
        tempo=f"{paces}, " if paces else "",
        ceiling=plan.pain_ceiling,
    )


def _paces(plan: Plan) -> str:
    """How fast the reps are; with its movement each where they differ."""
    paced = [one for one in plan.exercises if one.scheme is not Scheme.WALK]
    if len({one.tempo_s for one in paced}) == 1:
        return tempo(paced[0].tempo_s)
    return "; ".join(f"{NAMES.get(one.movement, one.movement)} {tempo(one.tempo_s)}" for one in paced)
