"""What movements are called, three cues each, and when to stop."""

NAMES = {
    "goblet_squat": "Goblet squat",
    "split_squat": "Split squat",
    "calf_raise": "Calf raise",
    "curl": "Dumbbell curl",
    "floor_press": "Floor press",
    "one_arm_row": "One-arm row",
    "push_up": "Push-up",
    "doorway_row": "Doorway row",
    "chair_squat": "Chair squat",
    "hip_bridge": "Hip bridge",
    "walk": "Walk",
}
CUES = {
    "goblet_squat": ("Weight close to the chest.", "Knees over the toes.", "Stop when the heels lift."),
    "split_squat": ("Front foot flat.", "Straight down, straight up.", "Stop when you wobble."),
    "calf_raise": ("A hand on the wall.", "All the way up.", "Stop when you only bounce."),
    "curl": ("Elbows at your sides.", "Down as slow as up.", "Stop when the back helps."),
    "floor_press": ("Elbows touch the floor softly.", "Wrists straight.", "Stop when one arm lags."),
    "one_arm_row": ("Flat back, hand on a chair.", "Elbow to the hip.", "Stop when you twist."),
    "push_up": ("Body in one line.", "Chest leads.", "Stop when the hips sag."),
    "doorway_row": ("Hold the frame firmly.", "Chest to the frame.", "Stop when the shoulders creep up."),
    "chair_squat": ("Sit back, touch the chair, stand up.", "Feet under the knees.", "Stop when you drop."),
    "hip_bridge": ("Heels close.", "Squeeze at the top.", "Stop when the back arches."),
    "walk": ("Flat ground, phone with you.", "Tall and easy.", "Stop when you feel unsure."),
}
