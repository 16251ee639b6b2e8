"""The pulse to walk below: the questions to the coach and what the client reads."""

PULSE = "Pulse for walks"
RESTING = "{name}'s pulse at rest, beats a minute? Sitting, after five quiet minutes. Like: 62"
HIGHEST = (
    "Their highest pulse as measured in a test, beats a minute? A formula from age doesn't count here. Not measured, or on "
    "a medicine that slows the heart: tap 'No limit'; then an easy pace at which they can talk is the limit."
)
NO_LIMIT = "No limit"
NOT_ABOVE = "The highest pulse is above the one at rest."
SET = (
    "{name} walks below {ceiling} beats a minute: half of the way from rest to the highest (Patterson et al. 2019). "
    "4 km/h costs about {mets:.1f} times rest (ACSM walking equation, from memory)."
)
UNSET = "No pulse limit for {name}: an easy pace at which they can talk."
BELOW = "Pulse below {ceiling}."
