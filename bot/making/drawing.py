"""Pictures, sounds and exports for letters."""

import asyncio
from functools import cache, lru_cache
from typing import Any

import msgspec

from core.beat import Pattern
from core.plans import Region


async def draw(kind: str, body: dict[str, Any]) -> bytes:
    """The bytes that a letter names, drawn in a thread. `bot.making.slow_work` does it in a process of its own."""
    return await asyncio.to_thread(drawn, kind, body)


def drawn(kind: str, body: dict[str, Any]) -> bytes:
    """The PNG that a letter names: a fit picture, a digest's chart or a report; or a report's PDF, a beat, a ZIP of records."""
    match kind:
        case "report" | "report_picture":
            from bot.report import drawn as page

            return page(body, "pdf" if kind == "report" else "png")
        case "chart":
            from bot.making.charts import weekly_chart

            return weekly_chart(body["chart"])
        case "export":
            from bot.export import zipped

            return zipped.made(body)
        case "unwritable":
            from bot.making.fonts import unwritable

            return "\n".join(unwritable(body["names"])).encode()
        case "beat":
            return _beat(msgspec.convert(body["beat"], Pattern))
        case _:
            return _fit(body["picture"])


@lru_cache(maxsize=8)
def _beat(pattern: Pattern) -> bytes:
    from bot.making.beat import beat

    return beat(pattern)


@cache
def _fit(name: str) -> bytes:
    from bot.making.pictures import fit_picture

    return fit_picture(Region(name.removeprefix("fit_")))
