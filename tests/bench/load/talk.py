"""Sessions played straight into the engine, without any network: what an update costs on this store."""

import time
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

from bot.config import Config
from bot.engine import Engine
from core.store import duties, mail
from core.store.connection import Store
from tests.bench.load.dialogue import COACH, FIRST_CLIENT, OVER, answer_to

MOST = 60  # updates of one session; more means that it went wrong


class Talk:
    """The engine on a store, with a clock that jumps to what is due."""

    def __init__(self, store: Store, config: Config, now: datetime) -> None:
        self.store, self.now, self.number = store, now, _newest(store) + 1
        self.engine = Engine(store, config, lambda: self.now)
        self.next_client = FIRST_CLIENT
        self.spent_s = 0.0
        self.updates = 0

    def session(self) -> list[str]:
        """The next client's whole session; what was typed."""
        chat, text, typed = self.next_client, "start", []
        self.next_client += 1
        while len(typed) < MOST:
            typed.append(text)
            first = heard = list(self._says(chat, text)) or list(self._wait(chat))
            if any(OVER in one for one in heard):
                return typed
            answers = [answer for one in heard if (answer := answer_to(one)) is not None]
            if not answers:
                heard = list(self._wait(chat))
                answers = [answer for one in heard if (answer := answer_to(one)) is not None]
            assert answers, f"nothing is asked after {typed[-1]!r}: {first}"
            text = answers[-1]
        raise AssertionError(f"a session without end: {typed}")

    def _says(self, chat: int, text: str) -> Iterator[str]:
        self.number += 1
        self.now += timedelta(seconds=1)
        sender = {"id": chat, "is_bot": False, "first_name": "x"}
        message = {"message_id": self.number, "date": int(self.now.timestamp()), "text": text}
        message |= {"chat": {"id": chat, "type": "private"}, "from": sender}
        began = time.perf_counter()
        self.engine.receive([(self.number, {"update_id": self.number, "message": message})])
        self.engine.work()
        heard = list(self._sent(chat))
        self.spent_s += time.perf_counter() - began
        self.updates += 1
        return iter(heard)

    def _wait(self, chat: int) -> Iterator[str]:
        """Let the rest run out."""
        soonest = duties.next_due(self.store)
        assert soonest is not None
        self.now = max(self.now, soonest) + timedelta(milliseconds=1)
        while self.engine.work():
            pass
        return self._sent(chat)

    def _sent(self, chat: int) -> Iterator[str]:
        """Take what waits out of the outbox as the sender does, a commit for what goes together."""
        while found := mail.waiting(self.store, self.now, 20):
            with self.store.transaction():
                for one in found:
                    self.number += 1
                    mail.sent(self.store, one.id, self.number, self.now)
            for one in found:
                if one.letter.chat == chat and "text" in one.letter.body:
                    yield one.letter.body["text"]


def _newest(store: Store) -> int:
    """The highest number of an update so far: the server numbers upward, and messages of a chat likewise."""
    row = store.row("SELECT max(update_id) AS newest FROM inbox")
    return 0 if row is None or row["newest"] is None else int(row["newest"])


def start() -> datetime:
    """A Monday evening."""
    return datetime(2026, 3, 2, 18, 0, tzinfo=UTC)


def config_for(store: Store) -> Config:
    """Settings of a bot that never connects."""
    from pathlib import Path

    return Config("1:local", "http://127.0.0.1", Path(store.path), (COACH,), "UTC")
