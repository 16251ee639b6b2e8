"""The morning after: all fine, or what it is and whom to ask. No answer is news for the coach, too.

An emergency ends the questions with what to do; all else is told first and then asked on.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import Unclear, Why
from conversations.form import Form, Outcome, dialogue
from conversations.heard import TEN, flag_or_ask_again, help_with, pick, raised, red_flag, score
from conversations.protocol import Alert, Choice, Effect, Record, Said, Say
from conversations.stopwords.kinds import Kind
from conversations.words import morning as words
from core.facts import Answered, Rated
from core.plans import PAIN_CEILING

EMERGENCIES = frozenset({"breathless", "one_sided_swelling", "fainted"})
TYPED_SIGNS = {Kind.URINE: "dark_urine", Kind.SWELLING: "one_sided_swelling", Kind.NERVE: "numb_next_day"}


@dataclass(frozen=True, slots=True)
class Brief:
    """After which session; `day` is "morning" or "48h" and names the part under which answers are kept."""

    session: str
    day: str = "morning"
    pain_ceiling: int = PAIN_CEILING
    emergency_number: str = "your local emergency number"


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `signs` so far; `what` "none" or "other" ends the list.

    `latest`: the sign of the last answer, "" when it was none. `flagged`: another red flag, typed as `said`.
    """

    how: str | None = None
    sore: str | None = None
    signs: tuple[str, ...] = ()
    what: str | None = None
    other: str | None = None
    pain: int | None = None
    latest: str = ""
    flagged: Kind | None = None
    said: str = ""


HOWS = tuple(Choice(label, value) for label, value in words.HOWS)
SORES = tuple(Choice(label, value) for label, value in words.SORES)
SIGNS = tuple(Choice(label, value) for label, value in words.WHATS)
NONE, OTHER = Choice(words.NONE, "none"), Choice(words.OTHER, "other")
LABELS = {sign.value: sign.label for sign in SIGNS}
TYPED_HOWS = (
    *(
        Choice(label, "fine")
        for label in ("fine", "good", "all good", "ok", "okay", "no", "nothing", "no, all fine")
    ),
    *(Choice(label, "sore") for label in ("a bit sore", "a little sore", "bit sore", "very sore")),
    *(Choice(label, "else") for label in ("yes", "not sure", "other")),
)
TYPED_NONE = (*(Choice(label, "none") for label in ("none", "no", "nothing")), Choice("yes", "other"))


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    match draft:
        case Draft(flagged=Kind()):
            return None
        case Draft(signs=signs) if EMERGENCIES & set(signs):
            return None
        case Draft(how=None):
            return "how"
        case Draft(how="sore", sore=None):
            return "sore"
        case Draft(how="sore" | "else", what=None):
            return "what"
        case Draft(what="other", other=None):
            return "other"
        case Draft(pain=None):
            return "pain"
        case _:
            return None


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words; what to do about the last answer comes before the next question."""
    match step:
        case "how":
            return Say(words.HOW.get(brief.day, words.HOW["morning"]), HOWS)
        case "sore":
            return Say(words.SORE, SORES)
        case "what":
            left = tuple(sign for sign in SIGNS if sign.value not in draft.signs)
            return Say(_list_words(brief, draft), (*left, OTHER, NONE))
        case "other":
            return Say(words.OTHER_WHAT)
        case _:
            return Say(words.PAIN, TEN)


def _list_words(brief: Brief, draft: Draft) -> str:
    if draft.signs:
        return f"{told(brief, draft.signs[-1])}\n{words.WHAT_MORE}"
    if draft.sore == "far_more":
        return f"{told(brief, 'sore_out_of_proportion')}\n{words.WHAT_ALONG}"
    return words.WHAT_ALONG if draft.how == "sore" else words.WHAT


def told(brief: Brief, cause: str) -> str:
    """What to do about it and whom to ask."""
    return words.TOLD[cause].format(number=brief.emergency_number)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer; a sign typed instead of one counts as that sign. Raises `Unclear`."""
    try:
        return _answered(replace(draft, latest=""), step, answer.text)
    except Unclear as problem:
        kind = flag_or_ask_again(answer.text, problem)
    if kind not in TYPED_SIGNS:
        return replace(draft, flagged=kind, said=answer.text)
    how = "sore" if draft.how == "sore" else "else"
    listed = replace(draft, how=how, sore=draft.sore or "ordinary", what=None)  # told, and the list goes on
    return _with_sign(listed, TYPED_SIGNS[kind])


def _answered(draft: Draft, step: str, text: str) -> Draft:
    match step:
        case "how":
            return replace(draft, how=pick(text, HOWS, TYPED_HOWS))
        case "sore":
            return replace(draft, sore=pick(text, SORES))
        case "what":
            what = pick(text, (*SIGNS, OTHER, NONE), TYPED_NONE)
            return _with_sign(draft, what) if what in LABELS else replace(draft, what=what)
        case "other":
            if not text.strip() or red_flag(text) is not None:
                raise Unclear(Why.EMPTY)
            return replace(draft, other=text.strip())
        case _:
            return replace(draft, pain=score(text))


def _with_sign(draft: Draft, sign: str) -> Draft:
    """A repeated sign is kept once, and comes last because it was just said."""
    signs = (*(one for one in draft.signs if one != sign), sign)
    return replace(draft, signs=signs, latest=sign)


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Facts at once; red flags to the coach in the same commit."""
    if draft.flagged is not None:
        return raised(draft.flagged, draft.said, answer.at, brief.emergency_number)
    if draft.latest:
        said = answer.text if red_flag(answer.text) else LABELS[draft.latest]
        return (
            _fact(brief, answer, draft.latest, "yes"),
            Alert(draft.latest, said, told(brief, draft.latest)),
        )
    if step == "pain":
        fact = Record(Rated(answer.at, brief.session, "pain", brief.day, draft.pain or 0, "joint"))
        return (fact, *_alert(brief, draft, step))
    value = {"how": draft.how, "sore": draft.sore, "what": draft.what, "other": draft.other}[step]
    return (_fact(brief, answer, step, str(value)), *_alert(brief, draft, step))


def _fact(brief: Brief, answer: Said, question: str, value: str) -> Effect:
    return Record(Answered(answer.at, brief.session, brief.day, question, value))


def _alert(brief: Brief, draft: Draft, step: str) -> tuple[Effect, ...]:
    match step:
        case "sore" if draft.sore == "far_more":
            cause, said = "sore_out_of_proportion", words.SORES[1][0]
        case "other":
            cause, said = "other_next_day", str(draft.other)
        case "pain" if (draft.pain or 0) > brief.pain_ceiling:
            cause, said = "pain_not_settled", f"Pain {draft.pain} of 10"
        case _:
            return ()
    return (Alert(cause, said, told(brief, cause)),)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """What to do, or thanks."""
    if draft.flagged is not None:
        return Outcome((), (help_with(draft.flagged, draft.said, brief.emergency_number),))
    if EMERGENCIES & set(draft.signs):
        return Outcome((Say(told(brief, next(one for one in draft.signs if one in EMERGENCIES))),))
    last = [told(brief, "other_next_day")] if draft.other is not None else []
    if (draft.pain or 0) > brief.pain_ceiling:
        last.append(told(brief, "pain_not_settled"))
    if draft.signs or draft.sore == "far_more":  # said once more, because it is the last thing to be read
        last.append(told(brief, draft.signs[0] if draft.signs else "sore_out_of_proportion"))
    return Outcome(tuple(Say(text) for text in last or [words.THANKS]))


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """No reply: the coach's list of today."""
    text = words.NO_REPLY.format(number=brief.emergency_number)
    return Outcome((Say(text),), (Alert("no_morning_reply", "-", text),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    patience=timedelta(hours=3),
    lapse=timedelta(hours=20),
    lapsed=lapsed,
    cancelled=lapsed,
)
DIALOGUE = dialogue("morning", Brief, Draft, FORM)
