"""A helper types: what she, he, or the client by name has, the client has."""

import pytest

from conversations.stopwords import read
from conversations.stopwords.kinds import Kind
from conversations.stopwords.spoken_for import in_first_person


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("she can't breathe", Kind.EMERGENCY),
        ("mum has chest pain", Kind.EMERGENCY),
        ("Mum's chest hurts", Kind.EMERGENCY),
        ("grandma passed out", Kind.EMERGENCY),
        ("he fainted", Kind.EMERGENCY),
        ("Ruta can’t breathe", Kind.EMERGENCY),
        ("she feels dizzy", Kind.FAINT),
        ("she says it tingles", Kind.NERVE),
        ("she can't feel her hand", Kind.NERVE),
        ("Ruta's leg is blue", Kind.CIRCULATION),
        ("she fell", Kind.INJURY),
        ("she is fine", Kind.NONE),
        ("she says she is fine", Kind.NONE),
        ("she has not fainted", Kind.NONE),
        ("she says no tingling", Kind.NONE),
        ("her leg is not numb", Kind.NONE),
        ("Ruta did 28", Kind.NONE),
        ("31", Kind.NONE),
    ],
)
def test_the_sign_is_the_clients(text: str, kind: Kind) -> None:
    assert read(in_first_person(text, "Ruta")).kind is kind


def test_a_name_with_signs_is_only_a_name() -> None:
    assert in_first_person("R.T. (old) fell", "R.T. (old)").endswith("fell")
    assert in_first_person("maria fell", "Mar") == "maria fell"
