"""The morning after."""

HOW = "Good morning. How are the limbs after training?"
HOWS = (("All fine", "fine"), ("A bit sore", "sore"), ("Something else", "else"))
WHAT = "What is it?"
WHATS = (
    ("Far more sore than expected", "sore_out_of_proportion"),
    ("Dark urine", "dark_urine"),
    ("A limb feels weak", "weakness"),
    ("One arm or leg swollen, warm or painful", "one_sided_swelling"),
    ("Out of breath or chest pain", "breathless"),
    ("Still numb or tingling", "numb_next_day"),
    ("I fainted", "fainted"),
)
PAIN = "Pain this morning, 0 (none) to 10?"
EMERGENCY = "Call {number} now. Don't wait for your coach; they are being told too."
CLINICIAN = "Please see your own clinician today. No training until they and your coach say so. If it gets worse, call {number}."
COACH = "Rest today, drink enough. Your coach is told. If the urine turns dark or the limb weak, call your clinician today."
TOLD = {
    "sore_out_of_proportion": COACH,
    "dark_urine": CLINICIAN,
    "weakness": CLINICIAN,
    "one_sided_swelling": CLINICIAN,
    "breathless": EMERGENCY,
    "numb_next_day": CLINICIAN,
    "fainted": CLINICIAN,
}
THANKS = "Thank you. That's all."
NOT_SETTLED = "More than I'd like to see the morning after. Your coach is told and eases the next one."
