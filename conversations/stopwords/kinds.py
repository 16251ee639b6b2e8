"""What a message can say that matters more than the question it was meant to answer."""

from dataclasses import dataclass
from enum import StrEnum


class Kind(StrEnum):
    """What the client says is so now, least first; the strictest in a message wins. Stored."""

    NONE = "none"  # nothing of the kind: go on
    UNSURE = "unsure"  # ask "Is something wrong right now?", bands off first
    SORE = "sore"  # far sorer than usual: ordinary, or more than the session explains?
    HURT_LATELY = "hurt_lately"  # fell yesterday: the coach looks before the next session
    FEVER = "fever"  # no bands, the coach reads it
    HURTS = "hurts"  # pain or burn: pause and ask where
    TIGHT = "tight"  # the band is too tight: off, fit it again looser
    STOP = "stop"  # wants to stop, or the bands off
    INJURY = "injury"  # a fall, a pop, blood
    URINE = "urine"  # dark urine: muscle breakdown
    SWELLING = "swelling"  # swelling or another sign of a clot
    CIRCULATION = "circulation"  # blue, white, cold: bands off at once
    NERVE = "nerve"  # tingling, numb: bands off at once
    FAINT = "faint"  # dizzy, sick, a racing heart: bands off, sit or lie down
    STUCK = "stuck"  # a band does not come off: cut it, get help
    LIMP = "limp"  # a limb that does not do what it should
    WEAK = "weak"  # a limb is weak; in a session legs often are
    EMERGENCY = "emergency"  # chest, breath, fainted, one-sided weakness, sudden headache: emergency words

    @property
    def rank(self) -> int:
        """0 for NONE; the higher, the stricter."""
        return RANKS[self]


RANKS = {kind: rank for rank, kind in enumerate(Kind)}
# While training, and shortly after, the same words mean less, or another thing: heavy legs are what sets are for.
WHILE_TRAINING = {
    Kind.SORE: Kind.HURTS,
    Kind.FEVER: Kind.UNSURE,
    Kind.HURT_LATELY: Kind.UNSURE,
    Kind.LIMP: Kind.NERVE,
    Kind.WEAK: Kind.UNSURE,
}


class Sense(StrEnum):
    """In which sense the words were said."""

    NOW = "now"
    PERHAPS = "perhaps"  # neither said nor denied: ask
    LATELY = "lately"  # "fell on the stairs yesterday"
    DENIED = "denied"  # "not numb"
    OVER = "over"  # "tingling is gone"
    SUPPOSED = "supposed"  # "what if it gets numb?"
    LONG_AGO = "long_ago"  # "chest pain years ago"
    OF_OTHERS = "of_others"  # "my dad had a stroke"
    RATED = "rated"  # "pain 2": an answer, up to 3


@dataclass(frozen=True, slots=True)
class Heard:
    """One thing heard: the client's `words` (spelling corrected), what they name, and in which sense."""

    kind: Kind
    words: str
    sense: Sense

    @property
    def counts_as(self) -> Kind:
        """The kind to act on."""
        match self.sense:
            case Sense.NOW:
                return self.kind
            case Sense.PERHAPS:
                return Kind.UNSURE
            case Sense.LATELY:
                return Kind.HURT_LATELY
            case _:
                return Kind.NONE


@dataclass(frozen=True, slots=True)
class Reading:
    """What a message says. `heard` also holds what was denied, over or only asked about."""

    kind: Kind
    heard: tuple[Heard, ...] = ()

    @property
    def while_training(self) -> Kind:
        """The kind to act on where bands are on, or were shortly before."""
        said = (WHILE_TRAINING.get(heard.counts_as, heard.counts_as) for heard in self.heard)
        return max(said, key=lambda kind: kind.rank, default=Kind.NONE)

    @property
    def words(self) -> tuple[str, ...]:
        """The words that made `kind`; empty for NONE."""
        if self.kind is Kind.NONE:
            return ()
        return tuple(heard.words for heard in self.heard if heard.counts_as is self.kind)


NOTHING = Reading(Kind.NONE)
