"""What a dialogue says: one message, with its buttons."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Choice:
    """A button: what it shows and the value that comes back."""

    label: str
    value: str


@dataclass(frozen=True, slots=True)
class Say:
    """One message. `asks` is the id of the question it puts, None when it puts none.

    `picture` names a drawing of ours (see `bot.making.pictures`), `clip` a file handle of the transport. `quiet`
    messages make no sound.
    """

    text: str
    choices: tuple[Choice, ...] = ()
    asks: str | None = None
    picture: str | None = None
    clip: str | None = None
    quiet: bool = False
