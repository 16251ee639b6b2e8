"""The client writes to the coach: the next line goes there word for word, and is said back as sent."""

from dataclasses import dataclass
from datetime import timedelta

from conversations import passing_on
from conversations.form import Form, dialogue
from conversations.protocol import Say
from conversations.words import telling as words


@dataclass(frozen=True, slots=True)
class Brief:
    """To whom."""

    coach_name: str = words.YOUR_COACH


FORM: Form[Brief, passing_on.Draft] = passing_on.form(
    ask=lambda brief: Say(words.TELL.format(coach=brief.coach_name)),
    to=lambda brief: None,
    patience=timedelta(minutes=30),
    lapse=timedelta(hours=2),
)
DIALOGUE = dialogue("telling", Brief, passing_on.Draft, FORM)
