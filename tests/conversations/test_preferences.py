"""A person's own settings, played as scripts."""

from datetime import UTC, datetime

import msgspec
import pytest

from conversations.answers import Unclear
from conversations.client import preferences
from conversations.client.preferences import Brief, quiet_hours
from conversations.protocol import Do, Effect, Opened, Record, Said, Say
from core.facts import Detail

NOW = datetime(2026, 1, 5, 10, tzinfo=UTC)


def play(brief: Brief, *texts: str) -> tuple[list[Say], list[Effect], bool]:
    """What was said and done, and whether it is over; states go through their stored form."""
    turn = preferences.DIALOGUE.advance(None, Opened(NOW, brief), NOW)
    said, effects = list(turn.replies), list(turn.effects)
    for text in texts:
        assert turn.state is not None, f"over before {text!r}"
        state = msgspec.json.decode(msgspec.json.encode(turn.state), type=preferences.DIALOGUE.state)
        turn = preferences.DIALOGUE.advance(state, Said(NOW, text), NOW)
        said += turn.replies
        effects += turn.effects
    return said, effects, turn.state is None


def test_the_settings_as_they_are_stand_above_the_question() -> None:
    said, _, _ = play(Brief(quiet_hours="22:30-06:00"))
    assert said[0].text.splitlines() == [
        "Reminder: At its time.",
        "Quiet hours: 22:30 to 06:00.",
        "Dates: not said yet.",
        "Clock: 19:00.",
        "What shall change?",
    ]
    assert "Reminder" not in play(Brief(by_coach=True))[0][0].text


@pytest.mark.parametrize(
    ("what", "typed", "name", "value"),
    [
        ("Reminder", "30 min before", "remind_before", "30"),
        ("Reminder", "45 minutes", "remind_before", "45"),
        ("Reminder", "At its time", "remind_before", "0"),
        ("Quiet hours", "No quiet hours", "quiet_hours", "00:00-00:00"),
        ("quiet", "10pm to 7am", "quiet_hours", "22:00-07:00"),
        ("Dates", "3/4 is 3 April", "date_order", "dd/mm"),
        ("Clock", "7:00 pm", "clock_face", "12"),
    ],
)
def test_one_setting_is_stored_and_said_back(what: str, typed: str, name: str, value: str) -> None:
    said, effects, over = play(Brief(), what, typed)
    assert over
    assert effects == [Record(Detail(NOW, name, value)), Do("settings_changed")]
    assert said[-1].text.startswith("Noted. ")


def test_all_is_well_changes_nothing() -> None:
    _, effects, over = play(Brief(), "All is well")
    assert over
    assert effects == []


@pytest.mark.parametrize(
    ("text", "stored"),
    [
        ("22:00 to 6:30", "22:00-06:30"),
        ("21-7", "21:00-07:00"),
        ("from 9pm until 12am", "21:00-00:00"),
        ("12pm-1pm", "12:00-13:00"),
    ],
)
def test_quiet_hours_in_plain_words(text: str, stored: str) -> None:
    assert quiet_hours(text) == stored


@pytest.mark.parametrize("text", ["25:61 to 7", "always", "22", "22:00 to"])
def test_what_is_no_stretch_of_hours_is_asked_again(text: str) -> None:
    with pytest.raises(Unclear):
        quiet_hours(text)


@pytest.mark.parametrize(("minutes", "taken"), [("180", True), ("181", False)])
def test_a_reminder_is_at_most_three_hours_ahead(minutes: str, taken: bool) -> None:
    assert play(Brief(), "Reminder", minutes)[2] is taken
