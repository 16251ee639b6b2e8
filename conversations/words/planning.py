"""The coach makes a plan."""

TEMPLATES = {
    "dumbbells": "Dumbbells: goblet squat, curl",
    "one_dumbbell": "One dumbbell: goblet squat",
    "arms": "Arms: curl, floor press",
    "rehab_fixed": "Rehab: goblet squat, 30/15/15/15",
    "travel": "Travel: push-up, chair squat",
    "gentle": "Gentle: walk 10 min, chair squat",
    "weaker_side": "One-arm row, weaker side first",
}
TEMPLATE = "A plan for {name}. Which template?"
OWNED = "Which loads does {name} own? Like: 4, 6, 8, 10 kg, or 2-20 by 2 kg."
OWNED_DEFAULT = "2-20 by 2 kg"
START = "Start {movement} with which load? Or 'max 40': then about 30 % of it."
SIDE = "Which side is weaker?"
SIDES = (
    ("Left is weaker", "left,right"),
    ("Right is weaker", "right,left"),
    ("Left only", "left"),
    ("Right only", "right"),
)
WHEN = "Which days, what time ({zone})? Like: mon and thu 7pm."
WHEN_NONE = "No fixed days"
CONFIRM = "{plan}\n{when}\nSend it to {name}?"
SEND = "Send it"
AGAIN = "Start again"
SENT = "Sent to {name}."
NO_DAYS = "No fixed days."
