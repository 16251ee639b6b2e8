"""What a coach has said about a plan so far."""

from dataclasses import dataclass, field

from conversations.adjusting.state import Draft as Change


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet.

    `owned` as "2 kg|4 kg", without units until they are said; `starts`: movement -> load; `bests`: movement ->
    best single lift as told; `offered`: movement -> the load that follows from it, until the coach agrees;
    `test`: the movement of a strength test that comes first; `when`: stored text, "" for no fixed days;
    `readings`: what the typed days may mean; `problem`: why they could not be taken (a stored name), `heard`: what
    was typed then, to be completed; `over`: why the days may go over the usual limits; `changes`: parts that were
    changed from the summary, in their order, each on the plan as the ones before it left it.
    """

    template: str | None = None
    owned: str | None = None
    starts: dict[str, str] = field(default_factory=dict)
    bests: dict[str, str] = field(default_factory=dict)
    offered: dict[str, str] = field(default_factory=dict)
    test: str | None = None
    side: str | None = None
    when: str | None = None
    over: str | None = None
    confirm: str | None = None
    readings: tuple[str, ...] = ()
    problem: str | None = None
    heard: str = ""
    changes: tuple[Change, ...] = ()
