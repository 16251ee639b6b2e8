"""Where the band sits and where to press, drawn by ourselves: an arm and a leg."""

import io
from typing import Any

from core.plans import Region

SKIN, BAND, SPOT, INK = "#f0c9a8", "#0b5394", "#b02a1a", "#222222"


def fit_picture(region: Region) -> bytes:
    """PNG for a phone: the limb, the band, the spot, three labels."""
    from matplotlib.figure import Figure  # half a second, and only for pictures

    figure = Figure(figsize=(6, 5), dpi=110, facecolor="white")
    axis = figure.add_axes((0, 0, 1, 1))
    axis.set_xlim(0, 12)
    axis.set_ylim(0, 10)
    axis.axis("off")
    (_arm if region is Region.ARMS else _leg)(axis)
    out = io.BytesIO()
    figure.savefig(out, format="png")
    return out.getvalue()


def _label(axis: Any, text: str, at: tuple[float, float], to: tuple[float, float], colour: str) -> None:
    arrow = {"arrowstyle": "-", "color": colour, "linewidth": 2}
    axis.annotate(text, xy=to, xytext=at, fontsize=15, color=INK, arrowprops=arrow, va="center")


def _limb(axis: Any, points: list[tuple[float, float]]) -> None:
    from matplotlib.patches import Polygon

    axis.add_patch(
        Polygon(points, closed=True, facecolor=SKIN, edgecolor=INK, linewidth=2, joinstyle="round")
    )


def _arm(axis: Any) -> None:
    from matplotlib.patches import Circle, Rectangle

    _limb(axis, [(1.6, 9.6), (3.9, 9.6), (3.5, 5.4), (3.2, 2.6), (1.9, 2.6), (1.7, 5.4)])
    _limb(axis, [(1.7, 2.6), (3.5, 2.6), (3.6, 1.3), (3.3, 0.2), (2.0, 0.2), (1.6, 1.3)])
    axis.add_patch(Rectangle((1.45, 8.0), 2.55, 0.8, facecolor=BAND, edgecolor=INK, linewidth=2))
    axis.add_patch(Circle((2.6, 1.4), 0.38, facecolor="white", edgecolor=SPOT, linewidth=4))
    axis.plot([1.75, 3.45], [5.4, 5.4], color=INK, linewidth=1, linestyle=":")
    _label(axis, "Band: high on the upper\narm, near the armpit", (5.2, 8.4), (4.0, 8.4), BAND)
    _label(axis, "elbow", (5.2, 5.4), (3.5, 5.4), INK)
    _label(axis, "Press the palm 5 s,\nlet go, count", (5.2, 1.4), (3.0, 1.4), SPOT)


def _leg(axis: Any) -> None:
    from matplotlib.patches import Circle, Rectangle

    _limb(
        axis, [(1.2, 9.6), (4.3, 9.6), (3.7, 5.2), (3.5, 4.0), (3.3, 0.8), (2.1, 0.8), (1.9, 4.0), (1.7, 5.2)]
    )
    _limb(axis, [(2.1, 0.8), (3.3, 0.8), (4.6, 0.2), (2.0, 0.2)])
    axis.add_patch(Rectangle((1.1, 8.4), 3.2, 0.8, facecolor=BAND, edgecolor=INK, linewidth=2))
    axis.add_patch(Circle((2.7, 5.5), 0.38, facecolor="white", edgecolor=SPOT, linewidth=4))
    axis.add_patch(Circle((2.7, 4.5), 0.5, facecolor="#e3b48c", edgecolor=INK, linewidth=1.5))
    _label(axis, "Band: high on the thigh,\nnear the groin", (5.4, 8.8), (4.3, 8.8), BAND)
    _label(axis, "Press just above the\nkneecap 5 s, let go, count", (5.4, 6.0), (3.1, 5.5), SPOT)
    _label(axis, "kneecap", (5.4, 4.4), (3.2, 4.5), INK)
