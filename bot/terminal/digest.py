"""`cuffline digest`: a coach's week as text, picture or JSON."""

import argparse
import json
import re
from datetime import date, datetime, time, timedelta
from pathlib import Path
from typing import Any

import msgspec

from bot.clocks.clock import Clock
from bot.config import Wrong
from bot.database.opened import reading
from bot.engine import Engine
from bot.engine.numbers import weeks
from core.calendar.zones import instant, local
from core.store import people, tables
from core.store.people import Person

FIRST_YEAR = 1971  # times are milliseconds since 1970, and weeks before are looked at


WEEK = re.compile(r"([0-9]{4})-?W([0-9]{1,2})", re.IGNORECASE)


def main(options: argparse.Namespace) -> int:
    """Print it for each coach (or the one named), or draw it."""
    if options.json and options.output is not None:
        raise Wrong(["--json and -o: one of the two"])
    with reading(options.db) as engine:
        coaches = _coaches(engine, options.coach)
        ends = [_end(options.week, coach, Clock().now()) for coach in coaches]
        tables.rewind(engine.store, max(ends))
        found = list(zip(coaches, ends, strict=True))
        if options.output is not None:
            return _draw(engine, found, options.output)
        if options.json:
            print(json.dumps([_data(engine, *one) for one in found], indent=2, ensure_ascii=False))
        else:
            print("\n\n".join(_text(engine, *one, alone=len(found) == 1) for one in found))
    return 0


def _coaches(engine: Engine, named: str | None) -> list[Person]:
    everybody = people.coaches(engine.store)
    fitting = [one for one in everybody if named is None or named in (str(one.chat), one.name)]
    if not fitting:
        known = ", ".join(f"{one.name} ({one.chat})" for one in everybody) or "none"
        raise Wrong([f"--coach: there is no {named}; known: {known}" if named else "there is no coach yet"])
    return fitting


def _end(week: str | None, coach: Person, now: datetime) -> datetime:
    """Monday 0:00 after the week, by the coach's clock; the last whole week unless one is named."""
    today = local(now, coach.zone).date()
    monday = today - timedelta(days=today.weekday() + 7) if week is None else _monday(week)
    if monday > today:
        raise Wrong([f"--week: {week!r} has not begun yet"])
    return min(instant(monday + timedelta(days=7), time(0), coach.zone), now)


def _monday(week: str) -> date:
    found = WEEK.fullmatch(week.strip())
    try:
        monday = date.fromisocalendar(int(found[1]) if found else 0, int(found[2]) if found else 0, 1)
    except ValueError:  # no such year has a week of this number, or nothing of the kind was typed
        raise Wrong([f"--week: {week!r} is no week; write it like 2026-W05 (ISO 8601)"]) from None
    if monday.year < FIRST_YEAR:
        raise Wrong([f"--week: {week!r} is too long ago"])
    return monday


def _text(engine: Engine, coach: Person, end: datetime, *, alone: bool) -> str:
    text, _, _ = weeks.digest_of(engine, coach, end)
    return text if alone else f"{coach.name} ({coach.chat})\n{text}"


def _data(engine: Engine, coach: Person, end: datetime) -> dict[str, Any]:
    """`needs_you`: by urgency, each with the person's number and the reasons by their stored names."""
    made = weeks.week_of_practice(engine, coach, end)
    needing = [{"client": one.client, "name": one.name, "why": why} for one, why in made.needs_you]
    found = msgspec.to_builtins({"needs_you": needing, "clients": made.weeks})
    return {"coach": coach.name, "until": end.isoformat(), **found}


def _draw(engine: Engine, found: list[tuple[Person, datetime]], file: Path) -> int:
    from bot.making.charts import weekly_chart

    if file.suffix.lower() != ".png":
        raise Wrong([f"-o: {file} must end in .png"])
    if len(found) > 1:
        raise Wrong(["-o: there are several coaches; say whose picture with --coach"])
    _, _, chart = weeks.digest_of(engine, *found[0])
    if not chart:
        raise Wrong([f"{file}: there is nothing to draw; no set has been done in these weeks"])
    try:
        file.write_bytes(weekly_chart(chart))
    except OSError as problem:
        raise Wrong([f"{file}: {problem.strerror}"]) from None
    return 0
