"""Next loads that wait for the coach's tap, for clients whose coach wants to be asked.

Only a heavier load (or a harder rung) waits: until the tap the old one stays. A lighter one is a caution and
holds at once; the coach can take it back.
"""

from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import quiet, status
from bot.engine.coach import clients as whose
from conversations.protocol import Choice, Say
from conversations.words import coach as words
from core.facts import CoachDid, Detail, LoadMoved
from core.progression import Action
from core.store import facts
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

SETTING = "next_loads"  # the name of the client's detail; its value is "ask", anything else: by itself
DECIDING = ("load_used", "load_kept")  # acts of a coach
Told = tuple[str, str, str, str]  # movement as the client calls it, load before, next, why


def waiting(engine: "Engine", client: int) -> list[LoadMoved]:
    """The newest move of each movement, where it waits for a tap."""
    newest = {one.movement: one for one in facts.current(engine.store, LoadMoved, client)}
    return [one for one in newest.values() if is_asked(one)]


def is_asked(move: LoadMoved) -> bool:
    """Whether this move waits for a tap; a movement at rest does not wait for one."""
    return not move.applied and changes(move)


def asks(engine: "Engine", client: int) -> bool:
    """Whether the coach wants to be asked before a load goes up."""
    return status.detail(engine, client, SETTING, "") == "ask"


def switch(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The other way from now on."""
    mode = "auto" if asks(engine, client.id) else "ask"
    facts.put(engine.store, client.id, Detail(now, SETTING, mode), now)
    facts.put(engine.store, client.id, CoachDid(now, coach.id, f"loads_{mode}"), now)
    said = words.LOADS_ASK if mode == "ask" else words.LOADS_AUTO
    engine.say(coach, Say(said.format(name=client.name), (words.to_card(client.name, client.id),)), now)


def held_back(engine: "Engine", client: int, move: LoadMoved) -> LoadMoved:
    """The move as it goes on record: a heavier load waits where the coach wants to be asked."""
    return replace(move, applied=False) if changes(move) and _raises(move) and asks(engine, client) else move


def changes(move: LoadMoved) -> bool:
    """Whether there is another load than before to decide about; what a coach planned is decided."""
    return move.use != move.was and bool(move.was) and move.action not in (Action.PAUSE, Action.START)


def _raises(move: LoadMoved) -> bool:
    return move.action != Action.LOWER


def ask(engine: "Engine", client: Person, move: LoadMoved, now: datetime) -> None:
    """The coach who wants to be asked hears of another load, with the buttons to decide."""
    coach = engine.coach_of(client)
    if coach is None or not changes(move) or not asks(engine, client.id):
        return
    shown = whose.name_of(engine, coach, client, now)
    asleep = quiet.is_quiet(engine, coach, now)
    engine.say(coach, Say(line(shown, move), buttons(client, move), quiet=asleep), now)


def told(move: LoadMoved) -> Told:
    """What the client is told: a load that waits for the coach is not yet theirs."""
    name = words.movement(move.movement)
    if is_asked(move):
        return name, move.was, move.was, words.COACH_DECIDES.format(use=move.use)
    return name, move.was, move.use, move.because


def decided(engine: "Engine", client: int, move: LoadMoved) -> bool:
    """Whether a coach has chosen a load since the model made this move; then the coach's word stands."""
    newest = facts.latest(engine.store, LoadMoved, client, movement=move.movement)
    did = facts.since(engine.store, CoachDid, client, move.at)
    return newest != move or any(one.action in DECIDING for one in did)


def line(name: str, move: LoadMoved) -> str:
    """ "Ruta: goblet squat 12 -> 12.5 kg. Your reps are climbing, ..."."""
    template = words.LOAD_LOWERED if move.applied else words.LOAD_WAITS
    movement = words.movement(move.movement).lower()
    return template.format(name=name, movement=movement, was=move.was, use=move.use, because=move.because)


def buttons(client: Person, move: LoadMoved) -> tuple[Choice, ...]:
    """Use it, keep the old one; they name the load, so that an old button is known."""
    about = f"{client.id}/{move.movement}/{move.use}"
    keep = Choice(words.KEEP.format(was=move.was), f"menu:load_keep:{about}")
    return (
        (keep,) if move.applied else (Choice(words.USE.format(use=move.use), f"menu:load_use:{about}"), keep)
    )


def use(engine: "Engine", coach: Person, client: Person, detail: str, now: datetime) -> None:
    """The coach says yes: the new load holds from the next session on."""
    move = _meant(engine, client, detail)
    if move is None or not is_asked(move):
        engine.say(coach, Say(words.LOAD_OLD.format(name=client.name)), now)
        return
    facts.put(engine.store, client.id, replace(move, at=now, applied=True), now)
    _told(engine, coach, client, move, "load_used", move.use, now)


def keep(engine: "Engine", coach: Person, client: Person, detail: str, now: datetime) -> None:
    """The coach keeps the load there was."""
    move = _meant(engine, client, detail)
    if move is None or move.use == move.was:
        engine.say(coach, Say(words.LOAD_OLD.format(name=client.name)), now)
        return
    kept = replace(
        move, at=now, use=move.was, action=Action.HOLD.value, because=words.COACH_KEEPS, applied=True
    )
    facts.put(engine.store, client.id, replace(kept, expected=""), now)
    _told(engine, coach, client, move, "load_kept", move.was, now)


def _meant(engine: "Engine", client: Person, detail: str) -> LoadMoved | None:
    """The newest move of the movement, if it is still the one on the button."""
    movement, _, load = detail.partition("/")
    move = facts.latest(engine.store, LoadMoved, client.id, movement=movement)
    return move if move is not None and move.use == load else None


def _told(
    engine: "Engine", coach: Person, client: Person, move: LoadMoved, act: str, load: str, now: datetime
) -> None:
    movement = words.movement(move.movement)
    facts.put(engine.store, client.id, CoachDid(now, coach.id, act, f"{movement} {load}"), now)
    quiet.note(engine, client, words.LOAD_DECIDED.format(movement=movement, load=load), now)
    engine.say(
        coach, Say(words.LOAD_NOTED.format(name=client.name, movement=movement.lower(), load=load)), now
    )
