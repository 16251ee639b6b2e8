"""A session with every failure a network knows, everything logged: no secret is in what the process says."""

import asyncio
import sys
from importlib.util import find_spec
from pathlib import Path

import pytest

from tests.bot.net.test_webhook import free_port
from tests.end_to_end.room import Room

TOKEN = "987654:AAbbCC-dd_EE11"
SECRET = "Webhook-Secret-0123456789-abcdefgh"
KEY = "8d0f3a" * 10 + "beef"  # of an encrypted database
PING = "http://127.0.0.1:9/ping/Very-Long-Name-55"
# As the program itself, but with every logger of every library at its most talkative, whatever was asked for.
TALKATIVE = """
import asyncio, logging, sys
logging.basicConfig(level=logging.DEBUG)
from bot.net import secrecy
quiet = secrecy.quiet_logs
def loud(*secrets):
    quiet(*secrets)
    for name in ("", "httpx", "httpcore", "aiohttp", "telegram", "apscheduler", "tornado", "asyncio"):
        logging.getLogger(name).setLevel(logging.DEBUG)
secrecy.quiet_logs = loud
from bot.cli import main
sys.exit(main(["--verbose", "run"]))
"""


async def troubled(room: Room) -> None:
    """Some talk, with refusals, lost answers, a broken dialogue, and a server that goes away."""
    await room.open()
    room.api.fail_next("sendMessage", 1, 502)
    room.api.fail_next("sendMessage", 1, 429, 1)
    room.api.lose_next("sendMessage", 1)
    room.api.lose_next("sendMessage", 1, done=True)
    room.api.fail_next("sendMessage", 1, 400)
    room.api.fail_next("answerCallbackQuery", 1, 400)
    room.coach.types("hello")
    room.coach.types("help")
    await room.hears(room.coach, "invite")
    room.coach.types("invite")
    await room.hears(room.coach, "first name")
    assert room.server is not None
    room.coach.types("Ana")
    await room.server.stop()
    assert room.stop() == 0


@pytest.mark.parametrize("webhook", [False, True])
def test_no_secret_is_in_anything_the_process_says(tmp_path: Path, webhook: bool) -> None:
    port = free_port()
    hook = {"CUFFLINE_WEBHOOK": f"http://127.0.0.1:{port}/hook", "CUFFLINE_LISTEN": f"127.0.0.1:{port}"}
    key = {"CUFFLINE_DB_KEY": KEY} if find_spec("sqlcipher3") else {}
    more = hook | {"CUFFLINE_WEBHOOK_SECRET": SECRET} if webhook else {}
    room = Room(
        tmp_path / "practice.db",
        CUFFLINE_TOKEN=TOKEN,
        CUFFLINE_PING_URL=PING,
        PYTHONASYNCIODEBUG="1",
        **key,
        **more,
    )
    room.command = [sys.executable, "-c", TALKATIVE]

    async def all_of_it() -> None:
        try:
            await troubled(room)
        finally:
            await room.close()

    with (tmp_path / "said").open("wb") as room.output:
        asyncio.run(all_of_it())
    said = (tmp_path / "said").read_text(encoding="utf-8")
    assert "DEBUG:httpcore" in said
    assert "deleteWebhook" in said or "setWebhook" in said
    assert "Non-thread-safe" not in said
    assert "<token>" in said, "nothing was taken out: this test looked at the wrong output"
    for secret in (TOKEN, "AAbbCC", SECRET, "Webhook-Secret", PING, "Very-Long-Name", KEY, KEY[:12]):
        assert secret not in said
