"""The three bots, each a process of its own: `python -m tests.bench.load.bots echo URL FILE`."""

import asyncio
import sys
from pathlib import Path
from typing import Any

from telegram import Update
from telegram.ext import (
    Application,
    ContextTypes,
    ConversationHandler,
    MessageHandler,
    PicklePersistence,
    TypeHandler,
    filters,
)

from bot.app import serve
from bot.clocks.clock import Clock
from bot.config import Config
from tests.bench.load.dialogue import COACH

TOKEN = "1:local"
QUESTIONS = 22  # as many as a session asks


def cuffline(url: str, file: Path) -> None:
    """The real program."""
    asyncio.run(serve(Config(TOKEN, url, file, (COACH,), "UTC"), Clock()))


def echo(url: str, file: Path) -> None:
    """Says back what it hears; keeps nothing."""

    async def answer(update: Update, context: ContextTypes.DEFAULT_TYPE) -> None:
        assert update.message is not None
        assert update.message.text is not None
        await update.message.reply_text(update.message.text)

    app: Any = _built(url).build()
    app.add_handler(MessageHandler(filters.TEXT, answer))
    app.run_polling()


def pickled(url: str, file: Path) -> None:
    """The pattern of the library's examples: a state a question, all of it pickled after every update."""

    async def ask(update: Update, context: ContextTypes.DEFAULT_TYPE) -> int:
        assert update.message is not None
        assert context.user_data is not None
        number: int = context.user_data.get("number", 0)
        context.user_data[str(number)] = update.message.text
        context.user_data["number"] = (number + 1) % QUESTIONS
        await update.message.reply_text(f"Question {number}?")
        return number

    async def flush(update: object, context: ContextTypes.DEFAULT_TYPE) -> None:
        await context.application.update_persistence()

    app: Any = _built(url).persistence(PicklePersistence(file)).build()
    asked: Any = [MessageHandler(filters.TEXT, ask)]
    states: Any = dict.fromkeys(range(QUESTIONS), asked)
    app.add_handler(ConversationHandler(asked, states, [], name="session", persistent=True))
    app.add_handler(TypeHandler(object, flush), group=1)
    app.run_polling()


def _built(url: str) -> Any:
    return Application.builder().token(TOKEN).base_url(f"{url}/bot")


BOTS = {"cuffline": cuffline, "tapped": cuffline, "echo": echo, "pickled": pickled}

if __name__ == "__main__":
    BOTS[sys.argv[1]](sys.argv[2], Path(sys.argv[3]))
