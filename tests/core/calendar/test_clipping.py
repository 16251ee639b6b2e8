"""Days cut at instants: nothing is lost, nothing doubled, and the rhythm of other weeks stays."""

from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calendar.changing import added, left_out, on_date, shifted
from core.calendar.clipping import within
from core.calendar.occurrences import occurrences_between
from core.calendar.recurrence import Once, Recurrence, Slot, Span, Weekday, When, weekly

EPOCH = datetime(2026, 1, 1, tzinfo=UTC)
FAR = EPOCH + timedelta(days=500)
ZONES = st.sampled_from(
    ("Europe/Lisbon", "Asia/Tokyo", "America/New_York", "Pacific/Apia", "Australia/Lord_Howe")
)
INSTANTS = st.builds(lambda hours: EPOCH + timedelta(hours=hours), st.integers(-100, 24 * 300))


def starts(when: When | None, begin: datetime = EPOCH, end: datetime = FAR) -> list[datetime]:
    return [] if when is None else [one.at for one in occurrences_between(when, begin, end)]


@st.composite
def days(draw: st.DrawFn) -> When:
    """Weekly days with a moved, an extra and a left-out session, or one single session."""
    zone = draw(ZONES)
    weekdays = draw(st.lists(st.sampled_from(tuple(Weekday)), min_size=1, max_size=3, unique=True))
    slots = tuple(Slot(day, time(draw(st.integers(0, 23)))) for day in weekdays)
    until = draw(st.none() | st.dates(date(2026, 2, 1), date(2026, 12, 1)))
    when: When | None = Recurrence(slots, zone, date(2026, 1, 7), draw(st.integers(1, 3)), until)
    at = draw(st.dates(date(2026, 1, 10), date(2026, 6, 1)))
    assert when is not None
    when = left_out(when, Span(at, at + timedelta(days=draw(st.integers(0, 20)))))
    assert when is not None
    for one in occurrences_between(when, EPOCH, FAR)[: draw(st.integers(0, 3))]:
        when = shifted(
            when, one, datetime.combine(draw(st.dates(date(2026, 1, 10), date(2026, 6, 1))), time(5, 30))
        )
    extra = draw(st.dates(date(2026, 1, 10), date(2026, 6, 1)))
    return when if on_date(when, extra) else added(when, datetime.combine(extra, time(9)), zone)


@given(days(), INSTANTS, INSTANTS)
def test_what_lies_between_two_instants_is_there_and_nothing_else(
    when: When, one: datetime, other: datetime
) -> None:
    begin, end = min(one, other), max(one, other)
    assert starts(within(when, begin, end)) == starts(when, max(begin, EPOCH), max(end, EPOCH))


@given(days(), st.lists(INSTANTS, max_size=4))
def test_the_pieces_together_are_the_whole(when: When, cuts: list[datetime]) -> None:
    bounds = [None, *sorted(cuts), None]
    pieces = [within(when, begin, end) for begin, end in pairwise(bounds)]
    assert sorted(at for piece in pieces for at in starts(piece)) == starts(when)


@pytest.mark.parametrize(("seconds", "there"), [(-1, False), (0, False), (1, True)])
def test_a_session_at_the_bound_belongs_to_what_comes_after(seconds: int, there: bool) -> None:
    when = weekly((Weekday.MON,), time(19), "UTC", date(2026, 1, 5))
    end = datetime(2026, 1, 5, 19, tzinfo=UTC) + timedelta(seconds=seconds)
    assert (within(when, None, end) is not None) is there
    assert (within(Once(datetime.combine(date(2026, 1, 5), time(19)), "UTC"), None, end) is not None) is there
