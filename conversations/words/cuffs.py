"""What was found at a check of the bands, as the coach reads it."""

from collections.abc import Iterable

from conversations.words.session import LIMBS
from core.cuffs import Limb

FOUND = {
    "tingling": "tingling or numb",
    "numb": "numb",
    "cold": "cold",
    "hurts": "the band hurts",
    "blue": "blue, white or cold",
    "white": "white",
    "feels_different": "spot not seen, and cooler or odd against before",
    "far_too_tight": "far too tight, 9 or 10 of 10",
    "too_tight": "too tight, 8 of 10",
    "slow_refill": "refill above 3 s",
    "wrong_place": "band not high enough",
    "unseen_refill": "pale spot not seen",
    "snug_arms": "7 of 10 on an arm",
    "loose": "loose, below 6 of 10",
    "another_band": "another band than last time",
}
SAID = "Band check: {found}"
ON_LIMB = "{limb}: {found}"
UNSEEN_ALLOWED = (
    "From now on {name} trains without a visible refill on: {limbs}. Warmth and feeling are asked about instead, each "
    "time; it is never stored as a passed check. Another limb comes to you first."
)


def unseen_allowed(name: str, limbs: Iterable[str]) -> str:
    """What a coach hears who allowed it; `limbs` by their stored names."""
    return UNSEEN_ALLOWED.format(name=name, limbs=", ".join(LIMBS[Limb(limb)].lower() for limb in limbs))


def check_said(found: Iterable[tuple[str, Iterable[str]]]) -> str:
    """ "Band check: left leg: refill above 3 s; right leg: pale spot not seen"; of each limb (stored name, "": of
    none in particular) its rule names."""
    return SAID.format(found="; ".join(_on(limb, rules) for limb, rules in found))


def _on(limb: str, rules: Iterable[str]) -> str:
    text = ", ".join(FOUND.get(rule, rule.replace("_", " ")) for rule in rules)
    return ON_LIMB.format(limb=LIMBS[Limb(limb)].lower(), found=text) if limb else text
