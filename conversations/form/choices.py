"""Buttons that questions share."""

from conversations.protocol import Choice
from conversations.words import common


def buttons(*labels: str) -> tuple[Choice, ...]:
    """Buttons whose value is their own label."""
    return tuple(Choice(label, label) for label in labels)


YES_NO = buttons(common.YES, common.NO)
YES_NO_NOT_SURE = buttons(common.YES, common.NO, common.NOT_SURE)
