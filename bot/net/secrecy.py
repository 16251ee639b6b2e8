"""The token opens the bot to whoever reads it, and the libraries below write it into addresses and errors.

So the token, and what else is secret (the webhook's word, the address of the ping), is taken out of every finished
line of the log, tracebacks included, and of what Python prints when nobody catches an error.
"""

import logging
import sys
import traceback
from collections.abc import Callable, Sequence
from types import TracebackType
from urllib.parse import quote

INSTEAD = "<token>"
Hook = Callable[[type[BaseException], BaseException, TracebackType | None], None]


class Redacting(logging.Formatter):
    """Formats as another one does, then takes the secrets out."""

    def __init__(self, formatter: logging.Formatter, secrets: Sequence[str]) -> None:
        super().__init__()
        self.formatter = formatter
        self.secrets = secrets

    def format(self, record: logging.LogRecord) -> str:
        """The line without the secrets."""
        return without(self.secrets, self.formatter.format(record))


def without(secrets: Sequence[str], text: str) -> str:
    """The text with a sign in the place of each secret, also where an address has it escaped."""
    for secret in secrets:
        for written in dict.fromkeys((secret, quote(secret), quote(secret, safe=""))):
            text = text.replace(written, INSTEAD)
    return text


def quiet_logs(*secrets: str) -> None:
    """Keep the libraries' logs short, and the secrets (empty ones apart) out of all of them."""
    logging.getLogger("httpx").setLevel(logging.WARNING)
    logging.getLogger("httpcore").setLevel(logging.WARNING)
    logging.getLogger("apscheduler").setLevel(logging.ERROR)
    kept = [secret for secret in secrets if secret]
    if kept:
        for handler in logging.getLogger().handlers:
            handler.setFormatter(Redacting(handler.formatter or logging.Formatter(), kept))
        sys.excepthook = _printer(kept)


def _printer(secrets: Sequence[str]) -> Hook:
    def show(kind: type[BaseException], problem: BaseException, where: TracebackType | None) -> None:
        lines = "".join(traceback.format_exception(kind, problem, where))
        print(without(secrets, lines), end="", file=sys.stderr)

    return show
