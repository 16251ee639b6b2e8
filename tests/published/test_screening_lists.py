"""What published lists rule out, grade high or warn of, against what screening makes of it."""

import pytest

from core.cuffs.limbs import Limb
from core.safety.aftercare import Route, Sign, route
from core.screening import Tier, assess
from tests.core.screening.people import somebody


@pytest.mark.parametrize(
    "said",
    [
        {"past_clot": "yes"},
        {"artery_disease": "yes"},
        {"aorta": "yes"},
        {"heart_lately": "yes"},  # infarct, unstable angina, myocarditis
        {"chest_pain": "yes", "angina": "yes"},
        {"heart_disease": "yes", "heart_arteries": "yes"},  # plaques, infarct, revascularisation
        {"heart_disease": "yes", "heart_weak": "yes"},  # heart failure class III-IV, ejection fraction < 30 %
        {"heart_disease": "yes", "heart_born": "yes"},  # congenital
        {"heart_disease": "yes", "heart_test": "yes"},  # ST depression, < 6 MET, pressure falls
        {"irregular_heartbeat": "yes", "heartbeat_loose": "yes"},  # uncontrolled, on effort, an arrest before
        {"dizzy_standing": "yes", "pressure_drops": "yes"},  # a fall of 20 mmHg on standing with symptoms
        {"cholesterol": "yes"},  # > 310 mg/dL, LDL > 190 mg/dL, familial with disease
        {"fever_now": "yes"},
        {"blood_pressure": "178/110"},
        {"blood_pressure": "180/90"},
    ],
)
def test_exclusions_of_the_cardiovascular_list_are_absolute(said: dict[str, str]) -> None:
    """Nascimento et al. 2022, Front Physiol 13:808622, table 5 (read, list cut at its end)."""
    assert assess(somebody(**said)).tier is Tier.DO_NOT_START


@pytest.mark.parametrize(
    "said",
    [{"high_pressure": "yes"}, {"ill_lately": "yes"}, {"hormones": "yes"}, {"joint_inflammation": "yes"}],
)
def test_what_the_same_paper_is_concerned_about_is_seen_by_the_coach(said: dict[str, str]) -> None:
    """The same, table 1 (read in part); diabetes and kidney disease are graded by the exercise check."""
    assert assess(somebody(**said)).tier is Tier.COACH_LOOKS


@pytest.mark.parametrize("said", ["kidney", "muscle_breakdown", "irregular_heartbeat"])
def test_and_some_of_it_goes_to_a_clinician_first(said: str) -> None:
    assert assess(somebody(**{said: "yes"})).tier is Tier.CLINICIAN_FIRST


@pytest.mark.parametrize("limb", list(Limb))
@pytest.mark.parametrize("said", ["vessel_access", "lymph_nodes", "wound", "skin_graft"])
def test_local_exclusions_close_the_limb(said: str, limb: Limb) -> None:
    """Tourniquet-style list (a clinic page that restates published lists, second-hand)."""
    assert assess(somebody(**{said: limb.value})).closed == {limb}


@pytest.mark.parametrize(
    "said",
    [
        {"clotting_disorder": "yes"},
        {"family_clot": "yes"},
        {"stroke": "yes"},
        {"cancer": "yes"},
        {"surgery": "6"},
        {"fracture": "left_leg", "fracture_weeks": "6"},
    ],
)
def test_high_clot_risk_goes_to_a_clinician_first(said: dict[str, str]) -> None:
    """High column of PMC5693389, table 3 (read); leg fracture: odds above 10 in the European table (read)."""
    assert assess(somebody(**said)).tier is Tier.CLINICIAN_FIRST


@pytest.mark.parametrize("said", [{"varicose_veins": "yes"}, {"hormones": "yes"}, {"surgery": "7"}])
def test_moderate_clot_risk_is_seen_by_the_coach(said: dict[str, str]) -> None:
    """Moderate column of the same table (read)."""
    assert assess(somebody(**said)).tier is Tier.COACH_LOOKS


def details(**answers: str) -> dict[Sign, str]:
    signs = {sign: "no" for sign in Sign}
    return {**signs, Sign.ANYTHING: "yes", **{Sign(name): said for name, said in answers.items()}}


def test_the_first_session_case_would_have_been_caught() -> None:
    """Tabata et al. 2016, JSCR 30:2064 (read): first session, the next day muscle pain with fever, dark urine."""
    assert route(details(sore_beyond="yes", fever="yes")) is Route.CLINICIAN_TODAY
    assert route(details(sore_beyond="yes", fever="yes", dark_urine="yes")) is Route.EMERGENCY


@pytest.mark.parametrize("sign", ["one_sided", "chest_or_breath", "fainted"])
def test_clot_signs_are_routed_and_never_scored(sign: str) -> None:
    """Wells items (read in three tables): one calf swollen, breathless, fainted lead to emergency advice."""
    assert route(details(**{sign: "yes"})) is Route.EMERGENCY


@pytest.mark.parametrize(
    ("sign", "least"), [("sore_beyond", 1), ("weakness", 3), ("swelling", 2), ("dark_urine", 3)]
)
def test_the_signs_of_muscle_breakdown_never_pass_as_fine(sign: str, least: int) -> None:
    """Krieger 2018, J Spec Oper Med; O'Connor 2008, Curr Sports Med Rep 7:328 (read)."""
    assert route(details(**{sign: "yes"})).rank >= least
