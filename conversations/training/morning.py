"""The evening, the morning and two days after: all fine, or what it is and whom to ask. No answer is news, too.

An emergency ends the questions with what to do; all else is told first and then asked on.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import Unclear, Why, pick
from conversations.form import Form, Outcome, dialogue
from conversations.heard import RED_FLAGS, TEN, help_with, raised
from conversations.pain_said import pain_score
from conversations.protocol import Alert, Choice, Effect, Record, Said, Say
from conversations.stopwords import read
from conversations.stopwords.kinds import Kind
from conversations.training.getting_better import how_is_it
from conversations.training.morning_said import how_in_words
from conversations.training.morning_signs import TYPED_SIGNS, Draft, in_own_words, with_sign
from conversations.words import morning as words
from conversations.words import safety
from core.facts import Answered, Rated
from core.plans import PAIN_CEILING
from core.safety.aftercare import Route, Sign, lead_of, still_there
from core.safety.asking import NO_REPLY, Part
from core.safety.causes import Cause
from core.safety.pain import PainDay, PainStep, pain_step, with_later

PAIN_CAUSES = {PainStep.EASED: Cause.PAIN_EASED, PainStep.PAUSED: Cause.PAIN_PAUSED}


@dataclass(frozen=True, slots=True)
class Brief:
    """After which session; `day` names the part under which answers are kept.

    `pain_days`: pain of the sessions up to this one, oldest first. `joint`: there is one to look after. `stopped`: what
    was noticed that ended the session (a stored `Noticed.kind`), in the words `stopped_said`; "": nothing grave.
    """

    session: str
    day: Part = Part.MORNING
    pain_ceiling: int = PAIN_CEILING
    pain_days: tuple[PainDay, ...] = ()
    emergency_number: str = safety.ANY_NUMBER
    joint: bool = True
    stopped: str = ""
    stopped_said: str = ""


HOWS = tuple(Choice(label, value) for label, value in words.HOWS)
STOPS = tuple(Choice(label, value) for value, label in words.STOPPED_LABELS.items())
SORES = tuple(Choice(label, value) for label, value in words.SORES)
SIGNS = tuple(Choice(label, sign.value) for sign, label in words.WHATS.items())
NONE, OTHER = Choice(words.NONE, "none"), Choice(words.OTHER, "other")
TYPED_HOWS = (
    *(
        Choice(label, "fine")
        for label in ("fine", "good", "all good", "ok", "okay", "no", "none", "nothing", "no, all fine")
    ),
    *(Choice(label, "sore") for label in ("a bit sore", "a little sore", "bit sore", "very sore")),
    *(Choice(label, "else") for label in ("yes", "not sure", "other")),
)
TYPED_NONE = (*(Choice(label, "none") for label in ("none", "no", "nothing")), Choice("yes", "other"))


def emergency(draft: Draft) -> Sign | None:
    """The first sign that ends the questions with what to do."""
    return next((sign for sign in draft.signs if lead_of(sign).route is Route.EMERGENCY), None)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    match draft:
        case Draft(flagged=Kind()):
            return None
        case _ if emergency(draft) is not None:
            return None
        case Draft(stopped=None) if brief.stopped:
            return "stopped"
        case Draft(how=None):
            return "how"
        case Draft(how="sore", sore=None):
            return "sore"
        case Draft(how="sore" | "else", what=None):
            return "what"
        case Draft(what="other", other=None):
            return "other"
        case Draft(pain=None) if brief.joint:
            return "pain"
        case _:
            return None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words; what to do about the last answer comes before the next question."""
    match step:
        case "stopped":
            return Say(words.STOPPED.format(said=brief.stopped_said), STOPS)
        case "how":
            return _how(brief, draft)
        case "sore":
            return Say(words.SORE, SORES)
        case "what":
            left = tuple(sign for sign in SIGNS if sign.value not in draft.signs)
            return Say(_list_words(brief, draft), (*left, OTHER, NONE))
        case "other":
            return Say(words.OTHER_WHAT)
        case _:
            return Say(words.PAIN, TEN)


def _how(brief: Brief, draft: Draft) -> Say:
    """What to do about what stayed comes before the next question."""
    text = words.HOW[brief.day]
    stays = stays_cause(brief, draft)
    return Say(text if stays is None else f"{told(brief, stays)}\n{text}", HOWS)


def stays_cause(brief: Brief, draft: Draft) -> Cause | None:
    """Why the coach is told that what ended the session is still there; None: it is gone."""
    return None if draft.stopped in (None, "better") else still_there(brief.stopped)


def _list_words(brief: Brief, draft: Draft) -> str:
    if draft.signs:
        return f"{told(brief, cause_of(draft, draft.signs[-1]))}\n{words.WHAT_MORE}"
    if draft.sore == "far_more":
        return f"{told(brief, Cause.SORE)}\n{words.WHAT_ALONG}"
    return words.WHAT_ALONG if draft.how == "sore" else words.WHAT


def told(brief: Brief, cause: Cause) -> str:
    """What to do about it and whom to ask."""
    return safety.told(cause, brief.emergency_number)


def cause_of(draft: Draft, sign: Sign) -> Cause:
    """Why the coach is told of this sign, together with what was said before."""
    sore = (Sign.SORE_BEYOND,) if draft.sore == "far_more" else ()
    return lead_of(sign, (*sore, *draft.signs)).cause


def pain_cause(brief: Brief, draft: Draft) -> Cause | None:
    """What this pain means after the sessions before; None: accepted."""
    if draft.pain is None:
        return None
    last = brief.pain_days[-1] if brief.pain_days else PainDay(0)
    days = (*brief.pain_days[:-1], with_later(last, draft.pain, same_day=brief.day is Part.EVENING))
    return PAIN_CAUSES.get(pain_step(days, brief.pain_ceiling))


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer; a sign typed instead of one counts as that sign. Raises `Unclear`."""
    try:
        return _answered(replace(draft, latest=None), step, answer.text)
    except Unclear as problem:
        return in_own_words(replace(draft, latest=None), step, answer.text, problem)


def _answered(draft: Draft, step: str, text: str) -> Draft:
    match step:
        case "stopped":
            return replace(draft, stopped=_stopped(text), stopped_said=text)
        case "how":
            return replace(draft, how=how_in_words(text) or pick(text, HOWS, TYPED_HOWS))
        case "sore":
            return replace(draft, sore=pick(text, SORES))
        case "what":
            what = pick(text, (*SIGNS, OTHER, NONE), TYPED_NONE)
            return replace(draft, what=what) if what in ("none", "other") else with_sign(draft, Sign(what))
        case "other":
            if not text.strip() or read(text).kind in RED_FLAGS | TYPED_SIGNS.keys():
                raise Unclear(Why.EMPTY)
            return replace(draft, other=text.strip())
        case _:
            return replace(draft, pain=pain_score(text))


def _stopped(text: str) -> str:
    """A button, or words. Raises `Unclear`."""
    try:
        return pick(text, STOPS)
    except Unclear:
        return how_is_it(text)


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Facts at once; red flags to the coach in the same commit."""
    if draft.flagged is not None:
        return raised(draft.flagged, draft.said, answer.at, brief.emergency_number)
    if draft.latest is not None:
        said = words.WHATS[draft.latest] if answer.text == draft.latest.value else answer.text
        cause = cause_of(draft, draft.latest)
        return (_fact(brief, answer, draft.latest.value, "yes"), Alert(cause, said, told(brief, cause)))
    if step == "pain":
        fact = Record(Rated(answer.at, brief.session, "pain", brief.day, draft.pain or 0, "joint"))
        return (fact, *_alert(brief, draft, step))
    value = {
        "stopped": draft.stopped,
        "how": draft.how,
        "sore": draft.sore,
        "what": draft.what,
        "other": draft.other,
    }[step]
    return (_fact(brief, answer, step, str(value)), *_alert(brief, draft, step))


def _fact(brief: Brief, answer: Said, question: str, value: str) -> Effect:
    return Record(Answered(answer.at, brief.session, brief.day, question, value))


def _alert(brief: Brief, draft: Draft, step: str) -> tuple[Effect, ...]:
    cause: Cause | None = None
    match step:
        case "stopped":
            cause = stays_cause(brief, draft)
            now = words.STOPPED_LABELS.get(draft.stopped_said, draft.stopped_said)
            said = words.STAYS.format(said=brief.stopped_said, now=now)
        case "sore" if draft.sore == "far_more":
            cause, said = Cause.SORE, words.SORES[1][0]
        case "other" | "what" if draft.other is not None:
            cause, said = Cause.OTHER_AFTER, str(draft.other)
        case _:
            cause, said = pain_cause(brief, draft), words.PAIN_SAID.format(pain=draft.pain)
    return () if cause is None else (Alert(cause, said, told(brief, cause)),)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """What to do, or thanks."""
    if draft.flagged is not None:
        return Outcome((), (help_with(draft.flagged, draft.said, brief.emergency_number),))
    grave = emergency(draft)
    if grave is not None:
        return Outcome((Say(told(brief, cause_of(draft, grave))),))
    last = [told(brief, cause) for cause in _last_words(brief, draft)]
    return Outcome(tuple(Say(text) for text in last or [words.THANKS]))


def _last_words(brief: Brief, draft: Draft) -> list[Cause]:
    """What is said once more at the end, because the last thing read is the one that stays."""
    stays = stays_cause(brief, draft)
    said = [stays] if stays is not None else []
    said += [Cause.OTHER_AFTER] if draft.other is not None else []
    pain = pain_cause(brief, draft)
    said += [pain] if pain is not None else []
    if draft.signs:
        return [*said, cause_of(draft, draft.signs[0])]
    return [*said, Cause.SORE] if draft.sore == "far_more" else said


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """No reply: the coach's list of today, and no session before it. In the evening the morning asks again."""
    if brief.day is Part.EVENING:
        return Outcome()
    text = told(brief, Cause.NO_REPLY)
    return Outcome((Say(text),), (Alert(Cause.NO_REPLY, "-", text),))


# Asked at 21:00 at the latest: over when the morning asks the same, and not repeated just before it.
UNTIL_MORNING = timedelta(hours=11)
FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    hurry=lambda brief, draft: UNTIL_MORNING if brief.day is Part.EVENING else None,
    patience=timedelta(hours=3),
    lapse=NO_REPLY,
    lapsed=lapsed,
    cancelled=lapsed,
)
DIALOGUE = dialogue("morning", Brief, Draft, FORM)
