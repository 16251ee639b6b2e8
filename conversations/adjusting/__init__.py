"""The coach changes one part of a plan that is under way: load, days, scheme, pain ceiling, minutes; and says why."""

from conversations.adjusting.form import DIALOGUE
from conversations.adjusting.state import Brief, Draft

__all__ = ["DIALOGUE", "Brief", "Draft"]
