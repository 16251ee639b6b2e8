"""The API's methods about the bot itself: who it is, how it gets its updates, its commands and files."""

import re
from typing import Any

from bot.local.exchange import Exchange
from bot.local.messages import Json
from bot.local.refusals import WEBHOOK_ACTIVE, Refusal, bad
from bot.local.request import Request


class Upkeep:
    """Holds what the bot has told the API about itself."""

    def __init__(self) -> None:
        self.webhook = ""
        self.secret = ""  # sent along with every update
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
        """setWebhook: the HTTP front posts there; like a Bot API server of one's own it takes plain http."""
        url = str(request.params.get("url", ""))
        if url and not url.startswith(("http://", "https://")):
            raise bad("bad webhook: an HTTPS URL must be provided for webhook")
        secret = str(request.params.get("secret_token") or "")
        if not re.fullmatch(r"[A-Za-z0-9_-]{0,256}", secret):
            raise bad("secret token contains unallowed characters")
        self.webhook, self.secret = url, secret
        self._choose(exchange, request)
        exchange.changed()
        return self._drop_if_asked(exchange, request)

    def delete_webhook(self, exchange: Exchange, request: Request) -> bool:
        """deleteWebhook."""
        self.webhook = self.secret = ""
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
