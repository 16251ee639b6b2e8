""" "I'm done for today": with bands on it ends the session; without them it is good news and no stop."""

import re

from conversations.answers.lexing import normal

_FIRST = r"(?:(?:ok(?:ay)?|sorry|no|so|i ?'?m|i am|we ?'?re|we are|i think|i ?'?ll be|all|that ?'?s|thats|that is|it|had)[ ,]+)*"
_DONE = r"(?:done|finished|through|it|all|enough) for (?:today|tonight|the day|this time)"
_NO_MORE = r"no more (?:sets |of this )?(?:for )?(?:today|tonight|this time)"
_WANTS = r"(?:let ?'?s |i(?: want to|'?d like to| wanna)? |can we |we )?"
_STOP_HERE = rf"{_WANTS}(?:stop|end it|leave it|finish) (?:right )?(?:here|there|for today)"
FINISHED = re.compile(rf"{_FIRST}(?:{_DONE}|{_NO_MORE}|{_STOP_HERE})(?: please| now| thanks| thank you)?\W*")


def says_finished(text: str) -> bool:
    """Whether the words say that this is all for today, and nothing more."""
    return FINISHED.fullmatch(normal(text)) is not None
