"""The coach reads a screening and decides."""

from core.safety.sources import Source
from core.screening import Category

TIERS = {
    "clear": "nothing of note",
    "coach_looks": "please look",
    "clinician_first": "their clinician first",
    "do_not_start": "do not start",
}
OPENING = (
    "{name}'s answers: {tier}.{closed}\n{short}{findings}\n\n"
    "The program routes, it doesn't diagnose; you decide within your own licence."
)
CLOSED = " Closed whatever you decide: {limbs}."
OTHER_SIDE = " The other side may do one-sided work."
RULE = "- {rule}"
RULE_WITH_SOURCE = "- {rule} ({answers}) [{sources}]"
FORBIDS = {
    "no_failure": "No sets to failure, whatever the plan: fixed sets, or stop with 3 to 5 clean reps left."
}
ALL_ANSWERS = "All answers"
ALL_HEAD = "All of {name}'s answers:"
NOTHING = "No answer stood out."
ANSWERS = "Also said: {answers}"
# Who it is, in one line: how a stored number is said.
SHORT = {"age": "{} years", "weight": "{} kg", "height": "{} cm"}
PLAIN_FACTS = ("age", "weight", "height", "active")
DECIDE = "Your decision for {name}?"
DECISIONS = {
    "cleared": "Clear, arms and legs",
    "legs_only": "Legs only",
    "arms_only": "Arms only",
    "held": "Hold for now",
    "declined": "Decline",
}
CLEAR_SOME = "Clear: {places}"
ONLY = "{places} only"
CLINICIAN = "Which clinician said yes? Their name."
SAID_ON = "Which day did they say so? With the year, like 2 March 2026. Or: today."
LIMITS = "With which limits? 'none' is an answer."
EXPIRY = "Until when is that good? A day to come, with the year, like 30 June 2027."
HOLD_UNTIL = "Hold {name} until when? I ask you again on that day. Like: two weeks, or until 3 January."
HOLDS = (
    ("Until I say", "open"),
    ("One week", "one week"),
    ("Two weeks", "two weeks"),
    ("Four weeks", "four weeks"),
)
OPEN_HOLD = ("until i say", "until i say so", "open", "no date", "open end", "i'll say", "i will say")
ASKED_ON = "held until {day}"
HELD_OPEN = "{name} stays on hold until you say."
HELD_TO = "{name}: {held}. I ask you again that morning; it never ends by itself."
HOLD_WHICH = "Which day do you mean?"
ASK_AGAIN = "Ask them again"
ASKED_AGAIN = "{name} gets the health questions again, and you decide on the new answers. The earlier ones stay on record."
NOTE = "A note for the record?"
NO_NOTE = "No note"
WITHOUT_NOTE = ("-", "no note", "no", "none", "skip")
DONE = "Noted for {name}: {decision}."


# Questions whose stored name does not say enough; any other is called by it.
CALLED = {
    "any_lately": "something lately",
    "any_other": "something else",
    "surgery": "surgery, weeks ago",
    "bed_rest": "bed rest, weeks ago",
    "pressure_again": "blood pressure after five minutes' rest",
    "pressure_signs": "signs with that blood pressure",
}


# What a reading is called by ACC/AHA 2017.
CATEGORIES = {
    Category.NORMAL: "normal",
    Category.ELEVATED: "elevated",
    Category.STAGE_1: "stage 1",
    Category.STAGE_2: "stage 2",
    Category.CRISIS: "crisis range",
}
READING = "{said} ({category} by ACC/AHA 2017)"


def answered(name: str, said: str) -> str:
    """ "Limbs: not sure": one answer as the coach reads it."""
    called = CALLED.get(name, name.removeprefix("any_").replace("_", " "))
    return f"{called[:1].upper()}{called[1:]}: {said.replace('_', ' ').replace(',', ', ')}"


# Where a rule comes from, short enough for a line; the whole of it stands in core/SOURCES.md.
SOURCES = {
    Source.NASCIMENTO_2022: "Nascimento 2022",
    Source.EXCLUSION_LIST: "published exclusion lists, second-hand",
    Source.VTE_ORTHOPAEDIC: "clot risk, orthopaedic table",
    Source.VTE_EUROPEAN: "clot risk, European table",
    Source.CAPRINI: "Caprini-type points",
    Source.ACSM_2015: "ACSM 2015",
    Source.ACC_AHA_2017: "ACC/AHA 2017",
    Source.TABATA_2016: "Tabata 2016",
    Source.KACIN_2015: "Kacin 2015",
    Source.PRESSURE_LOOK: "own caution",
    Source.SCREENING_CAUTION: "own caution",
    Source.CLOSED_LIMBS: "own caution",
    Source.GUARDIAN: "own caution",
    Source.NOT_SURE: "own caution",
}
