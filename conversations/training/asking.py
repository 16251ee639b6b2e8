"""After the recap: the one question that tells two readings of the numbers apart."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import choice, seconds, whole_number
from conversations.form import YES_NO, Form, Outcome, dialogue
from conversations.pain_said import NO_PAIN
from conversations.protocol import Choice, Do, Effect, Record, Said, Say
from conversations.words import asking as words
from conversations.words.advice import QUESTIONS
from conversations.words.readings import both
from core.facts import Answered
from core.progression import Explanation, Question

MOST_LEFT = 60  # reps
LONGEST_REST_S = 600
LAPSE = timedelta(hours=12)  # unanswered it goes by itself, without a reminder: it is worth one asking


@dataclass(frozen=True, slots=True)
class Brief:
    """About which session and movement (as stored, and as the client calls it), and what is asked.

    `either`: the two explanations that it tells apart, the likelier first; (): from before they were said.
    """

    session: str
    movement: str
    movement_name: str
    question: Question
    either: tuple[Explanation, ...] = ()


@dataclass(frozen=True, slots=True)
class Draft:
    """The answer as stored; None: not given yet."""

    said: str | None = None


READ: Mapping[Question, Callable[[str], str]] = {
    Question.HOW_TIGHT_AT_THE_END: lambda text: str(whole_number(text, 0, 10)),
    Question.COULD_DO_MORE: lambda text: str(whole_number(text, 0, MOST_LEFT, zero=NO_PAIN)),
    Question.HOW_LONG_WAS_THE_REST: lambda text: f"{seconds(text, LONGEST_REST_S):g}",
    Question.WERE_ALL_CLEAN: lambda text: choice(text, YES_NO),
    Question.HOW_WAS_THE_DAY: lambda text: choice(text, YES_NO),
}
NONE_LEFT = (Choice(words.NONE_LEFT, "0"),)
BUTTONS: Mapping[Question, tuple[Choice, ...]] = {
    Question.COULD_DO_MORE: NONE_LEFT,
    Question.WERE_ALL_CLEAN: YES_NO,
    Question.HOW_WAS_THE_DAY: YES_NO,
}


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    text = words.ABOUT.format(
        name=brief.movement_name.lower(), both=both(brief.either), question=QUESTIONS[brief.question]
    )
    return Say(" ".join(text.split()), BUTTONS.get(brief.question, ()))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """The answer. Raises `Unclear`."""
    return replace(draft, said=READ[brief.question](answer.text))


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Kept with the movement it is about."""
    part = f"asked:{brief.movement}"
    return (Record(Answered(answer.at, brief.session, part, brief.question, str(draft.said))),)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The next load is looked at again with it."""
    return Outcome((Say(words.THANKS),), (Do("read_again", {"session": brief.session}),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=lambda brief, draft: "said" if draft.said is None else None,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    patience=LAPSE,
    lapse=LAPSE,
)
DIALOGUE = dialogue("asking", Brief, Draft, FORM)
