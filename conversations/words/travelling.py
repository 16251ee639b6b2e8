"""A plan without equipment for given days, and back."""

from conversations.words.coach import movement

TRAVEL = "Travel plan"
TRAVEL_END = "Back from travel"
TRAVEL_UNTIL = "Without equipment until {day}."
TRAVEL_TO_COME = "Without equipment from {first} until {last}."
TRAVEL_LENGTHS = (("One week", "one week"), ("Two weeks", "two weeks"))
TRAVEL_DAYS = (
    "Without equipment, meanwhile: {swaps}. From when to when? Like: one week, or from 3 to 10 January."
)
TRAVEL_DAYS_COACH = (
    "{name} without equipment: {swaps}. From when to when? Like: one week, or from 3 to 10 January."
)
TRAVEL_SWAP = "{was} becomes {now}"
TRAVEL_RESTS = "{was} rests"
TRAVEL_SET = "{days}: your plan without equipment. Your coach hears of it. After that the usual plan comes back by itself."
TRAVEL_SET_COACH = "{name}, {days}: without equipment. After that the usual plan comes back by itself."
TRAVEL_ON = "You are on your travel plan. Back at your equipment?"
I_AM_HOME = "I am back"
TRAVEL_NO_PLAN = "There is no plan to swap yet."
TRAVEL_NOT_NEEDED = "This plan needs no equipment; it goes with you as it is."
TRAVEL_NOTHING = "Nothing in your plan can be done without equipment. Ask your coach: 'coach' and your words."
TRAVEL_NOTHING_COACH = "Nothing in {name}'s plan can be done without equipment. A pause, or another plan?"
CLIENT_TRAVELS = (
    "Your coach swapped your plan for one without equipment. {days}. After that the usual one comes back."
)
COACH_TRAVELS = "{name} travels. {days}: the plan without equipment, then back by itself."
TRAVEL_BEGINS = "From today on, without equipment:"
TRAVEL_BACK = "Back to your usual plan, with your usual loads. Take the first session easy."
TRAVEL_OFF = "The travel plan is called off; your usual plan goes on as it is."
TRAVEL_OFF_COACH = "{name} does not travel; the usual plan goes on."
COUNTS_AFTER = "{name} is on the travel plan until {day}; it counts after that."
TRAVEL_BACK_COACH = "{name} is back on the usual plan."
TRAVEL_IS_OVER = "You are on your usual plan already."
TRAVEL_ENDED = "ended"


def swaps_text(swaps: tuple[tuple[str, str], ...]) -> str:
    """ "goblet squat becomes chair squat, curl rests"; movements by stored name, "" for nothing."""
    return ", ".join(
        (TRAVEL_SWAP if now else TRAVEL_RESTS).format(was=movement(was).lower(), now=movement(now).lower())
        for was, now in swaps
        if was != now
    )
