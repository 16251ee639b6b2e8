"""Slow work in a process of its own, so that nobody's set waits for it: pictures, reports, exports, a coach's week.

A thread would not do: drawing holds the interpreter's lock for most of its time.
`main`, in that process, reads what is wanted as JSON and writes the bytes that came of it.
"""

import asyncio
import contextlib
import logging
import os
import sys
import tempfile
from pathlib import Path
from typing import Any

import msgspec

from bot.database import room
from bot.making import drawing
from core.plans import Region
from core.store import keys

log = logging.getLogger("cuffline")

LONGEST_S = 120.0  # then the process is given up; own choice
LESS_URGENT = 15  # steps of niceness, its imports too, but for a picture that a client in a session waits for
START = """
import contextlib, os
with contextlib.suppress(OSError, AttributeError):
    os.nice({less_urgent})
from bot.making.slow_work import main
raise SystemExit(main())
"""
READY_AFTER_S = 3.0  # the start itself goes first; own choice


class Failed(Exception):
    """The process ended without a result."""


class SlowWork:
    """One piece of work at a time, but for a picture that a client in a session waits for."""

    def __init__(self) -> None:
        self.turn = asyncio.Semaphore(1)
        self.fixed: dict[str, bytes] = {}  # pictures that are always the same

    async def draw(self, kind: str, body: dict[str, Any]) -> bytes:
        """As `drawing.draw`, beside the loop; in a thread of ours where no process can be had.

        An export is not made in a thread, which would read whole tables beside everybody's sets: raises Failed.
        """
        known = self.fixed.get(body["picture"]) if kind == "photo" else None
        if known is not None:
            return known
        try:
            made = await self.done({"what": kind, "body": body})
        except (Failed, OSError) as problem:
            if kind == "export":
                raise Failed(str(problem)) from problem
            log.error("no picture from a process of its own: %s", problem)
            made = await drawing.draw(kind, body)
        if kind == "photo":
            self.fixed[body["picture"]] = made
        return made

    async def get_ready(self) -> None:
        """Draw the fixed pictures before anybody needs them."""
        await asyncio.sleep(READY_AFTER_S)
        for region in Region:
            try:
                await self.draw("photo", {"picture": f"fit_{region}"})
            except Exception:  # whoever needs it next finds out; the program goes on
                log.exception("no picture for the fit of bands on %s", region)

    async def done(self, wanted: dict[str, Any]) -> bytes:
        """What came of it. Raises Failed, OSError."""
        one_after_the_other = contextlib.nullcontext() if wanted["what"] == "photo" else self.turn
        async with one_after_the_other:
            return await _in_a_process(wanted)


async def _in_a_process(wanted: dict[str, Any]) -> bytes:
    """Its copies of the database go with a folder of ours, also when it is killed: health data."""
    db = wanted.get("db") or wanted["body"].get("db")
    where = None if db is None else room.beside_sets(Path(db))
    with tempfile.TemporaryDirectory(prefix="cuffline-", dir=where) as folder:
        return await _made_in(folder, wanted)


async def _made_in(folder: str, wanted: dict[str, Any]) -> bytes:
    pipe = asyncio.subprocess.PIPE
    start = START.format(less_urgent=0 if wanted["what"] == "photo" else LESS_URGENT)
    process = await asyncio.create_subprocess_exec(
        *(sys.executable, "-c", start),
        stdin=pipe,
        stdout=pipe,
        stderr=pipe,
        env=os.environ | {"TMPDIR": folder},
    )
    try:
        async with asyncio.timeout(LONGEST_S):
            made, said = await process.communicate(msgspec.json.encode(wanted))
    except TimeoutError:
        raise Failed("it took too long") from None
    finally:
        if process.returncode is None:
            process.kill()
            await process.wait()
    if process.returncode != 0:
        raise Failed(
            said.decode(errors="replace").strip().rpartition("\n")[2] or f"ended with {process.returncode}"
        )
    return made


def main() -> int:
    """In the process: one piece of work."""
    wanted = msgspec.json.decode(sys.stdin.buffer.read())
    sys.stdout.buffer.write(_made(wanted))
    return 0


def _made(wanted: dict[str, Any]) -> bytes:
    if wanted["what"] not in ("week", "export"):
        return drawing.drawn(wanted["what"], wanted["body"])
    from bot.database.keyed import key_in
    from bot.making import weekly

    with keys.using(key_in()):  # the same environment as the bot's
        return weekly.made(wanted) if wanted["what"] == "week" else drawing.drawn("export", wanted["body"])
