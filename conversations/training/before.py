"""The questions before the bands go on. Anything that does not fit today ends here, kindly."""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from conversations import health_news, heard
from conversations.answers import Unclear, Why, pick
from conversations.form import YES_NO_NOT_SURE, Form, Outcome, dialogue, with_answer
from conversations.heard import DOUBT, TEN
from conversations.pain_said import pain_score
from conversations.prose import is_prose
from conversations.protocol import Alert, Begin, Choice, Effect, Record, Said, Say
from conversations.stopwords.kinds import Kind
from conversations.words import before as words
from conversations.words import safety
from conversations.words.screening import LIMBS
from core.facts import Answered, Rated, SessionEnded
from core.plans import PAIN_CEILING
from core.safety.causes import Cause
from core.screening import Due
from core.screening.before import WHEN_YES, YES, Route, Today

MOST_DRILLS = 3  # tries in one day; own caution, no source


@dataclass(frozen=True, slots=True)
class Brief:
    """Which session; up to which pain is trained (0-10); what needs asking.

    `number` counts the client's sessions from 1. `first_lines` are shown before the first question.
    `limbs`: where today's bands sit, as stored names of pairs or single limbs. `movements`: what is done today;
    `helper`: who types for the client, "": nobody.
    """

    session: str
    number: int
    plan_name: str = ""
    movements: tuple[str, ...] = ()
    helper: str = ""
    pain_ceiling: int = PAIN_CEILING
    first_lines: tuple[str, ...] = ()
    drill_done: bool = False
    limbs: tuple[str, ...] = ()
    sound_check: bool = True
    emergency_number: str = safety.ANY_NUMBER
    about: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `flagged`: a red flag was typed in between, as `said`."""

    news: str | None = None
    news_what: str | None = None
    today: str | None = None
    which: str | None = None
    pain: int | None = None
    heavy: str | None = None
    drill: str | None = None
    drills: int = 0
    sound: str | None = None
    unheard: int = 0
    warm: str | None = None
    flagged: Kind | None = None
    said: str = ""


WHICH = tuple(Choice(label, value) for label, value in words.WHICH)
DRILLS = ((words.DRILL, "done"), (words.DRILL_SLOW, "slow"), (words.DRILL_STUCK, "stuck"))
DRILL = tuple(Choice(label, value) for label, value in DRILLS)
SOUND = (Choice(words.HEARD, "done"), Choice(words.NOT_HEARD, "unheard"))
WARM = (Choice(words.WARM, "done"),)
# "ok" or "yes" does not say how fast it went.
DRILL_TYPED = (
    *(
        Choice(label, "done")
        for label in ("under 10", "under 10 seconds", "under ten seconds", "fast", "quick")
    ),
    *(Choice(label, "slow") for label in ("slow", "too slow", "longer", "over 10", "more than 10")),
    *(Choice(label, "stuck") for label in ("stuck", "can't", "cannot", "no")),
)
TYPED = tuple(Choice(label, "done") for label in ("done", "ok", "okay", "yes", "heard", "ready", "finished"))


def against(brief: Brief, draft: Draft) -> Cause | None:
    """What speaks against training today; None: nothing so far."""
    route = route_of(draft)
    if draft.news in DOUBT or route in (Route.COACH_FIRST, Route.SCREEN_AGAIN):
        return Cause.TODAY_CHANGED
    if route is Route.NOT_TODAY:
        return Cause.UNWELL
    if draft.pain is not None and draft.pain > brief.pain_ceiling:
        return Cause.PAIN_BEFORE
    return Cause.DRILL_FAILED if draft.drill == "failed" else None


def route_of(draft: Draft) -> Route:
    """What the thing named for today means for this session."""
    if draft.which in (None, "none"):
        return Route.GO
    return Route.NOT_TODAY if draft.which == "unwell" else WHEN_YES[Today(draft.which)][0]


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question; none once something speaks against it, but for what is new."""
    if draft.flagged is not None:
        return None
    if draft.news in DOUBT and draft.news_what is None:
        return "news_what"
    if against(brief, draft) is not None:
        return None
    return next((step for step in _steps(brief, draft) if getattr(draft, step) is None), None)


def _steps(brief: Brief, draft: Draft) -> Iterator[str]:
    yield from ("news", "today")
    if draft.today in DOUBT:
        yield "which"
    yield from ("pain", "heavy")
    if not brief.drill_done:
        yield "drill"
    if brief.sound_check:
        yield "sound"
    yield "warm"


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    text = asked(brief, step)
    match step:
        case "news_what":
            return Say(text)
        case "which":
            return Say(text, WHICH)
        case "pain":
            return Say(text, TEN)
        case "drill":
            return Say(_drill(brief, draft), DRILL)
        case "sound":
            return Say(words.SOUND_AGAIN if draft.unheard else text, SOUND)
        case "warm":
            return Say(text, WARM)
        case _:
            return Say(text, YES_NO_NOT_SURE)


def asked(brief: Brief, step: str) -> str:
    """The question's words; before the very first session there was no last time."""
    return words.NEWS_FIRST if step == "news" and brief.number == 1 else words.ASK[step]


def _drill(brief: Brief, draft: Draft) -> str:
    """On a pair where there is one, else on the one limb that wears a band: never on a closed one."""
    pair = next((place for place in ("legs", "arms") if place in brief.limbs), None)
    single = next(iter(brief.limbs), None) if pair is None else None
    where = words.DRILL_ONE.format(limb=LIMBS[single]) if single else words.DRILL_PAIR[pair or ""]
    return (words.DRILL_AGAIN if draft.drills else words.ASK["drill"]).format(where=where)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer; a red flag instead of one ends the questions, a fall is something new. Raises `Unclear`."""
    if heard.red_flag(answer.text) is None and (heard.hurt_lately(answer.text) or _is_news(step, answer)):
        return replace(draft, news=YES, news_what=answer.text)
    return heard.or_flagged(draft, answer.text, lambda: _answered(draft, step, answer.text))


def _is_news(step: str, answer: Said) -> bool:
    """Whether health news was typed whatever was asked; "possibly pregnant" under `which` is that question's answer."""
    return step != "which" and is_prose(answer.text) and health_news.told(answer.text)


def _answered(draft: Draft, step: str, text: str) -> Draft:
    match step:
        case "news_what":
            return replace(draft, news_what=_line(text))
        case "which":
            return replace(draft, which=pick(text, WHICH))
        case "pain":
            return replace(draft, pain=pain_score(text))
        case "drill":
            return _drilled(draft, pick(text, DRILL, DRILL_TYPED))
        case "sound":
            done = pick(text, SOUND, (*TYPED, Choice("no", "unheard"))) == "done"
            return replace(draft, sound="done") if done else replace(draft, unheard=draft.unheard + 1)
        case "warm":
            return replace(draft, warm=pick(text, WARM, TYPED))
        case _:
            return with_answer(draft, step, heard.yes_no_not_sure(text))


def _line(text: str) -> str:
    if not text.strip() or heard.red_flag(text) is not None:
        raise Unclear(Why.EMPTY)
    return text.strip()


def _drilled(draft: Draft, how: str) -> Draft:
    """Too slow is tried again; stuck, or too slow too often, is no training today."""
    tries = draft.drills + 1
    if how == "done":
        return replace(draft, drill="done", drills=tries)
    failed = how == "stuck" or tries >= MOST_DRILLS
    return replace(draft, drill="failed" if failed else None, drills=tries)


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Each answer is a fact at once; what speaks against training goes to the coach."""
    if draft.flagged is not None:
        return heard.raised(draft.flagged, draft.said, answer.at, brief.emergency_number)
    facts = _facts(brief, draft, step, answer.at)
    cause = against(brief, draft)
    if cause is None or missing(brief, draft) is not None:
        return facts
    return (*facts, Alert(cause, _said(brief, draft, step), told(brief, cause)))


def _said(brief: Brief, draft: Draft, step: str) -> str:
    """What the coach reads: the question and its answer; of the drill only how it went."""
    if step == "drill":
        return words.DRILL_STUCK_SAID if draft.drills < MOST_DRILLS else words.DRILL_SLOW_SAID
    return f"{asked(brief, step)} {_shown(draft, step)}"


def _facts(brief: Brief, draft: Draft, step: str, at: datetime) -> tuple[Effect, ...]:
    value = getattr(draft, step)
    if value is None:  # a drill too slow, a sound not heard: it is asked again
        return ()
    # "drill" on record means that it was done once and is never asked again.
    question = "drill_failed" if value == "failed" else step
    facts: tuple[Effect, ...] = (Record(Answered(at, brief.session, "before", question, str(value))),)
    if step == "pain" and draft.pain is not None:
        return (*facts, Record(Rated(at, brief.session, "pain", "before", draft.pain, "joint")))
    return facts


def _shown(draft: Draft, step: str) -> str:
    if step != "news_what" and draft.news_what is not None:
        return draft.news_what
    labels = {value: label for label, value in words.WHICH}
    value = str(getattr(draft, step))
    return labels.get(value, value.replace("_", " "))


def told(brief: Brief, cause: Cause) -> str:
    """What the client hears when something speaks against it."""
    return safety.told(cause, brief.emergency_number)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Into the session, or home."""
    ended = Record(SessionEnded(at, brief.session, "not_today"))
    if draft.flagged is not None:
        return Outcome((), (ended, heard.help_with(draft.flagged, draft.said, brief.emergency_number)))
    cause = against(brief, draft)
    if cause is None:
        lines = _lighter(draft)
        about = {"session": brief.session, **({"gentle": True} if lines else {})}
        return Outcome(tuple(Say(line) for line in lines), (Begin("session", about),))
    again = draft.news == YES or route_of(draft) is Route.SCREEN_AGAIN
    screening = (Begin("screening", {"due": Due.NEWS.value}),) if again else ()
    return Outcome((Say(told(brief, cause)),), (ended, *screening))


def _lighter(draft: Draft) -> list[str]:
    """Why this session is a gentle one; empty: it is not."""
    why = {words.GENTLE: route_of(draft) is Route.GENTLE, words.HEAVY: draft.heavy == "yes"}
    return [line for line, so in why.items() if so]


def _left(brief: Brief, draft: Draft, at: datetime, why: str, last: str) -> Outcome:
    """Left before the end. "Something is new" reaches the coach even when what it is was never said."""
    ended = Record(SessionEnded(at, brief.session, why))
    cause = against(brief, draft)
    if cause is None:
        return Outcome((Say(last),), (ended,))
    why_not = told(brief, cause)
    said = f"{asked(brief, 'news')} {_shown(draft, 'news')}"
    return Outcome((Say(why_not),), (ended, Alert(cause, said, why_not)))


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Nobody answered for three hours."""
    return _left(brief, draft, at, "lapsed", words.LAPSED)


def cancelled(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The client thinks better of it."""
    return _left(brief, draft, at, "cancelled", words.CANCELLED)


def opening(brief: Brief) -> tuple[Say, ...]:
    """What holds for the whole session, and the coach's lines."""
    today = ", ".join(brief.movements).lower() or brief.plan_name
    text = words.OPENING.format(number=brief.number, plan=f": {today}" if today else "")
    first = Say(text + (words.HELPER.format(helper=brief.helper) if brief.helper else ""))
    return (first, Say("\n".join(brief.first_lines))) if brief.first_lines else (first,)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    opening=opening,
    lapse=timedelta(hours=3),
    lapsed=lapsed,
    cancelled=cancelled,
)
DIALOGUE = dialogue("before", Brief, Draft, FORM, trains=True, exclusive=True)
