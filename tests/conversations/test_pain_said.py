"""Pain as people say it: with its place, as "just tired", or without a number."""

import pytest

from conversations.answers import Unclear, Why
from conversations.pain_said import pain_score, score
from conversations.words.answers import unclear


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("0", 0),
        ("none", 0),
        ("2 in the elbow", 2),
        ("knee 2", 2),
        ("3 in my left knee", 3),
        ("4/10", 4),
        ("left shoulder: 1", 1),
        ("just tired", 0),
        ("no but tired", 0),
        ("no, just a bit tired", 0),
        ("muscles are tired", 0),
    ],
)
def test_a_number_is_read_wherever_it_hurts(text: str, said: int) -> None:
    assert pain_score(text) == said


@pytest.mark.parametrize(
    "text",
    ["a little", "a bit", "my knee a little", "a little in the knee", "same as always", "slight, in the hip"],
)
def test_a_little_is_asked_for_its_number(text: str) -> None:
    with pytest.raises(Unclear) as problem:
        pain_score(text)
    assert problem.value.reason is Why.HOW_MUCH
    assert unclear(problem.value) == "How much is that as a number? A rough one is fine: about 5."


@pytest.mark.parametrize(
    "text",
    [
        "a little tingling",
        "my knee is numb",
        "2 in the elbow and 4 in the knee",
        "a lot",
        "12 in the knee",
        "tired and dizzy",
        "a little swollen",
        "2 fingers are blue",
    ],
)
def test_anything_else_is_no_number_and_no_little(text: str) -> None:
    with pytest.raises(Unclear) as problem:
        pain_score(text)
    assert problem.value.reason is not Why.HOW_MUCH


@pytest.mark.parametrize("text", ["10+", "no idea"])
def test_the_example_of_a_rating_is_a_rating(text: str) -> None:
    with pytest.raises(Unclear) as problem:
        score(text)
    assert "about 5." in unclear(problem.value)
