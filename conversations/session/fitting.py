"""Bands on, and the check: tightness, refill on each limb, feeling. No set without a passed check."""

from dataclasses import replace

from conversations.answers import Unclear, choice, seconds, whole_number
from conversations.protocol import Alert, Choice, Effect, Record, Said, Say, Turn
from conversations.session.state import After, Phase, State, banded_limbs, choices, say, turn
from conversations.words import session as words
from conversations.words.answers import unclear
from core.cuffs import MOST_FAILED_CHECKS, CuffCheck, Feeling, Finding, Refill, Verdict, judge
from core.facts import BandsOff, BandsOn, CuffChecked
from core.plans import Region

ON_WORDS = tuple(Choice(label, "on") for label in (words.BANDS_ON_LABEL, "on", "yes", "done", "they are on"))
FEELINGS = tuple(Choice(label, value.value) for value, label in words.FEELING_LABELS.items())
REFILLS = tuple(Choice(label, value.value) for value, label in words.REFILL_LABELS.items())


def ask(state: State) -> Say:
    """The open question of the check."""
    region = state.doing.region
    match state.phase:
        case Phase.FIT:
            text = words.BANDS_ON.format(
                name=state.name, place=words.PLACE[region], target=state.brief.target
            )
            yes = Choice(words.BANDS_ON_LABEL, "on")
            return say(text, f"on.{state.spell_id}", yes, picture=f"fit_{region}")
        case Phase.TIGHT:
            return say(words.TIGHTNESS, f"tight.{state.check_id}", *choices(words.TIGHTNESS_CHOICES))
        case Phase.REFILL:
            text = words.REFILL.format(limb=_limb(state), spot=words.SPOT[region])
            return say(text, f"refill.{state.check_id}", *REFILLS)
        case Phase.NAIL if region is Region.ARMS:
            return say(words.CANT_SEE_ARMS.format(limb=_limb(state)), f"nail.{state.check_id}", *REFILLS[:3])
        case Phase.NAIL:
            text = words.CANT_SEE_LEGS.format(limb=_limb(state))
            return say(text, f"nail.{state.check_id}", *choices(words.WARM_LABELS))
        case _:
            return say(words.FEELING, f"feel.{state.check_id}", *FEELINGS)


def _limb(state: State) -> str:
    return banded_limbs(state)[state.limb].capitalize()


def said(state: State, event: Said) -> Turn[State]:
    """An answer to the check's open question."""
    try:
        match state.phase:
            case Phase.FIT:
                choice(event.text, ON_WORDS)
                return _on(state, event)
            case Phase.TIGHT:
                return _tight(state, event)
            case Phase.REFILL:
                return _refill(state, event)
            case Phase.NAIL:
                return _nail(state, event)
            case _:
                return _feeling(state, event)
    except Unclear as problem:
        return turn(state, Say(unclear(problem)), ask(state))


def _on(state: State, event: Said) -> Turn[State]:
    if state.on_at is not None:  # a new fit without taking them off: the clock runs on
        state = replace(state, phase=Phase.TIGHT, limb=0, refills=())
        return turn(state, ask(state))
    limit_s = state.doing.limit_min * 60
    fact = BandsOn(event.at, state.brief.session, state.spell_id, state.doing.region, limit_s)
    state = replace(state, phase=Phase.TIGHT, on_at=event.at, limb=0, refills=())
    return turn(state, ask(state), effects=(Record(fact),))


def _tight(state: State, event: Said) -> Turn[State]:
    state = replace(state, tightness=whole_number(event.text, 0, 10), phase=Phase.REFILL, limb=0, refills=())
    return turn(state, ask(state))


def _refill(state: State, event: Said) -> Turn[State]:
    answer = _refill_answer(event.text)
    if answer == Refill.CANT_SEE:
        state = replace(state, phase=Phase.NAIL)
        return turn(state, ask(state))
    return _next_limb(state, answer)


def _refill_answer(text: str) -> str:
    """A button's value, a label typed, or seconds typed ("2.5")."""
    try:
        return choice(text, REFILLS)
    except Unclear:
        return f"s{seconds(text, 60)}"


def _nail(state: State, event: Said) -> Turn[State]:
    if state.doing.region is Region.LEGS:
        felt = choice(event.text, choices(words.WARM_LABELS))
        return _next_limb(state, Refill.CANT_SEE if felt == "warm" else Refill.LONGER)
    return _next_limb(state, _refill_answer(event.text))


def _next_limb(state: State, answer: str) -> Turn[State]:
    state = replace(state, refills=(*state.refills, answer))
    if len(state.refills) < len(banded_limbs(state)):
        state = replace(state, limb=state.limb + 1, phase=Phase.REFILL)
    else:
        state = replace(state, phase=Phase.FEEL)
    return turn(state, ask(state))


def _feeling(state: State, event: Said) -> Turn[State]:
    feeling = Feeling(choice(event.text, FEELINGS))
    checks = [_check(state, answer, feeling) for answer in state.refills]
    findings = [judge(check) for check in checks]
    facts = tuple(
        Record(_fact(state, event, limb, check, finding))
        for limb, check, finding in zip(banded_limbs(state), checks, findings, strict=True)
    )
    return judged(state, event, max(findings, key=lambda finding: finding.verdict), facts)


def _check(state: State, answer: str, feeling: Feeling) -> CuffCheck:
    if answer.startswith("s"):
        return CuffCheck(state.tightness, None, float(answer[1:]), feeling)
    return CuffCheck(state.tightness, Refill(answer), None, feeling)


def _fact(state: State, event: Said, limb: str, check: CuffCheck, finding: Finding) -> CuffChecked:
    return CuffChecked(
        event.at,
        state.brief.session,
        state.spell_id,
        state.check_no,
        limb,
        check.tightness,
        check.refill.value if check.refill else "typed",
        check.refill_s,
        check.feeling.value if check.feeling else "",
        finding.verdict.name.lower(),
        finding.because,
    )


def judged(state: State, event: Said, finding: Finding, facts: tuple[Effect, ...]) -> Turn[State]:
    """What follows from the strictest finding of both limbs."""
    match finding.verdict:
        case Verdict.GO:
            return passed(replace(state, loose=False), event, words.RIGHT, facts)
        case Verdict.LOOSE if state.refitted_loose or state.rechecked:
            return passed(replace(state, loose=True), event, words.LOOSE_GO_ON, facts)
        case Verdict.LOOSE:
            state = _check_again(replace(state, refitted_loose=True))
            return turn(state, _again(state, words.LOOSE_AGAIN), effects=facts)
        case _:
            return _failed(state, event, finding, facts)


def _check_again(state: State) -> State:
    return replace(state, phase=Phase.FIT, check_no=state.check_no + 1, limb=0, refills=(), tightness=None)


def _again(state: State, text: str) -> Say:
    return say(text, f"on.{state.spell_id}", Choice(words.BANDS_ON_LABEL, "on"))


def _failed(state: State, event: Said, finding: Finding, facts: tuple[Effect, ...]) -> Turn[State]:
    state = replace(state, failed_checks=state.failed_checks + 1)
    over = state.failed_checks >= MOST_FAILED_CHECKS
    why = words.OFF_WHY.get(finding.because, "")
    if over:
        state = replace(state, phase=Phase.OFF, after=After.END, why=finding.because)
        alert = Alert("two_failed_checks", f"Band check: {finding.because}", words.TWICE)
        return turn(state, off(state, f"{words.OFF_NOW} {why}".strip()), effects=(*facts, alert))
    if finding.verdict is Verdict.LOOSEN:
        state = _check_again(state)
        return turn(state, _again(state, words.LOOSEN), effects=facts)
    state = replace(state, phase=Phase.OFF, after=After.REFIT, why="refit")
    return turn(state, off(state, f"{words.OFF_NOW} {why}".strip()), effects=facts)


def off(state: State, text: str) -> Say:
    """Ask for the bands to come off."""
    return say(text, f"off.{state.spell_id}", Choice(words.BANDS_OFF_LABEL, "off"))


def passed(state: State, event: Said, text: str, facts: tuple[Effect, ...]) -> Turn[State]:
    """The check is good: the first set, the walk, or on with the next set."""
    from conversations.session import sets  # a passed check leads into the sets, and set 1 may lead back

    began = sets.begin(state, event.at)
    return replace(began, replies=(Say(text), *began.replies), effects=facts + began.effects)


def bands_off_fact(state: State, event: Said) -> tuple[Effect, ...]:
    """The bands are off."""
    return (Record(BandsOff(event.at, state.brief.session, state.spell_id, state.why)),)
