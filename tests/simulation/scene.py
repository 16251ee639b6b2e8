"""Setting the scene: a practice with coaches and cleared clients, and its story to a calm end."""

import functools
import json
import random
import shutil
import tempfile
from contextlib import closing
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from pathlib import Path

from bot.engine.days import calendar
from core.calendar.recurrence import Recurrence, Slot, Weekday
from core.calendar.stored import when_to_text
from core.facts import Cleared, PlanGiven, ScreeningDone
from core.plan_text import plan_to_text
from core.plans import Plan, Side
from core.store import facts, keys, people
from core.store.connection import Store, connect
from core.store.keys import Key
from core.store.people import Role
from core.templates import TEMPLATES, build
from core.units import Load
from tests.simulation import misfortunes
from tests.simulation.coaches import Coach
from tests.simulation.invariants import Watchman
from tests.simulation.line import FINE, Weather
from tests.simulation.people import Client
from tests.simulation.telling import PLAIN, Temper
from tests.simulation.world import COACH, FIRST_CLIENT, SECOND, START, World

LOADS = tuple(Load(Decimal(kg)) for kg in (4, 6, 8, 10, 12))
NAMES = ("Ruta", "Aino", "Milo", "Ines", "Tomas", "Lea", "Omar", "Jun", "Vera", "Noor", "Pavo", "Sana")
CITIES = ("Europe/Lisbon", "Europe/Helsinki", "America/New_York", "Asia/Tokyo", "Australia/Lord_Howe")
PLANS = ("one_dumbbell", "dumbbells", "weaker_side", "rehab_fixed", "gentle", "travel")
SIDES = (Side.LEFT, Side.RIGHT)
DAYS = tuple(Weekday)
Decided = tuple[str, str, datetime | None]  # what, the regions it opens, until when
# Who may not train: nobody has decided yet; cleared and then held; cleared until a moment that has passed.
WAITING: dict[str, tuple[Decided, ...]] = {
    "Oda": (),
    "Kaj": (("cleared", "arms,legs", None), ("held", "", None)),
    "Runa": (("cleared", "arms,legs", START + timedelta(seconds=1)),),
}
FIRST_WAITING = FIRST_CLIENT + 500  # above every other client's number
WAITING_MIN = 40.0  # long enough to come to a first set, if nothing kept them from it


@functools.cache
def _empty(key: Key | None) -> Path:
    """A database with the schema and nothing in it, made once for each key in force."""
    path = Path(tempfile.mkdtemp(prefix="cuffline-empty-")) / "empty.db"
    Store(path, synchronous="OFF").close()
    return path


def plan_for(number: int, zone: str, dice: random.Random) -> Plan:
    """One of the templates, on three or all days of the week."""
    template = TEMPLATES[PLANS[number % len(PLANS)]]
    days = DAYS[:: dice.choice((1, 2))]
    slots = tuple(Slot(day, time(dice.choice((2, 7, 18)), 30)) for day in days)
    when = when_to_text(Recurrence(slots, zone, date(2026, 3, 1)))
    start = dict.fromkeys(template.loaded, LOADS[1])
    return build(template, LOADS, start, SIDES, when)


def practice(
    seed: int,
    clients: int = 5,
    weather: Weather | None = None,
    temper: Temper | None = None,
    calm: bool = False,
) -> World:
    """A practice of two coaches and some clients. `calm`: no faults, everybody sensible."""
    dice = random.Random(seed)
    world = World(dice, FINE if calm else weather or Weather())
    shutil.copy(_empty(keys.held()), world.path)
    for number, name in ((COACH, "Coach"), (SECOND, "Second")):
        world.coaches.append(Coach(world, number, name, random.Random(dice.random()), 1.0 if calm else 0.7))
    world.start()
    for number in range(clients):
        _join(world, number, PLAIN if calm else temper or Temper())
    world.place_of = functools.partial(place_of, world)  # type: ignore[method-assign]
    world.look = Watchman(world).look
    return world


def _join(world: World, number: int, temper: Temper) -> None:
    """A cleared client with a plan."""
    zone, name = CITIES[number % len(CITIES)], NAMES[number % len(NAMES)]
    client = Client(world, FIRST_CLIENT + number, name, random.Random(world.dice.random()), temper)
    plan = plan_for(number, zone, world.dice)
    _stored(world, client, zone, plan, "clear", (("cleared", "arms,legs", None),), START)
    world.clients.append(client)


def _stored(
    world: World,
    client: Client,
    zone: str,
    plan: Plan,
    tier: str,
    decisions: tuple[Decided, ...],
    reminded_from: datetime,
) -> None:
    """A client as the coach's first steps leave one: screened, decided about or not yet, with a plan."""
    store = world.store
    coach = people.by_chat(store, COACH)
    assert coach is not None, "the engine knows its coaches"
    with store.transaction():
        client.person = people.add(
            store, client.phone.user_id, client.name, Role.CLIENT, zone, START, coach.id
        )
        facts.put(store, client.person, ScreeningDone(START, "1", tier, "", ""), START)
        for what, regions, until in decisions:
            facts.put(store, client.person, Cleared(START, "1", what, regions, coach.id, until), START)
        facts.put(store, client.person, PlanGiven(START, plan_to_text(plan), coach.id), START)
        assert world.process is not None, "just started"
        calendar.remind_next(world.process.engine, people.by_id(store, client.person), reminded_from)


def they_try(world: World, seed: int) -> None:
    """People who may not train join a calm world and try to; the process dies once meanwhile.

    They come after a story's days, with dice of their own: every seed tells of the others what it always told.
    """
    dice = random.Random(f"waiting {seed}")
    for number, (name, decisions) in enumerate(WAITING.items()):
        client = Client(world, FIRST_WAITING + number, name, random.Random(dice.random()), PLAIN)
        plan = plan_for(0, CITIES[0], dice)
        _stored(world, client, CITIES[0], plan, "coach_looks", decisions, world.clock.now())
        world.waiting.append(client)
        for _ in range(3):
            world.after(60 * dice.uniform(0, 20), lambda client=client: client.types("start"))  # type: ignore[misc]
    world.after(60 * dice.uniform(0, 20), lambda: world.kill(back=False))
    world.after(60 * 20, world.start)
    world.run(minutes=WAITING_MIN)


def place_of(world: World, person: int) -> tuple[str, int, tuple[str, ...]] | None:
    """(session, exercise number, sides) of the session under way; the process may be down."""
    with closing(connect(str(world.path))) as file:
        row = file.execute(
            "SELECT state FROM thread WHERE person = ? AND dialogue = 'session' AND state IS NOT NULL"
            " ORDER BY id DESC LIMIT 1",
            [person],
        ).fetchone()
    if row is None:
        return None
    state = json.loads(row[0])
    exercise = state["brief"]["exercises"][state.get("exercise", 0)]
    return state["brief"]["session"], state.get("exercise", 0) + 1, tuple(exercise.get("sides", ["both"]))


def finish(world: World) -> None:
    """A calm end: everything up, time to send what waits, and nothing may be left."""
    world.fate.kill_before.clear()
    world.fate.kill_after.clear()
    world.fate.kill_writes.clear()
    world.line.down, world.line.weather = False, FINE
    world.start()
    for client in world.clients:
        client.temper = PLAIN
    world.disturbed()
    world.run(minutes=5)
    world.look.__self__.at_the_end()  # type: ignore[attr-defined]


def story(
    seed: int, days: float = 1, clients: int = 5, aloud: bool = False, of_a_month: bool = False
) -> World:
    """One practice to a calm end. Raises Violation with the command that plays it again."""
    world = practice(seed, clients)
    world.aloud = aloud
    try:
        if of_a_month:
            misfortunes.month(world, round(days))
        else:
            misfortunes.live(world, days)
        world.run(days=days)
        finish(world)
        they_try(world, seed)
        finish(world)
    except Exception as problem:
        what = "--month" if of_a_month else f"--days {days}"
        again = f"python -m tests.bench.simulation --seed {seed} {what} --clients {clients} --journal"
        problem.add_note("\n".join((*world.journal, f"again: {again}")))
        raise
    finally:
        world.close()
    return world
