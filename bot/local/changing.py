"""The API's methods that change what is on a phone already, and the answer to a tap."""

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.local.exchange import Chat, Exchange
from bot.local.messages import ChatMessage, Json, Kind
from bot.local.refusals import NOT_MODIFIED, STALE_QUERY, Refusal, bad
from bot.local.request import Request

# https://core.telegram.org/bots/api#deletemessage
_DELETABLE_FOR: Final = timedelta(hours=48)


def edit_text(exchange: Exchange, request: Request) -> Json:
    """editMessageText; buttons not sent again are taken away, as the real one does."""
    chat, old = _own(exchange, request)
    if old.kind is not Kind.TEXT:
        raise bad("there is no text in the message to edit")
    marked = request.text()
    new = replace(old, text=marked.text, entities=marked.entities, buttons=request.inline_only())
    return _change(exchange, chat, old, new)


def edit_buttons(exchange: Exchange, request: Request) -> Json:
    """editMessageReplyMarkup."""
    chat, old = _own(exchange, request)
    return _change(exchange, chat, old, replace(old, buttons=request.inline_only()))


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
    """answerCallbackQuery, once per tap; words given are shown on the phone that tapped."""
    query_id = str(request.params.get("callback_query_id", ""))
    if query_id not in exchange.open_queries:
        raise Refusal(400, STALE_QUERY)
    chat = exchange.chats[exchange.open_queries.pop(query_id)]
    if words := str(request.params.get("text") or ""):
        chat.notices.append(words)
    exchange.changed()
    return True


def answer_inline(exchange: Exchange, request: Request) -> bool:
    """answerInlineQuery, once per query; the button's words are shown on the phone that typed."""
    query_id = str(request.params.get("inline_query_id", ""))
    if query_id not in exchange.open_queries:
        raise Refusal(400, STALE_QUERY)
    chat = exchange.chats[exchange.open_queries.pop(query_id)]
    if words := str(request.mapping("button").get("text") or ""):
        chat.notices.append(words)
    exchange.changed()
    return True


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
    stamped = exchange.stamp(old, new)
    exchange.keep(chat, stamped)
    return exchange.wire(chat, stamped)
