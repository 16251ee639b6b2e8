"""The coach's decision played as a script: what is shown, what may be chosen, and what stands afterwards."""

from dataclasses import replace
from datetime import UTC, date, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.answers import Why
from conversations.coach.clearing import FORM, Brief, Draft, decisions, label, opens
from conversations.form import Asking
from conversations.protocol import Do, Effect, Opened, Record, Said, Say
from conversations.words import clearing as words
from conversations.words.answers import SIMPLE
from conversations.words.screening import REFUSALS, RULES
from core.cuffs.limbs import Limb, opened
from core.facts import Cleared, CoachDid
from core.screening import Assessment, Clearance, Consent, Refusal, Ruling, Tier, refusal
from core.screening.grades import WHEN_YES
from core.screening.rules import RULES as SCREENING_RULES

NOW = datetime(2026, 3, 2, 23, 30, tzinfo=UTC)  # already 3 March in Auckland
BRIEF = Brief(7, "Ines Prado", "s1", "clear", 1, zone="Europe/Lisbon")
LOOKS = replace(
    BRIEF, tier="coach_looks", findings=("smoking",), answers=(("smoking", "yes"), ("statins", "no"))
)
FIRST = replace(BRIEF, tier="clinician_first", findings=("blood_thinners",))
CLINICIAN = ("Dr Sol", "1 March 2026", "no sets to failure", "30 June 2026")

Played = tuple[Asking[Brief, Draft] | None, list[Say], list[Effect]]


def play(brief: Brief, *texts: str) -> Played:
    """The coach's answers, one after another."""
    turn = FORM.advance(None, Opened(NOW, brief), NOW)
    said, effects = list(turn.replies), list(turn.effects)
    for text in texts:
        assert turn.state is not None, f"over before {text!r}"
        turn = FORM.advance(turn.state, Said(NOW, text), NOW)
        said += turn.replies
        effects += turn.effects
    return turn.state, said, effects


def decided(effects: list[Effect]) -> Cleared:
    """The decision on record."""
    (found,) = [each.fact for each in effects if isinstance(each, Record) and isinstance(each.fact, Cleared)]
    return found


def values(brief: Brief) -> list[str]:
    return [choice.value for choice in decisions(brief)]


def test_the_coach_reads_who_it_is_in_one_line() -> None:
    known = (("weight", "71.7"), ("height", "160.0"), ("active", "no"))
    _, said, _ = play(replace(FIRST, age="74", answers=known))
    assert said[0].text.splitlines()[1] == "74 years, 71.7 kg, 160 cm."
    _, said, _ = play(replace(FIRST, answers=(("weight", "not_sure"),)))
    assert said[0].text.splitlines()[1].startswith("- ")


def test_a_clear_screening_is_cleared_with_a_tap_and_no_note() -> None:
    state, said, effects = play(BRIEF, "cleared", "-")
    assert state is None
    assert effects == [
        Record(Cleared(NOW, "s1", "cleared", "arms,legs", 1, None, ""), 7),
        Record(CoachDid(NOW, 1, "decided_cleared", ""), 7),
        Do("cleared", {"client": 7, "regions": "arms,legs", "decision": "cleared"}),
    ]
    assert "Ines Prado" in said[-1].text


def test_the_coach_sees_the_rule_in_words_and_the_answers_that_mattered() -> None:
    shown = play(LOOKS)[1][0].text
    assert RULES["smoking"] in shown
    assert "Smoking: yes" in shown
    assert "tatins" not in shown


@pytest.mark.parametrize(
    ("reading", "called"),
    [
        ("119/79", "normal"),
        ("120/79", "elevated"),
        ("120/80", "stage 1"),
        ("138/90", "stage 2"),
        ("181/100", "crisis range"),
    ],
)
def test_a_blood_pressure_has_its_published_name_whatever_comes_of_it(reading: str, called: str) -> None:
    """ACC/AHA 2017 (read); below 140/90 no rule rests on it, and the coach sees it all the same."""
    brief = replace(
        LOOKS, findings=("pressure_high", "pressure_too_high"), answers=(("blood_pressure", reading),)
    )
    assert f"{reading} ({called} by ACC/AHA 2017)" in play(brief)[1][0].text
    assert f"{reading} ({called} by ACC/AHA 2017)" in play(brief, "all answers")[1][-1].text


@pytest.mark.parametrize(
    ("closed", "limbs", "other"),
    [
        (("left_arm",), "left arm", True),
        (("left_arm", "right_arm"), "arms", False),
        (("left_arm", "right_arm", "left_leg"), "arms and left leg", True),
        (("left_arm", "left_leg", "right_arm", "right_leg"), "arms and legs", False),
    ],
)
def test_one_sided_work_is_offered_only_where_another_side_is_open(
    closed: tuple[str, ...], limbs: str, other: bool
) -> None:
    shown = play(replace(LOOKS, closed=closed))[1][0].text
    assert f"Closed whatever you decide: {limbs}." in shown
    assert ("other side" in shown) is other


def test_findings_that_are_worded_already_are_shown_as_they_are() -> None:
    assert "smokes a little" in play(replace(LOOKS, findings=("smokes a little",)))[1][0].text


def test_whoever_opens_what_asked_for_a_look_says_why() -> None:
    state, said, effects = play(LOOKS, "legs only", "no note")
    assert state is not None
    assert said[-1].text == REFUSALS[Refusal.NEEDS_NOTE]
    assert effects == []
    state, _, effects = play(LOOKS, "legs only", "no note", "Two a day, walks well")
    assert state is None
    assert (decided(effects).regions, decided(effects).note) == ("legs", "Two a day, walks well")


def test_holding_needs_no_reason() -> None:
    state, _, effects = play(LOOKS, "held", "until I say", "no note")
    assert state is None
    assert (decided(effects).decision, decided(effects).regions) == ("held", "")


def test_do_not_start_offers_nothing_that_opens_and_says_so() -> None:
    brief = replace(BRIEF, tier="do_not_start", findings=("past_clot",), closed=tuple(sorted(Limb)))
    state, said, effects = play(brief, "cleared")
    assert state is not None
    assert effects == []
    assert REFUSALS[Refusal.NO_OVERRIDE] in [one.text for one in said]
    assert values(brief) == ["held", "declined"]


def test_do_not_start_opens_nothing_even_if_no_limb_is_named() -> None:
    assert values(replace(BRIEF, tier="do_not_start")) == ["held", "declined"]


def test_clinician_first_opens_with_name_day_limits_and_end() -> None:
    state, _, effects = play(FIRST, "cleared", *CLINICIAN, "Letter seen")
    assert state is None
    fact = decided(effects)
    assert fact.until == datetime(2026, 6, 29, 23, 0, tzinfo=UTC), "midnight in Lisbon, summer time"
    assert all(part in fact.note for part in ("Letter seen", "Dr Sol", "2026-03-01", "no sets to failure"))


@pytest.mark.parametrize(
    "typed",
    ["no", "No.", "none", "-", "?", "...", "nobody", "not yet", "the doctor", "12", "yes", "don't know"],
)
def test_what_is_no_name_is_not_taken_for_the_clinician(typed: str) -> None:
    state, said, effects = play(FIRST, "cleared", typed)
    assert state is not None
    assert state.step == "clinician"
    assert said[-1].text == words.CLINICIAN
    assert len(said[-2].text) > 20, "it is said why"
    assert effects == []


@pytest.mark.parametrize("typed", ["Dr Sol", "Marta Nowak", "Ng", "李医生"])
def test_a_name_is_taken_for_the_clinician(typed: str) -> None:
    state, _, _ = play(FIRST, "cleared", typed)
    assert state is not None
    assert (state.draft.clinician, state.step) == (typed, "said_on")


@pytest.mark.parametrize("typed", ["-", "?", "🙂"])
def test_limits_are_words(typed: str) -> None:
    state, _, _ = play(FIRST, "cleared", "Dr Sol", "today", typed)
    assert state is not None
    assert state.step == "limits"


@pytest.mark.parametrize(
    ("typed", "day", "note"),
    [
        ("two weeks", "2026-03-15", "held until 15 March 2026"),
        ("until 20 march", "2026-03-20", "held until 20 March 2026"),
        ("20 march", "2026-03-20", "held until 20 March 2026"),
        ("tomorrow", "2026-03-03", "held until 3 March 2026"),
        ("until i say", None, ""),
    ],
)
def test_a_hold_has_a_day_on_which_the_coach_is_asked_and_never_ends_by_itself(
    typed: str, day: str | None, note: str
) -> None:
    state, _, effects = play(LOOKS, "held", typed, "-")
    assert state is None
    assert (decided(effects).until, decided(effects).note) == (None, note)
    assert [one.details.get("hold") for one in effects if isinstance(one, Do)] == [day]


@pytest.mark.parametrize("typed", ["today", "yesterday", "hm", "-"])
def test_a_hold_until_no_day_to_come_is_asked_again(typed: str) -> None:
    state, said, effects = play(LOOKS, "held", typed)
    assert state is not None
    assert said[-1].text == words.HOLD_UNTIL.format(name="Ines Prado")
    assert effects == []


def test_clinician_first_may_be_held_without_a_clinician() -> None:
    state, _, effects = play(FIRST, "held", "until i say", "-")
    assert state is None
    assert decided(effects).regions == ""


@pytest.mark.parametrize(
    ("typed", "taken"),
    [
        ("today", "2026-03-02"),
        ("2 March 2026", "2026-03-02"),
        ("3 March 2026", None),
        ("1 March 2026", "2026-03-01"),
        ("2026-01-15", "2026-01-15"),
        ("1 March", None),
        ("tomorrow", None),
        ("6/7/2025", None),
        ("last week", None),
    ],
)
def test_the_day_of_the_clinicians_word_is_today_or_before(typed: str, taken: str | None) -> None:
    state, _, _ = play(FIRST, "cleared", "Dr Sol", typed)
    assert state is not None
    assert (state.draft.said_on, state.step) == (taken, "limits" if taken else "said_on")


@pytest.mark.parametrize(
    ("typed", "taken"),
    [
        ("2 March 2026", None),
        ("3 March 2026", "2026-03-03"),
        ("30.6.2026", "2026-06-30"),
        ("31 June 2026", None),
        ("30 June", None),
        ("soon", None),
    ],
)
def test_the_end_of_the_clinicians_word_is_a_day_to_come(typed: str, taken: str | None) -> None:
    state, _, _ = play(FIRST, "cleared", *CLINICIAN[:3], typed)
    assert state is not None
    assert (state.draft.expiry, state.step) == (taken, "note" if taken else "expiry")


@pytest.mark.parametrize(
    ("typed", "why"), [("30 June", Why.NO_YEAR), ("June", Why.NO_YEAR), ("1 March 2026", Why.WRONG_DAY)]
)
def test_a_day_that_is_not_taken_says_why(typed: str, why: Why) -> None:
    _, said, _ = play(FIRST, "cleared", *CLINICIAN[:3], typed)
    assert said[-2].text == SIMPLE[why]


def test_today_is_the_clients_day() -> None:
    state, _, _ = play(replace(FIRST, zone="Pacific/Auckland"), "cleared", *CLINICIAN[:3], "3 March 2026")
    assert state is not None
    assert state.draft.expiry is None


@pytest.mark.parametrize(
    ("findings", "limits"),
    [(("pressure_high",), "no_failure"), (("smoking", "high_pressure"), "no_failure"), (("smoking",), "")],
)
def test_high_blood_pressure_clears_without_sets_to_failure(findings: tuple[str, ...], limits: str) -> None:
    brief = replace(LOOKS, findings=findings)
    _, said, effects = play(brief, "legs only", "Reading looked at")
    assert decided(effects).limits == limits
    assert ("No sets to failure" in said[0].text) is bool(limits)
    _, _, effects = play(brief, "held", "until i say", "-")
    assert decided(effects).limits == ""


def test_not_sure_about_limbs_is_shown_in_words() -> None:
    assert "Limbs: not sure" in play(replace(LOOKS, answers=(("any_limbs", "not_sure"),)))[1][0].text


@pytest.mark.parametrize("typed", ["All answers", "all_answers"])
def test_every_answer_can_be_asked_for(typed: str) -> None:
    state, said, effects = play(LOOKS, typed)
    assert state is not None
    assert effects == []
    assert "- Statins: no" in said[-1].text
    assert "all_answers" not in [choice.value for choice in said[-1].choices]
    assert [choice.value for choice in said[-1].choices] == [*values(LOOKS), "asked_again"]


def test_one_closed_arm_leaves_the_other_arm_and_the_legs_open() -> None:
    brief = replace(LOOKS, closed=("left_arm",))
    assert values(brief) == ["cleared", "legs_only", "arms_only", "held", "declined"]
    assert [label(brief, name) for name in ("cleared", "arms_only", "legs_only")] == [
        "Clear: right arm and legs",
        "Right arm only",
        "Legs only",
    ]
    assert "Closed whatever you decide: left arm" in play(brief)[1][0].text


@pytest.mark.parametrize(
    ("typed", "regions"),
    [
        ("cleared", "right_arm,legs"),
        ("Clear: right arm and legs", "right_arm,legs"),
        ("arms only", "right_arm"),
        ("Right arm only", "right_arm"),
        ("legs only", "legs"),
    ],
)
def test_a_decision_with_a_closed_arm_is_stored_by_limb(typed: str, regions: str) -> None:
    _, _, effects = play(replace(LOOKS, closed=("left_arm",)), typed, "Left arm stays without")
    assert decided(effects).regions == regions


def test_both_arms_closed_leave_the_legs_as_one_choice() -> None:
    assert values(replace(LOOKS, closed=("left_arm", "right_arm"))) == ["legs_only", "held", "declined"]


def test_an_arm_and_a_leg_closed_leave_the_others() -> None:
    brief = replace(LOOKS, closed=("left_arm", "right_leg"))
    assert [opens(brief, name) for name in ("cleared", "legs_only", "arms_only")] == [
        ("right_arm", "left_leg"),
        ("left_leg",),
        ("right_arm",),
    ]


def test_the_coach_reads_rule_answer_and_source_the_strictest_first() -> None:
    answers = (("any_heart", "yes"), ("stroke", "yes"), ("smoking", "yes"), ("any_limbs", "not_sure"))
    brief = replace(FIRST, findings=("stroke", "smoking", "not_sure"), answers=answers)
    lines = play(brief)[1][0].text.splitlines()
    assert lines[1:4] == [
        "- stroke before (Stroke: yes) [clot risk, orthopaedic table]",
        "- smokes (Smoking: yes) [published exclusion lists, second-hand]",
        "- not sure about some answers (Limbs: not sure) [own caution]",
    ]


def test_an_earlier_decision_is_shown_with_who_when_and_on_what() -> None:
    brief = replace(LOOKS, decided="Cleared by Vera, 2 Mar 2026, on: smokes.")
    assert brief.decided in play(brief)[1][0].text


def test_every_source_of_a_rule_is_named_to_the_coach() -> None:
    used = {source for _, sources in WHEN_YES.values() for source in sources}
    used |= {source for sources in SCREENING_RULES.values() for source in sources}
    assert used == set(words.SOURCES)


def test_every_decision_has_its_words() -> None:
    assert set(values(BRIEF)) == set(words.DECISIONS)


@given(st.sampled_from(list(Tier)), st.sets(st.sampled_from(list(Limb))), st.data())
def test_every_decision_on_offer_stands_and_opens_no_closed_limb(
    tier: Tier, closed: set[Limb], data: st.DataObject
) -> None:
    brief = replace(BRIEF, tier=tier.value, closed=tuple(sorted(closed)))
    decision = data.draw(st.sampled_from(values(brief)))
    limbs = opened(opens(brief, decision))
    assert not limbs & closed
    if not limbs:
        return
    consent = Consent("Dr Sol", date(2026, 3, 1), "none", date(2026, 6, 30))
    clearance = Clearance(Ruling(decision), NOW.date(), "looked at", None, consent)
    assert refusal(clearance, Assessment(tier, frozenset(closed), ())) is None


@given(st.sampled_from(list(Tier)), st.sampled_from(["cleared", "legs_only", "arms_only"]))
def test_nothing_opens_before_all_that_its_tier_asks_for(tier: Tier, decision: str) -> None:
    brief = replace(BRIEF, tier=tier.value)
    if decision not in values(brief):
        return
    _, _, effects = play(brief, decision)
    assert effects == []
