"""The way to the server: the bot library's request class over aiohttp.

The library's own one looks through all its connections at every call, so a call costs the more the more are open.
"""

from functools import cache
from ssl import SSLContext
from typing import Any
from urllib.parse import urlsplit
from urllib.request import getproxies, proxy_bypass

import aiohttp
import httpx
from telegram._utils.defaultvalue import DEFAULT_NONE, DefaultValue
from telegram._utils.types import ODVInput
from telegram.error import NetworkError, TimedOut
from telegram.request import BaseRequest, RequestData

PATIENCE_S = 5.0  # for the connection and for each piece of an answer; the library's own default
UPLOAD_S = 20.0  # for a call that carries a file; the library's own default


class Transport(BaseRequest):
    """Up to `connections` calls at once to one server, each on a connection that is kept open."""

    def __init__(self, server: str, connections: int) -> None:
        self._proxy = proxy_for(server)
        self._connections = connections
        self._session: aiohttp.ClientSession | None = None

    @property
    def read_timeout(self) -> float | None:
        """Seconds without a byte of the answer, unless a call says otherwise."""
        return PATIENCE_S

    async def initialize(self) -> None:
        """Open the pool of connections; nothing is sent yet."""
        if self._session is None:
            pool = aiohttp.TCPConnector(limit=self._connections, ssl=trusted())
            agent = {"User-Agent": self.USER_AGENT}
            self._session = aiohttp.ClientSession(connector=pool, headers=agent)

    async def shutdown(self) -> None:
        """Close all connections."""
        if self._session is not None:
            await self._session.close()
            self._session = None

    async def do_request(
        self,
        url: str,
        method: str,
        request_data: RequestData | None = None,
        read_timeout: ODVInput[float] = DEFAULT_NONE,
        write_timeout: ODVInput[float] = DEFAULT_NONE,
        connect_timeout: ODVInput[float] = DEFAULT_NONE,
        pool_timeout: ODVInput[float] = DEFAULT_NONE,
    ) -> tuple[int, bytes]:
        """One call: status and body. Raises TimedOut and NetworkError, neither with the address in it."""
        if self._session is None:
            raise RuntimeError("not initialized")
        body = _form(request_data)
        usual = PATIENCE_S if isinstance(body, dict | None) else UPLOAD_S
        patience = usual if isinstance(read_timeout, DefaultValue) else read_timeout
        limits = aiohttp.ClientTimeout(sock_connect=PATIENCE_S, sock_read=patience)
        try:
            async with self._session.request(
                method, url, data=body, timeout=limits, proxy=self._proxy
            ) as answer:
                return answer.status, await answer.read()
        except TimeoutError:
            raise TimedOut from None
        except aiohttp.ClientError as problem:
            raise NetworkError(type(problem).__name__) from None


@cache
def trusted() -> SSLContext:
    """The same certificates as the library's own; read once, they are many."""
    return httpx.create_ssl_context()


def proxy_for(server: str) -> str | None:
    """The proxy that the environment names for this address (HTTPS_PROXY, ALL_PROXY, NO_PROXY and so on)."""
    address, known = urlsplit(server), getproxies()
    if proxy_bypass(address.hostname or ""):
        return None
    return known.get(address.scheme) or known.get("all")


def _form(data: RequestData | None) -> Any:
    """The parameters as a form; with files a form of several parts."""
    if data is None:
        return None
    if not data.contains_files:
        return data.json_parameters
    form = aiohttp.FormData(data.json_parameters)
    for field, (name, content, kind) in data.multipart_data.items():
        form.add_field(field, content, filename=name, content_type=kind)
    return form
