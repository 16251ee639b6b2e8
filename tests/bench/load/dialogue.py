"""A whole session as a client types it, and clients who are cleared and have a plan."""

from datetime import datetime, timedelta
from decimal import Decimal

from core.facts import Cleared, PlanGiven
from core.plan_text import plan_to_text
from core.plans import OPEN_AIMS, Exercise, Plan, Region, Scheme
from core.store import facts, people, settings
from core.store.connection import Store
from core.store.people import Role
from core.units import Load

COACH, FIRST_CLIENT = 1001, 1_000_000
ANSWERS = (
    ("That one is done already", None),
    ("Anything new", "no"),
    ("Fever", "no"),
    ("Any pain in a joint", "0"),
    ("same muscles", "no"),
    ("a drill", "off in under 10 seconds"),
    ("Sound on", "heard it"),
    ("Warm up without", "done"),
    ("Bands on:", "bands are on"),
    ("How tight", "6"),
    ("press the thigh", "under 2 seconds"),
    ("How do they feel", "fine"),
    ("Set 1 of", "set done"),
    ("Go · set", "set done"),
    ("how many more clean reps", "4"),
    ("How many clean reps", "31"),
    ("Bands off", "off"),
    ("How hard", "6"),
    ("Any pain", "0"),
    ("tingling or numb", "no"),
)
OVER = "Next time"  # in the recap that ends a session


def answer_to(text: str) -> str | None:
    """What the client types; None: nothing is asked."""
    return next((answer for asked, answer in ANSWERS if asked in text), None)


def practice(store: Store, clients: int, now: datetime, coaches: int = 1) -> None:
    """A plan of two squat sets and a clearance for each client; the clients are shared among the coaches."""
    load, more = Load(Decimal(10)), Load(Decimal(12))
    squat = Exercise("goblet_squat", Region.LEGS, Scheme.OPEN, OPEN_AIMS, load, (load, more))
    plan, joined = plan_to_text(Plan("squats", (squat,))), now - timedelta(days=1)
    with store.transaction():
        ids = [_coach(store, COACH + place, now) for place in range(coaches)]
        for number in range(clients):
            coach = ids[number % coaches]
            name = f"Client {number}"
            client = people.add(store, FIRST_CLIENT + number, name, Role.CLIENT, "UTC", joined, coach)
            facts.put(store, client, Cleared(joined, "1", "cleared", "arms,legs", coach), joined)
            facts.put(store, client, PlanGiven(joined, plan, coach), joined)


def _coach(store: Store, chat: int, now: datetime) -> int:
    known = people.by_chat(store, chat)
    coach = known.id if known else people.add(store, chat, f"Coach {chat}", Role.COACH, "UTC", now)
    settings.put(store, f"alone:{coach}", "yes")
    return coach
