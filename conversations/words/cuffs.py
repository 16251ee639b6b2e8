"""What was found at a check of the bands, as the coach reads it."""

from collections.abc import Iterable

from conversations.words.session import LIMBS
from core.cuffs import Limb
from core.cuffs.rules import ELDERLY_FROM, REFILL_LIMIT_S, USUAL_LIMIT_ELDERLY_S, USUAL_LIMIT_S
from core.pressure import Sex
from core.safety.causes import Cause

FOUND = {
    "tingling": "tingling or numb",
    "numb": "numb",
    "cold": "cold",
    "hurts": "the band hurts",
    "blue": "blue, white or cold",
    "white": "white",
    "feels_different": "spot not seen, and cooler or odd against before",
    "far_too_tight": "9 or 10 of 10",
    "too_tight": "too tight",
    "slow_refill": "refill above 3 s",
    "wrong_place": "band not high enough",
    "unseen_refill": "pale spot not seen",
    "snug_arms": "7 of 10 on an arm",
    "loose": "loose, below 6 of 10",
    "another_band": "another band than last time",
}
SAID = "Band check: {found}"
# What a coach should know beside a refill. The client's rule is one and the same for everybody.
USUAL_REFILL = (
    "Without a band up to {men:g} s is usual in men, {women:g} s in women, {old:g} s from {age} years on (a finger, "
    "published), and longer in the cold; under a band more than {limit:g} s means loosen, whoever it is."
)
NO_PROOF = (
    "A usual refill does not prove that a band sits right: it only lengthens once the artery is pressed. Watch reps, "
    "felt tightness and how the limb feels together."
)
OVER_WEEKS = "seen over several sessions. {note}"
ON_LIMB = "{limb}: {found}"
UNSEEN_ALLOWED = (
    "From now on {name} trains without a visible refill on: {limbs}. Warmth and feeling are asked about instead, each "
    "time; it is never stored as a passed check. Another limb comes to you first. You can take it back: their card, "
    "{button}."
)
UNSEEN_BACK = "Ask for the pale spot again"
UNSEEN_CARD = "Trains without a visible refill on: {limbs}"
UNSEEN_TAKEN_BACK = (
    "Noted: where {name} can't see the spot, the session stops before the first set and comes to you again."
)
UNSEEN_NONE = "{name} trains on no limb without a visible refill."
UNSEEN_CLIENT = (
    "From now on, when you can't see the pale spot, the bands come off and your coach decides, each time."
)


def limbs_named(limbs: Iterable[str]) -> str:
    """ "left leg, right leg", by their stored names."""
    return ", ".join(LIMBS[Limb(limb)].lower() for limb in limbs)


def unseen_allowed(name: str, limbs: Iterable[str]) -> str:
    """What a coach hears who allowed it; `limbs` by their stored names."""
    return UNSEEN_ALLOWED.format(name=name, limbs=limbs_named(limbs), button=UNSEEN_BACK)


def check_said(found: Iterable[tuple[str, Iterable[str]]]) -> str:
    """ "Band check: left leg: refill above 3 s; right leg: pale spot not seen"; of each limb (stored name, "": of
    none in particular) its rule names."""
    limbs = [(limb, tuple(rules)) for limb, rules in found]
    said = SAID.format(found="; ".join(_on(limb, rules) for limb, rules in limbs))
    return f"{said}. {usual_refill()}" if any("slow_refill" in rules for _, rules in limbs) else said


def usual_refill() -> str:
    """The published limits without a band (Schriger and Baraff 1988), and the rule under one."""
    return USUAL_REFILL.format(
        men=USUAL_LIMIT_S[Sex.MALE],
        women=USUAL_LIMIT_S[Sex.FEMALE],
        old=USUAL_LIMIT_ELDERLY_S,
        age=ELDERLY_FROM,
        limit=REFILL_LIMIT_S,
    )


def over_weeks(cause: Cause) -> str:
    """What stands under a note about the checks of several sessions."""
    return OVER_WEEKS.format(note=usual_refill() if cause is Cause.REFILL_SLOW_OFTEN else NO_PROOF)


def _on(limb: str, rules: Iterable[str]) -> str:
    text = ", ".join(FOUND.get(rule, rule.replace("_", " ")) for rule in rules)
    return ON_LIMB.format(limb=LIMBS[Limb(limb)].lower(), found=text) if limb else text
