"""What a cuff check means, one small rule each. The strictest finding wins.

A normal refill does not prove that the band is right: it only lengthens once the artery is pressed
(Shinozaki et al. 2023: no change at 60 mmHg, longer above systolic pressure). Tightness by feel is a weak
gauge too (Bell et al. 2018: 7 of 10 was 81 % of occlusion pressure in the arm, 70 % in the leg). So both are
asked, with colour and feeling, and the coach sees the pattern.
"""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from core.cuffs.checks import Colour, Compared, CuffCheck, Feeling, Place, Refill
from core.plans import Region
from core.pressure import Sex
from core.safety.sources import Source
from core.stored_names import names_in

REFILL_LIMIT_S = 3.0  # common practice, no source; 2.88 s in Shinozaki et al. 2023
OFF_FROM = 9  # tightness; 10 was at or above occlusion pressure: Bell et al. 2018, Physiol Meas
LOOSEN_FROM = 8  # tightness; own caution, no source
AIM = {Region.ARMS: (6, 6), Region.LEGS: (6, 7)}  # 6-7: common practice; arms at 6: own caution, no source


class Verdict(StrEnum):
    """What to do about the bands, least strict first. Stored."""

    GO = "go"
    EASE = "ease"  # go on, gently: no raise from this session
    LOOSEN = "loosen"  # loosen and check again before any rep
    STOP = "stop"  # bands off now

    @property
    def rank(self) -> int:
        """0 for GO; the higher, the stricter."""
        return RANKS[self]


RANKS = {verdict: rank for rank, verdict in enumerate(Verdict)}


@dataclass(frozen=True, slots=True)
class Finding:
    """The outcome of one rule. `because` is its name, `sources` are ids of core/SOURCES.md."""

    verdict: Verdict
    because: str
    sources: tuple[Source, ...] = ()


Rule = Callable[[CuffCheck], Verdict | None]


def tingling(check: CuffCheck) -> Verdict | None:
    """A nerve is pressed. Never normal."""
    return Verdict.STOP if check.feeling is Feeling.TINGLING else None


def numb(check: CuffCheck) -> Verdict | None:
    """A nerve is pressed."""
    return Verdict.STOP if check.feeling is Feeling.NUMB else None


def cold(check: CuffCheck) -> Verdict | None:
    """Too little blood comes in."""
    return Verdict.STOP if check.feeling is Feeling.COLD else None


def hurts(check: CuffCheck) -> Verdict | None:
    """A band may be felt; it may not hurt."""
    return Verdict.STOP if check.feeling is Feeling.HURTS else None


def blue(check: CuffCheck) -> Verdict | None:
    """Blood is not moving. Reddish is expected."""
    return Verdict.STOP if check.colour is Colour.BLUE else None


def white(check: CuffCheck) -> Verdict | None:
    """Blood is not coming in."""
    return Verdict.STOP if check.colour is Colour.WHITE else None


def feels_different(check: CuffCheck) -> Verdict | None:
    """Where nothing can be seen: a change in warmth or feeling."""
    return Verdict.STOP if check.compared is Compared.DIFFERENT else None


def far_too_tight(check: CuffCheck) -> Verdict | None:
    """9 and 10 of 10."""
    return Verdict.STOP if check.tightness is not None and check.tightness >= OFF_FROM else None


def too_tight(check: CuffCheck) -> Verdict | None:
    """8 of 10 and above."""
    return Verdict.LOOSEN if check.tightness is not None and check.tightness >= LOOSEN_FROM else None


def slow_refill(check: CuffCheck) -> Verdict | None:
    """Above 3 s, at any age: the published limits are for limbs without bands."""
    typed = check.refill_s is not None and check.refill_s > REFILL_LIMIT_S
    return Verdict.LOOSEN if typed or check.refill is Refill.LONGER else None


def wrong_place(check: CuffCheck) -> Verdict | None:
    """Anywhere but high on the upper arm or upper leg: fit it again."""
    return Verdict.LOOSEN if check.place in (Place.LOW, Place.ELSEWHERE) else None


def unseen_refill(check: CuffCheck) -> Verdict | None:
    """The spot could not be seen: never a passed check; the coach decides."""
    return Verdict.EASE if check.refill is Refill.CANT_SEE else None


def snug_arms(check: CuffCheck) -> Verdict | None:
    """7 on the arms: go, and a touch looser next time. An arm's 7 is nearer to closing than a leg's."""
    if check.tightness is None or check.tightness >= LOOSEN_FROM:
        return None
    return Verdict.EASE if check.tightness > AIM[check.limb.region][1] else None


def loose(check: CuffCheck) -> Verdict | None:
    """Below 6: one new fit before the first set, never tighter during one; then go on, marked loose."""
    low = check.tightness is not None and check.tightness < AIM[check.limb.region][0]
    return Verdict.EASE if low else None


def another_band(check: CuffCheck) -> Verdict | None:
    """Centimetres and feel of one band say nothing about another."""
    changed = check.band and check.fitted_band and check.band != check.fitted_band
    return Verdict.EASE if changed else None


RULES: dict[Rule, tuple[Source, ...]] = {
    tingling: (Source.NERVE_MEMORY,),
    numb: (Source.NERVE_MEMORY,),
    cold: (Source.COLOUR_PRACTICE,),
    hurts: (Source.BELL_2018,),
    blue: (Source.COLOUR_PRACTICE,),
    white: (Source.COLOUR_PRACTICE,),
    feels_different: (Source.UNSEEN_REFILL,),
    far_too_tight: (Source.BELL_2018,),
    too_tight: (Source.TIGHTNESS_PRACTICE,),
    slow_refill: (Source.REFILL_PRACTICE, Source.SHINOZAKI_2023),
    wrong_place: (Source.BAND_SITE,),
    unseen_refill: (Source.UNSEEN_REFILL,),
    snug_arms: (Source.BELL_2018, Source.TIGHTNESS_PRACTICE),
    loose: (Source.LOOSE_BANDS,),
    another_band: (Source.BIELITZKI_2023, Source.BAND_CHANGE),
}


def judge(check: CuffCheck) -> tuple[Finding, ...]:
    """Every rule that has something to say, the strictest first; empty: all is well."""
    found = [
        Finding(verdict, rule.__name__, sources)
        for rule, sources in RULES.items()
        if (verdict := rule(check)) is not None
    ]
    return tuple(sorted(found, key=lambda finding: -finding.verdict.rank))


# What says that nerve or blood suffers: asked about again ten minutes after the bands came off.
LIMB_SUFFERS = frozenset(rule.__name__ for rule in (tingling, numb, cold, blue, white, feels_different))


def limb_suffers(because: str) -> bool:
    """Whether a check, by its rule names as stored ("numb,slow_refill"), found a limb numb, off-colour or odd."""
    return not LIMB_SUFFERS.isdisjoint(names_in(because))


def strictest(findings: tuple[Finding, ...]) -> Verdict:
    """GO when there are none."""
    return max(
        (finding.verdict for finding in findings), key=lambda verdict: verdict.rank, default=Verdict.GO
    )


ELDERLY_FROM = 62  # years; from memory of Schriger and Baraff 1988
USUAL_LIMIT_SOURCES = (Source.SCHRIGER_1988,)
USUAL_LIMIT_S = {Sex.MALE: 2.0, Sex.FEMALE: 2.9}  # upper 95 % limits without a band, same paper
USUAL_LIMIT_ELDERLY_S = 4.5  # the same


def usual_refill_limit_s(age: int, sex: Sex) -> float:
    """The published upper limit of refill at a finger WITHOUT a band, in s: for the coach to compare.

    Schriger and Baraff 1988, Ann Emerg Med 17:932. The rule under a band stays 3 s for everybody.
    """
    if not 0 <= age <= 120:
        raise ValueError("age: 0 to 120 years")
    if age >= ELDERLY_FROM:
        return USUAL_LIMIT_ELDERLY_S
    return USUAL_LIMIT_S[sex]
