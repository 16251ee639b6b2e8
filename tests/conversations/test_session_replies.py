"""What is typed as a reply to one of the session's messages, where a tap was expected."""

import pytest

from conversations.protocol import Corrected, Said
from conversations.words import session as words
from tests.conversations.test_session import Played, played

WHICH = "which.1.1.20"


def asked_which() -> Played:
    """Set 1 is counted, and another number came in the rest."""
    p = played().fits().types("done", 60).types("31", 5).types("20", 10)
    assert p.heard == words.WHICH_SET.format(reps=20, last=1, next=2)
    return p


def replies(p: Played, text: str) -> Played:
    """Typed as a reply to that question."""
    p.message += 1
    return p.give(Said(p.now, text, WHICH, p.message))


@pytest.mark.parametrize(
    ("text", "sets"),
    [
        ("set 2", {1: 31, 2: 20}),
        ("2", {1: 31, 2: 20}),
        ("set 1", {1: 20}),
        ("skip", {1: 31}),
        ("not sure", {1: 31}),
        ("hm?", {1: 31}),
        ("1; DROP", {1: 31}),
    ],
)
def test_a_reply_to_which_set_is_read_as_words_and_never_as_a_button(text: str, sets: dict[int, int]) -> None:
    """Anything but a bare number of a set was a failure in mid-set: "Bands off, something went wrong"."""
    p = replies(asked_which(), text)
    assert p.sets() == sets
    assert p.said


def test_a_number_of_no_set_as_a_reply_is_another_count() -> None:
    p = replies(asked_which(), "16")
    assert p.sets() == {1: 31}
    assert "16" in p.heard


@pytest.mark.parametrize("text", ["9999", "9" * 5000, "t9"])
def test_a_reply_to_a_count_is_held_to_what_a_count_may_be(text: str) -> None:
    """A number typed as a reply was taken as if it stood on a button."""
    p = played().fits().types("done", 60)
    p.message += 1
    p.give(Said(p.now, text, "reps.1.1.0", p.message))
    assert p.sets() == {}
    assert p.said
    p.give(Said(p.now, "31", "reps.1.1.0", p.message + 1))
    assert p.sets() == {1: 31}


def two_sets_without_a_count() -> Played:
    """The count of set 1 was never said, and set 2 is done."""
    p = played().fits().types("done", 60).waits().types("done", 40)
    assert p.sets() == {}
    return p


def replies_to_set(p: Played, no: int, text: str) -> Played:
    """Typed as a reply to the question about that set's count."""
    p.message += 1
    return p.give(Said(p.now, text, f"reps.1.{no}.0", p.message))


def test_a_reply_to_an_earlier_count_is_that_set_s_and_not_the_one_asked_for_now() -> None:
    """A simulated month: "18" under set 2's question became set 3's count, whose own question was open."""
    p = replies_to_set(two_sets_without_a_count(), 1, "31")
    assert p.sets() == {1: 31}
    assert replies_to_set(p, 2, "16").sets() == {1: 31, 2: 16}


@pytest.mark.parametrize("said", ["lost count", "no idea"])
def test_lost_count_under_an_earlier_question_leaves_that_set_blank(said: str) -> None:
    p = replies_to_set(two_sets_without_a_count(), 1, said)
    p.give(Said(p.now, "blank", "reps.1.1.0"))
    assert p.types("16", 5).sets() == {2: 16}


def test_words_under_an_earlier_question_are_answered_and_change_nothing() -> None:
    p = replies_to_set(two_sets_without_a_count(), 1, "banana")
    assert p.said
    assert p.sets() == {}


def test_an_edit_of_the_message_that_said_a_count_first_changes_it_after_a_copy() -> None:
    """A simulated month: "16" came twice, and the edit of the first one changed what is stored but not the session."""
    p = two_sets_without_a_count()
    replies_to_set(p, 1, "31")
    first = p.message
    replies_to_set(p, 1, "31")
    p.give(Corrected(p.now, "29", first))
    assert p.sets() == {1: 29}
    assert p.heard == words.CHANGED.format(n=1, reps=29)


@pytest.mark.parametrize(("chosen", "sets"), [("1", {1: 20}), ("2", {1: 31, 2: 20})])
def test_which_set_may_still_be_said_when_the_next_one_was_done_meanwhile(
    chosen: str, sets: dict[int, int]
) -> None:
    """A simulated month: "Set 1" was tapped a second after "Set done" and was told that it is done already."""
    p = asked_which().waits().types("done", 40)
    p.taps(chosen, WHICH)
    assert p.sets() == sets


def test_a_copy_of_a_number_that_is_asked_about_is_no_count_of_the_set_done_meanwhile() -> None:
    """A simulated month: "16" came twice, "Set done" between the two, and the second became set 3's count."""
    p = played().fits().types("done", 60).waits().types("16", 20)
    assert p.heard == words.WHICH_MISSING.format(reps=16, last=1, next=2)
    p.types("done", 0).types("16", 1)
    assert p.sets() == {}
    assert p.heard == words.ALREADY_READ.format(reps=16)
    p.taps("1", "which.1.1.16")
    assert p.sets() == {1: 16}
