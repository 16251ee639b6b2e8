"""The report's page: one A4, everything on it, nothing over its edge or over other words."""

import struct
from datetime import date, timedelta
from itertools import pairwise
from typing import Any

import msgspec
import pytest
from matplotlib.figure import Figure

from bot.report import drawn
from bot.report.page import FOOT, Page
from bot.report.text import cut, width, wrapped
from conversations.words import report as words
from core.report import Report

WIDE, HIGH = 8.27 * 150, 11.69 * 150  # dots
LONG_NAME = "Aleksandra Maximiliana von Oberwallenstein-Hohenfels-Überlingen"


def first(number: int, doing: str) -> dict[str, Any]:
    """Set 1 of a session."""
    day = date(2026, 1, 5) + timedelta(days=4 * number)
    known = number > 1
    return {
        "day": day.isoformat(),
        "reps": 24 + 3 * number % 20,
        "doing": doing,
        "low": 25 if known else None,
        "high": 40 if known else None,
        "expected_low": 22 if known else None,
        "expected_high": 36 if known else None,
    }


def movement(name: str, loads: list[str]) -> dict[str, Any]:
    """A movement of ten sessions."""
    firsts = [first(number, loads[number * len(loads) // 10]) for number in range(10)]
    counts = {
        "sessions": 10,
        "reps": 400,
        "in_range": 5,
        "ranged": 8,
        "full": 0,
        "fixed": 0,
        "as_expected": 6,
        "expected": 8,
    }
    return {"name": name, "firsts": firsts, **counts, "at_load": loads[-1], "percent": 14.0, "sure": True}


def body(movements: int = 2, notes: int = 2, name: str = "Ruta") -> dict[str, Any]:
    """What the engine gives."""
    weeks = [
        {"monday": (date(2026, 1, 5) + timedelta(weeks=n)).isoformat(), "planned": 3, "done": n % 3}
        for n in range(8)
    ]
    pain = [{"day": first(n, "")["day"], "before": n % 4, "after": 3, "morning": None} for n in range(10)]
    made: dict[str, Any] = {
        "first": "2026-01-05",
        "last": "2026-02-27",
        "planned": 16,
        "done": 11,
        "sessions": 12,
        "stopped": 2,
        "weeks": weeks,
        "movements": [
            movement(f"Goblet squat, left, number {n}", ["8 kg", "10 kg", "12.5 kg"])
            for n in range(movements)
        ],
        "walks": 3,
        "walk_minutes": 30.0,
        "pain": pain,
        "pain_trend": {"first": 3.5, "last": 1.0, "change": "down"},
        "effort": 7.1,
        "checks": {"looks": 44, "passed": 40, "loosened": 3, "stopped": 1, "tightness": 6.4},
        "girths": [],
    }
    note = (
        "5 January 2026: Cleared for arms and legs: spoke with the surgeon's office by phone; starts gently."
    )
    return {
        "report": made,
        "name": name,
        "plan": "dumbbells",
        "goal": "rehab",
        "coach": "Coach",
        "notes": [note] * notes,
    }


def test_the_pdf_is_one_page_of_a4() -> None:
    data = drawn(body(), "pdf")
    assert data.startswith(b"%PDF")
    assert data.count(b"/Type /Page\n") + data.count(b"/Type /Page ") == 1
    assert b"595.44 841.68" in data  # points: 8.27 x 11.69 in


def test_the_png_is_white_and_large_enough_to_read() -> None:
    data = drawn(body(), "png")
    assert struct.unpack(">II", data[16:24]) == (1736, 2454)


@pytest.mark.parametrize(
    ("movements", "notes", "name"),
    [(0, 0, "Ruta"), (1, 1, "Ruta"), (2, 30, "Ruta"), (4, 0, "Ruta"), (7, 40, LONG_NAME)],
)
def test_no_words_leave_the_page_or_lie_on_others(movements: int, notes: int, name: str) -> None:
    figure = Figure(figsize=(8.27, 11.69), dpi=150)
    given = body(movements, notes, name)
    Page(figure).fill(msgspec.convert(given["report"], Report), given)
    figure.canvas.draw()
    boxes = [text.get_window_extent() for text in figure.texts if text.get_text() != "–"]
    assert len(boxes) > 15
    assert all(box.x0 >= 0 and box.x1 <= 0.95 * WIDE and box.y0 >= 0 and box.y1 <= HIGH for box in boxes)
    lines = sorted(boxes, key=lambda box: -box.y0)
    assert all(upper.y0 >= lower.y0 + 4 for upper, lower in pairwise(lines))
    charts = [axis.get_tightbbox() for axis in figure.axes]
    assert all(not chart.overlaps(box) for chart in charts for box in boxes)
    assert all(chart.y0 > FOOT * HIGH - 1 for chart in charts)


def test_what_does_not_fit_is_counted() -> None:
    figure = Figure(figsize=(8.27, 11.69), dpi=150)
    given = body(6, 40)
    Page(figure).fill(msgspec.convert(given["report"], Report), given)
    said = [text.get_text() for text in figure.texts]
    left_out = next(text for text in said if "earlier notes" in text)
    shown = sum(text.startswith("5 January 2026: Cleared") for text in said)
    assert left_out == words.EARLIER_NOTES.format(count=40 - shown)
    assert any(text.startswith("and 2 more: ") for text in said)
    assert any(text.startswith("A training record, not a medical document") for text in said)


def test_lines_are_wrapped_by_the_width_of_their_letters() -> None:
    text = "iiii wwww " * 30
    lines = wrapped(text.strip(), 9, 3.0)
    assert all(width(line, 9) <= 3.0 for line in lines)
    assert " ".join(lines) == text.strip()
    assert width(cut("w" * 200, 9, 3.0), 9) <= 3.0
    assert cut("short", 9, 3.0) == "short"


def test_signs_of_formulas_in_a_name_are_only_signs() -> None:
    assert drawn(body(name="$x_1$ & <Co>"), "pdf").startswith(b"%PDF")
