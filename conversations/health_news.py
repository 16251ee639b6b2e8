"""Health news that somebody tells of their own accord: pregnant, a new medicine, a diagnosis, a hospital stay.

It is asked about, never decided here; who is asked the same before each session loses nothing by a word not known.
"""

import re

from conversations.answers.lexing import normal

MEDICINES = (
    r"(?:blood ?thinners?|warfarin|tablets?|pills?|medicines?|medication|meds|statins?|insulin|steroids?|hormones?|hrt|"
    r"beta ?blockers?|testosterone|chemo\w*)"
)
SOME = r"(?:\w+ ){0,3}"
CLINICIAN = r"(?:doctor|gp|consultant|specialist|cardiologist|physio|physiotherapist|surgeon|nurse)"
# The yes that "ask your doctor, and tell your coach who said what" asks for: no news, but a line for the coach.
AGREED = re.compile(
    rf"\b{CLINICIAN} {SOME}(?:says?|said|thinks?|told me) (?:that )?(?:(?:it|this|that|i|training)(?:'?s|'?m| is| am)? )?"
    r"(?:yes|fine|ok|okay|good|allowed|(?:can|may) (?:train|exercise|start))\b"
)
NEWS = re.compile(
    r"\b(?:pregnan\w*|expecting a baby|hospital|surgery|operation|operated on|diagnosed|diagnosis|"
    rf"new (?:\w+ )?(?:{MEDICINES}|drugs?|prescription)|"
    rf"(?:start(?:ed|ing)?|prescribed|put me on|been put on|now on|now taking|i take|i am on|i'm on) {SOME}{MEDICINES}|"
    rf"(?:doctor|gp|consultant|specialist|cardiologist) {SOME}(?:says?|said|found|thinks?|told me))\b"
)
DENIED = re.compile(
    r"\b(?:no|not|never|without|nothing|cannot)\b|n't\b|\b(?:all (?:good|fine|clear)|nurse|work(?:s|ing)?)\b"
)


def told(text: str) -> bool:
    """Whether these words may be news about somebody's health; a denial is none."""
    said = AGREED.sub(" ", normal(text))
    return NEWS.search(said) is not None and DENIED.search(said) is None
