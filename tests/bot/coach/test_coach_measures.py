"""What a coach asks and enters from the card: cuff pressure, girth; what the card says of weeks and strength."""

from collections.abc import Iterator
from datetime import timedelta

import pytest

from bot.engine import briefs
from bot.engine.safety import checks
from core.facts import BandsOff, BandsOn, CoachDid, CuffChecked, Measured, Rated
from core.plans import Region
from core.pressure import Drift, Fit, drift
from core.safety.causes import Cause
from core.store import duties, facts
from tests.bot.coach_room import COACH, RUTA, START, Room


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    yield made
    made.stage.close()


def more(room: Room) -> int:
    """A client, and the second page of their card."""
    client = room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    room.taps(COACH, "More")
    return client


def test_the_card_leads_to_an_estimate_of_the_cuff_pressure_that_the_log_keeps(room: Room) -> None:
    client = more(room)
    room.taps(COACH, "Cuff pressure")
    room.taps(COACH, "Leg, 18 cm wide")
    room.types(COACH, "25")
    room.taps(COACH, "Female")
    room.types(COACH, "55")
    room.types(COACH, "120/80")
    assert "about 161 mmHg" in room.says(COACH)
    notes = [one.note for one in facts.current(room.store, CoachDid, client, action="pressure_estimate")]
    assert notes == ["AOP about 161, 64 to 128 mmHg"]
    room.taps(COACH, "Back to Ruta")
    room.taps(COACH, "More")
    room.taps(COACH, "Log")
    assert "estimated the cuff pressure: AOP about 161" in room.says(COACH)


def girth(room: Room, cm: str) -> None:
    room.types(COACH, "ruta")
    room.taps(COACH, "More")
    room.taps(COACH, "Girth")
    room.taps(COACH, "Left leg")
    room.types(COACH, cm)


def test_the_coach_enters_a_girth_and_reads_what_the_change_is_worth(room: Room) -> None:
    client = more(room)
    girth(room, "54,5")
    assert room.says(COACH) == "Noted: left leg 54.5 cm."
    room.later(days=30)
    girth(room, "55 cm")
    assert room.says(COACH).endswith("+0.5 cm since 2 March; less than 1.5 cm may be the tape.")
    girth(room, "56.1")
    assert room.says(COACH).endswith("+1.6 cm since 2 March, more than the tape's error.")
    assert [one.girth_cm for one in facts.current(room.store, Measured, client)] == [54.5, 55.0, 56.1]
    logged = [(one.action, one.note) for one in facts.current(room.store, CoachDid, client)]
    assert logged[1:] == [("girth", f"left leg {cm} cm") for cm in ("54.5", "55", "56.1")]


def test_right_after_training_the_coach_is_told_why_a_girth_is_not_kept(room: Room) -> None:
    client = more(room)
    room.trained(client, "new", (31, 16, 8), room.now)
    girth(room, "55")
    assert "still swollen" in room.says(COACH)
    assert facts.current(room.store, Measured, client) == []


def rated(room: Room, client: int, days_ago: int, minutes: int, effort: int) -> None:
    """A session with bands on for so long, and how hard it was."""
    at, session = room.now - timedelta(days=days_ago), f"r{days_ago}"
    room.put(client, BandsOn(at, session, "1.1", Region.LEGS, 600))
    room.put(client, BandsOff(at + timedelta(minutes=minutes), session, "1.1", "done"))
    room.put(client, Rated(at + timedelta(minutes=minutes), session, "effort", "after", effort))


def test_the_card_shows_weekly_load_monotony_and_their_product(room: Room) -> None:
    """180, 0, 200, 0, 210, 0, 0: sum 590, monotony 0.86, product 509 by the population's spread (derived)."""
    client = room.client(RUTA, "Ruta")
    for days_ago, minutes, effort in ((6, 30, 6), (4, 25, 8), (2, 30, 7)):
        rated(room, client, days_ago, minutes, effort)
    rated(room, client, 8, 60, 9)
    room.types(COACH, "ruta")
    assert "Last 7 days: weekly load 590 (effort x minutes), monotony 0.9, load x monotony 509." in room.says(
        COACH
    )


def test_seven_equal_days_are_said_to_be_equal(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    for days_ago in range(7):
        rated(room, client, days_ago, 10, 3)
    room.types(COACH, "ruta")
    assert "weekly load 210 (effort x minutes); every day was the same." in room.says(COACH)


def test_the_card_shows_reps_at_equal_load(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    for number, reps in enumerate((25, 27, 30)):
        room.trained(client, f"s{number}", (reps, 15, 8), START + timedelta(hours=number))
    room.types(COACH, "ruta")
    assert "Goblet squat at 10 kg: set 1 up by 20 %, not yet a clear change." in room.says(COACH)


def test_reps_tightness_and_refill_that_drift_together_reach_the_coach(room: Room) -> None:
    """Each gauge alone stays within its day-to-day spread; together they say that the bands get looser."""
    client = room.client(RUTA, "Ruta")
    for number in range(6):
        at, session, late = START + timedelta(days=3 * number), f"s{number}", number >= 3
        look = ("left_leg", 6 if late else 7, "under_2", 1.6 if late else 2.1)
        room.put(client, CuffChecked(at, session, "1.1", 1, *look, "fine", "go", ""))
        room.trained(client, session, (34 if late else 30, 15, 8), at)
    alone = [one.fit for one in checks.checked(room.stage.engine, client)]
    assert drift([Fit(one.tightness) for one in alone]) is Drift.STEADY
    assert drift([Fit(None, one.refill_s) for one in alone]) is Drift.STEADY
    assert drift([Fit(None, None, one.surprise) for one in alone]) is Drift.STEADY
    assert drift(alone) is Drift.LOOSER
    with room.store.transaction():
        checks.tell_patterns(room.stage.engine, client)
    causes = [one.cause for one in duties.open_alerts(room.store, client)]
    assert causes == [Cause.TIGHTNESS_DRIFT]


def walks_below(room: Room) -> int | None:
    """The pulse ceiling of the client's next session."""
    brief = briefs.make(room.stage.engine, room.person(RUTA), "session", {"session": "x"})
    below: int | None = brief.pulse_below
    return below


def test_a_pulse_ceiling_is_half_of_the_reserve_and_goes_with_the_next_walk(room: Room) -> None:
    """60 at rest, 160 at most: 110 (half of the reserve: Patterson et al. 2019)."""
    more(room)
    assert walks_below(room) is None
    room.taps(COACH, "Pulse for walks")
    room.types(COACH, "160")
    room.types(COACH, "60")
    assert room.says(COACH).startswith("Ruta walks below 110 beats a minute")
    assert walks_below(room) == 110
    room.taps(COACH, "Back to Ruta")
    room.taps(COACH, "More")
    room.taps(COACH, "Pulse for walks")
    room.taps(COACH, "No limit")
    assert walks_below(room) is None


def test_a_pulse_at_rest_that_is_not_below_the_highest_is_asked_again(room: Room) -> None:
    more(room)
    room.taps(COACH, "Pulse for walks")
    room.types(COACH, "90")
    room.later(seconds=3)
    room.types(COACH, "90")
    assert room.says(COACH).startswith("The highest pulse is above the one at rest.")
    room.types(COACH, "70")
    assert walks_below(room) == 80
