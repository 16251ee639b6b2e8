"""What a session begins with because of what came before: a slow refill, too much pain, thin bones."""

from datetime import timedelta

import pytest

from bot.engine import briefs, reading_briefs
from bot.engine.training import testing
from core.facts import BandsOff, CuffChecked, Rated, ScreeningDone
from tests.bot.coach_room import ANSWERS, RUTA, SQUATS, Room


@pytest.fixture
def room() -> Room:
    return Room()


def begun(room: Room, client: int) -> reading_briefs.About:
    return reading_briefs.About(room.stage.engine, room.person(RUTA), {"session": "next"})


def checked(room: Room, client: int, limb: str, because: str) -> None:
    fact = CuffChecked(room.now, "s1", "1.1", 1, limb, 6, "longer", None, "fine", "loosen", because, "")
    room.put(client, fact)


@pytest.mark.parametrize(
    ("left", "right", "slow"),
    [
        ("slow_refill", "", True),
        ("", "slow_refill", True),
        ("too_tight,slow_refill", "", True),
        ("loose", "", False),
    ],
)
def test_a_slow_refill_on_either_limb_is_remembered(room: Room, left: str, right: str, slow: bool) -> None:
    client = room.client(RUTA, "Ruta")
    checked(room, client, "left_leg", left)
    checked(room, client, "right_leg", right)
    assert briefs.MAKERS["last_check_slow"](begun(room, client)) is slow


@pytest.mark.parametrize(("pain", "gentle"), [(3, False), (4, True)])
def test_after_pain_above_the_ceiling_no_set_goes_to_failure(room: Room, pain: int, gentle: bool) -> None:
    client = room.client(RUTA, "Ruta", plan=SQUATS)
    for day in range(3):
        room.trained(client, str(day), (30, 14, 7), room.now + timedelta(days=day))
    room.put(client, Rated(room.now, "2", "pain", "after", pain, "joint"))
    assert briefs.MAKERS["gentle"](begun(room, client)) is gentle


def test_no_strength_test_with_osteoporosis(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.put(client, ScreeningDone(room.now, "1", "coach_looks", "", "weak_bones"))
    assert testing.against(room.stage.engine, room.person(RUTA)) == "osteoporosis"


@pytest.mark.parametrize(("ago", "waits"), [(179, True), (180, False), (181, False)])
def test_bands_stay_off_for_three_minutes_also_between_two_sessions(
    room: Room, ago: int, waits: bool
) -> None:
    client = room.client(RUTA, "Ruta")
    room.put(client, BandsOff(room.now, "before", "1.1", "stopped"))
    room.stage.clock.skip_to(room.now + timedelta(seconds=ago))
    room.types(RUTA, "start")
    for _ in range(12):
        labels = room.labels(RUTA)
        if not labels or "Bands are on" in labels or "just now" in room.says(RUTA):
            break
        room.taps(RUTA, next((label for label in ANSWERS if label in labels), labels[0]))
    assert ("only just now" in room.says(RUTA)) is waits
    assert ("Bands are on" in room.labels(RUTA)) is not waits
    room.later(seconds=2)
    assert "Bands are on" in room.labels(RUTA)
