"""Number words and fractions: "thirty one", "a hundred and five", "12 1/2", "two and a half".

`folded` leaves every number as one `Number`, so that the readers of answers see figures only.
"""

from collections.abc import Sequence
from decimal import Decimal

from conversations.answers.lexing import Mark, Number, Token, Word

_UNITS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
_TEENS = (
    *("ten", "eleven", "twelve", "thirteen", "fourteen"),
    *("fifteen", "sixteen", "seventeen", "eighteen", "nineteen"),
)
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
UNITS = {word: value for value, word in enumerate(_UNITS, start=1)}
TEENS = {word: value for value, word in enumerate(_TEENS, start=10)}
TENS = {word: 10 * value for value, word in enumerate(_TENS, start=2)}
TENS |= {"fourty": 40, "ninty": 90}  # the two misspellings that cannot mean another number
NOTHING = {"zero": 0, "none": 0, "nil": 0, "nothing": 0, "nought": 0}
DENOMINATORS = {"2", "4", "5", "8", "10"}  # those with an exact decimal; "28/31" stays two numbers
HALF = Decimal("0.5")


def folded(tokens: Sequence[Token], fractions: bool) -> tuple[Token, ...]:
    """The tokens with number words read: "thirty one" -> 31, and with `fractions` "12 1/2" -> 12.5.

    Where reps are counted, "4/8" is two sets and "6/10" a rating, so fractions are for decimals only.
    """
    return _with_fractions(_with_words(tokens)) if fractions else tuple(_with_words(tokens))


def _with_words(tokens: Sequence[Token]) -> list[Token]:
    found: list[Token] = []
    at = 0
    while at < len(tokens):
        value, used = _numeral(tokens, at)
        found.append(Number(Decimal(value), str(value)) if used else tokens[at])
        at += used or 1
    return found


def _numeral(tokens: Sequence[Token], at: int) -> tuple[int, int]:
    """The value of the number words from `at` on, and how many tokens they take (0: none there)."""
    if _word(tokens, at) in NOTHING:
        return 0, 1
    hundreds, used = _hundreds(tokens, at)
    joined = 1 if used and _word(tokens, at + used) == "and" else 0
    rest, more = _below_hundred(tokens, at + used + joined)
    return hundreds + rest, used + (joined + more if more else 0)


def _hundreds(tokens: Sequence[Token], at: int) -> tuple[int, int]:
    if _word(tokens, at + 1) != "hundred":
        return 0, 0
    count = UNITS.get(_word(tokens, at), 1 if _word(tokens, at) == "a" else 0)
    return 100 * count, 2 if count else 0


def _below_hundred(tokens: Sequence[Token], at: int) -> tuple[int, int]:
    word = _run_together(_word(tokens, at))
    if len(word) == 2:
        return TENS[word[0]] + UNITS[word[1]], 1
    if word[0] in TENS:
        unit = UNITS.get(_word(tokens, at + 1), 0)
        return TENS[word[0]] + unit, 2 if unit else 1
    small = UNITS.get(word[0]) or TEENS.get(word[0])
    return (small, 1) if small else (0, 0)


def _run_together(word: str) -> tuple[str, ...]:
    """Splits "thirtyone" into "thirty", "one"; any other word stays whole."""
    for tens in TENS:
        if word.startswith(tens) and word[len(tens) :] in UNITS:
            return tens, word[len(tens) :]
    return (word,)


def _word(tokens: Sequence[Token], at: int) -> str:
    token = tokens[at] if at < len(tokens) else None
    return token.text if isinstance(token, Word) else ""


def _with_fractions(tokens: Sequence[Token]) -> tuple[Token, ...]:
    found: list[Token] = []
    at = 0
    while at < len(tokens):
        fraction, used = _fraction(tokens, at)
        if used:
            _add_fraction(found, fraction)
        else:
            found.append(tokens[at])
        at += used or 1
    return tuple(found)


def _fraction(tokens: Sequence[Token], at: int) -> tuple[Decimal, int]:
    """1/2 in figures, "half", "a half", "and a half"; how many tokens it takes (0: none there)."""
    match tokens[at : at + 3]:
        case [Number() as over, Mark("/"), Number() as under, *_] if _is_fraction(over, under):
            return over.value / under.value, 3
        case [Word("and"), Word("a"), Word("half")]:
            return HALF, 3
        case [Word("a"), Word("half"), *_]:
            return HALF, 2
        case [Word("half"), *_]:
            return HALF, 1
        case _:
            return Decimal(0), 0


def _is_fraction(over: Number, under: Number) -> bool:
    return under.digits in DENOMINATORS and over.digits.isdigit() and 0 < over.value < under.value


def _add_fraction(found: list[Token], fraction: Decimal) -> None:
    """Join the fraction to the whole number before it, if there is one."""
    last = found[-1] if found else None
    if isinstance(last, Number) and last.digits.isdigit():
        fraction += last.value
        found.pop()
    found.append(Number(fraction, str(fraction)))
