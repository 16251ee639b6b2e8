"""Which part, of which movement, to what, and why: said back in one line, then it goes out."""

from dataclasses import replace
from datetime import datetime

from conversations.adjusting import movements, own_rungs
from conversations.adjusting.applying import changed_line, changed_plan, shown_days, tempo
from conversations.adjusting.state import (
    MOVEMENT_PARTS,
    Brief,
    Draft,
    chosen,
    minutes,
    name,
    parts,
    places,
    plan_now,
    plan_or_none,
)
from conversations.answers import Unclear, Why, choice, load, pick, whole_number
from conversations.form import Form, Outcome, dialogue
from conversations.planning_days import limits_broken, read_days
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import adjusting as adjusting_words
from conversations.words import coach as words
from conversations.words import dates as date_words
from conversations.words import planning as planning_words
from core.calendar.recurrence import Recurrence
from core.calendar.stored import when_from_text
from core.facts import CoachDid, PlanGiven
from core.plan_text import plan_to_text
from core.plans import HIGHEST_PAIN_CEILING, LONGEST_MIN, TEMPOS_S, Exercise, Plan, Scheme

MOST_BUTTONS = 8
LONGEST_WHY = 200
FEWEST_MIN = 3  # of bands on; own caution, no source
REASONS = tuple(Choice(label, value) for label, value in adjusting_words.CHANGE_REASONS)
SCHEMES = tuple(Choice(label, value) for label, value in adjusting_words.SCHEMES)
TEMPOS = tuple(Choice(tempo(seconds), str(seconds)) for seconds in TEMPOS_S)


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
            return _ask_value(brief, draft, plan)
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


def _ask_value(brief: Brief, draft: Draft, plan: Plan) -> Say:
    if draft.readings:
        return Say(
            date_words.WHICH_ONE, tuple(Choice(shown_days(brief, text), text) for text in draft.readings)
        )
    match draft.part:
        case "days":
            text = (
                adjusting_words.CHANGE_DAYS_UNCLEAR
                if draft.unclear
                else adjusting_words.CHANGE_DAYS.format(zone=brief.zone)
            )
            return Say(text, (Choice(planning_words.WHEN_NONE, "none"),))
        case "ceiling":
            return Say(adjusting_words.CHANGE_CEILING.format(now=plan.pain_ceiling), _ceilings())
        case "scheme":
            return Say(adjusting_words.CHANGE_SCHEME.format(movement=name(plan, draft)), _schemes(brief))
        case "movements":
            return movements.ask(brief, draft)
        case "tempo":
            pace = tempo(chosen(plan, draft).tempo_s)
            return Say(adjusting_words.CHANGE_TEMPO.format(movement=name(plan, draft), now=pace), TEMPOS)
        case "minutes":
            now = minutes(chosen(plan, draft))
            return Say(
                adjusting_words.CHANGE_MINUTES.format(
                    movement=name(plan, draft), now=now, most=_most(plan, draft)
                )
            )
        case _:
            one = chosen(plan, draft)
            text = adjusting_words.CHANGE_LOAD.format(movement=name(plan, draft), now=one.doing)
            return Say(text + adjusting_words.OWN_RUNGS.get(one.movement, ""), _near(one))


def _schemes(brief: Brief) -> tuple[Choice, ...]:
    """No sets to failure where the clearance forbids them."""
    return tuple(one for one in SCHEMES if not (brief.no_failure and one.value != Scheme.FIXED))


def _ceilings() -> tuple[Choice, ...]:
    return tuple(Choice(str(score), str(score)) for score in range(HIGHEST_PAIN_CEILING + 1))


def _order(one: Exercise) -> list[str]:
    return [str(owned) for owned in one.reachable] or [rung.name for rung in one.rungs]


def _near(one: Exercise) -> tuple[Choice, ...]:
    """The loads or rungs around the one of now, which itself is no change."""
    order = _order(one)
    at = order.index(one.doing) if one.doing in order else 0
    begin = max(0, min(at - MOST_BUTTONS // 2, len(order) - MOST_BUTTONS - 1))
    return tuple(Choice(each, each) for each in order[begin : begin + MOST_BUTTONS + 1] if each != one.doing)


def _most(plan: Plan, draft: Draft) -> int:
    return LONGEST_MIN[chosen(plan, draft).region]


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    plan = plan_now(brief)
    match step:
        case "part":
            return replace(draft, part=choice(answer.text, parts(plan)))
        case "movement":
            return replace(draft, movement=choice(answer.text, _movements(plan, draft)))
        case "value":
            return _fill_value(brief, draft, answer)
        case _:
            return replace(draft, why=_reason(" ".join(answer.text.split())[:LONGEST_WHY]) or None)


def _fill_value(brief: Brief, draft: Draft, answer: Said) -> Draft:
    plan = plan_now(brief)
    match draft.part:
        case "days":
            return _fill_days(brief, draft, answer)
        case "ceiling":
            return replace(draft, value=str(whole_number(answer.text, 0, HIGHEST_PAIN_CEILING)))
        case "scheme":
            return replace(draft, value=choice(answer.text, _schemes(brief)))
        case "movements":
            return replace(draft, value=choice(answer.text, movements.options(brief, draft)))
        case "tempo":
            return replace(draft, value=choice(answer.text, TEMPOS))
        case "minutes":
            return replace(draft, value=str(whole_number(answer.text, FEWEST_MIN, _most(plan, draft))))
        case _:
            return replace(draft, value=_load(chosen(plan, draft), answer.text))


def _load(one: Exercise, text: str) -> str:
    order, own = _order(one), own_rungs.read(one, text)
    if own is not None:
        return own
    if one.reachable and text not in order:
        text = str(load(text, one.reachable[0].unit))
    if text not in order:
        return choice(text, tuple(Choice(each, each) for each in order[:MOST_BUTTONS]))
    return text


def _fill_days(brief: Brief, draft: Draft, answer: Said) -> Draft:
    said = answer.text.strip()
    if said.lower() in ("none", planning_words.WHEN_NONE.lower()):
        return replace(draft, value="", readings=())
    if said in draft.readings:
        return replace(draft, value=said, readings=())
    days = read_days(said, answer.at, brief.zone)
    if len(days.readings) == 1:
        return replace(draft, value=days.readings[0], readings=())
    return replace(draft, readings=days.readings, unclear=not days.readings)


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


def _touched(brief: Brief, draft: Draft) -> str:
    """The movement whose load holds from now on as it stands in the plan; "": none."""
    if draft.part == "movements":
        return movements.touched(draft)
    return chosen(plan_now(brief), draft).movement if draft.part in MOVEMENT_PARTS else ""


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The changed plan is given; it holds from the next session on."""
    if draft.why is None:
        return Outcome((Say(adjusting_words.NOTHING_TO_CHANGE.format(name=brief.client_name)),))
    line = changed_line(brief, draft)
    told = {"client": brief.client, "line": line, "why": draft.why, "movement": _touched(brief, draft)}
    effects = (
        Record(PlanGiven(at, plan_to_text(changed_plan(brief, draft)), brief.coach, draft.why), brief.client),
        Record(CoachDid(at, brief.coach, "changed_plan", f"{line} {draft.why}"), brief.client),
        Do("plan_changed", told),
    )
    card = words.to_card(brief.client_name, brief.client)
    return Outcome((Say(adjusting_words.CHANGE_SENT.format(name=brief.client_name), (card,)),), effects)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(), missing=missing, ask=ask, fill=fill, finish=finish
)
DIALOGUE = dialogue("adjusting", Brief, Draft, FORM)
