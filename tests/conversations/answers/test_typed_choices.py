"""Yes, no, not sure, and typed words for buttons; and the words of every re-ask."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.answers import Reply, Unclear, Why, choice, yes_no
from conversations.protocol import Choice
from conversations.words.answers import unclear
from tests.conversations.answers.table import outcome

YES = ["yes", "Yes.", "YES!", "y", "yep", "👍", "yes please", "Yes, I do", "yes I have", "of course", "ok"]
NO = ["no", "No", "nope", "👎", "no thanks", "I haven't", "no I don’t", "never", "not at all", "none"]
NOT_SURE = ["not sure", "I'm not sure", "dont know", "don’t know", "maybe", "yes and no", "I think so", "idk"]


@pytest.mark.parametrize(
    ("text", "reply"),
    [(text, Reply.YES) for text in YES]
    + [(text, Reply.NO) for text in NO]
    + [(text, Reply.NOT_SURE) for text in NOT_SURE],
)
def test_yes_no_and_not_sure_are_read_as_whole_phrases(text: str, reply: Reply) -> None:
    assert yes_no(text) is reply


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("no but my father did", Why.SAID_MORE),
        ("yes, in 2019", Why.SAID_MORE),
        ("no yes", Why.SAID_MORE),
        ("yes no", Why.SAID_MORE),
        ("not yes", Why.NOT_YES_OR_NO),
        ("not no", Why.NOT_YES_OR_NO),
        ("know", Why.NOT_YES_OR_NO),
        ("yesterday", Why.NOT_YES_OR_NO),
        ("nothing", Why.NOT_YES_OR_NO),
        ("31", Why.NOT_YES_OR_NO),
        ("?", Why.NOT_YES_OR_NO),
        ("", Why.NOT_YES_OR_NO),
        ("my father had a clot", Why.NOT_YES_OR_NO),
    ],
)
def test_anything_more_or_less_than_yes_or_no_is_asked_again(text: str, why: Why) -> None:
    assert outcome(yes_no, text) is why


LABELS = ("Under 2", "About 3", "Longer", "Can't see", "Right", "Left")
OPTIONS = tuple(Choice(label, f"v:{label}") for label in LABELS)


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("v:Longer", "Longer"),
        ("under 2", "Under 2"),
        ("UNDER2", "Under 2"),
        ("  about   3 ", "About 3"),
        ("about", "About 3"),
        ("longer.", "Longer"),
        ("longr", "Longer"),
        ("lnoger", "Longer"),
        ("longger", "Longer"),
        ("lomger", "Longer"),
        ("cant see", "Can't see"),
        ("can’t see", "Can't see"),
        ("can't", "Can't see"),
        ("rihgt", "Right"),
        ("lef", "Left"),
    ],
)
def test_an_option_is_found_by_label_start_or_one_slip(text: str, label: str) -> None:
    assert choice(text, OPTIONS) == f"v:{label}"


@pytest.mark.parametrize(
    "text",
    [
        "light",
        "can see",
        "under 3",
        "about 2",
        "3",
        "l",
        "le",
        "not left",
        "left or right",
        "",
        "!",
        "lonnger ago",
    ],
)
def test_an_option_is_never_picked_because_it_is_near(text: str) -> None:
    assert outcome(choice, text, OPTIONS) is Why.NOT_AN_OPTION


def test_a_start_that_fits_two_options_is_asked_back() -> None:
    options = (Choice("Not numb", "a"), Choice("Not blue", "b"), Choice("Not sure", "c"))
    assert outcome(choice, "numb", options) is Why.NOT_AN_OPTION
    assert outcome(choice, "not", options) is Why.WHICH_OPTION


def test_a_slip_that_fits_two_options_is_asked_back() -> None:
    options = (Choice("Tighter", "t"), Choice("Tights", "s"))
    assert outcome(choice, "Tighte", (*options, Choice("Tightex", "x"))) is Why.WHICH_OPTION


@given(
    st.lists(st.text(st.characters(categories=["L"], max_codepoint=127), min_size=1), unique_by=str.casefold)
)
def test_every_label_and_value_finds_its_own_option(labels: list[str]) -> None:
    options = [Choice(label, f"v:{label}") for label in labels]
    for option in options:
        assert choice(option.value, options) == choice(option.label.upper(), options) == option.value


@given(st.text(max_size=20))
def test_any_text_gives_one_of_the_values_or_an_unclear(text: str) -> None:
    result = outcome(choice, text, OPTIONS)
    assert isinstance(result, Why) or result in {option.value for option in OPTIONS}
    assert isinstance(outcome(yes_no, text), Reply | Why)


@pytest.mark.parametrize("why", list(Why))
@pytest.mark.parametrize("bounds", [(None, None), (0, 10)])
def test_every_refusal_has_words(why: Why, bounds: tuple[int | None, int | None]) -> None:
    words = unclear(Unclear(why, *bounds, options=("Left", "Right")))
    assert words.strip().endswith((".", "?"))


def test_the_words_name_the_range_and_the_options() -> None:
    assert unclear(Unclear(Why.TOO_HIGH, 0, 10)) == "I need a number from 0 to 10."
    assert (
        unclear(Unclear(Why.NOT_AN_OPTION, options=("Left", "Right"))) == "One of these, please: Left, Right."
    )
