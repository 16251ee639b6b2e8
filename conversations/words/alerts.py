"""What an alert says to the coach and to the client, its buttons, and what may be typed for them."""

from datetime import timedelta

# Two lines are what a locked phone shows: who, what, bands, whom to call. All else stands below.
ALERT = "{name}: {cause}{banded}{again}\n{call}\n{said}\nTold: {told}\n{bands}{since}{also}{last}\n{reach}"
ALERT_BANDED = " · BANDS ON {long}"
ALERT_MAYBE = " · bands may be on, {long}"
ALERT_CALL = "Call {phone} · {alone}"
ALERT_NO_PHONE = "No phone on record, call {contact} · {alone}"
ALERT_ALONE = "alone? not said"
ALERT_NO_NUMBER = "No phone and no contact on record · {alone}"
ALERT_SAID = "Said {at}: {said}"
ALERT_SEEN = "Seen {at}: {said}"
ALERT_NEWEST = "\nNow {at}: {said}"
ALERT_COUNT = " (said {count} times)"
ALERT_BANDS_ON = "Bands: on since {at} ({long} by now), not said to be off\n"
ALERT_MAYBE_ON = "Bands: asked for at {at} ({long} ago); nobody said that they went on\n"
ALERT_BANDS_OFF = "Bands: off {at}, as they say\n"
ALERT_REACH = "Trains at {address} · contact: {contact} · emergency: {number}"
ALERT_SINCE = "Since then: {said}\n"
SAID_SINCE = '{at} "{said}"'
NOT_NUMB = "not numb any more"
ALERT_ALSO = "Also open: {causes}\n"
IN_MINUTES = 120  # above, whole hours


def how_long(time: timedelta) -> str:
    """ "8 min", "15 h"."""
    minutes = int(time.total_seconds() // 60)
    return f"{minutes} min" if minutes < IN_MINUTES else f"{minutes // 60} h"


ALERT_AGAIN = " · not answered yet ({times})"
CLEAR_TO_TRAIN = "Clear to train"
HOLD = "Hold"
ALERT_BUTTONS = (
    ("I am on it", "take"),
    ("Call noted", "call"),
    (CLEAR_TO_TRAIN, "settle"),
    (HOLD, "hold"),
)
# Typed words for the buttons above.
ALERT_TYPED = {
    "i am on it": "take",
    "i'm on it": "take",
    "im on it": "take",
    "on it": "take",
    "clear to train": "settle",
    "cleared to train": "settle",
    "hold": "hold",
    "put on hold": "hold",
}
NO_ALERT = "No alert is open."
WHICH_ALERT = "More than one alert is open. Which one?"
CALL_NOTE = "What came of the call? Type one line, and it stands in {name}'s log."
CALL_NOTE_KEPT = "In {name}'s log: {note}"
ALERT_TAKEN = "{coach} is on it: {name}, {cause}."
ALERT_STILL_OPEN = "Still open since you took it: {name}, {cause}. May they train again?"
SEEN_BY_CLINICIAN = "{name}, {cause}: has a clinician seen them about it? Without that there is no training."
SEEN_YES = "Yes, a clinician cleared it"
NEVER_ON = "{name} wrote: the bands were never on. That alert is closed; nothing to do."
ALERT_SETTLED = "Closed: {name}, {cause}."
CLIENT_LOOKED_AT = "Your coach has looked at it."
CLIENT_TRY_AGAIN = "Your coach has looked at it. You may train again when you feel well."
COACH_ON_IT = "{coach} has seen it and is on it."
COACH_SILENT = (
    "Your coach could not be reached yet. Don't wait: if it isn't clearly better, "
    "call your clinician, or {number}."
)
