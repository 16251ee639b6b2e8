"""The phrases with the reading each must get, and what a reader makes of them."""

from collections import Counter
from dataclasses import dataclass
from pathlib import Path

from conversations.stopwords import Kind, read

FOLDER = Path(__file__).parent / "phrases"
HELD_OUT = "held_out"
# Asked back or let pass is a red flag missed for these; asking "where does it hurt?" is no stop.
RED_FLAGS = frozenset(Kind) - {Kind.NONE, Kind.UNSURE}
STOPS = frozenset(Kind) - {Kind.NONE, Kind.UNSURE}


@dataclass(frozen=True, slots=True)
class Line:
    """One phrase as a client types it, the reading it must get, and the file it stands in."""

    wanted: Kind
    text: str
    file: str

    @property
    def got(self) -> Kind:
        """What the reader makes of it."""
        return read(self.text).kind


def lines(*, held_out: bool = False) -> list[Line]:
    """The table, or the part that was written after the reader."""
    return [
        line
        for path in sorted(FOLDER.glob("*.txt"))
        if (HELD_OUT in path.stem) is held_out
        for line in _lines(path)
    ]


def _lines(path: Path) -> list[Line]:
    found: list[Line] = []
    for raw in path.read_text(encoding="utf-8").splitlines():
        if raw and not raw.startswith("#"):
            kind, _, text = raw.partition(" | ")
            found.append(Line(Kind(kind), text, path.stem))
    return found


@dataclass(frozen=True, slots=True)
class Score:
    """How well a table was read.

    `missed`: red flags read as nothing or asked about; `weaker`: read as a lesser kind; `false`: stopped
    although the phrase is no reason to; `innocent`: how many phrases are no reason to.
    """

    lines: int
    wrong: tuple[Line, ...]
    missed: tuple[Line, ...]
    weaker: tuple[Line, ...]
    false: tuple[Line, ...]
    innocent: int

    @property
    def false_percent(self) -> float:
        """False stops of a hundred phrases that are no reason to stop."""
        return 100 * len(self.false) / self.innocent if self.innocent else 0.0


def score(table: list[Line]) -> Score:
    """Read every line once."""
    read_as = [(line, line.got) for line in table]
    return Score(
        len(table),
        tuple(line for line, got in read_as if got is not line.wanted),
        tuple(line for line, got in read_as if line.wanted in RED_FLAGS and got not in RED_FLAGS),
        tuple(line for line, got in read_as if line.wanted in RED_FLAGS and got.rank < line.wanted.rank),
        tuple(line for line, got in read_as if line.wanted not in STOPS and got in STOPS),
        sum(line.wanted not in STOPS for line in table),
    )


def matrix(table: list[Line]) -> str:
    """Rows: wanted, columns: read."""
    counts = Counter((line.wanted, line.got) for line in table)
    head = " " * 12 + "".join(f"{kind[:6]:>7}" for kind in Kind)
    rows = [f"{wanted:<12}" + "".join(f"{counts[wanted, got] or '.':>7}" for got in Kind) for wanted in Kind]
    return "\n".join([head, *rows])
