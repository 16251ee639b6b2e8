"""Bands on, and the check: tightness, refill on each limb, feeling. No set without a passed check."""

import re
from dataclasses import replace
from datetime import datetime
from itertools import zip_longest

from conversations.answers import Unclear, Why, choice, seconds, whole_number
from conversations.protocol import Alert, Choice, Effect, Record, Said, Say, TooTight, Turn
from conversations.session.state import After, Phase, State, banded_limbs, choices, say, turn
from conversations.words import session as words
from conversations.words.answers import unclear
from core.cuffs import (
    Colour,
    Compared,
    CuffCheck,
    Decision,
    Feeling,
    Limb,
    Look,
    Refill,
    SoFar,
    Step,
    Verdict,
    at_once,
    decide,
    failed,
    judge,
    refill_of,
    strictest,
)
from core.facts import BandsOn, CuffChecked, Noticed
from core.plans import Region
from core.safety.causes import Cause

QUIET = "quiet"  # why a spell of bands ended, stored
SAYS_ON = re.compile(r"\b(?:on|yes|yep|done|ready|loosened|ok(?:ay)?)\b", re.IGNORECASE)
LETTER = re.compile(r"(?:on:|\bband\s+)([A-Za-z])\b")
SAYS_NOT = re.compile(
    r"\b(?:not|no|off|isn'?t|aren'?t|can'?t|cannot|wait|hold on|later|yet|how|where|which|what)\b|\?",
    re.IGNORECASE,
)
BETWEEN = re.compile(r"\b\d{1,2}\s*(?:-|–|to|or)\s*(\d{1,2})\b")
TIGHTNESS = choices(words.TIGHTNESS_CHOICES)
FEELINGS = tuple(Choice(label, value) for value, label in words.FEELING_LABELS.items())
REFILLS = tuple(Choice(label, value.value) for value, label in words.REFILL_LABELS.items())


def ask(state: State) -> Say:
    """The open question of the check."""
    region = state.doing.region
    match state.phase:
        case Phase.FIT:
            text = words.BANDS_ON.format(
                name=state.name, place=words.PLACE[region], target=words.TARGET[region]
            )
            return say(
                text + _only(state) + _mark(state),
                f"on.{state.spell_id}",
                *_on_buttons(state),
                picture=f"fit_{region}",
            )
        case Phase.TIGHT:
            return say(words.TIGHTNESS, f"tight.{state.check_id}", *TIGHTNESS)
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
    return words.LIMBS[banded_limbs(state)[state.limb]]


def said(state: State, event: Said) -> Turn[State]:
    """An answer to the check's open question."""
    state = replace(state, asked_quiet_at=None)
    try:
        match state.phase:
            case Phase.FIT:
                _says_on(event.text)
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


def _letters(state: State) -> tuple[str, ...]:
    return state.brief.bands.get(state.doing.region, ())


def _on_buttons(state: State) -> tuple[Choice, ...]:
    """One button; with several bands to choose from, one for each."""
    letters = _letters(state)
    if len(letters) < 2:
        return (Choice(words.BANDS_ON_LABEL, "on"),)
    return tuple(Choice(words.BAND_ON_LABEL.format(letter=letter), f"on:{letter}") for letter in letters)


def _only(state: State) -> str:
    """On one limb only: which one."""
    limbs = banded_limbs(state)
    return f" {words.ONE_BAND.format(limb=words.LIMBS[limbs[0]].lower())}" if len(limbs) == 1 else ""


def _mark(state: State) -> str:
    """Where the band of last time is closed."""
    letter = state.brief.last_band.get(state.doing.region, "") or next(iter(_letters(state)), "")
    mark = state.brief.marks.get(letter, "")
    return f" {words.MARK.format(letter=letter, mark=mark)}" if mark else ""


def _band(state: State, text: str) -> str:
    """The letter of the band that is on: as said, else that of last time, else the only one."""
    letters = _letters(state)
    said = LETTER.search(text)
    if said is not None and said[1].upper() in letters:
        return said[1].upper()
    last = state.brief.last_band.get(state.doing.region, "")
    return last if last in letters else next(iter(letters), "")


def _says_on(text: str) -> None:
    """Anything that says that they are on, and nothing that doubts it. Raises `Unclear`."""
    if SAYS_NOT.search(text) or not SAYS_ON.search(text):
        raise Unclear(Why.NOT_AN_OPTION, options=(words.BANDS_ON_LABEL,))


def _on(state: State, event: Said) -> Turn[State]:
    if state.on_at is not None:  # a new fit without taking them off: the clock runs on
        state = replace(state, phase=Phase.TIGHT, limb=0, refills=())
        return turn(state, ask(state))
    state = replace(state, band=_band(state, event.text))
    limit_s = state.doing.limit_min * 60
    fact = BandsOn(event.at, state.brief.session, state.spell_id, state.doing.region, limit_s)
    state = replace(state, phase=Phase.TIGHT, on_at=event.at, limb=0, refills=())
    return turn(state, ask(state), effects=(Record(fact),))


def _tight(state: State, event: Said) -> Turn[State]:
    state = replace(state, tightness=_rated(event.text), limb=0, refills=())
    if (decided_now := _at_once(state, event)) is not None:
        return decided_now
    state = replace(state, phase=Phase.REFILL)
    return turn(state, ask(state))


def _rated(text: str) -> int:
    """0 to 10; of "8-9" the higher, the safe one. Raises `Unclear`."""
    try:
        return int(choice(text, TIGHTNESS))
    except Unclear:
        between = BETWEEN.search(text)
        return whole_number(text if between is None else between[1], 0, 10)


def _at_once(state: State, event: Said) -> Turn[State] | None:
    """What an answer decides by itself: bands that are far too tight come off now, not after the other questions."""
    checks = checks_of(state)
    decision = at_once(checks, so_far(state))
    if decision is None:
        return None
    facts = tuple(Record(_fact(state, event, check)) for check in checks)
    return decided(state, event.at, decision, facts)


def _refill(state: State, event: Said) -> Turn[State]:
    answer = _refill_answer(event.text)
    if answer == Refill.CANT_SEE:
        state = replace(state, phase=Phase.NAIL)
        return turn(state, ask(state))
    return _next_limb(state, event, answer)


def _refill_answer(text: str) -> str:
    """A button's value, a label typed, or seconds typed ("2.5")."""
    try:
        return choice(text, REFILLS)
    except Unclear:
        return f"s{seconds(text, 60)}"


def _nail(state: State, event: Said) -> Turn[State]:
    if state.doing.region is Region.LEGS:
        return _next_limb(state, event, choice(event.text, choices(words.WARM_LABELS)))
    answer = _refill_answer(event.text)
    if answer == Refill.CANT_SEE:
        raise Unclear(Why.NOT_AN_OPTION, options=tuple(words.REFILL_LABELS.values())[:3])
    return _next_limb(state, event, f"nail:{answer}")


def _next_limb(state: State, event: Said, answer: str) -> Turn[State]:
    state = replace(state, refills=(*state.refills, answer))
    if (decided_now := _at_once(state, event)) is not None:
        return decided_now
    if len(state.refills) < len(banded_limbs(state)):
        state = replace(state, limb=state.limb + 1, phase=Phase.REFILL)
    else:
        state = replace(state, phase=Phase.FEEL)
    return turn(state, ask(state))


def _feeling(state: State, event: Said) -> Turn[State]:
    felt = choice(event.text, FEELINGS)
    checks = checks_of(state, felt)
    facts = tuple(Record(_fact(state, event, check)) for check in checks)
    return decided(state, event.at, decide(checks, so_far(state)), facts)


def checks_of(state: State, felt: str = "") -> list[CuffCheck]:
    """What is known of each banded limb by now; `felt` "": the feeling was not asked yet."""
    answers = zip_longest(banded_limbs(state), state.refills, fillvalue="")
    return [check_of(state, Limb(limb), answer, felt) for limb, answer in answers]


def so_far(state: State) -> SoFar:
    snugged = state.refitted_loose or state.rechecked
    return SoFar(state.failed_checks, snugged, len(state.counted), state.brief.unseen_allowed)


def too_tight(state: State, event: TooTight) -> Turn[State]:
    """Said at any moment with bands on: it counts as a failed check. Off, 3 min, one new fit, looser."""
    fact = Record(Noticed(event.at, "too_tight", event.text))
    if state.on_at is None:
        return turn(state, Say(words.FIT_LOOSER), effects=(fact,))
    decision = failed(Verdict.STOP, ("far_too_tight",), so_far(state))
    return decided(replace(state, rest_until=None), event.at, decision, (fact,))


def check_of(state: State, limb: Limb, answer: str, felt: str) -> CuffCheck:
    """The answers about one limb as the rules want them. `answer`: a refill, "s2.5", "nail:...", or warmth; "": not asked."""
    colour = {"": None, "colour": Colour.BLUE}.get(felt, Colour.USUAL)
    feeling = {"": None, "tingling": Feeling.TINGLING, "pinching": Feeling.HURTS}.get(felt, Feeling.FINE)
    known = CuffCheck(
        limb,
        state.tightness,
        colour=colour,
        feeling=feeling,
        band=state.band,
        fitted_band=state.brief.last_band.get(state.doing.region, ""),
    )
    if not answer:
        return known
    if answer in ("same", "different"):
        return replace(known, refill=Refill.CANT_SEE, look=Look.COMPARED, compared=Compared(answer))
    seen = answer.removeprefix("nail:")
    look = Look.FINGERNAIL if answer.startswith("nail:") else known.first_look
    if seen.startswith("s"):
        return replace(known, refill=refill_of(float(seen[1:])), refill_s=float(seen[1:]), look=look)
    return replace(known, refill=Refill(seen), look=look)


def _fact(state: State, event: Said, check: CuffCheck) -> CuffChecked:
    findings = judge(check)
    return CuffChecked(
        event.at,
        state.brief.session,
        state.spell_id,
        state.check_no,
        check.limb.value,
        check.tightness,
        check.refill.value if check.refill else "",
        check.refill_s,
        check.colour.value if check.colour is Colour.BLUE else (check.feeling or ""),
        strictest(findings).value,
        ",".join(finding.because for finding in findings),
        check.band,
    )


def decided(state: State, at: datetime, decision: Decision, facts: tuple[Effect, ...]) -> Turn[State]:
    """What follows from the rules' decision about this fitting."""
    state = replace(state, failed_checks=decision.failed)
    match decision.step:
        case Step.GO:
            state = replace(state, loose=decision.loose or decision.holds_load)
            return passed(state, at, _right(decision), facts)
        case Step.SNUGGER:
            state = _check_again(replace(state, refitted_loose=True))
            return turn(state, _again(state, words.LOOSE_AGAIN), effects=facts)
        case Step.LOOSEN:
            state = _check_again(state)
            return turn(state, _again(state, words.LOOSEN, words.LOOSENED), effects=facts)
        case Step.FIT_AGAIN:
            state = replace(state, phase=Phase.OFF, after=After.REFIT, why="refit")
            return turn(state, off(state, _off_text(decision)), effects=facts)
        case Step.ASK_COACH:
            return _end(state, decision, Cause.UNSEEN_REFILL, words.ASK_COACH, facts)
        case Step.END:
            return _end(state, decision, Cause.CHECKS_FAILED, words.TWICE, facts)


def _right(decision: Decision) -> str:
    if decision.loose:
        return words.LOOSE_GO_ON
    if "another_band" in decision.because:
        return words.ANOTHER_BAND
    return words.SNUG_ARM if "snug_arms" in decision.because else words.RIGHT


def _end(state: State, decision: Decision, cause: Cause, told: str, facts: tuple[Effect, ...]) -> Turn[State]:
    state = replace(state, phase=Phase.OFF, after=After.END, why=cause.value)
    alert = Alert(cause, f"Band check: {', '.join(decision.because)}", told)
    return turn(state, off(state, f"{_off_text(decision)} {told}"), effects=(*facts, alert))


def _off_text(decision: Decision) -> str:
    return f"{words.OFF_NOW} {words.OFF_WHY.get(decision.because[0], '')}".strip()


def _check_again(state: State) -> State:
    return replace(state, phase=Phase.FIT, check_no=state.check_no + 1, limb=0, refills=(), tightness=None)


def _again(state: State, text: str, label: str = words.BANDS_ON_LABEL) -> Say:
    return say(text, f"on.{state.spell_id}", Choice(label, "on"))


def back(state: State) -> Turn[State]:
    """One question of the check back; the first one, and a check that is over, are only asked again."""
    match state.phase:
        case Phase.NAIL:
            state = replace(state, phase=Phase.REFILL)
        case Phase.REFILL if state.limb > 0:
            state = replace(state, limb=state.limb - 1, refills=state.refills[:-1])
        case Phase.REFILL:
            state = replace(state, phase=Phase.TIGHT, tightness=None)
        case Phase.FEEL:
            limb = len(banded_limbs(state)) - 1
            state = replace(state, phase=Phase.REFILL, limb=limb, refills=state.refills[:-1])
        case _:
            pass
    return turn(state, ask(state))


def went_quiet(state: State, now: datetime, asked: tuple[Say, ...]) -> Turn[State]:
    """Bands on and what was `asked` left open: ask again, then bands off and the coach."""
    if state.asked_quiet_at is None:
        return turn(replace(state, asked_quiet_at=now), Say(words.QUIET_CHECK), *asked)
    return no_answer(state, words.QUIET_SAID_BURN if state.phase is Phase.BURN else words.QUIET_SAID_CHECK)


def no_answer(state: State, said: str) -> Turn[State]:
    """Asked with bands on, and no answer: bands off, the session ends, the coach hears when it was."""
    state = replace(state, phase=Phase.OFF, why=QUIET, after=After.END)
    alert = Alert(Cause.QUIET_SET, said, words.QUIET_ALARM)
    return turn(state, off(state, words.QUIET_ALARM), effects=(alert,))


def off(state: State, text: str) -> Say:
    """Ask for the bands to come off."""
    return say(text, f"off.{state.spell_id}", Choice(words.BANDS_OFF_LABEL, "off"))


def passed(state: State, at: datetime, text: str, facts: tuple[Effect, ...]) -> Turn[State]:
    """The check is good: the first set, the walk, or on with the next set."""
    from conversations.session import sets  # a passed check leads into the sets, and set 1 may lead back

    began = sets.begin(state, at)
    return replace(began, replies=(Say(text), *began.replies), effects=facts + began.effects)
