"""Clients in sessions while their coach's week of 1,000 clients is made: how much later their answers come."""

import asyncio
import statistics
import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from bot.local.phone import Phone
from core.store import duties, people
from core.store.connection import Store
from tests.bench.load import big
from tests.bench.load.dialogue import COACH, FIRST_CLIENT
from tests.bench.load.rates import Crowd, started

CLIENTS = 1_000
SETS = 24 * CLIENTS
WARM_S, CALM_S, LONGEST_S = 6.0, 45.0, 150.0
BESIDE_S = 45.0  # at least: some 400 answers, so that the p99 is not the slowest one
START_S = 8.0  # for the start of the bot
A_PACE_S = 0.1  # between answers: a practice at full swing, not a machine at its limit


class Paced(Crowd):
    """Clients who take their time, so that what is measured is how long an answer takes and not a queue."""

    async def talk(self, goes_on: Callable[[], bool]) -> list[float]:
        """Answer while it goes on; seconds that each answer of the bot took."""
        self.took_s.clear()
        while goes_on():
            if not self.held:
                self._join()
            chat, text = next(iter(self.held.items()))
            del self.held[chat]
            self.awaited[chat] = time.perf_counter()
            self._answers(chat, text)
            await asyncio.sleep(A_PACE_S)
        return list(self.took_s)


class Weeks:
    """The planned week and then, as often as it takes to fill the time, the same week asked for by the coach."""

    def __init__(self, coach: Phone, due: datetime) -> None:
        self.coach, self.due = coach, due
        self.seen, self.first_s = 0, float("nan")

    def go_on(self) -> bool:
        """Until a week is told and enough time has passed."""
        passed = (datetime.now(UTC) - self.due).total_seconds()
        pictures = sum(one.photo is not None for one in self.coach.history)
        if pictures == self.seen:
            return passed < LONGEST_S
        self.first_s = passed if self.seen == 0 else self.first_s
        self.seen = pictures
        if passed >= BESIDE_S:
            return False
        self.coach.types("week")
        return True


@dataclass(frozen=True, slots=True)
class Beside:
    """Milliseconds within which 99 of 100 answers came; seconds from the due time to the digest."""

    calm_ms: float
    beside_ms: float
    digest_s: float


async def measure(folder: Path) -> Beside:
    """A calm stretch, then one in which the week is made, until the coach has it with its picture."""
    store = big.filled(folder / "cuffline", SETS, CLIENTS, datetime.now(UTC))
    due = _week_due(store, datetime.now(UTC) + timedelta(seconds=START_S + WARM_S + CALM_S))
    store.close()
    crowd = Paced("cuffline")
    coach = crowd.add_phone(COACH, "Coach")
    for number in range(CLIENTS):
        crowd.add_phone(FIRST_CLIENT + number, "x")
    process = await started(crowd, folder)
    try:
        await crowd.talk(lambda: datetime.now(UTC) < due - timedelta(seconds=CALM_S))
        calm = await crowd.talk(lambda: datetime.now(UTC) < due)
        weeks = Weeks(coach, due)
        beside = await crowd.talk(weeks.go_on)
        return Beside(_p99_ms(calm), _p99_ms(beside), weeks.first_s)
    finally:
        process.kill()
        process.wait()


def _week_due(store: Store, due: datetime) -> datetime:
    coach = people.by_chat(store, COACH)
    assert coach is not None
    duties.unplan(store, coach.id, "weekly")
    duties.plan(store, coach.id, "weekly", {"day": due.date().isoformat()}, due, due)
    return due


def _p99_ms(took_s: list[float]) -> float:
    return 1000 * statistics.quantiles(took_s, n=100)[98]
