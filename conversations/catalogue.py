"""All dialogues by their stored names. A new dialogue is one module and one line here."""

from typing import Any

from conversations import adjusting, changing, session
from conversations.client import (
    band_list,
    consent,
    details,
    leaving,
    preferences,
    screening,
    telling,
    testing,
    travelling,
)
from conversations.coach import (
    allowing,
    clearing,
    covering,
    cueing,
    gauging,
    holding,
    inviting,
    measuring,
    pausing,
    pulse,
    renaming,
    saving_template,
    writing,
)
from conversations.planning import machine as planning
from conversations.protocol import Dialogue
from conversations.training import after, asking, before, missed, morning, reminding, still_numb, trouble

CATALOGUE: dict[str, Dialogue[Any]] = {
    each.DIALOGUE.name: each.DIALOGUE
    for each in (
        consent,
        screening,
        clearing,
        inviting,
        leaving,
        planning,
        before,
        session,
        after,
        still_numb,
        asking,
        band_list,
        morning,
        reminding,
        missed,
        changing,
        preferences,
        telling,
        testing,
        trouble,
        pausing,
        holding,
        covering,
        adjusting,
        saving_template,
        renaming,
        gauging,
        measuring,
        pulse,
        allowing,
        details,
        travelling,
        writing,
        cueing,
    )
}
