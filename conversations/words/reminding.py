"""The reminder of a session, and the day after a missed one."""

TIME = "Time for {plan}. Start when you're ready."
TIME_AHEAD = "At {clock}: {plan}. Start when you're ready."  # true as well when it is asked again later on
TIME_LATE = "I'm late, sorry: {plan} was due at {clock}. Start when you're ready, or tell me another time."
CHOICES = (("Start", "start"), ("In 30 min", "later"), ("Other time", "other"), ("Not today", "skip"))
OTHER = "When? Like: 18:30, or tomorrow 7pm."
RIGHT = "{when}. Right?"
RIGHT_YES = "Yes"
RIGHT_NO = "Another time"
AGREED = "Good, {when}. I'll write then."
SKIPPED = "No problem, not today. The next one is in your plan."
MISSED = "Yesterday's {plan} didn't happen; that's fine. Do it now, move it, or drop it?"
AWAY_ONE = "I was away and did not remind you of {plan}, {when}. Sorry. Do it now, move it, or drop it?"
AWAY_MORE = (
    "I was away, and {count} sessions passed without a word from me, the last one {when}. Sorry; nothing to make up "
    "for. Do one now, move it, or drop it?"
)
MISSED_CHOICES = (("Now", "start"), ("Move it", "other"), ("Drop it", "drop"))
DROPPED = "Dropped, nothing to catch up on. On we go with the next one."
SESSION_SHORT = "session"
SESSION = "your session"  # for a plan without a name
