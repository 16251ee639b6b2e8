"""Fixed sets: 30/15/15/15, a plain rule on top of the model."""

import pytest

from core.plans import Scheme
from core.progression import Action, Advice, Caution, Reason, SessionRecord, advise
from tests.core.progression.scenes import ask, kg, rack, session


def fixed(*sessions: SessionRecord, **details: object) -> Advice:
    return advise(ask(*sessions, scheme=Scheme.FIXED, **details))


def full(number: int, left: int = 3, **details: object) -> SessionRecord:
    return session(number, kg(12), 30, 15, 15, 15, reps_left=(8, 6, 5, left), **details)


def test_two_full_sessions_with_reps_to_spare_raise_by_the_smallest_step() -> None:
    advice = fixed(full(2), full(3))
    assert (advice.use, advice.action, advice.because.reason) == (kg(13), Action.RAISE, Reason.ALL_TWICE)


def test_one_full_session_is_not_enough() -> None:
    advice = fixed(session(0, kg(12), 30, 15, reps_left=(5, 4)), session(1, kg(12), 30, 15), full(2))
    assert (advice.action, advice.because.reason) == (Action.HOLD, Reason.ALL_ONCE)


@pytest.mark.parametrize(("left", "action"), [(2, Action.HOLD), (3, Action.RAISE), (4, Action.RAISE)])
def test_three_reps_must_be_left_after_the_last_set(left: int, action: Action) -> None:
    assert fixed(full(2, left), full(3, left)).action is action


@pytest.mark.parametrize(("last_set", "action"), [(14, Action.HOLD), (15, Action.HOLD), (16, Action.RAISE)])
def test_an_open_last_set_raises_above_fifteen(last_set: int, action: Action) -> None:
    assert fixed(session(0, kg(12), 30, 15, 15, last_set), open_last=True).action is action


@pytest.mark.parametrize("last_set", [15, 16, 17])
def test_more_than_fifteen_alone_raises_nothing_where_the_last_set_has_its_number(last_set: int) -> None:
    sessions = (session(no, kg(12), 30, 15, 15, last_set) for no in range(2))
    assert fixed(*sessions).action is Action.HOLD


@pytest.mark.parametrize(("spare", "reason"), [(2, Reason.NO_SPARE), (3, Reason.ALL_TWICE)])
def test_what_was_left_after_the_last_set_is_enough_to_know(spare: int, reason: Reason) -> None:
    sessions = (session(no, kg(12), 30, 15, 15, 15, spare=spare) for no in range(2))
    assert fixed(*sessions).because.reason is reason


def test_two_full_sessions_at_different_loads_are_no_two_in_a_row() -> None:
    lighter = session(2, kg(11), 30, 15, 15, 15, reps_left=(8, 6, 5, 3))
    assert fixed(lighter, full(3)).action is Action.HOLD


@pytest.mark.parametrize(("pain", "action"), [(2, Action.RAISE), (3, Action.HOLD)])
def test_pain_must_have_settled(pain: int, action: Action) -> None:
    assert fixed(full(2, pain=pain), full(3, pain=pain)).action is action
    assert fixed(full(2, pain=pain), full(3, pain=2)).action is action


@pytest.mark.parametrize("details", [{"rough": True}, {"loose": True}, {"check_ok": False}])
def test_a_doubtful_session_does_not_count(details: dict[str, object]) -> None:
    assert fixed(full(2, **details), full(3)).action is Action.HOLD
    assert fixed(full(2), full(3, **details)).action is Action.HOLD


@pytest.mark.parametrize(("first", "action"), [(24, Action.LOWER), (25, Action.HOLD)])
def test_fewer_than_25_in_set_1_lower_the_load(first: int, action: Action) -> None:
    assert fixed(session(0, kg(12), first, 15, 15, 15)).action is action


@pytest.mark.parametrize(("last", "action"), [(4, Action.LOWER), (5, Action.HOLD)])
def test_fewer_than_60_of_75_lower_the_load(last: int, action: Action) -> None:
    assert fixed(session(0, kg(12), 30, 15, 10, last)).action is action


def test_a_session_cut_short_is_not_counted_as_few_reps_but_eases() -> None:
    advice = fixed(full(2), session(3, kg(12), 30, 15, stopped="time"))
    assert advice.action is not Action.RAISE
    assert advice.because.caution is Caution.STOPPED


def test_expected_reps_never_pass_their_number() -> None:
    advice = fixed(full(2), full(3))
    assert all(count <= most for count, most in zip(advice.expected_reps, (30, 15, 15, 15), strict=True))
    assert advice.first_set_80[1] <= 30
    assert advice.readings == ()


def test_the_first_fixed_session_is_gentle_too() -> None:
    advice = fixed()
    assert (advice.use, advice.action) == (kg(12), Action.START)
    assert len(advice.expected_reps) == 2


def test_no_step_is_taken_beyond_30_percent() -> None:
    advice = fixed(full(2), full(3), resistance=rack(low=4, step=8))
    assert (advice.action, advice.because.reason) == (Action.HOLD, Reason.STEP_TOO_LARGE)
