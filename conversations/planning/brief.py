"""For whom a plan is made, and what follows from it: fitting templates, and the plan so far as defaults."""

from dataclasses import dataclass, field
from datetime import date

from conversations.dates.meaning import HowWritten
from conversations.planning import own_templates
from conversations.planning.days import limits_broken
from conversations.protocol import Choice
from conversations.words import planning as words
from conversations.words.screening import in_words
from core.calendar.limits import USUAL, Limits
from core.calendar.recurrence import Recurrence
from core.calendar.stored import when_from_text
from core.cuffs.limbs import ALL, PAIRS, opened, places_of
from core.plan_text import plan_from_text
from core.plans import Goal, Plan
from core.templates import TEMPLATES


@dataclass(frozen=True, slots=True)
class Brief(HowWritten):
    """For whom; which pairs or single limbs are cleared (stored names); where they live; today there (ISO); the plan so far (JSON).

    `bests`: movement -> best single lift as known, "40 kg". `may_test`: a strength test may be offered.
    `own`: the coach's own templates, as (name, plan as JSON), the newest first.
    `no_failure`: the clearance forbids sets to failure. `allowed`: how often this client may train.
    `date_order`, `clock_face`: how the coach writes dates and times, as stored; "" when never said.
    """

    client: int
    client_name: str
    coach: int
    regions: tuple[str, ...] = ("arms", "legs")
    zone: str = "UTC"
    today: str = ""
    current: str = ""
    bests: dict[str, str] = field(default_factory=dict)
    may_test: bool = False
    own: tuple[tuple[str, str], ...] = ()
    no_failure: bool = False
    allowed: Limits = USUAL
    date_order: str = ""
    clock_face: str = ""


def fitting(brief: Brief) -> tuple[Choice, ...]:
    """Templates whose bands sit only where the client is cleared, the coach's own first."""
    limbs = opened(brief.regions)
    own = own_templates.choices(brief.own, limbs)
    fit = (name for name, template in TEMPLATES.items() if template.fits(limbs))
    return (*own, *(Choice(words.TEMPLATES[name], name) for name in fit))


def not_fitting(brief: Brief) -> tuple[Choice, ...]:
    """The other ready-made templates and those of the coach, to say why they are not for this client."""
    fit = {one.value for one in fitting(brief)}
    every = (
        *own_templates.choices(brief.own, ALL),
        *(Choice(words.TEMPLATES[name], name) for name in TEMPLATES),
    )
    return tuple(one for one in every if one.value not in fit)


def closed_in_words(brief: Brief) -> str:
    """ "Left arm": the limbs that stay without a band."""
    return in_words(places_of(ALL - opened(brief.regions)))


def one_sided_note(brief: Brief) -> str:
    """Why only one-sided work is offered for a pair; "": both limbs of each pair are open, or neither."""
    limbs = opened(brief.regions)
    halves = [pair for pair in PAIRS.values() if len(pair & limbs) == 1]
    notes = (
        words.ONE_SIDED.format(
            closed=in_words(places_of(pair - limbs)), open=in_words(places_of(pair & limbs))
        )
        for pair in halves
    )
    return " ".join(notes)


def current_plan(brief: Brief) -> Plan | None:
    """The plan so far; None: none that can be read, which is no reason not to make a new one."""
    try:
        return plan_from_text(brief.current) if brief.current else None
    except ValueError:
        return None


def current_days(brief: Brief) -> str | None:
    """The weekly days of the plan so far, as stored text; None: none that go on."""
    plan = current_plan(brief)
    when = when_from_text(plan.when) if plan and plan.when else None
    if plan is None or not isinstance(when, Recurrence) or not when.slots:  # single sessions are no days
        return None
    over = when.until is not None and bool(brief.today) and when.until < date.fromisoformat(brief.today)
    return None if over else plan.when


def notes_on(brief: Brief, plan: Plan, to_failure_planned: bool) -> list[str]:
    """What a coach should see before it goes out; `to_failure_planned`: the template has sets to failure."""
    notes = []
    before = current_plan(brief)
    to_failure = any(one.to_failure for one in plan.exercises)
    if before is not None and before.goal is Goal.REHAB and to_failure:
        notes.append(words.LEAVES_REHAB)
    recurrence = when_from_text(plan.when) if plan.when else None
    if isinstance(recurrence, Recurrence):
        notes += [
            words.named(words.LIMITS[limit], brief.allowed)
            for limit in limits_broken(plan, recurrence, brief.allowed)
        ]
    if brief.no_failure and to_failure_planned:
        notes.append(words.NO_FAILURE)
    return notes
