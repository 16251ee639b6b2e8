"""Questions and answers: one shared machine, so that each dialogue brings only its own questions.

A dialogue gives four pure functions, `missing` (what to ask next; all branching is there), `ask` (how to ask
it), `fill` (add one answer; raises `Unclear`) and `finish` (what comes of it). Re-asking, `back`, `cancel`,
late taps, edits, reminders, resuming and pictures instead of words are written here, once.

The state holds labelled answers only. A release that adds a question finds it missing in an old draft and
asks it; a release that drops one never looks at it again.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from decimal import Decimal
from typing import Any, Generic, TypeVar

from conversations.answers import Unclear
from conversations.correcting import number_instead
from conversations.protocol import (
    BandsCameOff,
    Barred,
    Cancelled,
    Choice,
    Corrected,
    Dialogue,
    Effect,
    Event,
    Halted,
    Hurts,
    Opened,
    Resumed,
    Said,
    Say,
    Sent,
    Turn,
    WentBack,
    Woke,
)
from conversations.words import common
from conversations.words.answers import unclear

DOUBLED_WITHIN = timedelta(seconds=2)  # own caution, no source
NUMBERS = (int, float, Decimal)

B = TypeVar("B")
D = TypeVar("D")


@dataclass(frozen=True, slots=True)
class Outcome:
    """What comes of a finished form."""

    replies: tuple[Say, ...] = ()
    effects: tuple[Effect, ...] = ()


@dataclass(frozen=True, slots=True)
class Given:
    """One answered step and the client's message that answered it (None: a button)."""

    step: str
    message: int | None = None


@dataclass(frozen=True, slots=True)
class Asking(Generic[B, D]):
    """The state of a form: its frozen brief, the answers so far, and the question that is open."""

    brief: B
    draft: D
    asked: int = 0  # counts questions put, so that a late tap is known
    step: str = ""
    given: tuple[Given, ...] = ()
    waiting_since: datetime | None = None
    reminded: bool = False
    since: int = 0  # the number under which the open question was first put; 0: not known

    @property
    def question(self) -> str:
        """The id of the open question, unique within the thread."""
        return f"{self.step}.{self.asked}"


def _no_effects(brief: Any, draft: Any, step: str, answer: Said) -> tuple[Effect, ...]:
    return ()


def with_answer(draft: D, step: str, value: Any) -> D:
    """The draft with the field of that step set."""
    changed: D = replace(draft, **{step: value})  # type: ignore[type-var]  # every draft is a dataclass
    return changed


def _forget(draft: Any, step: str) -> Any:
    """By default a step is named as its field, and None means: not asked yet."""
    return replace(draft, **{step: None})


@dataclass(frozen=True, slots=True)
class Form(Generic[B, D]):
    """A question-and-answer dialogue.

    - `start(brief)`: the empty draft.
    - `missing(brief, draft)`: name of the next question, None: all there.
    - `ask(brief, draft, step)`: its words and buttons.
    - `fill(brief, draft, step, answer)`: the draft with one more answer; raises `Unclear`.
    - `finish(brief, draft, at)`: what comes of it.
    - `noted(brief, draft, step, answer)`: effects of one answer at once (facts, alerts); `draft` has it.
    - `forget(draft, step)`: the draft without that answer, for `back`.
    - `media(brief, draft, step, sent)`: the draft with something that is not text, None: not wanted.
    - `opening(brief)`: words before the first question.
    - `came_off(draft)`: the draft when the bands came off by another way than its own question.
    - `hurry(brief, draft)`: silence until `lapsed`, without a reminder, while the open question cannot wait or is
      soon asked anyway.
    - `patience`: silence until the one reminder. `lapse`: silence until the form ends by itself with
      `lapsed(brief, draft, at)`; None: it waits for ever.
    """

    start: Callable[[B], D]
    missing: Callable[[B, D], str | None]
    ask: Callable[[B, D, str], Say]
    fill: Callable[[B, D, str, Said], D]
    finish: Callable[[B, D, datetime], Outcome]
    noted: Callable[[B, D, str, Said], tuple[Effect, ...]] = _no_effects
    forget: Callable[[D, str], D] = _forget
    media: Callable[[B, D, str, Sent], D | None] = lambda brief, draft, step, sent: None
    opening: Callable[[B], tuple[Say, ...]] = lambda brief: ()
    came_off: Callable[[D], D] = lambda draft: draft
    hurry: Callable[[B, D], timedelta | None] = lambda brief, draft: None
    patience: timedelta = timedelta(hours=1)
    lapse: timedelta | None = None
    lapsed: Callable[[B, D, datetime], Outcome] = lambda brief, draft, at: Outcome()
    cancelled: Callable[[B, D, datetime], Outcome] = lambda *_: Outcome((Say(common.CANCELLED),))

    def advance(self, state: Asking[B, D] | None, event: Event, now: datetime) -> Turn[Asking[B, D]]:
        """One event. Raises TypeError when the first event is not `Opened` (a bug of the engine)."""
        if state is None:
            return self._open(event)
        match event:
            case Said():
                return self._said(state, event)
            case Woke():
                return self._woke(state, event, now)
            case Cancelled():
                return _over(self.cancelled(state.brief, state.draft, event.at))
            case Halted() | Barred():
                return Turn(None)
            case _:
                return self._aside(state, event)

    def _aside(self, state: Asking[B, D], event: Event) -> Turn[Asking[B, D]]:
        """What is no answer: a change of one, something that is not text, or news."""
        match event:
            case Corrected():
                return self._corrected(state, event)
            case Sent():
                return self._sent(state, event)
            case WentBack():
                return self._back(state, event)
            case Resumed() | Hurts():
                return self._next(state, event.at, ())
            case BandsCameOff():
                return self._came_off(state, event)
            case _:
                return self._wait(state, ())

    def _came_off(self, state: Asking[B, D], event: BandsCameOff) -> Turn[Asking[B, D]]:
        draft = self.came_off(state.draft)
        if draft == state.draft:
            return self._wait(state, ())
        return self._next(replace(state, draft=draft), event.at, ())

    def _open(self, event: Event) -> Turn[Asking[B, D]]:
        if not isinstance(event, Opened):
            raise TypeError(f"a form begins with Opened, not {type(event).__name__}")
        brief: B = event.brief
        return self._next(Asking(brief, self.start(brief)), event.at, self.opening(brief))

    def _said(self, state: Asking[B, D], event: Said) -> Turn[Asking[B, D]]:
        if event.to is not None and event.to != state.question:
            return self._wait(state, (Say(common.ALREADY_NOTED),))
        aside = (
            None if event.to is not None else self._taken_back(state, event) or self._too_soon(state, event)
        )
        if aside is not None:
            return aside
        try:
            draft = self.fill(state.brief, state.draft, state.step, event)
        except Unclear as problem:
            return replace(self._next(state, event.at, (Say(unclear(problem)),)), unread=True)
        return self._filled(state, draft, event)

    def _filled(self, state: Asking[B, D], draft: D, event: Said) -> Turn[Asking[B, D]]:
        effects = self.noted(state.brief, draft, state.step, event)
        given = (*state.given, Given(state.step, event.message))
        return self._next(replace(state, draft=draft, given=given, since=0), event.at, (), effects)

    def _taken_back(self, state: Asking[B, D], event: Said) -> Turn[Asking[B, D]] | None:
        """ "no, 7" after a number: the answer before, not this one."""
        number, last = number_instead(event.text), state.given[-1] if state.given else None
        if number is None or last is None or not isinstance(getattr(state.draft, last.step, None), NUMBERS):
            return None
        said = Said(event.at, number, None, event.message)
        try:
            draft = self.fill(state.brief, self.forget(state.draft, last.step), last.step, said)
        except Unclear:
            return None
        effects = self.noted(state.brief, draft, last.step, said)
        given = (*state.given[:-1], Given(last.step, event.message))
        changed = Say(common.CHANGED.format(said=number))
        return self._next(replace(state, draft=draft, given=given), event.at, (changed,), effects)

    def _too_soon(self, state: Asking[B, D], event: Said) -> Turn[Asking[B, D]] | None:
        """Words that nobody can have typed as the answer to this: a copy of the last answer, or else asked again."""
        if self._doubled(state, event):
            return self._next(state, event.at, (Say(common.ALREADY_NOTED),))
        asked = {f"{state.step}.{number}" for number in range(state.since, state.asked + 1)}
        if not state.since or not asked <= event.unseen:
            return None
        if self._is_copy(state, event):
            return self._wait(state, (Say(common.ALREADY_NOTED),))
        return self._next(state, event.at, (Say(common.BEFORE_ASKED.format(said=event.text.strip())),))

    def _doubled(self, state: Asking[B, D], event: Said) -> bool:
        """The same number within seconds, as a thumb does on a slow line: no question is read so fast."""
        if event.message is None or not event.text.strip().isdigit() or state.waiting_since is None:
            return False
        return event.at - state.waiting_since <= DOUBLED_WITHIN and self._is_copy(state, event)

    def _is_copy(self, state: Asking[B, D], event: Said) -> bool:
        """Whether these words give the answer before once more."""
        if not state.given:
            return False
        step = state.given[-1].step
        try:
            return self.fill(state.brief, self.forget(state.draft, step), step, event) == state.draft
        except Unclear:
            return False

    def _corrected(self, state: Asking[B, D], event: Corrected) -> Turn[Asking[B, D]]:
        step = next((given.step for given in state.given if given.message == event.of), None)
        if step is None:
            return self._wait(state, ())
        said = Said(event.at, event.text, None, event.of)
        try:
            draft = self.fill(state.brief, state.draft, step, said)
        except Unclear as problem:
            return self._wait(state, (Say(unclear(problem)),))
        effects = self.noted(state.brief, draft, step, said)
        changed = Say(common.CHANGED.format(said=event.text))
        return self._next(replace(state, draft=draft), event.at, (changed,), effects)

    def _sent(self, state: Asking[B, D], event: Sent) -> Turn[Asking[B, D]]:
        draft = self.media(state.brief, state.draft, state.step, event)
        if draft is None:
            return self._next(state, event.at, (Say(common.NOT_WORDS[event.kind]),))
        return self._filled(state, draft, Said(event.at, event.file, None, event.message))

    def _back(self, state: Asking[B, D], event: WentBack) -> Turn[Asking[B, D]]:
        if not state.given:
            return self._next(state, event.at, (Say(common.NOTHING_TO_GO_BACK_TO),))
        *earlier, last = state.given
        draft = self.forget(state.draft, last.step)
        return self._next(replace(state, draft=draft, given=tuple(earlier)), event.at, ())

    def _woke(self, state: Asking[B, D], event: Woke, now: datetime) -> Turn[Asking[B, D]]:
        since = min(state.waiting_since or event.at, now)  # the clock may have been set back
        state = replace(state, waiting_since=since)
        hurry = self.hurry(state.brief, state.draft)
        lapse = hurry or self.lapse
        if lapse is not None and now >= since + lapse:
            return _over(self.lapsed(state.brief, state.draft, now))
        if hurry or state.reminded or now < since + self.patience:
            return self._wait(state, ())
        turn = self._next(state, since, (Say(common.STILL_THERE),))
        if turn.state is None:
            return turn
        return self._wait(replace(turn.state, reminded=True), turn.replies, turn.effects)

    def _next(
        self,
        state: Asking[B, D],
        at: datetime,
        replies: tuple[Say, ...],
        effects: tuple[Effect, ...] = (),
    ) -> Turn[Asking[B, D]]:
        """Ask what is missing, or finish."""
        step = self.missing(state.brief, state.draft)
        if step is None:
            outcome = self.finish(state.brief, state.draft, at)
            return Turn(None, replies + outcome.replies, effects + outcome.effects)
        asked = state.asked + 1
        since = state.since if step == state.step and state.since else asked
        state = replace(state, step=step, asked=asked, waiting_since=at, reminded=False, since=since)
        say = replace(self.ask(state.brief, state.draft, step), asks=state.question)
        return self._wait(state, (*replies, say), effects)

    def _wait(
        self, state: Asking[B, D], replies: tuple[Say, ...], effects: tuple[Effect, ...] = ()
    ) -> Turn[Asking[B, D]]:
        return Turn(state, replies, effects, self._wake_at(state))

    def _wake_at(self, state: Asking[B, D]) -> datetime | None:
        if state.waiting_since is None:
            return None
        hurry = self.hurry(state.brief, state.draft)
        if hurry is not None or not state.reminded:
            return state.waiting_since + (hurry or self.patience)
        return state.waiting_since + self.lapse if self.lapse is not None else None


def _over(outcome: Outcome) -> Turn[Any]:
    return Turn(None, outcome.replies, outcome.effects)


def dialogue(name: str, brief: type[B], draft: type[D], form: Form[B, D], **traits: bool) -> Dialogue[Any]:
    """The catalogue line of a form. `traits` as in `Dialogue`."""
    return Dialogue(name, Asking[brief, draft], brief, form.advance, **traits)  # type: ignore[valid-type]


def buttons(*labels: str) -> tuple[Choice, ...]:
    """Buttons whose value is their own label."""
    return tuple(Choice(label, label) for label in labels)


YES_NO = buttons(common.YES, common.NO)
YES_NO_NOT_SURE = buttons(common.YES, common.NO, common.NOT_SURE)
