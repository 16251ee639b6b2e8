"""The client's bands."""

from core.plans import Region

LETTER = "Which band is this? Write its letter on it with a marker: A, B, C."
REGIONS = {Region.ARMS: "Upper arms", Region.LEGS: "Upper legs"}
REGION = "Where does it go?"
WIDTH = "How wide is it, in cm?"
GIRTH = {
    Region.ARMS: "How many cm is your arm around, where the band sits? Measured before training.",
    Region.LEGS: "How many cm is your thigh around, where the band sits? Measured before training.",
}
SKIP = "Skip"
START = (
    "An elastic band starts about {closer:.1f} cm tighter than the limb; then the check decides, never the number. "
    "It is for this band only."
)
MARK = "Where do you close it? Any mark you find again, like: third hole, or your pen mark."
NOTED = "Band {letter} is noted: {line}. Another one? Write 'bands' again."
LINE = "{region}, {width:g} cm wide{mark}"
MARKED = ", closes at {mark}"
ONE_IS_GONE = "One is lost or broken"
WHICH_GONE = "Which one shall I take off the list?"
NONE_IS = "None"
GONE = (
    "Band {letter} is off the list. Another one in its place? Write 'bands' and give it a letter of its own: "
    "the first time it is checked from scratch."
)
BUTTON = "Bands and company"
COACH_HEAD = "{name} trains with:"
COACH_LINE = "{letter}: {line}{last}"
LAST = " (the last one used)"
NO_BANDS = "No bands listed yet; the client writes 'bands'."
COMPANY = "When training: {company}."


def line(region: Region, width_cm: float, mark: str) -> str:
    """ "Upper legs, 7.5 cm wide, closes at third hole"."""
    return LINE.format(region=REGIONS[region], width=width_cm, mark=MARKED.format(mark=mark) if mark else "")
