"""A practice on a virtual clock for tests of the coach's side: two coaches, as many clients as wanted."""

from datetime import UTC, datetime
from decimal import Decimal

from bot.local.messages import ChatMessage
from bot.play.stage import Stage
from core.facts import Cleared, CoachDid, Fact, PlanGiven, SessionEnded, SessionStarted, SetDone
from core.plan_text import plan_to_text
from core.plans import OPEN_AIMS, Exercise, Plan, Region, Scheme, Side
from core.store import facts, keys, people
from core.store.connection import Store
from core.store.people import Person, Role
from core.units import Load
from tests import played
from tests.practice import OnPhones

START = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)  # a Monday
COACH, SECOND, THIRD, RUTA, MILO = 1001, 1002, 1003, 2001, 2002
RACK = tuple(Load(Decimal(number)) for number in (8, 10, 12, 14))
SQUAT = Exercise("goblet_squat", Region.LEGS, Scheme.OPEN, OPEN_AIMS, Load(Decimal(10)), RACK)
WEEKLY = (
    '{"kind":"weekly","slots":[{"weekday":"mon","at":"19:00:00"},{"weekday":"thu","at":"19:00:00"}],'
    '"zone":"Europe/Lisbon","start":"2026-01-05"}'
)
SQUATS = Plan("squats", (SQUAT,), when=WEEKLY)
ANSWERS = (
    "No",
    "0",
    "Off in under 10 seconds",
    "Heard it",
    "Done",
    "Bands are on",
    "6",
    "Under 2 seconds",
    "Fine",
)


class Room(OnPhones):
    """The stage, with short ways to type, tap and read."""

    in_memory = True  # no file: that is faster

    def __init__(self, coaches: tuple[int, ...] = (COACH, SECOND, THIRD)) -> None:
        assert self.in_memory is False or keys.held() is None, "in memory nothing is encrypted: RoomOnFile"
        self.stage = Stage(START, coaches, "Europe/Lisbon", lambda *_: None, self.in_memory)
        for number, name in zip(coaches, ("Vera", "Otto", "Kai"), strict=False):
            self.stage.add(number, name, lambda message, now: None)
        played.once(f"room {coaches}", self.stage, played.mark(self.stage), self.play_first_words)

    def play_first_words(self) -> None:
        """Every coach has written."""
        for number in self.stage.phones:
            self.types(number, "menu")

    @property
    def store(self) -> Store:
        return self.stage.engine.store

    @property
    def now(self) -> datetime:
        return self.stage.clock.now()

    def person(self, chat: int) -> Person:
        found = people.by_chat(self.store, chat)
        assert found is not None
        return found

    def client(
        self, chat: int, name: str, plan: Plan | None = SQUATS, coach: int = COACH, cleared: str = "arms,legs"
    ) -> int:
        """A cleared client with a plan (None: without one), and their phone."""
        self.stage.add(chat, name, lambda message, now: None)
        by = self.person(coach).id
        with self.store.transaction():
            number = people.add(self.store, chat, name, Role.CLIENT, "Europe/Lisbon", self.now, by)
        if cleared:
            self.put(number, Cleared(self.now, "1", "cleared", cleared, by))
        if plan is not None:
            self.put(number, PlanGiven(self.now, plan_to_text(plan), by))
            self.put(number, CoachDid(self.now, by, "gave_plan"))
        return number

    def put(self, client: int, fact: Fact) -> None:
        """Something that happened."""
        with self.store.transaction():
            facts.put(self.store, client, fact, self.now)

    def trained(
        self, client: int, session: str, reps: tuple[int, ...], at: datetime, doing: str = "10 kg"
    ) -> None:
        """A session of goblet squats that was done."""
        self.put(client, SessionStarted(at, session, 3, ""))
        for set_no, count in enumerate(reps, start=1):
            aim = OPEN_AIMS[set_no - 1]
            done = SetDone(
                at, session, 1, "goblet_squat", set_no, Side.BOTH, doing, count, False, at, 30.0, 6, False,
                None, aim.low, aim.high, 30 if set_no == 1 else None,
            )  # fmt: skip
            self.put(client, done)
        self.put(client, SessionEnded(at, session, "done"))

    # --- phones ---
    def newest(self, number: int) -> ChatMessage:
        """The newest words of the bot; pictures are left out."""
        return [message for message in self.messages(number) if message.text][-1]

    def says(self, number: int) -> str:
        """The newest words of the bot to somebody."""
        return self.newest(number).text

    def labels(self, number: int) -> list[str]:
        """The buttons under the newest words."""
        return [label for row in self.newest(number).buttons for label, _ in row]

    def in_a_set(self, number: int) -> None:
        """A client goes into set 1 with the bands on and checked."""
        self.types(number, "start")
        for _ in range(40):
            if "Set 1 of" in self.says(number):
                return
            labels = self.labels(number)
            self.taps(number, next((label for label in ANSWERS if label in labels), labels[0]))
        raise AssertionError(f"no set came: {self.says(number)}")


class RoomOnFile(Room):
    """For those who read the file from another process."""

    in_memory = False
