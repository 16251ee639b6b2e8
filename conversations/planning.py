"""The coach makes a plan: template, loads owned, starting loads, side, days, done."""

from dataclasses import dataclass, field, replace
from datetime import datetime

from conversations import own_templates
from conversations.answers import choice, load
from conversations.dates import Problem, Repeat
from conversations.form import Form, Outcome, dialogue, with_answer
from conversations.owned_loads import (
    listed,
    loads_from_text,
    numbers_and_unit,
    read_maximum,
    read_owned,
    read_start,
    to_text,
)
from conversations.planning_brief import Brief, current_days, current_plan, fitting, notes_on
from conversations.planning_days import NOT_WEEKLY, read_days
from conversations.protocol import Choice, Do, Effect, Record, Said, Say
from conversations.words import coach as coach_words
from conversations.words import dates as date_words
from conversations.words import planning as words
from conversations.words.movements import NAMES
from conversations.words.plan import plan_text
from core.calendar.recurrence import Recurrence
from core.calendar.stored import when_from_text
from core.facts import CoachDid, Detail, PlanGiven
from core.plan_text import plan_to_text
from core.plans import Plan, Region, Side
from core.templates import TEMPLATES, Template, build, from_maximum
from core.units import Load, Unit

MOST_BUTTONS = 6
TOO_HEAVY = "too_heavy"
AS_NOW = "as_now"
TEST = "test"
SIDES = tuple(Choice(label, value) for label, value in words.SIDES)
UNITS = tuple(Choice(label, value) for label, value in words.UNITS)
SEND = (Choice(words.SEND, "send"), Choice(words.AGAIN, "again"))


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet.

    `owned` as "2 kg|4 kg", without units until they are said; `starts`: movement -> load; `bests`: movement ->
    best single lift as told; `test`: the movement of a strength test that comes first; `when`: stored text, ""
    for no fixed days; `readings`: what the typed days may mean; `problem`: why they could not be taken (a stored
    name).
    """

    template: str | None = None
    owned: str | None = None
    starts: dict[str, str] = field(default_factory=dict)
    bests: dict[str, str] = field(default_factory=dict)
    test: str | None = None
    side: str | None = None
    when: str | None = None
    confirm: str | None = None
    readings: tuple[str, ...] = ()
    problem: str | None = None


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
    if template_of(brief, draft).one_sided and draft.side is None:
        return "side"
    if draft.when is None:
        return "when"
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
            return Say(words.TEMPLATE.format(name=brief.client_name), fitting(brief))
        case ("owned", _, _):
            return Say(words.OWNED.format(name=brief.client_name), _owned_choices(brief))
        case ("unit", _, _):
            return Say(words.UNIT, UNITS)
        case ("start", _, movement):
            return _ask_start(brief, draft, movement)
        case ("side", _, _):
            return Say(words.SIDE, SIDES)
        case ("when", _, _):
            return _ask_when(brief, draft)
        case _:
            return Say(_summary(brief, draft), SEND)


def _owned_choices(brief: Brief) -> tuple[Choice, ...]:
    usual = (Choice(words.OWNED_DEFAULT, words.OWNED_DEFAULT),)
    plan = current_plan(brief)
    owned = next((one.reachable for one in plan.exercises if one.reachable), ()) if plan else ()
    if not owned:
        return usual
    label = words.OWNED_AS_NOW.format(first=owned[0], last=owned[-1])
    return (Choice(label, listed(owned)), *usual)


def _ask_start(brief: Brief, draft: Draft, movement: str) -> Say:
    owned, plan = loads_from_text(draft.owned or ""), current_plan(brief)
    now = (
        [one.load for one in plan.exercises if one.movement == movement and one.load in owned] if plan else []
    )
    best = _from_best(brief, owned, movement)
    shown = list(dict.fromkeys(str(one) for one in (*best, *now, *owned)))[:MOST_BUTTONS]
    question = words.START.format(movement=NAMES[movement].lower())
    if best:
        question = words.START_BEST.format(
            movement=NAMES[movement].lower(), best=brief.bests[movement], use=best[0]
        )
    text = words.TOO_HEAVY.format(lightest=owned[0]) if draft.problem == TOO_HEAVY else question
    test = (Choice(words.TEST_FIRST, TEST),) if brief.may_test and not best else ()
    return Say(text, (*(Choice(one, one) for one in shown), *test))


def _from_best(brief: Brief, owned: tuple[Load, ...], movement: str) -> tuple[Load, ...]:
    """About 30 % of the best single lift, when it is known in the unit of the loads."""
    text = brief.bests.get(movement)
    best = load(text, None) if text else None
    use = from_maximum(best, owned) if best is not None and best.unit is owned[0].unit else None
    return () if use is None else (use,)


def _ask_when(brief: Brief, draft: Draft) -> Say:
    none = Choice(words.WHEN_NONE, "none")
    if draft.readings:
        return Say(date_words.WHICH_ONE, (*_readings(brief, draft), none))
    text = words.WHEN.format(zone=brief.zone)
    if draft.problem is not None:
        again = draft.problem == NOT_WEEKLY
        text = words.NOT_WEEKLY if again else date_words.NOT_UNDERSTOOD[Problem(draft.problem)]
    now = current_days(brief)
    return Say(text, (*([Choice(_shown(brief, now), AS_NOW)] if now else []), none))


def _readings(brief: Brief, draft: Draft) -> tuple[Choice, ...]:
    """What the typed days may mean, numbered from 1."""
    return tuple(Choice(_shown(brief, text), str(no)) for no, text in enumerate(draft.readings, start=1))


def _shown(brief: Brief, stored: str) -> str:
    recurrence = when_from_text(stored)
    assert isinstance(recurrence, Recurrence), "only weekly days are kept"
    return date_words.say_back(Repeat(recurrence), brief.zone)


def _summary(brief: Brief, draft: Draft) -> str:
    plan = plan_of(brief, draft)
    when = _shown(brief, draft.when) if draft.when else words.NO_DAYS
    notes = "".join(f"{note}\n" for note in notes_on(brief, plan))
    return words.CONFIRM.format(plan=plan_text(plan), when=when, notes=notes, name=brief.client_name)


# --- what was answered -----------------------------------------------------------------------------------
def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    draft = replace(draft, problem=None)
    match step.partition(":"):
        case ("template", _, _):
            return replace(draft, template=choice(answer.text, fitting(brief)))
        case ("owned", _, _):
            as_now = answer.text.strip().lower() in words.AS_NOW_TYPED
            text = _owned_choices(brief)[0].value if as_now and current_plan(brief) else answer.text
            return replace(draft, owned=to_text(*read_owned(text)), starts={})
        case ("unit", _, _):
            numbers, _ = numbers_and_unit(draft.owned or "")
            return replace(draft, owned=to_text(numbers, Unit(choice(answer.text, UNITS))))
        case ("start", _, movement):
            return _fill_start(draft, movement, answer.text)
        case ("side", _, _):
            return replace(draft, side=choice(answer.text, SIDES))
        case ("when", _, _):
            return _fill_when(brief, draft, answer)
        case _:
            said = answer.text.strip().lower() in words.SEND_TYPED or choice(answer.text, SEND) == "send"
            return replace(draft, confirm="send") if said else Draft()


def _fill_start(draft: Draft, movement: str, text: str) -> Draft:
    owned = loads_from_text(draft.owned or "")
    if text.strip().lower() in (TEST, words.TEST_FIRST.lower()):
        return replace(draft, test=movement)
    best = read_maximum(text, owned[0].unit)
    draft = replace(draft, bests={**draft.bests, movement: str(best)}) if best is not None else draft
    start = read_start(text, owned)
    if start is None:
        return replace(draft, problem=TOO_HEAVY)
    return replace(draft, starts={**draft.starts, movement: str(start)})


def _fill_when(brief: Brief, draft: Draft, answer: Said) -> Draft:
    said = answer.text.strip()
    if said.lower() in ("none", words.WHEN_NONE.lower()):
        return replace(draft, when="", readings=())
    if said.lower() in (AS_NOW, *words.AS_NOW_TYPED):
        return replace(draft, when=current_days(brief), readings=())
    if said in {option.value for option in _readings(brief, draft)}:
        return replace(draft, when=draft.readings[int(said) - 1], readings=())
    days = read_days(said, answer.at, brief.zone)
    if len(days.readings) == 1:
        return replace(draft, when=days.readings[0], readings=())
    return replace(draft, readings=days.readings, problem=days.problem)


def forget(draft: Draft, step: str) -> Draft:
    """Without that answer."""
    name, _, movement = step.partition(":")
    draft = replace(draft, problem=None, readings=())
    match name:
        case "start":
            kept = {one: load for one, load in draft.starts.items() if one != movement}
            return replace(draft, starts=kept)
        case "unit":
            return replace(draft, owned=to_text(numbers_and_unit(draft.owned or "")[0], None), starts={})
        case "template":
            return Draft()
        case _:
            return with_answer(draft, name, None)


# --- what comes of it ------------------------------------------------------------------------------------
def plan_of(brief: Brief, draft: Draft) -> Plan:
    """The plan as drafted."""
    starts = {movement: load(text, None) for movement, text in draft.starts.items()}
    sides = tuple(Side(part) for part in (draft.side or "both").split(","))
    allowed = tuple(Region(region) for region in brief.regions)
    owned = loads_from_text(draft.owned or "")
    template = template_of(brief, draft)
    plan = build(template, owned, starts, sides, draft.when or None, allowed)
    own = own_templates.plan_of(brief.own, draft.template or "")
    return plan if own is None else own_templates.dressed(plan, own, template.name)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The plan is given, or a test asked for first."""
    if draft.test is not None:
        unit = loads_from_text(draft.owned or "")[0].unit
        return Outcome(
            (), (Do("ask_test", {"client": brief.client, "movement": draft.test, "unit": unit.value}),)
        )
    if draft.confirm is None:
        return Outcome((Say(words.NOT_CLEARED.format(name=brief.client_name)),))
    fact = PlanGiven(at, plan_to_text(plan_of(brief, draft)), brief.coach)
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
    return Outcome((Say(words.SENT.format(name=brief.client_name), (keep, card)),), effects)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(), missing=missing, ask=ask, fill=fill, finish=finish, forget=forget
)
DIALOGUE = dialogue("planning", Brief, Draft, FORM)
