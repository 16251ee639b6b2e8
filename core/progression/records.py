"""What the load model is asked and what it answers, as values. Bad input is a ValueError naming the field."""

import math
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from core.plans import PAIN_CEILING, Scheme
from core.resistance import Loads, Resistance, scale
from core.units import Load

MOST_REPS = 200  # in one set; trials cap light banded sets at 90 (Jessee et al. 2019, Physiol Int 106:180)
MOST_SETS = 10
YEARS = range(1900, 3000)  # of a session; a calendar ends at 9999, and no date may run over its end


@dataclass(frozen=True, slots=True)
class SessionRecord:
    """One session of one movement (one side), as told.

    `reps` are clean reps of each set in order. `reps_left`: clean reps the client thinks were left after each
    set, None: each set went to failure. `tightness`, `pain` and `effort` 0-10; `refill_s` and `rest_s` in
    seconds (`rest_s` before set 2, 3, ...). `stopped`: why it ended early. `loose`: it went on with bands
    below the wanted tightness; `rough`: the client was not sure of the count; `fast`: reps ran ahead of the
    tempo; `check_ok` False: the cuff check was not right, or another band was used; `tired`: the same muscles had
    trained hard elsewhere that day or the day before. `spare`: clean reps the client thinks were left after the
    last of the fixed sets, None: not asked.
    """

    date: date
    used: Load | str
    reps: tuple[int, ...]
    tightness: float | None = None
    refill_s: float | None = None
    rest_s: tuple[float, ...] | None = None
    pain: float | None = None
    effort: float | None = None
    reps_left: tuple[int, ...] | None = None
    stopped: str | None = None
    loose: bool = False
    rough: bool = False
    fast: bool = False
    check_ok: bool = True
    tired: bool = False
    spare: int | None = None

    def __post_init__(self) -> None:
        _in_our_time("date", self.date)
        _whole("reps", self.reps)
        if self.reps_left is not None:
            _whole("reps_left", self.reps_left)
            if len(self.reps_left) > len(self.reps):
                raise ValueError("reps_left: more entries than sets")
        if self.spare is not None:
            _whole("spare", (self.spare,))
        _within("tightness", self.tightness, 10)
        _within("pain", self.pain, 10)
        _within("effort", self.effort, 10)
        _within("refill_s", self.refill_s, 60)
        if len(self.rest_s or ()) > len(self.reps):
            raise ValueError("rest_s: more entries than sets")
        for rest in self.rest_s or ():
            _within("rest_s", rest, 3_600)


def _in_our_time(name: str, day: date) -> None:
    if day.year not in YEARS:
        raise ValueError(f"{name}: {day} is not between the years {YEARS[0]} and {YEARS[-1]}")


def _whole(name: str, counts: tuple[int, ...]) -> None:
    if not 1 <= len(counts) <= MOST_SETS:
        raise ValueError(f"{name}: needs 1 to {MOST_SETS} sets")
    for count in counts:
        if isinstance(count, bool) or not isinstance(count, int) or not 0 <= count <= MOST_REPS:
            raise ValueError(f"{name}: {count} is not a number of reps from 0 to {MOST_REPS}")


def _within(name: str, value: float | None, top: float) -> None:
    if value is not None and not (math.isfinite(value) and 0 <= value <= top):
        raise ValueError(f"{name}: {value} is not between 0 and {top:g}")


@dataclass(frozen=True, slots=True)
class Request:
    """What is known about one client and one movement (one side).

    `sessions` in order of date. `today`: the day of the next session, None: at the client's usual interval.
    `planned`: the coach's load for the first session. `ill`: the client was ill since the last session.
    `open_last`: the coach left the last of the fixed sets open.
    """

    movement: str
    scheme: Scheme
    resistance: Resistance
    sessions: tuple[SessionRecord, ...] = ()
    today: date | None = None
    planned: Load | str | None = None
    pain_ceiling: int = PAIN_CEILING
    ill: bool = False
    open_last: bool = False

    def __post_init__(self) -> None:
        if not self.movement:
            raise ValueError("movement: no name")
        if self.scheme is Scheme.WALK:
            raise ValueError("scheme: walking has minutes and pace, not loads")
        _in_order(self.sessions, self.today)
        _known(self)


def _in_order(sessions: tuple[SessionRecord, ...], today: date | None) -> None:
    if today is not None:
        _in_our_time("today", today)
    days = [session.date for session in sessions]
    if days != sorted(days):
        raise ValueError("date: sessions are out of order")
    if today is not None and days and today < days[-1]:
        raise ValueError("today: before the last session")


def _known(request: Request) -> None:
    places = scale(request.resistance)
    for session in request.sessions:
        places.place(session.used)
    if request.planned is not None and request.planned not in places.names:
        raise ValueError("planned: not among the reachable loads")
    if isinstance(request.resistance, Loads) and request.resistance.one_rm is not None:
        places.place(request.resistance.one_rm)


class Action(StrEnum):
    """What happens to the load. Stored."""

    START = "start"
    RAISE = "raise"
    HOLD = "hold"
    LOWER = "lower"
    PAUSE = "pause"  # no training of this movement until the coach has looked


class Caution(StrEnum):
    """A fact about the last session or the days since that forbids a raise. Stored."""

    PAIN_HIGH = "pain_high"  # above 5: pause
    PAIN_ABOVE_CEILING = "pain_above_ceiling"
    PAIN_RAISED = "pain_raised"
    PAIN_NOT_SETTLED = "pain_not_settled"
    STOPPED = "stopped"
    ILL = "ill"
    LAYOFF = "layoff"  # two weeks and more
    MISSED_WEEK = "missed_week"
    CHECK_NOT_RIGHT = "check_not_right"
    BANDS_LOOSE = "bands_loose"
    BANDS_TIGHT = "bands_tight"
    ROUGH_COUNT = "rough_count"
    REPS_FAST = "reps_fast"
    TRAINED_ELSEWHERE = "trained_elsewhere"


class Reason(StrEnum):
    """Why this load: one name a sentence. Stored; the sentence is in the words of the conversations."""

    START_FROM_MAX = "start_from_max"
    START_AS_PLANNED = "start_as_planned"
    START_LIGHTEST = "start_lightest"
    SECOND_GENTLE = "second_gentle"
    TOO_MANY = "too_many"
    TOO_FEW = "too_few"
    CLIMBING = "climbing"
    SLIDING = "sliding"
    IN_RANGE = "in_range"
    HIGH_ONCE = "high_once"  # above the range, and yet the step up would be too much
    LOW_ONCE = "low_once"
    BEST_REACHABLE = "best_reachable"
    STEP_TOO_LARGE = "step_too_large"
    HALF_OF_MAX = "half_of_max"
    TOP_OF_EQUIPMENT = "top_of_equipment"
    BOTTOM_OF_EQUIPMENT = "bottom_of_equipment"
    ALL_TWICE = "all_twice"
    ALL_ONCE = "all_once"
    NOT_ALL = "not_all"
    NO_SPARE = "no_spare"
    CAUTION = "caution"


class Explanation(StrEnum):
    """What the numbers of one session may mean. Stored."""

    LOAD_RIGHT = "load_right"
    LOAD_LIGHT = "load_light"
    LOAD_HEAVY = "load_heavy"
    BANDS_LOOSE = "bands_loose"
    BANDS_TIGHT = "bands_tight"
    STOPPED_SHORT = "stopped_short"
    REST_LONG = "rest_long"
    COUNT_UNCLEAN = "count_unclean"


class Question(StrEnum):
    """What tells two close explanations apart. Stored; the words are in the conversations."""

    HOW_TIGHT_AT_THE_END = "how_tight_at_the_end"
    COULD_DO_MORE = "could_do_more"
    HOW_LONG_WAS_THE_REST = "how_long_was_the_rest"
    WERE_ALL_CLEAN = "were_all_clean"
    HOW_WAS_THE_DAY = "how_was_the_day"


@dataclass(frozen=True, slots=True)
class Reading:
    """One explanation with its posterior odds as a share, 0 to 1; all readings of a session sum to 1."""

    name: Explanation
    odds: float


@dataclass(frozen=True, slots=True)
class Because:
    """The reason by name and the numbers its sentence needs."""

    reason: Reason
    caution: Caution | None = None
    was: Load | str | None = None
    use: Load | str | None = None
    low: int = 0  # reps wanted in set 1
    high: int = 0
    last_reps: int | None = None  # set 1 of the last session
    expected: int = 0  # set 1 next time, at `use`
    days: int | None = None  # since the last session


@dataclass(frozen=True, slots=True)
class Advice:
    """The next load and what to expect of it.

    `expected_reps` for each set; in the first two sessions two sets, ended with clean reps left.
    `first_set_80`: set 1 falls in it, both ends included, four times in five. `chance_in_range`: that set 1
    lands in its range (fixed sets: that all of set 1 gets done). `readings` of the last session, most likely
    first. `question`: the one to ask when the two most likely are close.
    """

    use: Load | str
    action: Action
    expected_reps: tuple[int, ...]
    first_set_80: tuple[int, int]
    chance_in_range: float
    because: Because
    readings: tuple[Reading, ...] = ()
    question: Question | None = None
    cautions: tuple[Caution, ...] = field(default=())
