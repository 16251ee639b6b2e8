"""What is known of a change to a plan under way, and which parts a plan has."""

from dataclasses import dataclass

from conversations.answers import Unclear, pick
from conversations.dates.meaning import HowWritten
from conversations.protocol import Choice
from conversations.words import adjusting as adjusting_words
from conversations.words import coach as words
from core.calendar.limits import USUAL, Limits
from core.plan_changes import owned_in
from core.plan_text import plan_from_text
from core.plans import Exercise, Goal, Plan, Region, Scheme, Side
from core.resistance import is_band

MOVEMENT_PARTS = ("load", "scheme", "tempo", "minutes", "movements", "side")


@dataclass(frozen=True, slots=True)
class Brief(HowWritten):
    """Whose plan, as JSON at the loads of now; days are the client's. `no_failure`, `allowed`, `regions` as in planning.

    `begun_on`: when the plan in force was given, so that one that came meanwhile is known to be replaced.
    `date_order`, `clock_face`: as in planning.
    """

    client: int
    client_name: str
    coach: int
    at_loads: str = ""
    zone: str = "UTC"
    no_failure: bool = False
    allowed: Limits = USUAL
    regions: tuple[str, ...] = tuple(Region)
    begun_on: str = ""
    date_order: str = ""
    clock_face: str = ""


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `movement` is stored by its place in the plan; `value` as stored text.

    `readings`: what typed days may mean; `unclear`: they meant none. `loads`, `start`: what the client owns and
    begins with, "": still to be asked, None: the plan knows it.
    """

    part: str | None = None
    movement: str | None = None
    value: str | None = None
    why: str | None = None
    readings: tuple[str, ...] = ()
    unclear: bool = False
    loads: str | None = None
    start: str | None = None


def plan_or_none(brief: Brief) -> Plan | None:
    """The plan to change; None: there is none that can be read."""
    try:
        return plan_from_text(brief.at_loads) if brief.at_loads else None
    except ValueError:
        return None


def plan_now(brief: Brief) -> Plan:
    """The plan to change. Nothing is asked where there is none."""
    return plan_from_text(brief.at_loads)


def places(plan: Plan, part: str | None) -> list[int]:
    """The movements that have such a part; for another movement also the place after the last."""
    found = [at for at, one in enumerate(plan.exercises) if _has(plan, one, part)]
    return [*found, len(found)] if part == "movements" else found


def _has(plan: Plan, one: Exercise, part: str | None) -> bool:
    match part:
        case "load":
            return len(one.reachable) > 1 or len(one.rungs) > 1
        case "scheme":
            return one.scheme is not Scheme.WALK and plan.goal is not Goal.REHAB  # rehab: no sets to failure
        case "tempo":  # a body-weight ladder has slow steps of its own
            return one.scheme is not Scheme.WALK and (not one.rungs or is_band(one.doing))
        case "side":
            return one.sides != (Side.BOTH,)
        case "minutes" | "movements":
            return True
        case _:
            return False


def parts(plan: Plan) -> tuple[Choice, ...]:
    """The parts that this plan has."""
    there = {part for part in MOVEMENT_PARTS if places(plan, part)} | {"days", "ceiling"}
    if owned_in(plan):
        there.add("owned")
        return tuple(Choice(label, part) for label, part in adjusting_words.PARTS if part in there)
    shown = tuple(Choice(label, part) for label, part in adjusting_words.PARTS if part in there)
    return (*shown, Choice(adjusting_words.WITH_EQUIPMENT, "movements"))


def typed_part(text: str, shown: tuple[Choice, ...]) -> str:
    """The part meant by "tempo", "change the load" or "other exercises". Raises `Unclear`."""
    values = {one.value for one in shown}
    typed = tuple(Choice(word, part) for word, part in adjusting_words.PARTS_TYPED if part in values)
    if "owned" not in values:  # without any there is a movement to choose first
        typed += tuple(Choice(word, "movements") for word in adjusting_words.EQUIPMENT_TYPED)
    if "load" not in values:
        typed += tuple(Choice(word, "movements") for word in adjusting_words.LOAD_TYPED)
    try:
        return pick(text, shown, typed)
    except Unclear:
        words_said = text.casefold().split()
        while words_said and words_said[0] in adjusting_words.BEFORE_A_PART:
            words_said = words_said[1:]
        return pick(" ".join(words_said), shown, typed)


def place(plan: Plan, draft: Draft) -> int:
    """Where in the plan the movement stands that is changed."""
    return int(draft.movement) if draft.movement is not None else places(plan, draft.part)[0]


def chosen(plan: Plan, draft: Draft) -> Exercise:
    """The movement that is changed."""
    return plan.exercises[place(plan, draft)]


def minutes(one: Exercise) -> int:
    """Minutes of a walk, or at most with bands on."""
    return one.walk_min if one.scheme is Scheme.WALK else one.limit_min


def name(plan: Plan, draft: Draft) -> str:
    """The movement that is changed, within a sentence."""
    return words.movement(chosen(plan, draft).movement).lower()
