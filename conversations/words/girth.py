"""A girth told in the chat."""

TOO_SOON = (
    "Bands and training swell a limb for a while, so I don't keep this one. Measure before a session, at the same "
    "spot each time, tape flat and not pulled."
)
NOTED = "Noted: {limb} {girth:g} cm."
SMALL_CHANGE = " That is {change:+.1f} cm since {day}; less than {limit:.1f} cm may be the tape."
REAL_CHANGE = " That is {change:+.1f} cm since {day}, more than the tape's error."
