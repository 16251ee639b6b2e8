"""Phrases about dates and times in, one meaning, two to four readings, or a named problem out."""

import re
from collections.abc import Sequence
from datetime import datetime, time

from conversations.dates.changes import read_delay, read_move, read_skip, read_small_hour
from conversations.dates.fallback import read_by_dateparser
from conversations.dates.meaning import (
    Ambiguous,
    ClockFace,
    Dates,
    DayOrder,
    NotUnderstood,
    Problem,
    Reading,
    Setting,
    Stuck,
    Understood,
)
from conversations.dates.plain import DAY_NAMES, LONGEST, plain
from conversations.dates.schedule import read_schedule
from conversations.dates.spans import read_span
from core.calendar.zones import local

ONE_DAY = rf"{DAY_NAMES}|today|tomorrow"
OR_DAYS = re.compile(rf"\b({ONE_DAY}) or (?:on |this )?({ONE_DAY})()\b")
ONE_TIME = r"\d{1,2}(?:[:.][0-5]\d)?"
OR_TIMES = re.compile(rf"\b({ONE_TIME}) or (?:at )?({ONE_TIME})(?: ?(am|pm))?\b(?!/)")
MOST_READINGS = 4  # more buttons than this nobody reads


def read(
    text: str,
    now: datetime,
    zone: str,
    order: DayOrder | None = None,
    face: ClockFace = ClockFace.H24,
    usual: time | None = None,
) -> Reading:
    """What a phrase means to a client in `zone` at `now` (aware). Every result is to be said back.

    `order` None: not asked yet, so 3/4 has two readings. `usual` is the local time meant by "same time" and
    by a day without a time. Raises ValueError for a naive `now` or an unknown zone.
    """
    here = local(now, zone)
    setting = Setting(here.date(), here.time(), zone, order, face, usual)
    if len(text) > LONGEST:
        return NotUnderstood(Problem.NO_IDEA)
    try:
        return _settled(_read(plain(text), setting))
    except Stuck as stuck:
        return NotUnderstood(stuck.problem)


def _read(said: str, setting: Setting) -> Sequence[Understood]:
    """Each of two days or times that were left open, "monday or tuesday", is a reading."""
    found = OR_DAYS.search(said) or OR_TIMES.search(said)
    if found is None:
        return _read_one(said, setting)
    readings: list[Understood] = []
    stuck: Stuck | None = None
    for named in found.group(1, 2):
        try:
            readings += _read(f"{said[: found.start()]}{named}{found[3] or ''}{said[found.end() :]}", setting)
        except Stuck as problem:
            stuck = stuck or problem
    if stuck is not None and not readings:
        raise stuck
    return readings


def _read_one(said: str, setting: Setting) -> Sequence[Understood]:
    try:
        return _by_own_grammar(said, setting)
    except Stuck as stuck:
        if stuck.problem is not Problem.NO_IDEA:
            raise
        return read_by_dateparser(said, setting)


def _by_own_grammar(said: str, setting: Setting) -> Sequence[Understood]:
    delay = read_delay(said)
    if delay is not None:
        return (delay,)
    changes = read_small_hour(said, setting) or read_move(said, setting) or read_skip(said, setting)
    if changes:
        return changes
    spans = read_span(said, setting)
    stretches = [span for span in spans if span.first != span.last or "weekend" in said]
    return [Dates(span) for span in stretches] or read_schedule(said, setting)


def _settled(readings: Sequence[Understood]) -> Reading:
    different = tuple(dict.fromkeys(readings))
    return different[0] if len(different) == 1 else Ambiguous(different[:MOST_READINGS])
