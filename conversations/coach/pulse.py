"""The coach enters two pulses, and the client's walks get a ceiling: half of the heart-rate reserve."""

from dataclasses import dataclass, replace
from datetime import datetime

from conversations.answers import whole_number
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Record, Said, Say
from conversations.words import pulse as words
from conversations.words.coach import to_card
from core.facts import CoachDid, Detail
from core.walking import START_KMH, heart_rate_ceiling, mets

CEILING = "pulse_ceiling"  # a detail of the client: beats a minute, "" for none
NONE = "none"
# Beats a minute; wider is a slip of the thumb: own judgement, no source.
RESTING, HIGHEST = (30, 120), (80, 230)


@dataclass(frozen=True, slots=True)
class Brief:
    """Whose pulse."""

    client: int
    client_name: str
    coach: int


@dataclass(frozen=True, slots=True)
class Draft:
    """Beats a minute; None: not asked yet. `highest` 0: no limit is wanted. `low`: the last answer was too low."""

    resting: int | None = None
    highest: int | None = None
    low: bool = False


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    return next((step for step in ("highest", "resting") if _wanted(draft, step)), None)


def _wanted(draft: Draft, step: str) -> bool:
    return getattr(draft, step) is None and draft.highest != 0


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    if step == "resting":
        text = words.RESTING.format(name=brief.client_name)
        return Say(f"{words.NOT_ABOVE} {text}" if draft.low else text)
    return Say(words.HIGHEST, (Choice(words.NO_LIMIT, NONE),))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    if step == "highest" and answer.text.strip().lower() in (NONE, words.NO_LIMIT.lower()):
        return replace(draft, highest=0)
    if step == "highest":
        return replace(draft, highest=whole_number(answer.text, *HIGHEST))
    resting = whole_number(answer.text, *RESTING)
    if resting >= (draft.highest or 0):
        return replace(draft, low=True)
    return replace(draft, resting=resting, low=False)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Kept; the next walk says it."""
    ceiling = 0
    if draft.highest and draft.resting:
        ceiling = int(heart_rate_ceiling(draft.resting, draft.highest))
    text = words.SET.format(name=brief.client_name, ceiling=ceiling, mets=mets(START_KMH))
    said = text if ceiling else words.UNSET.format(name=brief.client_name)
    value = str(ceiling) if ceiling else ""
    effects = (
        Record(Detail(at, CEILING, value), brief.client),
        Record(CoachDid(at, brief.coach, "pulse_ceiling", value or NONE), brief.client),
    )
    return Outcome((Say(said, (to_card(brief.client_name, brief.client),)),), effects)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(), missing=missing, ask=ask, fill=fill, finish=finish
)
DIALOGUE = dialogue("pulse", Brief, Draft, FORM)
