"""The moments in which a client may type a sign of harm, played on the real engine and undone after each phrase."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import timedelta
from enum import StrEnum

from bot.engine import routing, turns
from bot.engine.safety import alerts
from bot.engine.updates import Incoming, Kind
from conversations.words import trouble as words
from core.facts import BandsOff, Noticed
from core.safety.causes import Cause
from core.store import duties, facts, people, threads
from tests.practice import CLIENT, COACH, START, Practice

LATEST = 2_000_000_000  # a number above that of every message so far
SESSION = "s1"
QUESTION = {"session": SESSION}


class Outcome(StrEnum):
    """What came of a phrase, best first where it was a sign of harm."""

    ROUTED = "routed"  # stopped, or sent its way: the coach is told
    ASKED = "asked"  # "Is something wrong right now?", bands off first
    RELAYED = "to coach"  # the coach reads the words as they are, nothing is asked
    SILENT = "silent"  # anything else


def _talk(name: str, about: dict[str, str], trained: timedelta | None) -> Callable[[], Practice]:
    def made() -> Practice:
        room = _idle(trained)()
        engine = room.stage.engine
        with engine.store.transaction():
            person = people.by_id(engine.store, room.client)
            turns.begin(engine, person, name, about, engine.clock())
        room.settle()
        assert threads.floor(engine.store, room.client) is not None, name
        return room

    return made


def _idle(trained: timedelta | None) -> Callable[[], Practice]:
    """Nothing is asked. `trained`: how long ago bands came off; None: never."""

    def made() -> Practice:
        room = Practice()
        if trained is not None:
            store = room.stage.engine.store
            with store.transaction():
                facts.put(store, room.client, BandsOff(START - trained, SESSION, "1.1", "done"), START)
        return room

    return made


def _banded() -> Practice:
    room = Practice()
    room.in_a_set()
    return room


def _before_bands() -> Practice:
    """In a session whose bands are not on yet."""
    room = Practice()
    room.types(CLIENT, "start")
    room.taps(CLIENT, "No")
    for _ in range(20):
        labels = [label for row in room.newest(CLIENT).buttons for label, _ in row]
        if "Bands are on" in labels:
            return room
        known = ("No", "0", "Off in under 10 seconds", "Heard it", "Done")
        room.taps(CLIENT, next((label for label in known if label in labels), labels[0]))
    raise AssertionError(room.newest(CLIENT).text)


def _alert() -> Practice:
    room = Practice()
    engine = room.stage.engine
    with engine.store.transaction():
        alerts.raise_alert(engine, room.client, Cause.NERVE, "my foot is numb", "Bands off now.")
    room.settle()
    return room


SITUATIONS: dict[str, Callable[[], Practice]] = {
    "bands on": _banded,
    "session, bands off": _before_bands,
    "aftercare question": _talk("after", {**QUESTION, "why": "done"}, timedelta()),
    "morning question": _talk("morning", QUESTION, timedelta(hours=14)),
    "other question, trained": _talk("preferences", {}, timedelta(hours=30)),
    "other question": _talk("preferences", {}, None),
    "idle, 30 h after": _idle(timedelta(hours=30)),
    "idle, none recently": _idle(None),
    "alert open": _alert,
}


@dataclass(frozen=True, slots=True)
class _Before:
    """What stood before the phrase."""

    told: tuple[object, ...]  # alerts with their counts, and how often something was noticed
    letters: int


class _Undone(Exception):
    """Takes back all that came of a phrase."""


class Moment:
    """One situation, in which any number of phrases can be tried one after the other."""

    def __init__(self, name: str) -> None:
        self.room = SITUATIONS[name]()
        self.engine = self.room.stage.engine

    def outcome(self, phrase: str) -> Outcome:
        """What comes of a phrase now; nothing of it stays."""
        found: list[Outcome] = []
        try:
            with self._undone():
                before = self._now()
                person, at = people.by_id(self.engine.store, self.room.client), self.engine.clock()
                update = Incoming(LATEST, Kind.TEXT, CLIENT, "Ruta", at, phrase, message=LATEST)
                routing.known(self.engine, person, update, at)
                found.append(self._seen(before))
                raise _Undone
        except _Undone:
            pass
        return found[0]

    @contextmanager
    def _undone(self) -> Iterator[None]:
        countdowns = dict(self.engine.countdowns)
        with self.engine.store.transaction():
            yield
        self.engine.countdowns = countdowns

    def _now(self) -> _Before:
        store = self.engine.store
        alerts = ((one.id, one.count) for one in duties.open_alerts(store, self.room.client))
        noticed = [
            one for one in facts.current(store, Noticed, self.room.client) if one.kind != "said_unsure"
        ]
        return _Before(
            (len(noticed), *alerts), store.rows("SELECT COALESCE(MAX(id), 0) AS last FROM outbox")[0]["last"]
        )

    def _seen(self, before: _Before) -> Outcome:
        store = self.engine.store
        said = store.rows("SELECT chat, body FROM outbox WHERE id > ?", [before.letters])
        to_client = " ".join(row["body"] for row in said if row["chat"] == CLIENT)
        if self._now().told != before.told or words.ASK_WHERE in to_client or words.SORE in to_client:
            return Outcome.ROUTED
        if words.ASK_WRONG in to_client:
            return Outcome.ASKED
        return Outcome.RELAYED if any(row["chat"] == COACH for row in said) else Outcome.SILENT
