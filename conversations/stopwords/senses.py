"""In which sense something was said: now, denied, over, only supposed, long ago, about somebody else.

Each test looks at the words around the match in its clause and sentence. Where two readings are possible the
more careful one is taken.
"""

import re
from collections.abc import Callable

from conversations.stopwords.denying import LISTED, denied
from conversations.stopwords.found import Found
from conversations.stopwords.kinds import Kind, Sense
from conversations.stopwords.lexicon import grammar as words
from conversations.stopwords.stopping import stop_asked, stop_denied

# Too serious to be put aside because it has passed or was yesterday.
GRAVE = frozenset({Kind.EMERGENCY, Kind.URINE, Kind.SWELLING})
HIGHEST_RATING_LET_PASS = 3  # 0-10: the usual pain ceiling; own caution, no source
SCALE_END = 10


def _set(line: str) -> frozenset[str]:
    return frozenset(line.split())


HOLDS, THINGS, WAS = _set(words.HOLDS), _set(words.THINGS), _set(words.WAS)
OTHERS, MINE, OTHERS_PAST = _set(words.OTHERS), _set(words.MINE), _set(words.OTHERS_PAST)
NO_RATING_BEFORE, NO_RATING_AFTER = _set(words.NO_RATING_BEFORE), _set(words.NO_RATING_AFTER)
BESIDE_RATING = _set(words.BESIDE_RATING)
PRONOUNS = frozenset({"he", "she"})


def sense(found: Found) -> Sense:
    """The first sense that fits; NOW when none does."""
    tests = STOP_TESTS if found.kind is Kind.STOP else TESTS
    return next((said for said in (test(found) for test in tests) if said is not None), Sense.NOW)


# --- over, long ago, somebody else ----------------------------------------------------------------------
def over(found: Found) -> Sense | None:
    """ "tingling is gone", "stopped tingling"; chest pain that has gone stays chest pain."""
    if found.kind in GRAVE - {Kind.SWELLING}:
        return None
    if found.before.endswith(f" {words.ENDED} "):
        return Sense.OVER
    if re.search(words.OVER_NEXT, found.later) and WAS & set(found.before.split()):
        return Sense.OVER
    said = re.search(words.OVER, found.after)
    if said is None or HOLDS & set(said[1].split()):
        return None
    noun = bool(THINGS & {found.text.split()[-1], *said[1].split()[:1]}) or bool(
        {"is", "are", "has", "have"} & set(said[1].split())
    )
    return Sense.OVER if noun else None


def long_ago(found: Found) -> Sense | None:
    """Years ago is history. Yesterday is asked about, unless it was grave; a fall then is news for the coach."""
    if re.search(words.AGAIN, found.clause):
        return None
    if re.search(words.LONG_AGO, found.clause):
        return Sense.LONG_AGO
    if not re.search(words.LATELY, found.clause) or found.kind in GRAVE:
        return None
    return Sense.LATELY if found.kind is Kind.INJURY else Sense.PERHAPS


def of_others(found: Found) -> Sense | None:
    """ "my dad had a stroke" is history; "my wife fainted" is asked about; "he collapsed" is told by who holds the phone."""
    run = found.before.split()
    at = max((at for at, word in enumerate(run) if word in OTHERS), default=None)
    if at is None or MINE & set(run[at + 1 :]):
        return None
    past = (
        re.search(words.LONG_AGO, found.clause)
        or OTHERS_PAST & {*run[at + 1 :], *found.text.split(), *found.after.split()}
        or re.search(words.STORY, found.after + found.later)
    )
    if past:
        return Sense.OF_OTHERS
    unnamed = not OTHERS & set(run) - PRONOUNS and found.kind is Kind.EMERGENCY
    return None if unnamed else Sense.PERHAPS


# --- questions and conditions ---------------------------------------------------------------------------
def supposed(found: Found) -> Sense | None:
    """ "what if it gets numb?", "is tingling normal?"; a question about my own hand now is no supposition."""
    if re.search(words.KNOWING, found.said_before):
        return Sense.SUPPOSED
    if re.search(words.IF_MINE, found.said_before):
        return Sense.PERHAPS
    bad = re.search(words.BAD_IF, found.said_before)
    if bad:
        mine = bad[1] != "if" and re.search(words.ABOUT_NOW, found.sentence)
        return None if mine else Sense.PERHAPS
    if re.search(words.JUST_ASKING, found.sentence) and found.kind not in GRAVE and not _mine_now(found):
        return Sense.SUPPOSED
    if re.search(words.STARTS_ASKING, found.clause):
        return _asked(found)
    if re.search(words.SUPPOSED, found.said_before):
        return Sense.SUPPOSED
    if re.search(words.BARE_IF, found.said_before):
        return Sense.SUPPOSED if found.question else Sense.PERHAPS
    return _whether_normal(found)


def _asked(found: Found) -> Sense:
    return Sense.PERHAPS if _mine_now(found) else Sense.SUPPOSED


def _mine_now(found: Found) -> bool:
    now = re.search(words.ABOUT_NOW, found.clause) is not None
    return now and re.search(words.TO_COME, found.clause) is None


def _whether_normal(found: Found) -> Sense | None:
    if found.kind in GRAVE - {Kind.EMERGENCY}:
        return None
    asks = re.search(words.ASKS_WHETHER_NORMAL, found.clause)
    normal = found.question and re.search(words.SAYS_NORMAL, found.clause)
    if not (asks or normal) or re.search(words.ABOUT_NOW, found.sentence):
        return None
    return Sense.PERHAPS


# --- "pain 2" -------------------------------------------------------------------------------------------
def rated(found: Found) -> Sense | None:
    """A rating of pain up to 3 of 10 is an answer, and so is "as usual"; above, it is pain."""
    if found.kind is not Kind.HURTS:
        return None
    if re.search(words.AS_USUAL, found.after):
        return Sense.RATED
    if not found.text.strip().startswith(("pain", "hurt")):
        return None
    score = _number_after(found.after.split())
    if score is None:
        score = _number_before(found.before.split())
    return Sense.RATED if score is not None and score <= HIGHEST_RATING_LET_PASS else None


def _number_after(run: list[str]) -> int | None:
    for at, word in enumerate(run):
        score = _rating(word)
        if score is not None:
            return None if run[at + 1 : at + 2] and run[at + 1] in NO_RATING_AFTER else score
        if word not in BESIDE_RATING and word not in LISTED:
            return None
    return None


def _number_before(run: list[str]) -> int | None:
    if not run or (len(run) > 1 and run[-2] in NO_RATING_BEFORE):
        return None
    return _rating(run[-1])


def _rating(word: str) -> int | None:
    """ "2" and "2/10" are 2."""
    whole = word.removesuffix(f"/{SCALE_END}")
    return int(whole) if whole.isdecimal() and int(whole) <= SCALE_END else None


Test = Callable[[Found], Sense | None]
TESTS: tuple[Test, ...] = (denied, rated, over, of_others, long_ago, supposed)
STOP_TESTS: tuple[Test, ...] = (stop_denied, stop_asked)
