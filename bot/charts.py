"""The digest's picture: small multiples of set-1 reps against the wanted band, with the load beside each point."""

import io
from datetime import date
from typing import Any

PER_ROW = 2
MOST_PANELS = 8
BAND = (25, 40)  # clean reps wanted in set 1: common practice, no source
BLUE, SAND, INK = "#0b5394", "#e6d5a8", "#222222"  # told apart by people who see few colours, and in grey


def weekly_chart(data: dict[str, Any]) -> bytes:
    """PNG of `{"panels": [{"title", "days", "reps", "doing"}]}`; readable on a phone, on light and dark."""
    from matplotlib.figure import Figure  # half a second, and only for pictures

    panels = data["panels"][:MOST_PANELS]
    rows = -(-len(panels) // PER_ROW)
    figure = Figure(figsize=(9, 3.3 * rows + 0.6), dpi=120, facecolor="white", layout="constrained")
    axes = figure.subplots(rows, PER_ROW, squeeze=False).flatten()
    for axis, panel in zip(axes, panels, strict=False):
        _panel(axis, panel)
    for axis in axes[len(panels) :]:
        axis.set_visible(False)
    figure.suptitle("Clean reps in set 1 (shaded: wanted for open sets)", fontsize=14, color=INK)
    out = io.BytesIO()
    figure.savefig(out, format="png")
    return out.getvalue()


def _panel(axis: Any, panel: dict[str, Any]) -> None:
    from matplotlib.dates import DateFormatter

    days = [date.fromisoformat(day) for day in panel["days"]]
    axis.axhspan(*BAND, color=SAND)
    axis.plot(days, panel["reps"], "o-", color=BLUE, linewidth=2, markersize=7)
    last = None
    for day, reps, doing in zip(days, panel["reps"], panel["doing"], strict=True):
        if doing != last and doing:
            text = doing if len(doing) <= 12 else f"{doing[:11]}…"
            axis.annotate(
                text, (day, reps), textcoords="offset points", xytext=(0, 9), fontsize=10, ha="center"
            )
        last = doing
    axis.set_title(panel["title"], fontsize=12, color=INK)
    axis.set_ylim(0, max(50, *panel["reps"]) + 8)
    axis.set_ylabel("reps")
    axis.margins(x=0.15)
    axis.set_xticks(days[:: max(1, len(days) // 4)])
    axis.xaxis.set_major_formatter(DateFormatter("%d %b"))  # type: ignore[no-untyped-call]
    axis.tick_params(labelsize=10)
