"""Several coaches: a client is handed over for good, or all of a coach's clients to a stand-in for dates."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import quiet
from conversations.protocol import Choice, Say
from conversations.words import coach as words
from conversations.words import covering as covering_words
from core.calendar.zones import in_last_day, local
from core.facts import CoachDid, StandIn
from core.store import duties, facts, people
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine


def others(engine: "Engine", coach: Person) -> list[Person]:
    """The other coaches of the practice, as the settings name them."""
    found = (people.by_chat(engine.store, chat) for chat in engine.config.coaches)
    return [one for one in found if one is not None and one.id != coach.id]


def names(coaches: list[Person]) -> dict[int, str]:
    """What each is called; two of one name by their numbers."""
    same = [one.name for one in coaches]
    return {one.id: one.name if same.count(one.name) == 1 else f"{one.name} ({one.chat})" for one in coaches}


# --- for good --------------------------------------------------------------------------------------------
def ask_to_whom(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """Which coach gets the client."""
    called = names(others(engine, coach))
    if not called:
        engine.say(coach, Say(covering_words.NO_OTHER_COACH), now)
        return
    back = words.to_card(client.name, client.id)
    buttons = (*(Choice(name, f"menu:give:{client.id}/{number}") for number, name in called.items()), back)
    engine.say(coach, Say(covering_words.TO_WHOM.format(name=client.name), buttons), now)


def give(engine: "Engine", coach: Person, client: Person, detail: str, now: datetime) -> None:
    """The client is another coach's from now on; all three are told."""
    other = next((one for one in others(engine, coach) if str(one.id) == detail), None)
    if other is None:
        engine.say(coach, Say(covering_words.NO_OTHER_COACH), now)
        return
    people.hand_over(engine.store, client.id, other.id)
    facts.put(engine.store, client.id, CoachDid(now, coach.id, "handed_over", other.name), now)
    card = Choice(covering_words.OPEN_CARD, f"menu:client:{client.id}")
    engine.say(
        other, Say(covering_words.GIVEN_TO_YOU.format(coach=coach.name, name=client.name), (card,)), now
    )
    engine.say(client, Say(covering_words.NEW_COACH.format(coach=other.name)), now)
    engine.say(coach, Say(covering_words.GIVEN.format(name=client.name, coach=other.name)), now)


# --- for dates -------------------------------------------------------------------------------------------
def about(engine: "Engine", coach: Person) -> dict[str, Any]:
    """What the dialogue about a stand-in needs to know."""
    return {"coaches": [[str(number), name] for number, name in names(others(engine, coach)).items()]}


def active(engine: "Engine", coach: Person, now: datetime) -> StandIn | None:
    """The stand-in that is on or still to come."""
    known = [one for one in facts.current(engine.store, StandIn, coach.id) if now < one.until]
    return known[-1] if known else None


def open_talk(engine: "Engine", coach: Person, now: datetime) -> None:
    """Who stands in and when, or back again."""
    from bot.engine import turns

    known = active(engine, coach, now)
    if known is None:
        turns.begin(engine, coach, "covering", about(engine, coach), now)
        return
    name = people.by_id(engine.store, known.stand_in).name
    text = covering_words.STANDS_IN.format(
        coach=name, first=_day(known.since, coach), last=_day(in_last_day(known.until), coach)
    )
    engine.say(coach, Say(text, (Choice(covering_words.I_AM_BACK, "menu:i_am_back"),)), now)


def begun(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """A stand-in was named: told now, reminded on the first day and after the last."""
    known = active(engine, coach, now)
    if known is None:
        return False
    other = people.by_id(engine.store, known.stand_in)
    first, last = _day(known.since, other), _day(in_last_day(known.until), other)
    engine.say(other, Say(covering_words.YOU_STAND_IN.format(coach=coach.name, first=first, last=last)), now)
    number = {"coach": coach.id, "stand_in": other.id}
    if known.since > now:
        duties.plan(
            engine.store, other.id, "cover_begins", number, quiet.earliest(engine, other, known.since), now
        )
    duties.plan(engine.store, other.id, "cover_over", number, quiet.earliest(engine, other, known.until), now)
    return False


def cover_begins(engine: "Engine", other: Person, details: dict[str, Any], now: datetime) -> None:
    """The first day: the stand-in gets the list."""
    coach = people.by_id(engine.store, details["coach"])
    if any(one.id == coach.id for one in people.stood_in_for(engine.store, other.id, now)):
        button = Choice(covering_words.MY_CLIENTS, "menu:clients")
        engine.say(other, Say(covering_words.FROM_NOW_ON.format(coach=coach.name), (button,)), now)


def cover_over(engine: "Engine", other: Person, details: dict[str, Any], now: datetime) -> None:
    """The last day is over: both are told, once."""
    coach = people.by_id(engine.store, details["coach"])
    newest = facts.latest(engine.store, StandIn, coach.id, stand_in=other.id)
    if newest is None or newest.until > now:
        return
    _over(engine, coach, other, now)


def back(engine: "Engine", coach: Person, now: datetime) -> None:
    """The coach is back before the last day."""
    known = active(engine, coach, now)
    if known is None:
        engine.say(coach, Say(covering_words.NOBODY_STANDS_IN), now)
        return
    other = people.by_id(engine.store, known.stand_in)
    early = StandIn(now, other.id, min(known.since, now), now)
    facts.put(engine.store, coach.id, early, now)
    duties.unplan(engine.store, other.id, "cover_over")
    _over(engine, coach, other, now)


def _over(engine: "Engine", coach: Person, other: Person, now: datetime) -> None:
    quiet.note(engine, other, covering_words.COVER_OVER_OTHER.format(coach=coach.name), now)
    quiet.note(engine, coach, covering_words.COVER_OVER.format(coach=other.name), now)


def _day(at: datetime, person: Person) -> str:
    return local(at, person.zone).strftime("%A %-d %B")
