"""The very first talk: what this is and is not, consent, and what is needed if something goes wrong."""

from dataclasses import dataclass, replace
from datetime import datetime

from conversations.answers import Reply, Unclear, Why, choice, whole_number, yes_no
from conversations.dates import ZoneFound, ZonesPossible, read_zone
from conversations.form import YES_NO, Form, Outcome, buttons, dialogue, with_answer
from conversations.protocol import Begin, Choice, Do, Effect, Record, Said, Say
from conversations.words import consent as words
from core.facts import Agreed, Detail

VERSION = "v1"  # of the wording; stored with the consent
STEPS = (
    "agree",
    "age",
    "zone",
    "emergency_number",
    "phone",
    "address",
    "emergency_contact",
    "company",
    "helper",
)
MAY_SKIP = ("phone", "address", "emergency_contact")
LONGEST = 200


@dataclass(frozen=True, slots=True)
class Brief:
    """Who talks to whom."""

    client_name: str
    coach_name: str


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `zones`: what the typed place may be."""

    agree: str | None = None
    age: str | None = None
    zone: str | None = None
    emergency_number: str | None = None
    phone: str | None = None
    address: str | None = None
    emergency_contact: str | None = None
    company: str | None = None
    helper: str | None = None
    zones: tuple[str, ...] = ()


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question; none after "no"."""
    if draft.agree == "no":
        return None
    return next((step for step in STEPS if getattr(draft, step) is None), None)


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    text = words.ASK[step]
    match step:
        case "agree":
            return Say(text, YES_NO)
        case "zone" if draft.zones:
            return Say(words.WHICH_ZONE, tuple(Choice(zone.replace("_", " "), zone) for zone in draft.zones))
        case "company":
            return Say(text, tuple(Choice(label, value) for label, value in words.COMPANY))
        case "helper":
            return Say(text, buttons("No"))
        case _ if step in MAY_SKIP:
            return Say(text, buttons(words.SKIP))
        case _:
            return Say(text)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    match step:
        case "agree":
            return replace(draft, agree="yes" if yes_no(answer.text) is Reply.YES else "no")
        case "age":
            return replace(draft, age=str(whole_number(answer.text, 5, 110)))
        case "zone":
            return _zone(draft, answer.text)
        case "company":
            pairs = tuple(Choice(label, value) for label, value in words.COMPANY)
            return replace(
                draft,
                company=choice(answer.text, (*pairs, Choice("yes", "alone"), Choice("no", "with_somebody"))),
            )
        case _:
            return with_answer(draft, step, _words(answer.text))


def _words(text: str) -> str:
    plain = " ".join(text.split())[:LONGEST]
    if not plain:
        raise Unclear(Why.EMPTY)
    return "" if plain.lower() in ("skip", "no", "none") else plain


def _zone(draft: Draft, text: str) -> Draft:
    if text in draft.zones:
        return replace(draft, zone=text)
    match read_zone(text):
        case ZoneFound(zone):
            return replace(draft, zone=zone)
        case ZonesPossible(zones):
            return replace(draft, zones=tuple(zones))
        case _:
            raise Unclear(Why.NOT_AN_OPTION, options=("Lisbon", "Europe/Lisbon", "New York"))


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Nothing is stored before the yes; then each answer at once."""
    if step == "agree":
        return (Record(Agreed(answer.at, VERSION)),) if draft.agree == "yes" else ()
    value = getattr(draft, step)
    if value is None:
        return ()
    effects: tuple[Effect, ...] = (Record(Detail(answer.at, step, value)),)
    return (*effects, Do("moved_zone", {"zone": value})) if step == "zone" else effects


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """On to the screening, or a kind goodbye."""
    if draft.agree == "no":
        return Outcome((Say(words.DISAGREED),))
    return Outcome((), (Begin("screening"),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    opening=lambda brief: tuple(Say(text.format(coach=brief.coach_name)) for text in words.OPENING),
)
DIALOGUE = dialogue("consent", Brief, Draft, FORM)
