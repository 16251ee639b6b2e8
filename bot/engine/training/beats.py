"""A sound to train by for whoever asks: one file for each movement of today's plan that has a beat of its own."""

from datetime import datetime
from typing import TYPE_CHECKING

import msgspec

from bot.engine import reading_briefs, status
from bot.engine.training import loads
from conversations.protocol import Say
from conversations.words import beat as words
from core.beat import Pattern, length_s, pattern_of
from core.plans import GENTLE_SETS
from core.store import mail
from core.store.mail import Letter
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def send(engine: "Engine", client: Person, now: datetime) -> None:
    """The files, or why there is none."""
    found = patterns(engine, client)
    if not found or client.chat is None:
        engine.say(client, Say(words.NOTHING), now)
        return
    for pattern, names in found.items():
        body = {
            "text": words.caption(pattern, names),
            "title": words.title(names),
            "file": words.FILE,
            "seconds": round(length_s(pattern)),
            "beat": msgspec.to_builtins(pattern),
        }
        mail.post(engine.store, Letter(client.chat, body, "beat", person=client.id), now)


def patterns(engine: "Engine", client: Person) -> dict[Pattern, list[str]]:
    """The movements by their beat, as done in the next session."""
    plan = status.plan_of(engine, client.id)
    gentle = reading_briefs.gentle(reading_briefs.About(engine, client, {}))
    named = loads.names(plan)
    found: dict[Pattern, list[str]] = {}
    for exercise in plan.exercises if plan else ():
        pattern = pattern_of(exercise, GENTLE_SETS if gentle else None)
        if pattern is not None:
            found.setdefault(pattern, []).append(named[exercise.movement])
    return found
