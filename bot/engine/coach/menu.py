"""The coach's buttons and commands: each names what to do and, after the colon, about whom."""

from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import gate, practice, turns
from bot.engine.coach import (
    away,
    card,
    covering,
    digest,
    exporting,
    listing,
    loads_asked,
    logbook,
    more,
    replaced,
    resting,
    review,
    stopping_session,
    writing_to,
)
from bot.engine.numbers import reports
from bot.engine.safety import alerts, emergency, unseen
from bot.engine.training import clips, clips_asked, kit
from conversations.protocol import Say
from conversations.words import alerts as alert_words
from conversations.words import coach as coach_words
from conversations.words import engine as words
from core.access import Action
from core.store import duties, people, settings
from core.store.people import Person, Role

if TYPE_CHECKING:
    from bot.engine.core import Engine

BOTH = 2  # what to do, and a name
Plain = Callable[["Engine", Person, str, datetime], None]
Detailed = Callable[["Engine", Person, Person, str, datetime], None]
About = Callable[["Engine", Person, Person, datetime], None]


def chosen(engine: "Engine", coach: Person, value: str, now: datetime) -> bool:
    """Do what a button or a command says; False: it says nothing known."""
    what, _, rest = value.removeprefix("menu:").partition(":")
    if what in PLAIN:
        action, act = PLAIN[what]
        if gate.allows(engine, coach, action, coach):
            act(engine, coach, rest, now)
    elif what in ABOUT_CLIENT or what in WITH_DETAIL:
        _about_client(engine, coach, what, rest, now)
    else:
        return False
    return True


def named_act(engine: "Engine", coach: Person, text: str, now: datetime) -> bool:
    """ "hold ruta", "Ruta Kaya report": what stands on a client's card, typed with one client's name; True: done."""
    said = text.strip().lstrip("/").rstrip(".!").split()
    if len(said) < BOTH:
        return False
    for word, name in ((said[0], said[1:]), (said[-1].rstrip("?"), said[:-1])):
        what = words.ABOUT_TYPED.get(word.casefold())
        fitting = writing_to.named(engine, coach, " ".join(name).rstrip(":,"), now) if what else []
        if what is not None and len(fitting) == 1:
            return chosen(engine, coach, f"menu:{what}:{fitting[0].id}", now)
    return False


def _hold(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    from bot.engine import acts

    acts.hold(engine, coach, client, now)


def _about_client(engine: "Engine", coach: Person, what: str, rest: str, now: datetime) -> None:
    """Through the gate; what follows the client's id after a slash is for the act."""
    number, _, detail = rest.partition("/")
    client = people.find(engine.store, int(number))
    if client is None or client.role is not Role.CLIENT:
        engine.say(coach, Say(coach_words.GONE), now)
        return
    action = ABOUT_CLIENT[what][0] if what in ABOUT_CLIENT else WITH_DETAIL[what][0]
    if not gate.allows(engine, coach, action, client):
        engine.say(coach, Say(words.NOT_YOURS), now)
    elif what in ABOUT_CLIENT:
        ABOUT_CLIENT[what][1](engine, coach, client, now)
    else:
        WITH_DETAIL[what][1](engine, coach, client, detail, now)


def _dialogue(name: str) -> About:
    """Begin a dialogue with the coach about the client."""
    return lambda engine, coach, client, now: turns.begin(engine, coach, name, {"client": client.id}, now)


def _clear(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    practice.ask_to_clear(engine, client, None, now, coach)


def _alert(engine: "Engine", coach: Person, rest: str, now: datetime) -> None:
    alert = duties.alert_by_id(engine.store, int(rest))
    if alert is None or not gate.allows(
        engine, coach, Action.TAKE_ALERT, people.by_id(engine.store, alert.person)
    ):
        engine.say(coach, Say(words.NOT_YOURS), now)
        return
    alerts.show(engine, coach, alert, now)


def _alerts(engine: "Engine", coach: Person, rest: str, now: datetime) -> None:
    """Every open alert: one is shown, of several one is chosen."""
    from bot.engine import typed

    found = typed.open_to(engine, coach, now)
    match found:
        case []:
            engine.say(coach, Say(alert_words.NO_ALERT), now)
        case [one]:
            alerts.show(engine, coach, one, now)
        case _:
            typed.ask_which(engine, coach, "menu:alert:{id}", found, now)


def _alone(engine: "Engine", coach: Person, rest: str, now: datetime) -> None:
    """There is no second human, and the coach said so."""
    settings.put(engine.store, f"alone:{coach.id}", "yes")
    engine.say(coach, Say(words.ALONE_NOTED), now)


PLAIN: dict[str, tuple[Action, Plain]] = {
    "invite": (
        Action.INVITE,
        lambda engine, coach, rest, now: turns.begin(engine, coach, "inviting", {}, now),
    ),
    "clients": (
        Action.DIGEST,
        lambda engine, coach, rest, now: listing.show(engine, coach, now, int(rest or 0)),
    ),
    "settings": (
        Action.TALK,
        lambda engine, coach, rest, now: turns.begin(engine, coach, "preferences", {}, now),
    ),
    "digest": (Action.DIGEST, lambda engine, coach, rest, now: digest.ask(engine, coach, now)),
    "everybody": (
        Action.DIGEST,
        lambda engine, coach, rest, now: digest.ask(engine, coach, now, int(rest or 0)),
    ),
    "alert": (Action.TALK, _alert),
    "alerts": (Action.TALK, _alerts),
    "stand_in": (Action.COVER, lambda engine, coach, rest, now: covering.open_talk(engine, coach, now)),
    "i_am_back": (Action.COVER, lambda engine, coach, rest, now: covering.back(engine, coach, now)),
    "export": (Action.EXPORT, lambda engine, coach, rest, now: exporting.ask(engine, coach, now)),
    "export_yes": (Action.EXPORT, lambda engine, coach, rest, now: exporting.send(engine, coach, now)),
    "alone": (Action.TALK, _alone),
    "help": (Action.TALK, lambda engine, coach, rest, now: engine.say(coach, Say(words.COACH_HELP), now)),
}
ABOUT_CLIENT: dict[str, tuple[Action, About]] = {
    "client": (Action.SEE_CLIENT, card.show),
    "hold": (Action.CLEAR, _hold),
    "log": (Action.SEE_CLIENT, logbook.show),
    "the_plan": (Action.SEE_CLIENT, more.the_plan),
    "more": (Action.SEE_CLIENT, more.show),
    "clearing": (Action.CLEAR, _clear),
    "report": (Action.SEE_CLIENT, reports.send),
    "planning": (Action.PLAN, _dialogue("planning")),
    "message": (Action.RELAY, _dialogue("writing")),
    "ask_clip": (Action.RELAY, clips_asked.ask),
    "stop_session": (Action.RELAY, stopping_session.stop),
    "pause": (Action.PLAN, _dialogue("pausing")),
    "resume": (Action.PLAN, resting.resume),
    "review": (Action.PLAN, review.show),
    "heavier": (Action.PLAN, review.heavier),
    "review_on": (Action.PLAN, review.go_on),
    "kit": (Action.SEE_CLIENT, kit.for_coach),
    "emergency": (Action.SEE_CLIENT, emergency.for_coach),
    "finish": (Action.PLAN, more.ask_to_finish),
    "finish_yes": (Action.PLAN, resting.finish),
    "again": (Action.PLAN, resting.again),
    "next_loads": (Action.PLAN, loads_asked.switch),
    "change": (Action.PLAN, _dialogue("adjusting")),
    "save_template": (Action.PLAN, _dialogue("saving_template")),
    "pulse": (Action.PLAN, _dialogue("pulse")),
    "gauge": (Action.PLAN, _dialogue("gauging")),
    "girth": (Action.PLAN, _dialogue("measuring")),
    "allow": (Action.PLAN, _dialogue("allowing")),
    "unseen_back": (Action.CLEAR, unseen.take_back),
    "rename": (Action.PLAN, _dialogue("renaming")),
    "travel": (Action.PLAN, away.by_coach),
    "travel_end": (Action.PLAN, away.back_by_coach),
    "handover": (Action.HAND_OVER, covering.ask_to_whom),
}
WITH_DETAIL: dict[str, tuple[Action, Detailed]] = {
    "cue": (Action.RELAY, clips.ask_cue),
    "send_words": (Action.RELAY, writing_to.send_offered),
    "clip_of": (Action.RELAY, clips_asked.ask_for),
    "plan_back": (Action.PLAN, replaced.take_back),
    "load_use": (Action.PLAN, loads_asked.use),
    "load_keep": (Action.PLAN, loads_asked.keep),
    "give": (Action.HAND_OVER, covering.give),
}
