"""A small invented practice in a file, as a bot would leave it."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal
from pathlib import Path

from core.facts import (
    BandsOn,
    Cleared,
    CoachDid,
    CuffChecked,
    Detail,
    LoadMoved,
    PlanGiven,
    Rated,
    SessionEnded,
    SetDone,
)
from core.plan_text import plan_to_text
from core.plans import OPEN_AIMS, Exercise, Plan, Region, Scheme, Side
from core.store import facts, people
from core.store.connection import Store
from core.store.people import Role
from core.units import Load, Unit

MONDAY = datetime(2026, 1, 26, 18, 0, tzinfo=UTC)  # in the week 2026-W05
ZONE = "Europe/Helsinki"  # two hours ahead in winter
COACH, CLIENT = 1001, 2001
TEN, TWELVE = (Load(Decimal(kg), Unit.KG) for kg in (10, 12))
SQUAT = Exercise("goblet_squat", Region.LEGS, Scheme.OPEN, OPEN_AIMS, TEN, (TEN, TWELVE))


def made(db: Path, name: str = "Ruta") -> int:
    """A database with one coach and one client who trained once; the client's id."""
    store = Store(db, synchronous="OFF")
    with store.transaction():
        coach = people.add(store, COACH, "Coach", Role.COACH, ZONE, MONDAY)
        client = people.add(store, CLIENT, name, Role.CLIENT, ZONE, MONDAY, coach)
        trained(store, client, coach)
    store.close()
    return client


def trained(store: Store, client: int, coach: int) -> None:
    """Cleared, given a plan, one session of three sets and a heavier load next."""
    at, session = MONDAY, f"{client}-1"
    plan = plan_to_text(Plan("squats", (SQUAT,)))
    minutes = [at + timedelta(minutes=number) for number in range(6)]
    legs = ("left_leg", "right_leg")
    for fact in (
        Detail(at, "phone", "555 0101"),
        Cleared(at, "1", "cleared", "arms,legs", coach),
        PlanGiven(at, plan, coach),
        CoachDid(at, coach, "wrote", "well done"),
        BandsOn(at, session, "1.1", Region.LEGS, 600),
        *(CuffChecked(at, session, "1.1", 1, leg, 7, "under_2", None, "fine", "go", "") for leg in legs),
        *(
            SetDone(
                minutes[n],
                session,
                1,
                "goblet_squat",
                n,
                Side.BOTH,
                "10 kg",
                reps,
                n == 3,
                minutes[n],
                rest,
                7,
                False,
                left,
            )
            for n, reps, rest, left in ((1, 42, None, 2), (2, 19, 31.0, None), (3, 9, 30.0, None))
        ),
        Rated(at, session, "effort", "after", 6),
        Rated(at, session, "pain", "after", 1, "muscle"),
        SessionEnded(minutes[5], session, "done"),
        LoadMoved(minutes[5], session, "goblet_squat", "10 kg", "12 kg", "raise", "set 1 was above 40", True),
    ):
        facts.put(store, client, fact, at)
