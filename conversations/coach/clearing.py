"""The coach sees the answers that mattered first and decides. "Do not start" cannot be overridden."""

import re
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from conversations.answers import Unclear, Why, person_name, pick
from conversations.coach import holding
from conversations.coach.screened import all_answers, mattered, rest, short
from conversations.dates import OneTime, read
from conversations.form import Form, Outcome, dialogue, with_answer
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import clearing as words
from conversations.words.screening import REFUSALS, in_words
from core.calendar.zones import instant
from core.cuffs.limbs import PAIRS, Limb, opened, places_of
from core.facts import Cleared, CoachDid
from core.screening import Refusal, Tier, restrictions

REGIONS = {"cleared": ("arms", "legs"), "legs_only": ("legs",), "arms_only": ("arms",)}
LONGEST = 300
ALL = Choice(words.ALL_ANSWERS, "all_answers")
AGAIN = Choice(words.ASK_AGAIN, "asked_again")
WITH_YEAR = re.compile(r"\b20[0-9]{2}\b")
A_YEAR_BACK = timedelta(days=364)  # less than any year, so that today's date is not read as a year ago


@dataclass(frozen=True, slots=True)
class Brief:
    """One client's finished screening. `findings`: rule names, strictest first; `closed`: limbs.

    `decided`: the decision so far in words, by whom, when and on which answers; "": none.
    """

    client: int
    client_name: str
    screening: str
    tier: str
    coach: int
    closed: tuple[str, ...] = ()
    findings: tuple[str, ...] = ()
    answers: tuple[tuple[str, str], ...] = ()
    zone: str = "UTC"
    decided: str = ""
    age: str = ""  # years, as told at the very beginning


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `said_on`, `expiry`: ISO dates. `all_shown`: every answer was asked for.

    `hold`: the ISO date on which the coach is asked again, or "open". `readings`: what the typed days may mean.
    """

    decision: str | None = None
    clinician: str | None = None
    said_on: str | None = None
    limits: str | None = None
    expiry: str | None = None
    note: str | None = None
    all_shown: bool = False
    hold: str | None = None
    readings: tuple[str, ...] = ()


def opens(brief: Brief, decision: str) -> tuple[str, ...]:
    """What a decision opens, as stored: a pair by its region, else single limbs. A closed limb stays closed."""
    closed = {Limb(name) for name in brief.closed}
    return places_of(opened(REGIONS.get(decision, ())) - closed)


def decisions(brief: Brief) -> tuple[Choice, ...]:
    """What may be decided. Nothing opens "do not start"; two choices never open the same."""
    allowed = {opens(brief, name): name for name in REGIONS if opens(brief, name)}
    names = [] if brief.tier == Tier.DO_NOT_START else list(allowed.values())
    return tuple(Choice(label(brief, name), name) for name in (*names, "held", "declined"))


def label(brief: Brief, decision: str) -> str:
    """What a decision is called for this client: "Legs only", or "Right arm only" where the left is closed."""
    places = opens(brief, decision)
    if places == REGIONS.get(decision, ()):
        return words.DECISIONS[decision]
    text = words.CLEAR_SOME if decision == "cleared" else words.ONLY
    shown = text.format(places=in_words(places))
    return shown[:1].upper() + shown[1:]


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.decision is None:
        return "decision"
    if brief.tier == Tier.CLINICIAN_FIRST and opens(brief, draft.decision):
        for step in ("clinician", "said_on", "limits", "expiry"):
            if getattr(draft, step) is None:
                return step
    if draft.decision == "held" and draft.hold is None:
        return "hold"
    return "note" if draft.note is None else None


def needs_note(brief: Brief, draft: Draft) -> bool:
    """Whoever opens more than a clear screening says why."""
    return brief.tier != Tier.CLEAR and bool(opens(brief, draft.decision or ""))


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step:
        case "decision":
            return _ask_decision(brief, draft)
        case "clinician":
            return Say(words.CLINICIAN)
        case "said_on":
            return Say(words.SAID_ON)
        case "limits":
            return Say(words.LIMITS)
        case "expiry":
            return Say(words.EXPIRY)
        case "hold":
            return holding.question(brief.client_name, draft.readings)
        case _ if needs_note(brief, draft):
            return Say(REFUSALS[Refusal.NEEDS_NOTE])
        case _:
            return Say(words.NOTE, (Choice(words.NO_NOTE, "-"),))


def _ask_decision(brief: Brief, draft: Draft) -> Say:
    """The decision, under all answers where the coach asked for them."""
    question = words.DECIDE.format(name=brief.client_name)
    if draft.all_shown:
        shown = f"{all_answers(brief.client_name, brief.answers)}\n\n{question}"
        return Say(shown, (*decisions(brief), AGAIN))
    return Say(question, (*decisions(brief), AGAIN, *([ALL] if brief.answers else [])))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer; one that does not fit stays open and is asked again. Raises `Unclear`."""
    plain = " ".join(answer.text.split())[:LONGEST]
    match step:
        case "decision":
            offered = decisions(brief)
            usual = tuple(Choice(words.DECISIONS[one.value].lower(), one.value) for one in offered)
            said = pick(answer.text, (*offered, AGAIN, ALL), usual)
            return replace(draft, all_shown=True) if said == ALL.value else replace(draft, decision=said)
        case "said_on":
            return replace(draft, said_on=_or_unclear(_day_past(brief, answer), answer.text))
        case "expiry":
            return replace(draft, expiry=_or_unclear(_day_to_come(brief, answer), answer.text))
        case "clinician":
            return replace(draft, clinician=person_name(answer.text, LONGEST))
        case "limits" if not any(sign.isalnum() for sign in plain):
            raise Unclear(Why.NO_REASON)
        case "hold":
            return _held(brief, draft, answer)
        case "note" if plain.lower() in words.WITHOUT_NOTE:
            return replace(draft, note=None if needs_note(brief, draft) else "")
        case _:
            return with_answer(draft, step, plain or None)


def _held(brief: Brief, draft: Draft, answer: Said) -> Draft:
    """Until a day after today, or until the coach says. Raises `Unclear`."""
    found = holding.day_or_readings(answer.text, draft.readings, answer.at, brief.zone)
    return replace(draft, hold=found.hold, readings=found.readings)


def _or_unclear(day: str | None, text: str) -> str:
    """The day. Raises `Unclear`, which says why it is asked for again."""
    if day is None:
        raise Unclear(Why.WRONG_DAY if WITH_YEAR.search(text) else Why.NO_YEAR)
    return day


def _today(brief: Brief, answer: Said) -> date:
    return answer.at.astimezone(ZoneInfo(brief.zone)).date()


def _day_past(brief: Brief, answer: Said) -> str | None:
    """Today or a day of the last year, ISO; None: anything else."""
    today = _today(brief, answer)
    if answer.text.strip().lower() == "today":
        return today.isoformat()
    day = _day(brief, answer.text, answer.at - A_YEAR_BACK)
    return day.isoformat() if day is not None and day <= today else None


def _day_to_come(brief: Brief, answer: Said) -> str | None:
    """A day after today, ISO; None: anything else."""
    day = _day(brief, answer.text, answer.at)
    return day.isoformat() if day is not None and day > _today(brief, answer) else None


def _day(brief: Brief, text: str, after: datetime) -> date | None:
    """A day with its year, within the year after `after`. Noon, since a bare day is no time to `read`."""
    if not WITH_YEAR.search(text):
        return None
    match read(f"{text} at 12:00", after, brief.zone):
        case OneTime(once):
            return once.at.date()
        case _:
            return None


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The decision is on record, with who, when and on which answers."""
    assert draft.decision is not None, "the decision is asked first"
    if draft.decision == AGAIN.value:
        return _asked_again(brief, draft.note or "", at)
    regions = ",".join(opens(brief, draft.decision))
    until = None
    if draft.expiry is not None:
        until = instant(date.fromisoformat(draft.expiry), time(), brief.zone)
    # The hold itself has no end: on that day the coach decides.
    hold = draft.hold if draft.hold != holding.OPEN else None
    parts = (
        draft.note,
        draft.clinician and f"clinician: {draft.clinician}, {draft.said_on}",
        draft.limits and f"limits: {draft.limits}",
        hold and holding.shown(hold),
    )
    note = "; ".join(part for part in parts if part)
    limits = ",".join(restrictions(brief.findings)) if regions else ""
    fact = Cleared(at, brief.screening, draft.decision, regions, brief.coach, until, note, limits)
    did = CoachDid(at, brief.coach, f"decided_{draft.decision}", note)
    about = {"client": brief.client, "regions": regions, "decision": draft.decision}
    act = Do("cleared", about | ({"hold": hold} if hold else {}))
    called = label(brief, draft.decision).lower()
    said = Say(words.DONE.format(name=brief.client_name, decision=called))
    return Outcome((said,), (Record(fact, brief.client), Record(did, brief.client), act))


def _one_side(closed: set[Limb]) -> bool:
    """Whether an open limb's other side is closed."""
    return any(len(pair & closed) == 1 for pair in PAIRS.values())


def _asked_again(brief: Brief, note: str, at: datetime) -> Outcome:
    """No decision: a button that slipped must not keep somebody out for ever, and nobody overrides an answer."""
    did = CoachDid(at, brief.coach, AGAIN.value, note)
    act = Do("asked_again", {"client": brief.client})
    said = Say(words.ASKED_AGAIN.format(name=brief.client_name))
    return Outcome((said,), (Record(did, brief.client), act))


def opening(brief: Brief) -> tuple[Say, ...]:
    """The answers that mattered, the strictest first, each with its rule and source; who decided before."""
    limbs = {Limb(name) for name in brief.closed}
    closed = words.CLOSED.format(limbs=in_words(places_of(limbs))) if limbs else ""
    forbidden = "".join(f" {words.FORBIDS[one]}" for one in restrictions(brief.findings))
    also = rest(brief.findings, brief.answers)
    text = words.OPENING.format(
        name=brief.client_name,
        tier=words.TIERS.get(brief.tier, brief.tier),
        closed=closed + (words.OTHER_SIDE if _one_side(limbs) else "") + forbidden,
        short=short(brief.age, brief.answers),
        findings=mattered(brief.findings, brief.answers),
    )
    lines = [text, words.ANSWERS.format(answers=also) if also else "", brief.decided]
    shown = Say("\n".join(line for line in lines if line))
    return (shown, Say(REFUSALS[Refusal.NO_OVERRIDE])) if brief.tier == Tier.DO_NOT_START else (shown,)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(), missing=missing, ask=ask, fill=fill, finish=finish, opening=opening
)
DIALOGUE = dialogue("clearing", Brief, Draft, FORM)
