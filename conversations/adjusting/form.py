"""Which part, of which movement, to what, and why: said back in one line, then it goes out."""

from dataclasses import replace
from datetime import datetime

from conversations.adjusting import first_loads, movements
from conversations.adjusting.applying import changed_line, changed_plan, touched
from conversations.adjusting.state import (
    MOVEMENT_PARTS,
    Brief,
    Draft,
    parts,
    places,
    plan_now,
    plan_or_none,
    typed_part,
)
from conversations.adjusting.values import ask_value, fill_value
from conversations.answers import Unclear, Why, choice, pick
from conversations.form import Form, Outcome, dialogue
from conversations.planning.days import limits_broken
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import adjusting as adjusting_words
from conversations.words import coach as words
from conversations.words import planning as planning_words
from core.calendar.recurrence import Recurrence
from core.calendar.stored import when_from_text
from core.facts import CoachDid, PlanGiven
from core.plan_text import plan_to_text
from core.plans import Plan

LONGEST_WHY = 200
REASONS = tuple(Choice(label, value) for label, value in adjusting_words.CHANGE_REASONS)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    plan = plan_or_none(brief)
    if plan is None:
        return None
    if draft.part is None:
        return "part"
    if draft.part in MOVEMENT_PARTS and draft.movement is None and len(places(plan, draft.part)) > 1:
        return "movement"
    if draft.value is None:
        return "value"
    if (step := first_loads.missing(draft)) is not None:
        return step
    return "why" if draft.why is None else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    plan = plan_now(brief)
    match step:
        case "part":
            return Say(adjusting_words.CHANGE_PART.format(name=brief.client_name), parts(plan))
        case "movement":
            return Say(adjusting_words.CHANGE_MOVEMENT, _movements(plan, draft))
        case "value":
            return ask_value(brief, draft)
        case "loads" | "start":
            return first_loads.ask(brief, draft, step)
        case _:
            line = changed_line(brief, draft)
            return Say(
                adjusting_words.CHANGE_WHY.format(
                    name=brief.client_name, line=line, note=_note(brief, draft)
                ),
                REASONS,
            )


def _movements(plan: Plan, draft: Draft) -> tuple[Choice, ...]:
    if draft.part == "movements":
        return movements.movements(plan)
    return tuple(
        Choice(f"{words.movement(plan.exercises[at].movement)} {plan.exercises[at].doing}".strip(), str(at))
        for at in places(plan, draft.part)
    )


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    plan = plan_now(brief)
    match step:
        case "part":
            return replace(draft, part=typed_part(answer.text, parts(plan)))
        case "movement":
            return replace(draft, movement=choice(answer.text, _movements(plan, draft)))
        case "value":
            return fill_value(brief, draft, answer)
        case "loads" | "start":
            return first_loads.fill(draft, step, answer.text)
        case _:
            return replace(draft, why=_reason(" ".join(answer.text.split())[:LONGEST_WHY]) or None)


def _reason(plain: str) -> str:
    """A button's reason by its label too; else the coach's own line."""
    try:
        return pick(plain, REASONS)
    except Unclear as problem:
        if problem.reason is Why.WHICH_OPTION:
            raise
        return plain


def _note(brief: Brief, draft: Draft) -> str:
    """What a coach should see before it goes out."""
    plan = changed_plan(brief, draft)
    recurrence = when_from_text(plan.when) if plan.when and draft.part in ("days", "movements") else None
    if not isinstance(recurrence, Recurrence):
        return ""
    broken = limits_broken(plan, recurrence, brief.allowed)
    lines = (planning_words.named(planning_words.LIMITS[limit], brief.allowed) for limit in broken)
    return "".join(f"\n{line}" for line in lines)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The changed plan is given; it holds from the next session on."""
    if draft.why is None:
        return Outcome((Say(adjusting_words.NOTHING_TO_CHANGE.format(name=brief.client_name)),))
    line = changed_line(brief, draft)
    told = {
        "client": brief.client, "line": line, "why": draft.why, "movements": touched(brief, draft),
        "begun_on": brief.begun_on,
    }  # fmt: skip
    effects = (
        Record(PlanGiven(at, plan_to_text(changed_plan(brief, draft)), brief.coach, draft.why), brief.client),
        Record(CoachDid(at, brief.coach, "changed_plan", f"{line} {draft.why}"), brief.client),
        Do("plan_changed", told),
    )
    card = words.to_card(brief.client_name, brief.client)
    return Outcome((Say(adjusting_words.CHANGE_SENT.format(name=brief.client_name), (card,)),), effects)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    forget=first_loads.forget,
)
DIALOGUE = dialogue("adjusting", Brief, Draft, FORM)
