"""Stretches of dates: "this week", "3 to 10 jan", "from 3 jan for six weeks", "until friday"."""

import re
from dataclasses import replace
from datetime import date, timedelta

from conversations.dates.days import (
    AFTER_A_WORD,
    DAY,
    MONTH,
    MONTHS,
    Days,
    Patterns,
    dated,
    day_at,
    next_of_month,
    take_day,
)
from conversations.dates.meaning import DayOrder, Problem, Setting, Stuck
from conversations.dates.plain import is_spent, take
from core.calendar.recurrence import Span, Weekday, monday

Spans = tuple[Span, ...]

FROM = re.compile(r"\b(?:from|starting(?: from| on)?|beginning(?: on)?|as of|as from|since)(?: the)? ")
UNTIL = re.compile(r"(?:\b(?:until|till|til|up to|through|to|ending(?: on)?)|-)(?: the)? ?(?=[\w])")
# "In two weeks" is a day ahead, not a stretch of two weeks.
LENGTH = re.compile(r"(?<!\bin )\b(?:for )?(?:the next )?(\d{1,3}) (weeks?|days?)\b")
WEEK = re.compile(r"\b(this|next|the coming|coming|the whole|all) weeks?\b")
WEEKEND = re.compile(r"\b(?:(this|next|the|on the|at the) )?weekend\b")
SHORT_RANGE = re.compile(
    rf"\b(?:from )?{DAY}(?:st|nd|rd|th)? ?(?:-|to|until|till) ?{DAY}(?:st|nd|rd|th)? (?:of )?{MONTH}\b"
)
SHORT_RANGE_MONTH_FIRST = re.compile(rf"\b(?:from )?{MONTH} {DAY} ?(?:-|to|until|till) ?{DAY}\b")
DAYS_OF_MONTH = re.compile(
    rf"\b(?:from )?(?:the )?{DAY}(?:st|nd|rd|th) ?(?:-|to|until|till) ?(?:the )?{DAY}(?:st|nd|rd|th)\b"
    rf"(?! (?:of )?(?:the )?{MONTH})"
)
UNTIL_WORD = re.compile(r"\b(?:until|till|til|up to|ending(?: on)?)(?: the)? ")
TO = re.compile(r"(?:\b(?:to|through)|-) ?")
SUNDAY = Weekday.SUN.number


def take_span(text: str, setting: Setting) -> tuple[Spans, str]:
    """The readings of a stretch of dates (none: an empty tuple), and the text without it."""
    if setting.order is not None:
        return _take_span(text, setting)
    found: dict[Span, None] = {}
    rest, stuck = text, None
    for order in DayOrder:  # nobody writes the first date one way and the last the other
        try:
            spans, rest = _take_span(text, replace(setting, order=order))
            found |= dict.fromkeys(spans)
        except Stuck as problem:
            stuck = problem
    if stuck is not None and not found:
        raise stuck
    return tuple(found), rest


def _take_span(text: str, setting: Setting) -> tuple[Spans, str]:
    for reader in (_short_range, _week, _weekend, _from_until):
        spans, rest = reader(text, setting)
        if spans:
            return spans, rest
    return (), text


def read_span(text: str, setting: Setting) -> Spans:
    """The readings of a text that is nothing but a stretch of dates, else an empty tuple."""
    spans, rest = take_span(text, setting)
    return spans if spans and is_spent(rest) else ()


def _short_range(text: str, setting: Setting) -> tuple[Spans, str]:
    found, rest = take(SHORT_RANGE, text)
    if found is not None:
        return (_in_one_month(found[1], found[2], found[3], setting),), rest
    found, rest = take(SHORT_RANGE_MONTH_FIRST, text)
    if found is not None:
        return (_in_one_month(found[2], found[3], found[1], setting),), rest
    return _days_of_month(text, setting)


def _days_of_month(text: str, setting: Setting) -> tuple[Spans, str]:
    """ "The 24th to the 28th": the next 24th, and the first 28th after it."""
    found, rest = take(DAYS_OF_MONTH, text)
    if found is None:
        return (), text
    begin = next_of_month(int(found[1]), setting.today)
    return (span_of(begin, next_of_month(int(found[2]), begin)),), rest


def _in_one_month(first: str, last: str, month: str, setting: Setting) -> Span:
    begin = dated(int(first), MONTHS.index(month) + 1, None, setting)
    return span_of(begin, dated(int(last), MONTHS.index(month) + 1, str(begin.year), setting))


def _week(text: str, setting: Setting) -> tuple[Spans, str]:
    found, rest = take(WEEK, text)
    if found is None:
        return (), text
    this = Span(setting.today, monday(setting.today) + timedelta(days=6))
    following = _week_from(monday(setting.today) + timedelta(days=7))
    if found[1] == "next":
        return (following,), rest
    # On a Sunday "this week" may be the one that begins tomorrow.
    return ((this, following) if setting.today.weekday() == SUNDAY else (this,)), rest


def _week_from(first: date) -> Span:
    return Span(first, first + timedelta(days=6))


def _weekend(text: str, setting: Setting) -> tuple[Spans, str]:
    found, rest = take(WEEKEND, text)
    if found is None:
        return (), text
    saturday = monday(setting.today) + timedelta(days=5)
    if found[1] == "next":
        this, following = Span(saturday, saturday + timedelta(days=1)), saturday + timedelta(days=7)
        later = Span(following, following + timedelta(days=1))
        return ((this, later) if setting.today < saturday else (later,)), rest
    return (Span(max(saturday, setting.today), saturday + timedelta(days=1)),), rest


def _from_until(text: str, setting: Setting) -> tuple[Spans, str]:
    """A start, an end, a length; whatever is missing follows from the others or from today."""
    starts, rest = take_after(FROM, text, setting)
    if not starts and not LENGTH.search(rest) and not re.search(r"\b(until|till|til)\b", rest):
        starts, rest = take_day(rest, setting)
        if not starts:
            return (), text
    ends, rest = take_after(UNTIL, rest, setting)
    length, rest = take(LENGTH, rest) if not ends else (None, rest)
    if not (starts or ends or length):
        return (), text
    return tuple(_spans(starts or (setting.today,), ends, length)), rest


def _spans(starts: Days, ends: Days, length: re.Match[str] | None) -> list[Span]:
    if ends:
        return [span_of(start, following(end, start)) for start in starts for end in ends]
    days = int(length[1]) * (7 if length[2].startswith("week") else 1) if length else 1
    return [span_of(start, start + timedelta(days=days - 1)) for start in starts]


def following(end: date, start: date) -> date:
    """A weekday named as the end comes after the start: "from thursday to monday"."""
    while end < start and start - end < timedelta(days=7):
        end += timedelta(days=7)
    return end


def span_of(first: date, last: date) -> Span:
    """From `first` to `last`. Raises `Stuck` when they are the wrong way round or a year apart."""
    if last < first:
        raise Stuck(Problem.NO_SUCH_DATE)
    if last - first > timedelta(days=366):
        raise Stuck(Problem.TOO_FAR)
    return Span(first, last)


def take_after(
    word: re.Pattern[str], text: str, setting: Setting, patterns: Patterns = AFTER_A_WORD
) -> tuple[Days, str]:
    """The date that follows one of the words, with the word, and the text without both."""
    for found in word.finditer(text):
        days, end = day_at(text, found.end(), setting, patterns)
        if days:
            return days, f"{text[: found.start()]} {text[end:]}"
    return (), text
