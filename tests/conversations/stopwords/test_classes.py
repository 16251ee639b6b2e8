"""Signs that are read by classes of words, in any order, and stay unread where they are denied or too far apart."""

import pytest

from conversations.stopwords import Kind, classes, read
from conversations.stopwords.lexicon import classes as lexicon
from conversations.stopwords.lexicon.languages import LANGUAGES
from conversations.stopwords.lexicon.signs import SIGNS


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("squeezing behind my ribs", Kind.EMERGENCY),
        ("my ribs feel as if somebody is squeezing", Kind.EMERGENCY),
        ("ticker is fluttering", Kind.FAINT),
        ("fluttering in my ticker", Kind.FAINT),
        ("she is slumped in the chair", Kind.EMERGENCY),
        ("cant lift my arm all of a sudden", Kind.EMERGENCY),
        ("cant lift my arm", Kind.LIMP),
        ("knuckles look waxy", Kind.CIRCULATION),
    ],
)
def test_a_part_and_what_it_does_wrong_are_a_sign_in_any_order(text: str, kind: Kind) -> None:
    assert read(text).kind is kind


@pytest.mark.parametrize(
    "text", ["no squeezing behind my ribs", "my ticker is not fluttering", "knuckles are not waxy"]
)
def test_what_is_denied_is_no_sign(text: str) -> None:
    assert read(text).kind is Kind.NONE


def test_words_that_stand_too_far_apart_are_no_sign() -> None:
    near = ["knuckles", *["then"] * classes.REACH, "waxy"]
    assert [pair.kind for pair in classes.pairs(near)] == [Kind.CIRCULATION]
    assert classes.pairs([*near[:-1], "then", "waxy"]) == []


def test_one_word_is_never_both_halves_of_a_sign() -> None:
    assert classes.pairs(["cheek", "slurring", "headache"]) == []


def test_every_rule_names_classes_that_exist_and_every_class_is_named() -> None:
    names = set(lexicon.PARTS) | set(SIGNS)
    named = {name for rule in classes.english() for name in rule.classes}
    alone = {name.replace("_", " ") for name in lexicon.TOUCHES.split()}
    assert named <= names
    assert alone <= names
    assert names == named | alone


@pytest.mark.parametrize("language", sorted(LANGUAGES))
def test_each_language_has_only_classes_that_a_rule_of_it_reads(language: str) -> None:
    own = {name for rule in classes.rules() for name in rule.classes if name.startswith(f"{language} ")}
    assert own == {f"{language} {name}" for name in LANGUAGES[language]}


@pytest.mark.parametrize("text", ["mi brazo taub", "main blau", "ruka engourdi"])
def test_words_of_two_languages_are_no_pair(text: str) -> None:
    run = text.split()
    assert classes.pairs(run) == []
