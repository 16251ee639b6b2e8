"""All dialogues by their stored names. A new dialogue is one module and one line here."""

from typing import Any

from conversations import (
    adjusting,
    after,
    asking,
    band_list,
    before,
    changing,
    clearing,
    consent,
    covering,
    cueing,
    inviting,
    leaving,
    missed,
    morning,
    pausing,
    planning,
    preferences,
    reminding,
    renaming,
    saving_template,
    screening,
    session,
    still_numb,
    testing,
    travelling,
    trouble,
    writing,
)
from conversations.protocol import Dialogue

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
        testing,
        trouble,
        pausing,
        covering,
        adjusting,
        saving_template,
        renaming,
        travelling,
        writing,
        cueing,
    )
}
