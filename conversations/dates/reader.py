"""Phrases about dates and times in, one meaning, two to four readings, or a named problem out."""

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
from conversations.dates.plain import LONGEST, plain
from conversations.dates.schedule import read_schedule
from conversations.dates.spans import read_span
from core.calendar.zones import local

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
