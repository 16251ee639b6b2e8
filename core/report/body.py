"""Pain, the looks at the bands and girths over a stretch of time."""

from collections import Counter
from collections.abc import Sequence
from statistics import fmean

from core.facts import CuffChecked, Measured
from core.outcomes import girth_change, pain_change
from core.report.kinds import Checks, GirthTrend, Pain, PainTrend, Taken, day_of
from core.safety.asking import Part
from core.safety.pain import Where

WENT_ON = ("go", "ease")


LATER = frozenset((*Part, "48h"))  # asked after the day's training; "48h" was stored before


def pain_days(taken: Taken) -> tuple[Pain, ...]:
    """Pain by session, in the order of sessions."""
    scores: dict[str, dict[str, int]] = {}
    days: dict[str, str] = {}
    for one in sorted((each for each in taken.rated if each.what == "pain"), key=lambda each: each.at):
        burn = one.part == "after" and one.where == Where.MUSCLE
        part = "morning" if one.part in LATER else one.part
        mine = scores.setdefault(one.session, {})
        mine[part] = max(mine.get(part, 0), 0 if burn else one.score)
        days.setdefault(one.session, day_of(one.at, taken.zone))
    return tuple(
        Pain(days[session], parts.get("before"), parts.get("after"), parts.get("morning"))
        for session, parts in scores.items()
    )


def pain_trend(before: Sequence[int]) -> PainTrend | None:
    """From the first to the last third; None with fewer than two ratings."""
    if len(before) < 2:
        return None
    third = max(1, len(before) // 3)
    first, last = fmean(before[:third]), fmean(before[-third:])
    return PainTrend(first, last, pain_change(first, last))


def checks(found: Sequence[CuffChecked]) -> Checks:
    """What the cuff checks came to."""
    verdicts = Counter(one.verdict for one in found)
    on = [one for one in found if one.verdict in WENT_ON]
    unseen = sum("unseen_refill" in one.because for one in on)
    tight = [one.tightness for one in on if one.tightness is not None]
    mean = fmean(tight) if tight else None
    return Checks(len(found), len(on) - unseen, verdicts["loosen"], verdicts["stop"], mean, unseen)


def girths(taken: Taken) -> tuple[GirthTrend, ...]:
    """The first and the last measurement of each limb; none with fewer than two."""
    by_limb: dict[str, list[Measured]] = {}
    for one in sorted(taken.measured, key=lambda each: each.at):
        by_limb.setdefault(one.limb, []).append(one)
    return tuple(_girth(limb, found, taken.zone) for limb, found in by_limb.items() if len(found) > 1)


def _girth(limb: str, found: Sequence[Measured], zone: str) -> GirthTrend:
    first, last = found[0], found[-1]
    change = girth_change(first.girth_cm, last.girth_cm)
    name = limb.replace("_", " ")
    return GirthTrend(
        name, day_of(first.at, zone), first.girth_cm, day_of(last.at, zone), last.girth_cm, change
    )
