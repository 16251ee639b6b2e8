"""Pain at the joint: accepted, eased, paused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.words import after, session, trouble
from core.safety.pain import PainDay, PainStep, Where, may_go_on, pain_step, settled

ACCEPTED, EASED, PAUSED = PainStep.ACCEPTED, PainStep.EASED, PainStep.PAUSED


@pytest.mark.parametrize(
    ("during", "ceiling", "wanted"),
    [(3, 3, ACCEPTED), (4, 3, EASED), (4, 5, ACCEPTED), (5, 5, ACCEPTED), (5, 3, EASED), (6, 5, PAUSED)],
)
def test_pain_during_a_session_against_the_ceiling(during: int, ceiling: int, wanted: PainStep) -> None:
    assert pain_step([PainDay(during, 1, 1)], ceiling) is wanted


@pytest.mark.parametrize(
    ("before", "morning", "wanted"),
    [
        (0, 0, True),
        (0, 2, True),
        (1, 3, False),  # 2 points up
        (0, 3, False),  # from nothing
        (2, 3, False),  # 50 % up
        (3, 4, False),  # 33 % up
        (4, 5, True),  # 1 point, 25 %
        (5, 5, True),
        (5, 6, False),  # above 5
        (None, 3, False),
        (3, None, True),
    ],
)
def test_settled_by_the_next_morning(before: int | None, morning: int | None, wanted: bool) -> None:
    assert settled(PainDay(2, before, morning)) is wanted


def test_above_or_not_settled_once_eases_and_twice_in_a_row_pauses() -> None:
    high, unsettled, fine = PainDay(4, 1, 1), PainDay(2, 1, 3), PainDay(2, 1, 1)
    assert pain_step([high]) is EASED
    assert pain_step([high, unsettled]) is PAUSED
    assert pain_step([high, fine, unsettled]) is EASED
    assert pain_step([high, high, fine]) is ACCEPTED
    assert pain_step([]) is ACCEPTED


@pytest.mark.parametrize("ceiling", [-1, 6])
def test_a_ceiling_above_five_is_refused(ceiling: int) -> None:
    with pytest.raises(ValueError, match="ceiling"):
        pain_step([], ceiling)


@pytest.mark.parametrize(
    ("name", "day"), [("during", (11, 0, 0)), ("before", (1, -1, 0)), ("morning", (1, 0, 11))]
)
def test_pain_off_the_scale_is_refused(name: str, day: tuple[int, int, int]) -> None:
    with pytest.raises(ValueError, match=name):
        PainDay(*day)


@pytest.mark.parametrize("where", [*Where, None])
def test_only_burn_in_the_working_muscle_goes_on(where: Where | None) -> None:
    assert may_go_on(where) is (where is Where.MUSCLE)


days = st.builds(PainDay, st.integers(0, 9), st.none() | st.integers(0, 10), st.none() | st.integers(0, 10))


@given(st.lists(days, min_size=1, max_size=5), st.integers(0, 5))
def test_more_pain_during_a_session_is_never_judged_milder(history: list[PainDay], ceiling: int) -> None:
    steps = list(PainStep)
    last = history[-1]
    worse = [*history[:-1], PainDay(last.during + 1, last.before, last.morning)]
    assert steps.index(pain_step(worse, ceiling)) >= steps.index(pain_step(history, ceiling))


def test_a_place_stored_by_its_earlier_name_still_reads() -> None:
    assert Where("under_band") is Where("band") is Where.BAND
    with pytest.raises(ValueError, match="shin"):
        Where("shin")


@pytest.mark.parametrize("labels", [after.WHERES, session.HURTS_LABELS, trouble.WHERE])
def test_every_dialogue_that_asks_where_offers_the_same_places(labels: tuple[tuple[str, str], ...]) -> None:
    assert [Where(value) for _, value in labels] == list(Where)
