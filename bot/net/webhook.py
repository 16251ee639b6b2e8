"""Updates posted to us over HTTP: answered 200 after the commit, and only to whoever knows the secret.

TLS is the proxy's part; we listen where only the proxy reaches us. The server posts one update at a time
(`max_connections=1`), so that what a person says arrives in the order in which it was said.
"""

import hmac
import json
import logging
import re
from typing import Final
from urllib.parse import urlsplit

import tornado.httpserver
import tornado.netutil
import tornado.web
from telegram import Bot
from telegram.error import BadRequest

from bot.config import Config, Wrong
from bot.net import intake
from bot.net.intake import Called, Numbered, Receive
from bot.net.reached import Reached, Tell

log = logging.getLogger("cuffline")

SECRET_HEADER: Final = "X-Telegram-Bot-Api-Secret-Token"  # https://core.telegram.org/bots/api#setwebhook
# Bytes; the longest text with all it carries is far below. Own caution, no source.
BODY_LIMIT: Final = 1024 * 1024
SLOWEST_S: Final = 10.0  # for a request to arrive whole; own caution, no source


class Silent(tornado.web.RequestHandler):
    """There is nothing here, and we say nothing about ourselves."""

    def set_default_headers(self) -> None:
        """Not even what serves."""
        self.clear_header("Server")

    def prepare(self) -> None:
        """No such address."""
        raise tornado.web.HTTPError(404)

    def write_error(self, status_code: int, **kwargs: object) -> None:
        """The number is all."""
        self.finish()


class Hook(Silent):
    """The one address."""

    def initialize(self, secret: str, receive: Receive) -> None:
        """Take what the handler needs."""
        self.secret = secret.encode()
        self.receive = receive

    def prepare(self) -> None:
        """Refuse whoever does not know the secret, in the same time whatever they sent."""
        given = self.request.headers.get(SECRET_HEADER, "")
        if not hmac.compare_digest(given.encode(), self.secret):
            raise tornado.web.HTTPError(403)

    def post(self) -> None:
        """Keep one update. 200: it is committed. 503: it is not; the server sends it again."""
        update = self._update()
        try:
            self.receive([update])
        except Exception:
            log.exception("update %s could not be kept", update[0])
            self.set_header("Retry-After", "1")
            raise tornado.web.HTTPError(503) from None

    def _update(self) -> Numbered:
        try:
            update = intake.numbered(json.loads(self.request.body))
        except (ValueError, RecursionError):
            update = None
        if update is None:
            raise tornado.web.HTTPError(400)
        return update


def listen(config: Config, receive: Receive) -> tuple[tornado.httpserver.HTTPServer, int]:
    """Start to listen (port 0: any free one); the server and its port. Raises OSError."""
    host, port = config.listen
    path = urlsplit(config.webhook).path or "/"
    shared = {"secret": config.webhook_secret, "receive": receive}
    application = tornado.web.Application(
        [(re.escape(path), Hook, shared)],
        default_handler_class=Silent,
        log_function=lambda handler: None,  # strangers knocking are no news
    )
    server = tornado.httpserver.HTTPServer(
        application, max_body_size=BODY_LIMIT, body_timeout=SLOWEST_S, idle_connection_timeout=60 * SLOWEST_S
    )
    sockets = tornado.netutil.bind_sockets(port, address=host)
    server.add_sockets(sockets)
    return server, sockets[0].getsockname()[1]


async def stand(
    bot: Bot,
    config: Config,
    receive: Receive,
    tell: Tell = lambda text: None,
    answered: Called = lambda: None,
) -> None:
    """Listen, tell the server where, and take updates until cancelled. Raises `Wrong` when it declines.

    `tell` is for the operator, when the server cannot reach us or another program took the webhook away; `answered`
    is called again and again while it can.
    """
    try:
        server, _ = listen(config, receive)
    except OSError as problem:
        raise Wrong([f"CUFFLINE_LISTEN: cannot listen there: {problem.strerror}"]) from None
    try:
        while True:
            await intake.insist("the webhook is not set yet", lambda: announce(bot, config))
            answered()
            await Reached(bot, config.webhook, tell, answered).lost()
    except BadRequest as problem:
        raise Wrong([f"CUFFLINE_WEBHOOK: the server declines it: {problem.message}"]) from None
    finally:
        server.stop()
        await server.close_all_connections()


async def announce(bot: Bot, config: Config) -> None:
    """setWebhook, with the secret, one connection and the kinds of update we read."""
    await bot.set_webhook(
        config.webhook,
        secret_token=config.webhook_secret,
        max_connections=1,
        allowed_updates=intake.KINDS,
    )
