"""Setting the scene: a practice with coaches and cleared clients, and the misfortunes of its days."""

import functools
import json
import random
import shutil
import tempfile
from contextlib import closing
from dataclasses import replace
from datetime import date, datetime, time, timedelta
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


# --- misfortunes ---
def live(world: World, days: float) -> None:
    """Days as they come: sessions, words, outages, crashes, hours of being down, wrong clocks, blocked bots."""
    for day in range(round(days) or 1):
        morning = START + timedelta(days=day)
        for client in world.clients:
            _day_of(world, client, morning)
        _bad_luck(world, morning)
    _kill_at_random(world)


def _day_of(world: World, client: Client, morning: datetime) -> None:
    dice = client.dice
    if dice.random() < 0.7:
        world.at(morning + timedelta(hours=dice.uniform(1, 12)), lambda: client.types("start"))
    if dice.random() < 0.2:
        words = dice.choice(("coach my knee was stiff", "plan", "help", "hello", "thanks"))
        world.at(morning + timedelta(hours=dice.uniform(1, 16)), lambda: client.types(words))
    if dice.random() < 0.06:
        at = morning + timedelta(hours=dice.uniform(2, 12))
        world.at(at, client.block)
        world.at(at + timedelta(hours=dice.choice((0.5, 5))), client.phone.unblocks)


def _bad_luck(world: World, morning: datetime) -> None:
    dice = world.dice
    coach = dice.choice(world.coaches)
    name = dice.choice(world.clients).name
    world.at(
        morning + timedelta(hours=dice.uniform(1, 14)),
        lambda: coach.types(dice.choice(("week", "clients", f"to {name}: slower on the way down"))),
    )
    for _ in range(3):
        _forge(world, morning + timedelta(hours=dice.uniform(1, 14)))
    if dice.random() < 0.3:
        world.at(morning + timedelta(hours=dice.uniform(1, 14)), world.line.renumber)
    if dice.random() < 0.4:
        outage(world, morning + timedelta(hours=dice.uniform(1, 14)), dice.choice((5, 20, 60)))
    if dice.random() < 0.4:
        _mute(world, morning + timedelta(hours=dice.uniform(1, 14)), dice.choice((2, 20, 60)))
    if dice.random() < 0.3:
        _down(world, morning + timedelta(hours=dice.uniform(1, 14)), dice.choice((0.2, 2, 6)))
    if dice.random() < 0.3:
        _jump(world, morning + timedelta(hours=dice.uniform(1, 14)), dice.choice((-20, -2, 3, 90)))


def _forge(world: World, at: datetime) -> None:
    """Somebody taps a button of somebody else's."""

    def forges() -> None:
        if world.process is None:
            return
        rows = world.store.rows("SELECT token, person FROM button ORDER BY made_at DESC, rowid DESC LIMIT 5")
        thief = world.dice.choice(world.clients)
        theirs = [row["token"] for row in rows if row["person"] != thief.person]
        if theirs and not thief.phone.blocked:
            world.note(thief.name, "[somebody else's button]")
            world.line.forge(thief.phone.user_id, theirs[0])

    world.at(at, forges)


def outage(world: World, at: datetime, minutes: float) -> None:
    """No network for so long."""

    def goes() -> None:
        world.line.down = True
        world.note("*", f"no network for {minutes} min")

    def returns() -> None:
        world.line.down = False
        world.disturbed()
        world.note("*", "the network is back")

    world.at(at, goes)
    world.at(at + timedelta(minutes=minutes), returns)


def _mute(world: World, at: datetime, minutes: float) -> None:
    """Words get in and nothing gets out for so long; an answer waits already when somebody needs help."""
    fine = world.line.weather
    client = random.Random(str(at)).choice(world.clients)
    world.at(at + timedelta(seconds=20), lambda: client.types("plan"))
    world.at(at + timedelta(seconds=60), lambda: client.flag("chest pain"))

    def goes() -> None:
        world.line.weather = replace(fine, lost_before=1)
        world.note("*", f"nothing gets out for {minutes} min")

    def returns() -> None:
        world.line.weather = fine
        world.disturbed()
        world.note("*", "letters get out again")

    world.at(at, goes)
    world.at(at + timedelta(minutes=minutes), returns)


def _down(world: World, at: datetime, hours: float) -> None:
    def goes() -> None:
        world.note("*", f"the bot is down for {hours} h")
        world.kill(back=False)

    world.at(at, goes)
    world.at(at + timedelta(hours=hours), world.start)


def _jump(world: World, at: datetime, minutes: float) -> None:
    def jumps() -> None:
        world.clock.wrong_by += timedelta(minutes=minutes)
        world.disturbed()
        world.note("*", f"the clock jumps by {minutes} min")

    world.at(at, jumps)


def _kill_at_random(world: World) -> None:
    dice, at = random.Random(world.dice.random()), 0
    for _ in range(200):
        at += round(dice.expovariate(1 / 150)) + 1
        dice.choice((world.fate.kill_before, world.fate.kill_after)).add(at)
    world.fate.kill_writes |= {round(dice.expovariate(1 / 2500)) + 1 for _ in range(6)}
    world.restarts = lambda: dice.choice((0.2, 1, 2, 2, 5, 40, 600))


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


def month(world: World, days: int = 28) -> None:
    """A month without crashes: refusals, server errors, time-outs on every day, and once an hour without a network."""
    for day in range(days):
        for client in world.clients:
            _day_of(world, client, START + timedelta(days=day))
    at = START + timedelta(days=world.dice.randrange(days), hours=world.dice.uniform(1, 12))
    outage(world, at, 60)


def story(
    seed: int, days: float = 1, clients: int = 5, aloud: bool = False, of_a_month: bool = False
) -> World:
    """One practice to a calm end. Raises Violation with the command that plays it again."""
    world = practice(seed, clients)
    world.aloud = aloud
    try:
        if of_a_month:
            month(world, round(days))
        else:
            live(world, days)
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
