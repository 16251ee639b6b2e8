"""Days of invented practices with every misfortune; what must hold is looked at after each event."""

import pytest

from tests.simulation import scene
from tests.simulation.invariants.letters import Letters
from tests.simulation.outage import late

# Chosen once; more in `python -m tests.bench.simulation --seeds 1000`.
SEEDS = (3, 7, 9, 15, 23, 124)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_day_of_misfortunes_loses_nothing_and_hurts_nobody_quietly(seed: int) -> None:
    scene.story(seed)


@pytest.mark.parametrize("seed", [1, 2])
def test_days_with_a_bad_line_and_an_hour_without_one_lose_nothing(seed: int) -> None:
    scene.story(seed, days=3, clients=2, of_a_month=True)


def test_the_same_seed_tells_the_same_story() -> None:
    def told() -> list[str]:
        return list(scene.story(5, clients=3).journal)

    assert told() == told()


def test_a_calm_week_has_sessions_for_everybody_and_no_alert() -> None:
    world = scene.practice(1, clients=4, calm=True)
    for client in world.clients:
        for day in range(0, 4, 2):
            world.after(86_400 * day + 7200, lambda client=client: client.types("start"))  # type: ignore[misc]
    world.run(days=3)
    done = world.store.rows(
        "SELECT person, count(*) AS n FROM session_ended WHERE why = 'done' GROUP BY person"
    )
    alerts = world.store.rows("SELECT * FROM alert WHERE tier = 'now'")
    world.close()
    assert len(done) == len(world.clients)
    assert min(row["n"] for row in done) >= 2
    assert not alerts


@pytest.mark.parametrize("seed", range(1, 4))  # 1,000 in `python -m tests.bench.outage`
def test_an_alert_leaves_within_35_s_of_the_networks_return(seed: int) -> None:
    assert late(seed).seconds <= 35


def test_a_violation_names_the_command_that_plays_it_again(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Letters, "letters_leave", lambda self: 1 / 0)
    with pytest.raises(ZeroDivisionError) as found:
        scene.story(1, clients=1)
    assert "python -m tests.bench.simulation --seed 1 --days 1 --clients 1" in found.value.__notes__[0]
