"""When shall the session be? A choice, or a time in plain words that is said back before it holds.

Shared by the reminder and by the question after a missed session.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta

from conversations.answers import Unclear, pick
from conversations.dates import (
    Ambiguous,
    Delay,
    Move,
    NotToday,
    NotUnderstood,
    OneTime,
    Problem,
    read,
)
from conversations.dates.meaning import HowWritten, Reading, Understood
from conversations.protocol import Choice, Say
from conversations.words import dates as date_words
from conversations.words import reminding as words
from core.calendar.zones import instant, local


@dataclass(frozen=True, slots=True)
class Brief(HowWritten):
    """Which session: its local day (ISO), when it was due, in which zone. `again`: it was moved before.

    `late`: the reminder itself comes late; `ahead_min`: so many minutes before; `away`: so many sessions passed
    while nobody was running. `movements`: what is done in it, as the client calls it. `date_order`, `clock_face`:
    how the client writes dates and times, as stored; "" when never said.
    """

    plan_name: str = ""
    session_day: str = ""
    at: datetime | None = None
    zone: str = "UTC"
    again: bool = False
    late: bool = False
    ahead_min: int = 0
    away: int = 0
    movements: tuple[str, ...] = ()
    date_order: str = ""
    clock_face: str = ""


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `when`: one time, or several that the words could mean.

    `problem`: why the last words gave no time (a stored name of `conversations.dates.Problem`).
    """

    act: str | None = None
    when: tuple[datetime, ...] | None = None
    right: str | None = None
    problem: str | None = None


ANOTHER = Choice(words.RIGHT_NO, "another")
YES = Choice(words.RIGHT_YES, "0")
TYPED = (
    *(Choice(label, "0") for label in ("ok", "right", "correct", "yep")),
    *(Choice(label, "another") for label in ("no", "wrong", "other")),
)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.act is None:
        return "act"
    if draft.act != "other":
        return None
    if draft.when is None:
        return "when"
    return "right" if draft.right is None else None


def session_named(brief: Brief, otherwise: str) -> str:
    """ "walk and chair squat": the session by its movements, else by its plan's name."""
    *first, last = brief.movements or ("",)
    named = f"{', '.join(first)} and {last}" if first else last
    return named.lower() or brief.plan_name or otherwise


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """The words of "when" and "right"; "act" is the caller's."""
    if step == "when":
        text = date_words.NOT_UNDERSTOOD[Problem(draft.problem)] if draft.problem else words.OTHER
        return Say(text)
    times = draft.when or ()
    if len(times) == 1:
        return Say(words.RIGHT.format(when=shown(brief, times[0])), (YES, ANOTHER))
    return Say(date_words.WHICH_ONE, (*_options(brief, times), ANOTHER))


def _options(brief: Brief, times: Sequence[datetime]) -> tuple[Choice, ...]:
    return tuple(Choice(shown(brief, at), str(no)) for no, at in enumerate(times))


def shown(brief: Brief, at: datetime) -> str:
    """Weekday, date, time and zone, as the client's clock shows it."""
    return date_words.moment(at, brief.zone, brief.face, brief.order)


def fill_act(
    brief: Brief,
    draft: Draft,
    text: str,
    at: datetime,
    choices: Sequence[Choice],
    typed: Sequence[Choice],
    not_today: str,
) -> Draft:
    """A choice, or a time typed at once; `not_today` is what "not tonight" chooses. Raises `Unclear` when it is neither."""
    try:
        return replace(draft, act=pick(text, choices, typed))
    except Unclear:
        reading = _read(brief, text, at)
        if isinstance(reading, NotToday):
            return replace(draft, act=not_today)
        times = _times(brief, reading, at)
        if not times:
            raise
    return replace(draft, act="other", when=times, right=None)


def fill(brief: Brief, draft: Draft, step: str, text: str, at: datetime) -> Draft:
    """A time, or whether it was read right. Raises `Unclear`."""
    if step == "when":
        return _when(brief, draft, text, at)
    times = draft.when or ()
    options = (YES,) if len(times) == 1 else _options(brief, times)
    chosen = pick(text, (*options, ANOTHER), TYPED if len(times) == 1 else TYPED[-3:])
    if chosen == ANOTHER.value:
        return replace(draft, when=None, right=None, problem=None)
    return replace(draft, when=(times[int(chosen)],), right="yes")


def _when(brief: Brief, draft: Draft, text: str, at: datetime) -> Draft:
    reading = _read(brief, text, at)
    times = _times(brief, reading, at)
    if times:
        return replace(draft, when=times, right=None, problem=None)
    problem = reading.problem if isinstance(reading, NotUnderstood) else Problem.NO_TIME
    return replace(draft, problem=problem.value)


def _read(brief: Brief, text: str, at: datetime) -> Reading:
    """As the client writes dates and times: on a twelve-hour clock "6:30" is asked back."""
    return read(text, at, brief.zone, brief.order, brief.face, _usual(brief))


def _usual(brief: Brief) -> time | None:
    """The local time at which the session was due: "tomorrow, same time"."""
    return None if brief.at is None else local(brief.at, brief.zone).time()


def _times(brief: Brief, reading: Reading, now: datetime) -> tuple[datetime, ...]:
    """The coming instants that a reading can mean; none when it is no single time."""
    readings = reading.readings if isinstance(reading, Ambiguous) else (reading,)
    found = (_instant(brief, one, now) for one in readings if not isinstance(one, NotUnderstood))
    return tuple(dict.fromkeys(at for at in found if at is not None and at > now))


def _instant(brief: Brief, understood: Understood, now: datetime) -> datetime | None:
    match understood:
        case OneTime(once):
            return instant(once.at.date(), once.at.time(), once.zone)
        case Delay(minutes):
            return now + timedelta(minutes=minutes)
        case Move(_, to, clock):
            return _moved(brief, understood, now) if to is not None or clock is not None else None
        case _:
            return None


def _moved(brief: Brief, move: Move, now: datetime) -> datetime | None:
    """ "Move it to friday, same time": the day and the time that were not said stay as they are."""
    clock = move.at or _usual(brief)
    return None if clock is None else instant(move.to or local(now, brief.zone).date(), clock, brief.zone)
