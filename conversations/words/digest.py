"""The coach's week in words: one screen, and a line per client by pages."""

from conversations.words.coach import LONGEST_LINE, LONGEST_NAME, REASONS, cut, whole_parts
from conversations.words.safety import COACH_READS
from core.alert_use import by_tier
from core.digest import ClientWeek, Digest, Need
from core.safety.causes import Tier

MOST_NEEDING = 6  # lines and buttons; the rest is in the list of clients
A_PAGE = 14  # clients: a line each, two at most
MOST_IDLE = 3
TITLE = "Your week."
NO_CLIENTS = "Your week.\nNo clients yet."
WHO = "Who needs you ({needing} of {count}):"
NOBODY = "Nobody needs you."
MORE = "- and {number} more: 'clients'"
SESSIONS = "Sessions: {done} of {planned} planned."
SESSIONS_DONE = "Sessions: {done}, {planned} planned."
DONE_OF, DONE = "{done} of {planned}", "{done} done"
IN_RANGE = "Set 1 in range: {share:.0%}{off}."
NO_SETS = "Set 1 in range: no full sets yet."
AS_EXPECTED = ", as expected"
ABOVE = ", {off:.1f} reps above what was expected"
BELOW = ", {off:.1f} reps below what was expected"
LOADS = "Loads moved: {moved}{asked}."
ASKED = "; {asked} wait for your tap"
ALERTS = "Alerts: {now} urgent ({now_acted} led to something), {today} same day ({today_acted}){notes}."
NOTES = ", {weekly} weekly ({weekly_acted})"
NO_ALERTS = "No new alerts."
IDLE = "Never led to anything in eight weeks: {causes}."
# What the one button of a client does, by the most urgent reason's core.digest.Need value.
ACT = {
    "urgent": "see the alert",
    "open_alert": "see the alert",
    "held": "clearance",
    "clearance": "clearance",
    "no_plan": "make a plan",
    "loads_off": "change the plan",
    "missed": "write",
    "quiet": "write",
    "review_due": "review",
}
SEE = "see the card"
TO_ACT = "{name}: {act}"
EVERYBODY = "Everybody"
EVERYBODY_HEAD = "Everybody, {first}-{last} of {count}:"
NEXT, BACK = "Next", "Back"
WEEKLY_LOAD = "weekly load {load:.0f}"  # effort x minutes; last, as a line that is too long loses its end
RESTING = {"paused": "paused", "finished": "plan finished"}


def render(week: Digest) -> str:
    """Who needs the coach first, then the practice in numbers: one screen, whatever the number of clients."""
    if not week.weeks:
        return NO_CLIENTS
    return "\n".join([TITLE, *_needing(week), *_numbers(week)])


def _needing(week: Digest) -> list[str]:
    if not week.needs_you:
        return [NOBODY]
    lines = [
        f"- {whole_parts(one.name, [REASONS[need] for need in why], LONGEST_LINE - 2)}"
        for one, why in week.needs_you[:MOST_NEEDING]
    ]
    left = len(week.needs_you) - MOST_NEEDING
    more = [MORE.format(number=left)] if left > 0 else []
    return [WHO.format(needing=len(week.needs_you), count=len(week.weeks)), *lines, *more]


def _numbers(week: Digest) -> list[str]:
    asked = sum(one.loads_asked for one in week.weeks)
    lines = [
        (SESSIONS if week.planned >= week.done else SESSIONS_DONE).format(
            done=week.done, planned=week.planned
        ),
        _in_range(week),
        LOADS.format(moved=week.loads_moved, asked=ASKED.format(asked=asked) if asked else ""),
        _alerts(week),
    ]
    if week.idle:
        causes = ", ".join(COACH_READS[cause] for cause in week.idle[:MOST_IDLE])
        lines.append(IDLE.format(causes=causes))
    return lines


def _in_range(week: Digest) -> str:
    share = week.share_in_range
    return NO_SETS if share is None else IN_RANGE.format(share=share, off=_off(week.off_expected))


def _off(off: float | None) -> str:
    if off is None:
        return ""
    if abs(off) < 0.5:  # rounds to nothing
        return AS_EXPECTED
    return (ABOVE if off > 0 else BELOW).format(off=abs(off))


def _alerts(week: Digest) -> str:
    if not week.alerts:
        return NO_ALERTS
    (now, now_acted), (today, today_acted), (weekly, weekly_acted) = (
        by_tier(week.alerts, tier) for tier in (Tier.NOW, Tier.TODAY, Tier.WEEKLY)
    )
    notes = NOTES.format(weekly=weekly, weekly_acted=weekly_acted) if weekly else ""
    return ALERTS.format(now=now, now_acted=now_acted, today=today, today_acted=today_acted, notes=notes)


def pages(week: Digest) -> int:
    """How many screens the lines of all clients take, at least 1."""
    return max(1, -(-len(week.weeks) // A_PAGE))


def everybody(week: Digest, page: int) -> str:
    """One screen of clients, a line each; `page` from 0."""
    shown = week.weeks[page * A_PAGE : (page + 1) * A_PAGE]
    first = page * A_PAGE + 1
    head = EVERYBODY_HEAD.format(first=first, last=first + len(shown) - 1, count=len(week.weeks))
    return "\n".join([head, *(_line(one) for one in shown)])


def label(one: ClientWeek, why: Need) -> str:
    """The button of a client who needs the coach: "Ruta: see the alert"."""
    return TO_ACT.format(name=cut(one.name, LONGEST_NAME), act=ACT.get(why, SEE))


def _line(one: ClientWeek) -> str:
    done = DONE_OF if one.planned >= one.done else DONE
    parts = [done.format(done=one.done, planned=one.planned)]
    if one.in_range:
        parts.append(f"{sum(one.in_range)} of {len(one.in_range)} in range")
    if one.pain_max is not None:
        parts.append(f"pain up to {one.pain_max}")
    if one.paused or one.finished:
        parts.append(RESTING["paused" if one.paused else "finished"])
    elif one.next_at is None:
        parts.append("nothing planned")
    if one.load is not None:
        parts.append(WEEKLY_LOAD.format(load=one.load))
    return whole_parts(one.name, parts)
