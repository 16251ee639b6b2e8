"""Bands that are to come off: from the moment somebody was told so, the calls of a time limit run until they are."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from core.cuffs.limits import calls
from core.facts import BandsOff
from core.plans import Region
from core.store import duties, facts
from core.store.duties import Watch

if TYPE_CHECKING:
    from bot.engine.core import Engine

# Own caution, no source. Bands this long on, or a talk this old, are no session any more: nothing waits for them.
OLD_BANDS = timedelta(hours=2)
OLD_TALK = timedelta(hours=3)


def told_off(engine: "Engine", person: int, session: str = "", spell: str = "") -> None:
    """The client was just told to take the bands off: asked again in 1 min, the coach in 2. Every spell, or this one."""
    now = engine.clock()
    for watch in duties.watches(engine.store, person):
        this = not session or (watch.session, watch.spell) == (session, spell)
        if this and watch.calls == 0 and now < watch.next_at:
            _limit_is_now(engine, watch, now)


def _limit_is_now(engine: "Engine", watch: Watch, now: datetime) -> None:
    """As if the limit were over: its first call was what the client was just told."""
    limit_s = max(1, round((now - watch.on_at).total_seconds()))
    again = calls(watch.on_at, limit_s, Region(watch.region))[1].at
    duties.limit_now(engine.store, watch, limit_s, again)


def said_off(engine: "Engine", person: int, since: datetime) -> BandsOff | None:
    """The last bands to come off, as the client says; None: some are on, or none came off since then."""
    off = facts.latest(engine.store, BandsOff, person)
    banded = bool(duties.watches(engine.store, person))
    return None if banded or off is None or off.at < since else off
