"""A count corrected in words when its session is over. Said back, with the next load."""

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from bot.engine import recording, status, turns
from bot.engine.training import last_sets, loads
from conversations.answers import Count, Unclear, several_numbers, side_numbers
from conversations.correcting import is_correction, named_set, only_reps, without_preface
from conversations.protocol import Choice, Resumed, Say
from conversations.words import asking as asking_words
from conversations.words import engine as words
from conversations.words import session as session_words
from conversations.words.answers import unclear
from core.facts import LAPSED, WORKED, SessionEnded, SetDone
from core.plans import Side
from core.store import facts, threads
from core.store.people import Person, Role
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine

MOST_REPS = 200
LONGEST_COUNT = 3  # figures
Counted = tuple[SetDone, Count]


def by_side(sets: Sequence[SetDone], text: str) -> tuple[Counted, ...]:
    """Counts that name their side, with their sets; empty: no sides are named."""
    try:
        sided = side_numbers(text, 0, MOST_REPS)
    except Unclear:
        return ()
    said = {Side.LEFT: sided.left, Side.RIGHT: sided.right}
    return tuple((one, count) for one in sets if (count := said.get(one.side)) is not None)


def typed(engine: "Engine", person: Person, text: str, now: datetime) -> bool:
    """ "set 1 was 30", "no, 12" after the session; False: it corrects nothing."""
    if person.role is not Role.CLIENT or threads.live_in(engine.store, person.id, "session") is not None:
        return False
    said = named_set(text) or _bare(engine, person, text)
    if said is None:
        return _asked_which(engine, person, text, now)
    last = last_sets.of_last_session(engine, person.id, now)
    if not last:
        return False
    no, counts = said
    meant = _meant(engine, person, last, no, text)
    if no or not _asked_instead(engine, person, meant, last, counts, now):
        _place(engine, person, meant, counts, now, no)
    return True


def _bare(engine: "Engine", person: Person, text: str) -> tuple[int, str] | None:
    """ "no, 12" while nothing was answered since the sets: the last set, number 0, and its count."""
    counts = only_reps(without_preface(text))
    talk = threads.floor(engine.store, person.id)
    if (talk is not None and not _not_begun(talk)) or not is_correction(text):
        return None
    try:
        several_numbers(counts, 0, MOST_REPS)
    except Unclear:
        return None
    return (0, counts)


def _asked_instead(
    engine: "Engine", person: Person, meant: list[SetDone], last: list[SetDone], counts: str, now: datetime
) -> bool:
    """ "no, 12" after a session that was cut short: of a set that has its count, or of one that has none?"""
    ended = facts.latest(engine.store, SessionEnded, person.id, session=last[0].session)
    missing = [one for one in last if one.reps == last_sets.NO_COUNT]
    if not missing or not counts.isdecimal() or ended is None or ended.why in WORKED:
        return False
    asked = {(one.exercise_no, one.set_no): one for one in (*meant, *missing)}
    buttons = tuple(_as_count(engine, person, one, int(counts)) for one in asked.values())
    engine.say(person, Say(words.WHICH_UNCOUNTED.format(reps=counts), buttons), now)
    return True


def _asked_which(engine: "Engine", person: Person, text: str, now: datetime) -> bool:
    """A number alone, after a session that nobody answered to the end: of which of its sets without a count?"""
    ended, talk = facts.latest(engine.store, SessionEnded, person.id), threads.floor(engine.store, person.id)
    if not text.strip().isdecimal() or ended is None or not (talk is None or _not_begun(talk, "morning")):
        return False
    missing = [
        one for one in last_sets.of_last_session(engine, person.id, now) if one.reps == last_sets.NO_COUNT
    ]
    asked = [one for one in missing if one.session == ended.session and one.side is Side.BOTH]
    if ended.why != LAPSED or not asked or len(text.strip()) > LONGEST_COUNT:
        return False
    buttons = tuple(_as_count(engine, person, one, int(text)) for one in asked)
    engine.say(person, Say(words.WHICH_UNCOUNTED.format(reps=int(text)), buttons), now)
    return True


def _not_begun(talk: Thread, dialogue: str = "after") -> bool:
    """Whether these are the questions after a session, and none has its answer: a count was said last."""
    return talk.dialogue == dialogue and not turns.state_of(talk).given


def too_late(
    engine: "Engine", person: Person, talk: Thread, text: str, unseen: frozenset[str], now: datetime
) -> bool:
    """A number sent before "how hard was it?" could be seen is no rating: a set's count, asked about."""
    if not _not_begun(talk) or turns.state_of(talk).question not in unseen or not text.strip().isdigit():
        return False
    counted = last_sets.told(last_sets.of_last_session(engine, person.id, now))
    last = max(counted, key=lambda one: (one.exercise_no, one.set_no), default=None)
    if last is None or last.side is not Side.BOTH:
        return False
    copied = int(text) in (last.reps, _left(engine, person, last))
    told = (
        Say(session_words.ALREADY.format(reps=text.strip()))
        if copied
        else _late(engine, person, last, int(text))
    )
    engine.say(person, told, now)
    turns.deliver(engine, person, talk, Resumed(now))
    return True


def _late(engine: "Engine", person: Person, last: SetDone, reps: int) -> Say:
    """Whether it is the last set's count, with a button that makes it so."""
    return Say(words.LATE_COUNT.format(reps=reps), (_as_count(engine, person, last, reps),))


def _as_count(engine: "Engine", person: Person, one: SetDone, reps: int) -> Choice:
    """A button that makes it the count of this set."""
    label = words.LATE_LABEL.format(name=_name(engine, person, one), n=one.set_no, reps=reps)
    return Choice(label, f"fix:{one.session}|{one.exercise_no}|{one.set_no}|{reps}")


def _left(engine: "Engine", person: Person, last: SetDone) -> int | None:
    """What was said to have been left in any set of this movement, the last question of a session."""
    sets = facts.current(engine.store, SetDone, person.id, session=last.session, exercise_no=last.exercise_no)
    return next((one.reps_left for one in sets if one.reps_left is not None), None)


def _meant(engine: "Engine", person: Person, last: list[SetDone], no: int, text: str) -> list[SetDone]:
    """The sets that it may be about: of this number (0: the last of each movement), of the movement named."""
    told = last_sets.told(last)
    ends = {
        one.exercise_no: max(each.set_no for each in told if each.exercise_no == one.exercise_no)
        for one in told
    }
    meant = [one for one in last if one.set_no == (no or ends.get(one.exercise_no))]
    named = [one for one in meant if _name(engine, person, one).casefold() in text.casefold()]
    return _of_side(named or meant, text)


def _of_side(sets: list[SetDone], text: str) -> list[SetDone]:
    """Those of the one side that is named; all of them where none is, or both are."""
    told = [side for side in (Side.LEFT, Side.RIGHT) if re.search(rf"\b{side}\b", text, re.IGNORECASE)]
    return [one for one in sets if [one.side] == told] or sets


def _name(engine: "Engine", person: Person, one: SetDone) -> str:
    return loads.names(status.plan_of(engine, person.id)).get(one.movement, one.movement.replace("_", " "))


def _place(
    engine: "Engine", person: Person, meant: list[SetDone], counts: str, now: datetime, set_no: int
) -> None:
    """Change the set, or ask of which movement it is."""
    by_movement = {one.exercise_no: one for one in meant}
    if not meant:
        engine.say(person, Say(words.NO_SUCH_SET.format(n=set_no)), now)
    elif len(by_movement) > 1:
        buttons = [_button(engine, person, meant, one, counts) for one in by_movement.values()]
        engine.say(person, Say(words.WHICH_MOVEMENT, tuple(buttons)), now)
    else:
        _change(engine, person, meant, counts, now)


def _button(engine: "Engine", person: Person, meant: list[SetDone], one: SetDone, counts: str) -> Choice:
    was = _reps_of(meant, one)
    label = words.MOVEMENT_SET.format(name=_name(engine, person, one), n=one.set_no, was=was)
    return Choice(label, f"fix:{one.session}|{one.exercise_no}|{one.set_no}|{counts}")


def _reps_of(meant: list[SetDone], one: SetDone) -> str:
    """What is on record of this set."""
    known = [str(each.reps) for each in last_sets.told(meant) if each.exercise_no == one.exercise_no]
    return " and ".join(known) or session_words.NO_COUNT


def chosen(engine: "Engine", person: Person, rest: str, now: datetime) -> None:
    """The button of one movement."""
    session, exercise_no, set_no, counts = rest.split("|", 3)
    sets = last_sets.of_place(engine, person.id, session, int(exercise_no), int(set_no))
    _change(engine, person, sets, counts, now)


def _change(engine: "Engine", person: Person, sets: list[SetDone], text: str, now: datetime) -> None:
    """Append the corrected set, say it back, and what it changes for next time."""
    try:
        pairs = by_side(sets, text) or _in_order(sets, text)
    except Unclear as problem:
        engine.say(person, Say(unclear(problem)), now)
        return
    if not pairs:
        engine.say(person, Say(words.BOTH_SIDES.format(n=sets[0].set_no)), now)
        return
    for one, count in pairs:
        recording.record(engine, person.id, replace(one, at=now, reps=count.value, rough=count.rough))
    lines = [_said_back(engine, person, pairs)]
    lines += next_time(engine, person, sets[0].session) or [words.NEXT_SAME]
    engine.say(person, Say("\n".join(lines)), now)
    if (talk := threads.floor(engine.store, person.id)) is not None:
        turns.deliver(engine, person, talk, Resumed(now))  # what was asked is still open


def _in_order(sets: list[SetDone], text: str) -> tuple[Counted, ...]:
    """One number for each side that was done; empty: too few or too many. Raises `Unclear`."""
    counts = several_numbers(text, 0, MOST_REPS)
    return tuple(zip(sets, counts, strict=True)) if len(counts) == len(sets) else ()


def _said_back(engine: "Engine", person: Person, pairs: Sequence[Counted]) -> str:
    one = pairs[0][0]
    reps = " and ".join(str(count.value) for _, count in pairs)
    was = " and ".join(str(each.reps) for each, _ in pairs)
    text = words.FIXED_SET if reps != was else words.SAME_SET
    if len(last_sets.told([each for each, _ in pairs])) < len(pairs):
        text = words.COUNTED_SET
    only = len(pairs) == 1 and one.side is not Side.BOTH
    side = session_words.ONLY_SIDE.format(side=one.side) if only else ""
    return text.format(name=_name(engine, person, one), n=one.set_no, side=side, reps=reps, was=was)


def next_time(engine: "Engine", person: Person, session: str) -> list[str]:
    """What another look at the session changes for the next one, a line each."""
    again = loads.move_again(engine, person.id, session, loads.advised(engine, person.id, session))
    return [asking_words.CHANGED.format(name=name.lower(), use=use, why=why) for name, _, use, why in again]
