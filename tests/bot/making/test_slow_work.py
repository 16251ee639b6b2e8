"""Slow work in a process of its own, and without one."""

import asyncio
import tempfile
from pathlib import Path
from typing import Any

import pytest

from bot.making.slow_work import Failed, SlowWork

SIGNATURE = b"\x89PNG\r\n\x1a\n"


def test_a_picture_is_drawn_in_a_process_and_kept() -> None:
    slow_work = SlowWork()
    body = {"picture": "fit_legs"}
    first = asyncio.run(slow_work.draw("photo", body))
    assert first.startswith(SIGNATURE)
    assert slow_work.fixed == {"fit_legs": first}
    assert asyncio.run(slow_work.draw("photo", body)) is first


def test_the_fixed_pictures_are_there_before_anybody_needs_them(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("bot.making.slow_work.READY_AFTER_S", 0)
    slow_work = SlowWork()
    asyncio.run(slow_work.get_ready())
    assert set(slow_work.fixed) == {"fit_arms", "fit_legs"}


def test_what_breaks_there_is_named_by_its_last_line() -> None:
    with pytest.raises(Failed, match="KeyError: 'picture'"):
        asyncio.run(SlowWork().done({"what": "photo", "body": {}}))


def test_without_a_process_it_is_drawn_here(
    monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level("CRITICAL")

    async def none(self: SlowWork, wanted: dict[str, Any]) -> bytes:
        raise OSError("no process can be had")

    monkeypatch.setattr(SlowWork, "done", none)
    assert asyncio.run(SlowWork().draw("photo", {"picture": "fit_arms"})).startswith(SIGNATURE)


def test_a_process_that_takes_too_long_is_given_up(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("bot.making.slow_work.LONGEST_S", 0.01)
    with pytest.raises(Failed, match="too long"):
        asyncio.run(SlowWork().done({"what": "photo", "body": {"picture": "fit_legs"}}))


def test_a_killed_process_leaves_no_copy_of_the_practice(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    copy_and_die = (
        "import os, pathlib, sys, tempfile\n"
        "sys.stdin.buffer.read()\n"
        "pathlib.Path(tempfile.mkdtemp(prefix='cuffline-'), 'copy.db').write_bytes(b'health data')\n"
        "os.kill(os.getpid(), 9)"
    )
    monkeypatch.setattr("bot.making.slow_work.START", copy_and_die)
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    monkeypatch.setenv("TMPDIR", str(tmp_path))
    with pytest.raises(Failed):
        asyncio.run(SlowWork().done({"what": "export", "body": {}}))
    assert list(tmp_path.iterdir()) == []
