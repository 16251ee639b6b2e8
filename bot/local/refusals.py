"""How the Bot API says no: an HTTP-like code, a description, sometimes a wait."""

from typing import Any, Final

NOT_MODIFIED: Final = (
    "Bad Request: message is not modified: specified new message content and reply markup are exactly "
    "the same as a current content and reply markup of the message"
)
OTHER_POLL: Final = (
    "Conflict: terminated by other getUpdates request; make sure that only one bot instance is running"
)
WEBHOOK_ACTIVE: Final = (
    "Conflict: can't use getUpdates method while webhook is active; "
    "use deleteWebhook to delete the webhook first"
)
# One text for both.
STALE_QUERY: Final = "Bad Request: query is too old and response timeout expired or query ID is invalid"
_BY_CODE: Final = {
    400: "Bad Request",
    401: "Unauthorized",
    403: "Forbidden: bot was blocked by the user",
    404: "Not Found",
    409: OTHER_POLL,
    429: "Too Many Requests",
    500: "Internal Server Error",
    502: "Bad Gateway",
}


class Refusal(Exception):
    """A call the API turns down; `retry_after` is in whole seconds."""

    def __init__(self, code: int, description: str, retry_after: int | None = None) -> None:
        super().__init__(description)
        self.code = code
        self.description = description
        self.retry_after = retry_after

    def envelope(self) -> dict[str, Any]:
        """Return the JSON object the API answers with."""
        answer: dict[str, Any] = {"ok": False, "error_code": self.code, "description": self.description}
        if self.retry_after is not None:
            answer["parameters"] = {"retry_after": self.retry_after}
        return answer


def refusal_for(code: int, retry_after: int | None = None) -> Refusal:
    """Return the usual refusal with this code."""
    description = _BY_CODE.get(code, f"Error {code}")
    if retry_after is not None:
        description += f": retry after {retry_after}"
    return Refusal(code, description, retry_after)


def bad(reason: str) -> Refusal:
    """Return a 400 with this reason."""
    return Refusal(400, f"Bad Request: {reason}")
