"""An hour without a network, an alert in it, and how long after the network's return the alert is out."""

import random
from dataclasses import dataclass, replace

from core.store.times import ms
from tests.simulation import misfortunes, scene
from tests.simulation.line import FINE, Weather

AN_HOUR_S = 3600.0
CLIENTS = 2


@dataclass(frozen=True, slots=True)
class Late:
    """Seconds from the return until the last of the alerts raised before is out, and whether that was our doing.

    `told_to_wait`: the server refused a call meanwhile and said for how long (429), which must be obeyed.
    """

    seconds: float
    told_to_wait: bool


def late(seed: int, weather: Weather | None = None) -> Late:
    """One outage.

    The client's words still get in and nothing gets out; then nothing gets in either. `weather`: how good the line
    is afterwards, by default as bad as on any day. AssertionError when an alert is not out two minutes later.
    """
    dice = random.Random(seed)
    world = scene.practice(seed, CLIENTS, calm=True)
    try:
        for client in world.clients:
            world.after(dice.uniform(1, 60), lambda client=client: client.types("start"))  # type: ignore[misc]
        world.run(seconds=dice.uniform(60, 600))
        world.line.weather = replace(FINE, lost_before=1)
        world.clients[0].flag("chest pain")
        world.run(seconds=dice.uniform(1, 30))
        misfortunes.outage(world, world.clock.true, AN_HOUR_S / 60)
        world.run(seconds=AN_HOUR_S + dice.uniform(0, 60))
        returned, world.line.weather = ms(world.clock.now()), weather or Weather()
        world.run(minutes=2)
        alerts = world.store.rows(
            "SELECT sent_at FROM outbox WHERE priority = 0 AND created_at <= ? AND dropped IS NULL",
            [returned],
        )
        assert alerts, f"seed {seed}: no alert was raised"
        assert all(row["sent_at"] is not None for row in alerts), f"seed {seed}: an alert is not out"
        out = max(row["sent_at"] for row in alerts)
        waits = [returned <= ms(at) <= out for at, _ in world.line.waits]
        return Late((out - returned) / 1000, any(waits))
    finally:
        world.close()
