"""Pictures are PNG of a size that a phone takes, and no client's name breaks them."""

import struct

import pytest
from matplotlib.figure import Figure

from bot.making.charts import MOST_PANELS, draw_panel, weekly_chart
from bot.making.pictures import fit_picture
from conversations.words.pictures import chart_title
from core.plans import Region

SIGNATURE = b"\x89PNG\r\n\x1a\n"
# Limits of sendPhoto: https://core.telegram.org/bots/api (width and height together, ratio of the two).
MOST_TOGETHER, MOST_RATIO = 10_000, 20


def size(png: bytes) -> tuple[int, int]:
    assert png.startswith(SIGNATURE)
    width, height = struct.unpack(">II", png[16:24])
    return width, height


def panel(title: str = "Ruta: Goblet squat", count: int = 3, doing: str = "8 kg") -> dict[str, object]:
    days = [f"2026-01-{day + 1:02}" for day in range(count)]
    return {
        "title": title,
        "days": days,
        "reps": [24 + day for day in range(count)],
        "doing": [doing] * count,
        "low": [25] * count,
        "high": [40] * count,
    }


@pytest.mark.parametrize("region", Region)
def test_a_fit_picture_is_as_wide_as_a_phone(region: Region) -> None:
    assert size(fit_picture(region)) == (960, 800)


def test_arm_and_leg_are_different_pictures() -> None:
    assert fit_picture(Region.ARMS) != fit_picture(Region.LEGS)


@pytest.mark.parametrize("panels", [1, 2, 3, MOST_PANELS, MOST_PANELS + 5])
def test_a_chart_is_taken_as_a_photo_whatever_the_number_of_clients(panels: int) -> None:
    width, height = size(weekly_chart({"panels": [panel() for _ in range(panels)]}))
    assert width == 1080
    assert width + height <= MOST_TOGETHER
    assert height / width <= MOST_RATIO


@pytest.mark.parametrize("count", [MOST_PANELS, MOST_PANELS + 1])
def test_a_chart_without_room_for_all_says_so(count: int) -> None:
    assert ("who needs you first" in chart_title(MOST_PANELS, count)) is (count > MOST_PANELS)


@pytest.mark.parametrize("title", ["Ruta: $\\frac$", "$\\frac$", "a" * 200, "Ruta", ": ", "\\: _^{"])
@pytest.mark.parametrize("doing", ["8 kg", "$\\frac$", "m" * 99])
def test_no_name_breaks_a_chart(title: str, doing: str) -> None:
    size(weekly_chart({"panels": [panel(title, doing=doing)]}))


def test_one_session_is_enough_and_an_empty_panel_is_left_out() -> None:
    assert weekly_chart({"panels": [panel(count=1), panel(count=0)]}) == weekly_chart(
        {"panels": [panel(count=1)]}
    )


@pytest.mark.parametrize(("reps", "filled"), [(24, False), (25, True), (40, True), (41, False)])
def test_reps_outside_the_band_are_open_circles(reps: int, filled: bool) -> None:
    axis = Figure().subplots()
    draw_panel(axis, {**panel(count=1), "reps": [reps]}, 1)
    circle = next(line for line in axis.lines if line.get_marker() == "o")
    assert (circle.get_markerfacecolor() != "white") is filled


def test_a_gentle_set_is_never_drawn_as_outside_the_range_and_the_title_says_what_it_is() -> None:
    axis = Figure().subplots()
    draw_panel(axis, {**panel(count=2), "reps": [20, 20], "held": [False, True]}, 1)
    gentle, full = (line for line in axis.lines if line.get_marker() == "o")
    assert (gentle.get_markerfacecolor() != "white", full.get_markerfacecolor() != "white") == (True, False)
    assert gentle.get_markersize() < full.get_markersize()
    assert "gentle" in chart_title(1, 1, gentle=True)
    assert "gentle" not in chart_title(1, 1)


@pytest.mark.parametrize(("reps", "filled"), [(29, False), (30, True), (31, False)])
def test_a_fixed_set_is_drawn_against_its_own_number(reps: int, filled: bool) -> None:
    axis = Figure().subplots()
    draw_panel(axis, {**panel(count=1), "reps": [reps], "low": [30], "high": [30]}, 1)
    circle = next(line for line in axis.lines if line.get_marker() == "o")
    assert (circle.get_markerfacecolor() != "white") is filled
    assert list(axis.get_yticks()) == [0, 30]


def test_a_range_that_changed_is_drawn_as_it_was_on_each_day() -> None:
    axis = Figure().subplots()
    draw_panel(axis, {**panel(count=3), "low": [25, 25, 30], "high": [40, 40, 30]}, 1)
    heights = [path.get_extents().height for band in axis.collections for path in band.get_paths()]
    assert heights == [16, 16, 1]


def test_a_set_without_a_range_is_drawn_without_one() -> None:
    axis = Figure().subplots()
    draw_panel(axis, {**panel(count=1), "low": [None], "high": [None]}, 1)
    assert (list(axis.patches), list(axis.get_yticks())) == ([], [0])


@pytest.mark.parametrize("panels", [[], [panel(count=0)]])
def test_nothing_to_draw_is_said(panels: list[dict[str, object]]) -> None:
    with pytest.raises(ValueError, match=r"^panels:"):
        weekly_chart({"panels": panels})
