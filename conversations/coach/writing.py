"""The coach writes to a client; it goes out as the coach's words."""

from dataclasses import dataclass

from conversations import passing_on
from conversations.form import Form, dialogue
from conversations.protocol import Say
from conversations.words import coach as words


@dataclass(frozen=True, slots=True)
class Brief:
    """To whom."""

    client: int
    client_name: str


FORM: Form[Brief, passing_on.Draft] = passing_on.form(
    ask=lambda brief: Say(words.WRITE.format(name=brief.client_name)),
    to=lambda brief: brief.client,
)
DIALOGUE = dialogue("writing", Brief, passing_on.Draft, FORM)
