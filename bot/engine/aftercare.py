"""The questions after a session, planned by what that session was."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import loads
from core.facts import WORKED, Answered, SessionEnded
from core.safety.asking import After, asked_after
from core.screening.before import Today
from core.store import duties, facts
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def plan_aftercare(engine: "Engine", client: Person, session: str, now: datetime) -> None:
    """The next morning's questions; the evening and two days later after sessions that need care."""
    for part, at in asked_after(_after(engine, client, session, now), now, client.zone):
        duties.plan(engine.store, client.id, "morning", {"session": session, "day": part.value}, at, now)


def _after(engine: "Engine", client: Person, session: str, now: datetime) -> After:
    """What matters for the questions after this session."""
    ended = [one for one in facts.current(engine.store, SessionEnded, client.id) if one.why in WORKED]
    before = [one.at for one in ended if one.session != session]
    today = facts.latest(engine.store, Answered, client.id, session=session, part="before", question="which")
    return After(
        number=len(before) + 1,
        days_off=(now - max(before)).days if before else None,
        jump=loads.jump(engine, client.id, session),
        hot_or_feverish=today is not None and today.answer in (Today.HEAT, Today.FEVER),
    )
