"""A coach asks for the records as tables."""

MENU = "Records as tables"
ASK = (
    "A ZIP with a CSV table for each kind of record, and sessions.csv with one row a set. It holds:\n{whose}\n"
    "That is health data, and this chat is not end-to-end encrypted. Keep the file where your practice's rules say, "
    "pass it on to nobody else, and delete it here once it is there. The log of each of these clients will say that "
    "you asked for it. Shall I send it?"
)
YES = "Send the file"
OWN = "Your own clients ({count}): {names}"
COVERED = "{coach}'s, while you stand in ({count}): {names}"
AND_MORE = "{names} and {count} more"
MOST_NAMES = 20
COMING = (
    "I'm putting it together; it comes here by itself. With years of records that takes a minute: alerts reach you all the "
    "same, other answers wait that long."
)
ALREADY = "It is on its way already."
FILE = "records-{day}.zip"
CAPTION = "Records of {count}, {at}. Health data: keep it where your practice's rules say."
ONE_CLIENT = "one client"
CLIENTS = "{count} clients"
# By what `bot.export.zipped` says instead.
INSTEAD = {
    "too_large": (
        "The file would be larger than this chat takes (50 MB), so I can't send it. Whoever runs this gets it on their "
        "machine: cuffline export DIR"
    ),
    "nobody": "None of those clients are with you any more, so there is no file.",
}
NOT_MADE = (
    "I could not make the file just now. The records themselves are safe. Type 'export' again in a few minutes; if it "
    "fails again, tell whoever runs this: on their machine it is cuffline export DIR"
)


def whose(own: list[str], covered: dict[str, list[str]]) -> str:
    """A line for the coach's own clients, and one for those of each coach they stand in for."""
    lines = [OWN.format(count=len(own), names=listed(own))] if own else []
    for coach, names in covered.items():
        lines.append(COVERED.format(coach=coach, count=len(names), names=listed(names)))
    return "\n".join(lines)


def listed(names: list[str]) -> str:
    """The names, or the first of very many."""
    shown = ", ".join(names[:MOST_NAMES])
    more = len(names) - MOST_NAMES
    return AND_MORE.format(names=shown, count=more) if more > 0 else shown


def caption(count: int, at: str) -> str:
    """The line under the file: names nobody, as it is what a locked phone shows."""
    return CAPTION.format(count=ONE_CLIENT if count == 1 else CLIENTS.format(count=count), at=at)
