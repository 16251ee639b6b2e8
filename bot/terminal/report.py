"""`cuffline report`: one client's report as a page, as sentences or as JSON."""

import argparse
import json
import sys
from pathlib import Path
from typing import Any

import msgspec

from bot.clocks.clock import Clock
from bot.config import Wrong
from bot.database.opened import reading
from bot.engine import Engine
from bot.engine.numbers import reports
from bot.making import fonts
from conversations.words import report as words
from core.report import Report
from core.store import people
from core.store.people import Person

KINDS = (".pdf", ".png")


def main(options: argparse.Namespace) -> int:
    """Write the page, or print what it says."""
    if options.json and options.output is not None:
        raise Wrong(["--json and -o: one of the two"])
    if options.output is not None and options.output.suffix.lower() not in KINDS:
        raise Wrong([f"-o: {options.output} must end in .pdf or .png"])
    with reading(options.db) as engine:
        body = _body(engine, options.name)
    if options.output is not None:
        _write(body, options.output)
    elif options.json:
        print(json.dumps(body, indent=2, ensure_ascii=False))
    else:
        made = msgspec.convert(body["report"], Report)
        print("\n".join([*words.in_short(made), f"{words.NOTES}:", *body["notes"], words.CAUTION]))
    return 0


def _body(engine: Engine, name: str) -> dict[str, Any]:
    client = _client(engine, name)
    body = reports.body_of(engine, client, Clock().now())
    if body is None:
        raise Wrong([words.NOTHING_YET.format(name=client.name)])
    return body


def _client(engine: Engine, name: str) -> Person:
    everybody = [
        one for coach in people.coaches(engine.store) for one in people.clients_of(engine.store, coach.id)
    ]
    wanted = name.casefold()
    for fits in (
        lambda one: wanted == f"#{one.id}",
        lambda one: wanted == one.name.casefold(),
        lambda one: wanted in one.name.casefold(),
    ):
        found = [one for one in everybody if fits(one)]
        if len(found) == 1:
            return found[0]
        if found:
            raise Wrong(
                [f"NAME: several fit {name!r}: {', '.join(f'{one.name} (#{one.id})' for one in found)}"]
            )
    known = ", ".join(one.name for one in everybody) or "none"
    raise Wrong([f"NAME: there is no client {name!r}; known: {known}"])


def _write(body: dict[str, Any], file: Path) -> None:
    from bot.report import drawn

    if not fonts.plain(body["name"]) and fonts.unwritable({body["code"]: body["name"]}):
        print(words.CODED.format(code=body["code"], name=body["name"]), file=sys.stderr)
    try:
        file.write_bytes(drawn(body, file.suffix.lower().removeprefix(".")))
    except OSError as problem:
        raise Wrong([f"{file}: {problem.strerror}"]) from None
