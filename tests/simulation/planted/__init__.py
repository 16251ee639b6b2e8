"""Bugs on purpose: each breaks the real code in one place, and the simulation has to notice.

`PLANTED` maps a name to a function that makes a context: inside it the code is broken. A check that no planted
bug ever fails is no check; `python -m tests.bench.simulation --planted` plays all of them.
"""

from tests.simulation.planted import counts, delivery, safety, timing
from tests.simulation.planted.planting import PLANTED

__all__ = ["PLANTED", "RARE", "counts", "delivery", "safety", "timing"]

# Seldom met: the bench plays more stories until these are noticed.
RARE = frozenset(
    "dedupe_by_maximum newest_update_first second_copy_counts_as_new old_button_obeyed who_blocked_is_forgotten"
    " tried_again_without_a_pause counted_into_a_settled_alert late_edit_changes_another_set"
    " correction_said_and_not_made second_contact_never_told every_reminder_twice gap_without_an_end"
    " alerts_stand_in_line newest_letter_first second_call_hours_later bands_too_long_and_no_alert".split()
)
