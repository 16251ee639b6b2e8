"""A plan without equipment gets a movement with a load: what the client owns, and with which of it they begin."""

from dataclasses import replace

from conversations import equipment
from conversations.adjusting.state import Brief, Draft, plan_now
from conversations.answers import Unclear, Why
from conversations.equipment import exercise_bands
from conversations.equipment.loads import read_start
from conversations.protocol import Choice, Say
from conversations.words import adjusting as words
from conversations.words import planning as planning_words
from conversations.words.movements import NAMES
from core.movements import MOVEMENTS, Kind
from core.plan_changes import owned_in
from core.plans import Rung
from core.templates import Owned
from core.units import Load

STEPS = ("loads", "start")
MOST_BUTTONS = 6


def with_value(brief: Brief, draft: Draft, movement: str) -> Draft:
    """The movement that comes in; where it needs loads of which the plan knows none, these are still to be asked."""
    known = MOVEMENTS.get(movement)
    needed = known is not None and known.kind is Kind.LOAD and not owned_in(plan_now(brief))
    to_ask = "" if needed else None
    return replace(draft, value=movement, loads=to_ask, start=to_ask)


def missing(draft: Draft) -> str | None:
    """The next question about it; None: nothing is open."""
    return next((step for step in STEPS if getattr(draft, step) == ""), None)


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if step == "loads":
        usual = planning_words.OWNED_DEFAULT
        return Say(planning_words.OWNED.format(name=brief.client_name), (Choice(usual, usual),))
    owned, name = owned_of(draft), NAMES[draft.value or ""].lower()
    bands = [one for one in owned if isinstance(one, Rung)]
    if bands:
        return Say(planning_words.START_BAND.format(movement=name), exercise_bands.choices(bands))
    shown = tuple(Choice(str(one), str(one)) for one in owned[:MOST_BUTTONS])
    return Say(planning_words.START.format(movement=name), shown)


def fill(draft: Draft, step: str, text: str) -> Draft:
    """One more answer. Raises `Unclear`."""
    if step == "loads":
        stored = equipment.typed(text)
        if not equipment.kept(stored):
            raise Unclear(Why.NO_UNIT)
        return replace(draft, loads=stored, start="")
    owned = owned_of(draft)
    bands = tuple(one for one in owned if isinstance(one, Rung))
    if bands:
        return replace(draft, start=exercise_bands.read_band(text, bands))
    loads = tuple(one for one in owned if isinstance(one, Load))
    use = read_start(text, loads)
    if use is None:
        raise Unclear(Why.NOT_AN_OPTION, options=[str(one) for one in loads[:MOST_BUTTONS]])
    return replace(draft, start=str(use))


def forget(draft: Draft, step: str) -> Draft:
    """Without that answer: asked anew, with what hangs on it."""
    match step:
        case "loads":
            return replace(draft, loads="", start="")
        case "start":
            return replace(draft, start="")
        case "value":
            return replace(draft, value=None, loads=None, start=None)
        case _:
            return replace(draft, **{step: None})  # type: ignore[arg-type]  # a step is named as its field


def owned_of(draft: Draft) -> Owned:
    """What was typed as owned; () where the plan knows it."""
    return equipment.kept(draft.loads) if draft.loads else ()


def begins_with(draft: Draft) -> Load | str | None:
    """The load or band to begin with; None: the lightest."""
    return next(
        (one if isinstance(one, Load) else one.name for one in owned_of(draft) if draft.start == _name(one)),
        None,
    )


def _name(one: Load | Rung) -> str:
    return one.name if isinstance(one, Rung) else str(one)


def line(draft: Draft) -> str:
    """What there is to train with from now on; "" where the plan knew it."""
    owned = owned_of(draft)
    return words.LINE_OWNED.format(now=equipment.listed(owned)) if owned else ""
