"""Another movement: in the place of one, one more, or one less."""

from conversations.adjusting import first_loads
from conversations.adjusting.state import Brief, Draft, place, plan_now
from conversations.protocol import Choice, Say
from conversations.words import adjusting as adjusting_words
from conversations.words import coach as words
from conversations.words.plan import exercise_text
from core.cuffs.limbs import opened
from core.movements import MOVEMENTS
from core.plan_changes import to_add, with_movement, without_movement
from core.plans import Plan

OUT = Choice(adjusting_words.TAKE_OUT, "out")


def movements(plan: Plan) -> tuple[Choice, ...]:
    """Those of the plan by their place, and one more."""
    named = [f"{words.movement(one.movement)} {one.doing}".strip() for one in plan.exercises]
    return tuple(Choice(label, str(at)) for at, label in enumerate([*named, adjusting_words.ADD_MOVEMENT]))


def ask(brief: Brief, draft: Draft) -> Say:
    """Out, or what comes in."""
    plan = plan_now(brief)
    if _adds(plan, draft):
        return Say(adjusting_words.CHANGE_ADD, options(brief, draft))
    was = words.movement(plan.exercises[place(plan, draft)].movement)
    return Say(adjusting_words.CHANGE_TO_WHICH.format(movement=was), options(brief, draft))


def options(brief: Brief, draft: Draft) -> tuple[Choice, ...]:
    """What may come in: of the same pattern in the place of one; that one may go unless it is the only one."""
    plan = plan_now(brief)
    adds, known = _adds(plan, draft), MOVEMENTS.get("" if _adds(plan, draft) else _was(plan, draft))
    pattern = known.pattern if known is not None else ""
    found = to_add(plan, opened(brief.regions), pattern)
    out = (OUT,) if not adds and len(plan.exercises) > 1 else ()
    return (*out, *(Choice(words.movement(one.name), one.name) for one in found))


def changed(brief: Brief, draft: Draft) -> Plan:
    """The plan with it."""
    plan, value = plan_now(brief), draft.value or ""
    at = place(plan, draft)
    if value == OUT.value:
        return without_movement(plan, at)
    limbs, owned = opened(brief.regions), first_loads.owned_of(draft)
    begin = first_loads.begins_with(draft)
    return with_movement(plan, value, limbs, at, no_failure=brief.no_failure, owned=owned, begin=begin)


def line(brief: Brief, draft: Draft) -> str:
    """The change in one line."""
    plan = plan_now(brief)
    if draft.value == OUT.value:
        return adjusting_words.LINE_OUT.format(was=words.movement(_was(plan, draft)))
    now = exercise_text(changed(brief, draft).exercises[place(plan, draft)])
    if _adds(plan, draft):
        text = adjusting_words.LINE_IN.format(now=now)
    else:
        text = adjusting_words.LINE_SWAP.format(was=words.movement(_was(plan, draft)), now=now)
    return f"{text} {first_loads.line(draft)}".strip()


def touched(draft: Draft) -> list[str]:
    """The movement whose load is given anew, if one is."""
    return [] if draft.value in (None, OUT.value) else [draft.value or ""]


def _adds(plan: Plan, draft: Draft) -> bool:
    return place(plan, draft) == len(plan.exercises)


def _was(plan: Plan, draft: Draft) -> str:
    return plan.exercises[place(plan, draft)].movement
