"""Typed lists of the loads somebody owns: "4, 6, 8, 10 kg", "2-20 by 2 kg", "bar 10 kg, plates 2x1.25 2x2.5"."""

import re
from decimal import Decimal

from conversations.answers import Unclear, Why, load
from conversations.answers.lexing import normal
from conversations.answers.measures import HEAVIEST, LOAD_UNITS, best_lift
from conversations.answers.reading import HALF_TYPED
from conversations.equipment.plates import read_bar
from core.resistance import LIGHTEST, dumbbells, stack
from core.templates import from_maximum
from core.units import Load, Unit, plain

MOST_LOADS = 60
MOST_SHOWN = 8  # of the loads owned, in a re-ask
MAXIMUM = re.compile(r"(?:max[a-z]*|1 ?rm)[ :=]*(?:of )?(?P<load>.+)")
NUMBER = r"\d{1,4}(?:\.\d{1,3})?"
ONE = re.compile(rf"({NUMBER})([a-z]+)?")
UNIT = rf" ?({'|'.join(sorted(LOAD_UNITS, key=len, reverse=True))})?"
SPAN = re.compile(
    rf"(?:from )?({NUMBER}){UNIT} ?(?:-|–|to) ?({NUMBER}){UNIT},? ?(?:by|in steps of|steps of|every) ?({NUMBER}){UNIT}"
)
FRACTIONS = "½¼¾⅛"
APART = re.compile(r"[;/&\s]+|,\s+|,$")
TIGHT_COMMA = re.compile(r"(\d+),(\d+)(?![\d,])")


def read_owned(text: str) -> tuple[tuple[Decimal, ...], Unit | None]:
    """The numbers, ascending and each once, and their unit (None: not said). Raises `Unclear`."""
    if HALF_TYPED.search(text) or any(sign in text for sign in FRACTIONS):
        raise Unclear(Why.NOT_A_NUMBER)  # in a list "1/2" is two loads, so a half is typed 0.5
    said = normal(text).strip(" .")
    span, bar = SPAN.fullmatch(said), read_bar(said)
    numbers, units = bar or (_span(*span.groups()) if span else _list(said))
    if len(set(units)) > 1:
        raise Unclear(Why.NO_UNIT)
    return _checked(numbers), units[0] if units else None


def to_text(numbers: tuple[Decimal, ...], unit: Unit | None) -> str:
    """As a draft keeps it: "2 kg|4 kg", or "2|4" while the unit is not known."""
    return "|".join(f"{plain(one)} {unit}" if unit else plain(one) for one in numbers)


def numbers_and_unit(stored: str) -> tuple[tuple[Decimal, ...], Unit | None]:
    """What `to_text` wrote."""
    pairs = [part.partition(" ") for part in stored.split("|") if part]
    unit = Unit(pairs[0][2]) if pairs and pairs[0][2] else None
    return tuple(Decimal(number) for number, _, _ in pairs), unit


def loads_from_text(stored: str) -> tuple[Load, ...]:
    """The loads that `to_text` wrote, ascending; () while the unit is not known."""
    numbers, unit = numbers_and_unit(stored)
    return dumbbells(numbers, unit) if numbers and unit else ()


def read_start(text: str, owned: tuple[Load, ...]) -> Load | None:
    """A load of those owned, or "max 40" for about 30 % of it; None: all are too heavy for that maximum.

    A bare number is in the unit of `owned`. Raises `Unclear`.
    """
    maximum = read_maximum(text, owned[0].unit)
    if maximum is not None:
        return from_maximum(maximum, owned)
    said = load(text, owned[0].unit)
    if said not in owned:
        raise Unclear(Why.NOT_AN_OPTION, options=[str(one) for one in owned[:MOST_SHOWN]])
    return said


def read_maximum(text: str, unit: Unit) -> Load | None:
    """ "max 40": the best single lift, a bare number in `unit`; None: no maximum was said. Raises `Unclear`."""
    found = MAXIMUM.fullmatch(normal(text))
    return None if found is None else best_lift(found["load"], unit)


def _span(low: str, *parts: str | None) -> tuple[list[Decimal], list[Unit]]:
    first_unit, high, second_unit, step, third_unit = parts
    units = [LOAD_UNITS[unit] for unit in (first_unit, second_unit, third_unit) if unit]
    start, end, each = Decimal(low), Decimal(high or 0), Decimal(step or 0)
    if each <= 0 or not 0 < start <= end or (end - start) / each >= MOST_LOADS:
        raise Unclear(Why.NOT_A_NUMBER)
    return [one.value for one in stack(start, each, end, Unit.KG)], units


def _list(said: str) -> tuple[list[Decimal], list[Unit]]:
    numbers: list[Decimal] = []
    units: list[Unit] = []
    for token in APART.split(said):
        if token in LOAD_UNITS:
            units.append(LOAD_UNITS[token])
        elif token not in ("", "and"):
            _add(token, numbers, units)
    return numbers, units


def _add(token: str, numbers: list[Decimal], units: list[Unit]) -> None:
    """One token: "4", "4kg", "4,6,8"."""
    comma = TIGHT_COMMA.match(token)
    if comma and token.count(",") == 1:  # 2.5, or 2 and 5? Nobody can know
        options = (f"{comma[1]}.{comma[2]}", f"{comma[1]} and {comma[2]}")
        raise Unclear(Why.DECIMAL_COMMA, options=options)
    for part in token.split(","):
        found = ONE.fullmatch(part)
        if found is None or (found[2] and found[2] not in LOAD_UNITS):
            raise Unclear(Why.NOT_A_NUMBER)
        numbers.append(Decimal(found[1]))
        units += [LOAD_UNITS[found[2]]] if found[2] else []


def _checked(numbers: list[Decimal]) -> tuple[Decimal, ...]:
    if not 0 < len(numbers) <= MOST_LOADS or min(numbers) < LIGHTEST:
        raise Unclear(Why.NOT_A_NUMBER)
    if max(numbers) > HEAVIEST:
        raise Unclear(Why.TOO_HIGH, 0, HEAVIEST)
    return tuple(sorted(set(numbers)))


def listed(loads: tuple[Load, ...]) -> str:
    """As one would type them: "4, 6, 8 kg"."""
    return f"{', '.join(plain(load.value) for load in loads)} {loads[0].unit}"
