"""The load model against simulated clients whose curves it does not assume, beside two yardsticks.

    python -m tests.bench.progression [--clients 200] [--seed 1]

Families: power, hyperbola with a floor, exponential. Each client has a true maximum that the tested one
misses by 15 %, an own number of reps at 30 %, a day-to-day spread of 10 %, growth, and whole reps; 15 %
round to fives, 10 % stop at 40, 10 % let the bands slip on some days, 10 % get an irritated joint for three
sessions. The first two sessions are gentle (two sets, reps left). Yardsticks: the plain one-step rule (up at
40, down below 25, from the first session to failure) and an oracle that knows the client's curve today.
The figures count sessions 3 to 18. All numbers of the simulation are own judgement, no source.
"""

import argparse
import math
import random
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date, timedelta
from decimal import Decimal

from core.plans import Scheme
from core.progression import Advice, Reason, Request, SessionRecord, advise
from core.resistance import Loads
from core.units import Load

LOW, HIGH, FAR = 25, 40, 50
SESSIONS, GENTLE = 18, 2
STEPS = ("0.5", "1.25", "2.5")
# Reasons by which a hard rule, not the model, kept the load down.
BOUND = {Reason.HALF_OF_MAX, Reason.STEP_TOO_LARGE, Reason.CAUTION}
FIRST_DAY = date(2026, 1, 5)

Curve = Callable[[float], float]  # share of the maximum -> reps


def power(random_: random.Random, at_30: float) -> Curve:
    k = random_.uniform(2.0, 4.5)
    return lambda share: at_30 * (share / 0.3) ** -k


def hyperbola(random_: random.Random, at_30: float) -> Curve:
    floor = random_.uniform(0.10, 0.20)
    return lambda share: at_30 * (0.3 - floor) / max(share - floor, 0.02)


def exponential(random_: random.Random, at_30: float) -> Curve:
    c = random_.uniform(6, 14)
    return lambda share: at_30 * math.exp(-c * (share - 0.3))


FAMILIES = {"power": power, "hyperbola": hyperbola, "exponential": exponential}


@dataclass(slots=True)
class Client:
    """One simulated person on one movement with one set of equipment."""

    random: random.Random
    curve: Curve
    maximum: float
    tested: Decimal
    growth: float
    loads: Loads
    fives: bool
    stops_at_40: bool
    slips: bool
    irritated: range
    history: list[SessionRecord] = field(default_factory=list)

    def reps(self, load: Load) -> float:
        """Clean reps to failure on an ordinary day now."""
        return self.curve(load.kilograms / (self.maximum * math.exp(self.growth * len(self.history))))

    def best(self) -> Load:
        middle = math.sqrt(24.5 * 40.5)
        return min(self.loads.available, key=lambda load: abs(math.log(self.reps(load) / middle)))

    def train(self, load: Load, gentle: bool) -> SessionRecord:
        number, draw = len(self.history), self.random
        slipped = self.slips and draw.random() < 0.35
        slip = draw.uniform(1.15, 1.4) if slipped else 1.0
        true = max(1, round(min(self.reps(load) * math.exp(draw.gauss(0, 0.10)) * slip, 150)))
        record = SessionRecord(
            date=FIRST_DAY + timedelta(days=3 * number),
            used=load,
            reps=self._counted(self._sets(true, gentle)),
            reps_left=(draw.randint(2, 6), draw.randint(2, 6)) if gentle else None,
            tightness=5 if slipped and draw.random() < 0.5 else draw.choice((6, 7, 7)),
            pain=draw.choice((4, 5)) if number in self.irritated else draw.choice((0, 1)),
        )
        self.history.append(record)
        return record

    def _sets(self, true: int, gentle: bool) -> list[int]:
        second = true * self.random.uniform(0.4, 0.6)
        if gentle:
            return [true - self.random.randint(3, 5), round(second) - 4]
        first = min(true, HIGH) if self.stops_at_40 else true
        return [first, round(second), round(second * self.random.uniform(0.4, 0.6))]

    def _counted(self, reps: list[int]) -> tuple[int, ...]:
        if self.fives:
            return tuple(max(5, 5 * round(count / 5)) for count in reps)
        return tuple(max(1, count) for count in reps)


def client(family: str, step: str, seed: str) -> Client:
    draw = random.Random(f"{family}/{seed}")
    maximum = math.exp(draw.uniform(math.log(40), math.log(100)))
    available = [Load(Decimal(step) * number) for number in range(1, int(70 / float(step)))]
    tested = Decimal(round(maximum * math.exp(draw.gauss(0, 0.15)), 1)).quantize(Decimal("0.1"))
    begins = draw.randint(4, 12)
    return Client(
        random=draw,
        curve=FAMILIES[family](draw, 32 * math.exp(draw.gauss(0, 0.28))),
        maximum=maximum,
        tested=tested,
        growth=draw.uniform(0.003, 0.010),
        loads=Loads(tuple(available), Load(tested)),
        fives=draw.random() < 0.15,
        stops_at_40=draw.random() < 0.10,
        slips=draw.random() < 0.10,
        irritated=range(begins, begins + 3) if draw.random() < 0.10 else range(0),
    )


Policy = Callable[[Client], tuple[Load, Advice | None]]


def model(who: Client) -> tuple[Load, Advice | None]:
    advice = advise(Request("press", Scheme.OPEN, who.loads, tuple(who.history)))
    assert isinstance(advice.use, Load)
    return advice.use, advice


def one_step(who: Client) -> tuple[Load, Advice | None]:
    loads = who.loads.available
    if not who.history:
        goal = 0.30 * float(who.tested)
        return min(loads, key=lambda load: abs(load.kilograms - goal)), None
    last = who.history[-1]
    assert isinstance(last.used, Load)
    at = loads.index(last.used) + (last.reps[0] >= HIGH) - (last.reps[0] < LOW)
    return loads[max(0, min(at, len(loads) - 1))], None


def oracle(who: Client) -> tuple[Load, Advice | None]:
    return who.best(), None


@dataclass(slots=True)
class Tally:
    """Counts over sessions 3-18 of all clients of one family and step."""

    sessions: int = 0
    in_range: int = 0
    far: int = 0
    in_80: int = 0
    waits: list[int] = field(default_factory=list)
    sore_raises: int = 0
    moves: int = 0
    bound: int = 0  # of `far`: the model was not allowed to go heavier

    def add(self, first: int, advice: Advice | None) -> None:
        self.sessions += 1
        self.in_range += LOW <= first <= HIGH
        self.far += first > FAR
        if advice is not None:
            self.bound += first > FAR and advice.because.reason in BOUND
            self.in_80 += advice.first_set_80[0] <= first <= advice.first_set_80[1]


def play(who: Client, policy: Policy, gentle: bool, tally: Tally) -> None:
    hits: list[bool] = []
    for number in range(SESSIONS):
        load, advice = policy(who)
        if who.history and load.kilograms > _kilograms(who.history[-1]):
            tally.sore_raises += (who.history[-1].pain or 0) > 3
        tally.moves += bool(who.history) and load != who.history[-1].used
        record = who.train(load, gentle and number < GENTLE)
        if number >= GENTLE:
            tally.add(record.reps[0], advice)
            hits.append(LOW <= record.reps[0] <= HIGH)
    pairs = [at for at in range(len(hits) - 1) if hits[at] and hits[at + 1]]
    tally.waits.append(pairs[0] if pairs else len(hits))


def _kilograms(record: SessionRecord) -> float:
    assert isinstance(record.used, Load)
    return record.used.kilograms


def measure(policy: Policy, family: str, step: str, clients: int, seed: int, gentle: bool) -> Tally:
    tally = Tally()
    for number in range(clients):
        play(client(family, step, f"{seed}/{number}"), policy, gentle, tally)
    return tally


POLICIES: dict[str, tuple[Policy, bool]] = {
    "one step": (one_step, False),
    "oracle": (oracle, True),
    "model": (model, True),
}


def row(name: str, step: str, family: str, tally: Tally) -> str:
    held = f"{tally.in_80 / tally.sessions:7.3f}" if tally.in_80 else "      -"
    return (
        f"{name:9} {step:>5} {family:12} {tally.in_range / tally.sessions:8.3f} "
        f"{sum(tally.waits) / len(tally.waits):6.2f} {held} {tally.far / tally.sessions:7.4f} "
        f"{tally.bound / tally.sessions:7.4f} {tally.sore_raises:5} {tally.moves / len(tally.waits):6.1f}"
    )


def together(tallies: list[Tally]) -> Tally:
    whole = Tally()
    for one in tallies:
        whole.sessions += one.sessions
        whole.in_range += one.in_range
        whole.far += one.far
        whole.in_80 += one.in_80
        whole.waits += one.waits
        whole.sore_raises += one.sore_raises
        whole.moves += one.moves
        whole.bound += one.bound
    return whole


WANTED = {"0.5": 0.87, "1.25": 0.87, "2.5": 0.84}


def missed(step: str, tallies: dict[str, Tally]) -> list[str]:
    """What the model did not reach at this step."""
    whole = together(list(tallies.values()))
    found = []
    if whole.in_range / whole.sessions < WANTED[step]:
        found.append(f"{step}: in range below {WANTED[step]}")
    if step == "1.25" and sum(whole.waits) / len(whole.waits) > 1.0:
        found.append("1.25: more than 1.0 sessions to two in a row")
    if whole.far / whole.sessions >= 0.01:
        found.append(f"{step}: 1 % or more above {FAR}")
    if whole.sore_raises:
        found.append(f"{step}: a raise on an irritated joint")
    for family, tally in tallies.items():
        if not 0.75 <= tally.in_80 / tally.sessions <= 0.85:
            found.append(f"{step}: 80 % ranges off in {family}")
    return found


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    parser.add_argument("--clients", type=int, default=200, help="in each family, step and policy")
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    began, wrong = time.perf_counter(), []
    print("policy     step family       in range  waits  in 80%  far>50   bound  sore  moves")
    for step in STEPS:
        for name, (policy, gentle) in POLICIES.items():
            tallies = {
                family: measure(policy, family, step, asked.clients, asked.seed, gentle)
                for family in FAMILIES
            }
            for family, tally in (*tallies.items(), ("all", together(list(tallies.values())))):
                print(row(name, step, family, tally))
            if name == "model":
                wrong += missed(step, tallies)
    print("\n".join(wrong) or "all figures reached", f"({time.perf_counter() - began:.0f} s)")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
