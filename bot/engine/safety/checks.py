"""The body's signs over sessions, from facts: pain by day, and what the cuff checks say together."""

import math
from datetime import timedelta
from typing import TYPE_CHECKING

from bot.engine.training.history import REMEMBERED
from conversations.words.cuffs import over_weeks
from core.cuffs import limb_suffers
from core.cuffs.patterns import Checked, patterns
from core.facts import BandsOff, CuffChecked, Rated, SetDone
from core.pressure import Fit
from core.safety.asking import Part
from core.safety.pain import PainDay, Where, with_later
from core.store import duties, facts

if TYPE_CHECKING:
    from bot.engine.core import Engine

# A refill told by a button; own judgement, no source.
SECONDS = {"under_2": 1.5, "about_3": 3.0, "longer": 4.5}
TWO_DAYS_BEFORE = "48h"  # an earlier stored name of `Part.TWO_DAYS`
ONCE_IN = timedelta(days=28)  # the same pattern is not told twice within it; own caution, no source


def pain_days(engine: "Engine", client: int, session: str) -> tuple[PainDay, ...]:
    """Joint pain of the last sessions with a rating, oldest first, `session` last."""
    store, by_session = engine.store, dict[str, dict[str, int]]()
    rated = facts.last_sessions(store, Rated, client, REMEMBERED, what="pain")
    for one in facts.of_sessions(store, Rated, client, rated, what="pain"):
        burn = one.part == "after" and one.where == Where.MUSCLE
        by_session.setdefault(one.session, {})[one.part] = 0 if burn else one.score
    days = [_day(parts) for name, parts in by_session.items() if name != session]
    return (*days, _day(by_session.get(session, {})))


def _day(parts: dict[str, int]) -> PainDay:
    """The evening counts as during, the next morning and later as the morning: as when it was asked."""
    day = PainDay(parts.get("after", 0), parts.get("before"))
    for part in (*Part, TWO_DAYS_BEFORE):
        if part in parts:
            day = with_later(day, parts[part], same_day=part is Part.EVENING)
    return day


def last_off(engine: "Engine", client: int, session: str) -> BandsOff | None:
    """When the last bands of a session came off."""
    return facts.latest(engine.store, BandsOff, client, session=session)


def tell_patterns(engine: "Engine", client: int) -> None:
    """Weekly notes for the coach about the checks of the last sessions."""
    from bot.engine.safety import alerts

    told = {one.cause for one in duties.alerts_since(engine.store, client, engine.clock() - ONCE_IN)}
    for cause in patterns(checked(engine, client)):
        if cause not in told:
            alerts.raise_alert(engine, client, cause, over_weeks(cause), "-")


def checked(engine: "Engine", client: int) -> list[Checked]:
    """The checks of each of the last sessions, oldest first."""
    store, by_session = engine.store, dict[str, list[CuffChecked]]()
    sessions = facts.last_sessions(store, CuffChecked, client, REMEMBERED)
    for one in facts.of_sessions(store, CuffChecked, client, sessions):
        by_session.setdefault(one.session, []).append(one)
    sets = facts.of_sessions(store, SetDone, client, sessions)
    loose = {one.session for one in sets if one.loose}
    surprises = {one.session: found for one in sets if (found := _surprise(one)) is not None}
    return [
        Checked(
            any("slow_refill" in one.because for one in checks),
            session in loose,
            _fit(checks, surprises.get(session)),
        )
        for session, checks in by_session.items()
    ]


def _surprise(one: SetDone) -> float | None:
    """ln of set 1 over what was expected; None: another set, or one that ends at its number."""
    if one.set_no != 1 or one.expected is None or one.in_range is None:
        return None
    return math.log(max(one.reps, 0.5) / max(one.expected, 1))


def _fit(checks: list[CuffChecked], surprise: float | None) -> Fit:
    first = checks[0]
    refill = first.refill_s if first.refill_s is not None else SECONDS.get(first.refill)
    return Fit(first.tightness, refill, surprise)


def ended_numb(engine: "Engine", client: int, session: str) -> bool:
    """Whether the last look at the bands of this session found a limb numb, tingling, off-colour or odd."""
    last = facts.latest(engine.store, CuffChecked, client, session=session)
    if last is None:
        return False
    limbs = facts.current(
        engine.store, CuffChecked, client, session=session, spell=last.spell, check_no=last.check_no
    )
    return any(limb_suffers(one.because) for one in limbs)
