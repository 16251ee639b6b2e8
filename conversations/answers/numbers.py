"""Typed counts and decimal numbers, read strictly: what is not understood is asked again, never guessed."""

from collections.abc import Collection
from dataclasses import dataclass
from decimal import Decimal

from conversations.answers.lexing import LONGEST_DIGITS, Number, words
from conversations.answers.reading import SEPARATORS, Reading, read_numbers
from conversations.answers.unclear import Bound, Unclear, Why

HIGHEST = 10_000  # for callers that give no bound; nothing that is counted here is larger
SCALE_END = 10  # ratings run from 0 to 10, so "6/10" is how people write a 6


@dataclass(frozen=True, slots=True)
class Count:
    """A whole number as counted; `rough`: the client was not sure ("about 30", "30ish")."""

    value: int
    rough: bool = False


def whole_number(
    text: str, low: int, high: int, *, also: Collection[str] = (), zero: Collection[str] = ()
) -> int:
    """One whole number from `low` to `high`, both included, exact or "about". Raises `Unclear`."""
    return count(text, low, high, also=also, zero=zero).value


def count(text: str, low: int, high: int, *, also: Collection[str] = (), zero: Collection[str] = ()) -> Count:
    """One whole number and whether it is rough. "6/10" is 6 where `high` is 10. Raises `Unclear`.

    `also` are words that may stand around the number here ("left", "more"); `zero` are whole answers that
    mean 0 here ("no pain"). Both in lower case, without apostrophes.
    """
    if words(text) in zero:
        return Count(int(in_range(Decimal(0), low, high)))
    found = read_numbers(text, decimal=False, extra=also)
    return Count(whole(_rating(found) if high == SCALE_END else single(found), low, high), found.rough)


def decimal_number(text: str, low: Bound, high: Bound) -> Decimal:
    """One number from `low` to `high`: "12,5", "12.5", "12½", "two and a half". Raises `Unclear`."""
    return in_range(single(read_numbers(text, decimal=True)).value, low, high)


def several_numbers(text: str, low: int = 0, high: int = HIGHEST) -> tuple[Count, ...]:
    """Whole numbers in the order typed: "31 16 8", "31, 16, 8", "31/16/8". One is enough.

    One "about" makes all of them rough. Raises `Unclear`, also for "25-30", which reads as a range.
    """
    found = read_numbers(text, decimal=False)
    dashes = {"-"} if len(found.numbers) > 2 else set()
    if found.marks - SEPARATORS - {"."} - dashes:
        raise Unclear(Why.SEVERAL, low, high)
    if any("." in number.digits for number in found.numbers):
        raise Unclear(Why.NOT_WHOLE, low, high)
    return tuple(Count(whole(number, low, high), found.rough) for number in found.numbers)


def in_range(value: Decimal, low: Bound, high: Bound) -> Decimal:
    """`value` itself when within the bounds, else `Unclear`."""
    if value < Decimal(str(low)):
        raise Unclear(Why.TOO_LOW, low, high)
    if value > Decimal(str(high)):
        raise Unclear(Why.TOO_HIGH, low, high)
    return value


def single(found: Reading) -> Number:
    """The only number of a reading. Raises `Unclear` when there are more."""
    if len(found.numbers) > 1:
        raise Unclear(Why.SEVERAL)
    if found.marks:
        raise Unclear(Why.NOT_A_NUMBER)
    return plausible(found.numbers[0])


def plausible(number: Number) -> Number:
    """The number, unless it is a phone number, "007" or "1,000" (a thousand, or one?)."""
    unsigned, _, places = number.digits.lstrip("-").replace(",", ".").partition(".")
    if len(number.digits) > LONGEST_DIGITS or (len(unsigned) > 2 and unsigned.startswith("0")):
        raise Unclear(Why.NOT_A_NUMBER)
    if len(places) == 3 and unsigned != "0":
        raise Unclear(Why.NOT_A_NUMBER)
    return number


def whole(number: Number, low: int, high: int) -> int:
    """The number as a whole one within the bounds. Raises `Unclear`."""
    value = plausible(number).value
    if value != value.to_integral_value():
        raise Unclear(Why.NOT_WHOLE, low, high)
    return int(in_range(value, low, high))


def _rating(found: Reading) -> Number:
    """Reads "6/10" and "6 out of 10" as 6."""
    match found.numbers:
        case [score, end] if end.value == SCALE_END and found.marks in ({"/"}, {"of"}):
            return plausible(score)
    return single(found)
