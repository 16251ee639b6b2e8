"""Bands on a limb: what a check means, what the session does next, how long they may stay on."""

from core.cuffs.checks import (
    Colour,
    Compared,
    CuffCheck,
    Feeling,
    Look,
    Place,
    Refill,
    next_look,
    refill_of,
)
from core.cuffs.limbs import Limb, limbs_of
from core.cuffs.limits import (
    Call,
    CallKind,
    can_finish,
    next_call,
    on_again_at,
    quiet_alert_at,
    quiet_at,
    whole_minutes_left,
)
from core.cuffs.policy import Again, Decision, SoFar, Step, at_once, check_again, decide, failed
from core.cuffs.rules import Finding, Verdict, judge, limb_suffers, strictest

__all__ = [
    "Again",
    "Call",
    "CallKind",
    "Colour",
    "Compared",
    "CuffCheck",
    "Decision",
    "Feeling",
    "Finding",
    "Limb",
    "Look",
    "Place",
    "Refill",
    "SoFar",
    "Step",
    "Verdict",
    "at_once",
    "can_finish",
    "check_again",
    "decide",
    "failed",
    "judge",
    "limb_suffers",
    "limbs_of",
    "next_call",
    "next_look",
    "on_again_at",
    "quiet_alert_at",
    "quiet_at",
    "refill_of",
    "strictest",
    "whole_minutes_left",
]
