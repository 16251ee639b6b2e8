"""One client's card: what a coach needs to know in ten seconds, and what can be done from it."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import status
from bot.engine.coach import allowing, away, loads_asked, pauses, plans, reading_plans, stopping_session
from bot.engine.coach import clients as whose
from bot.engine.days import calendar
from bot.engine.joining import clearances, screenings
from bot.engine.numbers import trends, weeks
from bot.engine.safety import alert_text, unseen
from bot.engine.training import reading
from conversations.protocol import Choice, Say
from conversations.words import adjusting as adjusting_words
from conversations.words import clips as clip_words
from conversations.words import coach as words
from conversations.words import report as report_words
from conversations.words import review as review_words
from conversations.words import travelling as travelling_words
from conversations.words.screening import in_words
from core.calendar.zones import in_last_day, local
from core.cuffs.limbs import Limb, places_of, resting
from core.digest import needs
from core.facts import (
    WORKED,
    Answered,
    PlanEnded,
    PlanGiven,
    Rated,
    SessionEnded,
    SessionStarted,
    SetDone,
    WalkDone,
)
from core.store import duties, facts, mail, people, settings
from core.store.mail import Letter
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

SESSIONS = 3
CHART_SEEN = "chart_seen:{coach}"  # a setting: what the last chart showed that this coach got from a card
ALERT_BUTTONS = 2


def show(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The card, its buttons, and the chart where there is something to draw."""
    plans.put_on_table(engine, coach, client)
    name = whose.name_of(engine, coach, client, now)
    week = weeks.week_of(engine, client, now, name)
    state = ", ".join(words.REASONS[need] for need in needs(week))
    head = words.LINE.format(name=name, state=state) if state else name
    lines = [
        head,
        *stand_in(engine, coach, client),
        *clearance(engine, client),
        *plan_lines(engine, client, now),
    ]
    lines += [*allowing.card_lines(engine, client), *unseen.card_lines(engine, client)]
    lines += [*next_lines(engine, coach, client), *sessions(engine, client), *course(engine, client, now)]
    lines += open_lines(engine, client)
    asked = loads_asked.waiting(engine, client.id)
    lines += [
        words.ASKED_LINE.format(movement=words.movement(one.movement), was=one.was, use=one.use)
        for one in asked
    ]
    chart(engine, coach, client, name, now)
    engine.say(coach, Say("\n".join(line for line in lines if line), buttons(engine, client)), now)


def chart(engine: "Engine", coach: Person, client: Person, name: str, now: datetime) -> None:
    """Set 1 against its range, and the load steps; not again while nothing was trained since it was seen."""
    panels = weeks.panels_of(engine, client, name, now)
    # A count, nothing about the client; `erasure.SETTINGS_ABOUT` knows it.
    seen = f"{client.id}:{sum(len(panel['days']) for panel in panels)}"
    setting = CHART_SEEN.format(coach=coach.id)
    if not panels or coach.chat is None or settings.get(engine.store, setting) == seen:
        return
    settings.put(engine.store, setting, seen)
    body = {"text": "", "chart": {"panels": panels}}
    mail.post(engine.store, Letter(coach.chat, body, "chart", person=coach.id), now)


def stand_in(engine: "Engine", coach: Person, client: Person) -> list[str]:
    """Whose client this is, for somebody who stands in."""
    if client.coach is None or client.coach == coach.id:
        return []
    return [words.AWAY.format(coach=people.by_id(engine.store, client.coach).name)]


def clearance(engine: "Engine", client: Person) -> list[str]:
    """What is cleared and until when, which limbs are closed."""
    screened = screenings.about(engine, client, None)
    limbs = in_words(places_of({Limb(name) for name in (screened or {}).get("closed", ())}))
    closed = words.CLOSED.format(limbs=limbs) if limbs else ""
    closed += words.NO_FAILURE if status.no_failure(engine, client.id) else ""
    last = clearances.decision(engine, client.id)
    until = words.UNTIL.format(day=_day(last.until, client)) if last is not None and last.until else ""
    asked = duties.next_talk(engine.store, client.id, "hold_over")
    if last is not None and last.decision == "held" and asked is not None:
        until = words.UNTIL.format(day=_day(asked.due_at, client))
    decided = clearances.decided(engine, client)
    if last is not None and last.regions:
        regions = in_words(places_of(clearances.limbs(engine, client.id)))
        return [words.CLEARED_FOR.format(regions=regions, until=until, closed=closed), decided]
    known = {"held": words.ON_HOLD, "declined": words.DECLINED}
    text = known.get(last.decision if last else "", words.NOT_CLEARED)
    return [text.format(until=until, closed=closed), decided]


def plan_lines(engine: "Engine", client: Person, now: datetime) -> list[str]:
    """Goal and plan."""
    given = facts.latest(engine.store, PlanGiven, client.id)
    plan = status.plan_of(engine, client.id)
    if given is None:
        return [words.NO_PLAN]
    rests = resting_line(engine, client)
    if plan is None and rests:
        return rests
    if plan is None:
        ended = facts.latest(engine.store, PlanEnded, client.id)
        return [words.PLAN_FINISHED.format(day=_day(ended.at if ended else now, client))]
    at_loads = reading_plans.at_loads(engine, client.id, plan)
    return [
        words.GOAL.format(goal=plan.goal.value),
        words.PLAN.format(day=_day(given.at, client), plan=words.plan_short(at_loads)),
        *rests,
        *travel_line(engine, client, now),
    ]


def travel_line(engine: "Engine", client: Person, now: datetime) -> list[str]:
    """Without equipment for which days, on now or still to come."""
    travel = away.active(engine, client.id, now)
    if travel is None:
        return []
    last = _day(in_last_day(travel.until), client)
    if travel.since <= now:
        return [travelling_words.TRAVEL_UNTIL.format(day=last)]
    return [travelling_words.TRAVEL_TO_COME.format(first=_day(travel.since, client), last=last)]


def resting_line(engine: "Engine", client: Person) -> list[str]:
    """The movements of the usual plan that a closed limb keeps out."""
    plan = status.home_plan_of(engine, client.id)
    limbs = clearances.limbs(engine, client.id)
    closed = resting(plan, limbs) if plan is not None and limbs else ()
    names = ", ".join(words.movement(one.movement) for one in closed)
    return [words.RESTS.format(movements=names)] if closed else []


def next_lines(engine: "Engine", coach: Person, client: Person) -> list[str]:
    """The next session on the coach's clock, unless none may be held now, and a pause, on now or still to come."""
    may = clearances.now(engine, client.id).why is None
    coming = calendar.next_at(engine, client) if may else None
    when = local(coming, coach.zone).strftime("%a %-d %b, %H:%M") if coming is not None else ""
    session = [words.NEXT_AT.format(when=when)] if when else []
    pause = pauses.coming(engine, client.id, engine.clock())
    if pause is None:
        return session
    since = words.FROM.format(day=_day(pause.since, client)) if pause.since > engine.clock() else ""
    why = f" ({pause.why})" if pause.why else ""
    line = words.PAUSED_UNTIL.format(since=since, day=_day(in_last_day(pause.until), client), why=why)
    return [*(session if since else []), line]


def sessions(engine: "Engine", client: Person) -> list[str]:
    """The last three in numbers."""
    started = facts.newest(engine.store, SessionStarted, client.id, SESSIONS)
    if not started:
        return [words.NO_SESSION]
    return [words.LAST_THREE, *(_session(engine, client, one) for one in started)]


def _session(engine: "Engine", client: Person, started: SessionStarted) -> str:
    store, session = engine.store, started.session
    walks = facts.current(store, WalkDone, client.id, session=session)
    parts = [status.sets_line(facts.current(store, SetDone, client.id, session=session))]
    parts += [words.WALKED.format(minutes=walk.minutes) for walk in walks]
    rated = facts.current(store, Rated, client.id, session=session)
    pain = max((one.score for one in rated if one.what == "pain"), default=None)
    effort = max((one.score for one in rated if one.what == "effort"), default=None)
    parts += [words.PAIN.format(score=pain)] if pain is not None else []
    parts += [words.EFFORT.format(score=effort)] if effort is not None else []
    heavy = facts.latest(store, Answered, client.id, session=session, part="before", question="heavy")
    parts += [words.TRAINED_BEFORE] if heavy is not None and heavy.answer == "yes" else []
    ended = facts.latest(store, SessionEnded, client.id, session=session)
    if ended is None:
        parts.append(words.UNDER_WAY)
    elif ended.why not in WORKED:
        parts.append(words.STOPPED)
    text = ", ".join(part for part in parts if part) or words.NO_SETS
    return f"{local(started.at, client.zone).strftime('%a %-d %b')}: {text}"


def course(engine: "Engine", client: Person, now: datetime) -> list[str]:
    """Weekly load, reps at equal load, and what the last numbers look like."""
    week, strength = trends.week_of(engine, client, now), trends.strength(engine, client)
    lines = [words.week_load(week)] if week is not None else []
    lines += [words.trend(name, found) for name, found in strength.items()]
    return [*lines, *reading.for_coach(engine, client)]


def open_lines(engine: "Engine", client: Person) -> list[str]:
    """Open alerts, by what they are about."""
    causes = [alert_text.cause_line(alert) for alert in duties.open_alerts(engine.store, client.id)]
    return [words.ALERTS.format(causes="; ".join(causes))] if causes else []


def buttons(engine: "Engine", client: Person) -> tuple[Choice, ...]:
    """What can be done from the card, an open alert first."""
    still_open = duties.open_alerts(engine.store, client.id)[:ALERT_BUTTONS]
    paused = pauses.coming(engine, client.id, engine.clock()) is not None
    first = [
        Choice(
            words.SHOW_ALERT.format(cause=words.cut(alert_text.cause_line(alert), 30)),
            f"menu:alert:{alert.id}",
        )
        for alert in still_open
    ]
    planned = status.plan_of(engine, client.id) is not None
    pairs = (
        (words.MESSAGE, "message"),
        (adjusting_words.CHANGE, "change") if planned else (words.NEW_PLAN, "planning"),
        (words.RESUME, "resume") if paused else (words.PAUSE, "pause"),
        (words.CLEARANCE, "clearing"),
        *(((clip_words.ASK_FOR_FILM, "ask_clip"),) if planned else ()),
        (report_words.REPORT, "report"),
        (words.THE_PLAN, "the_plan"),
        (words.MORE, "more"),
    )
    asked = [
        button
        for move in loads_asked.waiting(engine, client.id)[:1]
        for button in loads_asked.buttons(client, move)
    ]
    stop = (stopping_session.button(client),) if stopping_session.under_way(engine, client) else ()
    due = planned and weeks.review_due(engine, client, engine.clock())
    review = (Choice(review_words.REVIEW, f"menu:review:{client.id}"),) if due else ()
    return (
        *stop,
        *first,
        *asked,
        *review,
        *(Choice(label, f"menu:{act}:{client.id}") for label, act in pairs),
    )


def _day(at: datetime, client: Person) -> str:
    return local(at, client.zone).strftime("%-d %b %Y")
