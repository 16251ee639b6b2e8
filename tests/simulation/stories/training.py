"""What clients do with bands on, and what follows: sessions, stops, corrections, walks, mornings, alerts."""

from collections.abc import Callable
from datetime import datetime
from typing import Any

from bot.engine.days import calendar
from bot.local.messages import ChatMessage
from bot.play.people import Client, coach_mind
from bot.play.stage import Answer, Mind
from core.facts import Cleared, PlanGiven, ScreeningDone
from core.plan_text import plan_to_text
from core.store import facts, people
from core.store.people import Role
from core.templates import TEMPLATES, build
from tests.simulation.scene import LOADS, SIDES
from tests.simulation.stories.told import CHATS, Story, labels, practice, tell
from tests.simulation.stories.with_coaches import aino, ruta
from tests.simulation.world import COACH, START, World

TUE_FRI = (
    '{"kind":"weekly","slots":[{"weekday":"tue","at":"19:00:00"},{"weekday":"fri","at":"19:00:00"}],'
    '"zone":"Europe/Lisbon","start":"2026-01-05"}'
)


def given(world: World, name: str, template: str) -> World:
    """A cleared client of the first coach, with a plan."""
    plan = build(
        TEMPLATES[template], LOADS, dict.fromkeys(TEMPLATES[template].loaded, LOADS[1]), SIDES, TUE_FRI
    )
    store, coach = world.store, people.by_chat(world.store, COACH)
    assert coach is not None, "the engine knows its coaches"
    assert world.process is not None, "it has just started"
    with store.transaction():
        client = people.add(store, CHATS[name], name.title(), Role.CLIENT, "Europe/Lisbon", START, coach.id)
        facts.put(store, client, ScreeningDone(START, "1", "clear", "", ""), START)
        facts.put(store, client, Cleared(START, "1", "cleared", "arms,legs", coach.id), START)
        facts.put(store, client, PlanGiven(START, plan_to_text(plan), coach.id), START)
        calendar.remind_next(world.process.engine, people.by_id(store, client), START)
    return world


OFF = "Bands are off"
Own = tuple[str, str, float]  # words of a message, what is said to it, and after how many seconds


def but(mind: Mind, *own: Own) -> Mind:
    """The same person, who says something else to messages with these words; "": nothing.

    Always the same to the same words: a question that comes twice after a crash must not change the story.
    """

    def speaks(message: ChatMessage, now: datetime) -> Answer | None:
        answer = next((one[1:] for one in own if one[0] in message.text), None) or mind(message, now)
        if answer is None or not answer[0] or (answer[0] == OFF and OFF not in labels(message)):
            return None
        return answer

    return speaks


def session(
    template: str,
    *own: Own,
    lines: str = "",
    client: Callable[[], Client] = ruta,
    coach: Mind | None = coach_mind,
    second: Mind | None = None,
) -> World:
    """One session of a client who answers by themselves, but for `own`."""
    mind = client()
    name = mind.name.lower()
    world = practice(**{name: but(mind, *own), "coach": coach, "second": second})
    return tell(given(world, name, template), f"{name} start\n{lines}")


def asleep(message: ChatMessage, now: datetime) -> None:
    """Hears nothing."""


GOES_ON = (("Where does it hurt", "Working muscle", 6.0), ("A burn in the working muscle", "Go on", 10.0))
BETTER = (("How is it now", "Better", 90.0), ("Are the bands off?", "Bands are off", 6.0))
NUMB = ("Set 1 of", "my foot is numb", 20.0)
SILENT = (("Set 1 of", "", 0.0), ("All right? Bands", "", 0.0))
NOT_OFF = (
    ("I go on telling your coach", "Bands are off", 9.0),
    ("ands off now", "", 0.0),
    ("bands off now.", "", 0.0),
)
SLEPT = (("not answered yet (3)", "I am on it", 40.0), ("\nTold:", "", 0.0))


def _alone(*own: Own, hours: float = 0.5, name: str, **more: Any) -> Story:
    """A session with one dumbbell."""
    return Story(name, lambda: session("one_dumbbell", *own, **more), hours)


TRAINING = (
    _alone(name="session"),
    Story("two_sides", lambda: session("weaker_side")),
    Story("walk", lambda: session("gentle", client=aino), hours=0.8),
    Story("fixed", lambda: session("rehab_fixed")),
    _alone(("Set 1 of", "stop", 20.0), *BETTER, name="stopped"),
    _alone(NUMB, *BETTER, name="numb"),
    _alone(("Go · set 2", "it hurts", 8.0), *GOES_ON, name="hurts"),
    _alone(("press", "Longer", 8.0), name="slow_refill"),
    _alone(*SILENT, name="quiet_set", hours=1),
    _alone(*NOT_OFF, name="bands_left_on", hours=1),
    _alone(NUMB, *BETTER, name="escalation", coach=asleep, second=but(coach_mind, *SLEPT), hours=2),
    _alone(name="next_morning", hours=40),
    _alone(("out of the ordinary", "numb", 30.0), name="numb_next_morning", hours=40),
)
