"""The reminder of a session, and the day after a missed one."""

TIME = "Time for {plan}. Start when you're ready."
CHOICES = (("Start", "start"), ("In 30 min", "later"), ("Other time", "other"), ("Not today", "skip"))
OTHER = "When? Like: 18:30, or tomorrow 7."
AGREED = "Good, {when}."
SKIPPED = "No problem. The next one is in your plan."
MISSED = "Yesterday's {plan} didn't happen; that's fine. Do it today, or drop it?"
MISSED_CHOICES = (("Today", "start"), ("Drop it", "drop"))
DROPPED = "Dropped. On we go with the next one."
