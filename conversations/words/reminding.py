"""The reminder of a session, and the day after a missed one."""

TIME = "Time for {plan}. Start when you're ready."
CHOICES = (("Start", "start"), ("In 30 min", "later"), ("Other time", "other"), ("Not today", "skip"))
OTHER = "When? Like: 18:30, or tomorrow 7pm."
RIGHT = "{when}. Right?"
RIGHT_YES = "Yes"
RIGHT_NO = "Another time"
AGREED = "Good, {when}. I'll write then."
SKIPPED = "No problem, not today. The next one is in your plan."
MISSED = "Yesterday's {plan} didn't happen; that's fine. Do it now, move it, or drop it?"
MISSED_CHOICES = (("Now", "start"), ("Move it", "other"), ("Drop it", "drop"))
DROPPED = "Dropped, nothing to catch up on. On we go with the next one."
SESSION = "your session"  # for a plan without a name
