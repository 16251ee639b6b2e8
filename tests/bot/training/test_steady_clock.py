"""Rests and time under bands count by the boot-time clock, whatever happens to the wall clock."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.clocks.steady import Steady

START = datetime(2026, 3, 29, 0, 30, tzinfo=UTC)  # the night the clocks go forward in Europe


class Machine:
    """A wall clock that can be set and a boot-time clock that cannot."""

    def __init__(self) -> None:
        self.wall = START
        self.counted = 1000.0

    def passes(self, seconds: float) -> None:
        """Time goes on for both."""
        self.wall += timedelta(seconds=seconds)
        self.counted += seconds

    def steady(self, boot: str = "boot-1") -> Steady:
        """A clock on this machine."""
        return Steady(lambda: self.wall, lambda: self.counted, boot)


@pytest.mark.parametrize("jump_s", [-86400, -3600, -61, -1, 1, 61, 3600, 86400])
def test_thirty_seconds_of_rest_are_thirty_seconds_however_the_wall_clock_is_set(jump_s: int) -> None:
    machine = Machine()
    clock = machine.steady()
    began = clock.now()
    machine.passes(10)
    machine.wall += timedelta(seconds=jump_s)
    machine.passes(20)
    assert clock.now() - began == timedelta(seconds=30)


@pytest.mark.parametrize(("jump_s", "follows"), [(0.9, False), (1.0, True), (-3600, True)])
def test_with_no_bands_on_it_follows_a_jump_of_a_second_and_more(jump_s: float, follows: bool) -> None:
    machine = Machine()
    clock = machine.steady()
    machine.wall += timedelta(seconds=jump_s)
    assert bool(clock.settle()) is follows
    assert (clock.now() == machine.wall) is follows


def test_a_restart_on_the_same_boot_goes_on_and_another_boot_begins_afresh() -> None:
    machine = Machine()
    kept = machine.steady().kept()
    machine.passes(60)
    machine.wall -= timedelta(hours=1)
    again = machine.steady()
    assert again.take_up(kept)
    assert again.now() == START + timedelta(seconds=60)
    other = machine.steady("boot-2")
    assert not other.take_up(kept)
    assert other.now() == machine.wall
    assert not machine.steady("").take_up(kept)


@pytest.mark.parametrize(("behind_s", "goes_on"), [(3600, True), (1, True), (0.9, False), (-60, False)])
def test_a_boot_with_an_earlier_time_than_there_has_been_goes_on_from_the_later_one(
    behind_s: float, goes_on: bool
) -> None:
    machine = Machine()
    clock = machine.steady("boot-2")
    assert clock.go_on_from(START + timedelta(seconds=behind_s)) is goes_on
    machine.passes(20)
    began = START + timedelta(seconds=behind_s) if goes_on else START
    assert clock.now() == began + timedelta(seconds=20)
    assert clock.settle() == (timedelta(seconds=-behind_s) if goes_on else timedelta(0))


@given(st.lists(st.tuples(st.floats(0, 600), st.floats(-1e6, 1e6)), max_size=30))
def test_no_series_of_jumps_moves_a_deadline(steps: list[tuple[float, float]]) -> None:
    machine = Machine()
    clock = machine.steady()
    began, passed = clock.now(), 0.0
    for seconds, jump in steps:
        machine.passes(seconds)
        machine.wall += timedelta(seconds=jump)
        passed += seconds
    assert abs((clock.now() - began).total_seconds() - passed) < 1e-3


def test_the_machine_s_own_clocks_run() -> None:
    first = Steady().now()
    assert Steady().now() >= first
