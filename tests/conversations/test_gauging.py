"""The coach asks for a cuff pressure."""

from datetime import UTC, datetime

import pytest

from conversations.coach.gauging import FORM, Brief
from conversations.protocol import Opened, Record, Said, Turn
from conversations.words import gauging as words
from core.facts import CoachDid
from core.pressure import Refusal

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)


def talk(*answers: str, age: int | None = 25) -> Turn:  # type: ignore[type-arg]
    """The dialogue with these answers; the last turn."""
    turn = FORM.advance(None, Opened(NOW, Brief(5, "Ruta", 1, age)), NOW)
    for answer in answers:
        turn = FORM.advance(turn.state, Said(NOW, answer), NOW)
    return turn


def test_an_18_cm_leg_cuff_at_25_gets_the_published_estimate_and_its_limits() -> None:
    """Thigh 55 cm, 120 mmHg, 25 years, male: 168.54 mmHg, 40-80 % of it 67.4-134.8 (derived)."""
    turn = talk("Leg, 18 cm wide", "male", "55", "120/80")
    said = turn.replies[-1].text
    assert turn.state is None
    assert said.startswith("Ruta: about 169 mmHg would close the artery (AOP), give or take 15.")
    assert "67 to 135 mmHg" in said
    assert "estimate" in said
    assert "Tightness and refill still decide" in said
    [did] = [one.fact for one in turn.effects if isinstance(one, Record)]
    assert isinstance(did, CoachDid)
    assert did.note == "AOP about 169, 67 to 135 mmHg"


@pytest.mark.parametrize(("cuff", "why"), [("Arm", Refusal.ARM), ("Leg, another width", Refusal.CUFF_WIDTH)])
def test_another_cuff_is_refused_at_once_with_the_reason(cuff: str, why: Refusal) -> None:
    turn = talk(cuff)
    assert (turn.state, turn.replies[-1].text) == (None, words.NO_ESTIMATE[why])
    assert turn.effects == ()


@pytest.mark.parametrize(("age", "over"), [(17, True), (18, False), (34, False), (35, True)])
def test_only_the_ages_of_the_study_get_an_estimate(age: int, over: bool) -> None:
    turn = talk("Leg, 18 cm wide", age=age)
    assert (turn.state is None) is over
    if over:
        assert turn.replies[-1].text == words.NO_ESTIMATE[Refusal.AGE]


def test_an_age_that_is_not_known_is_asked_for() -> None:
    turn = talk("Leg, 18 cm wide", age=None)
    assert turn.replies[-1].text == words.AGE.format(name="Ruta")
    assert talk("Leg, 18 cm wide", "30", "female", "60", "130/80", age=None).state is None


@pytest.mark.parametrize(("reading", "refused"), [("179/109", False), ("180/100", True), ("170/110", True)])
def test_a_blood_pressure_that_forbids_bands_gets_no_estimate(reading: str, refused: bool) -> None:
    said = talk("Leg, 18 cm wide", "female", "55", reading).replies[-1].text
    assert (said == words.TOO_HIGH.format(name="Ruta")) is refused


@pytest.mark.parametrize("girth", ["34", "86", "NaN", "-55", "thick"])
def test_a_girth_that_no_thigh_has_is_asked_again(girth: str) -> None:
    turn = talk("Leg, 18 cm wide", "male", girth)
    assert turn.state is not None
    assert turn.replies[-1].text == words.GIRTH
