"""A girth told in the chat."""

TOO_SOON = (
    "Bands and training swell a limb for a while, so I don't keep this one. Measure before a session, at the same "
    "spot each time, tape flat and not pulled."
)
GIRTH = "Girth"
WHICH_LIMB = "{name}'s girth: which limb?"
HOW_MANY_CM = "How many cm? Before training, at the same spot each time, tape flat and not pulled. Like: 54.5"
TOO_SOON_COACH = (
    "{name} trained less than two hours ago and the limb is still swollen, so I don't keep this one."
)
NOTED = "Noted: {limb} {girth:g} cm."
SMALL_CHANGE = " That is {change:+.1f} cm since {day}; less than {limit:.1f} cm may be the tape."
REAL_CHANGE = " That is {change:+.1f} cm since {day}, more than the tape's error."
