"""The rest of the published lists, tables and worked cases, row by row, against what screening makes of them.

Where a list excludes what is graded milder here, or grades what a clinician sees first here, the list stands beside
it; no published grade was read for blood thinners and sickle cell, so none stands here.
"""

import pytest

from conversations.stopwords import Kind, read
from conversations.words.screening import QUESTIONS
from core.cuffs import Feeling
from core.cuffs.limbs import Limb
from core.safety.aftercare import Route, route
from core.screening import Tier, assess
from core.screening.questions import Q
from tests.core.screening.people import somebody
from tests.published.test_refill_limits import check_of, verdict_of
from tests.published.test_screening_lists import details

NEVER, CLINICIAN, COACH = Tier.DO_NOT_START, Tier.CLINICIAN_FIRST, Tier.COACH_LOOKS


@pytest.mark.parametrize(
    "said",
    [
        {"heart_disease": "yes"},  # a valve, say
        {"irregular_heartbeat": "yes"},  # under control
        {"chest_pain": "yes"},  # nothing that is like angina
        {"dizzy_standing": "yes"},  # never measured
        {"heart_disease": "yes", "heart_arteries": "not_sure"},
        {"dizzy_standing": "yes", "pressure_drops": "not_sure"},
    ],
)
def test_what_is_near_the_exclusions_of_the_cardiovascular_list_and_not_on_it_is_for_a_clinician(
    said: dict[str, str],
) -> None:
    """Nascimento et al. 2022, Front Physiol 13:808622, table 5 (read, list cut at its end)."""
    assert assess(somebody(**said)).tier is CLINICIAN


@pytest.mark.parametrize(("mg_dl", "mmol_l", "per_mmol"), [(310, "8.0", 38.67), (190, "4.9", 38.67)])
def test_the_limits_of_cholesterol_are_asked_for_in_both_units(
    mg_dl: int, mmol_l: str, per_mmol: float
) -> None:
    """The same table: total above 310, LDL above 190 mg/dL. 38.67 mg/dL of cholesterol to a mmol/L: from memory."""
    asked = QUESTIONS[Q.CHOLESTEROL]
    assert f"{mg_dl}" in asked
    assert mmol_l in asked
    assert float(mmol_l) == pytest.approx(mg_dl / per_mmol, abs=0.05)


@pytest.mark.parametrize(
    ("said", "tier"),
    [
        ({"pregnant": "yes"}, NEVER),
        ({"birth_lately": "yes"}, NEVER),
        ({"diabetes": "yes", "active": "no"}, CLINICIAN),
        ({"diabetes": "yes", "active": "yes"}, COACH),
        ({"heart_disease": "yes"}, CLINICIAN),
        ({"surgery": "6"}, CLINICIAN),
        ({"muscle_drugs": "yes"}, COACH),
    ],
)
def test_the_rest_of_what_that_paper_is_concerned_about(said: dict[str, str], tier: Tier) -> None:
    """The same, table 1 and abstract (read in part)."""
    assert assess(somebody(**said)).tier is tier


@pytest.mark.parametrize(
    ("said", "tier"),
    [
        ({"past_clot": "yes"}, NEVER),
        ({"varicose_veins": "yes"}, COACH),
        ({"hormones": "yes"}, COACH),  # clot-promoting drugs
        ({"skull_pressure": "yes"}, NEVER),
        ({"blood_pressure": "180/100"}, NEVER),  # severe hypertension
        ({"cancer": "yes"}, CLINICIAN),
        ({"fracture": "left_leg", "fracture_weeks": "2"}, CLINICIAN),
        ({"weight": "90", "height": "172"}, COACH),  # obesity: body mass index 30.4
        ({"fragile_skin": "yes"}, COACH),  # loose tissue
        ({"high_pressure": "yes"}, COACH),
        ({"bleeding_disorder": "yes"}, CLINICIAN),  # haemophilia
        ({"smoking": "yes"}, COACH),
        ({"irregular_heartbeat": "yes"}, CLINICIAN),  # atrial fibrillation
    ],
)
def test_the_tourniquet_style_list_and_its_cautions(said: dict[str, str], tier: Tier) -> None:
    """A clinic page that restates published lists, and reviews quoted in the 2022 paper (both second-hand)."""
    assert assess(somebody(**said)).tier is tier


def test_a_nerve_that_suffers_already_closes_its_limb() -> None:
    """Kacin et al. 2015, Annales Kinesiologiae 6:3 (read, part of the abstract): nerve compression, neuropathic
    history."""
    assert assess(somebody(numb_limb="right_leg")).closed == {Limb.RIGHT_LEG}
    assert assess(somebody(diabetes="yes", diabetes_numbness="yes")).tier is CLINICIAN


@pytest.mark.parametrize(
    ("said", "tier"),
    [
        ({"joint_inflammation": "yes"}, COACH),  # low
        ({"weight": "90", "height": "172"}, COACH),  # low
        ({"heart_lately": "yes"}, NEVER),  # moderate: infarct within 6 weeks, decompensated failure
        ({"birth_lately": "yes"}, NEVER),  # moderate
        ({"past_clot": "yes"}, NEVER),  # high
    ],
)
def test_the_rest_of_the_orthopaedic_clot_table(said: dict[str, str], tier: Tier) -> None:
    """PMC5693389, table 3 (read)."""
    assert assess(somebody(**said)).tier is tier


@pytest.mark.parametrize(
    ("said", "tier"),
    [
        ({"long_journey": "yes"}, COACH),  # odds below 2: sitting travel
        ({"bed_rest": "6"}, CLINICIAN),  # odds below 2, graded stricter here; more than 3 days
        ({"hormones": "yes"}, COACH),  # odds 2-9
        ({"ill_lately": "yes"}, COACH),  # odds 2-9: infection
        ({"surgery": "0"}, CLINICIAN),  # odds 2-9 keyhole knee surgery, above 10 hip or knee replacement
        ({"heart_lately": "yes"}, NEVER),  # odds above 10: infarct or heart failure within 3 months
        ({"past_clot": "yes"}, NEVER),  # odds above 10
    ],
)
def test_the_rest_of_the_european_clot_table(said: dict[str, str], tier: Tier) -> None:
    """Table from a cardiology guideline in Eur Respir J (read)."""
    assert assess(somebody(**said)).tier is tier


@pytest.mark.parametrize(
    ("said", "tier"),
    [
        ({"age": "74"}, Tier.CLEAR),
        ({"age": "75"}, COACH),  # 3 points
        ({"plaster": "left_leg"}, CLINICIAN),  # 2
        ({"family_clot": "yes"}, CLINICIAN),  # 3
        ({"clotting_disorder": "yes"}, CLINICIAN),  # 3
        ({"stroke": "yes"}, CLINICIAN),  # 5
    ],
)
def test_what_counts_most_in_the_points_scheme(said: dict[str, str], tier: Tier) -> None:
    """Caprini-type points, MSD Manual (read). Points are never added up here."""
    assert assess(somebody(**said)).tier is tier


@pytest.mark.parametrize("said", ["half an hour or more", "three days a week", "last three months"])
def test_what_counts_as_regular_exercise(said: str) -> None:
    """Riebe et al. 2015, MSSE 47:2473 (read in an excerpt): 30 min or more, 3 days a week, for 3 months."""
    assert said in QUESTIONS[Q.ACTIVE]


@pytest.mark.parametrize("question", ["past_clot", "lymph_nodes", "vessel_access", "numb_limb"])
def test_the_general_check_alone_would_let_pass_what_matters_with_bands(question: str) -> None:
    """The same paper asks for heart, metabolism and kidneys only: clots, lymph nodes, shunts, nerves are asked
    besides."""
    said = "yes" if question == "past_clot" else "left_arm"
    found = assess(somebody(**{question: said}))
    assert "exercise_check" not in {finding.rule for finding in found.findings}
    assert found.closed


@pytest.mark.parametrize(
    ("said", "tier"), [("muscle_breakdown", CLINICIAN), ("stimulants", COACH), ("fever_now", NEVER)]
)
def test_what_favours_muscle_breakdown_is_asked_about(said: str, tier: Tier) -> None:
    """Tabata et al. 2016, JSCR 30:2064 (read): infection, supplements; a first time again after the first."""
    assert assess(somebody(**{said: "yes"})).tier is tier


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("chest pain", Kind.EMERGENCY),  # angina
        ("i feel dizzy", Kind.FAINT),
        ("i nearly fainted", Kind.FAINT),
        ("i am pale and clammy", Kind.FAINT),
        ("my hand is blue", Kind.CIRCULATION),
        ("my hand is cold and white", Kind.CIRCULATION),
        ("i am wheezing", Kind.EMERGENCY),
        ("i am unsteady", Kind.FAINT),  # ataxia
        ("my leg cramps", Kind.HURTS),
        ("i want to stop", Kind.STOP),
    ],
)
def test_the_signs_to_stop_an_exercise_test_stop_a_set(words: str, kind: Kind) -> None:
    """ACSM, 2000 edition, in JSSM Suppl 7, table 7 (read)."""
    assert read(words).kind is kind


@pytest.mark.parametrize("words", ["i am coughing up blood", "suddenly i can't breathe"])
def test_signs_of_a_clot_in_the_lung_are_an_emergency(words: str) -> None:
    """Wells items for the lung, BMC Fam Pract, table 1 (read): routed, never scored."""
    assert read(words).kind is Kind.EMERGENCY


def test_a_nerve_is_released_at_once_reviewed_when_it_stays_and_urgent_when_it_is_weak() -> None:
    """From memory, fairly sure; no published limit in minutes was found."""
    assert verdict_of(check_of(1.0, feeling=Feeling.TINGLING)).name == "STOP"
    assert verdict_of(check_of(1.0, feeling=Feeling.NUMB)).name == "STOP"
    assert route(details(numb_still="yes")) is Route.CLINICIAN_TODAY
    assert route(details(weakness="yes")) is Route.EMERGENCY


@pytest.mark.parametrize(
    ("question", "said"), [(Q.HEART_LATELY, "last three months"), (Q.BED_REST, "more than three days")]
)
def test_how_long_ago_is_asked_as_the_european_clot_table_has_it(question: Q, said: str) -> None:
    """Table from a cardiology guideline in Eur Respir J (read): infarct within 3 months, bed rest above 3 days."""
    assert said in QUESTIONS[question]
