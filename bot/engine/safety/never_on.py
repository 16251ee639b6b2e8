"""Bands that were counted as on because nobody spoke, and never were: the alarm ends by itself, the coach hears."""

from typing import TYPE_CHECKING

from conversations.protocol import Choice, Say
from conversations.words import alerts as alert_words
from conversations.words import engine as words
from core.facts import BandsOff
from core.safety.causes import Cause
from core.store import duties, people
from core.store.duties import OpenAlert, Watch
from core.store.mail import Priority

if TYPE_CHECKING:
    from bot.engine.core import Engine

SETTLED = "not_on"  # how an alert was settled, stored


def alarm(engine: "Engine", client: int) -> OpenAlert | None:
    """The open alert that says of the bands that are watched: nobody knows whether they are on."""
    found = duties.same_alert(engine.store, client, Cause.MAYBE_ON)
    watches = duties.watches(engine.store, client)
    return found if found is not None and watches and watches[0].on_at <= found.raised_at else None


def buttons(engine: "Engine", watch: Watch) -> tuple[Choice, ...]:
    """Under a call to take them off: off, and, where nobody ever said that they are on, that they never were."""
    off = Choice(words.TIME_UP_LABEL, f"bands_off:{watch.id}")
    if alarm(engine, watch.person) is None:
        return (off,)
    return off, Choice(words.NEVER_ON_LABEL, f"never_on:{watch.id}")


def settle(engine: "Engine", client: int, fact: BandsOff) -> None:
    """The client says that they never were on: whoever was called hears that there is nothing to do."""
    alert = duties.same_alert(engine.store, client, Cause.MAYBE_ON)
    if alert is None:
        return
    duties.settle_alert(engine.store, alert.id, SETTLED, fact.at)
    unanswered = duties.same_alert(engine.store, client, Cause.NO_REPLY)
    # No session begins while one is asked about: what was raised later is about this one, which never was.
    if unanswered is not None and unanswered.raised_at > alert.raised_at:
        duties.settle_alert(engine.store, unanswered.id, SETTLED, fact.at)
    person = people.by_id(engine.store, client)
    called = [engine.coach_of(person), *([engine.second_contact(person)] if alert.calls > 1 else [])]
    for coach in called:
        if coach is not None:
            engine.say(
                coach, Say(alert_words.NEVER_ON.format(name=person.name)), engine.clock(), Priority.ALERT
            )
