"""`python -m tests.bench.load [--quick]`: one table, figure, wanted, measured. Minutes in full; it never fails."""

import argparse
import asyncio
import os
import statistics
import tempfile
from collections.abc import Iterator
from pathlib import Path

from tests.bench.load import beside, big, queue, rates, starting

Row = tuple[str, str, str]
PARTS = ("rates", "store", "beside", "queue", "start")


def rates_rows(folder: Path, quick: bool) -> Iterator[Row]:
    """Against simpler bots."""
    rounds, clients = (6, 600) if quick else (15, 2500)
    found = asyncio.run(rates.measure(folder, rounds, 1.5, clients))
    for name, said in (("cuffline", "answers typed"), ("tapped", "answers tapped")):
        ratio, calls = found.ratio(name, "echo"), found.calls_each[name]
        yield (
            f"updates/s, cuffline, {said} / bare echo",
            ">= 0.7",
            f"{ratio:.2f} ({calls:.2f} calls an update)",
        )
        yield f"calls/s, cuffline, {said} / bare echo", "", f"{ratio * calls / found.calls_each['echo']:.2f}"
    yield "updates/s, pickled / bare echo", "", f"{found.ratio('pickled', 'echo'):.2f}"
    for name, bursts in found.bursts.items():
        speed, late = f"{min(bursts):.0f}-{max(bursts):.0f}/s", f"p99 {found.p99_ms(name):.0f} ms"
        yield (
            f"{name}, {rates.ACTIVE} clients waiting",
            "",
            f"{speed}, {late}, {found.memory_mb[name]:.0f} MB",
        )


def store_rows(folder: Path, quick: bool) -> Iterator[Row]:
    """With years of data."""
    sets, clients = (100_000, 1_000) if quick else (1_000_000, 10_000)
    full = big.filled(folder / "big.db", sets, clients)
    size = f"{sets:,} sets, {clients:,} clients"
    yield f"finding what is due, {big.TALKS:,} planned", "< 1 ms", f"{big.finding_due_ms(full):.3f} ms"
    count, took = big.digest_s(full)
    yield f"digest, {count:,} clients", "< 10 s", f"{took:.1f} s"
    small = big.filled(folder / "small.db", sets // clients * big.FRESH, big.FRESH)
    stores = [full, small, big.empty(folder / "empty.db")]
    costs = big.costs_ms(stores, 6 if quick else 15, 4)
    yield f"an update, {size} / {big.FRESH} clients", "<= 1.2", _compared(costs[0], costs[1])
    yield f"an update, {size} / no history at all", "<= 1.2", _compared(costs[0], costs[2])
    usual, longest = big.forgetting_ms(full)
    yield "a step of forgetting old letters", "< 20 ms", f"{usual:.1f} ms, p99 {longest:.1f} (processor)"
    yield (
        "erasing a client",
        "",
        "{:.0f} ms of the processor, {:.0f} by the clock".format(*big.erasing_ms(full)),
    )
    worked, took, held_s = asyncio.run(big.wiping_s(full))
    said = f"{worked:.1f} s of the processor, {took:.1f} s by the clock; nobody answered for {held_s:.2f} s"
    yield "wiping the file, beside a commit every 20 ms", "", said
    full.close()


def _compared(ones: list[float], others: list[float]) -> str:
    each = f"{statistics.median(ones):.1f} / {statistics.median(others):.1f} ms"
    return f"{big.ratio(ones, others):.2f} ({each})"


def beside_rows(folder: Path, quick: bool) -> Iterator[Row]:
    """While the coach's week is made in a process of its own."""
    found = asyncio.run(beside.measure(folder))
    said = f"{found.beside_ms / found.calm_ms:.2f} ({found.beside_ms:.0f} / {found.calm_ms:.0f} ms)"
    yield f"p99 of answers, week of {beside.CLIENTS:,} clients / calm", "<= 1.5", said
    yield "that week, due to the coach's phone", "< 10 s", f"{found.digest_s:.1f} s"


def queue_rows(folder: Path, quick: bool) -> Iterator[Row]:
    """Among many letters."""
    gone, waited, speed = asyncio.run(queue.alert_among(folder / "queue.db", 10_000))
    said = f"{gone} before it, {waited:.2f} s, at {speed:.0f} letters/s"
    yield "alert behind 10,000 reminders, 30/s", "at once", said


def start_rows(folder: Path, quick: bool) -> Iterator[Row]:
    """From nothing."""
    took, worked = asyncio.run(starting.first_answer_s(folder, 3 if quick else 9))
    yield "cuffline run, start to first answer", "<= 1.5 s", f"{took:.2f} s ({worked:.2f} s of the processor)"


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="a tenth of the data, fewer bursts")
    parser.add_argument("--only", choices=PARTS, nargs="+", default=PARTS)
    wanted = parser.parse_args()
    print(f"{'figure':56} {'wanted':9} measured   (load before: {os.getloadavg()[0]:.1f})")
    with tempfile.TemporaryDirectory() as folder:
        for part in wanted.only:
            for figure, limit, measured in globals()[f"{part}_rows"](Path(folder), wanted.quick):
                print(f"{figure:56} {limit:9} {measured}", flush=True)
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
