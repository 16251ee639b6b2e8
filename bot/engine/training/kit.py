"""What the client trains with: bands by letter."""

from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import status, turns
from conversations.client.band_line import plainly_gone
from conversations.protocol import Said, Say
from conversations.words import band_list as words
from conversations.words.coach import to_card
from core.facts import BandOwned, CuffChecked
from core.plans import Region
from core.store import facts, threads
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

CHECKS = 12  # the newest checks, which name the band of each limb; own choice


def bands(engine: "Engine", client: int) -> dict[str, tuple[str, ...]]:
    """The letters of the client's bands by region."""
    owned = _owned(engine, client)
    return {
        region.value: tuple(sorted(one.letter for one in owned if one.region is region)) for region in Region
    }


def _owned(engine: "Engine", client: int) -> list[BandOwned]:
    """The bands that are still there."""
    return [one for one in facts.current(engine.store, BandOwned, client) if one.width_cm]


def gone(engine: "Engine", client: Person, details: dict[str, Any], now: datetime) -> bool:
    """One is lost or broken: off the list."""
    was = next((one for one in _owned(engine, client.id) if one.letter == details["letter"]), None)
    if was is not None:
        facts.put(engine.store, client.id, replace(was, at=now, width_cm=0.0, mark=""), now)
    return False


def marks(engine: "Engine", client: int) -> dict[str, str]:
    """Where each band is closed, by letter; only those with a mark."""
    return {one.letter: one.mark for one in _owned(engine, client) if one.mark}


def lines(engine: "Engine", client: int) -> dict[str, str]:
    """Each band as the client reads it, by letter."""
    return {one.letter: words.line(one.region, one.width_cm, one.mark) for one in _owned(engine, client)}


def last_bands(engine: "Engine", client: int) -> dict[str, str]:
    """The band of the last check by region."""
    found: dict[str, str] = {}
    for one in reversed(facts.newest(engine.store, CuffChecked, client, CHECKS)):
        if one.band:
            found["arms" if one.limb.endswith("arm") else "legs"] = one.band
    return found


def for_coach(engine: "Engine", coach: Person, client: Person, now: datetime) -> None:
    """The client's bands, the one of the last check named, and who is there when they train."""
    last, name = last_bands(engine, client.id), client.name
    listed = [
        words.COACH_LINE.format(letter=letter, line=line, last=words.LAST if letter in last.values() else "")
        for letter, line in sorted(lines(engine, client.id).items())
    ]
    company = words.COMPANY.format(company=status.company(engine, client.id))
    text = "\n".join([words.COACH_HEAD.format(name=name), *(listed or [words.NO_BANDS]), company])
    engine.say(coach, Say(text, (to_card(name, client.id),)), now)


def list_bands(engine: "Engine", person: Person, now: datetime) -> None:
    """Add a band, or change one."""
    turns.begin(engine, person, "band_list", {}, now)


def told_gone(engine: "Engine", client: Person, text: str, now: datetime) -> bool:
    """ "I lost band B", said out of the blue; True: it is off the list, or asked which."""
    if not plainly_gone(text) or not _owned(engine, client.id):
        return False
    turns.begin(engine, client, "band_list", {}, now)
    thread = threads.live_in(engine.store, client.id, "band_list")
    if thread is not None:
        turns.deliver(engine, client, thread, Said(now, text))
    return True
