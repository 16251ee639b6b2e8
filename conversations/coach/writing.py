"""The coach writes to a client; it goes out as the coach's words."""

from dataclasses import dataclass

from conversations import passing_on
from conversations.form import Form, dialogue
from conversations.protocol import Say
from conversations.words import coach as words


@dataclass(frozen=True, slots=True)
class Brief:
    """To whom. `about_them`: what was typed before was said of them, not to them."""

    client: int
    client_name: str
    about_them: bool = False


def _ask(brief: Brief) -> Say:
    return Say((words.WRITE_TO_THEM if brief.about_them else words.WRITE).format(name=brief.client_name))


FORM: Form[Brief, passing_on.Draft] = passing_on.form(
    ask=_ask,
    to=lambda brief: brief.client,
)
DIALOGUE = dialogue("writing", Brief, passing_on.Draft, FORM)
