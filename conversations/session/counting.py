"""Which set a number belongs to, and its fact. A count is stored the moment it is known."""

import re
from dataclasses import replace
from datetime import datetime, timedelta

from conversations.answers import Count, Sided, Unclear, several_numbers, side_numbers
from conversations.protocol import Choice, Corrected, Effect, Record, Said, Say, Turn
from conversations.session import fitting, sets
from conversations.session.correcting import HALF, is_correction, named_set, only_reps, without_preface
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
from conversations.words import session as words
from conversations.words.answers import unclear
from core.facts import SetDone
from core.plans import Scheme

MOST_REPS = 200
LATE_COUNT = timedelta(seconds=10)  # after Go a number may still be the last set's; own caution, no source
SAME_WITHIN = timedelta(seconds=5)
COPY_WITHIN = timedelta(seconds=15)  # a message sent twice over a bad line; own caution, no source
QUIET = "quiet"  # why a spell of bands ended, stored
SIDED = re.compile(r"\b(?:left|right|l|r)\b", re.IGNORECASE)
YES_OR_NO = {"yes": "change", "change it": "change", "no": "keep", "leave it": "keep"}
BETWEEN_SETS = (Phase.REST, Phase.SET, Phase.TIGHT, Phase.REFILL, Phase.NAIL, Phase.FEEL)
LOST_WORDS = re.compile(r"\b(lost|forgot|no idea|dunno|don'?t know|not sure)\b", re.IGNORECASE)


def typed(state: State, event: Said) -> Turn[State]:
    """Words during sets, rests and after: counts, corrections, "lost count", or something unclear."""
    if state.set_at is None and not state.counted:  # no set has begun: there is nothing to count
        return turn(state, Say(words.NOTHING_TO_COUNT))
    if state.between is not None and (meant := YES_OR_NO.get(event.text.strip().lower().rstrip(".!"))):
        return which(state, replace(event, text=meant, to=_which_id(state, last_counted(state))))
    if HALF.fullmatch(event.text) and len(state.doing.sides) == 1:
        return turn(state, Say(words.NO_HALVES))
    if (named := named_set(event.text)) is not None:
        return _named(state, event, *named)
    if LOST_WORDS.search(event.text) and lacking(state) is not None:
        return lost(state, event)
    try:
        counts = read(state, event.text)
    except Unclear as problem:
        return turn(state, Say(unclear(problem)))
    return numbers(state, event, counts)


def read(state: State, text: str) -> tuple[Count, ...]:
    """One or more counts; sides come in the plan's order. Raises `Unclear`."""
    text = only_reps(without_preface(text))
    if len(state.doing.sides) == 2 or SIDED.search(text):
        try:
            sided = side_numbers(text, 0, MOST_REPS)
        except Unclear:
            return several_numbers(text, 0, MOST_REPS)
        return _in_plan_order(state, sided)
    return several_numbers(text, 0, MOST_REPS)


def _named(state: State, event: Said, no: int, text: str) -> Turn[State]:
    """ "set 1 was 21"."""
    try:
        counts = read(state, text)
    except Unclear as problem:
        return turn(state, Say(unclear(problem)))
    if any(one.no == no for one in state.counted):
        return amend(state, event, no, counts)
    return turn(state, Say(words.NO_SUCH_SET.format(n=no)))


def _in_plan_order(state: State, sided: Sided) -> tuple[Count, ...]:
    by_side = {"left": sided.left, "right": sided.right}
    return tuple(count for side in state.doing.sides if (count := by_side[side]) is not None)


def numbers(state: State, event: Said, counts: tuple[Count, ...]) -> Turn[State]:
    """Place counts that were typed freely."""
    sides = len(state.doing.sides)
    if is_correction(event.text) and state.counted:
        return amend(state, event, state.counted[-1].no, counts)
    if len(counts) > sides:
        return many(state, event, counts)
    one = lacking(state)
    if one is not None and said_again(state, event, counts) is not None:
        return turn(state, sets.ask_reps(state, words.REPS_LAST))
    if one is not None and _next_under_way(state, event, one, counts):
        return _ask_which(state, words.WHICH_MISSING, counts[0].value, one)
    if one is not None:
        place = side_named(state, event.text)
        return _one_side(state, event, one, place, counts)
    if state.phase is Phase.SET:
        return done_with(state, event, counts)
    if _went_quiet(state):
        given_up = Counted(state.set_no, event.at)
        return fill(with_counted(state, given_up), event, given_up, counts)
    return again(state, event, counts)


def _went_quiet(state: State) -> bool:
    """A set was given up because nobody answered; its count still counts."""
    return state.phase is Phase.OFF and state.why == QUIET and state.set_no > len(state.counted)


def _next_under_way(state: State, event: Said, one: Counted, counts: tuple[Count, ...]) -> bool:
    """A number well into the next set, with the one before still missing: it may be either's."""
    under_way = state.phase is Phase.SET and one.no == state.set_no - 1 and state.set_at is not None
    plain = len(counts) == 1 and len(state.doing.sides) == 1
    return under_way and plain and event.at - (state.set_at or event.at) > LATE_COUNT


def said_again(state: State, event: Said, counts: tuple[Count, ...]) -> Counted | None:
    """The set for which these numbers were noted a moment ago: a second copy of a message is no new count."""
    values = tuple(count.value for count in counts)
    missing = lacking(state)
    recent = [
        one
        for one in state.counted
        if one.noted_at
        and event.at - one.noted_at <= (COPY_WITHIN if missing and one.no != missing.no else SAME_WITHIN)
    ]
    # What was tapped has no second copy that is typed: the same number is then the other side's.
    typed_ones = [one for one in recent if one.message is not None or is_full(state, one)]
    return next((one for one in typed_ones if one.reps[-len(values) :] == values), None)


def side_named(state: State, text: str) -> int | None:
    """The place, in the plan's order, of the only side that words name; None: none or both."""
    if len(state.doing.sides) != 2:
        return None
    try:
        sided = side_numbers(text, 0, MOST_REPS)
    except Unclear:
        return None
    said = {"left": sided.left, "right": sided.right}
    named = [no for no, side in enumerate(state.doing.sides) if said[side] is not None]
    return named[0] if len(named) == 1 else None


def _one_side(
    state: State, event: Said, one: Counted, place: int | None, counts: tuple[Count, ...]
) -> Turn[State]:
    """A count for the side that is missing, or for another one by name: that is never put in its place."""
    if place is None or place == len(one.reps) or len(counts) != 1:
        return fill(state, event, one, counts)
    if place > len(one.reps):
        return turn(state, sets.ask_reps(state, words.REPS_LAST))
    one = _stated(one, (place,), counts, event.message, event.at)
    state = with_counted(state, one)
    effects = facts(state, event.at, one, (place,))
    return turn(state, sets.ask_reps(state, words.REPS_LAST), effects=effects)


def _stated(
    one: Counted, places: tuple[int, ...], counts: tuple[Count, ...], message: int | None, at: datetime
) -> Counted:
    """The set with these counts in these places, each with the message that said it."""
    reps = dict(enumerate(one.reps)) | dict(zip(places, (count.value for count in counts), strict=True))
    said_by = dict(enumerate(one.said_by or (one.message,) * len(one.reps))) | dict.fromkeys(places, message)
    in_order = sorted(reps)
    return replace(
        one,
        reps=tuple(reps[place] for place in in_order),
        said_by=tuple(said_by[place] for place in in_order),
        message=message,
        noted_at=at,
    )


def done_with(state: State, event: Said, counts: tuple[Count, ...]) -> Turn[State]:
    """The set under way is done, and this is its count: nothing more to ask about it."""
    ended = sets.set_done(state, event.at)
    assert ended.state is not None
    filled = fill(ended.state, event, ended.state.counted[-1], counts)
    asked = {reply.asks for reply in filled.replies}
    more = tuple(reply for reply in ended.replies if not _asks_reps(reply) and reply.asks not in asked)
    return replace(filled, replies=(*filled.replies, *more), effects=(*ended.effects, *filled.effects))


def _asks_reps(reply: Say) -> bool:
    return (reply.asks or "").startswith("reps.")


def again(state: State, event: Said, counts: tuple[Count, ...]) -> Turn[State]:
    """A number when none was missing: the same one twice, or a correction, or the next set early."""
    last = last_counted(state)
    if last is None:
        return turn(state, Say(words.STALE))
    if (said := said_again(state, event, counts)) is not None:
        return turn(state, _already(said))
    if state.phase is Phase.REST and len(counts) == 1:
        return _ask_which(state, words.WHICH_SET, counts[0].value, last)
    if len(counts) == 1 == len(state.doing.sides):
        return _ask_change(state, counts[0].value, last)
    return amend(state, event, last.no, counts)


def _ask_which(state: State, text: str, reps: int, last: Counted) -> Turn[State]:
    """For which of two sets is this number?"""
    state = replace(state, between=reps)
    buttons = [Choice(words.SET_N.format(n=n), str(n)) for n in (last.no, last.no + 1)]
    asked = text.format(reps=reps, last=last.no, next=last.no + 1)
    return turn(state, say(asked, _which_id(state, last), *buttons))


def _ask_change(state: State, reps: int, last: Counted) -> Turn[State]:
    """A number that nobody asked for: is it a correction of the last set?"""
    state = replace(state, between=reps)
    was = " and ".join(map(str, last.reps)) or words.NO_COUNT
    change = Choice(words.CHANGE.format(n=last.no, reps=reps), str(last.no))
    asked = words.CHANGE_ASK.format(reps=reps, n=last.no, was=was)
    return turn(state, say(asked, _which_id(state, last), change, Choice(words.KEEP, "keep")))


def _which_id(state: State, last: Counted | None) -> str:
    """The question about one number after one set: an earlier number's buttons are not this one's."""
    return f"which.{state.exercise + 1}.{last.no if last else 0}.{state.between}"


def which(state: State, event: Said) -> Turn[State]:
    """ "Set 1 again, or set 2?" answered; the rest may be over by then."""
    value, last = state.between, last_counted(state)
    if value is None or last is None or event.to != _which_id(state, last):
        return turn(state, Say(words.STALE))
    state = replace(state, between=None)
    if event.text == "keep":
        return turn(state, Say(words.KEPT), *_still_open(state))
    if event.text == "change":
        event = replace(event, text=str(last.no))
    no, counts = int(event.text), (Count(value, False),)
    if any(one.no == no for one in state.counted):
        return amend(state, event, no, counts)
    if state.phase not in BETWEEN_SETS:  # the bands are to come off: no set is begun by a late tap
        return turn(state, Say(words.STALE))
    return done_with(replace(state, set_no=no, rest_until=None), event, counts)


def _still_open(state: State) -> tuple[Say, ...]:
    from conversations.session import machine  # only to repeat the open question

    return machine.open_question(state)


def fill(state: State, event: Said, one: Counted, counts: tuple[Count, ...]) -> Turn[State]:
    """Put counts into a set that lacks them; both sides said at once are both sides."""
    sides = len(state.doing.sides)
    first = 0 if len(counts) == sides else len(one.reps)
    places = tuple(range(first, min(first + len(counts), sides)))
    rough = one.rough or state.guess or any(count.rough for count in counts)
    one = replace(_stated(one, places, counts[: len(places)], event.message, event.at), rough=rough)
    state = replace(with_counted(state, one), tens=None, guess=False)
    effects = facts(state, event.at, one, places)
    if not is_full(state, one):
        return turn(state, sets.ask_reps(state, words.REPS_LAST), effects=effects)
    return _then(state, event, (Say(comment(state, one)),), effects)


def _then(state: State, event: Said, replies: tuple[Say, ...], effects: tuple[Effect, ...]) -> Turn[State]:
    """After a count: nothing more, bands off last when they are still on, the end when only the count was missing."""
    if state.phase is Phase.OFF and state.on_at is not None:
        return turn(state, *replies, fitting.off(state, words.BANDS_OFF), effects=effects)
    if state.phase is not Phase.COUNT:
        return turn(state, *replies, effects=effects)
    from conversations.session import ending  # the end waits for the last count

    onward = ending.onward(state, event.at)
    return replace(onward, replies=(*replies, *onward.replies), effects=(*effects, *onward.effects))


def comment(state: State, one: Counted) -> str:
    """What the coach would say to this count; the expectation only after it."""
    aim, shown = state.doing.aims[one.no - 1], " and ".join(str(reps) for reps in one.reps)
    lowest, highest = min(one.reps), max(one.reps)
    if state.brief.gentle:
        return words.NOTED.format(reps=shown)
    if state.doing.scheme is Scheme.FIXED:
        text = words.NOTED_FIXED if lowest >= aim.low else words.NOTED_SHORT
        return text.format(reps=shown, aim=aim)
    if lowest < aim.low:
        return words.NOTED_BELOW.format(reps=shown)
    return (words.NOTED_ABOVE if highest > aim.high else words.NOTED_IN_RANGE).format(reps=shown)


def many(state: State, event: Said, counts: tuple[Count, ...]) -> Turn[State]:
    """Several sets in one message: taken as what they are, from set 1 on."""
    sides = len(state.doing.sides)
    groups = [counts[i : i + sides] for i in range(0, len(counts), sides)]
    if len(groups) > state.sets or len(groups[-1]) < sides:
        return turn(state, Say(words.TOO_MANY.format(numbers=len(counts), sets=state.sets)))
    effects: tuple[Effect, ...] = ()
    for no, group in enumerate(groups, start=1):
        known = next((one for one in state.counted if one.no == no), Counted(no, event.at))
        one = replace(
            known,
            reps=tuple(count.value for count in group),
            said_by=(event.message,) * sides,
            rough=any(count.rough for count in group),
            message=event.message,
            noted_at=event.at,
        )
        state = with_counted(state, one)
        effects += facts(state, event.at, one)
    shown = ", ".join(str(count.value) for count in counts)
    noted = Say(words.MANY_NOTED.format(sets=shown))
    if state.phase in (Phase.SET, Phase.REST):
        return _after_many(state, event, noted, effects)
    return _then(state, event, (noted,), effects)


def _after_many(state: State, event: Said, noted: Say, effects: tuple[Effect, ...]) -> Turn[State]:
    done = len(state.counted)
    if done >= state.sets:
        state = replace(state, phase=Phase.OFF, why="done", rest_until=None)
        return turn(state, noted, fitting.off(state, words.BANDS_OFF), effects=effects)
    if done < state.set_no or state.phase is Phase.REST:
        return turn(state, noted, effects=effects)
    state = replace(
        state, phase=Phase.REST, set_no=done, rest_until=event.at + timedelta(seconds=state.doing.rest_s)
    )
    return turn(state, noted, effects=effects)


def amend(state: State, event: Said | Corrected, no: int, counts: tuple[Count, ...]) -> Turn[State]:
    """Change a set that has its count."""
    one = next((each for each in state.counted if each.no == no), None)
    if one is None or len(counts) != len(state.doing.sides):
        return turn(state, Say(words.NOT_A_NUMBER))
    message = event.of if isinstance(event, Corrected) else event.message
    values = tuple(count.value for count in counts)
    one = replace(
        _stated(one, tuple(range(len(counts))), counts, message, event.at), rough=False, blank=False
    )
    state = with_counted(state, one)
    shown = " and ".join(str(value) for value in values)
    said = Said(event.at, event.text, None, message)
    return _then(state, said, (Say(words.CHANGED.format(n=no, reps=shown)),), facts(state, event.at, one))


def corrected(state: State, event: Corrected) -> Turn[State]:
    """An edited message: the sets that it had stated change with it."""
    mine = [one for one in state.counted if event.of in (one.message, *one.said_by)]
    if not mine:
        return turn(state, Say(words.EDIT_OF_WHAT)) if state.counted else turn(state)
    try:
        counts = read(state, event.text)
    except Unclear as problem:
        return turn(state, Say(unclear(problem)))
    places = tuple(no for no, message in enumerate(mine[0].said_by) if message == event.of)
    if len(mine) == 1 and len(places) == len(counts) < len(state.doing.sides):
        one = _stated(mine[0], places, counts, event.of, event.at)
        shown = words.CHANGED.format(n=one.no, reps=" and ".join(map(str, one.reps)))
        return turn(with_counted(state, one), Say(shown), effects=facts(state, event.at, one, places))
    if len(mine) == 1 and len(counts) <= len(state.doing.sides):
        return amend(state, event, mine[0].no, counts)
    return many(state, Said(event.at, event.text, None, event.of), counts)


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
        return lost(state, event)
    if event.text.startswith("t") and event.text[1:].isdigit():
        return _ones(state, one, int(event.text[1:]))
    if event.text.isdigit():
        return fill(state, event, one, (Count(int(event.text), False),))
    return typed(state, event)


def _side_before(state: State, event: Said, one: Counted, place: int) -> Turn[State]:
    """A second tap under the side before is not the other side's count; a typed reply corrects that side."""
    if event.message is None:
        shown = Say(words.ALREADY.format(reps=one.reps[place]))
        return turn(state, shown, sets.ask_reps(state, words.REPS_LAST))
    try:
        return _one_side(state, event, one, place, read(state, event.text))
    except Unclear as problem:
        return turn(state, Say(unclear(problem)))


def _tapped_again(state: State, event: Said, one: Counted) -> Turn[State]:
    if event.message is not None:  # typed as a reply to this question: a correction of that set
        try:
            return amend(state, event, one.no, read(state, event.text))
        except Unclear as problem:
            return turn(state, Say(unclear(problem)))
    return turn(state, _already(one))


def _already(one: Counted) -> Say:
    shown = " and ".join(str(reps) for reps in one.reps) or "no count"
    return Say(words.ALREADY.format(reps=shown))


def _ones(state: State, one: Counted, tens: int) -> Turn[State]:
    state = replace(state, tens=tens)
    digits = tuple(Choice(str(value), str(value)) for value in range(tens, tens + 10))
    return turn(state, say(words.ONES, sets.reps_id(state, one), *digits))


def lost(state: State, event: Said) -> Turn[State]:
    """Lost count: a best guess once, stored as rough; then a blank. Neither ever raises a load."""
    one = lacking(state)
    if one is None:
        return turn(state, Say(words.STALE))
    if state.guess:
        state = replace(with_counted(state, replace(one, blank=True)), guess=False)
        return _then(state, event, (Say(words.LEFT_BLANK),), ())
    state = replace(state, guess=True)
    return turn(state, _best_guess(state, one))


def _best_guess(state: State, one: Counted) -> Say:
    return say(words.BEST_GUESS, sets.reps_id(state, one), *sets.TENS, Choice(words.LEAVE_BLANK, "blank"))


def facts(
    state: State, at: datetime, one: Counted, places: tuple[int, ...] | None = None
) -> tuple[Effect, ...]:
    """One fact a side; `places`: only of these sides, in the plan's order."""
    doing = state.doing
    # A gentle set ends with reps left, so neither the range nor the forecast is its aim.
    full = not state.brief.gentle
    aim = doing.aims[one.no - 1] if full and one.no <= len(doing.aims) else None
    expected = state.brief.expected.get(doing.movement, ())[one.no - 1 : one.no] if full else ()
    return tuple(
        Record(
            SetDone(
                at=at,
                session=state.brief.session,
                exercise_no=state.exercise + 1,
                movement=doing.movement,
                set_no=one.no,
                side=side,
                doing=doing.doing,
                reps=reps,
                rough=one.rough,
                done_at=one.done_at,
                rest_s=one.rest_s,
                tightness=state.tightness,
                loose=state.loose,
                reps_left=one.reps_left,
                aim_low=aim.low if aim else None,
                aim_high=aim.high if aim else None,
                expected=expected[0] if expected else None,
            )
        )
        for place, (side, reps) in enumerate(zip(doing.sides, one.reps, strict=False))
        if places is None or place in places
    )
