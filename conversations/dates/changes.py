"""Changes to what is planned: later, not today, skipped, moved."""

import re
from datetime import date, datetime, time, timedelta
from decimal import Decimal

from conversations.answers.lexing import vocabulary
from conversations.dates.days import Days, take_day, take_weekdays
from conversations.dates.meaning import Delay, Move, NotToday, OneTime, Problem, Setting, Skip, Stuck
from conversations.dates.plain import is_spent, take
from conversations.dates.schedule import SAME_TIME
from conversations.dates.spans import take_span
from conversations.dates.times import Times, take_times
from core.calendar.recurrence import Once, Span, monday, weekday_of

LONGEST_DELAY_MIN = 24 * 60  # min; from a day on it is another date
SHORTLY = timedelta(days=3)  # before the session that moves; own choice
SHORTEST_BARE_DELAY = 5  # "in 20" is minutes; "in 2" could be anything

AMOUNT = r"(\d{1,4}(?:[.,]\d)?)"
AND_MINUTES = r"(?: (?:and )?(\d{1,2})(?: ?(?:minutes?|mins?|m))?\b)?"
HOURS = re.compile(rf"\b(?:in )?{AMOUNT} ?(?:hours?|hrs?)\b{AND_MINUTES}")
IN_HOURS = re.compile(rf"\bin {AMOUNT} ?h\b()")
MINUTES = re.compile(r"\b(?:in )?(\d{1,4}) ?(?:minutes?|mins?|m)\b")
SMALL_HOUR = re.compile(r"^([1-4]) ?h ?([0-5]\d)?$")
BARE = re.compile(r"^in (\d{1,3})$")
DELAY_WORDS = vocabulary("later more another give need remind after from in wait")

MOVE = re.compile(
    r"^(?P<before>.*?)\b(?:move|shift|change|reschedule|swap|push|postpone|bring)\b"
    r"(?P<what>.*?)\b(?:to|for|until|with)\b(?P<to>.*)$"
)
INSTEAD = re.compile(r"^(?P<before>)(?P<to>.+?) instead of (?P<what>.+)$")
MOVE_WORDS = vocabulary("forward back over this next one")

NEGATED = re.compile(r"\b(?:dont|not|never|wont|cant|cannot)\b.*\b(?:skip|cancel|drop|miss|pause|move)\b")
NOT_WELL = re.compile(r"\bnot (?:so |too |very )?(?:good|great|well|fine|ok|okay|best)\b")
DROPPED = r"skip|skipping|cancel|drop|miss|missing|pause|away|holidays?|vacation|break"
SKIP = re.compile(
    rf"\b(?:{DROPPED}|travelling|traveling|off|no (?:training|sessions?|workouts?|exercise|time)"
    r"|not|cant|cannot|wont|dont|doesnt|unable|busy|ill|sick)\b"
)
# "Not tonight": today there is one session at most.
TODAY_AT = re.compile(r"\b(?:morning|afternoon|evening|night)\b")
NOT_UNTIL = re.compile(r"\bnot (?:until|till|til)\b")  # that day is the first one again
NEXT_ONE = re.compile(r"\bnext (?:session|training|workout|1|time)\b")
AROUND_SKIP = re.compile(r"\b(?:make|take|have|out|possible|free)\b")


def read_small_hour(text: str, setting: Setting) -> list[Delay | OneTime]:
    """ "1h" is in an hour, or one at night: nobody writes which; empty when the text is no such hour."""
    found = SMALL_HOUR.match(text)
    if found is None:
        return []
    hour, minute = int(found[1]), int(found[2] or 0)
    now = datetime.combine(setting.today, setting.clock)
    at = datetime.combine(setting.today, time(hour, minute))
    return [
        _delay(Decimal(hour * 60 + minute)),
        OneTime(Once(at if at > now else at + timedelta(days=1), setting.zone)),
    ]


def read_delay(text: str) -> Delay | None:
    """The delay of "in 20 minutes", "half an hour", "2 hours later"; None when the text is none."""
    bare = BARE.match(text)
    if bare is not None and int(bare[1]) >= SHORTEST_BARE_DELAY:
        return _delay(Decimal(bare[1]))
    for pattern, unit in ((HOURS, 60), (IN_HOURS, 60), (MINUTES, 1)):
        found, rest = take(pattern, text)
        if found is not None and _is_only(rest, DELAY_WORDS):
            extra = int(found[2] or 0) if unit == 60 else 0
            return _delay(Decimal(found[1].replace(",", ".")) * unit + extra)
    return None


def _delay(minutes: Decimal) -> Delay:
    if minutes < 1:
        raise Stuck(Problem.NO_IDEA)
    if minutes > LONGEST_DELAY_MIN:
        raise Stuck(Problem.TOO_FAR)
    return Delay(int(minutes))


def _is_only(rest: str, words: frozenset[str]) -> bool:
    return is_spent(" ".join(word for word in rest.split() if word.strip(".,!?") not in words))


def read_skip(text: str, setting: Setting) -> list[Skip | NotToday]:
    """What "skip this week", "not today", "away 3 to 10 jan" leave out; empty when the text skips nothing."""
    if not SKIP.search(text):
        return []
    if NEGATED.search(text) or NOT_WELL.search(text):
        raise Stuck(Problem.NO_IDEA)
    if is_spent(AROUND_SKIP.sub(" ", SKIP.sub(" ", NEXT_ONE.sub(" ", text)))) and NEXT_ONE.search(text):
        return [Skip(None)]
    dropped = re.search(rf"\b(?:{DROPPED})\b", text) is not None
    spans, rest = take_span(AROUND_SKIP.sub(" ", SKIP.sub(" ", text)), setting)
    rest = take_times(rest, setting)[1] if dropped else TODAY_AT.sub(" ", rest) if "today" in text else rest
    if not is_spent(rest):
        raise Stuck(Problem.NO_IDEA)
    if NOT_UNTIL.search(text):
        spans = tuple(
            Span(span.first, span.last - timedelta(days=1)) for span in spans if span.first < span.last
        )
    if not spans:
        raise Stuck(Problem.NO_DAY if dropped else Problem.NO_IDEA)
    today = Span(setting.today, setting.today)
    return [NotToday() if span == today and "today" in text else Skip(span) for span in spans]


def read_move(text: str, setting: Setting) -> list[Move]:
    """What "move thursday to friday" or "friday instead of thursday" moves; empty when nothing moves."""
    found = MOVE.search(text) or INSTEAD.search(text)
    if found is None:
        return []
    if not is_spent(found["before"]):
        raise Stuck(Problem.NO_IDEA)
    sources, _ = _part(found["what"], setting)
    targets, times = _part(found["to"], setting)
    if not targets and not times:
        raise Stuck(Problem.NO_IDEA)
    named = bool(take_weekdays(found["to"])[0]) and "next" not in found["to"]
    return [
        Move(source, to, at)
        for source in sources or (None,)
        for target in targets or (None,)
        for to in _targets(target, source, named, setting)
        for at in times or (None,)
    ]


def _part(text: str, setting: Setting) -> tuple[Days, Times]:
    """The day and time on one side of a move."""
    days, rest = take_day(SAME_TIME.sub(" ", text), setting)
    times, rest = take_times(rest, setting)
    if len(times) > 1 or not _is_only(rest, MOVE_WORDS):
        raise Stuck(Problem.NO_IDEA)
    return days, times[0] if times else ()


def _targets(
    target: date | None, source: date | None, named: bool, setting: Setting
) -> tuple[date | None, ...]:
    """A weekday means the one in the week of the session, unless that is past; then the next after it.

    Shortly before the session there may be one as well: "move monday to sunday" is the day before, or six days later.
    """
    if target is None or source is None or not named:
        return (target,)
    same_week = monday(source) + timedelta(days=weekday_of(target).number)
    if same_week < setting.today:
        return (same_week + timedelta(days=7),)
    earlier = same_week - timedelta(days=7)
    is_near = setting.today <= earlier and source - earlier <= SHORTLY
    return (earlier, same_week) if is_near else (same_week,)
