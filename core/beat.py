"""When the tones of a sound to train by come: two a rep, an end of each set, a rest with beeps at its close."""

from dataclasses import dataclass
from enum import StrEnum

from core.plans import Exercise, Scheme

LEAD_IN_S = 4  # time to take the load up, with a beep in each of the last three seconds; own choice
CLOSING_S = (3, 2, 1)  # beeps so long before a set begins; own choice
END_S = 3  # what follows the last tone, so that it is not cut off; own choice


class Tone(StrEnum):
    """What a tone says."""

    UP = "up"
    DOWN = "down"
    SOON = "soon"  # a set begins within three seconds
    REST = "rest"  # the set is over
    SIDE = "side"  # the other side now
    OVER = "over"  # all sets are done: bands off


@dataclass(frozen=True, slots=True)
class Cue:
    """One tone, `at` in s from the beginning."""

    at: float
    tone: Tone


@dataclass(frozen=True, slots=True)
class Pattern:
    """What is beaten: reps of each set, s for a rep (half up, half down), s of rest; `sides` worked in turn."""

    reps: tuple[int, ...]
    tempo_s: int
    rest_s: int
    sides: int = 1

    def __post_init__(self) -> None:
        if not self.reps or min(self.reps) < 1 or min(self.tempo_s, self.rest_s, self.sides) < 1:
            raise ValueError("reps, tempo_s, rest_s, sides: at least 1 each")


def pattern_of(exercise: Exercise, most_sets: int | None = None) -> Pattern | None:
    """The beat of a movement; an open set has the most reps of its range. None for a walk."""
    if exercise.scheme is Scheme.WALK:
        return None
    reps = tuple(aim.high for aim in exercise.aims[:most_sets])
    return Pattern(reps, exercise.tempo_s, exercise.rest_s, len(exercise.sides))


def cues(pattern: Pattern) -> tuple[Cue, ...]:
    """All tones in order; the last one says that it is over."""
    found = _close(LEAD_IN_S)
    at = float(LEAD_IN_S)
    for number, reps in enumerate(pattern.reps, start=1):
        found += _set(pattern, reps, at)
        at += _set_s(pattern, reps)
        if number == len(pattern.reps):
            return (*found, Cue(at, Tone.OVER))
        found += [Cue(at, Tone.REST), *_close(at + pattern.rest_s)]
        at += pattern.rest_s
    return tuple(found)


def rests_at(pattern: Pattern) -> tuple[float, ...]:
    """When each rest begins, in s."""
    return tuple(cue.at for cue in cues(pattern) if cue.tone is Tone.REST)


def length_s(pattern: Pattern) -> float:
    """How long the whole is."""
    return cues(pattern)[-1].at + END_S


def _close(at: float) -> list[Cue]:
    return [Cue(at - before, Tone.SOON) for before in CLOSING_S]


def _set(pattern: Pattern, reps: int, at: float) -> list[Cue]:
    """Each rep up and down, one side after the other."""
    found: list[Cue] = []
    for side in range(pattern.sides):
        begin = at + side * reps * pattern.tempo_s
        found += [Cue(begin - pattern.tempo_s / 4, Tone.SIDE)] if side else []
        for rep in range(reps):
            up = begin + rep * pattern.tempo_s
            found += [Cue(up, Tone.UP), Cue(up + pattern.tempo_s / 2, Tone.DOWN)]
    return found


def _set_s(pattern: Pattern, reps: int) -> int:
    return reps * pattern.tempo_s * pattern.sides
