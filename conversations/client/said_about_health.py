"""Limbs and times as clients type them in the health questions. All of an answer is understood, or none of it."""

import re

from conversations.answers import whole_number
from conversations.answers.lexing import normal, phrases, words

SEVERAL = re.compile(r"\s*(?:,|&|\+|\band\b)\s*")
UPPER = {
    "arm": "arm",
    "shoulder": "arm",
    "armpit": "arm",
    "leg": "leg",
    "thigh": "leg",
    "hip": "leg",
    "groin": "leg",
}
LOWER = {
    **dict.fromkeys("elbow forearm wrist hand finger thumb".split(), "arm"),
    **dict.fromkeys("knee kneecap shin calf ankle foot heel toe".split(), "leg"),
}
SIDES = frozenset({"left", "right"})
BESIDE = frozenset("my the on in at it its it's is yes a upper lower just only".split())
TIME_AGO = re.compile(
    r"(?:(?:about|around|some|roughly) )?(?P<number>.+?) ?(?P<unit>day|week|wk|month|year|yr)s?(?: ago)?"
)
WEEKS_IN = {"week": 1, "wk": 1, "month": 4, "year": 52, "yr": 52}  # rounded down: sooner is the careful side
JUST_NOW = {"today": 0, "yesterday": 0, "this week": 0, "last week": 1, "a week ago": 1, "last month": 4}
LONGEST_AGO = 520  # weeks, ten years; older is as good as never here


def limbs(text: str, *, lower: bool = True) -> str:
    """Stored names: "left thigh and both arms", "my left leg"; "": not understood, for a limb left out would stay open.

    `lower`: whether a knee or a hand stands for its limb.
    """
    known = UPPER | LOWER if lower else UPPER
    parts = [_limbs_in(part, known) for part in SEVERAL.split(normal(text).rstrip(".! ")) if part.strip()]
    return ",".join(sorted(set().union(*parts))) if parts and all(parts) else ""


def _limbs_in(part: str, known: dict[str, str]) -> set[str]:
    said = [word for word in part.split() if word not in BESIDE]
    if not said or said[-1] not in known.keys() | {f"{word}s" for word in known}:
        return set()
    limb = known.get(said[-1]) or known[said[-1].removesuffix("s")]
    match said[:-1]:
        case [side] if side in SIDES:
            return {f"{side}_{limb}"}
        case ["both"]:
            return {f"left_{limb}", f"right_{limb}"}
        case [] if said[-1] not in known:  # "legs"
            return {f"left_{limb}", f"right_{limb}"}
        case _:
            return set()


def weeks_ago(text: str) -> str:
    """Whole weeks, rounded down: "a month ago", "10 days", "last week", "6". Raises `Unclear`."""
    said = normal(text).rstrip(".! ")
    if said in JUST_NOW:
        return str(JUST_NOW[said])
    found = TIME_AGO.fullmatch(said)
    if found is None:
        return str(whole_number(text, 0, LONGEST_AGO, also=("ago",)))
    number = 1 if found["number"] in ("a", "an") else whole_number(found["number"], 0, 7 * LONGEST_AGO)
    weeks = number // 7 if found["unit"] == "day" else number * WEEKS_IN[found["unit"]]
    return str(min(weeks, LONGEST_AGO))


# What may stand beside a blood pressure, and how people say that they have none.
WHEN_MEASURED = re.compile(
    r"\b(?:this (?:morning|week)|today|yesterday|last (?:night|week|month|time|year)|at (?:the|my) (?:doctor|gp)(?:'s|s)?)\b",
    re.IGNORECASE,
)
NONE_MEASURED = phrases(
    "i dont have one, dont have one, i have none, never measured, not measured, never had it measured",
    "i never had it measured, havent got one, i havent got one, i never measured it, i dont measure it",
)


def nothing_measured(text: str) -> bool:
    """Whether somebody says that there is no reading."""
    return words(text).rstrip(".") in NONE_MEASURED


def without_when(text: str) -> str:
    """A reading without the day on which it was taken."""
    return WHEN_MEASURED.sub("", text).strip(" ,")
