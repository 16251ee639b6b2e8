"""The coach's week in words: one message."""

from core.digest import ClientWeek, Digest, Need
from core.plans import OPEN_AIMS, PAIN_CEILING

REASONS = {
    Need.OPEN_ALERT: "an alert is open",
    Need.HELD: "waits for your clearance",
    Need.ALERTED: "had an alert",
    Need.PAIN: f"pain above {PAIN_CEILING}",
    Need.LOADS_OFF: f"set 1 mostly outside {OPEN_AIMS[0]}",
    Need.MISSED: "missed sessions",
    Need.QUIET: "quiet for a week",
}
LONGEST = 3500  # characters of the whole message
LONGEST_NAME = 24
ROOM_FOR_MORE = 40  # characters kept free for the last line
NO_CLIENTS = "Your week.\nNo clients yet."
MORE = "And {number} more: see your clients."


def render(week: Digest) -> str:
    """Who needs you, the practice in numbers, a line per client; what does not fit is counted."""
    if not week.weeks:
        return NO_CLIENTS
    head = ["Your week.", _numbers(week)]
    needing = [
        f"- {_short(name)}: {', '.join(REASONS[need] for need in why)}" for name, why in week.needs_you
    ]
    top = ["Who needs you:", *needing] if needing else ["Nobody needs you."]
    everyone = ["Everybody:", *(_line(one) for one in week.weeks)]
    return _fitted(head[0], top, head[1], everyone)


def _fitted(title: str, top: list[str], numbers: str, everyone: list[str]) -> str:
    """Those who need the coach come first, so they are the last to be cut."""
    room = LONGEST - len(title) - len(numbers) - 2 - 2 * ROOM_FOR_MORE
    first = _cut(top, room)
    rest = _cut(everyone, room - sum(len(line) + 1 for line in first))
    return "\n".join([title, *first, numbers, *rest])


def _cut(lines: list[str], room: int) -> list[str]:
    used = 0
    for number, line in enumerate(lines):
        used += len(line) + 1
        if used > room:
            return [*lines[:number], MORE.format(number=len(lines) - max(number, 1))]
    return lines


def _numbers(week: Digest) -> str:
    share = week.share_in_range
    in_range = "no first sets yet" if share is None else f"set 1 in range {share:.0%}"
    alerts = f"alerts: {week.alerts_now} urgent, {week.alerts_today} same day"
    moved = f"loads moved {week.loads_moved}"
    return f"Practice: {week.done} sessions done, {week.planned} planned; {in_range}; {moved}; {alerts}."


def _line(one: ClientWeek) -> str:
    parts = [f"{_short(one.name)}: {one.done} of {one.planned}"]
    if one.in_range:
        parts.append(f"{sum(one.in_range)} of {len(one.in_range)} in range")
    if one.pain_max is not None:
        parts.append(f"pain up to {one.pain_max}")
    if one.next_at is None:
        parts.append("nothing planned")
    return ", ".join(parts)


def _short(name: str) -> str:
    return name if len(name) <= LONGEST_NAME else f"{name[: LONGEST_NAME - 1]}…"
