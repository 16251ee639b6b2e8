"""The coach changes one part of a plan that is under way, and says why."""

CHANGE = "Change the plan"
CHANGE_PART = "What shall change in {name}'s plan?"
PARTS = (
    ("Load", "load"),
    ("Days", "days"),
    ("Movements", "movements"),
    ("Loads owned", "owned"),
    ("Sets", "scheme"),
    ("Tempo", "tempo"),
    ("Pain ceiling", "ceiling"),
    ("Minutes with bands", "minutes"),
    ("Weaker side", "side"),
)
WITH_EQUIPMENT = "A movement with a load"  # in a plan that has none
LOAD_TYPED = ("load", "loads", "weight", "weights", "starting load", "starting loads")
EQUIPMENT_TYPED = ("loads owned", "owned", "equipment", "dumbbells", "dumbbell", "exercise bands")
PARTS_TYPED = (
    *((word, "load") for word in LOAD_TYPED[1:]),
    *((word, "days") for word in ("day", "time", "times", "days and times")),
    *((word, "movements") for word in ("movement", "exercise", "exercises")),
    *((word, "owned") for word in EQUIPMENT_TYPED[1:]),
    *((word, "scheme") for word in ("set", "scheme", "reps")),
    *((word, "tempo") for word in ("speed", "pace")),
    *((word, "ceiling") for word in ("pain", "ceiling")),
    *((word, "minutes") for word in ("minutes", "limit")),
    *((word, "side") for word in ("side", "sides")),
)
BEFORE_A_PART = ("please", "change", "other", "another", "different", "new", "the", "a", "an")
CHANGE_MOVEMENT = "Which movement?"
CHANGE_LOAD = "{movement}, now {now}. To what?"
CHANGE_DAYS = "Which days, what time ({zone})? Like: mon and thu 7pm."
CHANGE_DAYS_UNCLEAR = "I couldn't read days there. A plan repeats every week, like: mon and thu 7pm."
CHANGE_CEILING = (
    "Pain up to what is fine while training, 0 to 10? Now {now}. Above 3 only if you know the joint."
)
CHANGE_SCHEME = "{movement}: which sets?"
CHANGE_TEMPO = "{movement}, now {now}. How fast is one rep?"
ADD_MOVEMENT = "Add one"
CHANGE_TO_WHICH = (
    "{movement}: out, or which one in its place? It begins with the lightest load; 'Load' changes that."
)
CHANGE_ADD = "Which movement comes in? It begins with the lightest load; 'Load' changes that."
TAKE_OUT = "Take it out"
CHANGE_OWNED = "{question} Now: {now}."
CHANGE_SIDE = "{movement}: which side is weaker?"
CHANGE_MINUTES = "{movement}: how many minutes with bands on at most? Now {now}, {most} is the most."
SCHEMES = (
    ("Open: 25-40, 10-20, 5-10", "open"),
    ("Fixed: 30, 15, 15, 15", "fixed"),
    ("Fixed, last one open: 30, 15, 15, 15-30", "fixed_open"),
)
SCHEME_NAMES = (
    ("open", "open sets, 25-40, 10-20, 5-10"),
    ("fixed", "fixed sets, 30, 15, 15, 15"),
    ("fixed_open", "fixed sets with the last one open, 30, 15, 15, 15-30"),
)
CHANGE_WHY = "{line}{note}\nWhy? One line; {name} reads it."
CHANGE_REASONS = (
    ("Going well", "It goes well."),
    ("Easier for now", "Easier for now."),
    ("Fits your week", "So that it fits your week."),
)
# After CHANGE_LOAD, by movement.
OWN_RUNGS = {
    "push_up": " Or a height of your own: hands 45 cm.",
    "suspended_row": " Or a lean of your own: lean 50 degrees.",
}
BETWEEN_MEASURED = " (its share of body weight is read between measured ones)"
LINE_LOAD = "{movement}: {was} → {now}."
LINE_DAYS = "Days: {days}."
LINE_CEILING = "Pain ceiling: {was} → {now}."
LINE_SCHEME = "{movement}: {now}."
LINE_TEMPO = "{movement}: {was} → {now}."
LINE_IN = "New: {now}."
LINE_SWAP = "{was} goes; new: {now}."
LINE_OUT = "{was} goes."
LINE_OWNED = "To train with: {now}."
LINE_SIDE = "{movement}: {now}."
LINE_MINUTES = "{movement}: {was} → {now} min with bands."
CHANGE_SENT = "Sent to {name}; it holds from the next session on."
CLIENT_CHANGED = "Your coach changed your plan. {line} Why: {why}"
NOTHING_TO_CHANGE = "{name} has no plan to change. 'New plan' makes one."
