"""One event of a form: the open question's answer, or something else; then what is missing is asked."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Any, Generic

from conversations.answers import Unclear, Why
from conversations.form import asides
from conversations.form.state import Asking, B, D, Given, Outcome, with_answer
from conversations.protocol import (
    BandsCameOff,
    Barred,
    Cancelled,
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


def _no_effects(brief: Any, draft: Any, step: str, answer: Said) -> tuple[Effect, ...]:
    return ()


def _forget(draft: Any, step: str) -> Any:
    """By default a step is named as its field, and None means: not asked yet."""
    return with_answer(draft, step, None)


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
    - `reminder`: how the one reminder begins. `patience`: silence until it comes. `lapse`: silence until the form ends by itself with
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
    reminder: str = common.STILL_THERE
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
        if event.to is not None and not state.is_open(event.to):
            return self._late_tap(state, event)
        aside = (
            None if event.to is not None else self._taken_back(state, event) or self._too_soon(state, event)
        )
        if aside is not None:
            return aside
        try:
            draft = self.fill(state.brief, state.draft, state.step, event)
        except Unclear as problem:
            if state.given and asides.tells_of_a_slip(event.text):
                return self._next(state, event.at, (Say(common.HOW_TO_GO_BACK),))
            asked_again = self._next(state, event.at, (Say(unclear(problem)),))
            return replace(asked_again, unread=problem.reason is not Why.HOW_MUCH)
        return self._filled(state, draft, event)

    def _late_tap(self, state: Asking[B, D], event: Said) -> Turn[Asking[B, D]]:
        """A button of a question that is no longer open: the same answer once more, or one that came too late."""
        if asides.is_tapped_twice(self, state, event):
            return self._wait(state, (Say(common.ALREADY_NOTED),))
        return self._next(state, event.at, (Say(common.TOO_LATE),))

    def _filled(self, state: Asking[B, D], draft: D, event: Said) -> Turn[Asking[B, D]]:
        effects = self.noted(state.brief, draft, state.step, event)
        given = (*state.given, Given(state.step, event.message))
        return self._next(replace(state, draft=draft, given=given, first_asked=0), event.at, (), effects)

    def _taken_back(self, state: Asking[B, D], event: Said) -> Turn[Asking[B, D]] | None:
        """ "no, 7" after a number: the answer before, not this one."""
        found = asides.taken_back(self, state, event)
        if found is None:
            return None
        draft, said = found
        step = state.given[-1].step
        effects = self.noted(state.brief, draft, step, said)
        given = (*state.given[:-1], Given(step, event.message))
        changed = Say(common.CHANGED.format(said=said.text))
        return self._next(replace(state, draft=draft, given=given), event.at, (changed,), effects)

    def _too_soon(self, state: Asking[B, D], event: Said) -> Turn[Asking[B, D]] | None:
        """Words that nobody can have typed as the answer to this: a copy of the last answer, or else asked again."""
        if asides.doubled(self, state, event):
            return self._next(state, event.at, (Say(common.ALREADY_NOTED),))
        if not asides.came_before(state, event):
            return None
        if asides.is_copy(self, state, event):
            return self._wait(state, (Say(common.ALREADY_NOTED),))
        left_out = Say(common.BEFORE_ASKED.format(said=event.text.strip()))
        return replace(self._next(state, event.at, (left_out,)), unread=True)

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
        return self._next(replace(state, draft=draft, given=tuple(earlier), first_asked=0), event.at, ())

    def _woke(self, state: Asking[B, D], event: Woke, now: datetime) -> Turn[Asking[B, D]]:
        since = min(state.waiting_since or event.at, now)  # the clock may have been set back
        state = replace(state, waiting_since=since)
        hurry = self.hurry(state.brief, state.draft)
        lapse = hurry or self.lapse
        if lapse is not None and now >= since + lapse:
            return _over(self.lapsed(state.brief, state.draft, now))
        if hurry or state.reminded or now < since + self.patience:
            return self._wait(state, ())
        turn = self._next(state, since, (Say(self.reminder),))
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
        first = state.first_asked if step == state.step and state.first_asked else asked
        state = replace(state, step=step, asked=asked, waiting_since=at, reminded=False, first_asked=first)
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
