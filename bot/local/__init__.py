"""A Bot API on this machine, and the phones that talk to it: for trying cuffline out and for its tests.

`api` answers the bot's calls without any transport; `phone` is what a person sees and does. Two fronts carry
calls to it: `http` (tornado on 127.0.0.1, with the `page` for a browser, and `pushing` updates to a webhook)
and `inprocess` (no socket at all).
Below the api: `upkeep` (updates, commands, files), `sending` and `changing` (messages), `request` and `markup`
(reading what a call says), `messages` (writing what it answers), `exchange` and `mailbox` (the state),
`refusals` (how it says no) and `faults` (failures that a test asks for).
"""
