"""The very first talk: what this is and is not, consent, and what is needed if something goes wrong."""

from dataclasses import dataclass, replace
from datetime import datetime

from conversations.answers import Reply, Unclear, Why, pick, whole_number, yes_no
from conversations.client import reached
from conversations.dates import ZoneFound, ZoneNotFound, ZonesPossible, read_zone
from conversations.dates.nearby import near
from conversations.form import YES_NO, Form, Outcome, buttons, dialogue, with_answer
from conversations.protocol import Begin, Choice, Do, Effect, Media, Record, Said, Say, Sent
from conversations.words import consent as words
from conversations.words.dates import zone_name
from core.facts import Agreed, Detail

VERSION = "v1"  # of the wording; stored with the consent
ADULT = 18  # years; below, a guardian agrees, too
AGES = (5, 110)  # years; plausible people
STEPS = (
    "agree",
    "age",
    "guardian",
    "zone",
    "emergency_number",
    "phone",
    "address",
    "emergency_contact",
    "company",
    "helper",
)
MAY_SKIP = ("phone", "address", "emergency_contact")


@dataclass(frozen=True, slots=True)
class Brief:
    """Who talks to whom."""

    client_name: str
    coach_name: str
    zone: str = ""  # the practice's own, offered where a place is not known


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `zones`: what the typed place may be; `lost`: it was not found.

    `kept`: something is stored already. `helped`: somebody types, their name is missing.
    """

    agree: str | None = None
    age: str | None = None
    guardian: str | None = None
    zone: str | None = None
    emergency_number: str | None = None
    phone: str | None = None
    address: str | None = None
    emergency_contact: str | None = None
    company: str | None = None
    helper: str | None = None
    zones: tuple[str, ...] = ()
    lost: bool = False
    kept: bool = False
    helped: bool = False
    to_ring: str = ""  # the name of whom to ring, where it came without a number

    @property
    def under_age(self) -> bool:
        """Under 18."""
        return self.age is not None and int(self.age) < ADULT


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question; none after a "no" of the client or of the guardian."""
    if "no" in (draft.agree, draft.guardian):
        return None
    wanted = (step for step in STEPS if step != "guardian" or draft.under_age)
    return next((step for step in wanted if getattr(draft, step) is None), None)


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    text = words.ASK[step]
    match step:
        case "agree" | "guardian":
            return Say(text, YES_NO)
        case "zone" if draft.zones:
            return Say(words.WHICH_ZONE, tuple(Choice(zone_name(zone), zone) for zone in draft.zones))
        case "zone" if draft.lost:
            return Say(words.NO_SUCH_PLACE, _as_coach(brief))
        case "emergency_number" if draft.zone is not None:  # a place is said back, as names are shared
            return Say(words.GO_BY.format(zone=zone_name(draft.zone), question=text))
        case "company":
            return Say(text, tuple(Choice(label, value) for label, value in words.COMPANY))
        case "emergency_contact" if draft.to_ring:
            return Say(words.CONTACT_NUMBER.format(name=draft.to_ring), buttons(words.SKIP))
        case "helper":
            return Say(words.HELPER_NAME if draft.helped else text, buttons("No"))
        case _ if step in MAY_SKIP:
            return Say(text, buttons(words.SKIP))
        case _:
            return Say(text)


def _as_coach(brief: Brief) -> tuple[Choice, ...]:
    """A way on for whoever lives where no place is known."""
    city = brief.zone.rpartition("/")[2].replace("_", " ")
    return (Choice(words.AS_COACH.format(city=city), brief.zone),) if city else ()


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    match step:
        case "agree":
            return replace(draft, agree=_agreed(answer.text))
        case "age":
            years = whole_number(answer.text, *AGES, also=("years", "year", "old"))
            return replace(draft, age=str(years), kept=draft.kept or years >= ADULT)
        case "guardian":
            said = _agreed(answer.text)
            return replace(draft, guardian=said, kept=draft.kept or said == "yes")
        case "zone":
            return _zone(draft, _own_zone(brief, answer.text))
        case "company":
            pairs = tuple(Choice(label, value) for label, value in words.COMPANY)
            said = pick(answer.text, pairs, tuple(Choice(*one) for one in words.COMPANY_TYPED))
            return replace(draft, company="" if said == "skip" else said)
        case "emergency_number":
            return replace(draft, emergency_number=reached.number(answer.text))
        case "phone":
            return replace(draft, phone=reached.phone(answer.text))
        case "emergency_contact":
            return _contact(draft, reached.plain(answer.text))
        case "helper":
            return _helper(draft, answer.text)
        case _:
            return with_answer(draft, step, reached.plain(answer.text))


def _agreed(text: str) -> str:
    match yes_no(text):
        case Reply.YES:
            return "yes"
        case Reply.NO:
            return "no"
        case Reply.NOT_SURE:  # neither agreed nor refused
            raise Unclear(Why.NOT_AN_OPTION, options=[option.label for option in YES_NO])


def _contact(draft: Draft, said: str) -> Draft:
    """Whom to ring; a name alone cannot be rung, so its number is asked for once."""
    if said and not reached.has_figures(said) and not draft.to_ring:
        return replace(draft, to_ring=said)
    return replace(draft, emergency_contact=reached.whom_to_ring(draft.to_ring, said))


def _helper(draft: Draft, text: str) -> Draft:
    """Who types; a bare yes asks for the name."""
    try:
        reply = yes_no(text)
    except Unclear:
        return replace(draft, helper=reached.who_types(text))
    if reply is Reply.NO:
        return replace(draft, helper="")
    return replace(draft, helped=True)


def _own_zone(brief: Brief, text: str) -> str:
    """The button that was offered, typed: the zone that it stands for; else the words."""
    offered = {choice.label.casefold(): choice.value for choice in _as_coach(brief)}
    return offered.get(text.strip().casefold(), text)


def _zone(draft: Draft, text: str) -> Draft:
    if text in draft.zones:
        return replace(draft, zone=text)
    match read_zone(text.removesuffix(" time")):  # as it stands on the buttons
        case ZoneFound(zone):
            return replace(draft, zone=zone, zones=(), lost=False)
        case ZonesPossible(zones):
            return replace(draft, zone=None, zones=tuple(zones), lost=False)
        case ZoneNotFound():
            return replace(draft, zone=None, zones=(), lost=True)


def located(brief: Brief, draft: Draft, step: str, sent: Sent) -> Draft | None:
    """A shared location where the zone is asked for: the nearest ones to choose from."""
    zones = near(sent.file) if step == "zone" and sent.kind is Media.LOCATION else ()
    return replace(draft, zone=None, zones=zones, lost=False) if zones else None


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Nothing is stored before the yes, of an under-age client not before the guardian's; then at once."""
    match step:
        case "agree":
            return ()
        case "age":
            return () if draft.under_age else _agreement(draft, answer.at)
        case "guardian":
            return _agreement(draft, answer.at) if draft.guardian == "yes" else ()
        case _:
            return _detail(draft, step, answer.at)


def _detail(draft: Draft, step: str, at: datetime) -> tuple[Effect, ...]:
    value = getattr(draft, step)
    if value is None:
        return ()
    effects: tuple[Effect, ...] = (Record(Detail(at, step, value)),)
    return (*effects, Do("moved_zone", {"zone": value})) if step == "zone" else effects


def _agreement(draft: Draft, at: datetime) -> tuple[Effect, ...]:
    """The yes with the age, and the guardian's where one was asked."""
    known = (("age", draft.age), ("guardian", draft.guardian))
    details = tuple(Record(Detail(at, name, value)) for name, value in known if value is not None)
    return (Record(Agreed(at, VERSION)), *details)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """On to the screening, or a kind goodbye of which the coach is told."""
    if "no" not in (draft.agree, draft.guardian):
        return Outcome((), (Begin("screening"),))
    if draft.kept:  # a yes that was taken back
        return _over(words.WITHDRAWN, "withdrawn")
    if draft.agree == "no":
        return _over(words.DISAGREED, "refused")
    return _over(words.GUARDIAN_FIRST, "guardian")


def cancelled(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Left before the end: the next words lead back."""
    return _over(words.LEFT, "unfinished")


def _over(last: str, how: str) -> Outcome:
    """No consent, and how it came to that (a stored name of `words.WITHOUT`)."""
    return Outcome((Say(last),), (Do("without_consent", {"how": how}),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    media=located,
    cancelled=cancelled,
    opening=lambda brief: tuple(
        Say(text.format(name=brief.client_name, coach=brief.coach_name)) for text in words.OPENING
    ),
)
DIALOGUE = dialogue("consent", Brief, Draft, FORM)
