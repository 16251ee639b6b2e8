"""The coach makes a plan: template, loads owned, starting loads, side, days, done."""

from dataclasses import replace
from datetime import datetime

from conversations import equipment
from conversations.adjusting.state import parts, typed_part
from conversations.answers import Unclear, choice, load
from conversations.equipment.loads import loads_from_text, numbers_and_unit, to_text
from conversations.form import Form, Outcome, dialogue, with_answer
from conversations.planning import changes, own_templates, weaker_side
from conversations.planning.brief import (
    Brief,
    closed_in_words,
    fitting,
    not_fitting,
    notes_on,
    one_sided_note,
)
from conversations.planning.draft import Draft
from conversations.planning.loads import ask_start, fill_owned, fill_start, owned_choices
from conversations.planning.when import ask_over, ask_when, fill_over, fill_when, shown, to_confirm
from conversations.protocol import Choice, Do, Effect, Record, Said, Say
from conversations.words import adjusting as adjusting_words
from conversations.words import coach as coach_words
from conversations.words import planning as words
from conversations.words.plan import plan_text
from core.cuffs.limbs import opened
from core.facts import CoachDid, Detail, PlanGiven
from core.plan_text import plan_to_text
from core.plans import Plan, Rung, Side
from core.templates import TEMPLATES, Template, build, without_failure
from core.units import Unit

UNITS = tuple(Choice(label, value) for label, value in words.UNITS)
CLOSED = "closed"  # a draft's problem: the template named would band a closed limb
SEND, AGAIN = Choice(words.SEND, "send"), Choice(words.AGAIN, "again")


# --- what to ask -----------------------------------------------------------------------------------------
def template_of(brief: Brief, draft: Draft) -> Template:
    """The chosen template: one of the coach's own, or a ready-made one."""
    value = draft.template or ""
    own = own_templates.plan_of(brief.own, value)
    if own is None:
        return TEMPLATES[value]
    return own_templates.template(value.removeprefix(own_templates.OWN), plan_to_text(own))


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.template is None:
        return "template" if fitting(brief) else None
    if draft.test is not None:
        return None
    if (step := _loads_missing(brief, draft)) is not None:
        return step
    if draft.side is None and len(template_of(brief, draft).sides(opened(brief.regions))) > 1:
        return "side"
    if draft.when is None:
        return "when"
    if (change := changes.missing(brief, _as_begun(brief, draft), draft.changes)) is not None:
        return change
    if draft.over is None and to_confirm(brief, plan_of(brief, draft)):
        return "over"
    return "confirm" if draft.confirm is None else None


def _loads_missing(brief: Brief, draft: Draft) -> str | None:
    loaded = template_of(brief, draft).loaded
    if loaded and draft.owned is None:
        return "owned"
    if loaded and " " not in (draft.owned or ""):
        return "unit"
    return next((f"start:{name}" for name in loaded if name not in draft.starts), None)


# --- how to ask it ---------------------------------------------------------------------------------------
def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step.partition(":"):
        case ("template", _, _):
            return _ask_template(brief, draft)
        case ("owned", _, _):
            return Say(words.OWNED.format(name=brief.client_name), owned_choices(brief))
        case ("unit", _, _):
            return Say(words.UNIT, UNITS)
        case ("start", _, movement):
            return ask_start(brief, draft, movement)
        case ("side", _, _):
            return Say(words.SIDE, weaker_side.SIDES)
        case ("when", _, _):
            return ask_when(brief, draft)
        case ("over", _, _):
            return ask_over(brief, plan_of(brief, draft))
        case ("confirm", _, _):
            return Say(_summary(brief, draft), _from_summary(brief, draft))
        case _:
            return changes.ask(brief, _as_begun(brief, draft), draft.changes, step)


def _from_summary(brief: Brief, draft: Draft) -> tuple[Choice, ...]:
    """Send it, change a part of it, or start again."""
    return (SEND, *parts(plan_of(brief, draft)), AGAIN)


def _ask_template(brief: Brief, draft: Draft) -> Say:
    """The templates that fit, after why the last one named does not, and why one-sided work is there."""
    refused = words.REFUSED.format(closed=closed_in_words(brief)) if draft.problem == CLOSED else ""
    parts = (refused, words.TEMPLATE.format(name=brief.client_name), one_sided_note(brief))
    return Say(" ".join(part for part in parts if part), fitting(brief))


def _summary(brief: Brief, draft: Draft) -> str:
    plan = plan_of(brief, draft)
    when = shown(brief, plan.when) if plan.when else words.NO_DAYS
    to_failure = template_of(brief, draft).to_failure
    changed = changes.lines(brief, _as_begun(brief, draft), draft.changes)
    notes = "".join(f"{note}\n" for note in (*changed, *notes_on(brief, plan, to_failure)))
    return words.CONFIRM.format(
        plan=plan_text(plan), when=when, limits=words.limits_line(plan), notes=notes, name=brief.client_name
    )


# --- what was answered -----------------------------------------------------------------------------------
def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    draft = replace(draft, problem=None)
    match step.partition(":"):
        case ("template", _, _):
            return _template(brief, draft, answer.text)
        case ("owned", _, _):
            return fill_owned(brief, draft, answer.text)
        case ("unit", _, _):
            numbers, _ = numbers_and_unit(draft.owned or "")
            return replace(draft, owned=to_text(numbers, Unit(choice(answer.text, UNITS))))
        case ("start", _, movement):
            return fill_start(draft, movement, answer.text)
        case ("side", _, _):
            return replace(draft, side=weaker_side.typed(answer.text))
        case ("when", _, _):
            return fill_when(brief, draft, answer)
        case ("over", _, _):
            return fill_over(draft, answer)
        case ("confirm", _, _):
            return _confirmed(brief, draft, answer)
        case _:
            return changes.fill(brief, _as_begun(brief, draft), draft, step, answer)


def _confirmed(brief: Brief, draft: Draft, answer: Said) -> Draft:
    """Sent, begun anew, a part to change, or other days at once. Raises `Unclear`."""
    if answer.text.strip().lower() in words.SEND_TYPED:
        return replace(draft, confirm=SEND.value)
    try:
        said = typed_part(answer.text, _from_summary(brief, draft))
    except Unclear:
        changed = changes.days_said(brief, _as_begun(brief, draft), draft, answer)
        if changed is None:
            raise
        return changed
    if said == AGAIN.value:
        return Draft()
    return replace(draft, confirm=said) if said == SEND.value else changes.begun(draft, said)


def _template(brief: Brief, draft: Draft, text: str) -> Draft:
    """The template; one that would band a closed limb is refused with the reason. Raises `Unclear`."""
    named = choice(text, (*fitting(brief), *not_fitting(brief)))
    fits = named in {one.value for one in fitting(brief)}
    return replace(draft, template=named, changes=()) if fits else replace(draft, problem=CLOSED)


def forget(draft: Draft, step: str) -> Draft:
    """Without that answer."""
    name, _, movement = step.partition(":")
    draft = replace(draft, problem=None, readings=(), heard="")
    match name:
        case "start":
            kept = {one: load for one, load in draft.starts.items() if one != movement}
            offered = {one: load for one, load in draft.offered.items() if one != movement}
            return replace(draft, starts=kept, offered=offered)
        case "when":
            return replace(draft, when=None, over=None)
        case "unit":
            return replace(draft, owned=to_text(numbers_and_unit(draft.owned or "")[0], None), starts={})
        case "template":
            return Draft()
        case "confirm":
            return replace(draft, confirm=None, changes=draft.changes[:-1])
        case "owned" | "side" | "over":
            return with_answer(draft, name, None)
        case _:
            return changes.forget(draft, step)


# --- what comes of it ------------------------------------------------------------------------------------
def plan_of(brief: Brief, draft: Draft) -> Plan:
    """The plan as drafted."""
    return changes.applied(brief, _as_begun(brief, draft), draft.changes)


def _as_begun(brief: Brief, draft: Draft) -> Plan:
    """The plan by its own questions, before any part was changed from its summary."""
    owned = equipment.kept(draft.owned or "")
    names = {one.name for one in owned if isinstance(one, Rung)}
    starts = {name: text if text in names else load(text, None) for name, text in draft.starts.items()}
    template = template_of(brief, draft)
    plan = build(template, owned, starts, _sides(brief, draft), draft.when or None, opened(brief.regions))
    own = own_templates.plan_of(brief.own, draft.template or "")
    dressed = plan if own is None else own_templates.dressed(plan, own, template.name)
    return without_failure(dressed) if brief.no_failure else dressed


def _sides(brief: Brief, draft: Draft) -> tuple[Side, ...]:
    """As said, else the only side that is open for one-sided work."""
    if draft.side is not None:
        return weaker_side.kept(draft.side)
    return tuple(sorted(template_of(brief, draft).sides(opened(brief.regions)))) or (Side.BOTH,)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The plan is given, or a test asked for first."""
    if draft.test is not None:
        unit = loads_from_text(draft.owned or "")[0].unit
        return Outcome(
            (), (Do("ask_test", {"client": brief.client, "movement": draft.test, "unit": unit.value}),)
        )
    if draft.confirm is None:
        return Outcome((Say(words.NOT_CLEARED.format(name=brief.client_name)),))
    plan = plan_of(brief, draft)
    over = ", ".join(to_confirm(brief, plan))
    fact = PlanGiven(at, plan_to_text(plan), brief.coach, f"{over}: {draft.over}" if over else "")
    did = CoachDid(at, brief.coach, "gave_plan", draft.template or "")
    told = (Detail(at, f"best:{name}", best) for name, best in draft.bests.items())
    effects: tuple[Effect, ...] = (
        *(Record(one, brief.client) for one in told),
        Record(fact, brief.client),
        Record(did, brief.client),
        Do("plan_given", {"client": brief.client}),
    )
    keep = Choice(coach_words.SAVE_TEMPLATE, f"menu:save_template:{brief.client}")
    card = coach_words.to_card(brief.client_name, brief.client)
    part = Choice(adjusting_words.CHANGE, f"menu:change:{brief.client}")
    return Outcome((Say(words.SENT.format(name=brief.client_name), (part, keep, card)),), effects)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(), missing=missing, ask=ask, fill=fill, finish=finish, forget=forget
)
DIALOGUE = dialogue("planning", Brief, Draft, FORM)
