"""The API's methods about the bot itself: who it is, how it gets its updates, its commands and files."""

from typing import Any

from bot.loopback.exchange import Exchange
from bot.loopback.messages import Json
from bot.loopback.refusals import WEBHOOK_ACTIVE, Refusal, bad
from bot.loopback.request import Request


class Upkeep:
    """Holds what the bot has told the API about itself."""

    def __init__(self) -> None:
        self.webhook = ""
        self.commands: list[Json] = []

    def get_me(self, exchange: Exchange, request: Request) -> Json:
        """getMe."""
        abilities = ("can_join_groups", "can_read_all_group_messages", "supports_inline_queries")
        return exchange.bot | dict.fromkeys(abilities, False)

    async def get_updates(self, exchange: Exchange, request: Request) -> list[Json]:
        """getUpdates, with the true meaning of offset."""
        if self.webhook:
            raise Refusal(409, WEBHOOK_ACTIVE)
        self._choose(exchange, request)
        limit = min(max(request.whole("limit", 100), 1), 100)
        return await exchange.mailbox.take(request.whole("offset", 0), limit, request.whole("timeout", 0))

    def set_webhook(self, exchange: Exchange, request: Request) -> bool:
        """setWebhook: remembered only; nothing is posted anywhere."""
        self.webhook = str(request.params.get("url", ""))
        self._choose(exchange, request)
        return self._drop_if_asked(exchange, request)

    def delete_webhook(self, exchange: Exchange, request: Request) -> bool:
        """deleteWebhook."""
        self.webhook = ""
        return self._drop_if_asked(exchange, request)

    def webhook_info(self, exchange: Exchange, request: Request) -> Json:
        """getWebhookInfo."""
        waiting = len(exchange.mailbox)
        return {"url": self.webhook, "has_custom_certificate": False, "pending_update_count": waiting}

    def set_commands(self, exchange: Exchange, request: Request) -> bool:
        """setMyCommands."""
        self.commands = list(request.structure("commands") or [])
        return True

    def get_file(self, exchange: Exchange, request: Request) -> Json:
        """getFile."""
        file_id = str(request.params.get("file_id", ""))
        if file_id not in exchange.paths:
            raise bad("invalid file_id")
        path = exchange.paths[file_id]
        size = len(exchange.files[path])
        return {"file_id": file_id, "file_unique_id": f"u{file_id}", "file_size": size, "file_path": path}

    def _choose(self, exchange: Exchange, request: Request) -> None:
        wanted: Any = request.structure("allowed_updates")
        if wanted is not None:
            exchange.mailbox.allowed = frozenset(map(str, wanted))

    def _drop_if_asked(self, exchange: Exchange, request: Request) -> bool:
        if request.flag("drop_pending_updates"):
            exchange.mailbox.clear()
        return True
