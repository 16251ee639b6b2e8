"""What happened, as typed values: one class, one table; the columns are the fields.

Facts are only ever added. A fact that says the same thing again (the same `key`) replaces the earlier one,
which stays on record; readers see the latest. Times are aware datetimes here, integer ms in the store.
"""

from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from core.plans import Region, Side


@dataclass(frozen=True, slots=True)
class Agreed:
    """The client agreed to what is stored and to what this is not. `text` names the wording shown."""

    key: ClassVar[tuple[str, ...]] = ()
    at: datetime
    text: str


@dataclass(frozen=True, slots=True)
class Detail:
    """A thing to know about a client: phone, address, emergency contact, zone, band, helper, ..."""

    key: ClassVar[tuple[str, ...]] = ("name",)
    at: datetime
    name: str
    value: str


@dataclass(frozen=True, slots=True)
class ScreeningAnswer:
    """One answer of a screening, as the stored name of the question and what was said."""

    key: ClassVar[tuple[str, ...]] = ("screening", "question")
    at: datetime
    screening: str
    question: str
    answer: str


@dataclass(frozen=True, slots=True)
class ScreeningDone:
    """A screening came to its end with a tier; `closed` lists closed limbs, `because` rule names."""

    key: ClassVar[tuple[str, ...]] = ("screening",)
    at: datetime
    screening: str
    tier: str
    closed: str
    because: str


@dataclass(frozen=True, slots=True)
class Cleared:
    """The coach's decision after a screening.

    `regions`: what it opens, a pair by its region and else single limbs ("arms,legs", "right_arm,legs"), or "".
    `until`: when it ends, a hold as well. `limits`: what it forbids, as stored names of
    `core.screening.Restriction` with commas between.
    """

    key: ClassVar[tuple[str, ...]] = ()
    at: datetime
    screening: str
    decision: str
    regions: str
    by: int
    until: datetime | None = None
    note: str = ""
    limits: str = ""


@dataclass(frozen=True, slots=True)
class PlanGiven:
    """A plan (versioned JSON of `core.plans.Plan`), by whom and why."""

    key: ClassVar[tuple[str, ...]] = ()
    at: datetime
    plan: str
    by: int
    why: str = ""


@dataclass(frozen=True, slots=True)
class CalendarChanged:
    """The days of the plan from now on: `when` as stored text ("": none), by whom, in which words.

    `limit` is the stored name of the usual limit that was set aside, `note` the coach's reason.
    """

    key: ClassVar[tuple[str, ...]] = ()
    at: datetime
    when: str
    by: int
    said: str
    limit: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class SessionStarted:
    """A session began; `session` is its id, `number` counts a client's sessions from 1."""

    key: ClassVar[tuple[str, ...]] = ("session",)
    at: datetime
    session: str
    number: int
    plan: str


NOTHING_WRONG = "nothing_wrong"  # `Noticed.kind`: the client's no to "Is something wrong right now?"
GETS_BETTER = "now_better"  # `Noticed.kind`: what the client said to "How is it now?"
NOT_ON = "not_on"  # why a spell of bands ended that were counted as on and, as the client says, never were
LAPSED = "lapsed"  # ending of a session: nobody answered any more
WORKED = ("done", "time")  # endings of a session that ran as planned, or to the time limit


@dataclass(frozen=True, slots=True)
class SessionEnded:
    """A session ended: `why` is one of `WORKED`, or what stopped it."""

    key: ClassVar[tuple[str, ...]] = ("session",)
    at: datetime
    session: str
    why: str


@dataclass(frozen=True, slots=True)
class Answered:
    """One question about a session (before, after, next morning): stored names and what was said."""

    key: ClassVar[tuple[str, ...]] = ("session", "part", "question")
    at: datetime
    session: str
    part: str
    question: str
    answer: str


@dataclass(frozen=True, slots=True)
class BandsOn:
    """Bands closed for one movement; `at` is the safe (early) bound; `limit_s` seconds may pass."""

    key: ClassVar[tuple[str, ...]] = ("session", "spell")
    at: datetime
    session: str
    spell: str
    region: Region
    limit_s: int


@dataclass(frozen=True, slots=True)
class BandsOff:
    """Bands are off, as the client says; `why`: "done", "time", "refit", "stopped", "not_on", "too_early", "off_early", "unasked"."""

    key: ClassVar[tuple[str, ...]] = ("session", "spell")
    at: datetime
    session: str
    spell: str
    why: str


@dataclass(frozen=True, slots=True)
class CuffChecked:
    """One limb looked at: tightness 0-10, refill as answered (and seconds when typed), feeling, verdict."""

    key: ClassVar[tuple[str, ...]] = ("session", "spell", "check_no", "limb")
    at: datetime
    session: str
    spell: str
    check_no: int
    limb: str
    tightness: int | None
    refill: str
    refill_s: float | None
    feeling: str
    verdict: str
    because: str
    band: str = ""


@dataclass(frozen=True, slots=True)
class SetDone:
    """One set on one side. `done_at` is when "Set done" came (or the reps), `rest_s` the rest before it.

    `reps` are clean reps; `rough`: the client was not sure; `reps_left`: clean reps thought left, None when
    not asked; `doing` is the load or rung as stored.
    """

    key: ClassVar[tuple[str, ...]] = ("session", "exercise_no", "set_no", "side")
    at: datetime
    session: str
    exercise_no: int
    movement: str
    set_no: int
    side: Side
    doing: str
    reps: int
    rough: bool
    done_at: datetime
    rest_s: float | None
    tightness: int | None
    loose: bool
    reps_left: int | None = None
    aim_low: int | None = None
    aim_high: int | None = None
    expected: int | None = None

    @property
    def in_range(self) -> bool | None:
        """Whether an open set landed in its range; None: a set without one, gentle or ended at its number."""
        if self.aim_low is None or self.aim_high is None or self.aim_low == self.aim_high:
            return None
        return self.aim_low <= self.reps <= self.aim_high


@dataclass(frozen=True, slots=True)
class WalkDone:
    """A walk with leg bands: minutes under bands and the pace as planned or said (km/h)."""

    key: ClassVar[tuple[str, ...]] = ("session", "exercise_no")
    at: datetime
    session: str
    exercise_no: int
    minutes: float
    kmh: float


@dataclass(frozen=True, slots=True)
class Rated:
    """A 0-10 rating: `what` is "pain" or "effort", `part` before/during/after/morning, `where` for pain."""

    key: ClassVar[tuple[str, ...]] = ("session", "what", "part")
    at: datetime
    session: str
    what: str
    part: str
    score: int
    where: str = ""


@dataclass(frozen=True, slots=True)
class LoadMoved:
    """The next load of a movement, and why. `applied` is False while it waits for the coach's tap."""

    key: ClassVar[tuple[str, ...]] = ("session", "movement")
    at: datetime
    session: str
    movement: str
    was: str
    use: str
    action: str
    because: str
    applied: bool
    expected: str = ""


@dataclass(frozen=True, slots=True)
class Measured:
    """A girth in cm, taken before training. `limb` as in `core.cuffs`: "left_arm", "right_leg", ..."""

    key: ClassVar[tuple[str, ...]] = ()
    at: datetime
    limb: str
    girth_cm: float


@dataclass(frozen=True, slots=True)
class BandOwned:
    """A band of the client: its `letter`, where it goes, its width in cm (0: it is no more), and its mark ("": none)."""

    key: ClassVar[tuple[str, ...]] = ("letter",)
    at: datetime
    letter: str
    region: Region
    width_cm: float
    mark: str


@dataclass(frozen=True, slots=True)
class Noticed:
    """Something said outside a question that the coach should be able to read: stop words, notes."""

    key: ClassVar[tuple[str, ...]] = ()
    at: datetime
    kind: str
    said: str


@dataclass(frozen=True, slots=True)
class CoachDid:
    """What a coach (Telegram number `by`) did about a client; the client may ask for this log."""

    key: ClassVar[tuple[str, ...]] = ()
    at: datetime
    by: int
    action: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Paused:
    """No session and no reminder from `since` to `until`; the latest counts. The same instant: no pause."""

    key: ClassVar[tuple[str, ...]] = ()
    at: datetime
    since: datetime
    until: datetime
    by: int
    why: str = ""


@dataclass(frozen=True, slots=True)
class PlanEnded:
    """The plan came to its end; a plan given later begins anew."""

    key: ClassVar[tuple[str, ...]] = ()
    at: datetime
    by: int
    why: str = ""


@dataclass(frozen=True, slots=True)
class Travelling:
    """From `since` to `until` the plan's movements are done without equipment; the latest counts."""

    key: ClassVar[tuple[str, ...]] = ()
    at: datetime
    since: datetime
    until: datetime
    by: int


@dataclass(frozen=True, slots=True)
class StandIn:
    """About a coach: from `since` to `until` the coach `stand_in` (a person's id) looks after their clients."""

    key: ClassVar[tuple[str, ...]] = ("stand_in",)
    at: datetime
    stand_in: int
    since: datetime
    until: datetime


@dataclass(frozen=True, slots=True)
class TemplateSaved:
    """About a coach: a plan to begin from, by its name; `plan` as stored text, "": no more."""

    key: ClassVar[tuple[str, ...]] = ("name",)
    at: datetime
    name: str
    plan: str


Fact = (
    Agreed
    | Detail
    | ScreeningAnswer
    | ScreeningDone
    | Cleared
    | PlanGiven
    | CalendarChanged
    | SessionStarted
    | SessionEnded
    | Answered
    | BandsOn
    | BandsOff
    | CuffChecked
    | SetDone
    | WalkDone
    | Rated
    | LoadMoved
    | Measured
    | BandOwned
    | Noticed
    | CoachDid
    | Paused
    | PlanEnded
    | Travelling
    | StandIn
    | TemplateSaved
)
