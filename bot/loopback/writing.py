"""The API's methods that put messages on a phone, change them and take them away."""

from dataclasses import replace
from datetime import timedelta
from typing import Any, Final

from bot.loopback.exchange import Chat, Exchange
from bot.loopback.messages import ChatMessage, Json, Kind
from bot.loopback.refusals import NOT_MODIFIED, STALE_QUERY, Refusal, bad
from bot.loopback.request import Request

# https://core.telegram.org/bots/api#deletemessage
_DELETABLE_FOR: Final = timedelta(hours=48)


def send_message(exchange: Exchange, request: Request) -> Json:
    """sendMessage."""
    chat = exchange.chat(request.whole("chat_id"))
    return _post(exchange, chat, _draft(exchange, chat, request, request.text()))


def send_photo(exchange: Exchange, request: Request) -> Json:
    """sendPhoto: an upload, or the id of a picture sent before."""
    chat = exchange.chat(request.whole("chat_id"))
    data, file_id = _file(exchange, request, Kind.PHOTO)
    draft = _draft(exchange, chat, request, request.caption())
    return _post(exchange, chat, replace(draft, kind=Kind.PHOTO, photo=data, file_id=file_id))


def send_document(exchange: Exchange, request: Request) -> Json:
    """sendDocument: an upload, or the id of a document sent before."""
    chat = exchange.chat(request.whole("chat_id"))
    data, file_id = _file(exchange, request, Kind.DOCUMENT)
    draft = _draft(exchange, chat, request, request.caption())
    name = str(request.params.get("document.name") or "document")
    filled = replace(draft, kind=Kind.DOCUMENT, document=data, document_name=name, file_id=file_id)
    return _post(exchange, chat, filled)


def edit_text(exchange: Exchange, request: Request) -> Json:
    """editMessageText; buttons not sent again are taken away, as the real one does."""
    chat, old = _own(exchange, request)
    if old.kind is not Kind.TEXT:
        raise bad("there is no text in the message to edit")
    return _change(exchange, chat, old, replace(old, text=request.text(), buttons=request.buttons()))


def edit_buttons(exchange: Exchange, request: Request) -> Json:
    """editMessageReplyMarkup."""
    chat, old = _own(exchange, request)
    return _change(exchange, chat, old, replace(old, buttons=request.buttons()))


def delete_message(exchange: Exchange, request: Request) -> bool:
    """deleteMessage; no message older than 48 hours can go."""
    chat = exchange.chat(request.whole("chat_id"))
    message = chat.messages.get(request.whole("message_id"))
    if message is None:
        raise bad("message to delete not found")
    if exchange.now() - message.at > _DELETABLE_FOR:
        raise bad("message can't be deleted for everyone")
    del chat.messages[message.id]
    exchange.changed()
    return True


def answer_query(exchange: Exchange, request: Request) -> bool:
    """answerCallbackQuery; words given are shown on the phone that tapped."""
    query_id = str(request.params.get("callback_query_id", ""))
    if query_id not in exchange.open_queries:
        raise Refusal(400, STALE_QUERY)
    chat = exchange.chats[exchange.open_queries.pop(query_id)]
    if words := str(request.params.get("text") or ""):
        chat.notices.append(words)
    exchange.changed()
    return True


def chat_action(exchange: Exchange, request: Request) -> bool:
    """sendChatAction: accepted and not shown."""
    exchange.chat(request.whole("chat_id"))
    return True


def _draft(exchange: Exchange, chat: Chat, request: Request, text: str) -> ChatMessage:
    return ChatMessage(
        0,
        mine=False,
        text=text,
        at=exchange.now(),
        buttons=request.buttons(),
        quiet=request.flag("disable_notification"),
        reply_to=_replied(chat, request.structure("reply_parameters")),
    )


def _replied(chat: Chat, wanted: Any) -> int | None:
    if not wanted:
        return None
    if (number := int(wanted.get("message_id", 0))) in chat.messages:
        return number
    if not wanted.get("allow_sending_without_reply"):
        raise bad("message to be replied not found")
    return None


def _post(exchange: Exchange, chat: Chat, draft: ChatMessage) -> Json:
    message = replace(draft, id=exchange.next_message_id())
    exchange.keep(chat, message)
    return exchange.wire(chat, message)


def _file(exchange: Exchange, request: Request, kind: Kind) -> tuple[bytes, str]:
    if data := request.upload(kind.value):
        return data, exchange.store(kind, data, str(request.params.get(f"{kind.value}.name") or ""))
    known = str(request.params.get(kind.value, ""))
    if known not in exchange.paths:
        raise bad(
            "wrong file identifier/HTTP URL specified"
            if known
            else f"there is no {kind.value} in the request"
        )
    return exchange.files[exchange.paths[known]], known


def _own(exchange: Exchange, request: Request) -> tuple[Chat, ChatMessage]:
    chat = exchange.chat(request.whole("chat_id"))
    message = chat.messages.get(request.whole("message_id"))
    if message is None:
        raise bad("message to edit not found")
    if message.mine:
        raise bad("message can't be edited")
    return chat, message


def _change(exchange: Exchange, chat: Chat, old: ChatMessage, new: ChatMessage) -> Json:
    if new == old:
        raise Refusal(400, NOT_MODIFIED)
    stamped = exchange.stamp(new)
    exchange.keep(chat, stamped)
    return exchange.wire(chat, stamped)
