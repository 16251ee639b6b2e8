"""A practice on a machine whose wall clock jumps, that sleeps, restarts and boots: reminders once a date, calls on time.

`Machine.true` is what happens in the world; the wall clock may be wrong, the boot-time clock never is.
"""

import random
import tempfile
from dataclasses import dataclass, field
from datetime import UTC, datetime, time, timedelta
from pathlib import Path

from bot.clocks import keeping_time
from bot.clocks.steady import Steady
from bot.config import Config
from bot.engine import Engine, recording
from core.calendar.recurrence import Weekday, weekly
from core.calendar.stored import when_from_text, when_to_text
from core.calendar.zones import local
from core.facts import BandsOff, BandsOn, Cleared, Detail, PlanGiven
from core.plan_text import plan_to_text
from core.plans import OPEN_AIMS, Exercise, Plan, Region, Scheme
from core.store import duties, facts, people, settings
from core.store.connection import Store
from core.store.people import Role

COACH, FIRST = 1001, 2001
# The clocks change in most of these within the weeks that a story lasts, one skips hours of another size.
ZONES = (
    *("Europe/Lisbon", "America/New_York", "Australia/Lord_Howe", "America/Santiago"),
    *("Africa/Casablanca", "Asia/Kolkata", "Pacific/Apia", "Europe/London"),
)
STARTS = tuple(
    datetime(2026, month, day, 6, tzinfo=UTC) for month, day in ((3, 1), (3, 20), (9, 20), (10, 20))
)
HOURS = (time(0, 15), time(1, 30), time(2, 30), time(7), time(19), time(23, 45))
LIMIT_S = 600
SLACK = timedelta(seconds=6)  # the sweep looks every 5 s
SWEEP_S = 5.0


class Wrong(AssertionError):
    """A reminder doubled or missing, or a call about bands at the wrong time."""


@dataclass
class Machine:
    """A computer: `error` is how far its wall clock is off."""

    true: datetime
    error: timedelta = timedelta(0)
    counted: float = 1000.0
    boot: int = 1

    def wall(self) -> datetime:
        """What the wall clock shows."""
        return self.true + self.error

    def passes(self, seconds: float) -> None:
        """Time passes, also in sleep."""
        self.true += timedelta(seconds=seconds)
        self.counted += seconds


@dataclass
class Story:
    """One practice and its machine. `jumps` counts what was done to the clocks."""

    seed: int
    jumps: int = 0
    log: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.dice = random.Random(self.seed)
        self.machine = Machine(self.dice.choice(STARTS))
        self.right_since = self.machine.true
        self.folder = tempfile.TemporaryDirectory(prefix="cuffline-clocks-")
        self.store = Store(Path(self.folder.name) / "practice.db", synchronous="OFF")
        self.config = Config("1:clocks", "http://127.0.0.1", Path(self.store.path), (COACH,), "Europe/Lisbon")
        self.starts()
        self.clients = [self._client(FIRST + number) for number in range(3)]

    def close(self) -> None:
        """Put everything away."""
        self.store.close()
        self.folder.cleanup()

    # --- the process ---
    def starts(self) -> None:
        """The process starts, or starts again."""
        machine = self.machine
        self.steady = Steady(machine.wall, lambda: machine.counted, f"boot-{machine.boot}")
        keeping_time.take_up(self.store, self.steady)
        self.engine = Engine(self.store, self.config, self.steady.now)
        self.engine.resume()

    def works(self) -> None:
        """One sweep."""
        while self.engine.work():
            pass
        keeping_time.keep(self.engine, self.steady)
        while self.engine.work():
            pass

    def _client(self, chat: int) -> int:
        """Trains every day at an hour of their own; nobody answers."""
        zone, now = self.dice.choice(ZONES), self.machine.true
        when = weekly(tuple(Weekday), self.dice.choice(HOURS), zone, local(now, zone).date())
        squat = Exercise("goblet_squat", Region.LEGS, Scheme.OPEN, OPEN_AIMS)
        plan = plan_to_text(Plan("squats", (squat,), when=when_to_text(when)))
        coach = people.by_chat(self.store, COACH)
        assert coach is not None
        with self.store.transaction():
            settings.put(self.store, f"alone:{coach.id}", "yes")
            client = people.add(self.store, chat, f"Client {chat}", Role.CLIENT, zone, now, coach.id)
            facts.put(self.store, client, Detail(now, "quiet_hours", "00:00-00:00"), now)
            facts.put(self.store, client, Cleared(now, "1", "cleared", "arms,legs", coach.id), now)
            facts.put(self.store, client, PlanGiven(now, plan, coach.id), now)
            from bot.engine.days import calendar

            calendar.remind_next(self.engine, people.by_id(self.store, client), now)
        return client

    # --- time ---
    def lives(self, hours: float) -> None:
        """Time passes; the process wakes at what is due next, at the latest every few hours."""
        until = self.machine.true + timedelta(hours=hours)
        while self.machine.true < until:
            self.works()
            left = (until - self.machine.true).total_seconds()
            self.machine.passes(min(left, max(SWEEP_S, min(self._wait(), 3 * 3600.0))))
        self.works()

    def _wait(self) -> float:
        due = duties.next_due(self.store)
        wait = 3600.0 if due is None else (due - self.steady.now()).total_seconds()
        return -(-wait // SWEEP_S) * SWEEP_S

    def disturbed(self) -> None:
        """Something happens to the clocks."""
        self.jumps += 1
        what = self.dice.choice(
            (self._set, self._set, self._corrected, self._sleeps, self._restarts, self._boots)
        )
        what()
        self.log.append(f"{self.machine.true:%d %b %H:%M} {what.__name__}, off by {self.machine.error}")
        self.works()

    def _set(self) -> None:
        size = self.dice.choice((1.5, 90, 3600, 7200, 86400, 40 * 86400))
        self.machine.error += timedelta(seconds=self.dice.uniform(-size, size))

    def _corrected(self) -> None:
        self.machine.error = timedelta(0)

    def _sleeps(self) -> None:
        self.machine.passes(self.dice.choice((30, 600, 6 * 3600, 30 * 3600)))

    def _restarts(self) -> None:
        self.machine.passes(self.dice.uniform(1, 120))
        self.starts()

    def _boots(self) -> None:
        self.machine.passes(self.dice.uniform(20, 7200))
        self.machine.boot, self.machine.counted = self.machine.boot + 1, 20.0
        if self.dice.random() < 0.5:
            self._corrected()
        self.starts()

    # --- what must hold ---
    def reminders(self, client: int) -> list[str]:
        """The local dates that were reminded of or asked about, in order."""
        rows = self.store.rows(
            "SELECT json_extract(about, '$.session_day') AS day FROM planned"
            " WHERE person = ? AND dialogue = 'reminding' AND done_at IS NOT NULL ORDER BY id",
            [client],
        )
        return [row["day"] for row in rows]

    def once_a_date(self) -> None:
        """No local date twice. Raises `Wrong`."""
        for client in self.clients:
            days = self.reminders(client)
            twice = {day for day in days if days.count(day) > 1}
            if twice:
                raise Wrong(f"seed {self.seed}: client {client} twice on {sorted(twice)}; {self.log[-5:]}")

    def none_missing(self, days: int) -> None:
        """With the clock right again, every date is reminded of. Raises `Wrong`."""
        self._corrected()
        self.works()
        self.lives(25)  # what was under way is over
        began = self.machine.true
        self.lives(24 * days)
        for client in self.clients:
            person = people.by_id(self.store, client)
            plan = facts.latest(self.store, PlanGiven, client)
            assert plan is not None
            wanted = self._between(person.zone, plan, began, self.machine.true)
            missing = wanted - set(self.reminders(client))
            if missing:
                raise Wrong(f"seed {self.seed}: client {client} not on {sorted(missing)}; {self.log[-8:]}")

    def _between(self, zone: str, plan: PlanGiven, begin: datetime, end: datetime) -> set[str]:
        from core.calendar.occurrences import occurrences_between
        from core.plan_text import plan_from_text

        when = plan_from_text(plan.plan).when
        assert when is not None
        found = occurrences_between(when_from_text(when), begin, end - timedelta(minutes=1))
        return {one.day.isoformat() for one in found}

    def bands(self) -> None:
        """Bands on under a jumping clock: the call comes at the limit of true time. Raises `Wrong`."""
        client, session = self.clients[0], f"s{self.jumps}"
        self.works()
        on_true = self.machine.true
        with self.store.transaction():
            at = self.steady.now()
            recording.record(self.engine, client, BandsOn(at, session, "1.1", Region.LEGS, LIMIT_S))
        self.works()
        called = self._called_at(session, on_true)
        off = called - on_true - timedelta(seconds=LIMIT_S)
        if abs(off) > SLACK:
            raise Wrong(f"seed {self.seed}: the call came {off} off its time; {self.log[-5:]}")
        with self.store.transaction():
            recording.record(self.engine, client, BandsOff(self.steady.now(), session, "1.1", "time"))
        self.works()

    def power_cut(self, off_s: float, behind: timedelta) -> None:
        """The machine goes off, and starts with a clock that is behind, as one without a battery does."""
        self.machine.passes(off_s)
        self.machine.boot, self.machine.counted = self.machine.boot + 1, 20.0
        self.machine.error = -behind
        self.starts()

    def _called_at(self, session: str, on_true: datetime) -> datetime:
        """The true time of the first call; meanwhile the wall clock is set and the process restarts."""
        while self.machine.true < on_true + timedelta(hours=1):
            if self._is_called(session):
                return self.machine.true
            if self.dice.random() < 0.05:
                self.jumps += 1
                self.dice.choice((self._set, self._corrected, self.starts))()
            self.machine.passes(SWEEP_S)
            self.works()
        raise Wrong(f"seed {self.seed}: no call within an hour; {self.log[-5:]}")

    def _is_called(self, session: str) -> bool:
        row = self.store.row("SELECT calls FROM watch WHERE session = ?", [session])
        return row is not None and row["calls"] > 0


def play(seed: int, jumps: int = 60) -> int:
    """One story; how many jumps it had. Raises `Wrong`."""
    story = Story(seed)
    try:
        while story.jumps < jumps:
            story.lives(story.dice.choice((0.5, 3, 20, 30)))
            story.disturbed()
            story.once_a_date()
            if story.dice.random() < 0.1:
                story.bands()
        story.none_missing(3)
        story.once_a_date()
    finally:
        story.close()
    return story.jumps
