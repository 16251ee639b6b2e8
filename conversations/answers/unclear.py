"""The one exception for an answer that does not fit: the client is asked again, kindly."""

from collections.abc import Iterable
from decimal import Decimal
from enum import StrEnum

Bound = int | float | Decimal


class Why(StrEnum):
    """What was wrong with an answer. Stored in the log of re-asks: add freely, never rename."""

    EMPTY = "empty"  # nothing but spaces, emoji or punctuation
    NOT_A_NUMBER = "not_a_number"  # words or signs that no number reading explains
    NOT_WHOLE = "not_whole"  # 6.5 where whole numbers are counted
    SEVERAL = "several"  # two numbers, or a range, where one is wanted
    TOO_LOW = "too_low"
    TOO_HIGH = "too_high"
    OPEN_ENDED = "open_ended"  # "30+", "under 2": a bound, no value
    DOES_NOT_KNOW = "does_not_know"  # "lost count", "no idea"
    WHICH_SIDE = "which_side"  # two numbers, left and right not said
    NO_UNIT = "no_unit"  # a load without kg or lb
    NOT_YES_OR_NO = "not_yes_or_no"
    HOW_MUCH = "how_much"  # "a little": about what was asked, only its number is missing
    SAID_MORE = "said_more"  # yes or no and something else that somebody should read
    NOT_A_PRESSURE = "not_a_pressure"  # no two plausible blood pressure numbers
    PRESSURE_SWAPPED = "pressure_swapped"  # the lower number came first
    NOT_AN_OPTION = "not_an_option"
    WHICH_OPTION = "which_option"  # more than one option fits
    DECIMAL_COMMA = "decimal_comma"  # "12,5": one number or two? `options` are the two readings
    NOT_BANDS = "not_bands"  # no list of exercise bands, or one of them twice
    NOT_A_NAME = "not_a_name"  # "no", "none", "?" where somebody's name is wanted
    NOT_A_DAY = "not_a_day"  # no day to come
    NO_YEAR = "no_year"  # a day whose year has to be said
    WRONG_DAY = "wrong_day"  # a day to come where a past one is wanted, the other way round, or none
    MERE_OK = "mere_ok"  # "ok" where it may be "I have read it", a yes, or "I am ok"
    NO_REASON = "no_reason"  # a reason in words is wanted


class Unclear(Exception):
    """A typed answer that cannot be taken. `low` and `high` are the bounds asked for, `options` the labels.

    `conversations.words.answers.ask_again` turns it into words.
    """

    def __init__(
        self,
        reason: Why,
        low: Bound | None = None,
        high: Bound | None = None,
        options: Iterable[str] = (),
    ) -> None:
        super().__init__(reason.value)
        self.reason = reason
        self.low = low
        self.high = high
        self.options = tuple(options)
