"""Phrases against a table with a fixed now, and properties that hold for any phrase."""

from datetime import UTC, date, datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.answers.lexing import vocabulary
from conversations.dates import (
    Ambiguous,
    ClockFace,
    Dates,
    DayOrder,
    NotUnderstood,
    OneTime,
    Problem,
    Reading,
    Repeat,
    Skip,
    read,
)
from conversations.words.dates import clock_time, day
from core.calendar.occurrences import next_occurrence
from core.calendar.zones import instant, local
from tests.conversations.dates.notation import short
from tests.conversations.dates.phrases import DAY_FIRST_24H, MONTH_FIRST_12H

LISBON = "Europe/Lisbon"
NOW = instant(date(2026, 11, 25), time(10), LISBON)  # a Wednesday
DMY, MDY = DayOrder.DAY_FIRST, DayOrder.MONTH_FIRST
H12, H24 = ClockFace.H12, ClockFace.H24


def said(text: str, now: datetime = NOW, order: DayOrder | None = DMY, face: ClockFace = H24) -> str:
    return short(read(text, now, LISBON, order, face))


@pytest.mark.parametrize(("phrase", "meaning"), DAY_FIRST_24H)
def test_a_phrase_means_what_the_table_says(phrase: str, meaning: str) -> None:
    assert said(phrase) == meaning


@pytest.mark.parametrize(("phrase", "meaning"), MONTH_FIRST_12H)
def test_order_and_clock_face_change_the_meaning(phrase: str, meaning: str) -> None:
    assert said(phrase, order=MDY, face=H12) == meaning


def test_the_table_is_large_enough_and_names_no_phrase_twice() -> None:
    assert len({phrase for phrase, _ in DAY_FIRST_24H}) == len(DAY_FIRST_24H) >= 150


def test_an_unknown_order_gives_both_dates_unless_only_one_exists() -> None:
    assert said("3/4 7pm", order=None) == "once Thu 2027-03-04 19:00 | once Sat 2027-04-03 19:00"
    assert said("13/4 7pm", order=None) == "once Tue 2027-04-13 19:00"
    assert said("4/4 7pm", order=None) == "once Sun 2027-04-04 19:00"
    assert said("13/13 7pm", order=None) == "? no_such_date"


def test_a_stretch_is_written_one_way_round_from_end_to_end() -> None:
    april, march = "dates 2027-04-03..2027-04-05", "dates 2027-03-04..2027-05-04"
    assert said("3/4 to 5/4", order=None) == f"{april} | {march}"
    assert said("13/1 to 15/1", order=None) == "dates 2027-01-13..2027-01-15"
    assert said("13/13 to 14/14", order=None) == "? no_such_date"


WEDNESDAY_EVENING = instant(date(2026, 11, 25), time(20), LISBON)
SUNDAY = instant(date(2026, 11, 29), time(10), LISBON)
FRIDAY = instant(date(2026, 11, 27), time(10), LISBON)
NEW_YEARS_EVE = instant(date(2026, 12, 31), time(22), LISBON)
DAY_BEFORE_SPRING = instant(date(2027, 3, 27), time(10), LISBON)


@pytest.mark.parametrize(
    ("phrase", "now", "meaning"),
    [
        ("wed 7pm", WEDNESDAY_EVENING, "once Wed 2026-12-02 19:00"),
        ("wed 9pm", WEDNESDAY_EVENING, "once Wed 2026-11-25 21:00"),
        ("today 7pm", WEDNESDAY_EVENING, "? in_the_past"),
        ("today 8pm", WEDNESDAY_EVENING, "? in_the_past"),
        ("today 8:01pm", WEDNESDAY_EVENING, "once Wed 2026-11-25 20:01"),
        ("7pm", WEDNESDAY_EVENING, "once Thu 2026-11-26 19:00"),
        ("every wed 7pm", WEDNESDAY_EVENING, "repeat wed 19:00 from 2026-12-02"),
        ("every other wed 9pm", WEDNESDAY_EVENING, "repeat wed 21:00 every 2 from 2026-11-25"),
        ("skip this week", SUNDAY, "skip 2026-11-29..2026-11-29 | skip 2026-11-30..2026-12-06"),
        ("skip next week", SUNDAY, "skip 2026-11-30..2026-12-06"),
        ("next friday 7pm", SUNDAY, "once Fri 2026-12-04 19:00"),
        ("this weekend", SUNDAY, "dates 2026-11-29..2026-11-29"),
        ("next weekend", SUNDAY, "dates 2026-12-05..2026-12-06"),
        ("next friday 7pm", FRIDAY, "once Fri 2026-12-04 19:00"),
        ("1h", WEDNESDAY_EVENING, "in 60 min | once Thu 2026-11-26 01:00"),
        (
            "move monday to saturday",
            FRIDAY,
            "move 2026-11-30 to 2026-11-28 at same time | move 2026-11-30 to 2026-12-05 at same time",
        ),
        ("move thursday to friday", FRIDAY, "move 2026-12-03 to 2026-12-04 at same time"),
        ("tomorrow 7am", NEW_YEARS_EVE, "once Fri 2027-01-01 07:00"),
        ("2 jan 7am", NEW_YEARS_EVE, "once Sat 2027-01-02 07:00"),
        ("31 dec 7am", NEW_YEARS_EVE, "? in_the_past"),
        # Across the change of clocks it is seven on the clock, not 24 hours later.
        ("tomorrow 7am", DAY_BEFORE_SPRING, "once Sun 2027-03-28 07:00"),
    ],
)
def test_the_same_words_depend_on_the_moment(phrase: str, now: datetime, meaning: str) -> None:
    assert said(phrase, now) == meaning


def test_a_weekday_today_on_a_twelve_hour_clock_may_be_this_evening_or_next_weeks_morning() -> None:
    assert said("wed at 7", face=H12) == "once Wed 2026-11-25 19:00 | once Wed 2026-12-02 07:00"
    assert said("today at 7", face=H12) == "once Wed 2026-11-25 19:00"


def test_the_date_is_that_of_the_clients_zone() -> None:
    late = datetime(2026, 11, 25, 23, 30, tzinfo=UTC)
    assert short(read("tomorrow 7am", late, "Asia/Tokyo", DMY)) == "once Fri 2026-11-27 07:00"
    assert short(read("tomorrow 7am", late, "America/New_York", DMY)) == "once Thu 2026-11-26 07:00"


def test_the_usual_time_fills_what_was_not_said() -> None:
    usual = time(18, 30)
    assert short(read("tomorrow", NOW, LISBON, usual=usual)) == "once Thu 2026-11-26 18:30"
    assert (
        short(read("mon and thu", NOW, LISBON, usual=usual)) == "repeat mon 18:30 thu 18:30 from 2026-11-26"
    )
    assert short(read("sat same time", NOW, LISBON, usual=usual)) == "once Sat 2026-11-28 18:30"
    assert short(read("sat evening", NOW, LISBON, usual=usual)) == "once Sat 2026-11-28 18:30"
    assert short(read("sat morning", NOW, LISBON, usual=usual)) == "once Sat 2026-11-28 09:00"


@pytest.mark.parametrize(
    ("phrase", "wrong"),
    [
        # What dateparser 1.5 makes of these by itself; the own grammar has to come first.
        ("tomorrow at 7", "2026-11-26 10:00"),
        ("tonight at 8", "2026-11-25 10:00"),
        ("wed 7pm", "2026-12-02 19:00"),
        ("18h", "2026-11-26 04:00"),
        ("12", "2026-12"),
    ],
)
def test_known_mistakes_of_the_library_are_not_ours(phrase: str, wrong: str) -> None:
    assert wrong not in said(phrase)


def test_a_long_text_is_no_date() -> None:
    assert read("tomorrow 7pm " * 20, NOW, LISBON) == NotUnderstood(Problem.NO_IDEA)


def test_a_naive_now_and_an_unknown_zone_are_errors_of_the_caller() -> None:
    with pytest.raises(ValueError, match="at"):
        read("7pm", NOW.replace(tzinfo=None), LISBON)
    with pytest.raises(ValueError, match="zone"):
        read("7pm", NOW, "Europe/Atlantis")


DATES = st.dates(date(2026, 11, 26), date(2028, 11, 20))
TIMES = st.builds(time, st.integers(0, 23), st.integers(0, 59))


@given(DATES, TIMES, st.sampled_from(DayOrder))
def test_what_is_said_back_reads_as_the_same_moment(on: date, at: time, order: DayOrder) -> None:
    for face in ClockFace:
        hour = (
            f"{at:%H:%M}"
            if face is H24
            else f"{(at.hour - 1) % 12 + 1}:{at:%M} {'am' if at.hour < 12 else 'pm'}"
        )
        reading = read(f"{day(on, order)}, {hour}", NOW, LISBON, order, face)
        assert isinstance(reading, OneTime)
        assert reading.once.at == datetime.combine(on, at)
        assert clock_time(at, face) in (hour.lstrip("0") if face is H12 else hour, "noon", "midnight")


WORDS = vocabulary(
    "mon tuesday wed thursday fri sat sunday every other next this tomorrow today tonight at 7 7pm 18:30",
    "and to from until for six weeks 3 jan 31/2 29 feb skip move not in 20 minutes morning evening noon",
    "midnight week same time instead of no cancel half past quarter 12 0 24:00 -5 1e3 ２０",
    "hello , . the month",
)
PHRASES = st.lists(st.sampled_from(sorted(WORDS)), max_size=7).map(" ".join)


@given(PHRASES, st.sampled_from(ClockFace), st.sampled_from([DMY, MDY, None]))
def test_any_words_give_a_future_time_or_a_question(
    text: str, face: ClockFace, order: DayOrder | None
) -> None:
    for one in _all(read(text, NOW, LISBON, order, face)):
        match one:
            case OneTime(once):
                assert once.at > local(NOW, LISBON).replace(tzinfo=None)
            case Repeat(recurrence):
                assert recurrence.start >= date(2026, 11, 25)
                assert next_occurrence(recurrence, NOW) is not None or recurrence.until is not None
            case Skip(None):
                assert any(word in text for word in ("skip", "no", "cancel"))
            case Skip(span) | Dates(span):
                assert date(2026, 11, 25) <= span.first <= span.last
            case _:
                assert short(one)


def _all(reading: Reading) -> tuple[Reading, ...]:
    if isinstance(reading, Ambiguous):
        assert 2 <= len(reading.readings) <= 4
        return reading.readings
    return (reading,)


@given(st.text(max_size=40))
def test_any_text_at_all_is_answered(text: str) -> None:
    assert short(read(text, NOW, LISBON))


@given(st.text("0123456789/.-: apmhstjndec", max_size=14))
def test_any_figures_at_all_are_answered(text: str) -> None:
    for order in (DMY, MDY, None):
        assert short(read(text, NOW, LISBON, order, H12))


@given(st.integers(1, 24 * 60))
def test_any_delay_up_to_a_day_reads_back(minutes: int) -> None:
    hours, rest = divmod(minutes, 60)
    assert said(f"in {minutes} minutes") == f"in {minutes} min"
    if hours:
        assert said(f"in {hours} hours {rest} minutes") == f"in {minutes} min"


@given(st.integers(1, 50), st.sampled_from(["mon", "thu", "sun"]))
def test_so_many_weeks_hold_so_many_sessions(weeks: int, name: str) -> None:
    reading = read(f"every {name} 7pm for {weeks} weeks", NOW, LISBON)
    assert isinstance(reading, Repeat)
    at, count = NOW - timedelta(days=1), 0
    while (following := next_occurrence(reading.recurrence, at)) is not None:
        at, count = following.at, count + 1
    assert count == weeks
