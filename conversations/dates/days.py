"""Dates in a phrase, each with its readings: "3/4" without a known order, "next friday" said on a Monday."""

import re
from calendar import monthrange
from collections.abc import Callable
from datetime import date, timedelta

from conversations.dates.meaning import DayOrder, Problem, Setting, Stuck
from conversations.dates.plain import DAY_NAMES, without
from core.calendar.recurrence import WEEK, Weekday, monday

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
FURTHEST = timedelta(days=2 * 365)  # nobody plans training further ahead; a slip of the year is asked back

Days = tuple[date, ...]
Reader = Callable[[re.Match[str], Setting], Days]
Patterns = tuple[tuple[re.Pattern[str], Reader], ...]

DAY = r"(0?[1-9]|[12]\d|3[01])"
MONTH = rf"({'|'.join(MONTHS)})"
YEAR = r"(20\d\d)"


def coming(weekday: Weekday, today: date) -> date:
    """The first such weekday from today on, today included."""
    return today + timedelta(days=(weekday.number - today.weekday()) % 7)


def on_date(year: int, month: int, day: int) -> date:
    """That date. Raises `Stuck` when the month has no such day."""
    try:
        return date(year, month, day)
    except ValueError:
        raise Stuck(Problem.NO_SUCH_DATE) from None


def dated(day: int, month: int, year: str | None, setting: Setting) -> date:
    """With the year said, else the next such date. Raises `Stuck` for the past and the far future."""
    if year is not None:
        return within_reach(on_date(2000 + int(year[-2:]), month, day), setting.today)
    years = range(setting.today.year, setting.today.year + 9)  # 29 February can be eight years away
    there_are = [date(year, month, day) for year in years if 1 <= day <= monthrange(year, month)[1]]
    coming_ones = [found for found in there_are if found >= setting.today]
    if not coming_ones:
        raise Stuck(Problem.NO_SUCH_DATE)
    return within_reach(coming_ones[0], setting.today)


def within_reach(day: date, today: date) -> date:
    """The date itself, unless it is past or too far off."""
    if day < today:
        raise Stuck(Problem.IN_THE_PAST)
    if day - today > FURTHEST:
        raise Stuck(Problem.TOO_FAR)
    return day


def _relative(found: re.Match[str], setting: Setting) -> Days:
    offsets = {"yesterday": -1, "today": 0, "tomorrow": 1}
    if found[1] == "yesterday":
        raise Stuck(Problem.IN_THE_PAST)
    return (setting.today + timedelta(days=offsets.get(found[1], 2)),)


def _iso(found: re.Match[str], setting: Setting) -> Days:
    return (within_reach(on_date(int(found[1]), int(found[2]), int(found[3])), setting.today),)


def _day_month(found: re.Match[str], setting: Setting) -> Days:
    return (dated(int(found[1]), MONTHS.index(found[2]) + 1, found[3], setting),)


def _month_day(found: re.Match[str], setting: Setting) -> Days:
    return (dated(int(found[2]), MONTHS.index(found[1]) + 1, found[3], setting),)


def _numeric(found: re.Match[str], setting: Setting) -> Days:
    """3/4 in the client's order; the other way round only when theirs is no date at all."""
    first, second, year = int(found[1]), int(found[2]), found[3]
    orders = {DayOrder.DAY_FIRST: (first, second), DayOrder.MONTH_FIRST: (second, first)}
    possible = {order: (day, month) for order, (day, month) in orders.items() if 1 <= month <= 12}
    if not possible:
        raise Stuck(Problem.NO_SUCH_DATE)
    if setting.order in possible:
        possible = {setting.order: possible[setting.order]}
    return tuple(dict.fromkeys(dated(day, month, year, setting) for day, month in possible.values()))


def _dotted(found: re.Match[str], setting: Setting) -> Days:
    """3.1. and 3.1.2027 are written day first everywhere that dots are used."""
    return (dated(int(found[1]), int(found[2]), found[3] or None, setting),)


def _ahead(found: re.Match[str], setting: Setting) -> Days:
    length = int(found[1]) * (7 if found[2].startswith("week") else 1)
    return (within_reach(setting.today + timedelta(days=length), setting.today),)


def _of_month(found: re.Match[str], setting: Setting) -> Days:
    return (next_of_month(int(found[1]), setting.today),)


def next_of_month(day: int, today: date) -> date:
    """The next 15th there is, for "the 15th"; today's counts."""
    for ahead in range(3):
        year, month = divmod(today.year * 12 + today.month - 1 + ahead, 12)
        try:
            if date(year, month + 1, day) >= today:
                return date(year, month + 1, day)
        except ValueError:
            continue
    raise Stuck(Problem.NO_SUCH_DATE)


def _weekday_in_weeks(found: re.Match[str], setting: Setting) -> Days:
    """So many weeks after the coming one: "friday week", "2 weeks from friday"."""
    weeks = int(found[1] or 1)
    return (coming(Weekday(found[2]), setting.today) + timedelta(weeks=weeks),)


def _weekday_next_week(found: re.Match[str], setting: Setting) -> Days:
    day = Weekday(found[1] or found[2])
    return (monday(setting.today) + timedelta(days=7 + day.number),)


def _weekday(found: re.Match[str], setting: Setting) -> Days:
    """The coming one; "next friday" is that only when it lies in next week, else it could be either."""
    day = coming(Weekday(found[2]), setting.today)
    if found[1] is None or found[1] != "next":
        return (day,)
    if day == setting.today:
        return (day + timedelta(days=7),)
    return (day,) if monday(day) > setting.today else (day, day + timedelta(days=7))


# "From next week mon and fri" begins with the week; the days are all of a list.
ALONE = rf"(?! ?(?:,|;|-|and|to|through)? ?(?:{DAY_NAMES})\b)"
CALENDAR_DATES: Patterns = tuple(
    (re.compile(pattern), reader)
    for pattern, reader in (
        (rf"\b{YEAR}-(\d\d)-(\d\d)\b", _iso),
        (rf"\b{DAY}(?:st|nd|rd|th)?[ -]?(?:of )?{MONTH}\b\.?(?:,? ?{YEAR}\b)?", _day_month),
        (rf"\b{MONTH}\b\.? ?(?:the )?{DAY}(?:st|nd|rd|th)?\b(?!:)(?:,? {YEAR}\b)?", _month_day),
        (r"\b(\d{1,2})-(\d{1,2})-((?:20)?\d\d)\b", _numeric),
        (r"\b(\d{1,2})/(\d{1,2})(?:/((?:20)?\d\d))?\b(?!/)", _numeric),
        (rf"\b{DAY}\.(0?[1-9]|1[0-2])\.((?:20)?\d\d)?(?!\d)", _dotted),
        (r"\b(2[4-9]|3[01])\.(0?[1-9]|1[0-2])()\b", _dotted),  # no hour, so no time
        (rf"\b(?:on )?(?:the )?{DAY}(?:st|nd|rd|th)\b", _of_month),
    )
)
NAMED_DAYS: Patterns = tuple(
    (re.compile(pattern), reader)
    for pattern, reader in (
        (r"\b(day after tomorrow|yesterday|today|tomorrow)\b", _relative),
        (r"\bin (\d{1,3}) (days?|weeks?)(?: time)?\b", _ahead),
        (r"\b(\d{1,2}) (days?|weeks?) from (?:now|today)\b", _ahead),
        (
            rf"\b(?:({DAY_NAMES}) (?:of )?next weeks?|next weeks? (?:on )?({DAY_NAMES}))\b{ALONE}",
            _weekday_next_week,
        ),
        (rf"\b(\d{{1,2}}) weeks? (?:on|from) ({DAY_NAMES})\b", _weekday_in_weeks),
        (rf"\b()({DAY_NAMES}) week\b", _weekday_in_weeks),
        (rf"\b(?:(this|next|coming|on) )?(?:coming )?({DAY_NAMES})\b", _weekday),
    )
)
ALL_DAYS = CALENDAR_DATES + NAMED_DAYS


def take_day(text: str, setting: Setting, patterns: Patterns = ALL_DAYS) -> tuple[Days, str]:
    """The readings of the first kind of date found (none: an empty tuple), and the text without it."""
    for pattern, reader in patterns:
        found = pattern.search(text)
        if found is not None:
            return reader(found, setting), without(text, found)
    return (), text


def _next_week(found: re.Match[str], setting: Setting) -> Days:
    return (monday(setting.today) + timedelta(days=7),)


# "From next week" means its Monday; "next week" by itself is seven days.
AFTER_A_WORD = (*ALL_DAYS, (re.compile(r"next weeks?\b"), _next_week))


def day_at(text: str, start: int, setting: Setting, patterns: Patterns) -> tuple[Days, int]:
    """The readings of a date that begins at `start`, and where it ends; an empty tuple when none does."""
    for pattern, reader in patterns:
        found = pattern.match(text, start)
        if found is not None:
            return reader(found, setting), found.end()
    return (), start


def take_weekdays(text: str) -> tuple[tuple[Weekday, ...], str]:
    """All weekdays named, ranges filled ("mon-fri"), in the order of the week; and the text without them."""
    days: set[Weekday] = set()
    for first, last in re.findall(rf"\b({DAY_NAMES}) ?(?:-|to|through) ?({DAY_NAMES})\b", text):
        start, end = WEEK.index(Weekday(first)), WEEK.index(Weekday(last))
        days |= {WEEK[(start + ahead) % 7] for ahead in range((end - start) % 7 + 1)}
    days |= {Weekday(name) for name in re.findall(rf"\b({DAY_NAMES})\b", text)}
    rest = re.sub(rf"\b({DAY_NAMES})(?: ?(?:-|to|through) ?({DAY_NAMES}))?\b", " ", text)
    return tuple(sorted(days, key=WEEK.index)), rest
