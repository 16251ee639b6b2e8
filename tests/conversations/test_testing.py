"""The strength test at home, played as scripts."""

from datetime import UTC, datetime

import pytest

from conversations.client.testing import DIALOGUE, Brief
from conversations.protocol import Alert, Do, Effect, Opened, Record, Said, Say
from conversations.words import testing as words
from core.facts import Detail

START = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)
BRIEF = Brief("goblet_squat", "Goblet squat", emergency_number="112")


def play(*texts: str) -> tuple[list[Say], list[Effect], bool]:
    """What was said and done, and whether it is over."""
    turn = DIALOGUE.advance(None, Opened(START, BRIEF), START)
    said, effects = list(turn.replies), list(turn.effects)
    for text in texts:
        assert turn.state is not None, f"over before {text!r}"
        turn = DIALOGUE.advance(turn.state, Said(START, text), START)
        said += turn.replies
        effects += turn.effects
    return said, effects, turn.state is None


def details(effects: list[Effect]) -> list[str]:
    """Best single lifts that were kept."""
    return [one.fact.value for one in effects if isinstance(one, Record) and isinstance(one.fact, Detail)]


def test_ten_clean_reps_make_an_estimate_and_the_coach_gets_the_numbers() -> None:
    said, effects, over = play("Warmed up, let's go", "60", "10")
    assert over
    # 60 kg x 10: Epley and Brzycki 80.0, the eight formulas 75.0 to 80.9 (worked values of the published formulas)
    assert details(effects) in (["78.5 kg"], ["79 kg"], ["79.5 kg"])
    assert said[-1].text == words.THANKS
    assert Do("tested", {"movement": "goblet_squat", "load": "60 kg", "reps": 10}) in effects


def test_eleven_reps_say_nothing_about_the_best_and_it_is_tried_heavier() -> None:
    said, effects, over = play("ready", "16 kg", "11")
    assert not over
    assert said[-1].text == words.HEAVIER.format(most=10)
    assert details(effects) == []


def test_three_sets_too_light_end_it_without_a_number() -> None:
    said, effects, over = play("yes", "10", "25", "12", "20", "14", "15")
    assert over
    assert said[-1].text == words.LEFT
    assert details(effects) == []


@pytest.mark.parametrize("before", [(), ("yes",), ("yes", "16")])
def test_it_may_be_left_at_any_question(before: tuple[str, ...]) -> None:
    said, _, over = play(*before, "Leave it")
    assert over
    assert said[-1].text == words.LEFT


def test_a_red_flag_ends_it_in_help() -> None:
    _, effects, over = play("yes", "my chest hurts")
    assert over
    assert any(isinstance(effect, Alert) for effect in effects)


@pytest.mark.parametrize("typed", ["0", "0 kg", "0.001 kg", "0.4"])
def test_no_load_at_all_is_asked_again_and_keeps_no_best(typed: str) -> None:
    said, effects, over = play("ready", typed)
    assert not over
    assert effects == []
    assert "from 0.5 to 500" in said[-2].text + said[-1].text


def test_the_lightest_set_that_counts_is_half_a_unit() -> None:
    assert details(play("ready", "0.5 kg", "1")[1]) == ["0.5 kg"]
