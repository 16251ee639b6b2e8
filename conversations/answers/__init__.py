"""Strict readers of typed answers. Each gives a value or raises `Unclear`; none ever guesses."""

from conversations.answers.choices import Reply, choice, pick, yes_no
from conversations.answers.measures import (
    BloodPressure,
    blood_pressure,
    body_weight,
    centimetres,
    load,
    seconds,
)
from conversations.answers.names import person_name
from conversations.answers.numbers import Count, count, decimal_number, several_numbers, whole_number
from conversations.answers.sides import Sided, side_numbers
from conversations.answers.unclear import Unclear, Why

__all__ = [
    "BloodPressure",
    "Count",
    "Reply",
    "Sided",
    "Unclear",
    "Why",
    "blood_pressure",
    "body_weight",
    "centimetres",
    "choice",
    "count",
    "decimal_number",
    "load",
    "person_name",
    "pick",
    "seconds",
    "several_numbers",
    "side_numbers",
    "whole_number",
    "yes_no",
]
