"""The charts of the report: attendance by week, pain by day, reps of set 1 by day."""

from datetime import date, timedelta
from itertools import groupby
from typing import Any

from bot.making.charts import BLUE, GREY, INK, SAND
from conversations.words import report as words
from core.report import First, Movement, Report

ORANGE = "#c55a11"  # beside BLUE also told apart in grey and by whoever sees no red or green
TITLE_PT, LABEL_PT = 9, 8
ROOM = 1.28  # of the highest point, for the loads above it
LEAST_TOP = 45  # reps
MOST_TICKS = 5
LETTER = 0.024  # width of a letter of 7.5 pt, as a share of a chart's width


def attendance(axis: Any, made: Report) -> None:
    """Bars by week: planned as an outline, done filled."""
    _title(axis, words.ATTENDANCE_TITLE)
    if not made.weeks:
        _empty(axis, words.NO_SESSIONS)
        return
    places = range(len(made.weeks))
    planned, done = [week.planned for week in made.weeks], [week.done for week in made.weeks]
    axis.bar(places, planned, 0.62, facecolor="white", edgecolor=GREY, linewidth=1.2, label=words.PLANNED)
    axis.bar(places, done, 0.62, color=BLUE, label=words.DONE)
    axis.set_ylim(0, max(*planned, 1) + 1.1)
    axis.set_yticks(range(max(planned) + 1))
    axis.set_xlim(-0.8, len(made.weeks) - 0.2)
    some = places[:: -(-len(made.weeks) // MOST_TICKS)]
    axis.set_xticks(some, [_short(made.weeks[place].monday) for place in some])
    _legend(axis, 2)
    _plain(axis)


def pain(axis: Any, made: Report) -> None:
    """Before, after and the next morning, by day."""
    _title(axis, words.PAIN_TITLE)
    if not made.pain:
        _empty(axis, words.NO_PAIN)
        return
    # Each smaller than the one below it, so that equal scores do not hide one another.
    marks = (("o-", BLUE, "before", 6.5), ("s--", ORANGE, "after", 4), ("^:", GREY, "morning", 2.5))
    for (style, colour, part, size), label in zip(marks, words.PAIN_PARTS, strict=True):
        points = [(date.fromisoformat(one.day), getattr(one, part)) for one in made.pain]
        known = [(day, score) for day, score in points if score is not None]
        if known:
            axis.plot(
                *zip(*known, strict=True), style, color=colour, markersize=size, linewidth=1.1, label=label
            )
    axis.set_ylim(-0.5, 13)
    axis.set_yticks([0, 3, 5, 10])
    _dates(axis, [date.fromisoformat(one.day) for one in made.pain])
    _legend(axis, 3)
    _plain(axis)


def movement(axis: Any, one: Movement) -> None:
    """Set 1 by day: the range wanted, the range expected, what it was, and every new load."""
    days = [date.fromisoformat(first.day) for first in one.firsts]
    tops = (max(first.reps, first.high or 0, first.expected_high or 0) for first in one.firsts)
    highest = max(LEAST_TOP, *tops)
    _title(axis, one.name)
    _wanted(axis, days, one.firsts)
    for day, first in zip(days, one.firsts, strict=True):
        if first.expected_low is not None:
            axis.plot(
                [day, day], [first.expected_low, first.expected_high], color=GREY, linewidth=4, alpha=0.45
            )
    axis.plot(days, [first.reps for first in one.firsts], "-", color=BLUE, linewidth=1.1)
    for day, first in zip(days, one.firsts, strict=True):
        fill = BLUE if _fits(first) else "white"
        axis.plot(
            [day], [first.reps], "o", color=BLUE, markerfacecolor=fill, markersize=4.5, markeredgewidth=1.2
        )
    axis.set_ylim(0, highest * ROOM)
    last = one.firsts[-1]
    axis.set_yticks(sorted({0, *(edge for edge in (last.low, last.high) if edge is not None)}))
    axis.set_ylabel("reps", fontsize=LABEL_PT, color=INK)
    _dates(axis, days)
    _loads(axis, days, one.firsts, highest * ROOM)
    _plain(axis)


def _fits(first: First) -> bool:
    if first.low is None or first.high is None:
        return True
    return first.low <= first.reps and (first.reps <= first.high or first.low == first.high)


def _wanted(axis: Any, days: list[date], firsts: tuple[First, ...]) -> None:
    """The range from the day it began to hold up to the next one."""
    for (low, high), group in groupby(
        zip(days, firsts, strict=True), key=lambda pair: (pair[1].low, pair[1].high)
    ):
        held = [day for day, _ in group]
        later = [day for day in days if day > held[-1]]
        end = later[0] if later else held[-1] + timedelta(days=1)
        if low is not None and high is not None:
            axis.fill_between([held[0], end], low - 0.5, high + 0.5, color=SAND, linewidth=0, zorder=0.5)


def _loads(axis: Any, days: list[date], firsts: tuple[First, ...], top: float) -> None:
    """A thin line at every new load with the load beside it, lower where it would touch the last one."""
    low, high = axis.get_xlim()
    last, taken = None, [0.0, 0.0]
    for day, first in zip(days, firsts, strict=True):
        what = first.doing.rpartition(", ")[2]
        if what == last or not what:
            continue
        last = what
        at = ((day - date(1970, 1, 1)).days - low) / (high - low)  # dates are days since 1970 there
        width = (len(what) + 2) * LETTER
        axis.axvline(day, color=GREY, linewidth=0.7, linestyle=":", zorder=1.5)
        side = "left" if at + width <= 1 else "right"
        begin = at if side == "left" else at - width
        row = next((row for row, used in enumerate(taken) if begin >= used), None)
        if row is not None:
            height = top * (0.99 - 0.09 * row)
            axis.text(day, height, f" {what} ", fontsize=7.5, color=INK, va="top", ha=side, parse_math=False)
            taken[row] = begin + width


def _dates(axis: Any, days: list[date]) -> None:
    first, last = min(days), max(days)
    edge = max((last - first) * 0.08, timedelta(days=1))
    axis.set_xlim(first - edge, last + edge)
    axis.set_xticks(sorted({first, last}), [_short(day.isoformat()) for day in sorted({first, last})])


def _short(iso: str) -> str:
    on = date.fromisoformat(iso)
    return f"{on.day} {on:%b}"


def _title(axis: Any, text: str) -> None:
    axis.set_title(text, fontsize=TITLE_PT, color=INK, loc="left", pad=3, parse_math=False)


def _legend(axis: Any, columns: int) -> None:
    axis.legend(
        loc="upper right", ncols=columns, fontsize=7, frameon=False, borderaxespad=0, handlelength=1.6
    )


def _empty(axis: Any, text: str) -> None:
    axis.axis("off")
    axis.text(0, 0.8, text, fontsize=LABEL_PT, color=GREY, va="top", transform=axis.transAxes)


def _plain(axis: Any) -> None:
    axis.tick_params(labelsize=LABEL_PT, colors=INK, length=2)
    for side in ("top", "right"):
        axis.spines[side].set_visible(False)
