"""What the client trains with: bands by letter."""

from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import turns
from conversations.words import band_list as words
from core.facts import BandOwned, CuffChecked
from core.plans import Region
from core.store import facts
from core.store.people import Person

if TYPE_CHECKING:
    from bot.engine.core import Engine

CHECKS = 12  # the newest checks, which name the band of each limb; own choice


def bands(engine: "Engine", client: int) -> dict[str, tuple[str, ...]]:
    """The letters of the client's bands by region."""
    owned = facts.current(engine.store, BandOwned, client)
    return {
        region.value: tuple(sorted(one.letter for one in owned if one.region is region)) for region in Region
    }


def marks(engine: "Engine", client: int) -> dict[str, str]:
    """Where each band is closed, by letter; only those with a mark."""
    return {one.letter: one.mark for one in facts.current(engine.store, BandOwned, client) if one.mark}


def lines(engine: "Engine", client: int) -> dict[str, str]:
    """Each band as the client reads it, by letter."""
    return {
        one.letter: words.LINE.format(
            region=words.REGIONS[one.region],
            width=one.width_cm,
            mark=words.MARKED.format(mark=one.mark) if one.mark else "",
        )
        for one in facts.current(engine.store, BandOwned, client)
    }


def last_bands(engine: "Engine", client: int) -> dict[str, str]:
    """The band of the last check by region."""
    found: dict[str, str] = {}
    for one in reversed(facts.newest(engine.store, CuffChecked, client, CHECKS)):
        if one.band:
            found["arms" if one.limb.endswith("arm") else "legs"] = one.band
    return found


def list_bands(engine: "Engine", person: Person, now: datetime) -> None:
    """Add a band, or change one."""
    turns.begin(engine, person, "band_list", {}, now)
