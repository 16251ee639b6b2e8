"""The second reader: dateparser, for dates that the own grammar does not know. Only dates come from it.

Times of day are always read by the own grammar: dateparser 1.5 drops the 7 of "tomorrow at 7", gives now for
"tonight at 8", takes "18h" for 18 hours and "12" for a day in December. What it finds is always confirmed.
"""

import re
from datetime import date, datetime

from conversations.dates.days import within_reach
from conversations.dates.meaning import DayOrder, OneTime, Problem, Setting, Stuck
from conversations.dates.times import EXPLICIT, take_times
from core.calendar.recurrence import Once

WORDY = re.compile(r"[a-z]{3}.*\d|\d.*[a-z]{3}|[a-z]{3}.* [a-z]{3}")

SHORT_TIMES = re.compile(r"minute|hour|second")
# What dateparser leaves out as if it had not been said: "before 7pm" is not 7pm, "630 tomorrow" is a time.
LEFT_OUT = re.compile(
    r"\b(?:before|after|by|between|earlier|except)\b|[<>=→]|^(?:for |in )?(?:next|this) month$|\b(?!20\d\d\b)\d{3,}\b"
)


def read_by_dateparser(text: str, setting: Setting) -> list[OneTime]:
    """A date by dateparser with a time by the own grammar. Raises `Stuck` when either is missing."""
    times, rest = take_times(text, setting, EXPLICIT)
    rest = " ".join(rest.strip(" ,.").split())
    if len(times) > 1 or not WORDY.search(rest) or SHORT_TIMES.search(rest) or LEFT_OUT.search(rest):
        raise Stuck(Problem.NO_IDEA)
    day = within_reach(_date(rest, setting), setting.today)
    chosen = times[0] if times else (setting.usual,) if setting.usual else ()
    if not chosen:
        raise Stuck(Problem.NO_TIME)
    moments = [datetime.combine(day, at) for at in chosen]
    ahead = [moment for moment in moments if moment > datetime.combine(setting.today, setting.clock)]
    if not ahead:
        raise Stuck(Problem.IN_THE_PAST)
    return [OneTime(Once(moment, setting.zone)) for moment in ahead]


def _date(text: str, setting: Setting) -> date:
    # Imported here: it takes longer than everything else at start, and most phrases never get this far.
    import dateparser

    found = dateparser.parse(
        text,
        languages=["en"],
        settings={
            "DATE_ORDER": "MDY" if setting.order is DayOrder.MONTH_FIRST else "DMY",
            "PREFER_DATES_FROM": "future",
            "REQUIRE_PARTS": ["day"],
            "RELATIVE_BASE": datetime.combine(setting.today, setting.clock),
            "RETURN_AS_TIMEZONE_AWARE": False,
        },
    )
    if found is None:
        raise Stuck(Problem.NO_IDEA)
    return found.date()
