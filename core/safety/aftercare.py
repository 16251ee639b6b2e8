"""After a session: what is asked, and where each answer leads. It routes; it never scores or diagnoses."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import timedelta
from enum import StrEnum

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
SORE_AND_MORE = Lead(
    "sore_and_more", Route.CLINICIAN_TODAY, Cause.MUSCLE_SIGNS, (Source.KRIEGER_2018, Source.TABATA_2016)
)


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


def lead_of(sign: Sign, said: Collection[Sign] = ()) -> Lead:
    """Where a sign leads that was just said with "yes"; `said`: the signs said before. Raises KeyError for ANYTHING."""
    lead = _lead(sign)
    together = {sign, *said}
    if (
        Sign.SORE_BEYOND in together
        and together & WITH_SORENESS
        and lead.route.rank < SORE_AND_MORE.route.rank
    ):
        return SORE_AND_MORE
    return lead


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
    return [SORE_AND_MORE] if together else []


# --- what a session was stopped for ---------------------------------------------------------------------------
# A stored `Noticed.kind` -> why the coach is told when it is still there at the next questions.
WHEN_IT_STAYS: dict[str, Cause] = {
    "said_emergency": Cause.SIGNS_AFTER,
    "said_faint": Cause.NOT_BETTER,
    "said_nerve": Cause.NUMB_MORNING,
    "said_circulation": Cause.NOT_BETTER,
    "said_swelling": Cause.CLOT_SIGNS,
    "said_urine": Cause.URINE,
    "said_injury": Cause.NOT_BETTER,
    "said_unsure": Cause.NOT_BETTER,
    "said_hurts": Cause.OTHER_AFTER,
}


def asks_about(noticed: str) -> bool:
    """Whether the questions after a session begin with what was noticed in it (a stored `Noticed.kind`)."""
    return noticed in WHEN_IT_STAYS


def still_there(noticed: str) -> Cause:
    """Why the coach is told. Raises KeyError for what is not asked about."""
    return WHEN_IT_STAYS[noticed]


# --- numbness that stays --------------------------------------------------------------------------------------
NUMB_LIMIT = timedelta(minutes=10)  # after bands off; own caution, no source
