"""The questions after a session, planned by what that session was: whenever bands went on, however it ended."""

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.engine import quiet
from bot.engine.safety import checks
from bot.engine.training import loads
from conversations.words import safety
from core.facts import LAPSED, NOT_ON, WORKED, Answered, BandsOff, BandsOn, SessionEnded, SessionStarted
from core.safety.aftercare import NUMB_LIMIT
from core.safety.asking import After, Part, asked_after
from core.safety.causes import Cause
from core.screening.before import Today
from core.store import duties, facts, people, threads

if TYPE_CHECKING:
    from bot.engine.core import Engine

TOO_LATE = timedelta(hours=1)  # an evening's question that is later than this is left to the morning


def bands_were_on(engine: "Engine", client: int, session: str, at: datetime) -> None:
    """Bands went on: from here on this session has its questions, even if nothing ever says that it ended."""
    _plan(engine, client, session, at)


def ended(engine: "Engine", client: int, fact: SessionEnded) -> None:
    """The session is over, in whatever way: its questions by what is known now; silence is told to the coach."""
    worn = _worn(engine, client, fact.session)
    if not worn:
        return
    on = worn[-1]
    off = checks.last_off(engine, client, fact.session)
    _plan(engine, client, fact.session, min(fact.at, on.at if off is None else max(on.at, off.at)))
    if checks.ended_numb(engine, client, fact.session):
        said_numb(engine, client, fact.at if off is None else off.at, off=off is not None)
    if fact.why == LAPSED and not duties.watches(engine.store, client):  # else its calls tell the coach
        from bot.engine.safety import alerts

        alerts.raise_alert(engine, client, Cause.LAPSED, safety.LAPSED_SAID, "-")


def _worn(engine: "Engine", client: int, session: str) -> list[BandsOn]:
    """The spells of bands of a session, without those that, as the client says, never were."""
    never = {one.spell for one in facts.current(engine.store, BandsOff, client, session=session, why=NOT_ON)}
    on = facts.current(engine.store, BandsOn, client, session=session)
    return [one for one in on if one.spell not in never]


def said_numb(engine: "Engine", client: int, at: datetime, *, off: bool = False) -> None:
    """Numb, tingling, cold or blue: asked again ten minutes later, whatever is said until then. `off`: bands came off."""
    if duties.next_talk(engine.store, client, "still_numb") is None:
        _ask_still_numb(engine, client, at, off=off)


def came_off(engine: "Engine", client: int, fact: BandsOff) -> None:
    """The ten minutes count from the bands coming off."""
    if fact.why == NOT_ON and not _worn(engine, client, fact.session):
        _nothing_to_ask(engine, client, fact.session)
    if duties.next_talk(engine.store, client, "still_numb") is not None:
        duties.unplan(engine.store, client, "still_numb")
        _ask_still_numb(engine, client, fact.at, off=True)


def _nothing_to_ask(engine: "Engine", client: int, session: str) -> None:
    """No band was ever on: what is planned is not asked, and what is asked already is over."""
    from bot.engine import turns

    duties.unplan_session(engine.store, client, "morning", session)
    for thread in threads.live(engine.store, client):
        if thread.dialogue == "morning" and turns.state_of(thread).brief.session == session:
            threads.keep(engine.store, thread.id, None, None)


def _ask_still_numb(engine: "Engine", client: int, since: datetime, *, off: bool) -> None:
    last = facts.latest(engine.store, SessionStarted, client)
    about = {"session": last.session if last else "", "off": off}
    duties.plan(engine.store, client, "still_numb", about, since + NUMB_LIMIT, engine.clock())


def _plan(engine: "Engine", client: int, session: str, at: datetime) -> None:
    """In place of what was planned for this session: what is not asked yet, counted from `at`."""
    now, person = engine.clock(), people.by_id(engine.store, client)
    duties.unplan_session(engine.store, client, "morning", session)
    asked = duties.begun_days(engine.store, client, "morning", session)
    for part, due in asked_after(_after(engine, client, session, at), at, person.zone):
        awake = quiet.earliest(engine, person, due)
        in_time = awake == due > now - TOO_LATE  # else the morning asks the same
        if part.value not in asked and (in_time or part is not Part.EVENING):
            duties.plan(engine.store, client, "morning", {"session": session, "day": part.value}, awake, now)


def _after(engine: "Engine", client: int, session: str, at: datetime) -> After:
    """What matters for the questions after this session."""
    store = engine.store
    worked = {name for why in WORKED for name in facts.sessions(store, SessionEnded, client, why=why)}
    ends = [one for why in WORKED for one in facts.newest(store, SessionEnded, client, 2, why=why)]
    before = [one.at for one in ends if one.session != session]
    today = facts.latest(store, Answered, client, session=session, part="before", question="which")
    return After(
        number=len(worked - {session}) + 1,
        days_off=(at - max(before)).days if before else None,
        jump=loads.jump(engine, client, session),
        hot_or_feverish=today is not None and today.answer in (Today.HEAT, Today.FEVER),
        stopped=session not in worked,
    )
