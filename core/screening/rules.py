"""What the answers mean together: findings with a tier each, and limbs that are closed. The strictest wins.

Most rules are one line of `grades.WHEN_YES`. What needs a comparison is a small function here.
"""

from collections.abc import Callable

from core.cuffs.limbs import ALL, Limb
from core.safety.sources import Source
from core.screening.answers import NO, Answers
from core.screening.exercise import Advice, advice
from core.screening.grades import (
    CLINICIAN,
    CLOT_RISKS,
    COACH,
    DISEASES,
    NEVER,
    SIGNS,
    WHEN_YES,
    Finding,
    Tier,
)
from core.screening.pressure import coach_must_look, too_high_to_start
from core.screening.questions import GROUPS, LIMB_QUESTIONS, Q, Question

# After surgery, fracture, bed rest: vte-orthopaedic; 12 in Wells 2003 (memory).
EARLY_WEEKS, LATE_WEEKS = 6, 12
BMI_HIGH = 30.0  # kg/m2, obesity: vte-orthopaedic; the figure itself from memory
OLD_FROM = 75  # years: 3 points in the Caprini scheme
MANY_CLOT_RISKS = 3  # own caution, no source

Outcome = tuple[Tier, tuple[Question, ...], frozenset[Limb]]
Rule = Callable[[Answers], Outcome | None]
NO_LIMBS: frozenset[Limb] = frozenset()


def pressure_too_high(answers: Answers) -> Outcome | None:
    """180/110 and above, unless it was below that after five minutes' rest."""
    value, again = answers.blood_pressure, answers.pressure_again
    if value is None or not too_high_to_start(*value) or (again and not too_high_to_start(*again)):
        return None
    return NEVER, _readings(answers), NO_LIMBS


def pressure_high(answers: Answers) -> Outcome | None:
    """140/90 and above, also when it was lower after five minutes' rest."""
    value = answers.blood_pressure
    return (COACH, _readings(answers), NO_LIMBS) if value and coach_must_look(*value) else None


def _readings(answers: Answers) -> tuple[Question, ...]:
    again = (Q.PRESSURE_AGAIN,) if Q.PRESSURE_AGAIN in answers.said else ()
    return (Q.BLOOD_PRESSURE, *again)


def under_age(answers: Answers) -> Outcome | None:
    """Under 18 the guardian agrees and is there; then the coach looks."""
    if not answers.under_age:
        return None
    guarded = answers.yes(Q.GUARDIAN_AGREES) and answers.yes(Q.GUARDIAN_PRESENT)
    return (COACH if guarded else NEVER), (Q.AGE, Q.GUARDIAN_AGREES, Q.GUARDIAN_PRESENT), NO_LIMBS


def old_age(answers: Answers) -> Outcome | None:
    """75 and older."""
    age = answers.number(Q.AGE)
    return (COACH, (Q.AGE,), NO_LIMBS) if age is not None and age >= OLD_FROM else None


def heavy(answers: Answers) -> Outcome | None:
    """Body mass index of 30 and more."""
    weight, height = answers.number(Q.WEIGHT), answers.number(Q.HEIGHT)
    if weight is None or height is None or weight / (height / 100) ** 2 < BMI_HIGH:
        return None
    return COACH, (Q.WEIGHT, Q.HEIGHT), NO_LIMBS


def after_surgery(answers: Answers) -> Outcome | None:
    """Clinician first up to 6 weeks, the coach looks up to 12."""
    return _by_weeks(answers, Q.SURGERY, NO_LIMBS)


def after_bed_rest(answers: Answers) -> Outcome | None:
    """The same after more than three days in bed."""
    return _by_weeks(answers, Q.BED_REST, NO_LIMBS)


def after_fracture(answers: Answers) -> Outcome | None:
    """The same, and the limb is closed up to 12 weeks. Unknown weeks count as few."""
    if not answers.yes(Q.FRACTURE):
        return None
    if answers.number(Q.FRACTURE_WEEKS) is None:
        return CLINICIAN, (Q.FRACTURE,), answers.limbs(Q.FRACTURE)
    return _by_weeks(answers, Q.FRACTURE_WEEKS, answers.limbs(Q.FRACTURE))


def _by_weeks(answers: Answers, question: Question, closes: frozenset[Limb]) -> Outcome | None:
    weeks = answers.number(question)
    if weeks is None or weeks > LATE_WEEKS:
        return None
    return (CLINICIAN if weeks <= EARLY_WEEKS else COACH), (question,), closes


def exercise_check(answers: Answers) -> Outcome | None:
    """The general check before exercise. Light loads with bands count as moderate effort."""
    active = answers.yes(Q.ACTIVE)
    mattered = tuple(question for question in (*DISEASES, *SIGNS) if answers.yes(question))
    diseased, signs = not set(DISEASES).isdisjoint(mattered), not set(SIGNS).isdisjoint(mattered)
    match advice(active=active, disease=diseased, signs=signs):
        case Advice.NOT_NEEDED:
            return None
        case Advice.BEFORE_VIGOROUS:
            return COACH, (Q.ACTIVE, *mattered), NO_LIMBS
        case Advice.RECOMMENDED | Advice.STOP:
            return CLINICIAN, (Q.ACTIVE, *mattered), NO_LIMBS


def several_clot_risks(answers: Answers) -> Outcome | None:
    """Three or more small risks of a clot."""
    found = tuple(question for question in CLOT_RISKS if answers.yes(question))
    found += (Q.WEIGHT,) if heavy(answers) else ()
    return (CLINICIAN, found, NO_LIMBS) if len(found) >= MANY_CLOT_RISKS else None


def not_sure(answers: Answers) -> Outcome | None:
    """ "Not sure" about anything, also about a group whose details were all denied afterwards."""
    unsure = tuple(question for question in answers.said if answers.not_sure(question))
    return (COACH, unsure, NO_LIMBS) if unsure else None


def yes_without_detail(answers: Answers) -> Outcome | None:
    """Yes to a group whose details were all denied: something was meant, and nobody knows what."""
    unexplained = tuple(
        gate
        for gate, details in GROUPS.items()
        if answers.yes(gate) and all(answers.said.get(detail) == NO for detail in details)
    )
    return (COACH, unexplained, NO_LIMBS) if unexplained else None


RULES: dict[Rule, tuple[Source, ...]] = {
    pressure_too_high: (Source.NASCIMENTO_2022,),
    under_age: (Source.GUARDIAN,),
    after_surgery: (Source.VTE_ORTHOPAEDIC, Source.CAPRINI),
    after_fracture: (Source.VTE_EUROPEAN, Source.CLOSED_LIMBS),
    after_bed_rest: (Source.VTE_EUROPEAN, Source.CAPRINI),
    exercise_check: (Source.ACSM_2015,),
    several_clot_risks: (Source.SCREENING_CAUTION,),
    pressure_high: (Source.PRESSURE_LOOK, Source.ACC_AHA_2017),
    old_age: (Source.CAPRINI,),
    heavy: (Source.VTE_ORTHOPAEDIC, Source.EXCLUSION_LIST),
    not_sure: (Source.NOT_SURE,),
    yes_without_detail: (Source.NOT_SURE,),
}
# What may have passed by the next screening; the rest of "do not start" stays.
PASSING = frozenset(
    """fever_now pressure_too_high pregnant birth_lately under_age
    angina pressure_drops heart_weak heartbeat_loose cholesterol""".split()
)


def findings(answers: Answers) -> tuple[Finding, ...]:
    """Every rule that has something to say, the strictest first."""
    found = [
        _yes(answers, question, *graded) for question, graded in WHEN_YES.items() if answers.yes(question)
    ]
    for rule, sources in RULES.items():
        outcome = rule(answers)
        if outcome is not None:
            tier, mattered, closes = outcome
            found.append(Finding(rule.__name__, tier, mattered, closes, sources))
    return tuple(sorted(found, key=lambda finding: -finding.tier.rank))


def _yes(answers: Answers, question: Question, tier: Tier, sources: tuple[Source, ...]) -> Finding:
    closes = answers.limbs(question) if question in LIMB_QUESTIONS - {Q.FRACTURE} else NO_LIMBS
    if tier is NEVER:
        closes = ALL
    return Finding(str(question), tier, (question,), closes, sources)


def emergency(answers: Answers) -> bool:
    """180/110 and above with signs right now: emergency words at once, whatever else was said."""
    value = answers.blood_pressure
    return value is not None and too_high_to_start(*value) and answers.said.get(Q.PRESSURE_SIGNS, NO) != NO
