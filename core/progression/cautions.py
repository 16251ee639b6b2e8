"""What forbids a raise, one rule a function; the first in the list is the one that is said.

All of them look at what was told (pain, days, bands), never at reps, so that more reps cannot forbid a raise.
"""

from collections.abc import Callable
from datetime import date, timedelta
from itertools import pairwise

from core.plans import HIGHEST_PAIN_CEILING, PAIN_CEILING
from core.progression.evidence import bands_loose, bands_tight
from core.progression.prior import LAYOFF_DAYS
from core.progression.records import Caution, Request, SessionRecord

SETTLED_PAIN = 2  # 0-2 counts as safe in the pain-monitoring model: from memory (Thomee 1997)
PAIN_RISE = 2  # points; a smaller change is no change (Farrar et al. 2001, Pain 94:149)
MISSED_DAYS = 8  # and twice the usual gap: a week was missed; own caution, no source

Rule = Callable[[Request], Caution | None]

PAUSING = frozenset({Caution.PAIN_HIGH})
# A session with loose bands or with muscles that were tired before changes no load, neither way; own caution, no source.
FREEZING = frozenset({Caution.BANDS_LOOSE, Caution.TRAINED_ELSEWHERE})
# After these the next session also aims at more reps than usual; own caution, no source.
EASING = frozenset(
    {
        Caution.PAIN_ABOVE_CEILING,
        Caution.PAIN_RAISED,
        Caution.STOPPED,
        Caution.ILL,
        Caution.LAYOFF,
    }
)


def cautions(request: Request) -> tuple[Caution, ...]:
    """Every caution that holds for the next session, the most important first; none before session 1."""
    if not request.sessions:
        return ()
    found = (rule(request) for rule in RULES)
    return tuple(caution for caution in found if caution is not None)


def days_off(request: Request) -> int | None:
    """Days from the last session to the next; None: the next day is not known."""
    if request.today is None or not request.sessions:
        return None
    return (request.today - request.sessions[-1].date).days


def usual_gap(sessions: tuple[SessionRecord, ...]) -> int:
    """The median of days between sessions; 3 when there is only one."""
    days = [session.date for session in sessions]
    gaps = sorted((later - earlier).days for earlier, later in pairwise(days))
    return gaps[len(gaps) // 2] if gaps else 3


def next_day(request: Request) -> date:
    """When the next session is: as told, else at the usual interval."""
    if request.today is not None:
        return request.today
    return request.sessions[-1].date + timedelta(days=usual_gap(request.sessions))


def _pains(request: Request) -> list[float]:
    return [session.pain for session in request.sessions if session.pain is not None]


def pain_high(request: Request) -> Caution | None:
    """Above 5 is high risk in the pain-monitoring model: from memory (Thomee 1997)."""
    pains = _pains(request)
    return Caution.PAIN_HIGH if pains and pains[-1] > HIGHEST_PAIN_CEILING else None


def pain_above_ceiling(request: Request) -> Caution | None:
    """Above what the coach set."""
    pains = _pains(request)
    return Caution.PAIN_ABOVE_CEILING if pains and pains[-1] > request.pain_ceiling else None


def pain_raised(request: Request) -> Caution | None:
    """Up by 2 points or more since the time before."""
    pains = _pains(request)
    return Caution.PAIN_RAISED if len(pains) > 1 and pains[-1] - pains[-2] >= PAIN_RISE else None


def settled(pain_ceiling: int) -> int:
    """The most pain (0-10) that counts as settled under this ceiling."""
    return SETTLED_PAIN if pain_ceiling <= PAIN_CEILING else pain_ceiling


def pain_not_settled(request: Request) -> Caution | None:
    """Above 2, unless the coach raised the ceiling on purpose."""
    pains = _pains(request)
    return Caution.PAIN_NOT_SETTLED if pains and pains[-1] > settled(request.pain_ceiling) else None


def stopped(request: Request) -> Caution | None:
    """The last session ended early."""
    return Caution.STOPPED if request.sessions[-1].stopped else None


def ill(request: Request) -> Caution | None:
    """Ill since the last session."""
    return Caution.ILL if request.ill else None


def layoff(request: Request) -> Caution | None:
    """Two weeks and more without training."""
    days = days_off(request)
    return Caution.LAYOFF if days is not None and days >= LAYOFF_DAYS else None


def missed_week(request: Request) -> Caution | None:
    """More than a week, and twice the client's usual gap."""
    days = days_off(request)
    if days is None or not MISSED_DAYS <= days < LAYOFF_DAYS:
        return None
    return Caution.MISSED_WEEK if days >= 2 * usual_gap(request.sessions) else None


def check_not_right(request: Request) -> Caution | None:
    """The cuff check was not right, or another band was used."""
    return None if request.sessions[-1].check_ok else Caution.CHECK_NOT_RIGHT


def loose(request: Request) -> Caution | None:
    """Bands below the wanted tightness."""
    return Caution.BANDS_LOOSE if bands_loose(request.sessions[-1]) else None


def tight(request: Request) -> Caution | None:
    """Bands above it, or a slow refill."""
    return Caution.BANDS_TIGHT if bands_tight(request.sessions[-1]) else None


def rough(request: Request) -> Caution | None:
    """The client lost count."""
    return Caution.ROUGH_COUNT if request.sessions[-1].rough else None


def fast(request: Request) -> Caution | None:
    """Reps ahead of the tempo."""
    return Caution.REPS_FAST if request.sessions[-1].fast else None


def trained_elsewhere(request: Request) -> Caution | None:
    """The same muscles had trained hard before the last session began."""
    return Caution.TRAINED_ELSEWHERE if request.sessions[-1].tired else None


RULES: tuple[Rule, ...] = (
    pain_high,
    pain_above_ceiling,
    pain_raised,
    pain_not_settled,
    ill,
    layoff,
    stopped,
    missed_week,
    check_not_right,
    loose,
    tight,
    rough,
    fast,
    trained_elsewhere,
)
