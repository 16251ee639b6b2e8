"""What every look needs: the store's rows, what came since the last look, and how long it has been calm."""

from collections import defaultdict
from datetime import datetime, timedelta
from sqlite3 import Row
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from tests.simulation.world import World

GRACE = timedelta(seconds=30)  # from a due time to its effect, in calm weather


class Looker:
    """Looks at one world from one side. Marks (`_new`) keep a check to the rows that came since the last look."""

    def __init__(self, world: "World") -> None:
        self.world = world
        self.marks: dict[str, int] = defaultdict(int)

    @property
    def now(self) -> datetime:
        """The wall clock."""
        return self.world.clock.now()

    def rows(self, sql: str, *values: Any) -> list[Row]:
        """A query."""
        return self.world.store.rows(sql, values)

    def _new(self, name: str, sql: str) -> list[Row]:
        """Rows of `sql` (with one mark for the last id seen) since the last look."""
        rows = self.rows(sql, self.marks[name])
        if rows:
            self.marks[name] = max(row["id"] for row in rows)
        return rows

    def _calm_for(self, due: datetime, grace: timedelta = GRACE) -> bool:
        """Whether `due` is long past and nothing disturbed the process since."""
        return not self._disturbed() and max(due, self.world.calm_since) + grace < self.now

    def _disturbed(self) -> bool:
        return self.world.line.down or self.world.line.weather.lost_before == 1

    def _sessions(self) -> list[Row]:
        """Threads of the sessions under way."""
        return self.rows("SELECT * FROM thread WHERE dialogue = 'session' AND state IS NOT NULL")
