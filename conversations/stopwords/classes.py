"""Signs that no phrase names: a part of the body and what it does wrong, near each other in any order."""

from dataclasses import dataclass
from functools import cache
from itertools import pairwise, product

from conversations.stopwords.kinds import Kind
from conversations.stopwords.lexicon import classes as lexicon
from conversations.stopwords.lexicon.languages import LANGUAGES
from conversations.stopwords.lexicon.signs import SIGNS
from conversations.stopwords.script import folded

REACH = 8  # words that may stand between two that belong together
STRETCH = 48  # words looked at together, the next ones half as many on: no sign of three classes is longer than half

Words = tuple[str, ...]
NO_NO = {"pt": ("no", "nos")}  # where "no" is no negation: "in the"
# Other ways to say the first word of a wording.
LIKE: dict[str, tuple[Words, ...]] = {
    "cant": (
        *(("couldnt",), ("hardly",), ("barely",), ("unable", "to"), ("struggle", "to"), ("struggling", "to")),
        *(("not", "able", "to"), ("hard", "to"), ("cant", "even"), ("cant", "really"), ("cant", "properly")),
        *(("can", "hardly"), ("can", "barely"), ("cant", "seem", "to"), ("trouble",), ("difficult", "to")),
    ),
    "wont": (("doesnt",), ("didnt",), ("refuses", "to"), ("just", "wont"), ("does", "not"), ("dont",)),
}


@dataclass(frozen=True, slots=True)
class Rule:
    """Classes whose words make a sign when they stand together."""

    kind: Kind
    classes: frozenset[str]
    language: str = ""


@dataclass(frozen=True, slots=True)
class Tag:
    """Words of a clause that belong to a class, from `start` up to `end`."""

    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Pair:
    """A rule met by the words from `start` up to `end`; `gap`: those of them that belong to no class of it."""

    kind: Kind
    start: int
    end: int
    gap: Words


def entries(line: str) -> list[Words]:
    """The wordings of a class; "cant move" also stands for "couldnt move", "unable to move" and the like."""
    found = [tuple(entry.split()) for entry in line.split(";") if entry.strip()]
    return found + [(*said, *one[1:]) for one in found for said in LIKE.get(one[0], ()) if one[1:]]


@cache
def _foreign() -> dict[str, str]:
    """The classes of other languages as clauses spell them, each with its language in front: "es limb"."""
    return {
        f"{language} {name}": folded(line).replace("'", "").replace("-", " ")
        for language, of in LANGUAGES.items()
        for name, line in of.items()
    }


@cache
def _lexicon() -> dict[str, dict[Words, tuple[str, ...]]]:
    """Under each first word the wordings that begin with it, and their classes."""
    found: dict[str, dict[Words, tuple[str, ...]]] = {}
    for name, line in {**lexicon.PARTS, **SIGNS, **_foreign()}.items():
        for entry in entries(line):
            under = found.setdefault(entry[0], {})
            under[entry] = (*under.get(entry, ()), name)
    return found


@cache
def rules() -> tuple[Rule, ...]:
    """Every rule of the lexicon, also as it reads in each language that has its classes."""
    return (*english(), *(rule for language in LANGUAGES for rule in _in_language(language)))


def _in_language(language: str) -> list[Rule]:
    named = ((one.kind, frozenset(f"{language} {name}" for name in one.classes)) for one in english())
    return [Rule(kind, names, language) for kind, names in named if names <= _foreign().keys()]


@cache
def english() -> tuple[Rule, ...]:
    """The rules as they stand in the lexicon."""
    found: list[Rule] = []
    for line in lexicon.RULES.strip().splitlines():
        kind, _, pairs = line.partition(" | ")
        found += [
            Rule(Kind(kind), frozenset(name.strip() for name in pair.split("+"))) for pair in pairs.split(";")
        ]
    return tuple(found)


@cache
def words_of_classes() -> frozenset[str]:
    """Every single word of a class."""
    lines = (*lexicon.PARTS.values(), *SIGNS.values(), *_foreign().values(), lexicon.ALARM)
    return frozenset(word for line in lines for entry in entries(line) for word in entry)


@cache
def first_of_signs() -> frozenset[str]:
    """The words with which signs begin; a "no" begins something else."""
    return frozenset(entry[0] for line in SIGNS.values() for entry in entries(line)) - {
        "no",
        "not",
        "nothing",
    }


def pairs(run: list[str]) -> list[Pair]:
    """Every rule that the words of a clause meet."""
    starts = range(0, max(len(run) - STRETCH // 2, 1), STRETCH // 2)
    return list(dict.fromkeys(pair for at in starts for pair in _pairs(run[at : at + STRETCH], at)))


def _pairs(run: list[str], offset: int) -> list[Pair]:
    tags = _tags(run)
    if not tags:
        return []
    named = tags.keys()
    met = ((rule, _nearest(rule, tags)) for rule in rules() if rule.classes <= named)
    return [_pair(rule, near, run, offset) for rule, near in met if near is not None]


def _tags(run: list[str]) -> dict[str, list[Tag]]:
    found: dict[str, list[Tag]] = {}
    known = _lexicon()
    for at, word in enumerate(run):
        for entry, names in known.get(word, {}).items():
            if len(entry) == 1 or tuple(run[at : at + len(entry)]) == entry:
                for name in names:
                    found.setdefault(name, []).append(Tag(at, at + len(entry)))
    return found


def _nearest(rule: Rule, tags: dict[str, list[Tag]]) -> tuple[Tag, ...] | None:
    """The closest words that meet a rule; None: they are one word, or too far apart."""
    best: tuple[Tag, ...] | None = None
    for chosen in product(*(tags[name] for name in rule.classes)):
        near = tuple(sorted(chosen, key=lambda tag: tag.start))
        steps = [after.start - before.end for before, after in pairwise(near)]
        if all(0 <= step <= REACH for step in steps) and (best is None or _length(near) < _length(best)):
            best = near
    return best


def _length(near: tuple[Tag, ...]) -> int:
    return near[-1].end - near[0].start


def _pair(rule: Rule, near: tuple[Tag, ...], run: list[str], offset: int) -> Pair:
    gap = (word for before, after in pairwise(near) for word in run[before.end : after.start])
    between = tuple(word for word in gap if word not in NO_NO.get(rule.language, ()))
    return Pair(rule.kind, near[0].start + offset, near[-1].end + offset, between)


@cache
def _touching(parts: bool) -> dict[str, list[Words]]:
    """Under each first word the wordings that alone make words worth a question."""
    both = {**lexicon.PARTS, **SIGNS}
    names = [name.replace("_", " ") for name in lexicon.TOUCHES.split()]
    lines = [both[name] for name in names if parts or name in SIGNS]
    wordings = {entry for line in lines for entry in entries(line)} - set(entries(lexicon.NOT_ALONE))
    found: dict[str, list[Words]] = {}
    for entry in sorted(wordings | set(entries(lexicon.ALARM))):
        found.setdefault(entry[0], []).append(entry)
    return found


def touches(run: list[str], *, parts: bool = True) -> bool:
    """Whether the words name a feeling in the body, or alarm, or (with `parts`) only a part of the body."""
    known = _touching(parts)
    return any(
        tuple(run[at : at + len(entry)]) == entry
        for at, word in enumerate(run)
        for entry in known.get(word, ())
    )
