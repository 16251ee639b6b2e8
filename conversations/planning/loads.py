"""Which load a movement starts with: one that is owned, or about 30 % of the best single lift."""

from dataclasses import replace

from conversations import equipment
from conversations.answers import load, pick
from conversations.equipment import exercise_bands
from conversations.equipment.loads import loads_from_text, read_maximum, read_start
from conversations.planning.brief import Brief, current_plan
from conversations.planning.draft import Draft
from conversations.protocol import Choice, Say
from conversations.words import planning as words
from conversations.words.movements import NAMES
from core.plan_changes import owned_in
from core.plans import Rung
from core.templates import from_maximum
from core.units import Load

MOST_BUTTONS = 6
TOO_HEAVY = "too_heavy"
TEST = "test"
ANOTHER = Choice(words.ANOTHER_LOAD, "another")


def owned_choices(brief: Brief) -> tuple[Choice, ...]:
    """The loads of the plan so far, and a usual rack."""
    usual = (Choice(words.OWNED_DEFAULT, words.OWNED_DEFAULT),)
    plan = current_plan(brief)
    owned = owned_in(plan) if plan else ()
    if not owned:
        return usual
    first, last = (one.name if isinstance(one, Rung) else str(one) for one in (owned[0], owned[-1]))
    label = words.OWNED_AS_NOW.format(first=first, last=last)
    return (Choice(label, equipment.listed(owned)), *usual)


def fill_owned(brief: Brief, draft: Draft, text: str) -> Draft:
    """The loads or exercise bands owned; what hangs on them is asked anew. Raises `Unclear`."""
    as_now = text.strip().lower() in words.AS_NOW_TYPED
    said = owned_choices(brief)[0].value if as_now and current_plan(brief) else text
    return replace(draft, owned=equipment.typed(said), starts={}, offered={}, changes=())


def ask_start(brief: Brief, draft: Draft, movement: str) -> Say:
    """Which load, or whether the one that follows from a best lift is right; or which exercise band."""
    bands = exercise_bands.bands_from_text(draft.owned or "")
    if bands:
        question = words.START_BAND.format(movement=NAMES[movement].lower())
        return Say(question, exercise_bands.choices(bands))
    return _ask_load(brief, draft, movement)


def _ask_load(brief: Brief, draft: Draft, movement: str) -> Say:
    owned, name = loads_from_text(draft.owned or ""), NAMES[movement].lower()
    if movement in draft.offered:
        use = draft.offered[movement]
        text = words.FROM_BEST.format(best=draft.bests[movement], use=use)
        return Say(text, (Choice(words.TAKE.format(use=use), use), ANOTHER))
    best = _from_best(brief, owned, movement)
    shown = list(dict.fromkeys(str(one) for one in (*best, *_as_now(brief, owned, movement), *owned)))
    question = words.START.format(movement=name)
    if best:
        question = words.START_BEST.format(movement=name, best=brief.bests[movement], use=best[0])
    text = words.TOO_HEAVY.format(lightest=owned[0]) if draft.problem == TOO_HEAVY else question
    test = (Choice(words.TEST_FIRST, TEST),) if brief.may_test and not best else ()
    return Say(text, (*(Choice(one, one) for one in shown[:MOST_BUTTONS]), *test))


def _as_now(brief: Brief, owned: tuple[Load, ...], movement: str) -> list[Load]:
    plan = current_plan(brief)
    mine = (one.load for one in plan.exercises if one.movement == movement) if plan else iter(())
    return [one for one in mine if one is not None and one in owned]


def _from_best(brief: Brief, owned: tuple[Load, ...], movement: str) -> tuple[Load, ...]:
    """About 30 % of the best single lift, when it is known in the unit of the loads."""
    text = brief.bests.get(movement)
    best = load(text, None) if text else None
    use = from_maximum(best, owned) if best is not None and best.unit is owned[0].unit else None
    return () if use is None else (use,)


def fill_start(draft: Draft, movement: str, text: str) -> Draft:
    """A load, a best lift from which one follows, a test first, or an exercise band. Raises `Unclear`."""
    bands = exercise_bands.bands_from_text(draft.owned or "")
    if bands:
        return _start(draft, movement, exercise_bands.read_band(text, bands))
    owned = loads_from_text(draft.owned or "")
    if text.strip().lower() in (TEST, words.TEST_FIRST.lower()):
        return replace(draft, test=movement)
    best = read_maximum(text, owned[0].unit)
    if best is not None:
        draft = replace(draft, bests={**draft.bests, movement: str(best)})
        use = from_maximum(best, owned)
        return replace(draft, problem=TOO_HEAVY) if use is None else _offer(draft, movement, str(use))
    if movement in draft.offered:
        return _agreed(draft, movement, text, owned)
    return _start(draft, movement, str(read_start(text, owned)))


def _agreed(draft: Draft, movement: str, text: str, owned: tuple[Load, ...]) -> Draft:
    use = draft.offered[movement]
    shown = (Choice(words.TAKE.format(use=use), use), ANOTHER)
    typed = (
        *(Choice(yes, use) for yes in words.TAKE_TYPED),
        *(Choice(no, "another") for no in words.NO_TYPED),
    )
    if any(sign.isdigit() for sign in text) and text != use:
        return _start(draft, movement, str(read_start(text, owned)))
    chosen = pick(text, shown, typed)
    return _offer(draft, movement, None) if chosen == ANOTHER.value else _start(draft, movement, chosen)


def _offer(draft: Draft, movement: str, use: str | None) -> Draft:
    others = {name: one for name, one in draft.offered.items() if name != movement}
    return replace(draft, offered=others if use is None else {**others, movement: use})


def _start(draft: Draft, movement: str, use: str) -> Draft:
    return replace(_offer(draft, movement, None), starts={**draft.starts, movement: use})
