"""Parts of a plan that is not sent yet, changed from its summary: the questions are those of a change later on."""

from dataclasses import replace

from conversations.adjusting import Brief as About
from conversations.adjusting import first_loads, form
from conversations.adjusting.applying import changed_line, changed_plan
from conversations.adjusting.state import Draft as Change
from conversations.planning.brief import Brief
from conversations.planning.days import read_days
from conversations.planning.draft import Draft
from conversations.protocol import Said, Say
from core.plan_text import plan_to_text
from core.plans import Plan

STEP = "change_"  # before the name of a change's own question, and its number in the draft behind it
AFTER = "why"  # asked last of a change later on; a plan that is not sent yet needs no reason
ONLY_NOW = ("days", "scheme", "side")  # parts whose line does not say what was before
DAYS = ("days", "movements")  # parts after which the usual limits are looked at again

Changes = tuple[Change, ...]


def applied(brief: Brief, plan: Plan, changes: Changes) -> Plan:
    """The plan with every change that is fully answered."""
    for one in done(changes):
        plan = changed_plan(_about(brief, plan), one)
    return plan


def lines(brief: Brief, plan: Plan, changes: Changes) -> list[str]:
    """What was changed, a line each; `plan` is the one before all of them."""
    made = done(changes)
    return [
        changed_line(_about(brief, applied(brief, plan, changes[:number])), one)
        for number, one in enumerate(made)
        if not _outdated(one, made[number + 1 :])
    ]


def _outdated(one: Change, later: Changes) -> bool:
    """Whether a line that says only what is now was made untrue by a later change of the same part."""
    return one.part in ONLY_NOW and any(
        (one.part, one.movement) == (each.part, each.movement) for each in later
    )


def missing(brief: Brief, plan: Plan, changes: Changes) -> str | None:
    """The next question about the newest change; None: nothing is open."""
    if not changes:
        return None
    step = form.missing(_about(brief, applied(brief, plan, changes[:-1])), changes[-1])
    return None if step == AFTER else f"{STEP}{step}:{len(changes) - 1}"


def ask(brief: Brief, plan: Plan, changes: Changes, step: str) -> Say:
    """The words of an open question; `plan` is the one before all changes."""
    name, number = _read(step)
    return form.ask(_about(brief, applied(brief, plan, changes[:number])), changes[number], name)


def fill(brief: Brief, plan: Plan, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer; what was changed after it is asked anew. Raises `Unclear`."""
    name, number = _read(step)
    before, known = draft.changes[:number], draft.changes[number : number + 1]
    if not known:  # an edited answer to a change that is no more
        return draft
    one = form.fill(_about(brief, applied(brief, plan, before)), known[0], name, answer)
    over = None if one.part in DAYS else draft.over
    return replace(draft, changes=(*before, one), over=over)


def begun(draft: Draft, part: str) -> Draft:
    """A part is to be changed; one that was named before and is still open is left as it was."""
    return replace(draft, changes=(*done(draft.changes), Change(part)))


def days_said(brief: Brief, plan: Plan, draft: Draft, answer: Said) -> Draft | None:
    """Days typed where a part is asked for: they are the change; None: no days were typed."""
    if not read_days(answer.text, answer.at, brief.zone, brief.order, brief.face).readings:
        return None
    changing = begun(draft, "days")
    return fill(brief, plan, changing, f"{STEP}value:{len(changing.changes) - 1}", answer)


def done(changes: Changes) -> Changes:
    """Without the one whose question is open."""
    return tuple(one for one in changes if one.value is not None and first_loads.missing(one) is None)


def forget(draft: Draft, step: str) -> Draft:
    """Without that answer of a change."""
    name, number = _read(step)
    before, known = draft.changes[:number], draft.changes[number : number + 1]
    kept = tuple(replace(first_loads.forget(one, name), readings=(), unclear=False) for one in known)
    return replace(draft, changes=(*before, *kept))


def _read(step: str) -> tuple[str, int]:
    name, _, number = step.removeprefix(STEP).partition(":")
    return name, int(number)


def _about(brief: Brief, plan: Plan) -> About:
    return About(
        client=brief.client,
        client_name=brief.client_name,
        coach=brief.coach,
        at_loads=plan_to_text(plan),
        zone=brief.zone,
        no_failure=brief.no_failure,
        allowed=brief.allowed,
        regions=brief.regions,
        date_order=brief.date_order,
        clock_face=brief.clock_face,
    )
