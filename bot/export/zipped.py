"""A coach's export as one ZIP: made when it goes out, from a copy of the database, in a process of its own."""

import io
import zipfile
from collections.abc import Sequence
from datetime import datetime
from pathlib import Path
from typing import Any

from bot.database.opened import reading
from bot.engine import Engine, gate
from bot.export import NOBODY, TOO_LARGE, sheets
from bot.export.sheets import Sheet
from core.access import Action
from core.calendar.zones import local
from core.store import people
from core.store.people import Person, Role

MOST = 49_000_000  # bytes; a bot may send 50 MB: https://core.telegram.org/bots/api#senddocument
FOR_ITS_OWNER = 0o600 << 16  # the rights of an unpacked file


def made(wanted: dict[str, Any]) -> bytes:
    """The ZIP of the clients that were asked for, or why there is none. Raises `Wrong`, sqlite3.Error."""
    now = datetime.fromisoformat(wanted["now"])
    with reading(Path(wanted["db"])) as engine:
        engine.clock = lambda: now
        coach = people.by_id(engine.store, wanted["coach"])
        asked = datetime.fromisoformat(wanted["asked"])
        clients = [one for one in _found(engine, wanted["clients"], asked) if _may(engine, coach, one)]
        return packed(sheets.of_clients(engine.store, clients), local(now, coach.zone)) if clients else NOBODY


def _found(engine: Engine, numbers: list[int], asked: datetime) -> list[Person]:
    """Who was meant: after an erasure a later client may have the same number."""
    found = [people.find(engine.store, number) for number in numbers]
    return [one for one in found if one is not None and one.role is Role.CLIENT and one.joined <= asked]


def _may(engine: Engine, coach: Person, client: Person) -> bool:
    """Asked again: a stand-in may have ended, or a client been handed over, since the coach tapped."""
    return gate.allows(engine, coach, Action.EXPORT, coach) and gate.allows(
        engine, coach, Action.SEE_CLIENT, client
    )


def packed(made_of: Sequence[Sheet], at: datetime) -> bytes:
    """The tables in one ZIP, unless it grows larger than a chat takes; `at`: the time on its files."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for sheet in made_of:
            _add(archive, sheet, at)
            if out.tell() > MOST:
                return TOO_LARGE
    return out.getvalue() if len(out.getbuffer()) <= MOST else TOO_LARGE


def _add(archive: zipfile.ZipFile, sheet: Sheet, at: datetime) -> None:
    about = zipfile.ZipInfo(f"{sheet.name}.csv", at.timetuple()[:6])
    about.compress_type, about.external_attr = zipfile.ZIP_DEFLATED, FOR_ITS_OWNER
    with (
        archive.open(about, "w", force_zip64=True) as raw,
        io.TextIOWrapper(raw, encoding=sheets.ENCODING, newline="") as out,
    ):
        sheets.write(sheet, out)
