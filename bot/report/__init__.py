"""The report of one client drawn as one A4 page: PDF for print and clinic, PNG for the chat."""

from bot.report.page import drawn

__all__ = ["drawn"]
