"""`cuffline advise`: one JSON object a line in, one a line out; after a wrong line the rest goes on.

A key that is not known makes a line wrong: misspelt, it would be advice without what it was to say.
"""

import json
from datetime import date
from decimal import Decimal
from typing import IO, Any, Literal

import msgspec

from conversations.words.advice import sentence
from core.plans import Rung, Scheme
from core.progression import Advice, Request, SessionRecord, advise
from core.resistance import Ladder, Loads, Resistance
from core.units import Load, Unit


class LoadLine(msgspec.Struct, tag_field="kind", tag="load", forbid_unknown_fields=True):
    unit: Unit
    available: tuple[float, ...]
    one_rm: float | None = None


class RungLine(msgspec.Struct, forbid_unknown_fields=True):
    name: str
    fraction: float | None = None


class BodyLine(msgspec.Struct, tag_field="kind", tag="bodyweight", forbid_unknown_fields=True):
    rungs: tuple[RungLine, ...]
    body_mass_kg: float | None = None


class SessionLine(msgspec.Struct, forbid_unknown_fields=True):
    date: date
    used: float | str
    reps: tuple[int, ...]
    tightness: float | None = None
    refill_s: float | None = None
    rest_s: tuple[float, ...] | None = None
    pain: float | None = None
    effort: float | None = None
    reps_left: tuple[int, ...] | None = None
    stopped: str | None = None
    loose: bool = False
    rough: bool = False
    fast: bool = False
    check_ok: bool = True


class RequestLine(msgspec.Struct, forbid_unknown_fields=True):
    id: str | int
    movement: str
    scheme: Literal["open", "fixed"]
    resistance: LoadLine | BodyLine
    sessions: tuple[SessionLine, ...]
    today: date | None = None
    open_last: bool = False


class JustId(msgspec.Struct):
    id: str | int | None = None


DECODE = msgspec.json.Decoder(RequestLine).decode
ENCODE = msgspec.json.Encoder(decimal_format="number").encode


def main(stdin: IO[bytes], stdout: IO[bytes]) -> int:
    """Answer every line of `stdin` on `stdout`; 1 if any of them was wrong, else 0."""
    failed = False
    for line in stdin:
        if not line.strip():
            continue
        answer, good = _answered(line)
        failed = failed or not good
        stdout.write(answer + b"\n")
    stdout.flush()
    return 1 if failed else 0


def _answered(line: bytes) -> tuple[bytes, bool]:
    try:
        asked = _decoded(line)
        return ENCODE(_told(asked.id, advise(_request(asked)))), True
    except (msgspec.DecodeError, ValueError, RecursionError) as wrong:
        return ENCODE({"id": _id_of(line), "error": _writable(str(wrong))}), False


def _decoded(line: bytes) -> RequestLine:
    """The line as asked. Python writes NaN into JSON, which has none: read on to name the field it is in."""
    try:
        return DECODE(line)
    except msgspec.ValidationError:
        raise
    except msgspec.DecodeError:
        return msgspec.convert(_loosely(line), RequestLine, strict=True)


def _loosely(line: bytes) -> Any:
    """The line as Python reads it, with NaN and Infinity. Raises ValueError."""
    try:
        return json.loads(line, parse_constant=float)
    except (ValueError, RecursionError) as wrong:
        raise ValueError(f"line: this is no JSON ({wrong})") from None


def _id_of(line: bytes) -> str | int | None:
    try:
        found = msgspec.convert(_loosely(line), JustId).id
    except (msgspec.DecodeError, ValueError):
        return None
    return _writable(found) if isinstance(found, str) else found


def _writable(text: str) -> str:
    """Half a character ("\\ud800" alone) can be read from JSON but not written as UTF-8."""
    return text.encode("utf-8", "backslashreplace").decode()


def _request(asked: RequestLine) -> Request:
    unit = asked.resistance.unit if isinstance(asked.resistance, LoadLine) else None
    sessions = tuple(_session(one, unit) for one in asked.sessions)
    return Request(
        asked.movement,
        Scheme(asked.scheme),
        _resistance(asked.resistance),
        sessions,
        today=asked.today,
        open_last=asked.open_last,
    )


def _resistance(asked: LoadLine | BodyLine) -> Resistance:
    if isinstance(asked, BodyLine):
        return Ladder(tuple(Rung(rung.name, rung.fraction) for rung in asked.rungs), asked.body_mass_kg)
    one_rm = None if asked.one_rm is None else _load("one_rm", asked.one_rm, asked.unit)
    return Loads(tuple(_load("available", value, asked.unit) for value in asked.available), one_rm)


def _load(field: str, value: float, unit: Unit) -> Load:
    """The shortest writing of a float is the number that was typed."""
    try:
        return Load(Decimal(f"{value:.0f}" if value.is_integer() else repr(value)), unit)
    except ValueError:
        raise ValueError(f"{field}: {value:g} is not a load") from None


def _session(one: SessionLine, unit: Unit | None) -> SessionRecord:
    details = {name: getattr(one, name) for name in DETAILS}
    return SessionRecord(one.date, _used(one.used, unit), one.reps, **details)


def _used(used: float | str, unit: Unit | None) -> Load | str:
    """`unit` None: a rung."""
    match used, unit:
        case str(), None:
            return used
        case float(), Unit():
            return _load("used", used, unit)
        case str(), _:
            raise ValueError("used: needs a number")
        case _:
            raise ValueError("used: needs the name of a rung")


DETAILS = tuple(name for name in SessionLine.__struct_fields__ if name not in {"date", "used", "reps"})


def _told(name: str | int, advice: Advice) -> dict[str, object]:
    return {
        "id": name,
        "use": advice.use if isinstance(advice.use, str) else advice.use.value,
        "action": advice.action,
        "expected_reps": advice.expected_reps,
        "first_set_80": advice.first_set_80,
        "chance_in_range": round(advice.chance_in_range, 3),
        "readings": [{"name": one.name, "odds": round(one.odds, 3)} for one in advice.readings],
        "because": sentence(advice.because),
    }
