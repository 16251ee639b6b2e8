"""A phrase made plain before it is read: figures for number words, one spelling for each word."""

import re

from conversations.answers.lexing import normal, vocabulary
from conversations.answers.numerals import TEENS, TENS, UNITS

LONGEST = 160  # characters; a longer text is a letter, not a date
NUMBERS = UNITS | TEENS | TENS
_TENS, _UNITS = "|".join(TENS), "|".join(UNITS)
COMPOUND = re.compile(rf"\b({_TENS})[ -]?({_UNITS})\b")
SINGLE = re.compile(rf"\b({'|'.join(NUMBERS)})\b")
DAY_NAMES = "mon|tue|wed|thu|fri|sat|sun"

# In order: later spellings rely on earlier ones.
SPELLINGS: tuple[tuple[str, str], ...] = (
    (r"\b([ap])\. ?m\b\.?", r"\1m"),
    (r"\bo'? ?clock\b", "oclock"),
    (r"\b(\d{1,2}) oclock ?(am|pm)\b", r"\1\2"),
    (r"(?<=[a-z])'s\b", ""),
    (r"'", ""),
    (r"\bi am\b", "im"),
    (r"[&+]", " and "),
    (r"@", " at "),
    (r"\b(tmrw|tmr|tmw|tomorow|tommorow|tommorrow|2morrow|tomoz)\b", "tomorrow"),
    (r"\btonight\b", "today evening"),
    (r"\bthis (morning|afternoon|evening)\b", r"today \1"),
    (r"\bnxt\b", "next"),
    (r"\bwks?\b", "weeks"),
    (r"\bhalf an hour\b", "30 minutes"),
    (r"\b(an|1) hour and a half\b", "90 minutes"),
    (r"\b(\d+) and a half hours\b", r"\1.5 hours"),
    (r"\b(three|3) quarters of an hour\b", "45 minutes"),
    (r"\ba quarter of an hour\b", "15 minutes"),
    (r"\ban hour\b", "1 hour"),
    (r"\ba (week|day|minute|month)\b", r"1 \1"),
    (r"\ba couple of\b", "2"),
    (r"\b(a )?fortnight\b", "2 weeks"),
    (r"\b(every day|everyday|daily|each day)\b", "every mon tue wed thu fri sat sun"),
    (r"\b(every weekday|(every |on )?weekdays)\b", "every mon tue wed thu fri"),
    (r"\b(every weekend|(on )?weekends)\b", "every sat sun"),
    (r"\bmwf\b", "mon wed fri"),
    (r"\b(every (other|2nd|second) week|every 2 weeks|fortnightly|alternate weeks)\b", "every 2 weeks"),
    (r"\b(every (other|2nd|second)|alternate)\b", "every 2 weeks"),
    (r"\bevery 3rd week\b", "every 3 weeks"),
    (r"\b(every|each) week\b|\bweekly\b", "every 1 weeks"),
    (r"\beach\b", "every"),
    (r"\b(mon|tues|wednes|thurs|fri|satur|sun)days\b", r"every \1day"),
    (r"\b(mon|tue|wed|thu|fri|sat|sun)(?:(?:s|nes|r|rs|ur)?day|s|rs|r)?\b", r"\1"),
    (r"\bevery every\b", "every"),
    (rf"\b({DAY_NAMES}) ?/ ?(?={DAY_NAMES})", r"\1, "),
    (r"\b(jan|feb)r?uary\b", r"\1"),
    (r"\b(mar|apr|jun|jul|aug)(?:ch|il|e|y|ust)\b", r"\1"),
    (r"\b(sep|oct|nov|dec)t?(?:ember|ober)?\b", r"\1"),
    (r"\bevery (morning|afternoon|evening|night)\b", r"every mon tue wed thu fri sat sun \1"),
    (r"\b(morning|afternoon|evening|night)s\b", r"every \1"),
    (r"\bevery every\b", "every"),
)
COMPILED = tuple((re.compile(pattern), spelling) for pattern, spelling in SPELLINGS)

# Words that may stand beside a date or time and change nothing about it.
FILLERS = vocabulary(
    "a about again also an and are around at be best better bit by can could day days do does exercise",
    "fine first for from good great how i id if ill im in instead is it its just let lets like make me my no",
    "now of ok okay on plan please prefer put remind same schedule session sessions set so sorry start that the",
    "then there time to train training us want we well will with work works workout would yes you your book",
)


def plain(text: str) -> str:
    """The phrase in lower case with figures, short day and month names and no apostrophes."""
    said = normal(text)
    said = COMPOUND.sub(lambda found: str(TENS[found[1]] + UNITS[found[2]]), said)
    said = SINGLE.sub(lambda found: str(NUMBERS[found[1]]), said)
    for pattern, spelling in COMPILED:
        said = pattern.sub(spelling, said)
    return " ".join(said.split())


def take(pattern: re.Pattern[str], text: str) -> tuple[re.Match[str] | None, str]:
    """The first match and the text without it."""
    found = pattern.search(text)
    return found, text if found is None else without(text, found)


def without(text: str, found: re.Match[str]) -> str:
    """The text with the match cut out."""
    return f"{text[: found.start()]} {text[found.end() :]}"


def is_spent(rest: str) -> bool:
    """Whether nothing but fillers and punctuation is left."""
    return not set(re.findall(r"[^\s.,;:!?()-]+", rest)) - FILLERS
