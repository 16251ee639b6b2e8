"""Whether words tell something, or are an answer and small talk."""

import re

from conversations.stopwords import read

WORD = re.compile(r"[^\W\d_]{2,}(?:['’][^\W\d_]+)*")
WORDS_OF_PROSE = 2
CHATTER = frozenset(
    """ok okay yes yeah yep no nope not sure thanks thank you cheers please coach hi hello hey morning evening
    good great fine nice lovely perfect super all done it is was that this and the my so very really now then bye
    well will do did sounds see later haha lol ready set sets rep reps about maybe kg left right sorry""".split()
)


def is_prose(text: str) -> bool:
    """Whether somebody tells something: two words or more beside small talk, and no mere "no pain"."""
    said = {word for word in WORD.findall(text.casefold()) if word not in CHATTER}
    denied = read(text).heard
    return len(said) >= WORDS_OF_PROSE and not denied
