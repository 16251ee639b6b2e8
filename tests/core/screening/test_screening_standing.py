"""Whether a client may train now, from the decisions and the screening on record."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.cuffs.limbs import ALL, LEGS, Limb
from core.facts import Cleared, ScreeningDone
from core.screening.standing import Waits, in_force, standing

NOW = datetime(2026, 3, 2, 18, tzinfo=UTC)
DAY, SECOND = timedelta(days=1), timedelta(seconds=1)


def screened(
    tier: str = "clear", name: str = "s1", closed: str = "", ago: timedelta = 3 * DAY
) -> ScreeningDone:
    return ScreeningDone(NOW - ago, name, tier, closed, "")


def decided(
    what: str = "cleared",
    regions: str = "arms,legs",
    name: str = "s1",
    until: datetime | None = None,
    ago: timedelta = 2 * DAY,
) -> Cleared:
    return Cleared(NOW - ago, name, what, regions, 1, until)


def test_nobody_trains_before_a_screening_and_a_decision() -> None:
    assert standing([], None, NOW).why is Waits.NOT_SCREENED
    assert standing([], screened(), NOW).why is Waits.NOT_CLEARED
    assert standing([], screened("do_not_start"), NOW).why is Waits.DO_NOT_START
    assert standing([decided()], screened(), NOW).limbs == ALL


def test_a_clearance_from_before_screenings_were_kept_still_reads() -> None:
    assert standing([decided(regions="legs")], None, NOW).limbs == LEGS


@pytest.mark.parametrize("tier", ["clear", "coach_looks", "clinician_first", "do_not_start"])
def test_a_new_screening_undoes_the_old_decision_whatever_it_says(tier: str) -> None:
    later = screened(tier, "s2", ago=SECOND)
    wanted = Waits.DO_NOT_START if tier == "do_not_start" else Waits.NOT_CLEARED
    assert standing([decided()], later, NOW).why is wanted


def test_a_decision_on_older_answers_opens_nothing_though_it_came_later() -> None:
    assert standing([decided(ago=SECOND)], screened(name="s2", ago=DAY), NOW).why is Waits.NOT_CLEARED


def test_nobody_opens_do_not_start_and_a_closed_limb_stays_closed() -> None:
    assert standing([decided()], screened("do_not_start"), NOW).why is Waits.DO_NOT_START
    found = standing([decided()], screened("coach_looks", closed="left_arm"), NOW)
    assert found.limbs == ALL - {Limb.LEFT_ARM}
    nothing = standing([decided(regions="arms")], screened(closed="left_arm,right_arm"), NOW)
    assert (nothing.limbs, nothing.why) == (frozenset(), Waits.NOT_CLEARED)


@pytest.mark.parametrize(("left", "over"), [(SECOND, False), (timedelta(0), True), (-SECOND, True)])
def test_a_clinicians_word_ends_on_its_day(left: timedelta, over: bool) -> None:
    found = standing([decided(until=NOW + left)], screened("clinician_first"), NOW)
    assert found.why is (Waits.OVER if over else None)


def test_clinician_first_never_stands_without_an_end() -> None:
    assert standing([decided()], screened("clinician_first"), NOW).why is Waits.NOT_CLEARED


def test_a_declined_client_stays_declined() -> None:
    assert standing([decided(), decided("declined", "", ago=SECOND)], screened(), NOW).why is Waits.DECLINED


@pytest.mark.parametrize(("left", "held"), [(SECOND, True), (timedelta(0), False), (-SECOND, False)])
def test_a_hold_ends_on_its_day_and_the_clearance_before_it_counts_again(left: timedelta, held: bool) -> None:
    decisions = [decided(), decided("held", "", until=NOW + left, ago=DAY)]
    found = standing(decisions, screened(), NOW)
    assert (found.why, found.limbs) == ((Waits.HELD, frozenset()) if held else (None, ALL))


def test_a_hold_without_a_day_never_ends_by_itself() -> None:
    found = standing([decided(), decided("held", "", ago=80 * DAY)], screened(ago=81 * DAY), NOW)
    assert found.why is Waits.HELD


OVER = decided("held", "", until=NOW, ago=DAY)


@pytest.mark.parametrize(
    ("before", "answers", "why"),
    [
        ([], screened(), Waits.NOT_CLEARED),
        ([], screened("do_not_start"), Waits.DO_NOT_START),
        ([decided()], screened(name="s2", ago=SECOND), Waits.NOT_CLEARED),
        ([decided(until=NOW - SECOND)], screened("clinician_first"), Waits.OVER),
        ([decided("declined", "")], screened(), Waits.DECLINED),
        ([decided("held", "")], screened(), Waits.HELD),
    ],
)
def test_the_end_of_a_hold_opens_only_what_the_rules_allow(
    before: list[Cleared], answers: ScreeningDone, why: Waits
) -> None:
    assert standing([*before, OVER], answers, NOW).why is why


DECISIONS = st.lists(
    st.builds(
        decided,
        st.sampled_from(["cleared", "legs_only", "held", "declined"]),
        st.sampled_from(["arms,legs", "legs", "right_arm,legs", ""]),
        st.sampled_from(["s1", "s2"]),
        st.none() | st.sampled_from([NOW - DAY, NOW + DAY]),
    ),
    max_size=4,
)
SCREENINGS = st.builds(
    screened,
    st.sampled_from(["clear", "coach_looks", "clinician_first", "do_not_start"]),
    st.sampled_from(["s1", "s2"]),
    st.sampled_from(["", "left_arm", "left_leg,right_leg"]),
)


@given(DECISIONS, SCREENINGS)
def test_an_open_limb_has_a_decision_on_these_answers_and_no_answer_against_it(
    decisions: list[Cleared], answers: ScreeningDone
) -> None:
    found = standing(decisions, answers, NOW)
    assert bool(found.limbs) is (found.why is None)
    if found.limbs:
        one = in_force(decisions, NOW)
        assert one is not None
        assert (one.screening, answers.tier != "do_not_start") == (answers.screening, True)
        assert not {limb.value for limb in found.limbs} & set(answers.closed.split(","))
        assert one.decision not in ("held", "declined")


@given(DECISIONS, SCREENINGS)
def test_a_hold_now_keeps_everybody_from_training(decisions: list[Cleared], answers: ScreeningDone) -> None:
    held = decided("held", "", until=NOW + DAY, ago=SECOND)
    assert standing([*decisions, held], answers, NOW).limbs == frozenset()
