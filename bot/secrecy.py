"""The token opens the bot to whoever reads it, and the libraries below write it into addresses and errors.

So the token is taken out of every finished line of the log, tracebacks included, and of what Python prints when
nobody catches an error.
"""

import logging
import sys
import traceback
from collections.abc import Callable
from types import TracebackType

INSTEAD = "<token>"
Hook = Callable[[type[BaseException], BaseException, TracebackType | None], None]


class Redacting(logging.Formatter):
    """Formats as another one does, then takes the secret out."""

    def __init__(self, formatter: logging.Formatter, secret: str) -> None:
        super().__init__()
        self.formatter = formatter
        self.secret = secret

    def format(self, record: logging.LogRecord) -> str:
        """The line without the secret."""
        return self.formatter.format(record).replace(self.secret, INSTEAD)


def quiet_logs(token: str) -> None:
    """Keep the libraries' logs short, and the token out of all of them."""
    logging.getLogger("httpx").setLevel(logging.WARNING)
    logging.getLogger("httpcore").setLevel(logging.WARNING)
    logging.getLogger("apscheduler").setLevel(logging.ERROR)
    if token:
        for handler in logging.getLogger().handlers:
            handler.setFormatter(Redacting(handler.formatter or logging.Formatter(), token))
        sys.excepthook = _printer(token)


def _printer(token: str) -> Hook:
    def show(kind: type[BaseException], problem: BaseException, where: TracebackType | None) -> None:
        lines = "".join(traceback.format_exception(kind, problem, where))
        print(lines.replace(token, INSTEAD), end="", file=sys.stderr)

    return show
