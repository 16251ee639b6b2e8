"""What a dialogue is: events in, words and effects out, nothing else.

    advance(state, event, now) -> Turn(state, replies, effects, wake_at)

A dialogue keeps nothing between calls but its state, reads no clock and sends nothing. The engine stores
the state with the facts in one transaction and sends the words after the commit. A timer is `wake_at`, a
stored time, so a restart loses none.

Every event carries `at`, when it happened for the client; `now` is when it is handled. After an outage they
differ by hours, and rests and bands are counted from `at`.

A question has an id that is unique within its thread ("reps.1.2"). Buttons and replies name it, so a late
tap can be told from a fresh answer.
"""

from conversations.protocol.effects import (
    Alert,
    Begin,
    Countdown,
    Do,
    Effect,
    EndTraining,
    Record,
    Relay,
    ToldOff,
)
from conversations.protocol.events import (
    BandsCameOff,
    Barred,
    Cancelled,
    Corrected,
    Event,
    Halted,
    Hurts,
    Media,
    Opened,
    Resumed,
    Said,
    Sent,
    TimeIsUp,
    TooTight,
    WentBack,
    Woke,
)
from conversations.protocol.saying import Choice, Say
from conversations.protocol.turns import Dialogue, Turn

__all__ = [
    "Alert",
    "BandsCameOff",
    "Barred",
    "Begin",
    "Cancelled",
    "Choice",
    "Corrected",
    "Countdown",
    "Dialogue",
    "Do",
    "Effect",
    "EndTraining",
    "Event",
    "Halted",
    "Hurts",
    "Media",
    "Opened",
    "Record",
    "Relay",
    "Resumed",
    "Said",
    "Say",
    "Sent",
    "TimeIsUp",
    "ToldOff",
    "TooTight",
    "Turn",
    "WentBack",
    "Woke",
]
