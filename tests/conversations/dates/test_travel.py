"""Where somebody is: places with and without a stretch of dates."""

from datetime import UTC, date, datetime

import pytest

from conversations.dates.travel import Travel, read_travel
from core.calendar.recurrence import Span

NOW = datetime(2026, 11, 25, 10, tzinfo=UTC)  # a Wednesday
LISBON = "Europe/Lisbon"
NEXT_WEEK = Span(date(2026, 11, 30), date(2026, 12, 6))


@pytest.mark.parametrize(
    ("text", "zone", "span"),
    [
        ("I am in Lisbon next week", LISBON, NEXT_WEEK),
        ("I'm in Tokyo next week.", "Asia/Tokyo", NEXT_WEEK),
        (
            "flying to New York from 3 to 10 jan",
            "America/New_York",
            Span(date(2027, 1, 3), date(2027, 1, 10)),
        ),
        ("travelling to Tokyo until friday", "Asia/Tokyo", Span(date(2026, 11, 25), date(2026, 11, 27))),
        (
            "I will be in São Paulo for two weeks",
            "America/Sao_Paulo",
            Span(date(2026, 11, 25), date(2026, 12, 8)),
        ),
        ("in Madrid now", "Europe/Madrid", None),
        ("i am back in Helsinki", "Europe/Helsinki", None),
        ("moved to Berlin", "Europe/Berlin", None),
        ("I am in Europe/Paris", "Europe/Paris", None),
    ],
)
def test_a_place_and_when(text: str, zone: str, span: Span | None) -> None:
    assert read_travel(text, NOW, LISBON) == (Travel(zone, span),)


@pytest.mark.parametrize(
    "text",
    ["I am in pain", "in 20 minutes", "I am in bed", "move thursday to friday", "in a week", "I am in two minds",
     "to Ruta: well done", "Lisbon", "I am in", "I went to the gym in Lisbon yesterday", "x" * 300],
)  # fmt: skip
def test_what_is_no_place(text: str) -> None:
    assert read_travel(text, NOW, LISBON) == ()


def test_a_name_that_places_share_has_several_readings() -> None:
    assert [one.zone for one in read_travel("I am in Birmingham", NOW, LISBON)] == [
        "Europe/London",
        "America/Chicago",
    ]


def test_a_naive_time_is_refused() -> None:
    with pytest.raises(ValueError, match="without a zone"):
        read_travel("in Lisbon", datetime.combine(date(2026, 1, 1), datetime.min.time()), LISBON)
