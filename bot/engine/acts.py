"""What dialogues want done that is more than a fact, and what begins at its time."""

import base64
import secrets
from collections.abc import Callable
from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import gate, idle, practice, records, status, turns
from bot.engine.coach import allowing, away, covering, digest, holding, plans, resting
from bot.engine.coach import clients as whose
from bot.engine.coach.talks import TALKS
from bot.engine.days import changing, reminders
from bot.engine.joining import agreeing, screenings
from bot.engine.numbers import measuring
from bot.engine.safety import checks
from bot.engine.training import clips, kit, loads, reading, testing
from conversations.protocol import Choice, Resumed, Say
from conversations.words import engine as words
from conversations.words.recap import recap
from conversations.words.screening import in_words
from core.access import Action
from core.facts import Cleared, SetDone, WalkDone
from core.plans import Side
from core.store import facts, mail, people, threads
from core.store.duties import Planned
from core.store.mail import Priority
from core.store.people import Person
from core.stored_names import names_in

if TYPE_CHECKING:
    from bot.engine.core import Engine


def do(engine: "Engine", person: Person, act: str, details: dict[str, Any]) -> bool:
    """An act by its stored name; True when it started a dialogue with this person. Raises KeyError."""
    action, deed = ACTS[act]
    if not gate.allows(engine, person, action, gate.about(engine, person, details)):
        engine.say(person, Say(words.NOT_YOURS), engine.clock())
        return False
    return deed(engine, person, details, engine.clock())


Act = Callable[["Engine", Person, dict[str, Any], datetime], bool]


def invite(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """An invitation: 130 random bits as a code to type, and the same as a link."""
    code = base64.b32encode(secrets.token_bytes(17)).decode()[:26]
    people.invite(engine.store, coach.id, details["name"], code, now)
    link = f"https://t.me/{engine.username}?start={code}" if engine.username else ""
    chat = f"@{engine.username}" if engine.username else words.THIS_BOT
    if coach.chat is not None:
        said = words.INVITATION.format(name=details["name"], link=link, chat=chat, code=code)
        letter = mail.Letter(coach.chat, {"text": said}, mail.INVITATION, person=coach.id)
        mail.post(engine.store, letter, now)
    return False


def ask_coach_to_clear(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """The screening is done: the coach sees it and decides."""
    practice.ask_to_clear(engine, client, details["screening"], now)
    return False


def cleared(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """The coach decided: the client hears it, and the plan comes next."""
    client = people.by_id(engine.store, details["client"])
    holding.decided(engine, client, details.get("hold"), now)
    regions = details.get("regions") or ""
    regions = regions if isinstance(regions, str) else ",".join(regions)
    if regions:
        engine.say(client, Say(words.CLEARED.format(regions=in_words(names_in(regions)))), now)
        ask_for_backup(engine, coach, client, now)
        turns.begin(engine, coach, "planning", {"client": client.id}, now)
        return True
    if details.get("decision") == "declined":
        engine.say(client, Say(words.DECLINED), now)
    else:
        holding.tell(engine, client, details.get("hold"), now)
    return False


def ask_for_backup(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """A client cannot train before a second human gets alerts, or the coach says that there is none."""
    if not engine.has_backup(client):
        engine.say(coach, Say(words.ALONE, (Choice(words.ALONE_LABEL, "menu:alone"),)), now)


def hold(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """No training until the coach clears again."""
    last = facts.latest(engine.store, Cleared, client.id)
    screening = last.screening if last else ""
    facts.put(engine.store, client.id, Cleared(now, screening, "held", "", coach.id), now)
    engine.say(client, Say(words.ON_HOLD), now)
    if (session := threads.live_in(engine.store, client.id, "session")) is not None:
        turns.deliver(engine, client, session, Resumed(now))  # it reads the hold now, not at the next word
    again = Choice(words.LOOK_AT_CLEARANCE, f"menu:clearing:{client.id}")
    engine.say(coach, Say(words.CLIENT_LINE.format(name=client.name, state=words.IS_ON_HOLD), (again,)), now)
    holding.ask_until(engine, coach, client, now)


def give_recap(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """What was done, what comes next and why."""
    session = details["session"]
    plan_names = loads.names(status.plan_of(engine, client.id))
    sets = facts.current(engine.store, SetDone, client.id, session=session)
    done: dict[str, tuple[list[tuple[Side, int]], str]] = {}
    for one in sorted(sets, key=lambda each: (each.exercise_no, each.set_no)):
        counts, _ = done.setdefault(plan_names.get(one.movement, one.movement), ([], one.doing))
        counts.append((one.side, one.reps))
    walks = facts.current(engine.store, WalkDone, client.id, session=session)
    lines = [(name, counts, doing) for name, (counts, doing) in done.items()]
    advised = loads.advised(engine, client.id, session)
    moves = loads.move(engine, client.id, session, advised)
    read = reading.lines(engine, client.id, advised)
    text = recap(lines, moves, [walk.minutes for walk in walks], read)
    engine.say(client, Say(text), now)
    reminders.trained(engine, client, now)
    checks.tell_patterns(engine, client.id)
    return reading.ask(engine, client, session, advised, now)


ACTS: dict[str, tuple[Action, Act]] = {
    "moved_zone": (Action.TALK, changing.moved_zone),
    "calendar_changed": (Action.MOVE_DAYS, changing.changed),
    "session_moved": (Action.MOVE_DAYS, changing.session_moved),
    "ask_coach_about_days": (Action.MOVE_DAYS, changing.ask_coach),
    "travel": (Action.MOVE_DAYS, changing.travel),
    "wish_declined": (Action.MOVE_DAYS, changing.wish_declined),
    "settings_changed": (Action.TALK, changing.settings_changed),
    "cue_given": (Action.RELAY, clips.given),
    "invite": (Action.INVITE, invite),
    "without_consent": (Action.TALK, agreeing.without),
    "ask_coach_to_clear": (Action.TALK, ask_coach_to_clear),
    "cleared": (Action.CLEAR, cleared),
    "asked_again": (Action.CLEAR, screenings.asked_again),
    "hold_until": (Action.CLEAR, holding.until),
    "plan_given": (Action.PLAN, plans.given),
    "plan_changed": (Action.PLAN, plans.changed),
    "leave": (Action.TALK, records.leave),
    "recap": (Action.TRAIN, give_recap),
    "girth": (Action.PLAN, measuring.by_coach),
    "band_gone": (Action.TALK, kit.gone),
    "offer_later": (Action.TALK, idle.keep),
    "read_again": (Action.TRAIN, reading.read_again),
    "paused": (Action.PLAN, resting.paused),
    "covering": (Action.COVER, covering.begun),
    "rename": (Action.PLAN, whose.rename),
    "limits_set": (Action.PLAN, allowing.told),
    "ask_test": (Action.PLAN, testing.ask),
    "tested": (Action.TRAIN, testing.done),
    "travelling": (Action.MOVE_DAYS, away.begun),
}


def before_talk(engine: "Engine", person: Person, talk: Planned, now: datetime) -> None:
    """A planned talk begins; weekly ones plan themselves again."""
    match talk.dialogue:
        case "weekly" | digest.ASKED:
            digest.at_once(engine, person, talk, now)
        case "erase":
            records.erase(engine, person, talk, now)
        case "note":
            of_week = "name" in talk.about
            priority = Priority.DIGEST if of_week else Priority.REMINDER
            engine.say(person, Say(talk.about["text"]), now, priority)
        case idle.KEPT:
            idle.offer_kept(engine, person, talk.about, now)
        case "words":
            engine.say(person, Say(words.FROM_COACH.format(text=talk.about["text"])), now)
        case "zone":
            changing.arrived(engine, person, talk.about["zone"], now)
        case name if name in TALKS:
            TALKS[name](engine, person, talk.about, now)
        case "reminding":
            reminders.remind(engine, person, talk, now)
        case "missed":
            reminders.ask_about_missed(engine, person, talk, now)
        case _:
            turns.begin(engine, person, talk.dialogue, talk.about, now)
