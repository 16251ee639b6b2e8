"""A client's week in what went up, and the one thing most worth trying next week."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from statistics import fmean

from core.facts import LoadMoved, Rated, SetDone
from core.plans import PAIN_CEILING, REST_S
from core.safety.pain import Where

LONG_REST_S = REST_S + 15  # on average; own judgement, no source
OFTEN = 0.5  # share of first sets; own judgement, no source
FEW_REPS = 2  # more than so many at the same load are worth a word; own judgement, no source


class Try(StrEnum):
    """One thing to try. Stored in nothing; the words are in the conversations."""

    SPARE_THE_JOINT = "spare_the_joint"
    KEEP_A_DAY = "keep_a_day"
    FIT_FIRST = "fit_first"
    COUNT_ALOUD = "count_aloud"
    REST_SHORT = "rest_short"
    SLOW_DOWN = "slow_down"
    BREATHE_OUT = "breathe_out"
    LAST_REP_CLEAN = "last_rep_clean"


# When nothing stands out: one after the other, week by week.
IN_TURN = (Try.SLOW_DOWN, Try.BREATHE_OUT, Try.LAST_REP_CLEAN)


@dataclass(frozen=True, slots=True)
class Lived:
    """The facts of one week: sessions `planned` and `done`, and `before`: set 1 of the weeks before it."""

    planned: int
    done: int
    sets: Sequence[SetDone] = ()
    before: Sequence[SetDone] = ()
    moved: Sequence[LoadMoved] = ()
    rated: Sequence[Rated] = ()


@dataclass(frozen=True, slots=True)
class Risen:
    """What went up: a load from `was` to `now`, or reps of set 1 at the same load (`was` to `now` reps)."""

    movement: str
    was: str
    now: str
    load: str = ""  # for reps: the load they were done with


def risen(lived: Lived) -> tuple[Risen, ...]:
    """Loads that were raised; where none was, more reps of set 1 at one load than ever before."""
    loads: dict[str, Risen] = {}
    for one in lived.moved:
        if one.applied and one.action == "raise":
            first = loads[one.movement].was if one.movement in loads else one.was
            loads[one.movement] = Risen(one.movement, first, one.use)
    return (*loads.values(), *_more_reps(lived, set(loads)))


def _more_reps(lived: Lived, but: set[str]) -> list[Risen]:
    best, now = _best(lived.before), _best(lived.sets)
    return [
        Risen(movement, str(best[movement, doing]), str(reps), doing)
        for (movement, doing), reps in now.items()
        if movement not in but and (movement, doing) in best and reps - best[movement, doing] >= FEW_REPS
    ]


def _best(sets: Sequence[SetDone]) -> dict[tuple[str, str], int]:
    best: dict[tuple[str, str], int] = {}
    for one in sets:
        if one.set_no == 1 and not one.rough:
            key = one.movement, one.doing
            best[key] = max(best.get(key, 0), one.reps)
    return best


def one_thing(lived: Lived, week: int) -> Try:
    """The most useful single thing; `week` (any running number) turns the list when nothing stands out."""
    firsts = [one for one in lived.sets if one.set_no == 1]
    rests = [one.rest_s for one in lived.sets if one.rest_s is not None]
    joint = [one.score for one in lived.rated if one.what == "pain" and one.where != Where.MUSCLE]
    found = {
        Try.SPARE_THE_JOINT: max(joint, default=0) > PAIN_CEILING,
        Try.KEEP_A_DAY: lived.planned > lived.done,
        Try.FIT_FIRST: _share([one.loose for one in firsts]) >= OFTEN,
        Try.COUNT_ALOUD: _share([one.rough for one in firsts]) >= OFTEN,
        Try.REST_SHORT: bool(rests) and fmean(rests) > LONG_REST_S,
    }
    return next((each for each, is_so in found.items() if is_so), IN_TURN[week % len(IN_TURN)])


def _share(found: Sequence[bool]) -> float:
    return sum(found) / len(found) if found else 0.0
