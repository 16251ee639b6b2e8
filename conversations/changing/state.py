"""What the dialogue about days and times knows and is told."""

from dataclasses import dataclass
from datetime import datetime

from conversations.dates.meaning import DayOrder, HowWritten, order_from
from core.calendar.limits import USUAL, Bout, Limits
from core.calendar.recurrence import When
from core.calendar.stored import when_from_text


@dataclass(frozen=True, slots=True)
class Brief(HowWritten):
    """Whose days, as they stand, and the words that began it.

    `planned_when`: the days as stored text, "" for none. `date_order`, `clock_face`: stored names, "" when never
    said; those of whoever talks. `parts`: (region, walk) of the plan's movements. `done`: what was trained
    lately. `move_day`, `move_to`: a session (by its local day, ISO) that is to move, without any words.
    `wish`: the client wants what the usual limits advise against, and the coach decides; `picked` is the reading
    that the client chose, "" when there was one. `allowed`: how often this client may train. `clock_moves`: when
    which zone's clock is planned to hold, as trips that were said before want it.
    """

    client: int
    client_name: str = ""
    coach: int | None = None
    by_coach: bool = False
    zone: str = "UTC"
    planned_when: str = ""
    said: str = ""
    said_at: datetime | None = None
    date_order: str = ""
    clock_face: str = ""
    parts: tuple[tuple[str, bool], ...] = ()
    done: tuple[Bout, ...] = ()
    move_day: str = ""
    move_to: datetime | None = None
    wish: bool = False
    picked: str = ""
    allowed: Limits = USUAL
    clock_moves: tuple[tuple[datetime, str], ...] = ()

    @property
    def home(self) -> str:
        """The zone that they come back to; on no trip, and before none, it is theirs."""
        return self.clock_moves[-1][1] if self.clock_moves else self.zone

    @property
    def when(self) -> When | None:
        """The days as they stand."""
        return when_from_text(self.planned_when) if self.planned_when else None


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `said` "" with a brief's `move_to`: that move. `said_at`: when it was said.

    `pick` counts the readings from 1; `sure` and `go` are stored names of choices; `note` is the coach's reason.
    """

    said: str | None = None
    said_at: datetime | None = None
    order: str | None = None
    pick: str | None = None
    sure: str | None = None
    go: str | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True)
class Meaning:
    """One reading. `told` says it back; `when` are the new days as stored text ("": none).

    `limit`: the first usual limit that a new session would break, "" for none. A trip has `zone` instead, with
    `first` and `last` day (ISO; "": from now on). `still`: nothing would change by it, and `told` is all to say;
    `away`: for some days, so perhaps away from the equipment.
    """

    told: str
    when: str = ""
    limit: str = ""
    zone: str = ""
    first: str = ""
    last: str = ""
    still: bool = False
    away: bool = False


@dataclass(frozen=True, slots=True)
class Meanings:
    """All readings; none: `problem` says why, in words."""

    readings: tuple[Meaning, ...] = ()
    problem: str = ""


def order_of(brief: Brief, draft: Draft) -> DayOrder | None:
    """How whoever talks writes dates; None: not known yet."""
    return order_from(draft.order or brief.date_order)
