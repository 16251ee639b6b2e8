"""The days of a plan: typed, completed, read back, and why they may go over the usual limits."""

import re
from dataclasses import replace

from conversations.answers import Unclear, Why
from conversations.dates import Problem, Repeat
from conversations.planning.brief import Brief, current_days
from conversations.planning.days import NOT_WEEKLY, Days, limits_broken, read_days
from conversations.planning.draft import Draft
from conversations.protocol import Choice, Said, Say
from conversations.words import dates as date_words
from conversations.words import planning as words
from core.calendar.limits import Limit
from core.calendar.recurrence import Recurrence
from core.calendar.stored import when_from_text
from core.plans import Plan

AS_NOW = "as_now"
TO_COMPLETE = (Problem.NO_TIME, Problem.NO_DAY)
CLOCK = re.compile(r"\d.*")  # from the first figure on: the time that was said with days that were none
LONGEST_NOTE = 200  # characters
USUAL_DAYS = tuple(Choice(days, days.lower()) for days in words.USUAL_DAYS)
OTHER_DAYS = Choice(words.OTHER_DAYS, "other_days")


def ask_when(brief: Brief, draft: Draft) -> Say:
    """Which days, which reading of them, or what was missing."""
    none = Choice(words.WHEN_NONE, "none")
    if draft.readings:
        return Say(date_words.WHICH_ONE, (*readings(brief, draft), none))
    text = words.WHEN.format(zone=brief.zone)
    if draft.problem is not None:
        again = draft.problem == NOT_WEEKLY
        text = words.NOT_WEEKLY if again else date_words.NOT_UNDERSTOOD[Problem(draft.problem)]
    now = current_days(brief)
    return Say(text, (*([Choice(shown(brief, now), AS_NOW)] if now else USUAL_DAYS), none))


def readings(brief: Brief, draft: Draft) -> tuple[Choice, ...]:
    """What the typed days may mean, numbered from 1."""
    return tuple(Choice(shown(brief, text), str(no)) for no, text in enumerate(draft.readings, start=1))


def shown(brief: Brief, stored: str) -> str:
    """Days as said back."""
    recurrence = when_from_text(stored)
    assert isinstance(recurrence, Recurrence), "only weekly days are kept"
    return date_words.say_back(Repeat(recurrence), brief.zone, brief.face, brief.order)


def fill_when(brief: Brief, draft: Draft, answer: Said) -> Draft:
    """Days, or one more piece of them: what was understood before is kept."""
    said = answer.text.strip()
    if said.lower() in ("none", words.WHEN_NONE.lower()):
        return _days(draft, "")
    if said.lower() in (AS_NOW, *words.AS_NOW_TYPED):
        now = current_days(brief)
        return replace(draft, when=now, readings=()) if now is None else _days(draft, now)
    if said in {option.value for option in readings(brief, draft)}:
        return _days(draft, draft.readings[int(said) - 1])
    heard, days = _read(brief, draft, said, answer)
    if len(days.readings) == 1:
        return _days(draft, days.readings[0])
    return replace(draft, readings=days.readings, problem=days.problem, heard=heard)


def _days(draft: Draft, when: str) -> Draft:
    return replace(draft, when=when, readings=(), heard="", over=None)


def _read(brief: Brief, draft: Draft, said: str, answer: Said) -> tuple[str, Days]:
    """The words alone, else together with what was typed before; and what is to be completed next."""
    alone = read_days(said, answer.at, brief.zone, brief.order, brief.face)
    if alone.readings or not draft.heard:
        return (said if alone.problem in TO_COMPLETE else ""), alone
    clock = CLOCK.search(draft.heard)
    joined = [f"{draft.heard} {said}", f"{draft.heard} at {said}", *([f"{said} {clock[0]}"] if clock else [])]
    for both in joined:
        days = read_days(both, answer.at, brief.zone, brief.order, brief.face)
        if days.readings:
            return both, days
    return (said if alone.problem in TO_COMPLETE else draft.heard), alone


# --- over the usual limits ---
def limits_of(brief: Brief, plan: Plan) -> tuple[Limit, ...]:
    """The limits of this client that the plan's own days would break."""
    recurrence = when_from_text(plan.when) if plan.when else None
    return limits_broken(plan, recurrence, brief.allowed) if isinstance(recurrence, Recurrence) else ()


def to_confirm(brief: Brief, plan: Plan) -> tuple[Limit, ...]:
    """Those of them that the coach has to say a reason for: the ones about lifting."""
    return tuple(limit for limit in limits_of(brief, plan) if limit is not Limit.WALKS_A_DAY)


def ask_over(brief: Brief, plan: Plan) -> Say:
    """Why, in one line; or other days."""
    limits = words.named(
        words.AND.join(words.OVER_LIMITS[limit] for limit in to_confirm(brief, plan)), brief.allowed
    )
    when = shown(brief, plan.when or "")
    return Say(words.OVER.format(when=when, limits=limits, name=brief.client_name), (OTHER_DAYS,))


def fill_over(draft: Draft, answer: Said) -> Draft:
    """The coach's reason; "other days" asks for them again. Raises `Unclear`."""
    said = " ".join(answer.text.split())[:LONGEST_NOTE]
    if said.lower() in (OTHER_DAYS.value, OTHER_DAYS.label.lower(), *words.NO_TYPED):
        kept = tuple(one for one in draft.changes if one.part != "days")
        return replace(draft, when=None, changes=kept)
    if not any(sign.isalpha() for sign in said) or said.lower() in words.SEND_TYPED:
        raise Unclear(Why.NO_REASON)
    return replace(draft, over=said)
