"""One A4 page: what it says in words, then attendance, pain, the movements, notes, sources."""

import io
from typing import Any

import msgspec

from bot.making import fonts
from bot.making.charts import GREY, INK
from bot.report.panels import attendance, movement, pain
from bot.report.text import cut, wrapped
from conversations.words import report as words
from core.report import Movement, Report

WIDTH_IN, HEIGHT_IN = 8.27, 11.69  # A4
DOTS_PER_INCH = 210  # of the PNG: 1736 x 2454, so that a phone can zoom in on the small print
LEFT, RIGHT, MIDDLE = 0.07, 0.95, 0.56  # of the text and of the right column, as shares of the width
AXIS = 0.03  # room for the numbers beside a chart
LINE_IN = (RIGHT - LEFT - 0.008) * WIDTH_IN  # dots make letters a little wider than their outlines
BODY_PT, SMALL_PT = 9, 6.8
LINE = 1.45  # from line to line, as a multiple of the size
FOOT = 0.142  # where the caution and the sources begin, as a share of the height
SMALL_CHART = 0.088  # height of attendance and pain, as a share of the page's
LOWEST, HIGHEST = 0.068, 0.19  # height of a movement's chart
OVER, UNDER = 0.024, 0.022  # room for a chart's title and its dates


def drawn(body: dict[str, Any], kind: str) -> bytes:
    """The page as "pdf" or "png". `body`: "report" (a `core.report.Report` as plain data) and the words around it:
    "name", "plan", "goal", "coach" and "notes", a list of lines; "code" stands for a name in letters that no font has.
    """
    from matplotlib import rc_context
    from matplotlib.figure import Figure  # half a second, and only for pictures

    name = (
        body["name"] if fonts.plain(body["name"]) else fonts.named(body["name"], body.get("code", fonts.GAP))
    )
    body = {**fonts.in_letters(body), "name": name}
    made = msgspec.convert(body["report"], Report)
    families = fonts.families(body)
    # Type 42: letters stay letters, so that the page can be searched; of other fonts any kind can only be drawn (3).
    fonttype = 42 if families == [fonts.USUAL] else 3
    with rc_context({"pdf.fonttype": fonttype, "font.family": families}):
        figure = Figure(figsize=(WIDTH_IN, HEIGHT_IN), dpi=DOTS_PER_INCH, facecolor="white")
        Page(figure).fill(made, body)
        out = io.BytesIO()
        figure.savefig(out, format=kind, metadata={"Title": words.TITLE.format(name=body["name"])})
    return out.getvalue()


class Page:
    """A figure filled from the top; `at` is how far down it is, as a share of the height from below."""

    def __init__(self, figure: Any) -> None:
        self.figure = figure
        self.at = 0.968

    def fill(self, made: Report, body: dict[str, Any]) -> None:
        """All of it."""
        self._head(made, body)
        self._heading(words.IN_SHORT)
        for line in words.in_short(made):
            self._bullet(_lines(line))
        self._small_charts(made)
        notes = [_lines(note) for note in body["notes"] or [words.NO_NOTES]]
        room = _height(10.5, 1) + _height(BODY_PT, sum(len(note) for note in notes)) + 0.014
        self._movements(made.movements, self.at - FOOT - room)
        self._heading(words.NOTES)
        self._notes(notes)
        self._foot()

    def _head(self, made: Report, body: dict[str, Any]) -> None:
        title = words.TITLE.format(name=body["name"])
        self._text(cut(title, 16, LINE_IN, bold=True), 16, weight="bold")
        self.at -= 0.008
        known = {key: body[key] or fonts.GAP for key in ("plan", "goal", "coach")}
        first, last = words.day(made.first), words.day(made.last)
        for line in wrapped(words.SUBTITLE.format(first=first, last=last, **known), BODY_PT, LINE_IN):
            self._text(line, BODY_PT, color=GREY)
        self.at -= 0.004
        self._rule()

    # --- words ---
    def _heading(self, text: str) -> None:
        self.at -= 0.010
        self._text(text, 10.5, weight="bold")

    def _bullet(self, lines: list[str]) -> None:
        self._text("–", BODY_PT)
        self.at += _height(BODY_PT, 1)
        for line in lines:
            self._text(line, BODY_PT, indent=0.016)

    def _text(self, text: str, size: float, indent: float = 0.0, **style: Any) -> None:
        """One line; the next one stands below it."""
        self.at -= _height(size, 1)
        style = {"color": INK, **style}
        self.figure.text(LEFT + indent, self.at, text, fontsize=size, va="bottom", parse_math=False, **style)

    def _rule(self) -> None:
        from matplotlib.lines import Line2D

        self.figure.add_artist(Line2D([LEFT, RIGHT], [self.at, self.at], color=GREY, linewidth=0.6))

    def _notes(self, notes: list[list[str]]) -> None:
        """The newest that fit above the foot."""
        fit, first = int((self.at - FOOT - 0.004) / _height(BODY_PT, 1)), len(notes)
        while first > 0 and fit >= len(notes[first - 1]) + (1 if first > 1 else 0):
            first -= 1
            fit -= len(notes[first])
        if first:
            self._text(words.EARLIER_NOTES.format(count=first), BODY_PT, color=GREY)
        for note in notes[first:]:
            self._bullet(note)

    # --- charts ---
    def _small_charts(self, made: Report) -> None:
        self.at -= OVER + 0.006
        attendance(self._axes(LEFT + AXIS, SMALL_CHART), made)
        pain(self._axes(MIDDLE, SMALL_CHART), made)
        self.at -= SMALL_CHART + UNDER

    def _axes(self, left: float, height: float) -> Any:
        return self.figure.add_axes((left, self.at - height, RIGHT - MIDDLE, height))

    def _movements(self, found: tuple[Movement, ...], free: float) -> None:
        """Up to four charts, two in a row, as high as `free` (a share of the page's height) allows."""
        shown, more = found[: words.MOST_MOVEMENTS], found[words.MOST_MOVEMENTS :]
        if not shown:
            return
        rows = -(-len(shown) // 2)
        free -= 0.010 + _height(10.5, 1) + _height(7.5, 1 + bool(more)) + rows * (OVER + UNDER)
        height = min(max(free / rows, LOWEST), HIGHEST)
        self._heading(words.MOVEMENTS_TITLE)
        self._text(words.LEGEND, 7.5, color=GREY)
        for row in range(rows):
            self.at -= OVER
            for left, one in zip((LEFT + AXIS, MIDDLE), shown[2 * row : 2 * row + 2], strict=False):
                movement(self._axes(left, height), one)
            self.at -= height + UNDER
        if more:
            names = words.MORE_MOVEMENTS.format(count=len(more), names=", ".join(one.name for one in more))
            self._text(cut(names, 7.5, LINE_IN), 7.5, color=GREY)

    def _foot(self) -> None:
        """At the bottom of the page: the caution, then the sources in small print."""
        self.at = FOOT
        self._rule()
        self.at -= 0.004
        for line in wrapped(words.CAUTION, 8.2, LINE_IN, bold=True):
            self._text(line, 8.2, weight="bold")
        self.at -= 0.004
        self._text(words.SOURCES_HEAD, SMALL_PT, color=GREY, weight="bold")
        for line in wrapped(words.SOURCES, SMALL_PT, LINE_IN):
            self._text(line, SMALL_PT, color=GREY)


def _lines(text: str) -> list[str]:
    return wrapped(text, BODY_PT, LINE_IN - 0.016 * WIDTH_IN)


def _height(size: float, lines: int) -> float:
    """Of so many lines of that size in pt, as a share of the page's height."""
    return lines * size * LINE / 72 / HEIGHT_IN
