"""A client's week, once a week: what was done, what went up, one thing to try, the next dates."""

from collections.abc import Mapping, Sequence

from conversations.words.common import counted
from core.week_recap import Lived, Risen, Try

DONE_ALL = "Your week: {done} of {planned}, all of it."
DONE_SOME = "Your week: {done} of {planned}."
DONE_MORE = "Your week: {done}."
DONE_NONE = "No session this week; that happens."
ROSE = "Up: {what}."
ROSE_LOAD = "{movement} {was} to {now}"
ROSE_REPS = "{movement} {was} to {now} reps at {load}"
ROSE_REPS_ONLY = "{movement} {was} to {now} reps"
HELD = "Loads stayed where they are; steady counts."
TRY = "One thing to try: {what}"
NEXT = "Next: {dates}."
THINGS = {
    Try.SPARE_THE_JOINT: "stop the set at the first rep that a joint complains about, and tell me. Lighter is fine.",
    Try.KEEP_A_DAY: "if a day doesn't suit, move it: 'move thursday to friday'. A moved session counts in full.",
    Try.FIT_FIRST: "take a minute more at the fit before set 1. Never tighten during a set.",
    Try.COUNT_ALOUD: "count out loud, so that every rep is one you know.",
    Try.REST_SHORT: "be in position when Go comes; thirty seconds are the whole rest.",
    Try.SLOW_DOWN: "two seconds up, two seconds down, no stop at either end.",
    Try.BREATHE_OUT: "breathe out on the hard half of every rep.",
    Try.LAST_REP_CLEAN: "end the set at the last rep that looks like the first.",
}


def week_text(
    lived: Lived, up: Sequence[Risen], thing: Try, dates: Sequence[str], names: Mapping[str, str]
) -> str:
    """Four short lines at most."""
    lines = [_done(lived)]
    if lived.done:
        what = "; ".join(_rose(one, names) for one in up)
        lines.append(ROSE.format(what=what) if what else HELD)
    lines.append(TRY.format(what=THINGS[thing]))
    if dates:
        lines.append(NEXT.format(dates="; ".join(dates)))
    return "\n".join(lines)


def _done(lived: Lived) -> str:
    if not lived.done:
        return DONE_NONE
    if lived.done > lived.planned:
        return DONE_MORE.format(done=counted(lived.done, "session"))
    if lived.done == lived.planned > 1:
        return DONE_ALL.format(done=lived.done, planned=lived.planned)
    return DONE_SOME.format(done=lived.done, planned=counted(lived.planned, "session"))


def _rose(one: Risen, names: Mapping[str, str]) -> str:
    movement = names.get(one.movement, one.movement.replace("_", " "))
    if one.was.isdigit():
        text = ROSE_REPS if one.load else ROSE_REPS_ONLY
        return text.format(movement=movement, was=one.was, now=one.now, load=one.load)
    return ROSE_LOAD.format(movement=movement, was=one.was, now=one.now)
