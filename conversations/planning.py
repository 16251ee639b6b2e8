"""The coach makes a plan: template, loads owned, starting loads, side, days, done."""

import re
from dataclasses import dataclass, field, replace
from datetime import datetime
from decimal import Decimal

from conversations.answers import Unclear, Why, choice, load
from conversations.dates import Repeat, read
from conversations.form import Form, Outcome, dialogue, with_answer
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import planning as words
from conversations.words.dates import say_back
from conversations.words.movements import NAMES
from conversations.words.plan import plan_text
from core.calendar.stored import when_from_text, when_to_text
from core.facts import CoachDid, PlanGiven
from core.plan_text import plan_to_text
from core.plans import Plan, Side
from core.resistance import dumbbells
from core.templates import TEMPLATES, Template, build
from core.units import Load, Unit

SPAN = re.compile(
    r"^\s*(\d+(?:[.,]\d+)?)\s*(?:-|to)\s*(\d+(?:[.,]\d+)?)\s*by\s*(\d+(?:[.,]\d+)?)\s*(kg|lb)?\s*$"
)
MAXIMUM = re.compile(r"^\s*max\w*\s+(\d+(?:[.,]\d+)?)\s*$", re.IGNORECASE)
SHARE_OF_MAX = Decimal("0.3")  # common practice, no source
MOST_LOADS = 60


@dataclass(frozen=True, slots=True)
class Brief:
    """For whom; which regions are cleared; where they live."""

    client: int
    client_name: str
    coach: int
    regions: tuple[str, ...] = ("arms", "legs")
    zone: str = "UTC"


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `owned` as "2 kg|4 kg"; `starts`: movement -> load; `when`: stored text."""

    template: str | None = None
    owned: str | None = None
    starts: dict[str, str] = field(default_factory=dict)
    side: str | None = None
    when: str | None = None
    confirm: str | None = None


def fitting(brief: Brief) -> tuple[Choice, ...]:
    """Templates whose bands sit only where the client is cleared."""
    return tuple(
        Choice(words.TEMPLATES[name], name)
        for name, template in TEMPLATES.items()
        if template.regions <= set(brief.regions)
    )


def template_of(draft: Draft) -> Template:
    """The chosen template."""
    return TEMPLATES[draft.template or ""]


def next_start(draft: Draft) -> str | None:
    """The next movement without a starting load."""
    return next((name for name in template_of(draft).loaded if name not in draft.starts), None)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.template is None:
        return "template"
    if template_of(draft).loaded and draft.owned is None:
        return "owned"
    if (movement := next_start(draft)) is not None:
        return f"start:{movement}"
    if template_of(draft).one_sided and draft.side is None:
        return "side"
    if draft.when is None:
        return "when"
    return "confirm" if draft.confirm is None else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step.partition(":"):
        case ("template", _, _):
            return Say(words.TEMPLATE.format(name=brief.client_name), fitting(brief))
        case ("owned", _, _):
            text = words.OWNED.format(name=brief.client_name)
            return Say(text, (Choice(words.OWNED_DEFAULT, words.OWNED_DEFAULT),))
        case ("start", _, movement):
            lightest = [Choice(str(one), str(one)) for one in owned_loads(draft)[:6]]
            return Say(words.START.format(movement=NAMES[movement].lower()), tuple(lightest))
        case ("side", _, _):
            return Say(words.SIDE, tuple(Choice(label, value) for label, value in words.SIDES))
        case ("when", _, _):
            none = Choice(words.WHEN_NONE, "none")
            return Say(words.WHEN.format(zone=brief.zone), (none,))
        case _:
            text = words.CONFIRM.format(
                plan=plan_text(plan_of(draft)), when=_when(brief, draft), name=brief.client_name
            )
            return Say(text, (Choice(words.SEND, "send"), Choice(words.AGAIN, "again")))


def _when(brief: Brief, draft: Draft) -> str:
    if not draft.when:
        return words.NO_DAYS
    recurrence = when_from_text(draft.when)
    return say_back(Repeat(recurrence), brief.zone)  # type: ignore[arg-type]


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    match step.partition(":"):
        case ("template", _, _):
            return replace(draft, template=choice(answer.text, fitting(brief)))
        case ("owned", _, _):
            return replace(draft, owned="|".join(str(one) for one in read_owned(answer.text)))
        case ("start", _, movement):
            return replace(draft, starts={**draft.starts, movement: str(read_start(draft, answer.text))})
        case ("side", _, _):
            sides = tuple(Choice(label, value) for label, value in words.SIDES)
            return replace(draft, side=choice(answer.text, sides))
        case ("when", _, _):
            return replace(draft, when=read_when(brief, answer))
        case _:
            said = choice(
                answer.text, (Choice(words.SEND, "send"), Choice("yes", "send"), Choice(words.AGAIN, "again"))
            )
            return Draft() if said == "again" else replace(draft, confirm="send")


def read_owned(text: str) -> tuple[Load, ...]:
    """Loads as a list with one unit, or "2-20 by 2 kg". Raises `Unclear`."""
    span = SPAN.match(text.lower())
    if span is not None:
        low, high, step = (Decimal(part.replace(",", ".")) for part in span.groups()[:3])
        if step <= 0 or high < low or (high - low) / step > MOST_LOADS:
            raise Unclear(Why.NOT_AN_OPTION, options=(words.OWNED_DEFAULT,))
        count = int((high - low) / step) + 1
        return dumbbells((low + step * n for n in range(count)), Unit(span[4] or "kg"))
    unit = Unit.LB if re.search(r"\blbs?\b|pound", text.lower()) else Unit.KG
    numbers = [Decimal(part) for part in re.findall(r"\d+(?:\.\d+)?", text.replace(",", " "))]
    if not numbers or len(numbers) > MOST_LOADS or min(numbers) <= 0:
        raise Unclear(Why.NOT_A_NUMBER)
    return dumbbells(numbers, unit)


def owned_loads(draft: Draft) -> tuple[Load, ...]:
    """The loads of the draft."""
    return tuple(load(part, None) for part in (draft.owned or "").split("|") if part)


def read_start(draft: Draft, text: str) -> Load:
    """A load they own; "max 40" means the owned one nearest to 30 % of it, never above. Raises `Unclear`."""
    owned = owned_loads(draft)
    maximum = MAXIMUM.match(text)
    if maximum is not None:
        wanted = Decimal(maximum[1].replace(",", ".")) * SHARE_OF_MAX
        below = [one for one in owned if one.value <= wanted]
        return below[-1] if below else owned[0]
    said = load(text, owned[0].unit)
    if said not in owned:
        raise Unclear(Why.NOT_AN_OPTION, options=tuple(str(one) for one in owned[:8]))
    return said


def read_when(brief: Brief, answer: Said) -> str:
    """A recurrence as stored text, "" for none. Raises `Unclear`."""
    if answer.text.strip().lower() in ("none", words.WHEN_NONE.lower()):
        return ""
    match read(answer.text, answer.at, brief.zone):
        case Repeat(recurrence):
            return when_to_text(recurrence)
        case _:
            raise Unclear(Why.NOT_AN_OPTION, options=("mon and thu 7pm", words.WHEN_NONE))


def plan_of(draft: Draft) -> Plan:
    """The plan as drafted."""
    owned = owned_loads(draft)
    starts = {movement: load(text, None) for movement, text in draft.starts.items()}
    sides = tuple(Side(part) for part in (draft.side or "both").split(","))
    return build(template_of(draft), owned, starts, sides, draft.when or None)


def forget(draft: Draft, step: str) -> Draft:
    """Without that answer."""
    name, _, movement = step.partition(":")
    if name == "start":
        return replace(draft, starts={key: value for key, value in draft.starts.items() if key != movement})
    if name == "template":
        return Draft()
    return with_answer(draft, name, None)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The plan is given."""
    fact = PlanGiven(at, plan_to_text(plan_of(draft)), brief.coach)
    did = CoachDid(at, brief.coach, "gave_plan", draft.template or "")
    effects = (
        Record(fact, brief.client),
        Record(did, brief.client),
        Do("plan_given", {"client": brief.client}),
    )
    return Outcome((Say(words.SENT.format(name=brief.client_name)),), effects)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(), missing=missing, ask=ask, fill=fill, finish=finish, forget=forget
)
DIALOGUE = dialogue("planning", Brief, Draft, FORM)
