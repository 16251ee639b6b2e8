"""The review of a plan."""

REVIEW = "Review the plan"
NOTHING = "{name} has no plan to review."
HEAD = "Review, {name}: {weeks}, {sessions}."
PAIN = "Pain: at most {most} of 10, last {last}."
MISSED = "Missed in a row: {count}."
ASK = (
    "Back to heavier loads? Bands with light loads bridge a time; muscle and tendon want heavy ones again where joints "
    "and clinician allow. If a clinician set limits, ask them first."
)
HEAVIER = "Back to heavier loads"
GO_ON = "This plan goes on"
DID_HEAVIER = "back to heavier loads"
DID_GO_ON = "the plan goes on"
CLIENT_HEAVIER = (
    "Your coach wants to take you back to heavier loads, without bands. Don't begin by yourself: your coach tells you "
    "which and when."
)
HEAVIER_TOLD = "{name} has heard that heavier loads come next, and waits for your word. Like: to {name}: monday, leg press ..."
CLIENT_GO_ON = "Your coach has looked at what you reached. The plan goes on."
GOES_ON = "{name}'s plan goes on. The next review is due in 6 weeks."
