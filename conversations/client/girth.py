"""A girth told in the chat: "girth left leg 54.5 cm"."""

import re

from conversations.answers.measures import centimetres
from core.cuffs.limbs import Limb

SAID = re.compile(
    r"^\W*girth\W+(?:of )?(?:my )?(left|right) (?:upper )?(arm|leg|thigh)\W+(.+)$", re.IGNORECASE
)
SMALLEST_CM, LARGEST_CM = 15, 100  # of an upper arm or thigh; as the limits of core.pressure


def read_girth(text: str) -> tuple[Limb, float] | None:
    """The limb and the girth in cm, None: the text is about something else. Raises `Unclear`."""
    found = SAID.match(text.strip())
    if found is None:
        return None
    part = "arm" if found[2].lower() == "arm" else "leg"
    limb = Limb(f"{found[1].lower()}_{part}")
    return limb, float(centimetres(found[3], SMALLEST_CM, LARGEST_CM))
