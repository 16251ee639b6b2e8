"""Updates posted to the bot's webhook: one at a time, in order, again until it answers with 2xx."""

import asyncio
import json
from typing import Final

from tornado.httpclient import AsyncHTTPClient, HTTPError

from bot.local.api import LocalApi, Post

FIRST_GAP_S: Final = 0.05
LONGEST_GAP_S: Final = 2.0  # the real one waits longer; nobody wants to here
ANSWER_WITHIN_S: Final = 10.0


async def push(api: LocalApi) -> None:
    """Run until cancelled."""
    client = AsyncHTTPClient(force_instance=True)
    gap = FIRST_GAP_S
    while True:
        post = await api.to_post()
        if await _taken(client, post):
            api.posted(post)
            gap = FIRST_GAP_S
        else:
            await asyncio.sleep(gap)
            gap = min(2 * gap, LONGEST_GAP_S)


async def _taken(client: AsyncHTTPClient, post: Post) -> bool:
    headers = {"Content-Type": "application/json"}
    if post.secret:
        headers["X-Telegram-Bot-Api-Secret-Token"] = post.secret
    try:
        await client.fetch(
            post.url,
            method="POST",
            headers=headers,
            body=json.dumps(post.update),
            request_timeout=ANSWER_WITHIN_S,
            follow_redirects=False,
        )
    except (HTTPError, OSError):
        return False
    return True
