"""Who may call: this machine's own programs and its own page, not a page from elsewhere in the same browser."""

import tornado.web

from bot.local.api import LocalApi


class Guarded(tornado.web.RequestHandler):
    """Answers only to this machine's own name and its own page, so that a page elsewhere cannot reach in."""

    for_all_pages = False

    def initialize(self, api: LocalApi, hosts: set[str]) -> None:
        """Take what all handlers share."""
        self.api = api
        self.hosts = hosts

    def prepare(self) -> None:
        """Refuse a foreign Host header, or a request that a foreign page made, with 403."""
        self.set_header("X-Content-Type-Options", "nosniff")
        self.set_header("Cache-Control", "no-store")
        own_name = self.request.headers.get("Host", "") in self.hosts
        if not own_name or not (self.for_all_pages or self._own_page()):
            raise tornado.web.HTTPError(403)

    def _own_page(self) -> bool:
        # A browser tells the Origin of every POST, and of any request whether another site's page made it;
        # programs send neither.
        origin = self.request.headers.get("Origin", "http://" + self.request.host)
        site = self.request.headers.get("Sec-Fetch-Site", "none")
        return origin.removeprefix("http://") in self.hosts and site in {"none", "same-origin"}


class TakesJson(Guarded):
    """Takes JSON only: a form on a foreign page cannot send it."""

    def prepare(self) -> None:
        """Refuse anything but JSON with 415."""
        super().prepare()
        if not self.request.headers.get("Content-Type", "").startswith("application/json"):
            raise tornado.web.HTTPError(415)
