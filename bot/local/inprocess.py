"""The shortest way from the bot to the local API: no socket, no HTTP."""

import json
from urllib.parse import urlsplit

from telegram._utils.defaultvalue import DEFAULT_NONE
from telegram._utils.types import ODVInput
from telegram.error import NetworkError, TimedOut
from telegram.request import BaseRequest, RequestData

from bot.local.api import LocalApi
from bot.local.faults import Lost


class InProcess(BaseRequest):
    """Give it to `telegram.Bot` as `request` and `get_updates_request`; host and token of the URL are ignored."""

    def __init__(self, api: LocalApi) -> None:
        self._api = api

    @property
    def read_timeout(self) -> float | None:
        """No limit: nothing is read from a network."""
        return None

    async def initialize(self) -> None:
        """Nothing to open."""

    async def shutdown(self) -> None:
        """Nothing to close."""

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
        """Answer one request with its status and body."""
        path = urlsplit(url).path
        if path.startswith("/file/"):
            return self._file(path)
        params, files = _parts(request_data or RequestData())
        try:
            answer = await self._api.call(path.rpartition("/")[2], params, files)
        except Lost as lost:
            # As the library's own request class names them: no answer in time, or no connection at all.
            raise TimedOut if lost.done else NetworkError(str(lost)) from lost
        return answer.get("error_code", 200), json.dumps(answer).encode()

    def _file(self, path: str) -> tuple[int, bytes]:
        _, _, below = path.removeprefix("/file/").partition("/")
        data = self._api.file(below)
        return (404, b"{}") if data is None else (200, data)


def _parts(request_data: RequestData) -> tuple[dict[str, str], dict[str, bytes]]:
    params, files = dict(request_data.json_parameters), {}
    for field, (name, content, *_) in request_data.multipart_data.items():
        files[field] = content if isinstance(content, bytes) else content.read()
        params[f"{field}.name"] = name
    return params, files
