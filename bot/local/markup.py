"""Text marked up as HTML, read as strictly as the Bot API does: a stray "<" or an open tag is refused."""

import re
from dataclasses import dataclass, replace
from html import unescape
from typing import Final

from bot.local.refusals import Refusal, bad

# https://core.telegram.org/bots/api#html-style; spans, custom emoji and code languages are left out.
_KINDS: Final = {
    "b": "bold",
    "strong": "bold",
    "i": "italic",
    "em": "italic",
    "u": "underline",
    "ins": "underline",
    "s": "strikethrough",
    "strike": "strikethrough",
    "del": "strikethrough",
    "code": "code",
    "pre": "pre",
    "a": "text_link",
    "blockquote": "blockquote",
    "tg-spoiler": "spoiler",
}
_TAG: Final = re.compile(r"<(?P<close>/?)(?P<name>[^\s>]*)(?P<rest>[^>]*)>?")
_HREF: Final = re.compile(r"""href=["']?(?P<url>[^"'>\s]+)""")


@dataclass(frozen=True, slots=True)
class Entity:
    """A stretch of text with a meaning; offset and length in UTF-16 units, `url` only for a link."""

    kind: str
    offset: int
    length: int
    url: str = ""


@dataclass(frozen=True, slots=True)
class Marked:
    """Plain words and what stands out in them."""

    text: str
    entities: tuple[Entity, ...] = ()


def utf16_units(text: str) -> int:
    """Return the length as the API counts it: a sign outside the basic plane counts two."""
    return len(text.encode("utf-16-le")) // 2


def read_html(source: str) -> Marked:
    """Return the words and their marks; Refusal 400 for what the API cannot parse."""
    text, at = "", 0
    opened: list[tuple[str, Entity]] = []
    entities: list[Entity] = []
    for tag in _TAG.finditer(source):
        text += unescape(source[at : tag.start()])
        at = tag.end()
        if tag["close"]:
            entities.append(_closed(tag, opened, utf16_units(text)))
        else:
            opened.append(_opened(tag, utf16_units(text)))
    if opened:
        raise _unreadable(f'can\'t find end tag corresponding to start tag "{opened[-1][0]}"')
    return _trimmed(text + unescape(source[at:]), entities)


def _opened(tag: re.Match[str], offset: int) -> tuple[str, Entity]:
    name = tag["name"].lower()
    if name not in _KINDS or not tag[0].endswith(">"):
        raise _unreadable(f'unsupported start tag "{name}" at byte offset {_bytes_before(tag)}')
    url = _HREF.search(tag["rest"])
    return name, Entity(_KINDS[name], offset, 0, unescape(url["url"]) if name == "a" and url else "")


def _closed(tag: re.Match[str], opened: list[tuple[str, Entity]], end: int) -> Entity:
    if not opened:
        raise _unreadable(f"unexpected end tag at byte offset {_bytes_before(tag)}")
    name, entity = opened.pop()
    if tag["name"].lower() not in {name, ""}:
        place = _bytes_before(tag)
        raise _unreadable(f'unmatched end tag at byte offset {place}, expected "</{name}>", found "{tag[0]}"')
    return replace(entity, length=end - entity.offset)


def _trimmed(text: str, entities: list[Entity]) -> Marked:
    lead = utf16_units(text) - utf16_units(text.lstrip())
    end = utf16_units(text.strip())
    moved = [_clipped(entity, lead, end) for entity in entities]
    shown = [e for e in moved if e.length > 0 and (e.kind != "text_link" or e.url)]
    return Marked(text.strip(), tuple(sorted(shown, key=lambda e: (e.offset, -e.length))))


def _clipped(entity: Entity, lead: int, end: int) -> Entity:
    start = max(entity.offset - lead, 0)
    stop = min(entity.offset + entity.length - lead, end)
    return replace(entity, offset=start, length=stop - start)


def _bytes_before(tag: re.Match[str]) -> int:
    return len(tag.string[: tag.start()].encode())


def _unreadable(reason: str) -> Refusal:
    return bad(f"can't parse entities: {reason}")
