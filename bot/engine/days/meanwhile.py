"""Days that changed while somebody was asked about them: an answer about the old ones never writes over the new ones."""

from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import status
from conversations import adjusting, changing
from conversations.planning import brief as planning_brief
from conversations.protocol import Effect, Record, Say, Turn
from conversations.words import changing as words
from core.facts import CalendarChanged, PlanGiven
from core.plan_text import plan_from_text, plan_to_text
from core.store import threads
from core.store.people import Person
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine


def asked_once_more(
    engine: "Engine", person: Person, thread: Thread, state: Any, turn: Turn[Any], now: datetime
) -> bool:
    """Whether an answer was about days that are no more; then the same words are read on the days of now."""
    from bot.engine import turns

    brief = getattr(state, "brief", None)
    if not isinstance(brief, changing.Brief) or not _changes_days(turn.effects):
        return False
    plan = status.plan_of(engine, brief.client)
    if brief.planned_when == ((plan.when or "") if plan is not None else ""):
        return False
    threads.keep(engine.store, thread.id, None, None)
    engine.say(person, Say(words.DAYS_MEANWHILE), now)
    turns.begin(engine, person, "changing", _as_said(brief, state.draft), now)
    return True


def _changes_days(effects: tuple[Effect, ...]) -> bool:
    return any(isinstance(one, Record) and isinstance(one.fact, CalendarChanged) for one in effects)


def _as_said(brief: changing.Brief, draft: changing.Draft) -> dict[str, Any]:
    """What began the talk, for one on the days of now. A reading that was picked is asked about anew."""
    about = {"client": brief.client, "said": draft.said or "", "wish": brief.wish}
    about |= {"date_order": draft.order or brief.date_order}
    if draft.said_at is not None:
        about |= {"said_at": draft.said_at.isoformat()}
    if brief.move_to is not None and not draft.said:
        about |= {"move_day": brief.move_day, "move_to": brief.move_to.isoformat()}
    return about


def with_days_of_now(engine: "Engine", state: Any, turn: Turn[Any]) -> Turn[Any]:
    """A plan that was to keep its days keeps those of now, not those of when the coach began."""
    brief = getattr(state, "brief", None)
    if isinstance(brief, adjusting.Brief):
        text = brief.at_loads
    elif isinstance(brief, planning_brief.Brief):
        text = brief.current
    else:
        return turn
    plan = status.home_plan_of(engine, brief.client)
    if not text or plan is None:
        return turn
    was = plan_from_text(text).when
    return replace(turn, effects=tuple(_on_days(one, was, plan.when) for one in turn.effects))


def _on_days(effect: Effect, was: str | None, now: str | None) -> Effect:
    if not isinstance(effect, Record) or not isinstance(effect.fact, PlanGiven):
        return effect
    plan = plan_from_text(effect.fact.plan)
    if plan.when != was or was == now:
        return effect
    return replace(effect, fact=replace(effect.fact, plan=plan_to_text(replace(plan, when=now))))
