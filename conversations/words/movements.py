"""What movements are called, three cues each, when the set is over, and how to breathe."""

NAMES = {
    "goblet_squat": "Goblet squat",
    "split_squat": "Split squat",
    "calf_raise": "Calf raise",
    "curl": "Curl",
    "one_arm_curl": "One-arm curl",
    "floor_press": "Floor press",
    "one_arm_row": "One-arm row",
    "push_up": "Push-up",
    "doorway_row": "Doorway row",
    "suspended_row": "Suspended row",
    "chair_squat": "Chair squat",
    "hip_bridge": "Hip bridge",
    "heel_raise": "Heel raise",
    "towel_curl": "Towel curl",
    "free_split_squat": "Split squat, no weight",
    "one_arm_towel_curl": "One-arm towel curl",
    "one_arm_doorway_row": "One-arm doorway row",
    "walk": "Walk",
}
CUES = {
    "goblet_squat": ("Weight close to the chest.", "Knees over the toes.", "Heels stay down."),
    "split_squat": ("Front foot flat.", "Straight down, straight up.", "Chest tall."),
    "calf_raise": ("A hand on the wall.", "All the way up.", "Down slowly, heels just off the floor."),
    "curl": ("Elbows at your sides.", "Down as slow as up.", "Wrists straight."),
    "one_arm_curl": ("Elbow at your side.", "Down as slow as up.", "The other arm rests."),
    "floor_press": ("Elbows touch the floor softly.", "Wrists straight.", "Both arms together."),
    "one_arm_row": ("Flat back, hand on a chair.", "Elbow to the hip.", "Shoulders level."),
    "push_up": ("Body in one line.", "Chest leads.", "Elbows half way out, not wide."),
    "doorway_row": ("Hold the frame firmly.", "Chest to the frame.", "Heels planted, body straight."),
    "suspended_row": ("Check the anchor first.", "Body straight as a board.", "Elbows past the ribs."),
    "chair_squat": ("Sit back, touch the chair, stand up.", "Feet under the knees.", "Chair against a wall."),
    "hip_bridge": ("Heels close.", "Squeeze at the top.", "Ribs down."),
    "heel_raise": ("Fingertips on the wall.", "All the way up.", "Down slowly, knees straight."),
    "towel_curl": ("Foot in the towel's loop.", "Curl against your own leg.", "Elbows at your sides."),
    "free_split_squat": ("A hand on the wall.", "Front foot flat.", "Straight down, straight up."),
    "one_arm_towel_curl": ("Foot in the towel's loop.", "Curl against your own leg.", "The other arm rests."),
    "one_arm_doorway_row": ("Hold the frame firmly.", "Elbow to the hip.", "The other arm rests."),
    "walk": ("Flat ground, phone with you.", "Tall and easy.", "A pace at which you can talk."),
}
STOP_WHEN = {
    "goblet_squat": "Stop when the heels lift or the back rounds.",
    "split_squat": "Stop when you wobble.",
    "calf_raise": "Stop when you only bounce.",
    "curl": "Stop when the back helps.",
    "one_arm_curl": "Stop when you lean or the back helps.",
    "floor_press": "Stop when one arm lags.",
    "one_arm_row": "Stop when you twist.",
    "push_up": "Stop when the hips sag.",
    "doorway_row": "Stop when the shoulders creep up or the grip slips.",
    "suspended_row": "Stop when the hips drop.",
    "chair_squat": "Stop when you drop into the chair.",
    "hip_bridge": "Stop when the back arches.",
    "heel_raise": "Stop when you only bounce.",
    "towel_curl": "Stop when the back helps.",
    "free_split_squat": "Stop when you wobble.",
    "one_arm_towel_curl": "Stop when you lean or the back helps.",
    "one_arm_doorway_row": "Stop when you twist or the grip slips.",
    "walk": "Stop when you feel unsure on your feet.",
}
_UP = "Breathe out on the way up."
_PULL = "Breathe out as you pull."
_PUSH = "Breathe out as you push."
BREATHING = {
    "goblet_squat": _UP,
    "split_squat": _UP,
    "calf_raise": _UP,
    "curl": _UP,
    "one_arm_curl": _UP,
    "floor_press": _PUSH,
    "one_arm_row": _PULL,
    "push_up": _PUSH,
    "doorway_row": _PULL,
    "suspended_row": _PULL,
    "chair_squat": _UP,
    "hip_bridge": _UP,
    "heel_raise": _UP,
    "towel_curl": _UP,
    "free_split_squat": _UP,
    "one_arm_towel_curl": _UP,
    "one_arm_doorway_row": _PULL,
    "walk": "Breathe as you like; you can still talk.",
}


def lesson(movement: str) -> str:
    """How a movement is done: cues, breathing, when to stop; "" for one without cues."""
    cues = CUES.get(movement, ())
    if not cues:
        return ""
    parts = [f"{NAMES[movement]}.", *cues, BREATHING.get(movement, ""), STOP_WHEN.get(movement, "")]
    return " ".join(part for part in parts if part)
