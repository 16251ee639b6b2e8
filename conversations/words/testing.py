"""A strength test at home."""

BEGIN = (
    "Your coach would like one test set, so that your first load fits: {name}, without bands. Warm up well first. "
    "Not with a sore or irritable joint, brittle bones, or on a bad day; then leave it. Shall we?"
)
READY = "Warmed up, let's go"
LEAVE = "Leave it"
LOAD = (
    "Take a load you can lift 5 to {most} times in good form, not more. Stop when the form goes, breathe out on "
    "the effort. Which load do you take?"
)
HEAVIER = "More than {most} says little about your best. Rest three minutes, then take about a fifth more. Which load?"
REPS = "{load}: how many clean reps?"
THANKS = "Thank you. Your coach has the numbers and sends the plan."
LEFT = "Fine, no test. We start light instead; that works too. Your coach knows."

# --- to the coach ---
ASKED = "I ask {name} for a test set: {movement}. You get the numbers, then make the plan."
NOT_ADVISED = "No strength test for {name}: {why}. Start light instead."
WHY_NOT = {
    "rehab": "this is rehab",
    "after_surgery": "surgery lately",
    "osteoporosis": "osteoporosis",
    "high_blood_pressure": "high blood pressure",
    "irritable_joint": "an irritable joint",
    "not_cleared": "not cleared to train",
}
RESULT = "{name}, {movement}: {load} x {reps}. Best single lift about {best} ({low} to {high}); 30 % of it is {start}."
NO_RESULT = "{name} left the test for {movement}. A light start is fine, too."
NEW_PLAN = "Make the plan"
