"""The coach's week in words: one screen."""

from core.digest import ClientWeek, Digest, Need

REASONS = {
    Need.OPEN_ALERT: "an alert is open",
    Need.HELD: "waits for your clearance",
    Need.ALERTED: "had an alert",
    Need.PAIN: "pain above 3",
    Need.LOADS_OFF: "set 1 mostly outside 25-40",
    Need.MISSED: "missed sessions",
    Need.QUIET: "quiet for a week",
}
LONGEST = 3500


def render(week: Digest) -> str:
    """Who needs you, the practice in numbers, a line per client."""
    lines = ["Your week."]
    if week.needs_you:
        lines.append("Who needs you:")
        lines += [f"- {name}: {', '.join(REASONS[need] for need in needs)}" for name, needs in week.needs_you]
    else:
        lines.append("Nobody needs you.")
    lines.append(_numbers(week))
    lines += [_line(one) for one in week.weeks]
    return "\n".join(lines)[:LONGEST]


def _numbers(week: Digest) -> str:
    share = week.share_in_range
    alerts = sum(one.alerts_now + one.alerts_today for one in week.weeks)
    moved = sum(one.loads_moved for one in week.weeks)
    in_range = "no first sets yet" if share is None else f"set 1 in range {share:.0%}"
    return f"Practice: {week.done} sessions done, {week.planned} planned; {in_range}; loads moved {moved}; alerts {alerts}."


def _line(one: ClientWeek) -> str:
    pain = "" if one.pain_max is None else f", pain up to {one.pain_max}"
    return f"{one.name}: {one.done} of {one.planned}{pain}"
