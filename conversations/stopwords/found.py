"""A phrase found in a message, with what stands around it."""

from dataclasses import dataclass

from conversations.stopwords.kinds import Kind, Sense


@dataclass(frozen=True, slots=True)
class Found:
    """A phrase found in a clause, with what stands around it. Texts keep a space at both ends.

    `gap` is what the ".." of the phrase stood for. `earlier` and `later` are the rest of the sentence.
    `list_of_noes`: the clause before was "no ..." and this one only goes on listing.
    """

    kind: Kind
    text: str
    gap: str
    before: str
    after: str
    earlier: str
    later: str
    question: bool
    list_of_noes: Sense | None = None

    @property
    def clause(self) -> str:
        """The whole clause."""
        return f"{self.before.rstrip()}{self.text}{self.after}"

    @property
    def said_before(self) -> str:
        """The sentence up to the match."""
        return f"{self.earlier}{self.before}"

    @property
    def sentence(self) -> str:
        """The whole sentence."""
        return f"{self.earlier}{self.clause}{self.later}"
