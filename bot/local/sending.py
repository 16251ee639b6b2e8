"""The API's methods that put new messages on a phone."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from bot.local.exchange import Chat, Exchange
from bot.local.markup import Marked
from bot.local.messages import ChatMessage, Json, Kind, Origin, with_content
from bot.local.refusals import bad
from bot.local.request import Request


def send_message(exchange: Exchange, request: Request) -> Json:
    """sendMessage."""
    chat = exchange.chat(request.whole("chat_id"))
    return _post(exchange, chat, _draft(exchange, chat, request, request.text()), request.keyboard())


def sender_of(kind: Kind) -> Callable[[Exchange, Request], Json]:
    """Return sendPhoto, sendDocument and the like: an upload, or the id of a file sent before."""

    def send(exchange: Exchange, request: Request) -> Json:
        chat = exchange.chat(request.whole("chat_id"))
        data, file_id = _file(exchange, request, kind)
        draft = replace(_draft(exchange, chat, request, request.caption()), kind=kind, file_id=file_id)
        name = str(request.params.get(f"{kind.value}.name") or kind.value)
        return _post(exchange, chat, with_content(draft, data, name), request.keyboard())

    return send


def copy_message(exchange: Exchange, request: Request) -> Json:
    """copyMessage: the same content with no word of where it came from, and no buttons unless given."""
    chat = exchange.chat(request.whole("chat_id"))
    _, original = _original(exchange, request)
    marked = request.caption() if "caption" in request.params else Marked(original.text, original.entities)
    draft = _draft(exchange, chat, request, marked)
    copied = replace(
        draft,
        kind=original.kind,
        photo=original.photo,
        document=original.document,
        document_name=original.document_name,
        file_id=original.file_id,
    )
    return {"message_id": _post(exchange, chat, copied, request.keyboard())["message_id"]}


def forward_message(exchange: Exchange, request: Request) -> Json:
    """forwardMessage: the same content, naming who wrote it; a forward of a forward names the first."""
    chat = exchange.chat(request.whole("chat_id"))
    source, original = _original(exchange, request)
    origin = original.origin or Origin(exchange.sender(source, original), original.at)
    quiet = request.flag("disable_notification")
    forwarded = replace(original, mine=False, at=exchange.now(), quiet=quiet, origin=origin)
    return _post(exchange, chat, replace(forwarded, buttons=(), edited=None, earlier=(), reply_to=None), None)


def chat_action(exchange: Exchange, request: Request) -> bool:
    """sendChatAction: accepted and not shown."""
    exchange.chat(request.whole("chat_id"))
    return True


def _draft(exchange: Exchange, chat: Chat, request: Request, marked: Marked) -> ChatMessage:
    return ChatMessage(
        0,
        mine=False,
        text=marked.text,
        at=exchange.now(),
        buttons=request.buttons(),
        quiet=request.flag("disable_notification"),
        reply_to=_replied(chat, request.mapping("reply_parameters")),
        entities=marked.entities,
    )


def _replied(chat: Chat, wanted: dict[str, Any]) -> int | None:
    if not wanted:
        return None
    if (number := Request(wanted).whole("message_id", 0)) in chat.messages:
        return number
    if not wanted.get("allow_sending_without_reply"):
        raise bad("message to be replied not found")
    return None


def _post(exchange: Exchange, chat: Chat, draft: ChatMessage, keyboard: tuple[str, ...] | None) -> Json:
    if keyboard is not None:
        chat.keyboard = keyboard
    message = replace(draft, id=exchange.next_message_id())
    exchange.keep(chat, message)
    return exchange.wire(chat, message)


def _file(exchange: Exchange, request: Request, kind: Kind) -> tuple[bytes, str]:
    if data := request.upload(kind.value):
        return data, exchange.store(kind, data, str(request.params.get(f"{kind.value}.name") or ""))
    known = str(request.params.get(kind.value, ""))
    if not known:
        raise bad(f"there is no {kind.value} in the request")
    if known not in exchange.paths:
        raise bad("wrong file identifier/HTTP URL specified")
    if not exchange.holds(kind, known):
        raise bad("type of file mismatch")  # the words from memory; no file changes its type when sent on
    return exchange.files[exchange.paths[known]], known


def _original(exchange: Exchange, request: Request) -> tuple[Chat, ChatMessage]:
    source = exchange.chats.get(request.whole("from_chat_id"))
    if source is None:
        raise bad("chat not found")
    message = source.messages.get(request.whole("message_id"))
    if message is None:
        raise bad("message to forward not found")
    return source, message
