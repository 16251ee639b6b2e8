"""The coach's stop does not wait: the client's session ends at once, bands off first."""

import pytest

from core.facts import BandsOff, SessionEnded
from core.safety.causes import Cause
from core.store import duties, facts
from tests.practice import CLIENT, COACH, SECOND, Practice


def ended(practice: Practice) -> list[str]:
    return [one.why for one in facts.current(practice.stage.engine.store, SessionEnded, practice.client)]


@pytest.mark.parametrize(
    "text",
    ["to Ruta: stop", "to ruta stop", "stop Ruta", "Stop ruta's session now", "Ruta: stop", "ruta stop!"],
)
def test_a_stop_of_the_coach_takes_the_bands_off_and_ends_the_session(practice: Practice, text: str) -> None:
    practice.in_a_set()
    since = len(practice.heard(CLIENT))
    practice.types(COACH, text)
    heard = practice.heard(CLIENT)[since:]
    assert heard[0].startswith("Your coach ends this session. Bands off now")
    assert "Bands are off" in [label for row in practice.newest(CLIENT).buttons for label, _ in row]
    assert "is told: bands off" in practice.newest(COACH).text
    practice.types(CLIENT, "off")
    assert ended(practice) == ["stopped_by_coach"]
    assert len(facts.current(practice.stage.engine.store, BandsOff, practice.client)) == 1


def test_the_card_names_the_session_that_is_under_way_and_how_it_ended(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(COACH, "ruta")
    assert "under way" in practice.newest(COACH).text
    practice.types(COACH, "stop ruta")
    practice.types(CLIENT, "off")
    practice.types(COACH, "ruta")
    assert "under way" not in practice.newest(COACH).text
    assert ", stopped" in practice.newest(COACH).text


def test_the_words_beside_the_stop_go_along_and_others_wait(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(COACH, "to Ruta: looking good")
    assert "looking good" not in " ".join(practice.heard(CLIENT))
    practice.types(COACH, "to Ruta: stop, your back is bent")
    assert "From your coach: stop, your back is bent" in practice.heard(CLIENT)


def test_no_answer_to_the_coachs_stop_is_told_in_two_minutes(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(COACH, "stop Ruta")
    practice.later(minutes=2, seconds=5)
    causes = [one.cause for one in duties.open_alerts(practice.stage.engine.store, practice.client)]
    assert causes == [Cause.BANDS_ON]


def test_the_card_has_the_button_only_while_there_is_something_to_stop(practice: Practice) -> None:
    practice.types(COACH, "Ruta")
    assert "Stop Ruta's session" not in [label for row in practice.newest(COACH).buttons for label, _ in row]
    practice.in_a_set()
    practice.types(COACH, "Ruta")
    practice.taps(COACH, "Stop Ruta's session")
    assert any(text.startswith("Your coach ends this session") for text in practice.heard(CLIENT))


def test_with_nothing_under_way_the_coach_hears_so_and_the_client_nothing(practice: Practice) -> None:
    said = len(practice.heard(CLIENT))
    practice.types(COACH, "stop Ruta")
    assert "nothing to stop" in practice.newest(COACH).text
    assert len(practice.heard(CLIENT)) == said


def test_the_questions_before_a_session_end_too(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    practice.types(COACH, "stop Ruta")
    assert practice.newest(CLIENT).text.startswith("Your coach ends this session")


def test_another_coach_cannot_stop_it(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(SECOND, "stop Ruta")
    assert "Set 1 of" in practice.newest(CLIENT).text
