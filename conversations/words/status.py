"""Short lines about a client, for the coach."""

NO_SESSION = "No session yet."
HELPED = "{helper} types for them"
NO_SETS = "no sets"
SESSION_LINE = "{day}: {sets}{ended}."
STOPPED, LEFT, NEVER_ON = " (stopped)", " (left without a word)", " (bands never on)"
WALKED = "walked {minutes:.0f} min"
OPEN_ALERT = "open alert"
WAITING = {
    "no_consent": "no consent",
    "not_screened": "answering the first questions",
    "not_cleared": "waits for your clearance",
    "declined": "declined",
    "held": "on hold",
    "do_not_start": "waits for your decision: do not start",
    "clearance_over": "clearance has run out",
    "limb_closed": "a limb was closed",
    "open_alert": "open alert",
    "no_second_contact": "waits until you say who else gets alerts",
    "paused": "paused",
    "no_plan": "cleared, no plan now",
}
DOING_WELL = "{sessions} done"
