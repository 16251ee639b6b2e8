"""The coach reads a screening and decides."""

TIERS = {
    "clear": "nothing of note",
    "coach_looks": "please look",
    "clinician_first": "their clinician first",
    "do_not_start": "do not start",
}
OPENING = "{name}'s answers: {tier}.{closed}\n{findings}\n\nThe program routes, it doesn't diagnose; you decide within your own licence."
CLOSED = " Closed whatever you decide: {limbs}. One closed limb closes its pair here."
NOTHING = "No answer stood out."
ANSWERS = "What mattered: {answers}"
PLAIN_FACTS = ("age", "weight", "height", "active")
DECIDE = "Your decision for {name}?"
DECISIONS = {
    "cleared": "Clear, arms and legs",
    "legs_only": "Legs only",
    "arms_only": "Arms only",
    "held": "Hold for now",
    "declined": "Decline",
}
CLINICIAN = "Which clinician said yes? Their name."
SAID_ON = "Which day did they say so? With the year, like 2 March 2026. Or: today."
LIMITS = "With which limits? 'none' is an answer."
EXPIRY = "Until when is that good? A day to come, with the year, like 30 June 2027."
NOTE = "A note for the record?"
NO_NOTE = "No note"
WITHOUT_NOTE = ("-", "no note", "no", "none", "skip")
DONE = "Noted for {name}: {decision}."
