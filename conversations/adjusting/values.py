"""What a part of a plan becomes: asked for, and read."""

from dataclasses import replace

from conversations import equipment
from conversations.adjusting import first_loads, movements, own_rungs
from conversations.adjusting.applying import shown_days
from conversations.adjusting.state import Brief, Draft, chosen, minutes, name, plan_now
from conversations.answers import choice, load, whole_number
from conversations.planning import weaker_side
from conversations.planning.days import read_days
from conversations.protocol import Choice, Said, Say
from conversations.words import adjusting as adjusting_words
from conversations.words import dates as date_words
from conversations.words import planning as planning_words
from conversations.words.plan import tempo
from core.cuffs.limbs import opened
from core.plan_changes import owned_in
from core.plans import HIGHEST_PAIN_CEILING, LONGEST_MIN, TEMPOS_S, Exercise, Plan, Scheme
from core.units import Load

MOST_BUTTONS = 8
FEWEST_MIN = 3  # of bands on; own caution, no source
SCHEMES = tuple(Choice(label, value) for label, value in adjusting_words.SCHEMES)
TEMPOS = tuple(Choice(tempo(seconds), str(seconds)) for seconds in TEMPOS_S)


def ask_value(brief: Brief, draft: Draft) -> Say:
    """The words and buttons of what a part becomes."""
    plan = plan_now(brief)
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
        case "owned":
            question = planning_words.OWNED.format(name=brief.client_name)
            return Say(
                adjusting_words.CHANGE_OWNED.format(question=question, now=equipment.listed(owned_in(plan)))
            )
        case "side":
            text = adjusting_words.CHANGE_SIDE.format(movement=name(plan, draft))
            return Say(text, _sides(brief, draft))
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


def fill_value(brief: Brief, draft: Draft, answer: Said) -> Draft:
    """What a part becomes, as it is stored. Raises `Unclear`."""
    plan = plan_now(brief)
    match draft.part:
        case "days":
            return _fill_days(brief, draft, answer)
        case "ceiling":
            return replace(draft, value=str(whole_number(answer.text, 0, HIGHEST_PAIN_CEILING)))
        case "scheme":
            return replace(draft, value=choice(answer.text, _schemes(brief)))
        case "movements":
            said = choice(answer.text, movements.options(brief, draft))
            return first_loads.with_value(brief, draft, said)
        case "owned":
            return replace(draft, value=_owned(plan, answer.text))
        case "side":
            return replace(draft, value=weaker_side.typed(answer.text, _sides(brief, draft)))
        case "tempo":
            return replace(draft, value=choice(answer.text, TEMPOS))
        case "minutes":
            return replace(draft, value=str(whole_number(answer.text, FEWEST_MIN, _most(plan, draft))))
        case _:
            return replace(draft, value=_load(chosen(plan, draft), answer.text))


def _sides(brief: Brief, draft: Draft) -> tuple[Choice, ...]:
    """Never a limb that is closed."""
    region = chosen(plan_now(brief), draft).region
    return weaker_side.choices({limb.side for limb in opened(brief.regions) if limb.region is region})


def _owned(plan: Plan, text: str) -> str:
    """As `equipment` keeps it; a unit that is not said is the one of the loads so far."""
    before = owned_in(plan)
    unit = next((one.unit for one in before if isinstance(one, Load)), None)
    return equipment.typed(text, unit)


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
    days = read_days(said, answer.at, brief.zone, brief.order, brief.face)
    if len(days.readings) == 1:
        return replace(draft, value=days.readings[0], readings=())
    return replace(draft, readings=days.readings, unclear=not days.readings)
