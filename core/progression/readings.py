"""What the numbers of a session say: a few named explanations and their posterior odds.

Each explanation says what it expects of each clue as a normal curve (mean, standard deviation). The
likelihoods of all clues at hand are multiplied with the prior odds and scaled to 1: Bayes' rule with
independent clues. A missing clue is left out. The numbers in the table are own judgement, no source, except
where a line says otherwise; a new explanation is a line, a new clue a column.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from core.progression.prior import MIDDLE
from core.progression.records import Explanation, Question, Reading, SessionRecord

CLOSE = 0.5  # the second explanation at half the odds of the first: too close to call
WANTED_TIGHTNESS = 6.5  # common practice, no source: 6-7
USUAL_REFILL_S = 2.0  # with the band on, under 3 s (common practice); own judgement of the middle
USUAL_REST_S = 30.0  # common practice, no source


class Clue(StrEnum):
    """What is looked at. All but `FIVES` are centred so that 0 is what one expects of a good session."""

    LEVEL = "level"  # ln of set 1 over the middle of the range
    SURPRISE = "surprise"  # ln of set 1 over the client's own forecast
    FALL_2 = "fall_2"  # how much less than usual reps fell to set 2, log
    FALL_3 = "fall_3"  # the same to set 3
    TIGHTNESS = "tightness"  # points above the wanted
    REFILL = "refill"  # ln over the usual
    REST = "rest"  # ln over 30 s, the longest
    EFFORT = "effort"  # points above 8
    FIVES = "fives"  # share of sets at a multiple of five
    ROUGH = "rough"  # 1: the client was not sure, or the reps ran fast


Curve = tuple[float, float]
Table = Mapping[Clue, Curve]

# What a good session looks like; explanations below say only where they differ.
USUAL: Table = {
    Clue.LEVEL: (0.0, 0.17),
    Clue.SURPRISE: (0.0, 0.16),
    Clue.FALL_2: (0.0, 0.25),
    Clue.FALL_3: (0.0, 0.30),
    Clue.TIGHTNESS: (0.0, 0.8),  # coefficient of variation 12 % (Bell et al. 2020, J Sport Rehabil 29:516)
    Clue.REFILL: (0.0, 0.30),
    Clue.REST: (0.0, 0.20),
    Clue.EFFORT: (0.0, 1.2),
    Clue.FIVES: (0.2, 0.35),
    Clue.ROUGH: (0.0, 0.3),
}
EXPECTS: Mapping[Explanation, Table] = {
    Explanation.LOAD_RIGHT: {},
    Explanation.LOAD_LIGHT: {Clue.LEVEL: (0.45, 0.18), Clue.SURPRISE: (0.15, 0.30), Clue.EFFORT: (-0.5, 1.5)},
    Explanation.LOAD_HEAVY: {
        Clue.LEVEL: (-0.50, 0.22),
        Clue.SURPRISE: (-0.15, 0.30),
        Clue.EFFORT: (0.7, 1.2),
    },
    Explanation.BANDS_LOOSE: {
        Clue.LEVEL: (0.30, 0.35),
        Clue.SURPRISE: (0.35, 0.25),
        Clue.FALL_2: (0.40, 0.30),
        Clue.FALL_3: (0.35, 0.35),
        Clue.TIGHTNESS: (-1.8, 1.0),
        Clue.REFILL: (-0.3, 0.35),
        Clue.EFFORT: (-1.0, 1.5),
    },
    Explanation.BANDS_TIGHT: {
        Clue.LEVEL: (-0.35, 0.30),
        Clue.SURPRISE: (-0.40, 0.25),
        Clue.FALL_2: (-0.35, 0.30),
        Clue.FALL_3: (-0.25, 0.35),
        Clue.TIGHTNESS: (1.8, 1.0),
        Clue.REFILL: (0.5, 0.35),
        Clue.EFFORT: (0.7, 1.2),
    },
    Explanation.STOPPED_SHORT: {
        Clue.LEVEL: (-0.05, 0.30),
        Clue.SURPRISE: (-0.20, 0.25),
        Clue.FALL_2: (0.40, 0.25),
        Clue.FALL_3: (0.15, 0.35),
        Clue.EFFORT: (-2.0, 1.5),
        Clue.FIVES: (0.5, 0.40),
    },
    Explanation.REST_LONG: {
        Clue.FALL_2: (0.35, 0.25),
        Clue.FALL_3: (0.30, 0.30),
        Clue.REST: (0.8, 0.35),
    },
    Explanation.COUNT_UNCLEAN: {
        Clue.LEVEL: (0.25, 0.35),
        Clue.SURPRISE: (0.25, 0.30),
        Clue.FIVES: (0.7, 0.35),
        Clue.ROUGH: (0.8, 0.4),
    },
}
PRIOR: Mapping[Explanation, float] = {
    Explanation.LOAD_RIGHT: 0.50,
    Explanation.LOAD_LIGHT: 0.12,
    Explanation.LOAD_HEAVY: 0.12,
    Explanation.BANDS_LOOSE: 0.06,
    Explanation.BANDS_TIGHT: 0.05,
    Explanation.STOPPED_SHORT: 0.06,
    Explanation.REST_LONG: 0.05,
    Explanation.COUNT_UNCLEAN: 0.04,
}
# The question that settles whether this one is it; the earlier of two close ones here gets asked about.
ASKS: Mapping[Explanation, Question] = {
    Explanation.BANDS_LOOSE: Question.HOW_TIGHT_AT_THE_END,
    Explanation.BANDS_TIGHT: Question.HOW_TIGHT_AT_THE_END,
    Explanation.REST_LONG: Question.HOW_LONG_WAS_THE_REST,
    Explanation.STOPPED_SHORT: Question.COULD_DO_MORE,
    Explanation.COUNT_UNCLEAN: Question.WERE_ALL_CLEAN,
    Explanation.LOAD_HEAVY: Question.HOW_WAS_THE_DAY,
    Explanation.LOAD_LIGHT: Question.COULD_DO_MORE,
    Explanation.LOAD_RIGHT: Question.COULD_DO_MORE,
}


@dataclass(frozen=True, slots=True)
class Expected:
    """What was expected of a session before it: ln reps of set 1, and log falls from set to set."""

    log_first: float | None
    falls: tuple[float, ...]


def clues(session: SessionRecord, expected: Expected) -> dict[Clue, float]:
    """The clues at hand, each as in `Clue`."""
    reps = [math.log(max(count, 0.5)) for count in _full(session)]
    found = {
        Clue.LEVEL: reps[0] - MIDDLE,
        Clue.FIVES: sum(1 for count in session.reps if count % 5 == 0) / len(session.reps),
        Clue.ROUGH: float(session.rough or session.fast),
    }
    if expected.log_first is not None:
        found[Clue.SURPRISE] = reps[0] - expected.log_first
    for clue, at in ((Clue.FALL_2, 0), (Clue.FALL_3, 1)):
        if len(reps) > at + 1:
            found[clue] = expected.falls[at] - (reps[at] - reps[at + 1])
    return found | _told(session)


def _full(session: SessionRecord) -> list[int]:
    """Reps of each set with those said to be left."""
    left = session.reps_left or ()
    return [count + (left[at] if at < len(left) else 0) for at, count in enumerate(session.reps)]


def _told(session: SessionRecord) -> dict[Clue, float]:
    told = {}
    if session.tightness is not None:
        told[Clue.TIGHTNESS] = session.tightness - WANTED_TIGHTNESS
    elif session.loose:
        told[Clue.TIGHTNESS] = -2.0
    if session.refill_s is not None:
        told[Clue.REFILL] = math.log(max(session.refill_s, 0.5) / USUAL_REFILL_S)
    if session.rest_s:
        told[Clue.REST] = math.log(max(max(session.rest_s), 5.0) / USUAL_REST_S)
    if session.effort is not None:
        told[Clue.EFFORT] = session.effort - 8
    return told


def readings(session: SessionRecord, expected: Expected) -> tuple[Reading, ...]:
    """Every explanation with its share, the most likely first; they sum to 1."""
    found = clues(session, expected)
    logs = {name: math.log(PRIOR[name]) + _log_likelihood(found, EXPECTS[name]) for name in Explanation}
    most = max(logs.values())
    shares = {name: math.exp(log - most) for name, log in logs.items()}
    total = sum(shares.values())
    return tuple(
        Reading(name, share / total) for name, share in sorted(shares.items(), key=lambda item: -item[1])
    )


def _log_likelihood(found: Mapping[Clue, float], expects: Table) -> float:
    log = 0.0
    for clue, value in found.items():
        mean, sd = expects.get(clue, USUAL[clue])
        log -= 0.5 * ((value - mean) / sd) ** 2 + math.log(sd)
    return log


def separating(ranked: tuple[Reading, ...], session: SessionRecord) -> Question | None:
    """The question that tells the two most likely explanations apart, when they are close; never what is known."""
    first, second = ranked[0], ranked[1]
    if second.odds < CLOSE * first.odds:
        return None
    pair = {first.name, second.name}
    asks = (question for name, question in ASKS.items() if name in pair)
    return next((question for question in asks if question not in _answered(session)), None)


def _answered(session: SessionRecord) -> frozenset[Question]:
    """What was told or measured already."""
    known = {
        Question.HOW_LONG_WAS_THE_REST: session.rest_s is not None,
        Question.COULD_DO_MORE: session.reps_left is not None,
        Question.WERE_ALL_CLEAN: session.rough,
        Question.HOW_WAS_THE_DAY: session.tired,
    }
    return frozenset(question for question, is_known in known.items() if is_known)
