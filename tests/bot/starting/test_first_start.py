"""The first start: no coach yet, a port that is taken. One clear line each, and a way on."""

import asyncio
import socket
from datetime import UTC, datetime
from pathlib import Path

import pytest
from telegram import Bot

from bot import numbers
from bot.cli import main
from bot.config import Wrong, from_environment
from bot.local.api import LocalApi
from bot.local.inprocess import InProcess

MORNING = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
TOKEN = {"CUFFLINE_TOKEN": "1:local"}


# --- no coach yet ---
def test_run_starts_without_a_coach_and_with_nothing_else_missing() -> None:
    assert from_environment(TOKEN, coach_needed=False).coaches == ()
    with pytest.raises(Wrong):
        from_environment(TOKEN)
    with pytest.raises(Wrong):
        from_environment(TOKEN | {"CUFFLINE_COACH": "me"}, coach_needed=False)


def test_without_a_coach_everybody_hears_their_own_number_and_the_log_says_what_to_set(
    caplog: pytest.LogCaptureFixture,
) -> None:
    api = LocalApi(lambda: MORNING, "1:local")
    phones = [api.add_phone(77, "Dana"), api.add_phone(78, "Ruta")]

    async def play() -> None:
        async with Bot("1:local", request=InProcess(api), get_updates_request=InProcess(api)) as bot:
            telling = asyncio.ensure_future(numbers.answer_everybody(bot))
            for phone in phones:
                phone.types("/start")
            answered = api.wait(lambda: all(len(phone.history) == 2 for phone in phones), 10)
            await answered
            telling.cancel()

    asyncio.run(play())
    for phone, number in zip(phones, ("77", "78"), strict=True):
        assert f"Your number is {number}." in phone.history[-1].text
    assert "set CUFFLINE_COACH to your number" in caplog.text


def test_a_service_manager_hears_that_it_has_started(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """`systemctl start` would wait two minutes for it, give up, and start it anew for ever."""
    monkeypatch.setenv("NOTIFY_SOCKET", str(tmp_path / "notify"))
    api = LocalApi(lambda: MORNING, "1:local")
    with socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM) as manager:
        manager.bind(str(tmp_path / "notify"))

        async def play() -> str:
            async with Bot("1:local", request=InProcess(api), get_updates_request=InProcess(api)) as bot:
                telling = asyncio.ensure_future(numbers.answer_everybody(bot))
                manager.settimeout(10)
                heard = await asyncio.to_thread(manager.recv, 4096)
                telling.cancel()
                return heard.decode()

        assert asyncio.run(play()) == "READY=1\nWATCHDOG=1"


def test_what_cannot_be_read_is_left_out() -> None:
    good = {"message": {"message_id": 1, "date": 1, "chat": {"id": 7, "type": "private"}, "text": "hi"}}
    group = {"message": {"message_id": 1, "date": 1, "chat": {"id": -7, "type": "group"}, "text": "hi"}}
    assert numbers.chats_of([(1, {"message": {}}), (2, good), (3, group), (4, good)]) == [7]


# --- try ---
@pytest.mark.parametrize("port", ["99999", "-1"])
def test_a_port_that_is_none_is_one_clear_line(port: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["try", f"--port={port}"]) == 2
    assert capsys.readouterr().err.startswith(f"--port {port}: a port is a number from 0 to 65535")


def test_a_missing_folder_is_one_clear_line(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["try", "--db", str(tmp_path / "none" / "try.db"), "--port", "0"]) == 2
    said = capsys.readouterr().err
    assert f"the folder {tmp_path / 'none'} does not exist" in said
    assert said.count("\n") == 1


def test_a_port_in_use_is_one_clear_line(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        assert main(["try", "--db", str(tmp_path / "try.db"), "--port", str(port)]) == 2
    assert capsys.readouterr().err == f"--port {port}: is in use; 0 takes any free one\n"
