"""The emergency card. It is read by somebody who has never heard of bands."""

BUTTON = "Emergency card"
FIRST = (
    "EMERGENCY CARD\n{name} trains with tight bands around the upper arms or upper legs (blood flow restriction, light "
    "loads). If a band is on: undo it, or cut it."
)
BANDS_NOW = "The bands may be ON now."
BANDS_OFF = "Bands last came off {when}."
CALL = "Call {number}."
DETAILS = {
    "address": "Trains at: {value}",
    "emergency_contact": "Ring also: {value}",
    "phone": "Own phone: {value}",
}
COACH = "Coach: {coach}"
CLEARED = "On the clearance: {note}"
