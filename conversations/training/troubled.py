"""What is wrong, as the talk about it begins, and what was answered so far."""

from dataclasses import dataclass

from conversations.stopwords.kinds import Kind
from conversations.words import safety


@dataclass(frozen=True, slots=True)
class Brief:
    """What was read, and which bands are on as (session, spell).

    `reader`: the coach to whom the words can go when nothing is wrong, "": nobody; `mild`: nothing in them touches the body, so that
    they go there when no answer comes; `sent`: they have gone there already.
    """

    kind: Kind
    said: str
    spells: tuple[tuple[str, str], ...] = ()
    number: str = safety.ANY_NUMBER
    reader: str = ""
    mild: bool = False
    sent: bool = False


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers so far; None: not asked yet."""

    wrong: str | None = None
    off: str | None = None
    where: str | None = None
    now: str | None = None
    half: str = ""  # what was said instead of "off": the question is put in other words then
    said: str = ""  # the answer to how it is now, word for word
    sore: str | None = None


GRAVE = frozenset({Kind.EMERGENCY, Kind.URINE, Kind.SWELLING, Kind.LIMP, Kind.WEAK})  # better is not over
ASK_FIRST = frozenset({Kind.UNSURE, Kind.SORE})  # the coach is told once it is known what it is
# "How is it now?" asks for nothing.
NOTHING_MORE = frozenset({Kind.STOP, Kind.FEVER, Kind.HURT_LATELY, Kind.SORE})
