"""A change to a plan: the plan with it, and the line that both sides read."""

from dataclasses import replace

from conversations import equipment
from conversations.adjusting import movements, own_rungs
from conversations.adjusting.state import MOVEMENT_PARTS, Brief, Draft, chosen, minutes, name, place, plan_now
from conversations.dates import Repeat
from conversations.planning import weaker_side
from conversations.words import adjusting as adjusting_words
from conversations.words import coach as words
from conversations.words import dates as date_words
from conversations.words import planning as planning_words
from conversations.words.plan import sides_text, tempo
from core.calendar.recurrence import Recurrence
from core.calendar.stored import when_from_text
from core.plan_changes import owned_in, with_owned
from core.plans import FIXED_AIMS, FIXED_OPEN_AIMS, OPEN_AIMS, Exercise, Plan, Scheme

SETS = {
    "open": (Scheme.OPEN, OPEN_AIMS),
    "fixed": (Scheme.FIXED, FIXED_AIMS),
    "fixed_open": (Scheme.FIXED, FIXED_OPEN_AIMS),
}


def changed_plan(brief: Brief, draft: Draft) -> Plan:
    """The plan with the change."""
    plan, value = plan_now(brief), draft.value or ""
    if draft.part == "days":
        return replace(plan, when=value or None)
    if draft.part == "ceiling":
        return replace(plan, pain_ceiling=int(value))
    if draft.part == "movements":
        return movements.changed(brief, draft)
    if draft.part == "owned":
        return with_owned(plan, equipment.kept(value))
    exercises = list(plan.exercises)
    exercises[place(plan, draft)] = _changed(chosen(plan, draft), draft, value)
    return replace(plan, exercises=tuple(exercises))


def _changed(one: Exercise, draft: Draft, value: str) -> Exercise:
    match draft.part:
        case "scheme":
            scheme, aims = SETS[value]
            return replace(one, scheme=scheme, aims=aims)
        case "tempo":
            return replace(one, tempo_s=int(value))
        case "side":
            return replace(one, sides=weaker_side.kept(value))
        case "minutes" if one.scheme is Scheme.WALK:
            return replace(one, walk_min=int(value), limit_min=max(one.limit_min, int(value)))
        case "minutes":
            return replace(one, limit_min=int(value))
        case _:
            owned = next((each for each in one.reachable if str(each) == value), None)
            return replace(one, load=owned) if owned is not None else own_rungs.at(one, value)


def changed_line(brief: Brief, draft: Draft) -> str:
    """The change in one line, for both sides."""
    plan, value = plan_now(brief), draft.value or ""
    match draft.part:
        case "days":
            return adjusting_words.LINE_DAYS.format(
                days=shown_days(brief, value) if value else planning_words.NO_DAYS
            )
        case "ceiling":
            return adjusting_words.LINE_CEILING.format(was=plan.pain_ceiling, now=value)
        case "scheme":
            return adjusting_words.LINE_SCHEME.format(
                movement=name(plan, draft), now=dict(adjusting_words.SCHEME_NAMES)[value]
            )
        case "movements":
            return movements.line(brief, draft)
        case "owned":
            return _line_owned(plan, changed_plan(brief, draft))
        case "side":
            now = sides_text(chosen(changed_plan(brief, draft), draft))
            return adjusting_words.LINE_SIDE.format(movement=name(plan, draft), now=now)
        case "tempo":
            was, now = tempo(chosen(plan, draft).tempo_s), tempo(int(value))
            return adjusting_words.LINE_TEMPO.format(movement=name(plan, draft), was=was, now=now)
        case "minutes":
            one = chosen(plan, draft)
            return adjusting_words.LINE_MINUTES.format(
                movement=name(plan, draft), was=minutes(one), now=value
            )
        case _:
            one = chosen(plan, draft)
            now = value + (adjusting_words.BETWEEN_MEASURED if own_rungs.is_new(one, value) else "")
            return adjusting_words.LINE_LOAD.format(movement=name(plan, draft), was=one.doing, now=now)


def _line_owned(plan: Plan, changed: Plan) -> str:
    """What there is to train with, and which loads follow from it."""
    moved = [
        adjusting_words.LINE_LOAD.format(movement=words.movement(was.movement), was=was.doing, now=now.doing)
        for was, now in zip(plan.exercises, changed.exercises, strict=True)
        if was.doing != now.doing
    ]
    return " ".join([adjusting_words.LINE_OWNED.format(now=equipment.listed(owned_in(changed))), *moved])


def touched(brief: Brief, draft: Draft) -> list[str]:
    """The movements whose load holds from now on as it stands in the changed plan."""
    if draft.part == "movements":
        return movements.touched(draft)
    plan = plan_now(brief)
    if draft.part in MOVEMENT_PARTS:
        return [chosen(plan, draft).movement]
    pairs = zip(plan.exercises, changed_plan(brief, draft).exercises, strict=True)
    return [now.movement for was, now in pairs if was.doing != now.doing]


def shown_days(brief: Brief, stored: str) -> str:
    """Weekly days as they are said back."""
    recurrence = when_from_text(stored)
    assert isinstance(recurrence, Recurrence), "only weekly days are kept"
    return date_words.say_back(Repeat(recurrence), brief.zone, brief.face, brief.order)
