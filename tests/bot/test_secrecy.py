"""The token is in no line that anybody reads."""

import io
import logging
import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from telegram.error import InvalidToken

from bot.net import secrecy

TOKEN = "1:SECRETSECRET"
ROOT = Path(__file__).parents[2]


@pytest.fixture
def said() -> Iterator[io.StringIO]:
    """What the log says at its most talkative."""
    root, out = logging.getLogger(), io.StringIO()
    handler, level, hook = logging.StreamHandler(out), root.level, sys.excepthook
    root.addHandler(handler)
    root.setLevel(logging.DEBUG)
    others = [(other, other.formatter) for other in root.handlers]
    secrecy.quiet_logs(TOKEN)
    yield out
    sys.excepthook = hook
    root.setLevel(level)
    root.removeHandler(handler)
    for other, formatter in others:
        other.setFormatter(formatter)


def test_a_line_an_argument_and_a_traceback_lose_it(said: io.StringIO) -> None:
    log = logging.getLogger("test")
    log.error("asked https://api.example.org/bot%s/getMe", TOKEN)
    try:
        raise InvalidToken(f"The token `{TOKEN}` was rejected")
    except InvalidToken:
        log.exception("no")
    text = said.getvalue()
    assert TOKEN not in text
    assert text.count(secrecy.INSTEAD) == 2
    assert "Traceback" in text


def test_an_error_that_nobody_catches_loses_it(said: io.StringIO, capsys: pytest.CaptureFixture[str]) -> None:
    try:
        raise InvalidToken(f"The token `{TOKEN}` was rejected")
    except InvalidToken as problem:
        sys.excepthook(type(problem), problem, problem.__traceback__)
    printed = capsys.readouterr().err
    assert TOKEN not in printed
    assert "Traceback" in printed


def test_a_bot_that_nobody_answers_waits_and_says_so_without_it(tmp_path: Path) -> None:
    settings = {
        "CUFFLINE_TOKEN": TOKEN,
        "CUFFLINE_COACH": "1001",
        "CUFFLINE_API_URL": "http://127.0.0.1:9",  # nobody listens there
        "CUFFLINE_DB": str(tmp_path / "practice.db"),
    }
    command = [sys.executable, "-m", "bot", "--verbose", "run"]
    with subprocess.Popen(
        command, env=os.environ | settings, cwd=ROOT, stderr=subprocess.PIPE, text=True
    ) as bot:
        assert bot.stderr is not None
        first = bot.stderr.readline()
        assert bot.poll() is None, "a network that is down ends nothing"
        bot.kill()
        rest = bot.stderr.read()
    assert "no answer from the server yet" in first
    assert TOKEN not in first + rest
    assert "Traceback" not in first + rest
