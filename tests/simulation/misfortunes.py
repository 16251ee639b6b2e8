"""The misfortunes of days: outages, crashes, hours of being down, wrong clocks, blocked bots, forged buttons."""

import random
from dataclasses import replace
from datetime import datetime, timedelta

from tests.simulation.people import Client
from tests.simulation.world import START, World


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


def month(world: World, days: int = 28) -> None:
    """A month without crashes: refusals, server errors, time-outs on every day, and once an hour without a network."""
    for day in range(days):
        for client in world.clients:
            _day_of(world, client, START + timedelta(days=day))
    at = START + timedelta(days=world.dice.randrange(days), hours=world.dice.uniform(1, 12))
    outage(world, at, 60)
