"""Pictures for letters."""

import asyncio
from functools import cache
from typing import Any

from core.plans import Region


async def draw(kind: str, body: dict[str, Any]) -> bytes:
    """The bytes that a letter names, drawn in a thread. `bot.aside` does it in a process of its own."""
    return await asyncio.to_thread(drawn, kind, body)


def drawn(kind: str, body: dict[str, Any]) -> bytes:
    """The PNG that a letter names: a fit picture, a digest's chart or a report; or a report's PDF."""
    match kind:
        case "report" | "report_picture":
            from bot.report import drawn as page

            return page(body, "pdf" if kind == "report" else "png")
        case "chart":
            from bot.charts import weekly_chart

            return weekly_chart(body["chart"])
        case _:
            return _fit(body["picture"])


@cache
def _fit(name: str) -> bytes:
    from bot.pictures import fit_picture  # matplotlib takes half a second to import

    return fit_picture(Region(name.removeprefix("fit_")))
