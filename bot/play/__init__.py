"""`cuffline play`: an invented practice through two weeks, without hands, on a virtual clock."""

import asyncio
import random
import re
from datetime import UTC, datetime, timedelta
from pathlib import Path

from bot.config import Wrong
from bot.local.messages import ChatMessage
from bot.local.phone import Phone
from bot.play import alert
from bot.play.people import Client, coach_mind
from bot.play.stage import Stage, Watcher

START = datetime(2026, 3, 2, 8, 0, tzinfo=UTC)  # a Monday; any would do
COACH = 1001
ZONE = "Europe/Lisbon"


def clients(seed: int) -> tuple[Client, ...]:
    """One doing well on dumbbells, one older person walking and doing chair squats, one traveller."""
    return (
        Client("Ruta", "Lisbon", 34, {"Goblet squat": 11.0, "Curl": 4.4, "": 1.0}, random.Random(seed)),
        Client(
            "Aino",
            "Helsinki",
            76,
            {"": 1.05},
            random.Random(seed + 1),
            own=(("What do you weigh", "61 kg"), ("How tall", "160 cm")),
        ),
        Client(
            "Milo",
            "New York",
            29,
            {"": 0.95},
            random.Random(seed + 2),
            own=(("What do you weigh", "172 lb"), ("number do you call", "911")),
        ),
    )


def play(days: int, seed: int, quiet: bool, picture: Path) -> int:
    """Play it; 0. Prints both sides as they go, then the coach's digest, and writes its picture."""

    stage = Stage(START, (COACH,), ZONE, printer(quiet))
    try:
        asyncio.run(perform(stage, days, seed))
        report(stage, picture)
    finally:
        stage.close()
    return 0


def play_alert() -> int:
    """One alert through its whole chain, from the client's words to the coach's last tap; 0."""
    stage = Stage(START, (COACH, alert.SECOND), ZONE, alert.from_the_session_on(printer(False)))
    try:
        asyncio.run(alert.perform(stage, clients(1)[0], lambda client: invite(stage, client)))
    finally:
        stage.close()
    return 0


def printer(quiet: bool) -> Watcher:
    """Prints both sides of the chats as they go."""

    def watch(name: str, from_bot: bool, text: str, now: datetime) -> None:
        if not quiet:
            who = f"cuffline > {name}" if from_bot else f"{name}"
            print(f"{now:%a %d %b %H:%M:%S}  {who}: {text}".replace("\n", "\n" + " " * 22))

    return watch


async def perform(stage: Stage, days: int, seed: int) -> None:
    """The whole story: invitations, two weeks, the digest."""
    coach = stage.add(COACH, "Coach", coach_mind)
    cast = clients(seed)
    for number, client in enumerate(cast):
        at = START + timedelta(minutes=40 * number)
        stage.at(at, lambda c=client: invite(stage, c))  # type: ignore[misc]
        stage.add(2001 + number, client.name, client)

    def coach_reads(message: ChatMessage, now: datetime) -> tuple[str, float] | None:
        forwards(stage, cast, message, now)
        return coach_mind(message, now)

    stage.minds[COACH] = coach_reads
    await stage.run(START + timedelta(days=days))
    if not _has_its_week(coach, stage.clock.now()):
        coach.types("week")
        await stage.settle()


def _has_its_week(coach: Phone, now: datetime) -> bool:
    """Whether the digest came by itself within the last day."""
    told = [message.at for message in coach.history if message.text.startswith("Your week")]
    return bool(told) and now - told[-1] < timedelta(days=1)


def invite(stage: Stage, client: Client) -> None:
    """The coach invites one client."""
    stage.types(COACH, "invite")
    stage.types(COACH, client.name, stage.clock.now() + timedelta(seconds=5))


def forwards(stage: Stage, cast: tuple[Client, ...], message: ChatMessage, now: datetime) -> None:
    """The coach forwards a code; the client types it."""
    found = re.search(r"For (\w+): .*type ([A-Z2-7]{26})", message.text, re.DOTALL)
    if found is not None:
        number = next(index for index, client in enumerate(cast) if client.name == found[1])
        stage.types(2001 + number, found[2], now + timedelta(minutes=2))


def report(stage: Stage, picture: Path) -> None:
    """The digest's words and picture."""
    history = stage.phones[COACH].history
    digests = [message.text for message in history if message.text.startswith("Your week")]
    pictures = [message.photo for message in history if message.photo]
    print("\n" + (digests[-1] if digests else "No digest."))
    if pictures:
        try:
            picture.write_bytes(pictures[-1])
        except OSError as problem:
            raise Wrong([f"{picture}: {problem.strerror}"]) from None
        print(f"\nIts picture is in {picture}")
