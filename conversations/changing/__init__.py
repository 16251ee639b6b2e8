"""Somebody changes when they train, in plain words: said back with its dates, confirmed, then stored."""

from conversations.changing.form import DIALOGUE
from conversations.changing.spotting import is_change
from conversations.changing.state import Brief, Draft

__all__ = ["DIALOGUE", "Brief", "Draft", "is_change"]
