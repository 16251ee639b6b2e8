"""The sets of the last session, also those without a count: it lapsed before that was told, or it was left blank."""

from dataclasses import replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

import msgspec

from conversations.protocol import Record
from conversations.session import tally
from conversations.session.state import Brief, Counted, State
from core.cuffs.rules import Verdict
from core.facts import NOT_ON, BandsOff, BandsOn, CuffChecked, SetDone
from core.store import facts, threads
from core.stored_names import names_in

if TYPE_CHECKING:
    from bot.engine.core import Engine

WITHIN = timedelta(hours=48)  # after the set; later words are about something else; own choice
PASSED = frozenset({Verdict.GO, Verdict.EASE})
NO_COUNT = -1  # reps of a set whose count is only coming; never stored


def of_last_session(engine: "Engine", client: int, now: datetime) -> list[SetDone]:
    """The sets of the last session, unless it is long ago; those without a count last."""
    missing = without_count(engine, client)
    newest = missing[-1] if missing else facts.latest(engine.store, SetDone, client)
    if newest is None or now - newest.done_at > WITHIN:
        return []
    return [*facts.current(engine.store, SetDone, client, session=newest.session), *missing]


def told(sets: list[SetDone]) -> list[SetDone]:
    """Those that have a count."""
    return [one for one in sets if one.reps != NO_COUNT]


def of_place(engine: "Engine", client: int, session: str, exercise_no: int, set_no: int) -> list[SetDone]:
    """One set, each side by itself, with its count or without."""
    where = {"session": session, "exercise_no": exercise_no, "set_no": set_no}
    missing = (one for one in without_count(engine, client) if one.session == session)
    uncounted = [one for one in missing if (one.exercise_no, one.set_no) == (exercise_no, set_no)]
    return [*facts.current(engine.store, SetDone, client, **where), *uncounted]


def _session(engine: "Engine", client: int) -> str | None:
    """The last session in which bands were on; None: there is none, or its brief is not known any more."""
    never = {(one.session, one.spell) for one in facts.newest(engine.store, BandsOff, client, 2, why=NOT_ON)}
    worn = [
        one for one in facts.newest(engine.store, BandsOn, client, 3) if (one.session, one.spell) not in never
    ]
    brief = _brief(engine, client)
    return worn[0].session if worn and brief is not None and brief.session == worn[0].session else None


def without_count(engine: "Engine", client: int) -> list[SetDone]:
    """Every set of the last session that was planned after a passed check and has no count, each side by itself."""
    brief, name = _brief(engine, client), _session(engine, client)
    if brief is None or name is None:
        return []
    known = facts.current(engine.store, SetDone, client, session=name)
    counted = {(one.exercise_no, one.set_no, one.side) for one in known}
    checks = facts.current(engine.store, CuffChecked, client, session=name)
    planned = [one for no in _begun(checks) for one in _planned(engine, client, brief, no)]
    return [one for one in planned if (one.exercise_no, one.set_no, one.side) not in counted]


def _begun(checks: list[CuffChecked]) -> list[int]:
    """The numbers of the movements whose last fit passed: only there a set can have been done."""
    fits: dict[tuple[str, int], list[str]] = {}
    for one in checks:
        fits.setdefault((one.spell, one.check_no), []).append(one.verdict)
    passed = (spell for (spell, _), verdicts in fits.items() if set(verdicts) <= PASSED)
    return sorted({int(spell.split(".")[0]) for spell in passed})


def _brief(engine: "Engine", client: int) -> Brief | None:
    text = threads.last_brief(engine.store, client, "session")
    return None if text is None else msgspec.json.decode(text, type=Brief)


def _planned(engine: "Engine", client: int, brief: Brief, exercise_no: int) -> list[SetDone]:
    """The sets of one movement as the session would have stored them, without their counts."""
    at = _off_at(engine, client, brief.session, exercise_no)
    checks = facts.current(engine.store, CuffChecked, client, session=brief.session)
    last = next((one for one in reversed(checks) if one.spell.startswith(f"{exercise_no}.")), None)
    state = State(brief, exercise=exercise_no - 1)
    if last is not None:
        state = replace(state, tightness=last.tightness, loose="loose" in names_in(last.because))
    none = (NO_COUNT,) * len(state.doing.sides)
    made = [tally.facts(state, at, Counted(no, at, reps=none)) for no in range(1, state.sets + 1)]
    return [
        one.fact for each in made for one in each if isinstance(one, Record) and isinstance(one.fact, SetDone)
    ]


def _off_at(engine: "Engine", client: int, session: str, exercise_no: int) -> datetime:
    """When the bands of this movement came off, or went on where nobody said so: the set was done about then."""
    spells: list[BandsOn | BandsOff] = [
        *facts.current(engine.store, BandsOn, client, session=session),
        *facts.current(engine.store, BandsOff, client, session=session),
    ]
    return max(one.at for one in spells if one.spell.startswith(f"{exercise_no}."))
