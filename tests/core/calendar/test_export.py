"""Calendar entries say the same as the occurrences, by an independent reading of their rules."""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from dateutil import rrule

from core.calendar.export import Entry, entries
from core.calendar.occurrences import occurrences_between
from core.calendar.recurrence import Once, Recurrence, Slot, Weekday, move, skip, weekly

LISBON = "Europe/Lisbon"
MON, THU = Weekday.MON, Weekday.THU
NAMES = {"MO": rrule.MO, "TH": rrule.TH}


def clock(month: int, day: int, hour: int) -> datetime:
    return datetime.combine(date(2026, month, day), time(hour))


def test_a_single_time_is_one_entry_without_a_rule() -> None:
    assert entries(Once(clock(7, 1, 7), LISBON), 40) == (Entry(0, clock(7, 1, 7), LISBON, 40, {}),)


def test_a_series_starts_on_its_first_occurrence_and_ends_on_its_last() -> None:
    [entry] = entries(weekly((MON, THU), time(19), LISBON, date(2026, 7, 7), every=2, weeks=6), 40)
    assert entry.start == clock(7, 9, 19)
    assert entry.rule == {
        "FREQ": "WEEKLY",
        "INTERVAL": 2,
        "BYDAY": ["MO", "TH"],
        "WKST": "MO",
        "UNTIL": datetime(2026, 8, 17, 18, tzinfo=UTC),
    }


def test_skipped_and_moved_sessions_become_exceptions() -> None:
    plain = weekly((MON, THU), time(19), LISBON, date(2026, 7, 6))
    changed = move(skip(plain, date(2026, 7, 13), date(2026, 7, 15)), date(2026, 7, 9), clock(7, 10, 8))
    main, moved = entries(changed, 40)
    assert main.without == (clock(7, 13, 19),)
    assert (moved.start, moved.instead_of, moved.series) == (clock(7, 10, 8), clock(7, 9, 19), main.series)


def test_two_times_of_day_are_two_series() -> None:
    both = Recurrence((Slot(MON, time(19)), Slot(THU, time(6))), LISBON, date(2026, 7, 6))
    assert [(entry.series, entry.start) for entry in entries(both, 40)] == [
        (0, clock(7, 9, 6)),
        (1, clock(7, 6, 19)),
    ]


def test_the_entries_read_by_dateutil_give_the_occurrences() -> None:
    plain = Recurrence((Slot(MON, time(19)), Slot(THU, time(6))), LISBON, date(2026, 2, 3), every=2)
    changed = move(skip(plain, date(2026, 3, 1), date(2026, 3, 20)), date(2026, 4, 2), clock(4, 3, 8))
    end = datetime(2026, 12, 1, tzinfo=UTC)
    found = sorted(
        at for entry in entries(changed, 40) for at in _read(entry, entries(changed, 40)) if at < end
    )
    expected = occurrences_between(changed, datetime(2026, 1, 1, tzinfo=UTC), end)
    assert found == [one.at for one in expected]


def _read(entry: Entry, every: tuple[Entry, ...]) -> list[datetime]:
    zone = ZoneInfo(entry.zone)
    if not entry.rule:
        return [entry.start.replace(tzinfo=zone).astimezone(UTC)]
    days = entry.rule["BYDAY"]
    assert isinstance(days, list)
    rule = rrule.rrule(
        rrule.WEEKLY,
        dtstart=entry.start,
        interval=2,
        wkst=rrule.MO,
        byweekday=[NAMES[day] for day in days],
        until=entry.start + timedelta(days=400),
    )
    moved = {other.instead_of for other in every}
    kept = [at for at in rule if at not in entry.without and at not in moved]
    return [at.replace(tzinfo=zone).astimezone(UTC) for at in kept]
