"""Stretches of days, and the dialogues of a coach that ask for them."""

from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations import day_spans
from conversations.client import travelling
from conversations.coach import covering, pausing, writing
from conversations.protocol import Do, Opened, Record, Relay, Said, Say
from core.calendar.recurrence import Span
from core.facts import Paused, StandIn, Travelling

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)  # a Monday
ZONE = "Europe/Lisbon"


def span(first: str, last: str) -> Span:
    return Span(date.fromisoformat(f"2026-{first}"), date.fromisoformat(f"2026-{last}"))


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("one week", span("03-02", "03-08")),
        ("two weeks", span("03-02", "03-15")),
        ("until friday", span("03-02", "03-06")),
        ("from 5 march to 11 march", span("03-05", "03-11")),
        ("next week", span("03-09", "03-15")),
        ("friday", span("03-06", "03-06")),
        ("3 april", span("04-03", "04-03")),
    ],
)
def test_days_as_a_coach_types_them(said: str, meant: Span) -> None:
    assert day_spans.read_spans(said, NOW, ZONE) == (meant,)


@pytest.mark.parametrize("said", ["soon", "", "31", "yes", "until 3 march 2028", "x" * 300])
def test_what_means_no_days_is_no_span(said: str) -> None:
    assert day_spans.read_spans(said, NOW, ZONE) == ()


@given(
    st.dates(date(2026, 1, 1), date(2027, 1, 1)), st.integers(0, 60), st.sampled_from([ZONE, "Asia/Tokyo"])
)
def test_a_span_survives_its_text_and_ends_after_its_last_day(first: date, days: int, zone: str) -> None:
    one = Span(first, first + timedelta(days=days))
    assert day_spans.from_text(day_spans.to_text(one)) == one
    length = day_spans.ends(one, zone) - day_spans.begins(one, zone)
    assert abs(length - timedelta(days=days + 1)) <= timedelta(hours=1)  # the clocks may change in it


def play(dialogue: Any, brief: Any, *texts: str) -> tuple[list[Say], list[Any]]:
    turn = dialogue.advance(None, Opened(NOW, brief), NOW)
    says, effects = list(turn.replies), list(turn.effects)
    for text in texts:
        turn = dialogue.advance(turn.state, Said(NOW, text), NOW)
        says, effects = [*says, *turn.replies], [*effects, *turn.effects]
    return says, effects


def facts_of(effects: list[Any], kind: type[Any]) -> list[Any]:
    return [one.fact for one in effects if isinstance(one, Record) and isinstance(one.fact, kind)]


RUTA = pausing.Brief(5, "Ruta", 1, ZONE)


def test_a_pause_from_today_begins_now_and_ends_after_its_last_day() -> None:
    _, effects = play(pausing.DIALOGUE, RUTA, "one week", "a holiday")
    [pause] = facts_of(effects, Paused)
    assert (pause.since, pause.until, pause.why) == (NOW, datetime(2026, 3, 9, tzinfo=UTC), "a holiday")
    assert Do("paused", {"client": 5}) in effects


def test_two_readings_of_the_days_are_asked_back_with_their_dates() -> None:
    says, _ = play(pausing.DIALOGUE, RUTA, "3/4 to 10/4")
    assert len(says[-1].choices) > 1
    _, effects = play(pausing.DIALOGUE, RUTA, "3/4 to 10/4", says[-1].choices[0].value, "No reason")
    [pause] = facts_of(effects, Paused)
    assert (pause.since.date(), pause.why) == (
        date(2026, 4, 2),
        "",
    )  # midnight in Lisbon's summer is 23:00 UTC


def test_days_that_nobody_understands_are_asked_again() -> None:
    says, effects = play(pausing.DIALOGUE, RUTA, "soon")
    assert "Which days?" in says[-1].text
    assert not effects


def test_a_stand_in_is_named_with_dates() -> None:
    brief = covering.Brief((("2", "Otto"), ("3", "Kai")), ZONE)
    says, effects = play(covering.DIALOGUE, brief, "kai", "from 5 march to 11 march")
    [fact] = facts_of(effects, StandIn)
    assert (fact.stand_in, fact.since, fact.until) == (
        3, datetime(2026, 3, 5, tzinfo=UTC), datetime(2026, 3, 12, tzinfo=UTC),
    )  # fmt: skip
    assert "Kai stands in for you" in says[-1].text


def test_travel_says_what_becomes_of_each_movement() -> None:
    swaps = (("goblet_squat", "chair_squat"), ("walk", "walk"), ("one_arm_row", ""))
    brief = travelling.Brief(5, "Ruta", 1, False, swaps, ZONE)
    says, effects = play(travelling.DIALOGUE, brief, "two weeks")
    assert "goblet squat becomes chair squat, one-arm row rests." in says[0].text
    [fact] = facts_of(effects, Travelling)
    assert (fact.since, fact.by) == (NOW, 5)


def test_words_go_out_as_they_were_typed() -> None:
    _, effects = play(writing.DIALOGUE, writing.Brief(5, "Ruta"), "  ", " slower down ")
    assert effects == [Relay("slower down", 5)]


def test_a_day_at_until_when_may_be_the_last_of_the_pause_or_all_of_it() -> None:
    says, effects = play(pausing.DIALOGUE, pausing.Brief(5, "Ruta", 1, ZONE), "friday")
    assert [one.label for one in says[-1].choices] == [
        "Monday 2 March 2026 to Friday 6 March 2026",
        "Friday 6 March 2026",
    ]
    assert effects == []
    _, effects = play(
        pausing.DIALOGUE, pausing.Brief(5, "Ruta", 1, ZONE), "friday", says[-1].choices[0].value, "ill"
    )
    [paused] = [one.fact for one in effects if isinstance(one, Record) and isinstance(one.fact, Paused)]
    assert paused.since == NOW
    assert paused.until == datetime(2026, 3, 7, tzinfo=UTC)


def test_a_pause_of_today_only_is_not_asked_about() -> None:
    says, _ = play(pausing.DIALOGUE, pausing.Brief(5, "Ruta", 1, ZONE), "today")
    assert says[-1].text.startswith("Why?")
