"""Setting the scene: a practice with coaches and cleared clients, and its story to a calm end."""

import functools
import json
import random
import shutil
import tempfile
from contextlib import closing
from datetime import date, time
from decimal import Decimal
from pathlib import Path

from bot.engine import calendar
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
from tests.simulation.people import PLAIN, Client, Temper
from tests.simulation.world import COACH, FIRST_CLIENT, SECOND, START, World

LOADS = tuple(Load(Decimal(kg)) for kg in (4, 6, 8, 10, 12))
NAMES = ("Ruta", "Aino", "Milo", "Ines", "Tomas", "Lea", "Omar", "Jun", "Vera", "Noor", "Pavo", "Sana")
CITIES = ("Europe/Lisbon", "Europe/Helsinki", "America/New_York", "Asia/Tokyo", "Australia/Lord_Howe")
PLANS = ("one_dumbbell", "dumbbells", "weaker_side", "rehab_fixed", "gentle", "travel")
SIDES = (Side.LEFT, Side.RIGHT)
DAYS = tuple(Weekday)


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
    zone, store = CITIES[number % len(CITIES)], world.store
    name, chat = NAMES[number % len(NAMES)], FIRST_CLIENT + number
    client = Client(world, chat, name, random.Random(world.dice.random()), temper)
    coach = people.by_chat(store, COACH)
    assert coach is not None, "the engine knows its coaches"
    with store.transaction():
        client.person = people.add(store, chat, name, Role.CLIENT, zone, START, coach.id)
        facts.put(store, client.person, ScreeningDone(START, "1", "clear", "", ""), START)
        facts.put(store, client.person, Cleared(START, "1", "cleared", "arms,legs", coach.id), START)
        plan = plan_to_text(plan_for(number, zone, world.dice))
        facts.put(store, client.person, PlanGiven(START, plan, coach.id), START)
        assert world.process is not None, "just started"
        calendar.remind_next(world.process.engine, people.by_id(store, client.person), START)
    world.clients.append(client)


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
    except Exception as problem:
        what = "--month" if of_a_month else f"--days {days}"
        again = f"python -m tests.bench.simulation --seed {seed} {what} --clients {clients} --journal"
        problem.add_note("\n".join((*world.journal, f"again: {again}")))
        raise
    finally:
        world.close()
    return world
