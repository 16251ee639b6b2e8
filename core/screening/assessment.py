"""The outcome of a screening, when to ask again, and which limbs a decision opens."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from enum import StrEnum

from core.cuffs.limbs import ALL, Limb
from core.safety.sources import Source
from core.screening.answers import Answers, missing
from core.screening.grades import Finding, Tier
from core.screening.rules import PASSING, emergency, findings

AGAIN_AFTER = timedelta(weeks=12)  # own caution, no source
SOURCES = (Source.ASK_AGAIN,)
WAS_BARRED = "was_do_not_start"  # a finding: the screening before this one said so


@dataclass(frozen=True, slots=True)
class Assessment:
    """The strictest tier, the limbs that are closed, and why, the strictest first.

    `emergency`: say the emergency words now. Closed limbs stay closed whatever the coach decides.
    """

    tier: Tier
    closed: frozenset[Limb]
    findings: tuple[Finding, ...]
    emergency: bool = False

    @property
    def open_limbs(self) -> frozenset[Limb]:
        """Limbs that a decision may open."""
        return frozenset() if self.tier is Tier.DO_NOT_START else ALL - self.closed

    @property
    def passing(self) -> bool:
        """Whether every "do not start" in it may have passed by a later screening."""
        final = [finding for finding in self.findings if finding.tier is Tier.DO_NOT_START]
        return bool(final) and all(finding.rule in PASSING for finding in final)


def assess(answers: Answers) -> Assessment:
    """What complete answers say. Raises ValueError while a question is open."""
    question = missing(answers)
    if question is not None:
        raise ValueError(f"{question}: not answered yet")
    return preview(answers)


def preview(answers: Answers) -> Assessment:
    """What the answers so far say, for a first look while questions are open."""
    found = findings(answers)
    tier = max((finding.tier for finding in found), key=lambda tier: tier.rank, default=Tier.CLEAR)
    closed = frozenset(limb for finding in found for limb in finding.closes)
    return Assessment(tier, closed, found, emergency(answers))


def after(found: Assessment, earlier: Tier | None) -> Assessment:
    """Answers that follow a "do not start" are for the coach to look at, even if nothing speaks against it now."""
    if earlier is not Tier.DO_NOT_START or found.tier is not Tier.CLEAR:
        return found
    looked_at = Finding(WAS_BARRED, Tier.COACH_LOOKS, (), frozenset(), SOURCES)
    return replace(found, tier=Tier.COACH_LOOKS, findings=(looked_at, *found.findings))


class News(StrEnum):
    """What makes a new screening due at once. Stored."""

    HOSPITAL = "hospital"
    MEDICINE = "medicine"
    DIAGNOSIS = "diagnosis"
    PREGNANCY = "pregnancy"
    INJURY = "injury"
    SOMETHING = "something"  # said before a session, what it is in the client's own words


class Due(StrEnum):
    """Why screening is asked again. Stored."""

    TWELVE_WEEKS = "twelve_weeks"
    NEWS = "news"
    NEVER_ASKED = "never_asked"


def due(screened_on: date | None, today: date, news: Iterable[News] = ()) -> Due | None:
    """Whether to screen (again) today; `news`: what happened since the last screening."""
    if screened_on is None:
        return Due.NEVER_ASKED
    if any(True for _ in news):
        return Due.NEWS
    return Due.TWELVE_WEEKS if today - screened_on >= AGAIN_AFTER else None
