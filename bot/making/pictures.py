"""Where the band sits and where to press, drawn by ourselves: an arm and a leg."""

import io
from typing import Any

from conversations.words import pictures as words
from core.plans import Region

SKIN, SHADE, BAND, SPOT, INK = "#f0c9a8", "#e3b48c", "#0b5394", "#b02a1a", "#222222"
Points = list[tuple[float, float]]

# Outlines on a field 12 wide and 10 high, clockwise from the upper left; drawn as smooth curves.
ARM: Points = [
    *((1.35, 9.9), (1.3, 8.6), (1.5, 7.0), (1.7, 5.8), (1.55, 5.0), (1.8, 3.9), (2.1, 3.0), (1.95, 2.5)),
    *((1.8, 1.6), (1.95, 0.2), (2.3, 0.15), (2.35, 1.0), (2.45, 0.05), (2.8, 0.05), (2.85, 1.0)),
    *((3.0, 0.15), (3.3, 0.2), (3.3, 1.1), (3.5, 0.55), (3.75, 0.65), (3.6, 1.7), (3.9, 1.45), (4.35, 1.3)),
    *(
        (4.4, 1.6),
        (3.8, 2.4),
        (3.25, 3.0),
        (3.5, 3.9),
        (3.8, 5.0),
        (3.7, 5.8),
        (4.0, 7.0),
        (4.2, 8.6),
        (4.1, 9.9),
    ),
]
LEG: Points = [
    *((0.9, 9.9), (0.95, 8.4), (1.3, 6.8), (1.65, 5.4), (1.6, 4.6), (1.55, 3.4), (1.85, 1.8), (2.0, 0.9)),
    *((1.65, 0.35), (2.0, 0.1), (3.4, 0.1), (3.65, 0.35), (3.2, 0.9), (3.4, 1.8), (3.75, 3.4), (3.6, 4.6)),
    *((3.6, 5.4), (4.1, 6.8), (4.6, 8.4), (4.65, 9.9)),
]


def fit_picture(region: Region) -> bytes:
    """PNG for a phone: the limb, the band, the spot, labels."""
    from matplotlib.figure import Figure  # half a second, and only for pictures

    figure = Figure(figsize=(6, 5), dpi=160, facecolor="white")
    axis = figure.add_axes((0, 0, 1, 1))
    axis.set_xlim(0, 12)
    axis.set_ylim(-0.3, 9.8)
    axis.axis("off")
    match region:
        case Region.ARMS:
            _arm(axis)
        case Region.LEGS:
            _leg(axis)
    out = io.BytesIO()
    figure.savefig(out, format="png")
    return out.getvalue()


def _arm(axis: Any) -> None:
    _limb(axis, ARM)
    _band(axis, 1.1, 4.4, 7.9)
    axis.plot([1.75, 3.6], [5.4, 5.4], color=INK, linewidth=1.5, linestyle=":")
    _spot(axis, 2.75, 1.95)
    _label(axis, words.BAND_ARM, (5.3, 8.35), (4.4, 8.35), BAND)
    _label(axis, words.ELBOW, (5.3, 5.4), (3.75, 5.4), INK)
    _label(axis, words.PALM, (5.3, 2.6), (3.15, 2.05), SPOT)


def _leg(axis: Any) -> None:
    from matplotlib.patches import Ellipse

    _limb(axis, LEG)
    _band(axis, 0.75, 4.7, 8.1)
    axis.add_patch(Ellipse((2.62, 4.75), 1.15, 1.05, facecolor=SHADE, edgecolor=INK, linewidth=2))
    _spot(axis, 2.65, 5.85)
    _label(axis, words.BAND_LEG, (5.3, 8.55), (4.7, 8.55), BAND)
    _label(axis, words.ABOVE_KNEE, (5.3, 6.3), (3.05, 5.9), SPOT)
    _label(axis, words.KNEECAP, (5.3, 4.4), (3.2, 4.7), INK)


def _limb(axis: Any, points: Points) -> None:
    """The outline through all points (a Catmull-Rom curve), open at the top where the body goes on."""
    from matplotlib.patches import PathPatch
    from matplotlib.path import Path

    ends = [points[0], *points, points[-1]]
    knots: Points = [points[0]]
    codes = [Path.MOVETO]
    for (ax, ay), (bx, by), (cx, cy), (dx, dy) in zip(ends, ends[1:], ends[2:], ends[3:], strict=False):
        knots += [
            (bx + (cx - ax) / 6, by + (cy - ay) / 6),
            (cx - (dx - bx) / 6, cy - (dy - by) / 6),
            (cx, cy),
        ]
        codes += [Path.CURVE4] * 3
    outline = Path(knots, codes)
    axis.add_patch(PathPatch(outline, facecolor=SKIN, edgecolor=INK, linewidth=2.5, joinstyle="round"))


def _band(axis: Any, left: float, right: float, bottom: float) -> None:
    from matplotlib.patches import FancyBboxPatch

    style = "round,pad=0,rounding_size=0.15"
    shape = FancyBboxPatch((left, bottom), right - left, 0.9, boxstyle=style)
    shape.set(facecolor=BAND, edgecolor=INK, linewidth=2.5)
    axis.add_patch(shape)


def _spot(axis: Any, x: float, y: float) -> None:
    from matplotlib.patches import Circle

    axis.add_patch(Circle((x, y), 0.4, facecolor="white", edgecolor=SPOT, linewidth=5))


def _label(axis: Any, text: str, at: tuple[float, float], to: tuple[float, float], colour: str) -> None:
    arrow = {"arrowstyle": "-", "color": colour, "linewidth": 3, "shrinkB": 0}
    axis.annotate(text, xy=to, xytext=at, fontsize=17, color=INK, arrowprops=arrow, va="center")
