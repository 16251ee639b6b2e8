"""How people join and what coaches do: invitations, clearance, plans, a week's digest, a stand-in."""

import random
import re
from datetime import datetime

from bot.local.messages import ChatMessage
from bot.play.people import Client, coach_mind
from bot.play.stage import Answer, Mind
from tests.simulation.stories.told import Story, practice, tell
from tests.simulation.world import World


class Even(random.Random):
    """Every day is like the other: a question that comes twice is answered the same."""

    def gauss(self, mu: float = 0.0, sigma: float = 1.0) -> float:
        """The middle."""
        return mu


def ruta() -> Client:
    """Does well on dumbbells."""
    return Client("Ruta", "Lisbon", 34, {"": 6.0}, Even())


def aino() -> Client:
    """Older; walks and does chair squats."""
    own = (("What do you weigh", "61 kg"), ("How tall", "160 cm"))
    return Client("Aino", "Helsinki", 76, {"": 1.05}, Even(), own=own)


def _forwards(world: World, name: str) -> Mind:
    """The coach's mind, who also hands the code of an invitation on."""

    def mind(message: ChatMessage, now: datetime) -> Answer | None:
        code = re.search(r"type ([A-Z2-7]{26})", message.text)
        if code is not None:
            guest = next(one for one in world.coaches if one.name == name)
            world.after(60, lambda: guest.says(code[1]))  # type: ignore[attr-defined]
        return coach_mind(message, now)

    return mind


def _joins(client: Client) -> World:
    world = practice(**{client.name.lower(): client})
    coach = next(one for one in world.coaches if one.name == "Coach")
    coach.mind = _forwards(world, client.name)  # type: ignore[attr-defined]
    return tell(world, f"coach invite\ncoach {client.name}")


def _two(lines: str) -> World:
    """A client with a plan, and what is typed."""
    from tests.simulation.stories.training import given

    return tell(given(practice(), "ruta", "one_dumbbell"), lines)


DIGEST = """
coach  clients
coach  week
coach  ruta
coach  [The plan]
coach  [More]
coach  hold ruta
coach  two weeks
coach  pause ruta
coach  one week
coach  ruta
"""
WORDS = """
ruta   coach my knee was stiff
coach  to ruta: slower on the way down
ruta   my niece moved here
ruta   [Send it]
coach  ruta
coach  [Message]
coach  well done
"""
STAND_IN = """
second menu
coach  stand-in
coach  [Second]
coach  one week
ruta   coach who is there?
ruta   my foot is numb
ruta   [Better]
second [I am on it]
"""
WITH_COACHES = (
    Story("joining", lambda: _joins(ruta()), hours=0.7),
    Story("joining_older", lambda: _joins(aino()), hours=0.7),
    Story("digest", lambda: _two(DIGEST)),
    Story("words", lambda: _two(WORDS)),
    Story("stand_in", lambda: _two(STAND_IN)),
)
