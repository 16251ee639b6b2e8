"""Cuff pressure for a client with a gauge: the questions to the coach, the estimate, and why there is none."""

from core.pressure import AGES, CUFF_CM, LOW_SHARE, Estimate, Refusal

CUFF_PRESSURE = "Cuff pressure"
CUFF = "{name}'s cuff with a gauge: where does it sit, and how wide is it?"
CUFFS = ((f"Leg, {CUFF_CM:g} cm wide", "leg_18"), ("Leg, another width", "leg_other"), ("Arm", "arm"))
AGE = "How old is {name}, in years?"
SEX = "The published equation needs the sex: male or female?"
SEXES = (("Male", "male"), ("Female", "female"))
GIRTH = "Thigh girth where the cuff sits, in cm? At rest, before training, tape flat. Like: 55.5"
PRESSURE = "Blood pressure at rest, today or this week? Like: 124/78"
ESTIMATED = (
    "{name}: about {aop:.0f} mmHg would close the artery (AOP), give or take {error:.0f}. {share:.0f}-80 % of it: "
    "{low:.0f} to {high:.0f} mmHg.\n"
    "This is an estimate from thigh girth, blood pressure, age and sex, not a measurement (51 people, 18 cm leg cuff at "
    "rest; Rev Bras Med Esporte 2019;25(6)). It holds for that cuff and for the leg at rest as in the study; a pressure "
    "measured on {name} comes before it. Begin at the low end. Tightness and refill still decide: a slow refill, tingling "
    "or a blue limb means less, whatever the gauge says."
)
NO_ESTIMATE = {
    Refusal.ARM: (
        "No estimate for an arm: there is no published equation here that covers it. Have it measured, or go by "
        "tightness and refill."
    ),
    Refusal.CUFF_WIDTH: (
        f"No estimate: the equation holds for an {CUFF_CM:g} cm leg cuff only. Width changes everything: the same thighs "
        "needed 235 mmHg under 5 cm and 144 under 13.5 cm. Have it measured, or go by tightness and refill."
    ),
    Refusal.AGE: (
        f"No estimate: the equation was made from people of {AGES[0]} to {AGES[1]}, and its age term alone would carry "
        "anybody older far too high. Have it measured, or go by tightness and refill."
    ),
}
TOO_HIGH = "No estimate: with 180/110 or more there is no training with bands. {name}'s clinician first."
NOTE = "AOP about {aop:.0f}, {low:.0f} to {high:.0f} mmHg"


def estimated(name: str, found: Estimate) -> str:
    """The estimate, what it comes from, and what still decides."""
    return ESTIMATED.format(
        name=name,
        aop=found.aop,
        error=found.error,
        share=100 * LOW_SHARE,
        low=found.low,
        high=found.high,
    )
