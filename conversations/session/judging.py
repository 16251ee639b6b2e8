"""From the answers about the bands to what the rules want to know, and to the facts that are stored."""

from dataclasses import replace
from datetime import datetime
from itertools import zip_longest

from conversations.session.state import State, banded_limbs
from core.cuffs import (
    Colour,
    Compared,
    CuffCheck,
    Feeling,
    Limb,
    Look,
    Place,
    Refill,
    SoFar,
    judge,
    refill_of,
    strictest,
)
from core.facts import CuffChecked


def so_far(state: State) -> SoFar:
    """What this session has seen."""
    snugged = state.refitted_loose or state.rechecked
    allowed = frozenset(Limb(name) for name in state.brief.unseen_limbs)
    return SoFar(state.failed_checks, snugged, len(state.counted), allowed)


def checks_of(state: State, felt: str = "") -> list[CuffCheck]:
    """What is known of each banded limb by now; `felt` "": the feeling was not asked yet."""
    answers = zip_longest(banded_limbs(state), state.refills, fillvalue="")
    return [check_of(state, Limb(limb), answer, felt) for limb, answer in answers]


def check_of(state: State, limb: Limb, answer: str, felt: str) -> CuffCheck:
    """The answers about one limb. `answer`: a refill, "s2.5", "nail:...", or warmth; "": not asked."""
    colour = {"": None, "colour": Colour.BLUE}.get(felt, Colour.USUAL)
    feeling = {"": None, "tingling": Feeling.TINGLING, "pinching": Feeling.HURTS}.get(felt, Feeling.FINE)
    known = CuffCheck(
        limb,
        state.tightness,
        colour=colour,
        feeling=feeling,
        place=Place.LOW if felt == "slid" else None,
        band=state.band,
        fitted_band=state.brief.last_band.get(state.doing.region, ""),
    )
    if not answer:
        return known
    if answer in ("same", "different"):
        return replace(known, refill=Refill.CANT_SEE, look=Look.COMPARED, compared=Compared(answer))
    seen = answer.removeprefix("nail:")
    look = Look.FINGERNAIL if answer.startswith("nail:") else known.first_look
    if seen.startswith("s"):
        return replace(known, refill=refill_of(float(seen[1:])), refill_s=float(seen[1:]), look=look)
    return replace(known, refill=Refill(seen), look=look)


def fact_of(state: State, at: datetime, check: CuffCheck) -> CuffChecked:
    """What is stored of one limb; empty where it was decided before that was asked."""
    findings = judge(check)
    return CuffChecked(
        at,
        state.brief.session,
        state.spell_id,
        state.check_no,
        check.limb.value,
        check.tightness,
        check.refill.value if check.refill else "",
        check.refill_s,
        check.colour.value if check.colour is Colour.BLUE else (check.feeling or ""),
        strictest(findings).value,
        ",".join(finding.because for finding in findings),
        check.band,
    )
