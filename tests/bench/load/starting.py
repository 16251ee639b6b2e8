"""From the start of the process to the first answer."""

import statistics
import subprocess
import time
from pathlib import Path

from tests.end_to_end.room import Room


async def first_answer_s(folder: Path, times: int) -> tuple[float, float]:
    """Median seconds, and of the processor alone; a client's message waits when `cuffline run` starts."""
    took, worked = [], []
    for number in range(times):
        room = Room(folder / f"start{number}.db")
        room.output = subprocess.DEVNULL
        room.client.types("hello?")
        began = time.perf_counter()
        try:
            await room.open()
            await room.hears(room.client, "invited")
            took.append(time.perf_counter() - began)
            assert room.bot is not None
            worked.append(processor_s(room.bot.pid))
        finally:
            await room.close()
    return statistics.median(took), statistics.median(worked)


def processor_s(pid: int) -> float:
    """What the process has used up to now (https://docs.kernel.org/scheduler/sched-stats.html)."""
    return int(Path(f"/proc/{pid}/schedstat").read_text().split()[0]) / 1e9
