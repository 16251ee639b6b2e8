"""A finished screening as the coach's clearing dialogue wants it."""

from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.engine import quiet, status
from bot.engine.joining import clearances
from conversations.coach import screened
from core.facts import Answered, ScreeningAnswer, ScreeningDone
from core.screening import Due, News, Tier, due
from core.store import duties, facts, people
from core.store.people import Person
from core.stored_names import names_in

if TYPE_CHECKING:
    from bot.engine.core import Engine

NEWS = frozenset({("news", "yes"), ("which", "pregnant")})  # answers before a session


def about(engine: "Engine", client: Person, screening: str | None) -> dict[str, Any] | None:
    """What the brief is filled with; None: no screening was finished."""
    where = {} if screening is None else {"screening": screening}
    done = facts.latest(engine.store, ScreeningDone, client.id, **where)
    if done is None:
        return None
    answers = facts.current(engine.store, ScreeningAnswer, client.id, screening=done.screening)
    return {
        "client": client.id,
        "screening": done.screening,
        "tier": done.tier,
        "closed": list(names_in(done.closed)),
        "findings": list(names_in(done.because)),
        "answers": [[one.question, one.answer] for one in answers],
        "age": status.detail(engine, client.id, "age", ""),
        "decided": clearances.decided(engine, client),
    }


def why_due(engine: "Engine", client: Person, now: datetime) -> Due | None:
    """Why a client who was screened is to be screened again; None: not yet."""
    done = clearances.screened(engine, client.id)
    if done is None:
        return None
    return due(done.at.date(), now.date(), [News.SOMETHING] if _news(engine, client, done.at) else ())


def _news(engine: "Engine", client: Person, since: datetime) -> bool:
    """Whether the client said before a session that something is new, or that they may be pregnant."""
    said = facts.since(engine.store, Answered, client.id, since, part="before")
    return any(one.at > since and (one.question, one.answer) in NEWS for one in said)


def is_old(engine: "Engine", client: Person, now: datetime) -> bool:
    """Whether the last screening is due again."""
    return why_due(engine, client, now) is not None


def tier(engine: "Engine", client: int) -> str:
    """What the last screening came to (a stored name); "": there was none."""
    done = clearances.screened(engine, client)
    return "" if done is None else done.tier


def earlier_tier(engine: "Engine", client: int) -> str:
    """What was said before a new screening: also "do not start" in one that was left before its end."""
    newest = facts.latest(engine.store, ScreeningAnswer, client)
    done = clearances.screened(engine, client)
    if newest is None or (done is not None and newest.screening == done.screening):
        return tier(engine, client)
    said = facts.current(engine.store, ScreeningAnswer, client, screening=newest.screening)
    left = screened.assessed([(one.question, one.answer) for one in said])
    return left.tier.value if left.tier is Tier.DO_NOT_START else tier(engine, client)


def may_have_passed(engine: "Engine", client: Person) -> bool:
    """Whether all that said "do not start" may be over, so that the client may be asked again."""
    done = clearances.screened(engine, client.id)
    if done is None:
        return False
    said = facts.current(engine.store, ScreeningAnswer, client.id, screening=done.screening)
    return screened.assessed([(one.question, one.answer) for one in said]).passing


def asked_again(engine: "Engine", coach: Person, details: dict[str, Any], now: datetime) -> bool:
    """The client gets the health questions once more, when they do not sleep or train."""
    client = people.by_id(engine.store, details["client"])
    duties.unplan(engine.store, client.id, "screening")
    duties.plan(engine.store, client.id, "screening", {}, quiet.earliest(engine, client, now), now)
    return False
