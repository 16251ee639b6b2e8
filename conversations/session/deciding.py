"""What follows from a check: the first set, a touch looser or snugger, off and fitted anew, or the end."""

from dataclasses import replace
from datetime import datetime

from conversations.protocol import Alert, Choice, Effect, Record, Said, Say, TooTight, Turn
from conversations.session.coming_off import off
from conversations.session.judging import checks_of, fact_of, so_far
from conversations.session.state import After, Phase, State, banded_limbs, say, turn
from conversations.words import session as words
from conversations.words.cuffs import check_said
from conversations.words.one_band import of_bands
from core.cuffs import Decision, Step, Verdict, at_once, decide, failed
from core.facts import CuffChecked, Noticed
from core.safety.causes import Cause
from core.stored_names import names_in


def early(state: State, at: datetime, felt: str = "") -> Turn[State] | None:
    """What an answer decides by itself: bands that are far too tight come off now, not after the other questions.

    `felt`: how they feel, where that was said before it was asked.
    """
    checks = checks_of(state, felt)
    decision = at_once(checks, so_far(state))
    if decision is None:
        return None
    return decided(state, at, decision, tuple(Record(fact_of(state, at, check)) for check in checks))


def whole(state: State, at: datetime, felt: str) -> Turn[State]:
    """All was answered."""
    checks = checks_of(state, felt)
    facts = tuple(Record(fact_of(state, at, check)) for check in checks)
    return decided(state, at, decide(checks, so_far(state)), facts)


def too_tight(state: State, event: TooTight) -> Turn[State]:
    """Said at any moment with bands on: it counts as a failed check. Off, 3 min, one new fit, looser."""
    fact = Record(Noticed(event.at, "too_tight", event.text))
    if state.on_at is None:
        return turn(state, Say(words.FIT_LOOSER), effects=(fact,))
    decision = failed(Verdict.STOP, ("far_too_tight",), so_far(state))
    return decided(_out_of_the_set(state), event.at, decision, (fact,))


def moved(state: State, event: Said) -> Turn[State]:
    """A band slid or came loose between checks: a failed one. Set back, looked at anew; a set under way is done again."""
    fact = Record(Noticed(event.at, "band_moved", event.text))
    decision = failed(Verdict.LOOSEN, ("wrong_place",), so_far(state))
    state = _out_of_the_set(state)
    if decision.step is not Step.LOOSEN:
        return decided(state, event.at, decision, (fact,))
    state = _check_again(replace(state, failed_checks=decision.failed))
    return turn(
        state, _again(state, words.SET_BACK.format(place=words.PLACE[state.doing.region])), effects=(fact,)
    )


def _out_of_the_set(state: State) -> State:
    """A check comes first now. A set under way is done again after it; in a rest the next one follows."""
    next_set = state.set_no + (state.phase is Phase.REST)
    return replace(state, set_no=next_set, rest_until=None, maybe_on=False)


def decided(state: State, at: datetime, decision: Decision, facts: tuple[Effect, ...]) -> Turn[State]:
    """What follows from the rules' decision about this fitting."""
    state = replace(state, failed_checks=decision.failed)
    match decision.step:
        case Step.GO:
            state = replace(state, loose=decision.loose)
            return passed(state, at, _right(decision), facts)
        case Step.SNUGGER:
            state = _check_again(replace(state, refitted_loose=True))
            return turn(
                state, _again(state, of_bands(words.LOOSE_AGAIN, len(banded_limbs(state)))), effects=facts
            )
        case Step.LOOSEN:
            state = _check_again(state)
            return turn(state, _fitted_better(state, decision), effects=facts)
        case Step.FIT_AGAIN:
            state = replace(state, phase=Phase.OFF, after=After.REFIT, why="refit")
            return turn(state, off(state, _off_text(state, decision)), effects=facts)
        case Step.ASK_COACH:
            return _end(state, decision, Cause.UNSEEN_REFILL, words.ASK_COACH, facts)
        case Step.END:
            return _end(state, decision, Cause.CHECKS_FAILED, words.TWICE, facts)


def _fitted_better(state: State, decision: Decision) -> Say:
    """Loosened where it is, or set high again: what slid down presses elsewhere and does nothing."""
    if "wrong_place" not in decision.because:
        return _again(state, words.LOOSEN, words.LOOSENED)
    too_tight = not {"too_tight", "slow_refill"}.isdisjoint(decision.because)
    text = words.SET_HIGH_LOOSER if too_tight else words.SET_HIGH
    return _again(state, text.format(place=words.PLACE[state.doing.region]))


def _right(decision: Decision) -> str:
    said = {
        "loose": words.LOOSE_GO_ON,
        "unseen_refill": words.UNSEEN_GO_ON,
        "another_band": words.ANOTHER_BAND,
        "snug_arms": words.SNUG_ARM,
    }
    return " ".join(text for name, text in said.items() if name in decision.because) or words.RIGHT


def _end(state: State, decision: Decision, cause: Cause, told: str, facts: tuple[Effect, ...]) -> Turn[State]:
    state = replace(state, phase=Phase.OFF, after=After.END, why=cause.value)
    alert = Alert(cause, _seen(decision, facts), told)
    return turn(state, off(state, f"{_off_text(state, decision)} {told}"), effects=(*facts, alert))


def _seen(decision: Decision, facts: tuple[Effect, ...]) -> str:
    """What the coach reads: each limb with what was found on it; of words between checks what they mean."""
    checked = [one.fact for one in facts if isinstance(one, Record) and isinstance(one.fact, CuffChecked)]
    found = [(one.limb, names_in(one.because)) for one in checked if one.because]
    return check_said(found or [("", decision.because)])


def _off_text(state: State, decision: Decision) -> str:
    now = of_bands(words.OFF_NOW, len(banded_limbs(state)))
    return f"{now} {words.OFF_WHY.get(decision.because[0], '')}".strip()


def _check_again(state: State) -> State:
    return replace(state, phase=Phase.FIT, check_no=state.check_no + 1, limb=0, refills=(), tightness=None)


def _again(state: State, text: str, label: str = words.BANDS_ON_LABEL) -> Say:
    return say(text, f"on.{state.spell_id}", Choice(label, "on"))


def passed(state: State, at: datetime, text: str, facts: tuple[Effect, ...]) -> Turn[State]:
    """The check is good: the first set, the walk, or on with the next set."""
    from conversations.session import sets  # a passed check leads into the sets, and set 1 may lead back

    began = sets.begin(state, at)
    return replace(began, replies=(Say(text), *began.replies), effects=facts + began.effects)
