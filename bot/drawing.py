"""Pictures for letters, drawn off the event loop so that nobody's set waits for one."""

import asyncio
from functools import cache
from typing import Any

from core.plans import Region


async def draw(kind: str, body: dict[str, Any]) -> bytes:
    """The PNG that a letter names: a fit picture, a digest's chart or a report; or a report's PDF."""
    if kind in ("report", "report_picture"):
        return await asyncio.to_thread(_report, body, "pdf" if kind == "report" else "png")
    if kind == "chart":
        return await asyncio.to_thread(_chart, body["chart"])
    return await asyncio.to_thread(_fit, body["picture"])


@cache
def _fit(name: str) -> bytes:
    from bot.pictures import fit_picture  # matplotlib takes half a second to import

    return fit_picture(Region(name.removeprefix("fit_")))


def _chart(data: dict[str, Any]) -> bytes:
    from bot.charts import weekly_chart

    return weekly_chart(data)


def _report(body: dict[str, Any], kind: str) -> bytes:
    from bot.report import drawn

    return drawn(body, kind)
