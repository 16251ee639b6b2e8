"""More words while a trouble is talked about that its question cannot take: the coach reads them with its alert."""

import json
from typing import TYPE_CHECKING

from bot.engine.safety import alerts
from conversations.stopwords.causes import cause_of
from conversations.stopwords.kinds import Kind
from conversations.training.troubled import ASK_FIRST
from core.safety.causes import Cause
from core.store import duties
from core.store.people import Person
from core.store.threads import Thread

if TYPE_CHECKING:
    from bot.engine.core import Engine


def kind_of(thread: Thread) -> Kind:
    """What a trouble is about."""
    return Kind(json.loads(thread.state or "{}").get("brief", {}).get("kind", Kind.NONE))


def pass_on(engine: "Engine", person: Person, thread: Thread, text: str) -> None:
    """The newest words of its alert; where somebody took it, it sounds anew. Nothing where these raised one at once."""
    kind, now = kind_of(thread), engine.clock()
    asked = kind in ASK_FIRST  # then the coach was told once they said that something is wrong
    cause = Cause.SOMETHING_WRONG if asked else cause_of(kind) or Cause.SOMETHING_WRONG
    known = duties.same_alert(engine.store, person.id, cause)
    raised = any(one.last_at == now for one in duties.open_alerts(engine.store, person.id))
    if known is not None and not raised:
        alerts.raise_alert(engine, person.id, cause, text, known.told)
