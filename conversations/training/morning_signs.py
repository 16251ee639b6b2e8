"""The answers after a session, and the signs that a client types in their own words instead of tapping one."""

from dataclasses import dataclass, replace

from conversations.answers import Unclear
from conversations.heard import RED_FLAGS
from conversations.prose import is_prose
from conversations.stopwords import read
from conversations.stopwords.kinds import Kind
from core.safety.aftercare import Sign

TYPED_SIGNS = {
    Kind.URINE: Sign.DARK_URINE,
    Kind.SWELLING: Sign.ONE_SIDED,
    Kind.NERVE: Sign.NUMB_STILL,
    Kind.LIMP: Sign.WEAKNESS,
    Kind.WEAK: Sign.WEAKNESS,
    Kind.FEVER: Sign.FEVER,
    Kind.SORE: Sign.SORE_BEYOND,
}


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `stopped`: how it is now what the session was stopped for.

    `signs` so far; `what` "none" or "other" ends the list.

    `latest`: the sign of the last answer. `flagged`: another red flag, typed as `said`.
    """

    stopped: str | None = None
    stopped_said: str = ""
    how: str | None = None
    sore: str | None = None
    signs: tuple[Sign, ...] = ()
    what: str | None = None
    other: str | None = None
    pain: int | None = None
    latest: Sign | None = None
    flagged: Kind | None = None
    said: str = ""


def in_own_words(draft: Draft, step: str, text: str, problem: Unclear) -> Draft:
    """A sign, another red flag, or something for the coach to read. Raises `problem` where it is none of these."""
    kind = read(text).kind
    if kind in TYPED_SIGNS:
        return _told_of(draft, TYPED_SIGNS[kind])
    if kind in RED_FLAGS:
        return replace(draft, flagged=kind, said=text)
    if step == "what" and is_prose(text):
        return replace(draft, what="other", other=text.strip())
    raise problem


def _told_of(draft: Draft, sign: Sign) -> Draft:
    """What a sign leads to is told, and the list goes on."""
    beyond = sign is Sign.SORE_BEYOND
    how = "sore" if beyond or draft.how == "sore" else "else"
    sore = "far_more" if beyond else draft.sore or "ordinary"
    return with_sign(replace(draft, how=how, sore=sore, what=None), sign)


def with_sign(draft: Draft, sign: Sign) -> Draft:
    """A repeated sign is kept once, and comes last because it was just said."""
    signs = (*(one for one in draft.signs if one != sign), sign)
    return replace(draft, signs=signs, latest=sign)
