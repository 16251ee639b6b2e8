"""In which sense "stop" was said: it stops, unless it was clearly denied, asked about or put off."""

import re

from conversations.stopwords.found import Found
from conversations.stopwords.kinds import Sense
from conversations.stopwords.lexicon import grammar as words

DENIES_STOP = frozenset(words.DENIES_STOP.split())
BEFORE_STOP = frozenset(words.BEFORE_STOP.split())


def stop_denied(found: Found) -> Sense | None:
    """ "I don't want to stop"; a mere "no stop" stops."""
    if found.before.endswith(words.NO_NEED):
        return Sense.DENIED
    for word in reversed(found.before.split()):
        if word in DENIES_STOP:
            return Sense.PERHAPS if word == "cant" else Sense.DENIED
        if word not in BEFORE_STOP:
            return None
    return None


def stop_asked(found: Found) -> Sense | None:
    """ "do I stop at 15?", "I will stop if ...", "should I stop?"."""
    if re.search(words.STOP_ASKED, found.before):
        return Sense.SUPPOSED
    if re.search(words.IF_MINE, found.said_before):
        return Sense.PERHAPS
    if re.search(words.STOP_IF, found.said_before) or re.search(words.STOP_IF, f"{found.after}{found.later}"):
        return Sense.SUPPOSED
    if re.search(words.SHOULD_STOP, found.before) and re.search(words.AT_A_NUMBER, found.after):
        return Sense.SUPPOSED
    later = re.search(words.SHOULD_STOP, found.before) or re.search(words.STOP_LATER, found.after)
    return Sense.PERHAPS if later else None
