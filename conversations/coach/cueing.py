"""The coach's one cue after a clip."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from conversations.answers import Unclear, Why
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Do, Effect, Record, Said, Say
from conversations.words import clips as words
from core.facts import CoachDid, Detail

LONGEST = 120  # characters: it is read before a set


@dataclass(frozen=True, slots=True)
class Brief:
    """For whom and which movement, as stored and as called."""

    client: int
    client_name: str
    coach: int
    movement: str
    movement_name: str


@dataclass(frozen=True, slots=True)
class Draft:
    """The cue; None: not said yet. `long`: the last one was too long."""

    cue: str | None = None
    long: bool = False


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if draft.long:
        return Say(words.TOO_LONG.format(most=LONGEST))
    return Say(words.ASK.format(name=brief.client_name, movement=brief.movement_name.lower()))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """The cue as one line. Raises `Unclear`."""
    line = " ".join(answer.text.split())
    if not line:
        raise Unclear(Why.EMPTY)
    return Draft(None, long=True) if len(line) > LONGEST else Draft(line)


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Kept with the client."""
    if draft.cue is None:
        return ()
    cue = Detail(answer.at, f"cue:{brief.movement}", draft.cue)
    did = CoachDid(answer.at, brief.coach, "gave_cue", draft.cue)
    return (Record(cue, brief.client), Record(did, brief.client))


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The client reads it."""
    about = {"client": brief.client, "name": brief.movement_name, "cue": draft.cue}
    return Outcome((), (Do("cue_given", about),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: "cue" if draft.cue is None else None,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    lapse=timedelta(hours=12),
)
DIALOGUE = dialogue("cueing", Brief, Draft, FORM)
