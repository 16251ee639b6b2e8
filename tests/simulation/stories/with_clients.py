"""What clients do beside training: days, trips, their data, details, leaving."""

from tests.simulation.stories.told import Story, practice, tell
from tests.simulation.stories.training import given
from tests.simulation.world import World


def _of_ruta(lines: str) -> World:
    return tell(given(practice(), "ruta", "one_dumbbell"), lines)


DAYS = """
ruta   plan
ruta   move friday to saturday 10am
ruta   [Yes]
ruta   not next tuesday
ruta   [Yes]
ruta   when is my next session?
"""
TRAVEL = """
ruta   travelling
ruta   from 28 march to 30 march
ruta   plan
... 6 d
ruta   plan
"""
EXPORT = """
ruta   my data
ruta   calendar
ruta   report
ruta   card
ruta   bands
ruta   sound
"""
LEAVING = """
ruta   coach I am moving away
ruta   delete me
ruta   yes
ruta   delete
... 150 min
ruta   hello
"""
DETAILS = """
ruta   details
ruta   [Phone]
ruta   +351 555 0101
ruta   settings
ruta   [Quiet hours]
ruta   22:00 to 6:30
ruta   help
ruta   menu
"""
WITH_CLIENTS = (
    Story("days", lambda: _of_ruta(DAYS)),
    Story("travel", lambda: _of_ruta(TRAVEL), hours=24 * 7),
    Story("export", lambda: _of_ruta(EXPORT)),
    Story("leaving", lambda: _of_ruta(LEAVING), hours=3, erases=True),
    Story("details", lambda: _of_ruta(DETAILS)),
)
