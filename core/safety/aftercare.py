"""After a session: what is asked when, and where each answer leads. It routes; it never scores or diagnoses."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from enum import StrEnum

from core.calendar.zones import instant, local
from core.progression.prior import LAYOFF_DAYS
from core.safety.causes import Cause
from core.safety.sources import Source


class Sign(StrEnum):
    """Asked the evening of, the morning after, and 48 h after a session. Stored."""

    ANYTHING = "anything"  # any of these?
    CHEST_OR_BREATH = "chest_or_breath"
    FAINTED = "fainted"
    ONE_SIDED = "one_sided"  # calf or arm of one side swollen, warm or painful
    DARK_URINE = "dark_urine"
    WEAKNESS = "weakness"  # a hand, foot or limb that does not do what it should
    SWELLING = "swelling"  # of what was trained
    SORE_BEYOND = "sore_beyond"  # soreness out of proportion
    NUMB_STILL = "numb_still"
    FEVER = "fever"


class Route(StrEnum):
    """Where it leads, mildest first. Stored."""

    FINE = "fine"
    COACH = "coach"
    CLINICIAN_TODAY = "clinician_today"
    EMERGENCY = "emergency"

    @property
    def rank(self) -> int:
        """0 for FINE; the higher, the stricter."""
        return RANKS[self]


RANKS = {route: rank for rank, route in enumerate(Route)}
YES, NO, NOT_SURE = "yes", "no", "not_sure"


@dataclass(frozen=True, slots=True)
class Lead:
    """Where one finding leads, with the alert's cause and where the rule comes from."""

    because: str
    route: Route
    cause: Cause
    sources: tuple[Source, ...]


WHEN_YES: dict[Sign, tuple[Route, Cause, tuple[Source, ...]]] = {
    Sign.CHEST_OR_BREATH: (Route.EMERGENCY, Cause.SIGNS_AFTER, (Source.WELLS, Source.STOP_TEST)),
    Sign.FAINTED: (Route.EMERGENCY, Cause.SIGNS_AFTER, (Source.WELLS, Source.STOP_TEST)),
    Sign.ONE_SIDED: (Route.EMERGENCY, Cause.CLOT_SIGNS, (Source.WELLS,)),
    Sign.DARK_URINE: (Route.EMERGENCY, Cause.URINE, (Source.KRIEGER_2018, Source.OCONNOR_2008)),
    Sign.WEAKNESS: (Route.EMERGENCY, Cause.WEAKNESS, (Source.KRIEGER_2018, Source.NERVE_MEMORY)),
    Sign.SWELLING: (Route.CLINICIAN_TODAY, Cause.MUSCLE_SIGNS, (Source.KRIEGER_2018,)),
    Sign.NUMB_STILL: (Route.CLINICIAN_TODAY, Cause.NUMB_MORNING, (Source.NERVE_MEMORY, Source.NUMB_AFTER)),
    Sign.FEVER: (Route.COACH, Cause.FEVER_AFTER, (Source.TABATA_2016,)),
    Sign.SORE_BEYOND: (Route.COACH, Cause.SORE, (Source.KRIEGER_2018,)),
}
# Soreness out of proportion with any of these is more than soreness.
WITH_SORENESS = frozenset({Sign.SWELLING, Sign.WEAKNESS, Sign.DARK_URINE, Sign.FEVER})


def missing_sign(said: Mapping[Sign, str]) -> Sign | None:
    """The next question; None: all there."""
    if Sign.ANYTHING not in said:
        return Sign.ANYTHING
    if said[Sign.ANYTHING] == NO:
        return None
    return next((sign for sign in WHEN_YES if sign not in said), None)


def leads(said: Mapping[Sign, str]) -> tuple[Lead, ...]:
    """Where the answers lead, strictest first; empty: fine. Raises ValueError while one is open or unknown."""
    open_question = missing_sign(said)
    if open_question is not None:
        raise ValueError(f"{open_question}: not answered yet")
    unknown = [sign for sign, answer in said.items() if answer not in (YES, NO, NOT_SURE)]
    if unknown:
        raise ValueError(f"{unknown[0]}: yes, no or not_sure")
    if said[Sign.ANYTHING] == NO:
        return ()
    found = [_lead(sign) for sign in WHEN_YES if said[sign] == YES] + _unsure(said) + _sore(said)
    return tuple(sorted(found, key=lambda lead: -lead.route.rank))


def route(said: Mapping[Sign, str]) -> Route:
    """The strictest of `leads`."""
    return max((lead.route for lead in leads(said)), key=lambda route: route.rank, default=Route.FINE)


def _lead(sign: Sign) -> Lead:
    return Lead(str(sign), *WHEN_YES[sign])


def _unsure(said: Mapping[Sign, str]) -> list[Lead]:
    """ "Not sure" about a sign of an emergency goes to a clinician today, about anything else to the coach."""
    unsure = [WHEN_YES[sign][0] for sign in WHEN_YES if said[sign] == NOT_SURE]
    if not unsure:
        return []
    grave = Route.EMERGENCY in unsure
    return [
        Lead(
            "not_sure",
            Route.CLINICIAN_TODAY if grave else Route.COACH,
            Cause.MUSCLE_SIGNS if grave else Cause.NOT_SURE_AFTER,
            (Source.NOT_SURE,),
        )
    ]


def _sore(said: Mapping[Sign, str]) -> list[Lead]:
    """Soreness out of proportion together with swelling, weakness, dark urine or fever."""
    together = said[Sign.SORE_BEYOND] == YES and any(said[sign] == YES for sign in WITH_SORENESS)
    if not together:
        return []
    sources = (Source.KRIEGER_2018, Source.TABATA_2016)
    return [Lead("sore_and_more", Route.CLINICIAN_TODAY, Cause.MUSCLE_SIGNS, sources)]


# --- numbness that stays --------------------------------------------------------------------------------------
NUMB_LIMIT = timedelta(minutes=10)  # after bands off; own caution, no source


def numb_for_too_long(off_at: datetime, now: datetime) -> bool:
    """Numb or tingling more than 10 min after the bands came off: coach now."""
    return now - off_at > NUMB_LIMIT


# --- when to ask ----------------------------------------------------------------------------------------------
# Own caution, no source.
FIRST_SESSIONS = 2
EVENING = (time(18), time(21))  # local; at least 2 h after the session
AFTER_SESSION = timedelta(hours=2)
MORNING = time(8)  # local, the next day
NIGHT_ENDS = timedelta(hours=4)  # a session at half past midnight belongs to the day before
LATER = timedelta(hours=48)  # soreness peaks 24-72 h after (from memory)
NO_REPLY = timedelta(hours=12)
LARGE_JUMP = 0.10  # of the load; above the 2-10 % of ACSM 2009
SOURCES = (Source.AFTERCARE, Source.NUMB_AFTER)


class Part(StrEnum):
    """Which question after a session. Stored."""

    EVENING = "evening"
    MORNING = "morning"
    TWO_DAYS = "two_days"


@dataclass(frozen=True, slots=True)
class After:
    """What matters for the questions after a session.

    `number` counts a client's sessions from 1; `days_off` since the one before (None: the first); `jump` the
    share by which the load went up; `hot_or_feverish` as said that day.
    """

    number: int
    days_off: int | None = None
    jump: float = 0.0
    hot_or_feverish: bool = False

    @property
    def needs_care(self) -> bool:
        """New, back after two weeks, or hot: muscle breakdown is likelier (Tabata et al. 2016)."""
        back = self.days_off is not None and self.days_off >= LAYOFF_DAYS
        return self.number <= FIRST_SESSIONS or back or self.hot_or_feverish


def asked_after(after: After, ended_at: datetime, zone: str) -> tuple[tuple[Part, datetime], ...]:
    """The questions after a session that ended at `ended_at`, with their times in UTC.

    The next morning always; the evening and 48 h later when it needs care, 48 h also after a large jump.
    """
    day = (local(ended_at, zone) - NIGHT_ENDS).date()
    asked = [(Part.MORNING, instant(day + timedelta(days=1), MORNING, zone))]
    evening = _evening(ended_at, zone)
    if after.needs_care and evening is not None:
        asked.insert(0, (Part.EVENING, evening))
    if after.needs_care or after.jump > LARGE_JUMP:
        asked.append((Part.TWO_DAYS, ended_at.astimezone(UTC) + LATER))
    return tuple(asked)


def _evening(ended_at: datetime, zone: str) -> datetime | None:
    """At 18:00 or two hours after, whichever is later; None when that is after 21:00."""
    day = local(ended_at, zone).date()
    first, last = (instant(day, at, zone) for at in EVENING)
    at = max(first, ended_at.astimezone(UTC) + AFTER_SESSION)
    return at if at <= last else None


def no_reply_at(asked_at: datetime) -> datetime:
    """When an unanswered question goes on the coach's list, in UTC; it blocks the next session before that, too."""
    return asked_at.astimezone(UTC) + NO_REPLY
