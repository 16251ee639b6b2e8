"""Every movement, template and limit has its words."""

import pytest

from conversations.words import movements, planning
from core.calendar.limits import Limit
from core.movements import MOVEMENTS
from core.templates import TEMPLATES

LONGEST = 60  # characters; a cue has to be read between two breaths


@pytest.mark.parametrize("words", [movements.NAMES, movements.CUES, movements.STOP_WHEN, movements.BREATHING])
def test_every_movement_has_its_words_and_no_word_is_left_over(words: dict[str, object]) -> None:
    assert set(words) == set(MOVEMENTS)


def test_there_are_three_short_cues_and_one_sign_to_stop() -> None:
    for name, cues in movements.CUES.items():
        assert len(set(cues)) == 3
        for line in (*cues, movements.STOP_WHEN[name], movements.BREATHING[name]):
            assert line.endswith(".")
            assert len(line) <= LONGEST


def test_names_are_told_apart() -> None:
    assert len(set(movements.NAMES.values())) == len(movements.NAMES)


def test_every_template_and_limit_has_its_words() -> None:
    assert set(planning.TEMPLATES) == set(TEMPLATES)
    assert set(planning.LIMITS) == set(Limit)
