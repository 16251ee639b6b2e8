"""The client's next loads: advice from the load model, moves back into facts, eased by what came since."""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from bot.engine.coach import loads_asked
from bot.engine.training import walks
from bot.engine.training.advising import advice_on
from bot.engine.training.history import last_used, owned
from conversations.words.advice import sentence
from conversations.words.movements import CUES, NAMES, lesson
from core.facts import LoadMoved, SetDone
from core.plans import Exercise, Plan, Scheme
from core.progression import Action, Advice, Caution, Explanation, Question
from core.resistance import shown
from core.store import facts, people
from core.units import Load

if TYPE_CHECKING:
    from bot.engine.core import Engine


def new_session(engine: "Engine", client: int) -> str:
    """An id no session of this client has yet."""
    row = engine.store.row("SELECT count(*) AS n FROM thread WHERE person = ?", [client])
    return f"{client}-{(row['n'] if row else 0) + 1}"


def names(plan: Plan | None) -> dict[str, str]:
    """What the client calls each movement."""
    return {e.movement: NAMES.get(e.movement, e.movement.replace("_", " ")) for e in _of(plan)}


def cues(plan: Plan | None) -> dict[str, str]:
    """One cue for each movement."""
    return {e.movement: CUES[e.movement][0] for e in _of(plan) if CUES.get(e.movement)}


def teaching(plan: Plan | None) -> dict[str, str]:
    """How each movement is done, in one message."""
    return {e.movement: lesson(e.movement) for e in _of(plan)}


def _of(plan: Plan | None) -> tuple[Exercise, ...]:
    return () if plan is None else plan.exercises


def exercises(
    engine: "Engine", client: int, plan: Plan | None, *, today: bool = False
) -> tuple[Exercise, ...]:
    """The plan's movements at the loads and walks that were moved since; `today`: as they are done today."""
    found: list[Exercise] = []
    for exercise in _of(plan):
        if exercise.scheme is Scheme.WALK:
            found += walks.now(engine, client, exercise, today=today)
        else:
            found.append(_at_load(engine, client, exercise))
    return tuple(found)


def _at_load(engine: "Engine", client: int, exercise: Exercise) -> Exercise:
    moved = facts.latest(engine.store, LoadMoved, client, movement=exercise.movement, applied=True)
    return exercise if moved is None else _with(exercise, owned(exercise, moved.use))


def _with(exercise: Exercise, use: Load | str | None) -> Exercise:
    match use:
        case None:
            return exercise
        case Load():
            return replace(exercise, load=use)
        case _:
            return replace(exercise, rung=use)


# What only a look at the calendar or at the days since can tell.
SINCE = frozenset({Caution.LAYOFF, Caution.MISSED_WEEK, Caution.ILL})


@dataclass(frozen=True, slots=True)
class Today:
    """A session now: its movements, a line for each that is eased, and reps to expect of each set by movement."""

    exercises: tuple[Exercise, ...]
    lines: tuple[str, ...]
    expected: dict[str, tuple[int, ...]]


def today(engine: "Engine", client: int, plan: Plan | None) -> Today:
    """What is done in a session now.

    The morning after, days off and illness are known only now; they may lower what was told, never raise it.
    """
    found, lines, expected = [], [], {}
    for exercise in exercises(engine, client, plan, today=True):
        advice = advice_on(engine, client, exercise, plan, now=True)
        if advice is not None and advice.cautions:
            lower = _lower(exercise, advice.use)
            exercise = _with(exercise, advice.use) if lower else exercise
            if lower or SINCE & set(advice.cautions):
                lines.append(f"{names(plan)[exercise.movement]}: {sentence(advice.because)}")
        found.append(exercise)
        if advice is not None and len(advice.expected_reps) >= len(exercise.aims):
            expected[exercise.movement] = tuple(max(1, reps) for reps in advice.expected_reps)
    return Today(tuple(found), tuple(lines), expected)


def _lower(exercise: Exercise, use: Load | str) -> bool:
    """Whether `use` is easier than what the movement is at."""
    order: list[Load | str] = [*exercise.reachable, *(rung.name for rung in exercise.rungs)]
    at = exercise.load if exercise.load is not None else exercise.rung
    return at in order and use in order and order.index(use) < order.index(at)


Advised = list[tuple[Exercise, Advice]]


def advised(engine: "Engine", client: int, session: str) -> Advised:
    """Each movement of the session with what the load model says to it."""
    from bot.engine import status

    plan = status.plan_of(engine, client)
    done = {one.movement for one in facts.current(engine.store, SetDone, client, session=session)}
    return [
        (exercise, advice)
        for exercise in exercises(engine, client, plan)
        if exercise.movement in done and (advice := advice_on(engine, client, exercise, plan)) is not None
    ]


def move(engine: "Engine", client: int, session: str, found: Advised) -> list[loads_asked.Told]:
    """Record what was advised, and the next walk; what the client is told of each."""
    from bot.engine import status

    walked = walks.moved(engine, client, session, status.plan_of(engine, client))
    moves = [_moved(engine, session, exercise, advice) for exercise, advice in found]
    return [put(engine, client, fact) for fact in (moves if walked is None else [*moves, walked])]


def move_again(engine: "Engine", client: int, session: str, found: Advised) -> list[loads_asked.Told]:
    """Record the loads of a session that another look at it changes, unless a coach has chosen since."""
    known = {one.movement: one for one in facts.current(engine.store, LoadMoved, client, session=session)}
    told = []
    for exercise, advice in found:
        fact, was = _moved(engine, session, exercise, advice), known.get(exercise.movement)
        if was is not None and fact.use != was.use and not loads_asked.decided(engine, client, was):
            told.append(put(engine, client, replace(fact, was=was.was)))
    return told


def put(engine: "Engine", client: int, fact: LoadMoved) -> loads_asked.Told:
    """The one way of the model's moves into the record: where the coach wants to be asked, a raise waits."""
    from bot.engine import recording

    fact = loads_asked.held_back(engine, client, fact)
    recording.record(engine, client, fact)
    loads_asked.ask(engine, people.by_id(engine.store, client), fact, engine.clock())
    return loads_asked.told(fact)


def _moved(engine: "Engine", session: str, exercise: Exercise, advice: Advice) -> LoadMoved:
    return LoadMoved(
        engine.clock(),
        session,
        exercise.movement,
        exercise.doing,
        shown(advice.use),
        advice.action.value,
        sentence(advice.because),
        advice.action is not Action.PAUSE,
        " ".join(map(str, advice.expected_reps)),
    )


def question(found: Advised) -> tuple[str, Question, tuple[Explanation, ...]] | None:
    """The movement whose numbers have two close readings, what tells them apart, and the two; at most one a session."""
    asks = ((exercise.movement, advice.question, advice.readings) for exercise, advice in found)
    return next(
        (
            (name, asked, tuple(one.name for one in read[:2]))
            for name, asked, read in asks
            if asked is not None
        ),
        None,
    )


def jump(engine: "Engine", client: int, session: str) -> float:
    """The largest share by which a load went up from the session before to this one; 0: none did."""
    from bot.engine import status

    most = 0.0
    for exercise in _of(status.plan_of(engine, client)):
        last = last_used(engine, client, exercise, last=2)
        used = [one.kilograms for one in last if isinstance(one, Load)]
        if len(used) == 2 and used[0] > 0:
            most = max(most, used[1] / used[0] - 1)
    return most
