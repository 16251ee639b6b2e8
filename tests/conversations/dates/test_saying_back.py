"""What was understood is said back with weekday, date, time and zone."""

from dataclasses import replace
from datetime import date, time

import pytest

from conversations.dates import (
    Ambiguous,
    ClockFace,
    DayOrder,
    NotUnderstood,
    OneTime,
    Problem,
    Repeat,
    Understood,
    read,
)
from conversations.words.dates import clock_time, not_understood, say_back, which_of
from core.calendar.zones import instant

LISBON = "Europe/Lisbon"
NOW = instant(date(2026, 11, 25), time(10), LISBON)  # a Wednesday
DMY, MDY = DayOrder.DAY_FIRST, DayOrder.MONTH_FIRST
H12, H24 = ClockFace.H12, ClockFace.H24


def understood(text: str, face: ClockFace = H24) -> Understood:
    reading = read(text, NOW, LISBON, DMY, face)
    assert not isinstance(reading, Ambiguous | NotUnderstood), text
    return reading


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("tomorrow 7pm", "Thursday 26 November 2026, 19:00 (Lisbon time)"),
        (
            "mon and thu 7pm",
            "Every Monday and Thursday at 19:00 (Lisbon time), from Thursday 26 November 2026",
        ),
        (
            "every other sat 9am for 6 weeks",
            "Every other Saturday at 09:00 (Lisbon time), from Saturday 28 November 2026"
            " to Friday 8 January 2027",
        ),
        (
            "every 3 weeks on mon, wed and fri 9am",
            "Every 3 weeks on Monday, Wednesday and Friday at 09:00 (Lisbon time),"
            " from Friday 27 November 2026",
        ),
        ("every day 9am", "Every day at 09:00 (Lisbon time), from Thursday 26 November 2026"),
        (
            "mon 7pm and thu 6am",
            "Every Monday at 19:00 and Thursday at 06:00 (Lisbon time), from Thursday 26 November 2026",
        ),
        ("skip this week", "No training: Wednesday 25 November 2026 to Sunday 29 November 2026"),
        ("skip tomorrow", "No training: Thursday 26 November 2026"),
        (
            "move thursday to friday same time",
            "The session of Thursday 26 November 2026 moves to Friday 27 November 2026, same time",
        ),
        (
            "move it to friday 6pm",
            "The next session moves to Friday 27 November 2026, at 18:00 (Lisbon time)",
        ),
        ("move it to 6pm", "The next session stays on its day, at 18:00 (Lisbon time)"),
        ("in 20 minutes", "In 20 minutes"),
        ("in 1 minute", "In 1 minute"),
        ("in 90 minutes", "In 1 hour 30 minutes"),
        ("in 2 hours", "In 2 hours"),
        ("not today", "Not today"),
        ("from 3 jan for 6 weeks", "Sunday 3 January 2027 to Saturday 13 February 2027"),
    ],
)
def test_every_kind_of_reading_is_said_in_full(text: str, said: str) -> None:
    assert say_back(understood(text), LISBON, H24, DMY) == said


def test_the_clients_own_way_of_writing_is_used() -> None:
    assert say_back(understood("tomorrow 7pm"), LISBON, H12, MDY) == (
        "Thursday, November 26, 2026, 7:00 pm (Lisbon time)"
    )


@pytest.mark.parametrize(
    ("at", "said"),
    [
        (time(0), "midnight"),
        (time(0, 1), "12:01 am"),
        (time(11, 59), "11:59 am"),
        (time(12), "noon"),
        (time(12, 1), "12:01 pm"),
        (time(13), "1:00 pm"),
        (time(23, 59), "11:59 pm"),
    ],
)
def test_a_twelve_hour_clock_has_no_twelve_of_two_meanings(at: time, said: str) -> None:
    assert clock_time(at, H12) == said


def test_two_readings_are_asked_back_with_their_dates() -> None:
    reading = read("next friday 7pm", NOW, LISBON, DMY, H24)
    assert isinstance(reading, Ambiguous)
    assert which_of(reading, LISBON, H24, DMY) == (
        "Friday 27 November 2026, 19:00 (Lisbon time)",
        "Friday 4 December 2026, 19:00 (Lisbon time)",
    )


def test_a_time_that_the_clocks_leave_out_is_said_as_it_will_be() -> None:
    # Lisbon, 28 March 2027: from 01:00 the clocks go to 02:00.
    before = instant(date(2027, 3, 27), time(10), LISBON)
    reading = read("tomorrow 1:30", before, LISBON, DMY, H24)
    assert isinstance(reading, OneTime)
    assert say_back(reading, LISBON) == "Sunday 28 March 2027, 02:30 (Lisbon time)"


def test_a_repeat_in_another_zone_is_said_in_that_zone() -> None:
    reading = understood("mon 7pm and thu 7pm")
    assert isinstance(reading, Repeat)
    tokyo = Repeat(replace(reading.recurrence, zone="Asia/Tokyo"))
    assert "(Tokyo time)" in say_back(tokyo, LISBON)


@pytest.mark.parametrize("problem", list(Problem))
def test_every_problem_has_a_kind_question(problem: Problem) -> None:
    assert not_understood(NotUnderstood(problem)).endswith((".", "?"))
