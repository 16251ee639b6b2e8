"""Each answer and the tier it leads to, on every limit and on either side of it."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.cuffs.limbs import ALL, Limb
from core.screening import Answers, Form, Question, Tier, assess, form_of
from core.screening.exercise import Advice, advice
from core.screening.grades import CLOT_RISKS, WHEN_YES
from core.screening.questions import GROUPS, LIMB_QUESTIONS, Q
from core.screening.rules import RULES
from tests.core.screening.people import ABOUT, GATE_OF, completed, somebody

CLEAR, COACH, CLINICIAN, NEVER = Tier.CLEAR, Tier.COACH_LOOKS, Tier.CLINICIAN_FIRST, Tier.DO_NOT_START
AFFIRMED = {Form.YES_NO: "yes", Form.LIMBS: "left_arm", Form.WEEKS: "3"}


def test_a_healthy_client_is_clear() -> None:
    found = assess(somebody())
    assert (found.tier, found.closed, found.findings, found.emergency) == (CLEAR, frozenset(), (), False)


@pytest.mark.parametrize("question", list(WHEN_YES))
def test_a_single_yes_leads_at_least_to_its_tier(question: Question) -> None:
    found = assess(somebody(**{question: AFFIRMED[form_of(question)]}))
    assert found.tier.rank >= WHEN_YES[question][0].rank
    assert question in {finding.rule for finding in found.findings}


@pytest.mark.parametrize("question", list(WHEN_YES))
def test_not_sure_means_that_the_coach_looks(question: Question) -> None:
    said = {question: "not_sure"}
    assert assess(somebody(**said)).tier is COACH


@pytest.mark.parametrize(
    ("value", "tier"),
    [
        ("139/89", CLEAR),
        ("140/89", COACH),
        ("139/90", COACH),
        ("179/109", COACH),
        ("180/109", NEVER),
        ("179/110", NEVER),
        ("no", CLEAR),
        ("not_sure", COACH),
    ],
)
def test_blood_pressure(value: str, tier: Tier) -> None:
    assert assess(somebody(blood_pressure=value)).tier is tier


@pytest.mark.parametrize(("signs", "emergency"), [("yes", True), ("not_sure", True), ("no", False)])
@pytest.mark.parametrize("value", ["180/100", "150/110", "190/125"])
def test_a_very_high_reading_with_signs_is_an_emergency(value: str, signs: str, emergency: bool) -> None:
    assert assess(somebody(blood_pressure=value, pressure_signs=signs)).emergency is emergency


@pytest.mark.parametrize(
    ("again", "tier"),
    [("179/109", COACH), ("118/76", COACH), ("180/109", NEVER), ("no", NEVER), ("not_sure", NEVER)],
)
def test_a_second_reading_below_180_110_is_for_the_coach_to_look_at(again: str, tier: Tier) -> None:
    found = assess(somebody(blood_pressure="185/112", pressure_signs="no", pressure_again=again))
    assert found.tier is tier
    assert Q.PRESSURE_AGAIN in found.findings[0].answers


def test_a_second_reading_does_not_undo_signs() -> None:
    said = {"blood_pressure": "185/112", "pressure_signs": "yes", "pressure_again": "118/76"}
    assert assess(somebody(**said)).tier is CLINICIAN
    assert assess(somebody(**said)).emergency


@pytest.mark.parametrize(
    ("age", "agrees", "present", "tier"),
    [
        ("17", "yes", "yes", COACH),
        ("17", "no", "yes", NEVER),
        ("17", "yes", "not_sure", NEVER),
        ("18", "no", "no", CLEAR),
        ("74", "no", "no", CLEAR),
        ("75", "no", "no", COACH),
    ],
)
def test_age(age: str, agrees: str, present: str, tier: Tier) -> None:
    answers = Answers({Q.AGE: age, Q.GUARDIAN_AGREES: agrees, Q.GUARDIAN_PRESENT: present})
    assert assess(completed(answers)).tier is tier


@pytest.mark.parametrize(
    ("weight", "tier"),
    [("88.7", CLEAR), ("88.8", COACH)],  # 30 x 1.72 x 1.72 = 88.75
)
def test_a_body_mass_index_of_thirty(weight: str, tier: Tier) -> None:
    assert assess(somebody(weight=weight)).tier is tier


@pytest.mark.parametrize(("weight", "tier"), [("119.9", CLEAR), ("120", COACH)])
def test_a_body_mass_index_of_exactly_thirty(weight: str, tier: Tier) -> None:
    assert assess(somebody(weight=weight, height="200")).tier is tier  # 30 x 2.00 x 2.00 = 120


@pytest.mark.parametrize(
    ("weeks", "tier"), [("0", CLINICIAN), ("6", CLINICIAN), ("7", COACH), ("12", COACH), ("13", CLEAR)]
)
def test_weeks_after_surgery_and_bed_rest(weeks: str, tier: Tier) -> None:
    assert assess(somebody(surgery=weeks)).tier is tier
    assert assess(somebody(bed_rest=weeks)).tier is tier


@pytest.mark.parametrize(
    ("weeks", "tier", "closed"),
    [
        ("6", CLINICIAN, True),
        ("7", COACH, True),
        ("12", COACH, True),
        ("13", COACH, False),
        ("no", CLINICIAN, True),
    ],
)
def test_a_fracture_closes_its_limb_for_twelve_weeks(weeks: str, tier: Tier, closed: bool) -> None:
    found = assess(somebody(fracture="left_leg", fracture_weeks=weeks))
    assert found.tier is tier
    assert found.closed == (frozenset({Limb.LEFT_LEG}) if closed else frozenset())


def test_a_removed_lymph_node_closes_that_arm_and_the_legs_stay_open() -> None:
    found = assess(somebody(lymph_nodes="right_arm"))
    assert found.closed == {Limb.RIGHT_ARM}
    assert {Limb.LEFT_LEG, Limb.RIGHT_LEG} <= found.open_limbs


@pytest.mark.parametrize("question", [*GROUPS[Q.ANY_LIMBS], Q.PLASTER])
def test_each_limb_answer_closes_those_limbs_only(question: Question) -> None:
    assert assess(somebody(**{question: "left_arm,right_leg"})).closed == {Limb.LEFT_ARM, Limb.RIGHT_LEG}


@pytest.mark.parametrize("question", [q for q, (tier, _) in WHEN_YES.items() if tier is NEVER])
def test_do_not_start_closes_every_limb(question: Question) -> None:
    found = assess(somebody(**{question: "yes"}))
    assert found.closed == ALL
    assert found.open_limbs == frozenset()


@pytest.mark.parametrize(
    ("question", "passing"),
    [
        ("fever_now", True),
        ("pregnant", True),
        ("birth_lately", True),
        ("angina", True),
        ("pressure_drops", True),
        ("heart_weak", True),
        ("heartbeat_loose", True),
        ("cholesterol", True),
        ("heart_arteries", False),
        ("heart_born", False),
        ("heart_test", False),
        ("past_clot", False),
        ("aorta", False),
    ],
)
def test_what_may_have_passed_by_the_next_screening(question: str, passing: bool) -> None:
    assert assess(somebody(**{question: "yes"})).passing is passing
    assert not assess(somebody(**{question: "yes", "past_clot": "yes"})).passing
    assert not assess(somebody()).passing


def test_three_small_clot_risks_count_for_more() -> None:
    two = somebody(smoking="yes", hormones="yes")
    assert assess(two).tier is COACH
    assert assess(completed(two.plus(Q.ANY_HEART, "yes").plus(Q.VARICOSE_VEINS, "yes"))).tier is CLINICIAN
    assert assess(somebody(smoking="yes", hormones="yes", weight="100")).tier is CLINICIAN


@pytest.mark.parametrize(
    ("active", "disease", "tier"), [("no", "no", CLEAR), ("yes", "yes", COACH), ("no", "yes", CLINICIAN)]
)
def test_diabetes_and_activity(active: str, disease: str, tier: Tier) -> None:
    assert assess(somebody(active=active, diabetes=disease)).tier is tier


def test_not_being_sure_about_activity_counts_as_not_active() -> None:
    assert assess(somebody(active="not_sure", diabetes="yes")).tier is CLINICIAN
    assert assess(somebody(active="not_sure")).tier is COACH


@pytest.mark.parametrize("gate", list(GROUPS))
def test_not_sure_about_a_group_stays_though_every_detail_is_denied(gate: Question) -> None:
    found = assess(completed(Answers({gate: "not_sure"})))
    assert found.tier is COACH
    assert found.findings[0].answers == (gate,)


@pytest.mark.parametrize("gate", list(GROUPS))
def test_yes_to_a_group_and_no_to_each_detail_is_for_the_coach_to_look_at(gate: Question) -> None:
    found = assess(completed(Answers({gate: "yes"})))
    assert (found.tier, found.findings[0].rule) == (COACH, "yes_without_detail")


@pytest.mark.parametrize("question", sorted(q for q in Question if q is not Q.AGE))
def test_not_sure_about_anything_at_all_is_never_clear(question: Question) -> None:
    assert assess(somebody(**{question: "not_sure"})).tier.rank >= COACH.rank


def test_open_questions_are_not_assessed() -> None:
    with pytest.raises(ValueError, match="age"):
        assess(Answers())


def test_each_rule_names_its_sources() -> None:
    assert all(sources for sources in RULES.values())
    assert all(sources for _, sources in WHEN_YES.values())


@given(active=st.booleans(), disease=st.booleans(), signs=st.booleans())
def test_signs_always_ask_for_clearance(active: bool, disease: bool, signs: bool) -> None:
    found = advice(active=active, disease=disease, signs=signs)
    assert (found in (Advice.STOP, Advice.RECOMMENDED)) is (signs or (disease and not active))


# --- properties -------------------------------------------------------------------------------------------------
PROTECTIVE = {Q.ACTIVE, Q.GUARDIAN_AGREES, Q.GUARDIAN_PRESENT}
RISKS = sorted(
    q for q in Question if form_of(q) in (Form.YES_NO, Form.LIMBS) and q not in {*PROTECTIVE, *GROUPS}
)
VALUES = {
    Form.YES_NO: st.sampled_from(["yes", "no", "not_sure"]),
    Form.LIMBS: st.sampled_from(["no", "not_sure", "left_arm", "right_leg", "left_leg,right_leg"]),
    Form.WEEKS: st.sampled_from(["no", "not_sure", "0", "6", "7", "12", "13"]),
    Form.PRESSURE: st.sampled_from(["no", "not_sure", "118/76", "145/85", "185/100"]),
}
NUMBERS = {
    Q.AGE: ["12", "17", "18", "41", "80"],
    Q.WEIGHT: ["60", "110"],
    Q.HEIGHT: ["160", "185", "not_sure"],
}


@st.composite
def people(draw: st.DrawFn) -> Answers:
    said = {
        question: draw(
            st.sampled_from(NUMBERS[question]) if question in NUMBERS else VALUES[form_of(question)]
        )
        for question in draw(st.sets(st.sampled_from(list(Question)), max_size=12))
    }
    return completed(Answers(said))


def test_every_risk_has_a_grade() -> None:
    assert set(RISKS) <= set(WHEN_YES)


@settings(max_examples=300)
@given(people(), st.sampled_from(RISKS))
def test_one_more_yes_never_loosens_the_tier_nor_opens_a_limb(answers: Answers, question: Question) -> None:
    worse = "yes" if form_of(question) is Form.YES_NO else "left_arm,right_leg"
    open_group = answers.plus(GATE_OF[question], "yes") if question in GATE_OF else answers
    before = assess(completed(open_group.plus(question, "no")))
    unsure = assess(completed(open_group.plus(question, "not_sure")))
    after = assess(completed(open_group.plus(question, worse)))
    assert before.tier.rank <= unsure.tier.rank <= after.tier.rank
    assert before.closed <= unsure.closed <= after.closed


@settings(max_examples=200)
@given(people(), st.sampled_from([*GROUPS, *PROTECTIVE, Q.BLOOD_PRESSURE, Q.WEIGHT, Q.HEIGHT]))
def test_not_sure_is_never_milder_than_no(answers: Answers, question: Question) -> None:
    milder = "yes" if question in PROTECTIVE else ABOUT.get(question, "no")
    before = assess(completed(answers.plus(question, milder)))
    unsure = assess(completed(answers.plus(question, "not_sure")))
    assert unsure.tier.rank >= min(before.tier.rank, COACH.rank)
    if question in GROUPS and milder == answers.said.get(question, "no"):
        assert before.tier.rank <= unsure.tier.rank


@settings(max_examples=200)
@given(people(), st.sampled_from(list(GROUPS)))
def test_a_group_is_never_looked_at_less_the_more_it_was_affirmed(answers: Answers, gate: Question) -> None:
    kept = Answers({one: said for one, said in answers.said.items() if GATE_OF.get(one) is not gate})
    no, unsure, yes = (
        assess(completed(kept.plus(gate, said))).tier.rank for said in ("no", "not_sure", "yes")
    )
    assert no <= unsure <= yes


@settings(max_examples=200)
@given(people(), st.sampled_from(sorted(LIMB_QUESTIONS)), st.sets(st.sampled_from(Limb), min_size=1))
def test_one_more_limb_never_opens_a_limb_and_closes_no_other(
    answers: Answers, question: Question, limbs: set[Limb]
) -> None:
    open_group = answers.plus(GATE_OF[question], "yes")
    before = assess(completed(open_group.plus(question, "no")))
    after = assess(completed(open_group.plus(question, ",".join(sorted(limbs)))))
    assert before.closed <= after.closed
    assert after.closed <= before.closed | limbs
    assert after.open_limbs <= before.open_limbs


@given(people())
def test_the_strictest_finding_decides_and_comes_first(answers: Answers) -> None:
    found = assess(answers)
    ranks = [finding.tier.rank for finding in found.findings]
    assert ranks == sorted(ranks, reverse=True)
    assert found.tier.rank == max(ranks, default=0)
    assert all(finding.sources and finding.answers for finding in found.findings)
    assert found.closed == frozenset(limb for finding in found.findings for limb in finding.closes)


def test_the_small_clot_risks_are_all_looked_at_by_the_coach() -> None:
    assert all(WHEN_YES[question][0] is COACH for question in CLOT_RISKS)
