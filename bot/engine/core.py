"""Keeping updates and working through them."""

import logging
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

from bot.config import Config
from bot.engine import updates
from bot.engine.days import calendar
from bot.engine.limits import Limits
from conversations.protocol import Say
from conversations.words import engine as words
from core.safety.causes import Cause
from core.store import duties, forgetting, inbox, mail, people, settings, unsent
from core.store.connection import Store, cannot_write
from core.store.duties import Planned
from core.store.mail import Letter, Priority
from core.store.people import Person, Role

log = logging.getLogger("cuffline")

UPDATES_KEPT = timedelta(hours=24)  # by the Bot API server
FIRST_RETRY = timedelta(seconds=5)
# Rows of each kind: a few milliseconds, then whoever wrote is answered first; own choice.
FORGOTTEN_AT_ONCE = 20


class Engine:
    """All that happens between an update and the outbox.

    `now` is the only clock. `countdowns` holds, per chat, until when a rest runs; it is not durable on
    purpose (latest wins, a late one is dropped).
    """

    store: Store
    config: Config
    clock: Callable[[], datetime]
    username: str
    countdowns: dict[int, datetime]

    def __init__(self, store: Store, config: Config, now: Callable[[], datetime], username: str = "") -> None:
        self.store = store
        self.config = config
        self.clock = now
        self.username = username
        self.countdowns: dict[int, datetime] = {}
        self.make_week: Callable[[Planned, datetime], None] | None = None  # beside the loop; None: at once
        self.letters_before = 0  # the work in hand writes higher numbers: those are not on their way yet
        self.limits = Limits()
        with store.transaction():
            self._know_coaches()

    def _know_coaches(self) -> None:
        for chat in self.config.coaches:
            if people.by_chat(self.store, chat) is None:
                people.add(self.store, chat, words.COACH_NAME, Role.COACH, self.config.zone, self.clock())
        for coach in people.coaches(self.store):
            if duties.next_talk(self.store, coach.id, "weekly") is None:
                calendar.plan_week(self, coach, self.clock())
        self._after_absence()

    def clock_was_set(self) -> None:
        """The wall clock jumped and is followed; after a jump back all that was planned ahead is planned anew."""
        from bot.engine.days import set_back

        with self.store.transaction():
            set_back.look(self, self.clock())

    def _after_absence(self) -> None:
        """The server keeps updates for a day: after a longer absence say so to whoever was in the middle of something."""
        last = settings.get(self.store, "awake_at")
        now = self.clock()
        if last is None or now - datetime.fromisoformat(last) < UPDATES_KEPT:
            return
        hours = round((now - datetime.fromisoformat(last)).total_seconds() / 3600)
        for person in people.in_talk(self.store):
            self.say(person, Say(words.AWAY_TOO_LONG.format(hours=hours)), now, Priority.SESSION)
        settings.put(self.store, "awake_at", now.isoformat())

    def resume(self) -> None:
        """Say so to everybody who was in a session when the program stopped."""
        from bot.engine import resuming

        self.clock_was_set()
        with self.store.transaction():
            mail.may_be_out(self.store)
            resuming.after_restart(self, self.clock())

    # --- in ---
    def receive(self, raw: list[tuple[int, dict[str, Any]]]) -> None:
        """Keep raw updates, committed before anything is done with them."""
        with self.store.transaction():
            for update_id, body in raw:
                inbox.receive(self.store, update_id, body, self.clock())

    def work(self) -> bool:
        """Handle what was received and what is due; True: there may be more."""
        waiting = inbox.unhandled(self.store)
        now = self.clock()
        soonest = duties.next_due(self.store)
        if not waiting and (soonest is None or soonest > now):
            return self._forget(now)
        with self.store.transaction():
            self.letters_before = unsent.newest(self.store)
            for update_id, body in waiting:
                self._one(update_id, body, now)
            if not waiting:
                self._due(now)
            settings.put(self.store, "awake_at", now.isoformat())
        return True

    def _one(self, update_id: int, body: dict[str, Any], now: datetime) -> None:
        from bot.engine import routing

        try:
            with self.store.savepoint():
                routing.route(self, updates.read(update_id, body), now)
            inbox.handled(self.store, update_id, now)
        except Exception as problem:
            if cannot_write(problem):
                raise
            log.exception("update %s failed", update_id)
            inbox.handled(self.store, update_id, now, failed=type(problem).__name__)
            self._apologise(update_id, body, now)

    def _apologise(self, update_id: int, body: dict[str, Any], now: datetime) -> None:
        """Bands off first, if they may be on; then the number that the operator needs.

        Whatever is wrong with an update may be wrong here again, and must not take the others of its batch along.
        """
        try:
            with self.store.savepoint():
                self._say_it_failed(update_id, updates.read(update_id, body), now)
        except Exception as problem:
            if cannot_write(problem):
                raise
            self._tell_operator(words.FAILED_OPERATOR.format(number=update_id, who="?"), now)

    def _say_it_failed(self, update_id: int, incoming: updates.Incoming, now: datetime) -> None:
        from bot.engine.safety import alerts, bands

        person = people.by_chat(self.store, incoming.chat)
        if person is None:
            return
        banded = bool(duties.watches(self.store, person.id))
        text = words.FAILED_BANDS if banded else words.FAILED
        self.say(person, Say(text.format(number=update_id)), now, Priority.ALERT)
        if banded:
            alerts.raise_alert(self, person.id, Cause.BROKEN, f"#{update_id}", text.format(number=update_id))
            bands.told_off(self, person.id)
        self._tell_operator(words.FAILED_OPERATOR.format(number=update_id, who=person.name), now)

    def _tell_operator(self, text: str, now: datetime) -> None:
        mail.post(self.store, Letter(self.config.coaches[0], {"text": text}, priority=Priority.ALERT), now)

    def replay(self) -> int:
        """Put failed updates back into the queue; how many."""
        with self.store.transaction():
            cursor = self.store.execute(
                "UPDATE inbox SET handled_at = NULL, failed = NULL WHERE failed IS NOT NULL AND body IS NOT NULL"
            )
        return cursor.rowcount

    # --- due ---
    def _due(self, now: datetime) -> None:
        from bot.engine import due

        due.all_due(self, now)

    def _forget(self, now: datetime) -> bool:
        """A step of forgetting old letters, once a day and when there is nothing else to do; True: it goes on."""
        today = now.date().isoformat()
        if settings.get(self.store, "pruned_on") == today:
            return False
        with self.store.transaction():
            more = forgetting.step(self.store, now, FORGOTTEN_AT_ONCE)
            if not more:
                settings.put(self.store, "pruned_on", today)
        return more

    def guarded(self, what: str, act: Callable[[], None], again: Callable[[datetime], None]) -> None:
        """One due thing in its own savepoint; when it fails it is tried again later."""
        now = self.clock()
        try:
            with self.store.savepoint():
                act()
        except Exception as problem:
            if cannot_write(problem):
                raise
            log.exception("%s failed", what)
            again(now + FIRST_RETRY)

    # --- out ---
    def say(
        self,
        person: Person,
        say: Say,
        now: datetime,
        priority: Priority = Priority.TALK,
        thread: int | None = None,
    ) -> None:
        """One message to a known person."""
        from bot.engine import letters

        letters.post(self.store, person, say, now, priority, thread)

    def coach_of(self, client: Person) -> Person | None:
        """Who looks after this client now: their coach, or the stand-in while the coach is away."""
        if client.coach is None:
            return None
        stand_in = people.stand_in_of(self.store, client.coach, self.clock())
        return stand_in or people.by_id(self.store, client.coach)

    def has_backup(self, client: Person) -> bool:
        """Whether an alert reaches a second human, or the coach said plainly that there is none."""
        coach = self.coach_of(client)
        if coach is None:
            return False
        return (
            self._second_to(coach, client) is not None
            or settings.get(self.store, f"alone:{coach.id}") == "yes"
        )

    def warnings(self) -> list[str]:
        """What whoever runs this should know at the start: coaches whom no alert can reach yet."""
        silent = [
            coach.chat for coach in people.coaches(self.store) if not people.wrote(self.store, coach.id)
        ]
        return [
            f"coach {chat} has never written to the bot, so no alert can reach them yet" for chat in silent
        ]

    def second_contact(self, client: Person) -> Person | None:
        """The next coach in the settings after the client's own; None: there is only one.

        While somebody stands in, the coach who is away: nobody knows the client better.
        """
        coach = self.coach_of(client)
        return None if coach is None else self._second_to(coach, client)

    def _second_to(self, coach: Person, client: Person) -> Person | None:
        """The same, beside whoever looks after the client now."""
        if client.coach is not None and client.coach != coach.id:
            return people.by_id(self.store, client.coach)
        chats = self.config.coaches
        if coach.chat not in chats or len(chats) < 2:
            return None
        after = chats[(chats.index(coach.chat) + 1) % len(chats)]
        return people.by_chat(self.store, after)
