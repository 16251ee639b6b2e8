"""Clips: a client's film of a movement for the coach, the coach's one cue back, the coach's own film of a movement."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import letters, quiet
from bot.engine.training import clips_asked
from bot.engine.updates import Incoming
from conversations.protocol import Choice, Media, Say
from conversations.words import clips as words
from conversations.words.movements import NAMES
from core.facts import Detail
from core.store import duties, facts, people, threads
from core.store.mail import Priority
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine

CUE, CLIP = "cue", "clip"  # details "cue:goblet_squat" of a client, "clip:goblet_squat" of a coach


def sent(engine: "Engine", person: Person, incoming: Incoming, now: datetime) -> bool:
    """A film; True: it is dealt with. With bands on it waits: they come first."""
    if incoming.media is not Media.VIDEO:
        return False
    if person.role is Role.CLIENT and duties.watches(engine.store, person.id):
        engine.say(person, Say(words.BANDS_FIRST), now, Priority.SESSION)
        return True
    if not incoming.file:
        engine.say(person, Say(words.NO_ROUND_ONES), now, Priority.SESSION)
        return True
    if person.role is Role.COACH:
        return _keep(engine, person, incoming, now)
    return _to_coach(engine, person, incoming, now)


def _to_coach(engine: "Engine", client: Person, incoming: Incoming, now: datetime) -> bool:
    coach = engine.coach_of(client)
    if coach is None:
        return False
    movement = under_way(engine, client) or next(reversed(clips_asked.asked(engine, client.id)), "")
    name = NAMES.get(movement, "").lower() if movement else ""
    about = words.FROM.format(name=client.name, about=f": {name}" if name else "")
    said = f"{about}\n{incoming.text}".strip()
    buttons = (Choice(words.CUE, f"menu:cue:{client.id}/{movement}"),) if movement else ()
    asleep = quiet.is_quiet(engine, coach, now)
    letters.post(engine.store, coach, Say(said, buttons, quiet=asleep, clip=incoming.file), now)
    clips_asked.came(engine, client.id, movement, now)
    engine.say(client, Say(words.PASSED_ON.format(coach=coach.name)), now, Priority.SESSION)
    return True


def under_way(engine: "Engine", client: Person) -> str:
    """The movement of the session that is under way, "" when there is none."""
    from bot.engine import turns

    thread = threads.live_in(engine.store, client.id, "session")
    if thread is None:
        return ""
    movement: str = turns.state_of(thread).doing.movement
    return movement


def _keep(engine: "Engine", coach: Person, incoming: Incoming, now: datetime) -> bool:
    """A coach's film with a movement's name under it is shown to their clients before that movement."""
    movement = named(incoming.text)
    if movement is None:
        engine.say(coach, Say(words.WHICH.format(names=", ".join(NAMES.values()))), now)
        return True
    facts.put(engine.store, coach.id, Detail(now, f"{CLIP}:{movement}", incoming.file), now)
    engine.say(coach, Say(words.KEPT.format(name=NAMES[movement].lower())), now)
    return True


def named(text: str) -> str | None:
    """The movement that these words name; None: none."""
    flat = " ".join(text.lower().replace("-", " ").split())
    return next((one for one, name in NAMES.items() if name.lower().replace("-", " ") in flat), None)


def of_coach(engine: "Engine", client: Person) -> dict[str, str]:
    """The coach's films by movement."""
    return {} if client.coach is None else _by_movement(engine, client.coach, CLIP)


def cues_of(engine: "Engine", client: int) -> dict[str, str]:
    """The coach's own cue for this client by movement."""
    return _by_movement(engine, client, CUE)


def _by_movement(engine: "Engine", person: int, kind: str) -> dict[str, str]:
    details = facts.current(engine.store, Detail, person)
    named = ((one.name.partition(":"), one.value) for one in details)
    return {movement: value for (what, _, movement), value in named if what == kind}


def ask_cue(engine: "Engine", coach: Person, client: Person, movement: str, now: datetime) -> None:
    """The coach gives one cue."""
    from bot.engine import turns

    about = {"client": client.id, "movement": movement, "movement_name": NAMES[movement]}
    turns.begin(engine, coach, "cueing", about, now)


def given(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """The client reads the cue at once, too; with bands on, or asleep, after that."""
    client = people.by_id(engine.store, details["client"])
    said = words.CUE_FOR_YOU.format(coach=coach.name, name=details["name"].lower(), cue=details["cue"])
    if duties.watches(engine.store, client.id) or _sleeps(engine, client, now):
        quiet.note(engine, client, said, now)
        engine.say(coach, Say(words.LATER.format(name=client.name)), now)
        return False
    engine.say(client, Say(said), now, Priority.SESSION)
    engine.say(coach, Say(words.GIVEN.format(name=client.name)), now)
    return False


def _sleeps(engine: "Engine", client: Person, now: datetime) -> bool:
    """Whoever trains in the night is awake."""
    from bot.engine import due

    return quiet.is_quiet(engine, client, now) and not due.in_session(engine, client)
