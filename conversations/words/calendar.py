"""Days and times: the file for the client's own calendar."""

TO_CALENDAR = "Into my calendar"
FILE = "training.ics"
FILE_TEXT = (
    "Your training days. Open the file and your calendar takes them in; after a change, ask for it again."
)
EVENT = "Training: {plan}"
NO_DAYS = "Your plan has no fixed days yet, so there is nothing to put into a calendar."
