"""The coach sees the answers that mattered first and decides. "Do not start" cannot be overridden."""

from dataclasses import dataclass, replace
from datetime import UTC, datetime, time
from zoneinfo import ZoneInfo

from conversations.answers import Unclear, Why, choice
from conversations.dates import Dates, OneTime, read
from conversations.form import Form, Outcome, dialogue, with_answer
from conversations.protocol import Choice, Do, Record, Said, Say
from conversations.words import clearing as words
from conversations.words.screening import RULES
from core.facts import Cleared, CoachDid

REGIONS = {"cleared": ("arms", "legs"), "legs_only": ("legs",), "arms_only": ("arms",)}
LIMBS = {"arms": ("left_arm", "right_arm"), "legs": ("left_leg", "right_leg")}
LONGEST = 300


@dataclass(frozen=True, slots=True)
class Brief:
    """One client's finished screening. `findings`: rule names, strictest first; `closed`: limbs."""

    client: int
    client_name: str
    screening: str
    tier: str
    coach: int
    closed: tuple[str, ...] = ()
    findings: tuple[str, ...] = ()
    answers: tuple[tuple[str, str], ...] = ()
    zone: str = "UTC"


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `expiry`: ISO date."""

    decision: str | None = None
    clinician: str | None = None
    limits: str | None = None
    expiry: str | None = None
    note: str | None = None


def opens(brief: Brief, decision: str) -> tuple[str, ...]:
    """The regions a decision opens: those with at least one limb that no answer closed."""
    wanted = REGIONS.get(decision, ())
    return tuple(region for region in wanted if any(limb not in brief.closed for limb in LIMBS[region]))


def decisions(brief: Brief) -> tuple[Choice, ...]:
    """What may be decided. Nothing opens "do not start"; a closed region cannot be opened."""
    allowed = [name for name in REGIONS if opens(brief, name) == REGIONS[name]]
    if brief.tier == "do_not_start":
        allowed = []
    return tuple(Choice(words.DECISIONS[name], name) for name in (*allowed, "held", "declined"))


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.decision is None:
        return "decision"
    if brief.tier == "clinician_first" and opens(brief, draft.decision):
        for step in ("clinician", "limits", "expiry"):
            if getattr(draft, step) is None:
                return step
    return "note" if draft.note is None else None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step:
        case "decision":
            return Say(words.DECIDE.format(name=brief.client_name), decisions(brief))
        case "clinician":
            return Say(words.CLINICIAN)
        case "limits":
            return Say(words.LIMITS)
        case "expiry":
            return Say(words.EXPIRY)
        case _:
            return Say(words.NOTE, (Choice(words.NO_NOTE, "-"),))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    match step:
        case "decision":
            return replace(draft, decision=choice(answer.text, decisions(brief)))
        case "expiry":
            return replace(draft, expiry=_day(brief, answer))
        case _:
            plain = " ".join(answer.text.split())[:LONGEST]
            if not plain:
                raise Unclear(Why.EMPTY)
            return with_answer(draft, step, "" if step == "note" and plain in ("-", words.NO_NOTE) else plain)


def _day(brief: Brief, answer: Said) -> str:
    match read(answer.text, answer.at, brief.zone):
        case OneTime(once):
            day = once.at.astimezone(ZoneInfo(brief.zone)).date() if once.at.tzinfo else once.at.date()
        case Dates(span):
            day = span.first
        case _:
            raise Unclear(Why.NOT_AN_OPTION, options=("30 June 2027",))
    if day <= answer.at.date():
        raise Unclear(Why.NOT_AN_OPTION, options=("a day to come",))
    return day.isoformat()


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The decision is on record, with who, when and on which answers."""
    assert draft.decision is not None, "the decision is asked first"
    regions = ",".join(opens(brief, draft.decision))
    until = None
    if draft.expiry is not None:
        until = datetime.combine(
            datetime.fromisoformat(draft.expiry).date(), time(), ZoneInfo(brief.zone)
        ).astimezone(UTC)
    parts = (
        draft.note,
        draft.clinician and f"clinician: {draft.clinician}",
        draft.limits and f"limits: {draft.limits}",
    )
    note = "; ".join(part for part in parts if part)
    fact = Cleared(at, brief.screening, draft.decision, regions, brief.coach, until, note)
    did = CoachDid(at, brief.coach, f"decided_{draft.decision}", note)
    act = Do("cleared", {"client": brief.client, "regions": regions, "decision": draft.decision})
    label = words.DECISIONS[draft.decision].lower()
    said = Say(words.DONE.format(name=brief.client_name, decision=label))
    return Outcome((said,), (Record(fact, brief.client), Record(did, brief.client), act))


def _matters(name: str, said: str) -> bool:
    return said not in ("no", "") and name not in words.PLAIN_FACTS


def opening(brief: Brief) -> tuple[Say, ...]:
    """The answers that mattered, the strictest first."""
    closed = ", ".join(limb.replace("_", " ") for limb in brief.closed)
    findings = (
        "\n".join(f"- {RULES.get(rule, rule.replace('_', ' '))}" for rule in brief.findings) or words.NOTHING
    )
    mattered = "; ".join(
        f"{name.replace('_', ' ')}: {said}" for name, said in brief.answers if _matters(name, said)
    )
    text = words.OPENING.format(
        name=brief.client_name,
        tier=words.TIERS.get(brief.tier, brief.tier),
        closed=words.CLOSED.format(limbs=closed) if closed else "",
        findings=findings,
    )
    return (Say(f"{text}\n{words.ANSWERS.format(answers=mattered)}" if mattered else text),)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(), missing=missing, ask=ask, fill=fill, finish=finish, opening=opening
)
DIALOGUE = dialogue("clearing", Brief, Draft, FORM)
