"""Pause, resume, finish: what happens when the coach says so, and when a pause is over by itself."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import practice, quiet, status
from bot.engine.coach import pauses
from bot.engine.days import calendar
from bot.engine.numbers import reports, weeks
from conversations.protocol import Choice, Say
from conversations.words import coach as words
from conversations.words.common import counted
from core.calendar.zones import in_last_day, local
from core.digest import REVIEW_WEEKS
from core.facts import WORKED, CoachDid, LoadMoved, Paused, PlanEnded, PlanGiven, SessionEnded
from core.plan_text import plan_to_text
from core.store import duties, facts, people
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def paused(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """A pause began: no reminder in it, the client hears how long and why, and its end is planned."""
    client = people.by_id(engine.store, details["client"])
    pause = facts.latest(engine.store, Paused, client.id)
    if pause is None:
        return False
    duties.unplan(engine.store, client.id, "reminding")
    calendar.remind_next(engine, client, now)
    duties.unplan(engine.store, client.id, "pause_over")
    duties.plan(engine.store, client.id, "pause_over", {}, quiet.earliest(engine, client, pause.until), now)
    text = words.CLIENT_PAUSED.format(
        since=words.PAUSE_FROM.format(day=_day(pause.since, client)) if pause.since > now else "",
        day=_day(in_last_day(pause.until), client),
        because=words.BECAUSE.format(why=pause.why) if pause.why else "",
    )
    quiet.note(engine, client, text, now)
    return False


def _day(at: datetime, client: Person) -> str:
    return local(at, client.zone).strftime("%A %-d %B")


def resume(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The coach ends the pause before its time."""
    pause = facts.latest(engine.store, Paused, client.id)
    if pause is None or pause.until <= now:
        engine.say(coach, Say(words.NO_PAUSE.format(name=client.name)), now)
        return
    facts.put(engine.store, client.id, Paused(now, now, now, coach.id), now)
    facts.put(engine.store, client.id, CoachDid(now, coach.id, "resumed"), now)
    duties.unplan(engine.store, client.id, "pause_over")
    _goes_on(engine, client, now)
    engine.say(
        coach, Say(words.RESUMED.format(name=client.name), (words.to_card(client.name, client.id),)), now
    )


def pause_over(engine: "Engine", client: Person, about: dict[str, Any], now: datetime) -> None:
    """The pause is over by itself."""
    if pauses.paused_until(engine, client.id, now) is not None:
        return
    _goes_on(engine, client, now)
    coach = engine.coach_of(client)
    if coach is not None:
        quiet.note(engine, coach, words.PAUSE_IS_OVER.format(name=client.name), now)


def _goes_on(engine: "Engine", client: Person, now: datetime) -> None:
    calendar.remind_next(engine, client, now)
    engine.say(client, Say(words.CLIENT_GOES_ON), now)
    practice.show_plan(engine, client, now)


def finish(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The plan ends: the client reads what was reached, the coach is reminded of the review."""
    given = facts.current(engine.store, PlanGiven, client.id)
    if not given or status.plan_of(engine, client.id) is None:
        engine.say(coach, Say(words.NOTHING_TO_FINISH.format(name=client.name)), now)
        return
    used = sessions_done(engine, client) > 0
    for reader in (client, coach) if used else ():
        reports.send(engine, reader, client, now)
    engine.say(client, Say(recap(engine, client) if used else words.RECAP_UNUSED), now)
    facts.put(engine.store, client.id, PlanEnded(now, coach.id), now)
    facts.put(engine.store, client.id, CoachDid(now, coach.id, "finished"), now)
    duties.unplan(engine.store, client.id, "reminding")
    buttons = (
        Choice(words.NEW_PLAN, f"menu:planning:{client.id}"),
        Choice(words.SAME_PLAN_AGAIN, f"menu:again:{client.id}"),
    )
    built = pauses.plan_began(engine, client.id)
    review = words.REVIEW_NOW if built and now - built >= REVIEW_WEEKS * weeks.WEEK else words.REVIEW_EARLY
    text = words.FINISHED_COACH if used else words.FINISHED_UNUSED
    engine.say(coach, Say(text.format(name=client.name, review=review), buttons), now)


def recap(engine: "Engine", client: Person) -> str:
    """What the plan brought: sessions done, and each load from the first to the last."""
    head = words.RECAP_HEAD.format(sessions=counted(sessions_done(engine, client), "session"))
    return "\n".join([head, *load_lines(engine, client), words.RECAP_END])


def sessions_done(engine: "Engine", client: Person) -> int:
    """Sessions that ran as planned since the plan was built."""
    ended = facts.since(engine.store, SessionEnded, client.id, _began(engine, client))
    return sum(one.why in WORKED for one in ended)


def load_lines(engine: "Engine", client: Person) -> list[str]:
    """Each movement's load from the first to the last, where it moved."""
    moved = facts.since(engine.store, LoadMoved, client.id, _began(engine, client))
    changes: dict[str, tuple[str, str]] = {}
    for move in (one for one in moved if one.applied and one.was):
        first, _ = changes.get(move.movement, (move.was, ""))
        changes[move.movement] = (first, move.use)
    return [
        words.RECAP_LOAD.format(movement=words.movement(name), first=first, last=last)
        for name, (first, last) in changes.items()
        if first != last
    ]


def _began(engine: "Engine", client: Person) -> datetime:
    return pauses.plan_began(engine, client.id) or client.joined


def again(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The finished plan once more, at the loads reached."""
    plan = status.last_plan_of(engine, client.id)
    if plan is None or not pauses.is_finished(engine, client.id):
        return
    facts.put(engine.store, client.id, PlanGiven(now, plan_to_text(plan), coach.id), now)
    facts.put(engine.store, client.id, CoachDid(now, coach.id, "gave_plan"), now)
    calendar.remind_next(engine, client, now)
    practice.show_plan(engine, client, now)
    engine.say(coach, Say(words.AGAIN_SENT.format(name=client.name)), now)
