"""Whether both bands are off, as people say it."""

import pytest

from conversations.answers.taken_off import Off, taken_off

SAID = {
    Off.BOTH: [
        "off", "Off!", "bands off", "they're off", "they are off now thanks", "both off", "done, off", "ok, off",
        "took them off", "I took them off", "all off", "yes off", "both removed", "the other one is off too",
        "left off right off", "not on yet", "they were never on", "they are not on", "off now", "bands are off", "taken off",
        "dozed off in the chair, they are off now", "I nodded off but I took them off",
    ],
    Off.PERHAPS: ["ok", "OK", "okay.", "yes", "done", "Done!", "👍", "👍🏽", "both", "k", "yep"],
    Off.ONE: ["one is off", "left off", "the right one is off", "one off", "1 off", "first one off"],
    Off.NOT_YET: [
        "not off", "not yet", "wait", "taking them off", "no", "no they are not off", "can't get it off",
        "almost off", "how do I get it off?", "off?", "trying to get it off",
    ],
    Off.STAYS_ON: [
        "still on", "one is off, one on", "one off one on", "they are on", "left is still on", "bands on",
        "it's still on",
    ],
    Off.NOT_ABOUT_IT: ["31", "no, 30", "set 1 was 30", "hmm", "", "31 16 8", "lost count", "good set",
        "oh dear I dozed off", "sorry, I nodded off", "I must have dropped off", "the alarm went off", "my phone was off",
        "I was cut off", "I am off to bed", "my daughter got me off the sofa",
    ],
}  # fmt: skip


@pytest.mark.parametrize(("off", "text"), [(off, text) for off, texts in SAID.items() for text in texts])
def test_only_words_that_say_so_are_off(off: Off, text: str) -> None:
    assert taken_off(text, asked=False) is off


@pytest.mark.parametrize(
    ("text", "off"),
    [("yes", Off.BOTH), ("yep", Off.BOTH), ("both", Off.BOTH), ("ok", Off.PERHAPS), ("👍", Off.PERHAPS)],
)
def test_to_the_question_whether_both_are_off_a_yes_is_off_and_an_ok_is_not(text: str, off: Off) -> None:
    assert taken_off(text, asked=True) is off


@pytest.mark.parametrize("text", ["they are on the table", "it's on my desk"])
def test_bands_that_lie_somewhere_are_not_on(text: str) -> None:
    assert taken_off(text, asked=False) is not Off.STAYS_ON
