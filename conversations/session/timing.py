"""When a session speaks without being asked."""

from datetime import datetime, timedelta

from conversations.session.state import Phase, State, lacking
from core.cuffs import on_again_at, quiet_alert_at
from core.cuffs import quiet_at as quiet_set_at
from core.cuffs.limits import MAYBE_ON, OFF
from core.plans import Scheme
from core.safety.pain import SILENCE
from core.walking import BETWEEN_MIN

LAPSE = timedelta(hours=2)  # without a word: the session is over; own caution, no source
LEFT_WAIT = timedelta(minutes=5)  # for the reps that were left; own caution, no source
QUIET_CHECK = timedelta(minutes=2)  # bands on, a question open that is not a set; own caution, no source
ASKING = frozenset({Phase.FIT, Phase.TIGHT, Phase.REFILL, Phase.NAIL, Phase.WARMTH, Phase.FEEL, Phase.BURN})


def wake_at(state: State) -> datetime | None:
    """The next such time, None: the session waits for the client."""
    match state.phase:
        case Phase.SET:
            return quiet_at(state)
        case Phase.REST:
            return state.rest_until
        case Phase.PAUSE:
            return None if state.paused_at is None else state.paused_at + SILENCE
        case Phase.FIT if state.on_at is None:
            return maybe_on_at(state)
        case phase if phase in ASKING and state.on_at is not None:
            return quiet_check_at(state)
        case Phase.COUNT if lacking(state) is None:
            return None if state.heard_at is None else state.heard_at + LEFT_WAIT
        case Phase.BREAK:
            return break_over_at(state)
        case Phase.WALK:
            return walk_over_at(state)
        case _:
            return None if state.heard_at is None else state.heard_at + LAPSE


def quiet_at(state: State) -> datetime | None:
    """When a set has been quiet for too long, or the answer to "All right?" has."""
    if state.asked_quiet_at is not None:
        return quiet_alert_at(state.asked_quiet_at)
    if state.set_at is None:
        return None
    reps = state.expected(state.set_no) * len(state.doing.sides)
    return quiet_set_at(state.set_at, reps, state.doing.tempo_s)


def quiet_check_at(state: State) -> datetime | None:
    """When a check with the bands on has been quiet for too long, or the answer to "Still there?" has."""
    if state.asked_quiet_at is not None:
        return quiet_alert_at(state.asked_quiet_at)
    return None if state.heard_at is None else state.heard_at + QUIET_CHECK


def maybe_on_at(state: State) -> datetime | None:
    """When bands that were asked for have been without a word for so long that they may be on."""
    since = [at for at in (state.fit_at, state.heard_at) if at is not None]
    return max(since) + MAYBE_ON if since else None


def break_over_at(state: State) -> datetime | None:
    """When bands may go on again."""
    return None if state.off_at is None else on_again_at(state.off_at, pause_of(state))


def pause_of(state: State) -> timedelta:
    """How long the bands stay off: after a walk longer than after sets."""
    walked = state.doing.scheme is Scheme.WALK
    return timedelta(minutes=BETWEEN_MIN) if walked else OFF


def minutes_off(state: State) -> int:
    """The same in minutes, as it is said."""
    return round(pause_of(state).total_seconds() / 60)


def walk_over_at(state: State) -> datetime | None:
    """When the walk is done, or when its silence has lasted too long."""
    if state.asked_quiet_at is not None:
        return quiet_alert_at(state.asked_quiet_at)
    return None if state.set_at is None else state.set_at + timedelta(minutes=state.walk_minutes)
