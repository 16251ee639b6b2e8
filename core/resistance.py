"""What a client can lift: from the equipment at home to the list of loads that can be reached exactly.

Every reachable load is a sum of numbers that stand on the equipment, in the unit that stands there, so
nothing is ever shown that the client cannot put together. Kilograms and pounds are not mixed.

Elastic bands and body-weight variations have an order and, at best, a fraction of body mass; they form a
`Ladder`. Where a fraction is missing the place of a rung is filled in from its neighbours, for computing
only.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import pairwise

from core.plans import Rung
from core.units import Load, Unit, plain

# One rung to the next where nothing is published; a guess at the usual size of a step: no source.
RUNG_STEP = 0.10  # natural log of load
MOST_LOADS = 2_000  # plates in a garage reach a few hundred sums
HEAVIEST = Decimal(2_000)  # kg or lb, a maximum included; far above anybody's, own judgement, no source
LIGHTEST = Decimal("0.01")  # kg or lb; the same
# Ends the name of an exercise band ("red band"), which is pulled; restriction bands have letters.
BAND = " band"
TEMPO_MARK = "tempo 2/2"  # 2 s up, 2 s down, no stop at either end: common practice, no source


@dataclass(frozen=True, slots=True)
class Loads:
    """Loads in one unit, ascending, each once; `one_rm` the one-repetition maximum as far as known.

    Raises ValueError naming `available` or `one_rm`.
    """

    available: tuple[Load, ...]
    one_rm: Load | None = None

    def __post_init__(self) -> None:
        _check_loads(self.available)
        if self.one_rm is not None:
            check_load("one_rm", self.one_rm)
        ordered = sorted({load.value: load for load in self.available}.items())
        object.__setattr__(self, "available", tuple(load for _, load in ordered))


def _check_loads(available: tuple[Load, ...]) -> None:
    if not available:
        raise ValueError("available: the list of loads is empty")
    if len(available) > MOST_LOADS:
        raise ValueError(f"available: more than {MOST_LOADS} loads")
    for load in available:
        check_load("available", load)
    if len({load.unit for load in available}) > 1:
        raise ValueError("available: kilograms and pounds in one list")


def check_load(name: str, load: Load) -> None:
    """Raises ValueError naming the field for what nobody lifts."""
    if load.value <= 0:
        raise ValueError(f"{name}: must be above 0")
    if not LIGHTEST <= load.value <= HEAVIEST:
        raise ValueError(f"{name}: {float(load.value):g} is not between {LIGHTEST} and {HEAVIEST}")


@dataclass(frozen=True, slots=True)
class Ladder:
    """Variations from the easiest to the hardest; `body_mass_kg` None: not known.

    Raises ValueError naming `rungs` or `body_mass_kg`.
    """

    rungs: tuple[Rung, ...]
    body_mass_kg: float | None = None

    def __post_init__(self) -> None:
        if not self.rungs:
            raise ValueError("rungs: the list is empty")
        names = [rung.name for rung in self.rungs]
        if len(set(names)) < len(names) or not all(names):
            raise ValueError("rungs: every rung needs a name of its own")
        _check_fractions([rung.fraction for rung in self.rungs if rung.fraction is not None])
        mass = self.body_mass_kg
        if mass is not None and not (math.isfinite(mass) and 0 < mass < 500):
            raise ValueError(f"body_mass_kg: {mass} is not a body mass")


def _check_fractions(fractions: list[float]) -> None:
    if not all(math.isfinite(one) and 0 < one <= 2 for one in fractions):
        raise ValueError("rungs: a fraction of body mass lies between 0 and 2")
    if any(later <= earlier for earlier, later in pairwise(fractions)):
        raise ValueError("rungs: fractions must rise, easiest first")


Resistance = Loads | Ladder


# --- from equipment to loads -----------------------------------------------------------------------------
def dumbbells(weights: Iterable[Decimal], unit: Unit) -> tuple[Load, ...]:
    """Fixed weights as they stand on the rack, ascending, each once."""
    return Loads(tuple(Load(weight, unit) for weight in weights)).available


def stack(lightest: Decimal, step: Decimal, heaviest: Decimal, unit: Unit) -> tuple[Load, ...]:
    """A cable stack: `lightest`, then one pin lower each `step`, up to `heaviest`."""
    if step <= 0 or lightest <= 0 or heaviest < lightest:
        raise ValueError("stack: needs a lightest and a step above 0 and a heaviest not below the lightest")
    count = int((heaviest - lightest) / step) + 1
    if count > MOST_LOADS:
        raise ValueError(f"stack: more than {MOST_LOADS} loads")
    return tuple(Load(lightest + step * number, unit) for number in range(count))


def with_plates(bar: Decimal, pairs: Iterable[Decimal], unit: Unit) -> tuple[Load, ...]:
    """A bar (or dumbbell handle) with plates; `pairs` lists the mass of ONE plate of each pair owned.

    Plates go on in pairs, one a side, so each adds twice its mass; two pairs alike are listed twice.
    """
    sums = {bar}
    for plate in pairs:
        if plate <= 0:
            raise ValueError("pairs: every plate must be above 0")
        sums |= {total + 2 * plate for total in sums}
        if len(sums) > MOST_LOADS:
            raise ValueError(f"pairs: more than {MOST_LOADS} loads")
    return tuple(Load(total, unit) for total in sorted(sums) if total > 0)


def with_tempo(ladder: Ladder) -> Ladder:
    """The same ladder with each variation again at a slow tempo, as a half step before the next one."""
    rungs: list[Rung] = []
    for rung in ladder.rungs:
        rungs += [rung, Rung(f"{rung.name}, {TEMPO_MARK}")]
    return replace(ladder, rungs=tuple(rungs))


def is_band(doing: str) -> bool:
    """Whether what is used is an exercise band."""
    return doing.endswith(BAND)


# --- one scale for all -----------------------------------------------------------------------------------
@dataclass(frozen=True, slots=True)
class Scale:
    """The reachable loads or rungs, lightest first, with their places `x` (natural log of load).

    `guessed`: for each whether its place is a mere guess, as nothing but the order is known there.
    """

    names: tuple[Load | str, ...]
    x: tuple[float, ...]
    guessed: tuple[bool, ...] = ()

    def place(self, used: Load | str) -> float:
        """Where `used` sits. A load need not be owned any more; a rung must be on the ladder."""
        if isinstance(used, Load):
            if isinstance(self.names[0], str):
                raise ValueError(f"used: {used} on a ladder of rungs")
            check_load("used", used)
            return math.log(used.kilograms)
        if used not in self.names:
            raise ValueError(f"used: unknown rung {used!r}")
        return self.x[self.names.index(used)]


def scale(resistance: Resistance) -> Scale:
    """The places of all loads or rungs. Loads count in log kg; rungs in log fraction of body mass."""
    match resistance:
        case Loads(available=available):
            return Scale(available, tuple(math.log(load.kilograms) for load in available))
        case Ladder(rungs=rungs):
            return Scale(tuple(rung.name for rung in rungs), _places(rungs), _guessed(rungs))


def _places(rungs: tuple[Rung, ...]) -> tuple[float, ...]:
    known = [(at, math.log(rung.fraction)) for at, rung in enumerate(rungs) if rung.fraction is not None]
    if not known:
        return tuple(at * RUNG_STEP for at in range(len(rungs)))
    return tuple(_between(at, known) for at in range(len(rungs)))


def _guessed(rungs: tuple[Rung, ...]) -> tuple[bool, ...]:
    """All but those with a published fraction and those between two of them."""
    known = [at for at, rung in enumerate(rungs) if rung.fraction is not None]
    return tuple(not known or not known[0] <= at <= known[-1] for at in range(len(rungs)))


def _between(at: int, known: list[tuple[int, float]]) -> float:
    """Evenly between the known neighbours; one RUNG_STEP a rung beyond the last known one."""
    below = [one for one in known if one[0] <= at]
    above = [one for one in known if one[0] >= at]
    if below and above:
        (left, low), (right, high) = below[-1], above[0]
        return low if right == left else low + (high - low) * (at - left) / (right - left)
    nearest_at, place = below[-1] if below else above[0]
    return place + (at - nearest_at) * RUNG_STEP


def shown(used: Load | str) -> str:
    """As it stands on the equipment: "12.5 kg", or the name of the rung."""
    return used if isinstance(used, str) else f"{plain(used.value)} {used.unit}"
