"""From the start of the process to the first answer."""

import statistics
import subprocess
import time
from pathlib import Path

from tests.end_to_end.room import Room


async def first_answer_s(folder: Path, times: int) -> float:
    """Median seconds; a client's message waits when `cuffline run` starts."""
    took = []
    for number in range(times):
        room = Room(folder / f"start{number}.db")
        room.output = subprocess.DEVNULL
        room.client.types("hello?")
        began = time.perf_counter()
        try:
            await room.open()
            await room.hears(room.client, "invited")
            took.append(time.perf_counter() - began)
        finally:
            await room.close()
    return statistics.median(took)
