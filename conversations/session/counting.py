"""What is typed or tapped about counts in a session: which question it answers."""

import re
from collections.abc import Callable
from dataclasses import replace

from conversations.answers import Count, Unclear
from conversations.correcting import HALF, named_set, takes_back
from conversations.protocol import Choice, Said, Say, Turn
from conversations.session import coming_off, sets, tally, which_set
from conversations.session.side_names import side_named
from conversations.session.state import (
    Counted,
    Phase,
    State,
    is_full,
    lacking,
    last_counted,
    say,
    turn,
    with_counted,
)
from conversations.stopwords import read as read_words
from conversations.words import session as words
from conversations.words.answers import unclear

HIGHEST_RATING = 10
LOST_WORDS = re.compile(
    r"\b(?:lost|forgot|no idea|dunno|don'?t know|not sure|blank)\b|^skip\W*$", re.IGNORECASE
)

READY = re.compile(
    r"(?:(?:i ?['’]?m|ok|okay|yes) )*(?:ready|go|go on|next|next set|continue|start|what now|now what|what do i do now|and now)\W*",
    re.IGNORECASE,
)


def typed(state: State, event: Said) -> Turn[State]:
    """Words during sets, rests and after: counts, corrections, "lost count", or something unclear."""
    if state.set_at is None and not state.counted:  # no set has begun: there is nothing to count
        banded = state.phase is Phase.OFF and state.on_at is not None
        return turn(state, coming_off.off(state, words.OFF_FIRST) if banded else Say(words.NOTHING_TO_COUNT))
    asked = None if state.between is None else which_set.which_id(state, last_counted(state))
    if (
        asked
        and not event.too_soon_for(asked)
        and (meant := which_set.typed_choice(state, event.text)) is not None
    ):
        return which_set.which(state, replace(event, text=meant, to=asked))
    if state.phase is Phase.REST and READY.fullmatch(event.text.strip()):
        open_count = () if lacking(state) is None else (sets.ask_reps(state, words.REPS_LAST),)
        return turn(state, Say(words.GO_COMES), *open_count)
    if HALF.fullmatch(event.text) and len(state.doing.sides) == 1:
        return turn(state, Say(words.NO_HALVES))
    if (named := named_set(event.text)) is not None:
        return _named(state, event, *named)
    if LOST_WORDS.search(event.text) and lacking(state) is not None:
        return lost(state, event)
    if (tens := _tens_typed(event.text)) is not None and (one := lacking(state)) is not None:
        return _ones(state, one, tens)
    try:
        counts = tally.read(state, event.text)
    except Unclear as problem:
        return turn(state, Say(_not_a_count(state, event.text, problem)))
    return numbers(state, event, counts)


def late(state: State, event: Said) -> Turn[State] | None:
    """A count that comes only during the look at the bands: no tightness and no refill is above 10."""
    one = lacking(state)
    if not state.counted or event.to is not None or not event.text.strip().isdigit():
        return None
    try:
        counts = tally.read(state, event.text)
    except Unclear:
        return None
    if counts[0].value <= HIGHEST_RATING:
        return None
    from conversations.session import fitting  # the question of the check stays open

    noted = numbers(state, event, counts) if one is None else tally.fill(state, event, one, counts)
    return replace(noted, replies=(*noted.replies, fitting.ask(noted.state or state)))


def _tens_typed(text: str) -> int | None:
    """The tens of a button's label that was typed, "20-29"; None: it is none."""
    flat = text.replace("–", "-").replace(" ", "")
    return next((int(one.value[1:]) for one in sets.TENS if one.label == flat), None)


def _not_a_count(state: State, text: str, problem: Unclear) -> str:
    """What to say to words without a number; "not numb" and "tingling is gone" are good news, not a mistake."""
    if read_words(text).heard:
        return words.GOOD_TO_HEAR
    if state.phase is Phase.REST and lacking(state) is None:
        return words.RESTING
    return words.IN_A_SET if state.phase is Phase.SET else unclear(problem)


def _named(state: State, event: Said, no: int, text: str) -> Turn[State]:
    """ "set 1 was 21"."""
    try:
        counts = tally.read(state, text)
    except Unclear as problem:
        return turn(state, Say(unclear(problem)))
    if any(one.no == no for one in state.counted):
        return tally.amend(state, replace(event, text=text), no, counts)
    return turn(state, Say(words.NO_SUCH_SET.format(n=no)))


def numbers(state: State, event: Said, counts: tuple[Count, ...]) -> Turn[State]:
    """Place counts that were typed freely."""
    one, place = lacking(state), side_named(state, event.text)
    asked_for = one is not None and place is not None and place >= len(one.reps) > 0
    if takes_back(event.text) and not asked_for and (last := which_set.last_told(state)) is not None:
        return which_set.taken_back(state, event, last, counts)
    if len(counts) > len(state.doing.sides):
        return tally.many(state, event, counts)
    if one is not None:
        return _missing(state, event, one, counts)
    copied = which_set.said_again(state, event, counts) is not None
    if state.phase is Phase.SET and not copied and not event.too_soon_for(sets.done_id(state)):
        return tally.done_with(state, event, counts)
    if _went_quiet(state):
        given_up = Counted(state.set_no, event.at)
        return _one_side(with_counted(state, given_up), event, given_up, place, counts)
    return which_set.again(state, event, counts)


def _missing(state: State, event: Said, one: Counted, counts: tuple[Count, ...]) -> Turn[State]:
    """A number while a count is missing: mostly that count."""
    if which_set.said_again(state, event, counts) is not None:
        return turn(state, sets.ask_reps(state, words.REPS_LAST))
    if (read := which_set.asked_about(state, event, counts)) is not None:
        return turn(state, Say(read))
    if which_set.next_under_way(state, event, one, counts):
        return which_set.ask_which(state, words.WHICH_MISSING, one.no, counts[0].value, other=state.set_no)
    place = side_named(state, event.text)
    unseen = event.too_soon_for(sets.reps_id(state, one))
    if one.reps and unseen and place is None and len(counts) == 1:
        return which_set.ask_side(state, one, counts[0].value)
    return _one_side(state, event, one, place, counts)


def _went_quiet(state: State) -> bool:
    """A set was given up because nobody answered; its count still counts."""
    return state.phase is Phase.OFF and state.why == coming_off.QUIET and state.set_no > len(state.counted)


def _one_side(
    state: State, event: Said, one: Counted, place: int | None, counts: tuple[Count, ...]
) -> Turn[State]:
    """A count for the side that is missing, or for another one by name: that is never put in its place."""
    if place is None or place == len(one.reps) or len(counts) != 1:
        return tally.fill(state, event, one, counts)
    if place > len(one.reps):
        return turn(state, sets.ask_reps(state, words.REPS_LAST))
    one = tally.stated(one, (place,), counts, event.message, event.at)
    state = with_counted(state, one)
    effects = tally.facts(state, event.at, one, (place,))
    return turn(state, sets.ask_reps(state, words.REPS_LAST), effects=effects)


def tapped(state: State, event: Said) -> Turn[State]:
    """A button under a count question: tens, then ones; "Lost count"; or a typed reply to it."""
    _, exercise, no, place = (event.to or "").split(".")
    one = next((each for each in state.counted if each.no == int(no)), None)
    if one is None or int(exercise) != state.exercise + 1:
        return turn(state, Say(words.STALE))
    if is_full(state, one):
        return _tapped_again(state, event, one)
    if int(place) < len(one.reps):
        return _side_before(state, event, one, int(place))
    if event.text == "lost" and state.guess:  # the same button twice is one answer
        return turn(state, _best_guess(state, one))
    if event.text in ("lost", "blank"):
        return _lost(state, event, one)
    if event.message is not None:  # typed as a reply, so anything may stand there
        return typed(state, event) if one == lacking(state) else _earlier(state, event, one)
    if event.text.startswith("t") and event.text[1:].isdecimal():
        return _ones(state, one, int(event.text[1:]))
    if event.text.isdecimal():
        return tally.fill(state, event, one, (Count(int(event.text), False),))
    return typed(state, event)


def _earlier(state: State, event: Said, one: Counted) -> Turn[State]:
    """A typed reply to the question about a set before the one that is asked for now: that set's count."""
    if LOST_WORDS.search(event.text):
        return _lost(state, event, one)
    place = side_named(state, event.text)
    return _counted(state, event, lambda counts: _one_side(state, event, one, place, counts))


def _counted(state: State, event: Said, take: Callable[[tuple[Count, ...]], Turn[State]]) -> Turn[State]:
    """What `take` makes of the counts that are typed; asked again where there are none."""
    try:
        counts = tally.read(state, event.text)
    except Unclear as problem:
        return turn(state, Say(unclear(problem)))
    return take(counts)


def _side_before(state: State, event: Said, one: Counted, place: int) -> Turn[State]:
    """A second tap under the side before is not the other side's count; a typed reply corrects that side."""
    if event.message is None:
        shown = Say(words.ALREADY.format(reps=one.reps[place]))
        return turn(state, shown, sets.ask_reps(state, words.REPS_LAST))
    return _counted(state, event, lambda counts: _one_side(state, event, one, place, counts))


def replied(state: State, event: Said) -> Turn[State]:
    """Under the Go of a set that is done: a number typed as a reply is its count, a second tap is nothing."""
    _, exercise, no = (event.to or "").split(".")
    one = next((each for each in state.counted if each.no == int(no)), None)
    if event.message is None or one is None or int(exercise) != state.exercise + 1:
        return turn(state, Say(words.STALE))
    if not is_full(state, one):
        return typed(state, replace(event, to=None))
    return _tapped_again(state, event, one)


def _tapped_again(state: State, event: Said, one: Counted) -> Turn[State]:
    if event.message is not None:  # typed as a reply to this question: a correction of that set
        return _counted(state, event, lambda counts: tally.amend(state, event, one.no, counts))
    return turn(state, which_set.already(one))


def _ones(state: State, one: Counted, tens: int) -> Turn[State]:
    state = replace(state, tens=tens)
    digits = tuple(Choice(str(value), str(value)) for value in range(tens, tens + 10))
    asked = words.ONES.format(n=one.no, side=_side_asked(state, one))
    return turn(state, say(asked, sets.reps_id(state, one), *digits))


def _side_asked(state: State, one: Counted) -> str:
    """Of which side the count is asked, where each has its own."""
    sides = state.doing.sides
    if len(sides) == 1:
        return ""
    return words.ONLY_SIDE.format(side=words.SIDES[sides[min(len(one.reps), len(sides) - 1)]].lower())


def lost(state: State, event: Said) -> Turn[State]:
    """Lost count: a best guess once, stored as rough; then a blank. Neither ever raises a load."""
    one = lacking(state)
    return turn(state, Say(words.STALE)) if one is None else _lost(state, event, one)


def _lost(state: State, event: Said, one: Counted) -> Turn[State]:
    if state.guess:
        state = replace(with_counted(state, replace(one, blank=True)), guess=False)
        return tally.then(state, event, (Say(words.LEFT_BLANK),), ())
    state = replace(state, guess=True)
    return turn(state, _best_guess(state, one))


def _best_guess(state: State, one: Counted) -> Say:
    return say(words.BEST_GUESS, sets.reps_id(state, one), *sets.TENS, Choice(words.LEAVE_BLANK, "blank"))
