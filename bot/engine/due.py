"""What is due: bands on too long, alerts unanswered, timers of dialogues, planned talks."""

from datetime import datetime, timedelta
from functools import partial
from typing import TYPE_CHECKING

from bot.engine import quiet, turns
from bot.engine.coach import digest
from bot.engine.safety import alerts, bands, never_on
from conversations.protocol import Alert, Say, TimeIsUp, Woke
from conversations.words import engine as words
from core.cuffs import CallKind, next_call
from core.plans import Region
from core.safety.causes import Cause
from core.store import duties, people, threads
from core.store.duties import OpenAlert, Planned, Watch
from core.store.mail import Priority
from core.store.people import Person
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine

# Talks that do not break into a session.
WAITS = (
    "words",
    "note",
    "offer_later",
    "reminding",
    "missed",
    "morning",
    "testing",
    "recap",
    "weekly",
    "pause_over",
    "travel_begins",
    "travel_over",
    "changing",
    "zone",
    "screening",
)
SOUNDS_AT_NIGHT = (*turns.SESSION_TALK, "still_numb")  # training runs, or a limb may be in danger
# These wait for the morning.
NO_HURRY = (
    "morning",
    "testing",
    "reminding",
    "missed",
    "changing",
    "words",
    "note",
    "recap",
    "weekly",
    "screening",
)
KEPT_IN_SESSION = ("changing", "offer_later")
LATER = timedelta(minutes=2)
SOON = timedelta(seconds=5)
ONE_AT_A_TIME = timedelta(hours=1)  # questions after two sessions do not come together
STALE = timedelta(hours=3)  # what comes so late need not come at night
NO_BURST = timedelta(seconds=30)
TALKS_AT_ONCE = 20  # then whoever wrote meanwhile is answered first; own choice
LATE = timedelta(minutes=1)  # a call later than this: we were away; own caution, no source
MADE_BESIDE = ("weekly", digest.ASKED)
MADE_WITHIN = timedelta(minutes=10)  # what is made in a process of its own is done by then; own choice
# The coach knows by these that no word comes.
SILENCE = (Cause.BANDS_ON, Cause.QUIET_SET, Cause.MAYBE_ON, Cause.AWAY)


def all_due(engine: "Engine", now: datetime) -> None:
    """Everything that is due, bands first."""
    for watch in duties.due_watches(engine.store, now):
        engine.guarded("watch", partial(call, engine, watch, now), partial(_retry_watch, engine, watch))
    for alert in duties.due_alerts(engine.store, now):
        engine.guarded("alert", partial(_repeat, engine, alert, now), partial(_retry_alert, engine, alert))
    for thread in threads.due(engine.store, now):
        engine.guarded("timer", partial(wake, engine, thread, now), partial(_backoff, engine, thread))
    for talk in duties.due_talks(engine.store, now, TALKS_AT_ONCE):
        engine.guarded("talk", partial(start, engine, talk, now), partial(_retry_talk, engine, talk))


def _repeat(engine: "Engine", alert: OpenAlert, now: datetime) -> None:
    """Send it, unless the repeat of another has spoken for it at this moment: that would use up a round unheard."""
    latest = duties.alert_by_id(engine.store, alert.id)
    if latest is not None and latest.next_at is not None and latest.next_at <= now:
        alerts.send(engine, alert.id)


def _retry_alert(engine: "Engine", alert: OpenAlert, at: datetime) -> None:
    duties.alert_sent(engine.store, alert.id, at)


def _retry_talk(engine: "Engine", talk: Planned, at: datetime) -> None:
    duties.talk_later(engine.store, talk.id, at)


def _retry_watch(engine: "Engine", watch: Watch, at: datetime) -> None:
    duties.watch_later(engine.store, watch, at)


def _backoff(engine: "Engine", thread: Thread, at: datetime) -> None:
    threads.failed(engine.store, thread.id, at + timedelta(seconds=5) * 2 ** min(thread.failures, 10))


def call(engine: "Engine", watch: Watch, now: datetime) -> None:
    """Tell the client to take the bands off; from the third call on tell the coach as well."""
    person = people.by_id(engine.store, watch.person)
    minutes = round((now - watch.on_at).total_seconds() / 60)
    late = now - watch.next_at > LATE
    text = words.TIME_UP_AWAY if late else words.TIME_UP[min(watch.calls, 3)].format(minutes=minutes)
    engine.say(person, Say(text, never_on.buttons(engine, watch)), now, Priority.ALERT)
    duties.called(engine.store, watch, _next(watch, now))
    session = threads.live_in(engine.store, person.id, "session")
    # Before the alert, which would end the session in other words.
    if session is not None and watch.calls == 0:
        told = partial(turns.deliver, engine, person, session, TimeIsUp(now, watch.spell))
        engine.guarded("time is up", told, lambda at: None)  # a broken dialogue must not silence the call
    if _kind(watch) is CallKind.ALERT or late:
        cause = Cause.AWAY if late else Cause.BANDS_ON
        _tell_coach(engine, person, watch, cause, text)


def _tell_coach(engine: "Engine", person: Person, watch: Watch, cause: Cause, text: str) -> None:
    """One alert for all the silence of these bands: whoever has it knows, and an open one is repeated anyway."""
    known = next(
        (one for one in duties.open_alerts(engine.store, person.id) if one.cause in (cause, *SILENCE)), None
    )
    if known is None or (known.raised_at < watch.on_at and known.cause is not cause):
        alerts.raise_alert(engine, person.id, cause, words.BANDS_SILENT, text)
    else:
        duties.again(engine.store, known.id, engine.clock())


def _kind(watch: Watch) -> CallKind:
    """Which call this is; all after the third alert again."""
    call_now = next_call(watch.on_at, watch.limit_s, Region(watch.region), watch.calls)
    return CallKind.ALERT if call_now is None else call_now.kind


def _next(watch: Watch, now: datetime) -> datetime:
    """The next call: by the rules, then with a growing gap until the bands are off; never two in a burst."""
    following = next_call(watch.on_at, watch.limit_s, Region(watch.region), watch.calls + 1)
    if following is not None:
        return max(following.at, now + NO_BURST)
    # The coach has been told; the client is asked less often.
    return now + timedelta(minutes=2 * 2 ** min(watch.calls - 2, 5))


def wake(engine: "Engine", thread: Thread, now: datetime) -> None:
    """A dialogue's own timer."""
    if thread.state is None:
        threads.keep(engine.store, thread.id, None, None)
        return
    person = people.by_id(engine.store, thread.person)
    morning = quiet.earliest(engine, person, now)
    if morning > now and can_wait(engine, thread, now):
        threads.keep(engine.store, thread.id, thread.state, morning)
        return
    if thread.dialogue == "session" and threads.live_in(engine.store, person.id, "trouble") is not None:
        # no "Go" beside "Is something wrong right now?"
        threads.keep(engine.store, thread.id, thread.state, now + SOON)
        return
    turns.deliver(engine, person, thread, Woke(now))


def can_wait(engine: "Engine", thread: Thread, now: datetime) -> bool:
    """Whether what a timer would say is one more word, not an alert and not part of training."""
    turn = turns.foreseen(engine, thread, Woke(now))
    grave = any(isinstance(effect, Alert) for effect in turn.effects)
    return thread.dialogue not in SOUNDS_AT_NIGHT and bool(turn.replies) and not grave


def start(engine: "Engine", talk: Planned, now: datetime) -> None:
    """A planned talk; while somebody trains it waits. An earlier one may have made it pointless."""
    found = duties.open_talk(engine.store, talk.id)
    if found is None or found.due_at > now:
        return
    talk = found
    person = people.by_id(engine.store, talk.person)
    if talk.dialogue == "morning" and threads.live_in(engine.store, person.id, "morning") is not None:
        duties.talk_later(engine.store, talk.id, now + ONE_AT_A_TIME)
        return
    if talk.dialogue in WAITS and (busy(engine, person, now) or _asked_after(engine, person, talk)):
        duties.talk_later(engine.store, talk.id, now + LATER)
        return
    morning = quiet.earliest(engine, person, now)
    if talk.dialogue in NO_HURRY and now - talk.due_at > STALE and morning > now:
        duties.talk_later(engine.store, talk.id, morning)
        return
    if talk.dialogue in MADE_BESIDE and engine.make_week is not None:
        duties.talk_later(engine.store, talk.id, now + MADE_WITHIN)  # again, should we die meanwhile
        engine.make_week(talk, now)
        return
    duties.talk_done(engine.store, talk.id, now)
    from bot.engine import acts

    acts.before_talk(engine, person, talk, now)


def _asked_after(engine: "Engine", person: Person, talk: Planned) -> bool:
    """Whether the questions after a session are open, on top of which no question from within it comes."""
    return talk.dialogue in KEPT_IN_SESSION and threads.live_in(engine.store, person.id, "after") is not None


def in_session(engine: "Engine", person: Person) -> bool:
    """Whether a session (or its questions) is under way, or bands are on."""
    return bool(duties.watches(engine.store, person.id)) or bool(_exclusive(engine, person))


def busy(engine: "Engine", person: Person, now: datetime) -> bool:
    """The same for what waits until a session is over; one that stands still for hours holds nothing up."""
    talks = [thread.begun_at or now for thread in _exclusive(engine, person) + _telling(engine, person)]
    banded = [watch.on_at for watch in duties.watches(engine.store, person.id)]
    going_on = any(now - at < bands.OLD_TALK for at in talks)
    return going_on or any(now - at < bands.OLD_BANDS for at in banded)


def _telling(engine: "Engine", person: Person) -> list[Thread]:
    """A line for the coach is on its way: a reminder on top would take it for its own answer."""
    return [one for one in threads.live(engine.store, person.id) if one.dialogue == "telling"]


def _exclusive(engine: "Engine", person: Person) -> list[Thread]:
    from conversations.catalogue import CATALOGUE

    return [
        thread for thread in threads.live(engine.store, person.id) if CATALOGUE[thread.dialogue].exclusive
    ]
