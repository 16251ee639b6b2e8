"""The questions: what is meant, which of two readings, right so, and what about the usual limits."""

from dataclasses import replace
from datetime import date, datetime, timedelta

from conversations.answers import Unclear, Why, pick
from conversations.changing.meaning import by_day, meanings, order_matters
from conversations.changing.state import Brief, Draft, Meaning, Meanings
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Do, Effect, Record, Said, Say
from conversations.training import choosing_time, reminding
from conversations.words import changing as words
from conversations.words.planning import named
from conversations.words.travelling import TRAVEL
from core.calendar.limits import Limit
from core.facts import CalendarChanged, CoachDid, Detail

ORDERS = tuple(Choice(label, value) for label, value in words.ORDERS)
LEAVE = Choice(words.LEAVE, "leave")
NEITHER = Choice(words.NEITHER, "other")
SURE = (Choice(words.YES, "yes"), Choice(words.NO, "other"), LEAVE)
CLIENT_GO = (Choice(words.OTHER_TIME, "other"), Choice(words.ASK_COACH, "ask"), LEAVE)
COACH_GO = (Choice(words.ALL_THE_SAME, "go"), LEAVE)
LEAVES = tuple(Choice(label, "leave") for label in words.LEAVE_TYPED)
NO_MORE = tuple(Choice(label, "leave") for label in words.NO_MORE_TYPED)
TYPED = (
    *(Choice(label, "yes") for label in ("y", "ok", "okay", "right", "correct", "yes please", "yep", "sure")),
    *(Choice(label, "other") for label in ("no", "wrong", "n", "nope")),
    *LEAVES,
)
COACH_TYPED = (Choice("yes", "go"), Choice("ok", "go"), Choice("no", "leave"), *LEAVES)
CLIENT_TYPED = (*(Choice(label, "other") for label in ("wrong", "n", "nope")), *LEAVES)


def start(brief: Brief) -> Draft:
    """The words that began it are the first answer."""
    begun = brief.said or brief.move_to is not None
    return Draft(brief.said if begun else None, brief.said_at, pick=brief.picked or None)


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if "leave" in (draft.pick, draft.sure, draft.go):
        return None
    found = meanings(brief, draft)
    if order_matters(brief, draft):
        return "order"
    if not found.readings:
        return "said"
    if len(found.readings) > 1 and draft.pick is None:
        return "pick"
    return _to_confirm(brief, draft, chosen(found, draft))


def _to_confirm(brief: Brief, draft: Draft, meaning: Meaning) -> str | None:
    if meaning.still:
        return None
    if meaning.limit:
        if draft.go is None:
            return "go"
        return "note" if draft.go == "go" and draft.note is None else None
    return "sure" if draft.pick is None and draft.sure is None else None


def chosen(found: Meanings, draft: Draft) -> Meaning:
    """The reading that holds."""
    return found.readings[int(draft.pick) - 1 if draft.pick else 0]


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    found = meanings(brief, draft)
    match step:
        case "order":
            return Say(words.ORDER, (*ORDERS, LEAVE))
        case "said":
            return Say(found.problem or words.WHAT, (LEAVE,))
        case "pick":
            lines = "\n".join(f"{number}. {one.told}." for number, one in enumerate(found.readings, start=1))
            return Say(words.WHICH.format(readings=lines), (*_numbers(found), NEITHER, LEAVE))
        case "sure":
            return Say(words.RIGHT.format(told=found.readings[0].told), SURE)
        case "go":
            return _ask_to_go(brief, chosen(found, draft))
        case _:
            return Say(words.NOTE)


def _numbers(found: Meanings) -> tuple[Choice, ...]:
    return tuple(Choice(str(number), str(number)) for number in range(1, len(found.readings) + 1))


def _ask_to_go(brief: Brief, meaning: Meaning) -> Say:
    limit = named(words.LIMITS[Limit(meaning.limit)], brief.allowed)
    if not brief.by_coach:
        return Say(words.ADVISE_OTHER.format(told=meaning.told, limit=limit), CLIENT_GO)
    text = words.COACH_WISH if brief.wish else words.COACH_MAY
    return Say(text.format(name=brief.client_name, told=meaning.told, limit=limit), COACH_GO)


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer; at any question the whole may be said anew. Raises `Unclear`."""
    match step:
        case "note":
            return _note(draft, answer.text)
        case "said":
            return _said(draft, answer)
        case _:
            return _chosen(brief, draft, step, answer)


def _said(draft: Draft, answer: Said) -> Draft:
    try:
        return replace(draft, sure=pick(answer.text, (LEAVE,), (*LEAVES, *NO_MORE)))
    except Unclear:
        return Draft(answer.text, answer.at, draft.order)


def _note(draft: Draft, text: str) -> Draft:
    """The coach's reason, or not after all. Raises `Unclear` for what says nothing."""
    try:
        return replace(draft, go=pick(text, (LEAVE,), COACH_TYPED))
    except Unclear:
        if not any(sign.isalpha() for sign in text):
            raise Unclear(Why.NO_REASON) from None
    return replace(draft, note=text.strip())


def _chosen(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    try:
        value = pick(answer.text, *_options(brief, draft, step))
    except Unclear:
        anew = Draft(answer.text, answer.at, draft.order)
        if not meanings(brief, anew).readings:
            raise
        return anew
    if value == "other":
        return Draft(order=draft.order)
    return {
        "order": replace(draft, sure=value) if value == LEAVE.value else replace(draft, order=value),
        "pick": replace(draft, pick=value),
        "sure": replace(draft, sure=value),
        "go": replace(draft, go=value),
    }[step]


def _options(brief: Brief, draft: Draft, step: str) -> tuple[tuple[Choice, ...], tuple[Choice, ...]]:
    match step:
        case "order":
            return (*ORDERS, LEAVE), LEAVES
        case "pick":
            return (*_numbers(meanings(brief, draft)), NEITHER, LEAVE), LEAVES
        case "go":
            return (COACH_GO, COACH_TYPED) if brief.by_coach else (CLIENT_GO, CLIENT_TYPED)
        case _:
            return SURE, TYPED


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """Which way round dates are written is asked once."""
    if step != "order" or draft.order is None:
        return ()
    return (Record(Detail(answer.at, "date_order", draft.order)),)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """The new days are stored, the coach is asked, or all stays."""
    if "leave" in (draft.pick, draft.sure, draft.go):
        told = (Do("wish_declined", {"client": brief.client}),) if brief.wish else ()
        return Outcome((Say(words.LEFT),), (*told, *_asked_next_day(brief, at)))
    meaning = chosen(meanings(brief, draft), draft)
    if meaning.still:
        return Outcome((_nothing_changes(brief, meaning),))
    if draft.go == "ask":
        return Outcome((Say(words.ASKED_COACH),), (_wish(brief, draft), *_asked_next_day(brief, at)))
    return Outcome((Say(words.DONE),), _effects(brief, draft, meaning, at))


def _nothing_changes(brief: Brief, meaning: Meaning) -> Say:
    """Said, with the way to a plan without equipment where somebody is away for some days."""
    if not meaning.away:
        return Say(words.NOTHING_CHANGES.format(told=meaning.told))
    act = f"menu:travel:{brief.client}" if brief.by_coach else "menu:travelling"
    return Say(words.NO_EQUIPMENT.format(told=meaning.told), (Choice(TRAVEL, act),))


def _wish(brief: Brief, draft: Draft) -> Effect:
    """The coach reads the same words at the same time, with the readings numbered alike."""
    assert draft.said_at is not None, "nothing is asked before something was said"
    about = {"client": brief.client, "said": draft.said, "said_at": draft.said_at.isoformat(), "wish": True}
    about |= {"picked": draft.pick or "", "date_order": draft.order or brief.date_order}
    if brief.move_to is not None and draft.said == "":
        about |= {"move_day": brief.move_day, "move_to": brief.move_to.isoformat()}
    return Do("ask_coach_about_days", about)


def _effects(brief: Brief, draft: Draft, meaning: Meaning, at: datetime) -> tuple[Effect, ...]:
    by = brief.coach if brief.by_coach and brief.coach is not None else brief.client
    about = {"client": brief.client, "told": meaning.told, "by_coach": brief.by_coach}
    if meaning.zone:
        return (Do("travel", {**about, "zone": meaning.zone, "first": meaning.first, "last": meaning.last}),)
    said, note = draft.said or meaning.told, draft.note or ""
    stored = Record(CalendarChanged(at, meaning.when, by, said, meaning.limit, note), brief.client)
    act = "overrode_limit" if meaning.limit else "changed_days"
    did = (Record(CoachDid(at, by, act, note or meaning.told), brief.client),) if brief.by_coach else ()
    return (stored, *did, Do("calendar_changed", about))


def _stays(brief: Brief, at: datetime) -> choosing_time.Brief | None:
    """The session that was to move from its reminder and did not; None: there is none, or it was asked about already."""
    session = by_day(brief, date.fromisoformat(brief.move_day), at) if brief.move_day else None
    if session is None or reminding.next_day(session.at, brief.zone) <= at:
        return None
    return choosing_time.Brief(session_day=brief.move_day, at=session.at, zone=brief.zone)


def _asked_next_day(brief: Brief, at: datetime) -> tuple[Effect, ...]:
    """It is asked about the next day, as any other that was not done."""
    session = _stays(brief, at)
    return () if session is None else (reminding.asked_next_day(session, at),)


def lapsed(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Nobody answered: the same as at a reminder."""
    session = _stays(brief, at)
    return Outcome() if session is None else reminding.lapsed(session, choosing_time.Draft(), at)


FORM: Form[Brief, Draft] = Form(
    start=start,
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    patience=timedelta(hours=2),
    lapse=timedelta(hours=12),
    lapsed=lapsed,
)
DIALOGUE = dialogue("changing", Brief, Draft, FORM)
