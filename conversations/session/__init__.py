"""A training session, movement by movement: bands on and checked, sets with rests, bands off, a break.

`state` holds what is stored; `machine` sends each event to the phase that is open; `going_on` (bands on),
`fitting` (the check, with `judging` and `deciding`), `sets`, `counting` (with `which_set` and `tally`), `hurting`,
`coming_off` and `ending` hold the phases. Like every dialogue it is pure:
times come in as event times, timers go out as `wake_at`.
"""

from conversations.protocol import Dialogue
from conversations.session.machine import advance
from conversations.session.state import Brief, State

DIALOGUE = Dialogue("session", State, Brief, advance, trains=True, exclusive=True)
