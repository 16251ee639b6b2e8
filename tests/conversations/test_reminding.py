"""The reminder and the day after a missed session, played as scripts."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import msgspec
import pytest

from conversations.protocol import Begin, Dialogue, Do, Effect, Opened, Record, Said, Say, Woke
from conversations.training import missed, reminding
from conversations.training.choosing_time import Brief, Draft
from conversations.words import dates as date_words
from conversations.words import reminding as words
from core.facts import Noticed

DUE = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)  # Monday, 18:00 in Lisbon
BRIEF = Brief("Knees", "2026-03-02", DUE, "Europe/Lisbon")


def play(dialogue: Dialogue[Any], brief: Brief, *texts: str) -> tuple[list[Say], list[Effect], bool]:
    """What was said and done, and whether it is over; states go through their stored form."""
    turn = dialogue.advance(None, Opened(DUE, brief), DUE)
    said, effects = list(turn.replies), list(turn.effects)
    for text in texts:
        assert turn.state is not None, f"over before {text!r}"
        state = msgspec.json.decode(msgspec.json.encode(turn.state), type=dialogue.state)
        turn = dialogue.advance(state, Said(DUE, text), DUE)
        said += turn.replies
        effects += turn.effects
    return said, effects, turn.state is None


def moved_to(effects: list[Effect]) -> datetime | None:
    """To when the session itself moves."""
    [act] = [effect for effect in effects if isinstance(effect, Do)]
    assert act.act == "session_moved"
    assert act.details["session_day"] == "2026-03-02"
    return datetime.fromisoformat(act.details["to"])


def comes_again_at(effects: list[Effect]) -> datetime | None:
    """When the reminder comes again."""
    [begin] = [effect for effect in effects if isinstance(effect, Begin)]
    assert begin.dialogue == "reminding"
    assert begin.about["again"] is True
    assert begin.at is not None
    assert begin.about["at"] == begin.at.isoformat()
    return begin.at


@pytest.mark.parametrize("typed", ["Start", "start", "yes", "go"])
def test_start_begins_the_questions_before(typed: str) -> None:
    said, effects, over = play(reminding.DIALOGUE, BRIEF, typed)
    assert over
    assert effects == [Begin("before")]
    assert said[0].text == "Time for Knees. Start when you're ready."


@pytest.mark.parametrize("typed", ["In 30 min", "later", "in half an hour"])
def test_half_an_hour_later_it_comes_again(typed: str) -> None:
    said, effects, _ = play(reminding.DIALOGUE, BRIEF, typed)
    assert comes_again_at(effects) == DUE + timedelta(minutes=30)
    assert "18:30 (Lisbon time)" in said[-1].text


def test_not_today_is_noticed_and_no_guilt() -> None:
    said, effects, _ = play(reminding.DIALOGUE, BRIEF, "Not today")
    assert effects == [Record(Noticed(DUE, "skipped", "2026-03-02"))]
    assert said[-1].text == words.SKIPPED


@pytest.mark.parametrize(
    ("typed", "at"),
    [
        ("19:30", DUE + timedelta(minutes=90)),
        ("in 2 hours", DUE + timedelta(hours=2)),
        ("tomorrow 7am", datetime(2026, 3, 3, 7, 0, tzinfo=UTC)),
        ("tomorrow same time", DUE + timedelta(days=1)),
    ],
)
def test_another_time_is_said_back_before_it_holds(typed: str, at: datetime) -> None:
    said, effects, over = play(reminding.DIALOGUE, BRIEF, "Other time", typed)
    assert not over
    assert not effects
    assert said[-1].text.endswith("(Lisbon time). Right?")
    assert moved_to(play(reminding.DIALOGUE, BRIEF, "Other time", typed, "Yes")[1]) == at


def test_a_time_typed_at_once_is_taken() -> None:
    assert moved_to(play(reminding.DIALOGUE, BRIEF, "in 20 minutes", "yes")[1]) == DUE + timedelta(minutes=20)


def test_a_wrong_reading_is_corrected_before_it_holds() -> None:
    said, effects, _ = play(reminding.DIALOGUE, BRIEF, "Other time", "19:30", "Another time")
    assert not effects
    assert said[-1].text == words.OTHER
    _, effects, _ = play(reminding.DIALOGUE, BRIEF, "Other time", "19:30", "no", "20:00", "yes")
    assert moved_to(effects) == DUE + timedelta(hours=2)


@pytest.mark.parametrize("typed", ["17:59", "whenever", "25:00", "mon and thu 7pm"])
def test_what_is_no_coming_time_is_asked_again(typed: str) -> None:
    said, effects, over = play(reminding.DIALOGUE, BRIEF, "Other time", typed)
    assert not over
    assert not effects
    right = said[-1].text.endswith("Right?")
    assert right or said[-1].text in date_words.NOT_UNDERSTOOD.values()


def test_two_readings_are_asked_back_and_the_tapped_one_holds() -> None:
    brief = replace(BRIEF, at=None)
    said, _, _ = play(reminding.DIALOGUE, brief, "Other time", "3/4 at 19:00")
    assert said[-1].text == date_words.WHICH_ONE
    assert [choice.value for choice in said[-1].choices] == ["0", "1", "another"]
    _, effects, _ = play(reminding.DIALOGUE, brief, "Other time", "3/4 at 19:00", "0")
    assert moved_to(effects) in (
        datetime(2026, 3, 4, 19, 0, tzinfo=UTC),
        datetime(2026, 4, 3, 18, 0, tzinfo=UTC),
    )


def test_one_gentle_repeat_after_45_minutes_and_missed_after_three_hours() -> None:
    advance = reminding.DIALOGUE.advance
    opened = advance(None, Opened(DUE, BRIEF), DUE)
    assert opened.wake_at == DUE + timedelta(minutes=45)
    again = advance(opened.state, Woke(DUE), DUE + timedelta(minutes=45))
    assert len(again.replies) == 2
    assert again.wake_at == DUE + timedelta(hours=3)
    missed_at = DUE + timedelta(hours=3)
    over = advance(again.state, Woke(DUE), missed_at)
    assert over.state is None
    assert over.effects[0] == Record(Noticed(missed_at, "missed", "2026-03-02"))
    assert isinstance(over.effects[1], Begin)
    assert (over.effects[1].dialogue, over.effects[1].at) == (
        "missed",
        datetime(2026, 3, 3, 10, 0, tzinfo=UTC),
    )


def test_a_late_evening_reminder_is_asked_about_the_very_next_morning() -> None:
    late = DUE + timedelta(hours=5)  # 23:00; it lapses after midnight
    outcome = reminding.lapsed(replace(BRIEF, at=late), Draft(), late + timedelta(hours=3))
    assert isinstance(outcome.effects[1], Begin)
    assert outcome.effects[1].at == datetime(2026, 3, 3, 10, 0, tzinfo=UTC)


def test_a_missed_session_is_done_now_moved_or_dropped() -> None:
    said, effects, _ = play(missed.DIALOGUE, BRIEF, "Now")
    assert said[0].text.startswith("Yesterday's Knees didn't happen; that's fine.")
    assert effects == [Begin("before")]
    assert moved_to(play(missed.DIALOGUE, BRIEF, "Move it", "tomorrow 7am", "yes")[1]) is not None
    said, effects, _ = play(missed.DIALOGUE, BRIEF, "Drop it")
    assert effects == [Record(Noticed(DUE, "dropped", "2026-03-02"))]
    assert said[-1].text == words.DROPPED


def test_a_missed_session_that_nobody_answers_for_is_dropped_quietly() -> None:
    opened = missed.DIALOGUE.advance(None, Opened(DUE, BRIEF), DUE)
    reminded = missed.DIALOGUE.advance(opened.state, Woke(DUE), DUE + timedelta(hours=4))
    over = missed.DIALOGUE.advance(reminded.state, Woke(DUE), DUE + timedelta(hours=10))
    assert over.state is None
    assert not over.replies
    assert over.effects == (Record(Noticed(DUE + timedelta(hours=10), "dropped", "2026-03-02")),)


AMERICAN = replace(BRIEF, clock_face="12", date_order="mm/dd")


def test_a_bare_hour_on_a_twelve_hour_clock_is_asked_back_with_both_times() -> None:
    said, effects, over = play(reminding.DIALOGUE, AMERICAN, "Other time", "tomorrow 6:30")
    assert [choice.label for choice in said[-1].choices] == [
        "Tuesday, March 3, 2026, 6:30 am (Lisbon time)",
        "Tuesday, March 3, 2026, 6:30 pm (Lisbon time)",
        words.RIGHT_NO,
    ]
    assert not effects
    assert not over


@pytest.mark.parametrize("dialogue", [reminding.DIALOGUE, missed.DIALOGUE])
def test_dates_are_read_as_the_client_writes_them(dialogue: Dialogue[Any]) -> None:
    said, _, _ = play(dialogue, AMERICAN, "3/4 7pm")
    assert "Wednesday, March 4, 2026, 7:00 pm" in said[-1].text
    said, _, _ = play(dialogue, replace(BRIEF, date_order="dd/mm"), "3/4 7pm")
    assert "Friday 3 April 2026, 19:00" in said[-1].text


@pytest.mark.parametrize("about", [{"ahead_min": 30}, {"late": True}])
def test_the_hour_in_the_reminder_is_written_as_the_client_writes_it(about: dict[str, Any]) -> None:
    said, _, _ = play(reminding.DIALOGUE, replace(AMERICAN, **about))
    assert "6:00 pm" in said[0].text


@pytest.mark.parametrize("said", ["not tonight", "can't today, sorry", "I have no time today", "skip today"])
def test_not_today_in_other_words_is_not_today(said: str) -> None:
    heard, effects, over = play(reminding.DIALOGUE, BRIEF, said)
    assert over
    assert heard[-1].text == words.SKIPPED
    assert effects == [Record(Noticed(DUE, "skipped", "2026-03-02"))]
    heard, effects, over = play(missed.DIALOGUE, BRIEF, said)
    assert over
    assert heard[-1].text == words.DROPPED
