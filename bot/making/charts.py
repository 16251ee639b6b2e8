"""Small multiples of set-1 reps against the range they were done for, with a mark at every new load."""

import io
from datetime import date, timedelta
from typing import Any

from bot.making import fonts
from conversations.words import pictures as words
from core.plans import Aim

MOST_PANELS = 8
DOTS_PER_INCH = 200
WIDTH_IN, PANEL_IN, TITLE_IN = 5.4, 1.75, 0.7  # 1080 dots wide: a phone's width, so 10 pt stays legible
ONE_COLUMN = 2  # up to so many panels one below the other
LONGEST_LINE, LONGEST_DOING = 24, 14  # characters
LETTER, EDGE = 0.0135, 0.11  # width of a letter of 9 pt and of a margin, as shares of the whole width
TOP_REPS, ROOM = 50, 14  # the axis reaches so far at least, and so much above the highest point for the loads
BLUE, SAND, INK, GREY = "#0b5394", "#e6d5a8", "#222222", "#6b6b6b"  # also told apart in grey


def weekly_chart(data: dict[str, Any]) -> bytes:
    """PNG of `{"panels": [{"title", "days", "reps", "doing", "low", "high"}]}`; for a phone, light or dark.

    `title` is "name: movement", `days` ISO dates, `reps` of set 1, `doing` the load or rung, `low` to `high` the
    range each was done for (None: none is known), "held" whether it was held to it (missing: each was); all of one
    length. "code" stands for a name in letters that no font has (may be missing). "more": how many there are
    besides. Raises ValueError when there is nothing to draw.
    """
    there = [panel for panel in data["panels"] if panel["reps"]]
    panels = [_in_letters(panel) for panel in there[:MOST_PANELS]]
    if not panels:
        raise ValueError("panels: nothing to draw")
    from matplotlib import rc_context

    with rc_context({"font.family": fonts.families(panels)}):
        return _drawn(panels, len(there) + data.get("more", 0))


def _drawn(panels: list[dict[str, Any]], count: int) -> bytes:
    from matplotlib.figure import Figure  # half a second, and only for pictures

    columns = 1 if len(panels) <= ONE_COLUMN else 2
    rows = -(-len(panels) // columns)
    size = (WIDTH_IN, PANEL_IN * rows + TITLE_IN)
    figure = Figure(figsize=size, dpi=DOTS_PER_INCH, facecolor="white", layout="constrained")
    axes = figure.subplots(rows, columns, squeeze=False).flatten()
    for axis, panel in zip(axes, panels, strict=False):
        draw_panel(axis, panel, columns)
    for axis in axes[len(panels) :]:
        axis.set_visible(False)
    gentle = any(not all(panel.get("held", ())) for panel in panels)
    title = words.chart_title(len(panels), count, gentle=gentle)
    figure.suptitle(title, fontsize=10, color=INK)
    out = io.BytesIO()
    figure.savefig(out, format="png")
    return out.getvalue()


def _in_letters(panel: dict[str, Any]) -> dict[str, Any]:
    """A panel in letters that can be drawn: by its client's number where the name cannot."""
    name, colon, rest = panel["title"].partition(": ")
    shown = name if fonts.plain(name) else fonts.named(name, panel.get("code", fonts.GAP))
    return {**fonts.in_letters(panel), "title": f"{shown}{colon}{fonts.writable(rest)}"}


def draw_panel(axis: Any, panel: dict[str, Any], columns: int) -> None:
    """One client and movement; `columns` panels share the width."""
    days = [date.fromisoformat(day) for day in panel["days"]]
    reps, aims = panel["reps"], _aims(panel)
    top = max(TOP_REPS, *reps) + ROOM
    _shade(axis, days, aims)
    axis.plot(days, reps, "-", color=BLUE, linewidth=1.5)
    for day, count, aim, held in zip(days, reps, aims, panel.get("held", [True] * len(reps)), strict=True):
        fill = BLUE if not held or aim is None or aim.low <= count <= aim.high else "white"
        size = 6 if held else 3
        axis.plot([day], [count], "o", color=BLUE, markerfacecolor=fill, markersize=size, markeredgewidth=1.5)
    _load_steps(axis, days, panel["doing"], top, columns)
    axis.set_title(_title(panel["title"]), fontsize=10, color=INK, parse_math=False)
    axis.set_ylim(0, top)
    axis.set_ylabel(words.CHART_UNIT, fontsize=9, color=INK)
    axis.set_yticks(sorted({0, *(edge for aim in aims[-1:] if aim for edge in (aim.low, aim.high))}))
    axis.margins(x=0.14)  # EDGE of the whole width on each side
    if days[0] == days[-1]:  # one date has no width of its own
        axis.set_xlim(days[0] - timedelta(days=1), days[0] + timedelta(days=1))
    _dates(axis, days)


def _aims(panel: dict[str, Any]) -> list[Aim | None]:
    nothing = [None] * len(panel["reps"])
    pairs = zip(panel.get("low", nothing), panel.get("high", nothing), strict=True)
    return [None if low is None or high is None else Aim(low, high) for low, high in pairs]


def _shade(axis: Any, days: list[date], aims: list[Aim | None]) -> None:
    """The range of each day up to the next one; one range all the way is one band across the panel."""
    if len(set(aims)) == 1:
        if (aim := aims[0]) is not None:
            axis.axhspan(aim.low - 0.5, aim.high + 0.5, color=SAND, linewidth=0)
        return
    for begin, end, aim in zip(days, [*days[1:], days[-1] + timedelta(days=1)], aims, strict=True):
        if aim is not None:
            axis.fill_between(
                [begin, end], aim.low - 0.5, aim.high + 0.5, color=SAND, linewidth=0, zorder=0.5
            )


def _load_steps(axis: Any, days: list[date], doing: list[str], top: float, columns: int) -> None:
    """A thin line at every new load, the load at its top; a label that would touch the last one is left out."""
    span = max((days[-1] - days[0]).days, 1)
    last, taken = "", 0.0
    for day, what in zip(days, doing, strict=True):
        if what == last or not what:
            continue
        last = what
        axis.axvline(day, color=GREY, linewidth=0.8, linestyle=":", zorder=1.5)
        text = f" {_short(what.rpartition(', ')[2], LONGEST_DOING)} "  # "low chair", not "sit to stand, l…"
        width = len(text) * LETTER * columns
        at = EDGE + (1 - 2 * EDGE) * (day - days[0]).days / span if days[0] != days[-1] else 0.5
        left_of_line = at + width > 1
        begin = at - width if left_of_line else at
        if begin >= taken:
            side = "right" if left_of_line else "left"
            axis.text(day, top - 1, text, fontsize=9, color=INK, va="top", ha=side, parse_math=False)
            taken = begin + width


def _short(text: str, longest: int) -> str:
    return text if len(text) <= longest else f"{text[: longest - 1]}…"


def _title(title: str) -> str:
    name, _, movement = title.partition(": ")
    lines = [line for line in (name, movement) if line]
    return "\n".join(_short(line, LONGEST_LINE) for line in lines)


def _dates(axis: Any, days: list[date]) -> None:
    """First and last date only: more do not fit."""
    from matplotlib.dates import DateFormatter

    axis.set_xticks(sorted({days[0], days[-1]}))
    axis.xaxis.set_major_formatter(DateFormatter("%d %b"))  # type: ignore[no-untyped-call]
    axis.tick_params(labelsize=9, colors=INK)
    for side in ("top", "right"):
        axis.spines[side].set_visible(False)
