"""Questions and answers: one shared machine, so that each dialogue brings only its own questions.

A dialogue gives four pure functions, `missing` (what to ask next; all branching is there), `ask` (how to ask
it), `fill` (add one answer; raises `Unclear`) and `finish` (what comes of it). Re-asking, `back`, `cancel`,
late taps, edits, reminders, resuming and pictures instead of words are written here, once.

The state holds labelled answers only. A release that adds a question finds it missing in an old draft and
asks it; a release that drops one never looks at it again.
"""

from conversations.form.choices import YES_NO, YES_NO_NOT_SURE, buttons
from conversations.form.machine import Form, dialogue
from conversations.form.state import Asking, Given, Outcome, with_answer

__all__ = [
    "YES_NO",
    "YES_NO_NOT_SURE",
    "Asking",
    "Form",
    "Given",
    "Outcome",
    "buttons",
    "dialogue",
    "with_answer",
]
