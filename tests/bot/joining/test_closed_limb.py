"""One closed arm, played by both phones: the other arm and the legs train on, and no band gets past it by any path."""

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

import pytest

from bot.engine import status
from core.cuffs.limbs import Limb, banded
from core.facts import BandsOn, Cleared, CoachDid, ScreeningAnswer, ScreeningDone, Travelling
from core.plans import FIXED_AIMS, OPEN_AIMS, Exercise, Plan, Region, Scheme, Side
from core.store import facts
from core.units import Load
from tests.bot.coach_room import COACH, RACK, RUTA, SQUAT, Room

CURL = Exercise("curl", Region.ARMS, Scheme.FIXED, FIXED_AIMS, Load(Decimal(10)), RACK)
ROW = Exercise(
    "one_arm_row", Region.ARMS, Scheme.OPEN, OPEN_AIMS, Load(Decimal(10)), RACK, sides=(Side.LEFT, Side.RIGHT)
)
BOTH = Plan("curl, row, squat", (CURL, ROW, SQUAT))


@pytest.fixture
def room() -> Room:
    return Room()


def screened(
    room: Room, client: int, name: str = "1", tier: str = "coach_looks", closed: str = "left_arm"
) -> None:
    """Answers are in: lymph nodes were taken out on the left."""
    room.put(client, ScreeningAnswer(room.now, name, "lymph_nodes", closed or "no"))
    room.put(client, ScreeningDone(room.now, name, tier, closed, "lymph_nodes" if closed else ""))


def ruta(room: Room, plan: Plan | None = BOTH, regions: str = "right_arm,legs") -> int:
    """Ruta, cleared for what her left arm leaves."""
    client = room.client(RUTA, "Ruta", plan=plan, cleared="")
    screened(room, client)
    room.stage.clock.skip_to(room.now + timedelta(minutes=1))
    if regions:
        room.put(client, Cleared(room.now, "1", "cleared", regions, room.person(COACH).id))
    return client


def test_the_coach_clears_the_other_arm_and_the_legs_and_both_hear_it(room: Room) -> None:
    ruta(room, plan=None, regions="")
    room.types(COACH, "ruta")
    room.taps(COACH, "Clearance")
    assert any(
        "lymph nodes taken out: limb closed (Lymph nodes: left arm)" in text for text in heard(room, COACH)
    )
    room.taps(COACH, "Clear: right arm and legs")
    room.types(COACH, "Left arm stays without, her surgeon agrees")
    assert "You're cleared for: right arm and legs." in heard(room, RUTA)[-1]
    assert "one-sided work on the right arm only" in room.says(COACH)
    room.types(COACH, "Dumbbells: goblet squat, curl")
    assert room.says(COACH).startswith("Not this one: it would put a band on the left arm.")
    room.taps(COACH, "Rehab one arm: curl, 30/15/15/15")
    for answer in ("4, 6 kg", "4 kg", "none", "send it"):
        room.types(COACH, answer)
    plan = status.plan_of(room.stage.engine, room.person(RUTA).id)
    assert plan is not None
    assert {limb for one in plan.exercises for limb in banded(one)} == {Limb.RIGHT_ARM}


def heard(room: Room, number: int) -> list[str]:
    return [message.text for message in room.messages(number) if message.text]


def test_a_plan_from_before_is_done_without_the_closed_arm(room: Room) -> None:
    client = ruta(room)
    room.types(RUTA, "plan")
    shown = "\n".join(heard(room, RUTA))
    assert "right arm only" in shown
    assert "Curl" not in shown
    plan = status.plan_of(room.stage.engine, client)
    assert plan is not None
    assert [(one.movement, one.sides) for one in plan.exercises] == [
        ("one_arm_row", (Side.RIGHT,)),
        ("goblet_squat", (Side.BOTH,)),
    ]


def test_the_band_goes_on_the_open_arm_only_and_the_client_is_told_which(room: Room) -> None:
    client = ruta(room)
    room.in_a_set(RUTA)
    fits = [text for text in heard(room, RUTA) if "Tap when it is on" in text]
    assert "One band only, on your right arm" in fits[0]
    assert "Left arm" not in "\n".join(text for text in heard(room, RUTA) if "thumb" in text)
    assert len(facts.current(room.store, BandsOn, client)) == 1


def test_the_coach_sees_what_rests_because_of_a_closed_limb(room: Room) -> None:
    ruta(room)
    room.types(COACH, "ruta")
    assert "Rests, closed limb: Curl." in room.says(COACH)


def test_away_from_home_nothing_swaps_onto_the_closed_arm(room: Room) -> None:
    client = ruta(room)
    room.put(client, Travelling(room.now, room.now, room.now + timedelta(days=7), client))
    plan = status.plan_of(room.stage.engine, client)
    assert plan is not None
    assert all(Limb.LEFT_ARM not in banded(one) for one in plan.exercises)


def test_an_old_clearance_by_region_reads_and_a_limb_closed_by_the_answers_stays_closed(room: Room) -> None:
    client = ruta(room, regions="arms,legs")
    plan = status.plan_of(room.stage.engine, client)
    assert plan is not None
    assert all(Limb.LEFT_ARM not in banded(one) for one in plan.exercises)
    room.types(COACH, "ruta")
    assert "Cleared: right arm and legs; closed: left arm." in room.says(COACH)


def test_a_limb_closed_in_mid_session_takes_the_bands_off(room: Room) -> None:
    client = room.client(RUTA, "Ruta", plan=replace(BOTH, exercises=(CURL,)))
    room.in_a_set(RUTA)
    room.put(client, Cleared(room.now, "1", "cleared", "right_arm,legs", room.person(COACH).id))
    room.types(RUTA, "30")
    texts = heard(room, RUTA)
    assert any(text.startswith("Bands off now, please: your coach closed that limb") for text in texts)
    room.taps(RUTA, "Bands are off")
    room.types(RUTA, "start")
    assert "Bands on" not in room.says(RUTA)


def test_a_plan_with_nothing_left_starts_no_session_and_the_coach_is_told_to_make_another(room: Room) -> None:
    ruta(room, plan=Plan("curls", (CURL,)))
    room.types(RUTA, "start")
    assert "Your plan puts bands where they may not go now" in room.says(RUTA)
    room.types(COACH, "ruta")
    assert "Rests, closed limb: Curl." in room.says(COACH)


# --- who is not cleared cannot start -------------------------------------------------------------------------
@pytest.mark.parametrize("tier", ["clear", "coach_looks", "do_not_start"])
def test_after_a_new_screening_nobody_trains_on_the_old_decision(room: Room, tier: str) -> None:
    client = room.client(RUTA, "Ruta")
    screened(room, client, "1", "clear", "")
    screened(room, client, "2", tier, "")
    room.types(RUTA, "start")
    assert not any("Session 1" in text for text in heard(room, RUTA))


def test_a_new_screening_in_mid_session_takes_the_bands_off(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.in_a_set(RUTA)
    screened(room, client, "2", "do_not_start", "")
    room.types(RUTA, "31")
    assert any("If bands are on, take them off now" in text for text in heard(room, RUTA))


def test_a_hold_with_a_day_bars_until_then_and_gives_the_clearance_back(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    coach = room.person(COACH).id
    room.stage.clock.skip_to(room.now + timedelta(minutes=1))
    room.put(client, Cleared(room.now, "1", "held", "", coach, room.now + timedelta(days=3)))
    room.put(client, CoachDid(room.now, coach, "held"))
    room.types(RUTA, "start")
    assert "on hold" in room.says(RUTA)
    room.types(COACH, "ruta")
    assert "On hold until 5 Mar 2026." in room.says(COACH)
    room.later(days=3, minutes=1)
    room.types(RUTA, "start")
    assert any("Session 1" in text for text in heard(room, RUTA))


@pytest.mark.parametrize(
    ("exercises", "said"),
    [
        ((ROW,), "put on one band, on your right arm"),
        ((SQUAT, ROW), "put on both leg bands"),
    ],
)
def test_the_release_drill_puts_no_band_on_the_closed_arm(
    room: Room, exercises: tuple[Exercise, ...], said: str
) -> None:
    ruta(room, plan=Plan("x", exercises))
    room.in_a_set(RUTA)
    drill = next(text for text in heard(room, RUTA) if text.startswith("First a drill"))
    assert said in drill
