"""How often a client may train."""

from core.calendar.limits import USUAL, Limits

BUTTON = "How often"
AS_USUAL = "As usual again"
SESSIONS = "{number} a week"
HOURS = "{number} hours"
ASK_SESSIONS = (
    "{name} may train the same limbs {limits}. How many sessions a week at most? Usual is {usual}: "
    "muscles need the time between."
)
ASK_HOURS = "How many hours at least between two sessions of the same limbs?"
ASK_NOTE = "Why? One line, for the record."
NO_REASON = ("yes", "y", "ok", "no", "-")
LIMITS = "at most {sessions} times a week, {hours} hours apart"
UNCHANGED = "Good, all stays."
SET = "Noted: {name} may train the same limbs {limits}. It holds until you change it; the card shows it."
USUAL_AGAIN = "Noted: for {name} the usual limits hold again, {limits}."
CLIENT_MAY = "Your coach lets you train the same limbs {limits}. It is no must: rest when you need it."
CLIENT_USUAL = "From now on the usual rhythm holds again: the same limbs {limits}."
CARD = "May train {limits}: {note}"


def limits(allowed: Limits) -> str:
    """ "at most 4 times a week, 24 hours apart"."""
    return LIMITS.format(sessions=allowed.sessions_a_week, hours=allowed.hours_apart)


def ask_sessions(name: str, allowed: Limits) -> str:
    """The question, with what holds now."""
    return ASK_SESSIONS.format(name=name, limits=limits(allowed), usual=USUAL.sessions_a_week)


def told_coach(name: str, allowed: Limits) -> str:
    """What holds now."""
    return (USUAL_AGAIN if allowed == USUAL else SET).format(name=name, limits=limits(allowed))


def told_client(allowed: Limits) -> str:
    """The same, to the client."""
    return (CLIENT_USUAL if allowed == USUAL else CLIENT_MAY).format(limits=limits(allowed))
