"""Measures with units: seconds, loads, lengths and blood pressure."""

import re
from dataclasses import dataclass
from decimal import Decimal

from conversations.answers.lexing import Number, Word, normal, vocabulary
from conversations.answers.numbers import in_range, plausible, single, whole
from conversations.answers.reading import Reading, read_numbers
from conversations.answers.unclear import Bound, Unclear, Why
from core.units import Load, Unit

SECOND_WORDS = vocabulary("s sec secs second seconds")
MINUTE_WORDS = vocabulary("m min mins minute minutes")
CLOCK = re.compile(r"([0-9]{1,3}):([0-5][0-9])(?: ?min(?:utes)?)?")

LOAD_UNITS = dict.fromkeys(vocabulary("kg kgs kilo kilos kilogram kilograms"), Unit.KG)
LOAD_UNITS |= dict.fromkeys(vocabulary("lb lbs pound pounds"), Unit.LB)
LEAST_LIFTED = Decimal("0.5")  # kg or lb; maxima are told to half a unit, and none of them is 0
HEAVIEST = Decimal(500)  # kg or lb; far above any load lifted 20 times; own caution, no source

# International inch, exact by definition (NIST Special Publication 811, appendix B.8).
CM_PER_INCH = Decimal("2.54")
INCHES_PER_FOOT = 12
FEET = re.compile(r"([1-8]) ?(?:ft|foot|feet|') ?(?:(1[01]|[0-9]) ?(?:in|inch|inches|\"|'')?)?")
STONE = re.compile(r"([1-9]|[1-4][0-9]) ?(?:st|stone|stones) ?(?:(1[0-3]|[0-9]) ?(?:lbs?|pounds?)?)?")
BEFORE_IT = re.compile(
    r"^(?:(?:i'?m|i am|i weigh|i think|it'?s|about|around|roughly|approximately|nearly|almost|maybe) )+"
)
POUNDS_PER_STONE = 14
METRES = re.compile(r"([12]) ?m ?([0-9]{2})")

PRESSURE_WORDS = vocabulary("bp blood pressure is mmhg mm hg over sys systolic dia diastolic upper lower")
# Widest ranges a home monitor shows; anything outside is a slip of the thumb. From memory, no source.
SYSTOLIC = (50, 300)  # mmHg
DIASTOLIC = (20, 200)  # mmHg


def seconds(text: str, at_most: Bound) -> float:
    """A time of up to `at_most` s: "3", "2,5 s", "1:30", "1 min 30", "half a minute". Raises `Unclear`."""
    clock = CLOCK.fullmatch(normal(text))
    if clock:
        return float(in_range(Decimal(60 * int(clock[1]) + int(clock[2])), 0, at_most))
    found = read_numbers(text, decimal=True, extra=SECOND_WORDS | MINUTE_WORDS)
    if found.marks:
        raise Unclear(Why.SEVERAL, 0, at_most)
    return float(in_range(_seconds(found), 0, at_most))


def _seconds(found: Reading) -> Decimal:
    minutes, rest = _minutes_and_seconds(found)
    if minutes and rest >= 60:
        raise Unclear(Why.NOT_A_NUMBER)
    return 60 * minutes + rest


def _minutes_and_seconds(found: Reading) -> tuple[Decimal, Decimal]:
    match [_kind(token) for token in found.kept], found.numbers:
        case ["number"] | ["number", "second"], [number]:
            return Decimal(0), plausible(number).value
        case ["number", "minute"], [number]:
            return plausible(number).value, Decimal(0)
        case ["number", "minute", "number"] | ["number", "minute", "number", "second"], [minutes, rest]:
            return plausible(minutes).value, plausible(rest).value
        case _:
            raise Unclear(Why.SEVERAL if len(found.numbers) > 1 else Why.NOT_A_NUMBER)


def _kind(token: Number | Word) -> str:
    match token:
        case Number():
            return "number"
        case Word(text):
            return "second" if text in SECOND_WORDS else "minute"


def load(text: str, usual: Unit | None = None) -> Load:
    """A load: "12 kg", "12,5kg", "25 lb", "12 1/2 kilos"; a bare number has the unit `usual`.

    Raises `Unclear`, with `Why.NO_UNIT` for a bare number when `usual` is None.
    """
    found = read_numbers(text, decimal=True, extra=LOAD_UNITS.keys())
    units = {LOAD_UNITS[word] for word in found.extras}
    value = in_range(single(found).value, 0, HEAVIEST)
    if len(units) > 1:
        raise Unclear(Why.NO_UNIT)
    unit = units.pop() if units else usual
    if unit is None:
        raise Unclear(Why.NO_UNIT)
    return Load(value, unit)


def best_lift(text: str, usual: Unit | None = None) -> Load:
    """A load of a hard set or a single lift: as `load`, at least `LEAST_LIFTED`. Raises `Unclear`."""
    said = load(text, usual)
    if said.value < LEAST_LIFTED:
        raise Unclear(Why.TOO_LOW, LEAST_LIFTED, HEAVIEST)
    return said


def _bare(text: str) -> str:
    """Without what people say before a measure: "I'm about 11 stone 4"."""
    return BEFORE_IT.sub("", normal(text))


def body_weight(text: str) -> Decimal:
    """A person's weight in kg: "70", "154 lb", "11 stone", "11 st 4"; a bare number is in kg. Raises `Unclear`."""
    stone = STONE.fullmatch(_bare(text))
    if stone is None:
        return Decimal(str(load(text, Unit.KG).kilograms))
    pounds = POUNDS_PER_STONE * int(stone[1]) + int(stone[2] or 0)
    return Decimal(str(Load(Decimal(pounds), Unit.LB).kilograms))


def centimetres(text: str, low: Bound, high: Bound) -> Decimal:
    """A height or girth in cm, to 0.1: "172", "1,72 m", "1m72", "5 ft 8", "12 in". Raises `Unclear`.

    A bare number is in cm, or in m when only that fits the bounds ("1.72").
    """
    plain = _bare(text)
    feet, metres = FEET.fullmatch(plain), METRES.fullmatch(plain)
    if feet:
        inches = INCHES_PER_FOOT * int(feet[1]) + int(feet[2] or 0)
        return _to_tenths(inches * CM_PER_INCH, low, high)
    if metres:
        return _to_tenths(Decimal(100 * int(metres[1]) + int(metres[2])), low, high)
    return _one_unit(text, low, high)


CENTIMETRES = {
    word: factor
    for names, factor in (
        ("cm cms centimetre centimetres centimeter centimeters", Decimal(1)),
        ("m metre metres meter meters", Decimal(100)),
        ("in inch inches", CM_PER_INCH),
    )
    for word in names.split()
}


def _one_unit(text: str, low: Bound, high: Bound) -> Decimal:
    found = read_numbers(text, decimal=True, extra=CENTIMETRES.keys())
    value = single(found).value
    if len(found.extras) > 1:
        raise Unclear(Why.NOT_A_NUMBER, low, high)
    if found.extras:
        return _to_tenths(value * CENTIMETRES[found.extras[0]], low, high)
    fits_as_metres = value < Decimal(str(low)) <= 100 * value <= Decimal(str(high))
    return _to_tenths(100 * value if fits_as_metres else value, low, high)


def _to_tenths(value: Decimal, low: Bound, high: Bound) -> Decimal:
    return in_range(value, low, high).quantize(Decimal("0.1"))


@dataclass(frozen=True, slots=True)
class BloodPressure:
    """A typed reading in mmHg."""

    systolic: int
    diastolic: int


def blood_pressure(text: str) -> BloodPressure:
    """Two numbers in mmHg: "128/82", "128 over 82", "128 82". Raises `Unclear`."""
    try:
        found = read_numbers(text, decimal=False, extra=PRESSURE_WORDS)
    except Unclear:
        raise Unclear(Why.NOT_A_PRESSURE) from None
    if len(found.numbers) != 2 or found.marks - set("/,-;:"):
        raise Unclear(Why.NOT_A_PRESSURE)
    upper, lower = (whole(number, 0, 999) for number in found.numbers)
    if upper < lower:
        raise Unclear(Why.PRESSURE_SWAPPED)
    if not (SYSTOLIC[0] <= upper <= SYSTOLIC[1] and DIASTOLIC[0] <= lower <= DIASTOLIC[1]) or upper == lower:
        raise Unclear(Why.NOT_A_PRESSURE)
    return BloodPressure(upper, lower)
