"""The real process killed between and in the midst of messages; many more in `python -m tests.bench.kills`."""

from pathlib import Path

from tests.bench import kills


def test_killed_at_random_moments_every_count_is_kept_once_in_order_and_answered(tmp_path: Path) -> None:
    found = kills.run(tmp_path / "practice.db", messages=20, kills=2, seed=1)
    assert found.as_sent, (found.sent, found.kept)
    assert found.unanswered == 0
