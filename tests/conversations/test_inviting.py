"""The coach invites a client."""

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.coach.inviting import DIALOGUE, LONGEST, Brief, read_name
from conversations.protocol import Do, Effect, Opened, Said
from conversations.words import inviting as words

NOW = datetime(2026, 1, 5, 9, tzinfo=UTC)


def play(*texts: str) -> tuple[list[str], tuple[Effect, ...], bool]:
    """What the coach reads, the effects, and whether it is over."""
    turn = DIALOGUE.advance(None, Opened(NOW, Brief(1001)), NOW)
    said, effects = [say.text for say in turn.replies], turn.effects
    for text in texts:
        turn = DIALOGUE.advance(turn.state, Said(NOW, text), NOW)
        said += [say.text for say in turn.replies]
        effects += turn.effects
    return said, effects, turn.state is None


def test_a_name_makes_an_invitation() -> None:
    assert play("Ruta") == ([words.NAME], (Do("invite", {"name": "Ruta"}),), True)


def test_what_is_no_name_is_asked_again_kindly() -> None:
    said, effects, over = play("12", "🙂", "Ruta")
    assert said == [words.NAME, words.AGAIN, words.AGAIN]
    assert effects == (Do("invite", {"name": "Ruta"}),)
    assert over


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("  Ana\n Maria ", "Ana Maria"),
        ("Zoë", "Zoë"),
        ("李", "李"),
        ("Ru\u202eta", "Ruta"),
        ("Ru\x00ta", "Ruta"),
        ("می\u200cنا", "می\u200cنا"),
        ("m" * LONGEST, "m" * LONGEST),
        ("m" * (LONGEST + 1), None),
        ("m" * (LONGEST - 1), "m" * (LONGEST - 1)),
        ("", None),
        ("...", None),
    ],
)
def test_names_are_cleaned_or_refused(text: str, name: str | None) -> None:
    assert read_name(text) == name


@given(st.text(max_size=80))
def test_a_name_is_always_one_short_line(text: str) -> None:
    name = read_name(text)
    assert name is None or (0 < len(name) <= LONGEST and "\n" not in name and name == read_name(name))
