"""HTML text is read as strictly as the API reads it, and its marks count as the library counts them."""

import asyncio
import html
from datetime import UTC, datetime
from typing import Any

import pytest
import telegram
from hypothesis import given
from hypothesis import strategies as st

from bot.local.api import LocalApi
from bot.local.markup import Entity, Marked, read_html
from bot.local.refusals import Refusal

MORNING = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
DANA = 77
TOKEN = "1:local"
LINK = Entity("text_link", 0, 1, "https://a.example/?b=1&c=2")


@pytest.mark.parametrize(
    ("source", "marked"),
    [
        ("plain", Marked("plain")),
        ("<b>Go</b> now", Marked("Go now", (Entity("bold", 0, 2),))),
        ("💪 <i>easy</i>", Marked("💪 easy", (Entity("italic", 3, 4),))),
        ("<b>a<i>b</i></b>", Marked("ab", (Entity("bold", 0, 2), Entity("italic", 1, 1)))),
        ("  <b> set 1 </b>  ", Marked("set 1", (Entity("bold", 0, 5),))),
        ("5 &lt; 6 &amp; 7", Marked("5 < 6 & 7")),
        ('<a href="https://a.example/?b=1&amp;c=2">x</a>', Marked("x", (LINK,))),
        ("<a>x</a>", Marked("x")),
        ("a<b></b>c", Marked("ac")),
    ],
)
def test_marks_become_entities(source: str, marked: Marked) -> None:
    assert read_html(source) == marked


@pytest.mark.parametrize(
    ("source", "reason"),
    [
        ("5 < 6", 'unsupported start tag "" at byte offset 2'),
        ("é<h1>x</h1>", 'unsupported start tag "h1" at byte offset 2'),
        ("<b>x", 'can\'t find end tag corresponding to start tag "b"'),
        ("x</b>", "unexpected end tag at byte offset 1"),
        ("<b>x</i>", 'unmatched end tag at byte offset 4, expected "</b>", found "</i>"'),
        ("<b", 'unsupported start tag "b" at byte offset 0'),
    ],
)
def test_what_does_not_parse_is_refused(source: str, reason: str) -> None:
    with pytest.raises(Refusal) as refused:
        read_html(source)
    assert refused.value.description == f"Bad Request: can't parse entities: {reason}"


@given(st.text(st.characters(exclude_categories=["Cs"])))
def test_escaped_text_comes_back_as_it_was(text: str) -> None:
    assert read_html(f"<b>{html.escape(text)}</b>").text == text.strip()


def send(**params: Any) -> dict[str, Any]:
    api = LocalApi(lambda: MORNING, TOKEN)
    api.add_phone(DANA, "Dana")
    return asyncio.run(api.call("sendMessage", {"chat_id": DANA} | params, {}))


def test_the_library_finds_the_bold_words() -> None:
    message = telegram.Message.de_json(send(text="💪 <b>Go</b>", parse_mode="HTML")["result"], None)
    assert list(message.parse_entities().values()) == ["Go"]


def test_the_limit_counts_what_is_left_without_the_marks() -> None:
    assert send(text=f"<b>{'a' * 4096}</b>", parse_mode="HTML")["ok"]
    assert not send(text=f"<b>{'a' * 4097}</b>", parse_mode="HTML")["ok"]


def test_other_ways_of_marking_are_refused() -> None:
    assert send(text="*x*", parse_mode="MarkdownV2")["description"] == "Bad Request: unsupported parse_mode"
