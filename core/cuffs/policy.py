"""From the findings of one fitting to the next step of the session.

Both limbs fitted together are one check. Two failed checks end the session, whichever way they failed.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.cuffs.checks import CuffCheck
from core.cuffs.limbs import Limb
from core.cuffs.rules import Finding, Verdict, judge, strictest, unseen_refill
from core.safety.sources import Source

FAILED_CHECKS_END = 2  # in one session; own caution, no source
FIRST_SESSIONS = 4  # limbs swell; a second look after set 1; own caution, no source
SOURCES = (Source.CHECKS_AGAIN,)


class Step(StrEnum):
    """What the session does next. Stored."""

    GO = "go"
    SNUGGER = "snugger"  # below 6 before the first set: fit once more, a little tighter
    LOOSEN = "loosen"  # loosen, check again
    FIT_AGAIN = "fit_again"  # off now, 3 min, one new fit, looser
    ASK_COACH = "ask_coach"  # the refill cannot be seen and the coach has not allowed that yet
    END = "end"  # off now, session over, coach alerted


@dataclass(frozen=True, slots=True)
class SoFar:
    """What this session has seen. `failed`: failed checks, and tingling or cold between checks.

    `snugged`: the one new fit for loose bands was used. `sets_done`: of this movement. `unseen_allowed`: the
    limbs that the coach lets train without a visible refill; the skin of one says nothing about another.
    """

    failed: int = 0
    snugged: bool = False
    sets_done: int = 0
    unseen_allowed: frozenset[Limb] = frozenset()


@dataclass(frozen=True, slots=True)
class Decision:
    """The next step and why (rule names, strictest first); `failed` is the new count for `SoFar`.

    `loose`: go on, marked loose.
    """

    step: Step
    because: tuple[str, ...]
    failed: int
    loose: bool = False

    @property
    def alert(self) -> bool:
        """Whether the coach must be told now."""
        return self.step is Step.END


def decide(checks: Sequence[CuffCheck], so_far: SoFar) -> Decision:
    """The step after one fitting. Raises ValueError for an incomplete check or none at all."""
    if not checks or not all(check.complete for check in checks):
        raise ValueError("checks: every limb needs tightness, refill, colour and feeling")
    findings = sorted((one for check in checks for one in judge(check)), key=lambda one: -one.verdict.rank)
    because = tuple(dict.fromkeys(finding.because for finding in findings))
    match strictest(tuple(findings)):
        case Verdict.STOP | Verdict.LOOSEN as verdict:
            return failed(verdict, because, so_far)
        case Verdict.EASE:
            return _eased(checks, because, so_far)
        case Verdict.GO:
            return Decision(Step.GO, because, so_far.failed)


def at_once(checks: Sequence[CuffCheck], so_far: SoFar) -> Decision | None:
    """What an answer decides before the questions that are left; None: ask on.

    A reason to take the bands off never waits, and what is rated too tight need not be looked at further. A slow
    refill does wait for the feeling, which may be worse.
    """
    findings = sorted((one for check in checks for one in judge(check)), key=lambda one: -one.verdict.rank)
    verdict = strictest(tuple(findings))
    unseen = all(check.refill is None for check in checks)
    if verdict is not Verdict.STOP and not (verdict is Verdict.LOOSEN and unseen):
        return None
    return failed(verdict, tuple(dict.fromkeys(finding.because for finding in findings)), so_far)


def failed(verdict: Verdict, because: tuple[str, ...], so_far: SoFar) -> Decision:
    """A failed check, or tingling, numbness, blue, white or cold at any other moment (verdict STOP)."""
    count = so_far.failed + 1
    if count >= FAILED_CHECKS_END:
        return Decision(Step.END, because, count)
    step = Step.FIT_AGAIN if verdict is Verdict.STOP else Step.LOOSEN
    return Decision(step, because, count)


def _eased(checks: Sequence[CuffCheck], because: tuple[str, ...], so_far: SoFar) -> Decision:
    loose = "loose" in because
    unseen = {check.limb for check in checks if unseen_refill(check)}
    step = Step.GO
    if not unseen <= so_far.unseen_allowed:
        step = Step.ASK_COACH
    # What was too tight stays looser.
    elif loose and not (so_far.snugged or so_far.sets_done or so_far.failed):
        step = Step.SNUGGER
    return Decision(step, because, so_far.failed, loose)


class Again(StrEnum):
    """Why the check is asked again. Stored."""

    REFITTED = "refitted"
    LIMBS_SWELL = "limbs_swell"
    WAS_SLOW = "was_slow"


def check_again(session_number: int, sets_done: int, *, was_slow: bool, refitted: bool) -> Again | None:
    """Whether to check once more before the next set, and why.

    `session_number` counts a client's sessions from 1, `sets_done` the sets since the bands went on;
    `was_slow`: the last check of this client had a slow refill; `refitted`: not checked since a new fit.
    """
    if refitted:
        return Again.REFITTED
    if sets_done != 1:
        return None
    if session_number <= FIRST_SESSIONS:
        return Again.LIMBS_SWELL
    return Again.WAS_SLOW if was_slow else None


def names(findings: Sequence[Finding]) -> str:
    """Rule names as stored with a check: "slow_refill,loose"."""
    return ",".join(finding.because for finding in findings)
