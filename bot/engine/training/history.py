"""A client's sessions of one movement, from facts, as the load model reads them."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field, replace
from itertools import groupby
from typing import TYPE_CHECKING, TypeVar
from zoneinfo import ZoneInfo

from core.facts import WORKED, Answered, CuffChecked, Rated, SessionEnded, SetDone
from core.plans import Exercise, Scheme, Side
from core.progression import Question, SessionRecord
from core.safety.pain import Where
from core.store import facts, people
from core.stored_names import names_in
from core.units import Load

if TYPE_CHECKING:
    from bot.engine.core import Engine

S = TypeVar("S", Rated, SessionEnded, CuffChecked, Answered)

FAILED = ("loosen", "stop")  # verdicts of a check
# An arm at 7 is within the wanted 6 to 7 (common practice, no source), only snug. A refill that cannot be seen was
# allowed by the coach, else there are no sets; it would show bands that close the artery, never loose ones
# (Shinozaki et al. 2023), and such reps are too few and raise nothing.
SAYS_NOTHING = frozenset({"snug_arms", "unseen_refill"})

# Sessions of a movement that the load model looks back on. What one says weighs about 0.6 of what the next one
# says (`core.progression.prior`: how fast a client wanders, how much days differ), so the 13th last weighs less
# than half a percent of the last, and a client of many years costs no more than one of a few months.
REMEMBERED = 12
ALL = 2**31


@dataclass(frozen=True, slots=True)
class Said:
    """What a client said around each session. Read once: a query a session grows dearer with every session."""

    rated: dict[str, list[Rated]] = field(default_factory=dict)
    ended: dict[str, list[SessionEnded]] = field(default_factory=dict)
    checked: dict[str, list[CuffChecked]] = field(default_factory=dict)
    heavy: dict[str, list[Answered]] = field(default_factory=dict)
    asked: dict[str, list[Answered]] = field(default_factory=dict)

    @classmethod
    def by(cls, engine: "Engine", client: int, movement: str, sessions: Collection[str]) -> "Said":
        """What the model reads of this client and movement in these sessions, oldest first."""

        def read(kind: type[S], **where: str) -> dict[str, list[S]]:
            return _by_session(facts.of_sessions(engine.store, kind, client, sessions, **where))

        return cls(
            read(Rated),
            read(SessionEnded),
            read(CuffChecked),
            read(Answered, part="before", question="heavy"),
            read(Answered, part=f"asked:{movement}"),
        )


def _by_session(found: Sequence[S]) -> dict[str, list[S]]:
    grouped: dict[str, list[S]] = {}
    for one in found:
        grouped.setdefault(one.session, []).append(one)
    return grouped


def history(
    engine: "Engine", client: int, exercise: Exercise, last: int = REMEMBERED
) -> tuple[SessionRecord, ...]:
    """The client's last sessions of this movement at loads that they still own, oldest first; the weaker side."""
    return tuple(record for _, record in by_session(engine, client, exercise, last))


def last_used(engine: "Engine", client: int, exercise: Exercise, last: int) -> list[Load | str]:
    """What the client used in the last sessions of this movement, oldest first; only what they still own."""
    side = exercise.sides[0] if exercise.sides else Side.BOTH
    where = {"movement": exercise.movement, "side": side}
    sessions = facts.last_sessions(engine.store, SetDone, client, last, **where)
    sets = facts.of_sessions(engine.store, SetDone, client, sessions, **where)
    first: dict[str, str] = {}
    for one in sorted(sets, key=lambda one: (one.done_at, one.set_no)):
        first.setdefault(one.session, one.doing)
    found = (owned(exercise, doing) for doing in first.values())
    return [used for used in found if used is not None]


def by_session(
    engine: "Engine", client: int, exercise: Exercise, last: int = ALL
) -> tuple[tuple[str, SessionRecord], ...]:
    """The same, each with the session it was."""
    side = exercise.sides[0] if exercise.sides else Side.BOTH
    where = {"movement": exercise.movement, "side": side}
    sessions = facts.last_sessions(engine.store, SetDone, client, last, **where)
    if not sessions:
        return ()
    zone = ZoneInfo(people.by_id(engine.store, client).zone)
    sets = facts.of_sessions(engine.store, SetDone, client, sessions, **where)
    mine = [one for one in sets if owned(exercise, one.doing) is not None]
    grouped = groupby(sorted(mine, key=lambda one: (one.done_at, one.set_no)), key=lambda one: one.session)
    said = Said.by(engine, client, exercise.movement, sessions)
    return tuple((session, _record(said, exercise, list(group), zone)) for session, group in grouped)


def owned(exercise: Exercise, doing: str) -> Load | str | None:
    """A load or rung of this movement by its stored name; None: they no longer have it."""
    for load in exercise.reachable:
        if str(load) == doing:
            return load
    return next((rung.name for rung in exercise.rungs if rung.name == doing), None)


def _record(said: Said, exercise: Exercise, sets: list[SetDone], zone: ZoneInfo) -> SessionRecord:
    session = sets[0].session
    ordered = sorted(sets, key=lambda one: one.set_no)
    used = owned(exercise, ordered[0].doing)
    assert used is not None, "only owned loads are in the history"
    rated, heavy = said.rated.get(session, []), said.heavy.get(session, [])
    effort = next((one for one in reversed(rated) if one.what == "effort"), None)
    ended = next(reversed(said.ended.get(session, [])), None)
    looked = _looked(said.checked.get(session, []), ordered[0].exercise_no)
    fixed = exercise.scheme is Scheme.FIXED and len(ordered) == len(exercise.aims)
    record = SessionRecord(
        date=ordered[0].done_at.astimezone(zone).date(),
        used=used,
        reps=tuple(one.reps for one in ordered),
        tightness=ordered[0].tightness,
        refill_s=_slowest(looked),
        rest_s=tuple(one.rest_s for one in ordered[1:] if one.rest_s is not None) or None,
        pain=_pain(rated),
        effort=effort.score if effort else None,
        reps_left=_left(ordered) or None,
        spare=ordered[-1].reps_left if fixed else None,
        stopped=ended.why if ended and ended.why not in WORKED else None,
        loose=any(one.loose for one in ordered),
        rough=any(one.rough for one in ordered),
        check_ok=checks_right(looked),
        tired=[one.answer for one in heavy][-1:] == ["yes"],
    )
    return with_answers(record, said.asked.get(session, []))


def _left(sets: Sequence[SetDone]) -> tuple[int, ...]:
    """Clean reps left after set 1, 2, ..., as far as they were asked."""
    left: list[int] = []
    for one in sets:
        if one.reps_left is None:
            break
        left.append(one.reps_left)
    return tuple(left)


def _pain(rated: Sequence[Rated]) -> int | None:
    """The most pain of a session and the morning after it; the working muscle's burn does not count."""
    pains = (one.score for one in rated if one.what == "pain" and one.where != Where.MUSCLE)
    return max(pains, default=None)


def _looked(checks: Sequence[CuffChecked], exercise_no: int) -> list[CuffChecked]:
    """The checks of this movement: each has its own spells of bands, "2.1" is the first of the second movement."""
    return [one for one in checks if one.spell.partition(".")[0] == str(exercise_no)]


def _slowest(checks: Sequence[CuffChecked]) -> float | None:
    return max((one.refill_s for one in checks if one.refill_s is not None), default=None)


def checks_right(checks: Sequence[CuffChecked]) -> bool:
    """No check failed, and the last one of every limb was good."""
    last = {(one.spell, one.limb): one for one in checks}
    return all(one.verdict not in FAILED for one in checks) and all(_good(one) for one in last.values())


def _good(check: CuffChecked) -> bool:
    """Go, or eased by nothing that speaks against the reps: `SAYS_NOTHING`."""
    why = names_in(check.because)
    return check.verdict == "go" or (check.verdict == "ease" and bool(why) and SAYS_NOTHING.issuperset(why))


def with_answers(record: SessionRecord, asked: Sequence[Answered]) -> SessionRecord:
    """The session with what the client said to the question that tells two readings apart."""
    for one in asked:
        match one.question:
            case Question.HOW_TIGHT_AT_THE_END:
                record = replace(record, tightness=float(one.answer))
            case Question.COULD_DO_MORE if record.reps_left is None:
                record = replace(record, reps_left=(int(one.answer),))
            case Question.HOW_LONG_WAS_THE_REST:
                record = replace(record, rest_s=(float(one.answer),))
            case Question.WERE_ALL_CLEAN if one.answer != "yes":
                record = replace(record, rough=True)
            case Question.HOW_WAS_THE_DAY if one.answer == "yes":
                record = replace(record, tired=True)
            case _:
                pass
    return record
