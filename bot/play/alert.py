"""One alert, from the words in mid-set to the end: the coach sleeps, the second contact takes it."""

import re
from collections.abc import Callable
from datetime import datetime, timedelta

from bot.local.messages import ChatMessage
from bot.play.people import Client, coach_mind
from bot.play.stage import Answer, Stage, Watcher

COACH, SECOND, CLIENT = 1001, 1002, 2001
WORDS = "my left foot is numb"
ALERT = "\nTold: "  # a line that every alert has
ROUNDS_SLEPT = 3  # rounds that the second contact hears before tapping


def from_the_session_on(watch: Watcher) -> Watcher:
    """Prints nothing before the questions that lead into the session."""
    begun = False

    def quiet_before(name: str, from_bot: bool, text: str, now: datetime) -> None:
        nonlocal begun
        begun = begun or text.startswith("Set 1 of")
        if begun:
            watch(name, from_bot, text, now)

    return quiet_before


async def perform(stage: Stage, client: Client, invite: Callable[[Client], None]) -> None:
    """The story, over three days."""
    start = stage.clock.now()
    stage.add(COACH, "Coach", lambda message, now: sleeping_coach(stage, message, now))
    stage.add(SECOND, "Second", second_contact())
    stage.add(CLIENT, client.name, numb_in_set_one(client))
    stage.at(start, lambda: invite(client))
    await stage.run(start + timedelta(days=3))


def numb_in_set_one(client: Client) -> Callable[[ChatMessage, datetime], Answer | None]:
    """Trains like anybody, but in set 1 a foot goes numb; it gets better."""

    answers = {"Set 1 of": (WORDS, 20.0), "Are the bands off?": ("Bands are off", 6.0)}

    def mind(message: ChatMessage, now: datetime) -> Answer | None:
        if message.text.startswith("How is it now?"):
            return "Better", 90
        if message.text.startswith("Bands off now."):
            return None
        begins = (answer for start, answer in answers.items() if message.text.startswith(start))
        return next(begins, None) or client(message, now)

    return mind


def sleeping_coach(stage: Stage, message: ChatMessage, now: datetime) -> Answer | None:
    """Clears and plans by day, and does not hear alerts."""
    code = re.search(r"type ([A-Z2-7]{26})", message.text)
    if code is not None:
        stage.types(CLIENT, code[1], now + timedelta(minutes=2))
    asleep = ALERT in message.text or "is on it" in message.text
    return None if asleep else coach_mind(message, now)


def second_contact() -> Callable[[ChatMessage, datetime], Answer | None]:
    """Answers the third round, and closes it when asked again the next day."""
    rounds = 0

    def mind(message: ChatMessage, now: datetime) -> Answer | None:
        nonlocal rounds
        if message.text.startswith("Still open"):
            return "Clear to train", 120
        rounds += ALERT in message.text
        return ("I am on it", 40) if ALERT in message.text and rounds == ROUNDS_SLEPT else None

    return mind
