"""Advice for open sets, played out session by session."""

from datetime import timedelta

import pytest

from core.plans import Rung, Scheme
from core.progression import Action, Caution, Reason, Request, advise
from core.resistance import Ladder, Loads
from tests.core.progression.scenes import DAY, ask, gentle, kg, rack, session


def test_the_first_load_is_about_30_percent_of_the_maximum() -> None:
    advice = advise(ask())
    assert (advice.use, advice.action) == (kg(12), Action.START)
    assert advice.because.reason is Reason.START_FROM_MAX
    assert len(advice.expected_reps) == 2  # gentle: two sets
    assert advice.expected_reps[0] == 27  # 31 or 32, ended with four left


def test_without_a_maximum_one_starts_with_the_lightest() -> None:
    advice = advise(ask(resistance=rack(one_rm=None)))
    assert (advice.use, advice.because.reason) == (kg(2), Reason.START_LIGHTEST)
    low, high = advice.first_set_80
    assert high - low > 60  # honest: nobody knows


def test_the_coachs_load_comes_first_but_not_above_half_of_the_maximum() -> None:
    assert advise(ask(planned=kg(9))).use == kg(9)
    assert advise(ask(planned=kg(20))).use == kg(20)
    assert advise(ask(planned=kg(21))).use == kg(20)


def test_when_even_the_lightest_is_more_than_half_of_the_maximum_nobody_starts() -> None:
    advice = advise(ask(resistance=rack(low=25, one_rm=40)))
    assert (advice.use, advice.action) == (kg(25), Action.PAUSE)


def test_a_light_start_is_corrected_at_once_by_several_steps() -> None:
    first = session(0, kg(10), 46, 20, reps_left=(4, 4))
    advice = advise(ask(first, resistance=rack(step=0.5)))
    assert advice.action is Action.RAISE
    assert advice.use in (kg(11), kg(11.5), kg(12))


def kilograms(advice: object) -> float:
    return advice.use.kilograms  # type: ignore[attr-defined, no-any-return]


def test_never_more_than_30_percent_at_once() -> None:
    first = session(0, kg(10), 150, 60, reps_left=(4, 4))
    advice = advise(ask(first, resistance=rack(one_rm=80)))
    assert kilograms(advice) == 13
    assert advise(ask(first, resistance=rack(low=10, step=5, one_rm=80))).because.reason is (
        Reason.STEP_TOO_LARGE
    )


def test_a_set_inside_the_range_holds_the_load() -> None:
    advice = advise(ask(*gentle(kg(12)), session(2, kg(12), 31, 16, 8)))
    assert (advice.use, advice.action) == (kg(12), Action.HOLD)
    assert advice.because.reason is Reason.IN_RANGE
    assert advice.expected_reps[0] in range(29, 35)
    assert advice.chance_in_range > 0.8


def test_one_forty_among_thirties_is_no_reason_to_raise() -> None:
    steady = [session(2 + at, kg(12), 30, 15, 8) for at in range(3)]
    advice = advise(ask(*gentle(kg(12)), *steady, session(5, kg(12), 40, 18, 9)))
    assert advice.action is Action.HOLD


def test_forties_again_and_again_raise_by_one_step() -> None:
    climbing = [session(2 + at, kg(12), 38 + at, 18, 9) for at in range(4)]
    advice = advise(ask(*gentle(kg(12)), *climbing))
    assert (advice.use, advice.action) == (kg(13), Action.RAISE)
    assert advice.because.reason is Reason.TOO_MANY
    assert advice.because.last_reps == 41


def test_few_reps_again_and_again_lower_the_load() -> None:
    sliding = [session(2 + at, kg(12), 22 - at, 11, 5) for at in range(3)]
    advice = advise(ask(*gentle(kg(12)), *sliding))
    assert advice.action is Action.LOWER
    assert advice.because.reason is Reason.TOO_FEW


def test_the_expected_sets_follow_the_clients_own_fall() -> None:
    steep = [session(2 + at, kg(12), 32, 10, 4) for at in range(6)]
    flat = [session(2 + at, kg(12), 32, 20, 12) for at in range(6)]
    first, second, third = advise(ask(*gentle(kg(12)), *steep)).expected_reps
    assert second <= 12
    assert third <= 6
    assert advise(ask(*gentle(kg(12)), *flat)).expected_reps[1] >= 18
    assert first > second > third


def test_the_second_session_stays_gentle() -> None:
    advice = advise(ask(session(0, kg(12), 27, 12, reps_left=(4, 4))))
    assert advice.because.reason is Reason.SECOND_GENTLE
    assert len(advice.expected_reps) == 2


SORE = [
    (3, Caution.PAIN_NOT_SETTLED),
    (4, Caution.PAIN_ABOVE_CEILING),
    (6, Caution.PAIN_HIGH),
]


@pytest.mark.parametrize(("pain", "wanted"), SORE)
def test_pain_stops_a_raise_that_reps_had_earned(pain: int, wanted: Caution) -> None:
    climbing = [session(2 + at, kg(12), 45, 20, 9, pain=2) for at in range(3)]
    calm = session(5, kg(12), 45, 20, 9, pain=2)
    sore = session(5, kg(12), 45, 20, 9, pain=pain)
    assert advise(ask(*gentle(kg(12)), *climbing, calm)).action is Action.RAISE
    advice = advise(ask(*gentle(kg(12)), *climbing, sore))
    assert advice.action in (Action.HOLD, Action.LOWER, Action.PAUSE)
    assert advice.because.caution is wanted
    assert (advice.action is Action.PAUSE) == (pain > 5)


HELD = [
    {"stopped": "dizzy"},
    {"loose": True},
    {"tightness": 5},
    {"tightness": 8},
    {"refill_s": 3.5},
    {"rough": True},
    {"fast": True},
    {"check_ok": False},
]


@pytest.mark.parametrize("details", HELD, ids=lambda one: next(iter(one)))
def test_a_day_that_was_not_right_never_raises(details: dict[str, object]) -> None:
    climbing = [session(2 + at, kg(12), 45, 20, 9) for at in range(3)]
    wrong = session(5, kg(12), 60, 20, 9, **details)
    advice = advise(ask(*gentle(kg(12)), *climbing, wrong))
    assert advice.action is not Action.RAISE
    assert advice.because.reason is Reason.CAUTION


@pytest.mark.parametrize(("tightness", "raised"), [(5.9, False), (6, True), (7.9, True), (8, False)])
def test_six_up_to_eight_is_a_right_tightness(tightness: float, raised: bool) -> None:
    climbing = [session(2 + at, kg(12), 45, 20, 9, tightness=tightness) for at in range(4)]
    assert (advise(ask(*gentle(kg(12)), *climbing)).action is Action.RAISE) == raised


@pytest.mark.parametrize(("refill_s", "raised"), [(3.0, True), (3.01, False)])
def test_a_refill_over_three_seconds_is_not_right(refill_s: float, raised: bool) -> None:
    climbing = [session(2 + at, kg(12), 45, 20, 9, refill_s=refill_s) for at in range(4)]
    assert (advise(ask(*gentle(kg(12)), *climbing)).action is Action.RAISE) == raised


def test_reps_with_loose_bands_do_not_count_as_strength() -> None:
    good = [session(2 + at, kg(12), 31, 15, 8) for at in range(3)]
    loose = session(5, kg(12), 55, 30, 18, tightness=4)
    plain = advise(ask(*gentle(kg(12)), *good))
    after = advise(ask(*gentle(kg(12)), *good, loose))
    assert after.expected_reps[0] - plain.expected_reps[0] <= 1


def test_a_session_with_loose_bands_changes_no_load_in_either_way() -> None:
    weak = [session(2 + at, kg(12), 18, 9, 5) for at in range(2)]
    assert advise(ask(*gentle(kg(12)), *weak)).action is Action.LOWER
    loose = advise(ask(*gentle(kg(12)), *weak, session(4, kg(12), 18, 9, 5, loose=True)))
    assert (loose.use, loose.action) == (kg(12), Action.HOLD)


@pytest.mark.parametrize(
    ("days", "caution"),
    [(7, None), (8, Caution.MISSED_WEEK), (13, Caution.MISSED_WEEK), (14, Caution.LAYOFF)],
)
def test_days_off_are_noticed(days: int, caution: Caution | None) -> None:
    climbing = [session(2 + at, kg(12), 41, 20, 9) for at in range(4)]
    today = DAY + timedelta(days=15 + days)
    advice = advise(ask(*gentle(kg(12)), *climbing, today=today))
    assert advice.because.caution is caution
    assert (advice.action is Action.RAISE) == (caution is None)
    assert advice.because.days == days


def test_a_weekly_trainer_has_not_missed_a_week() -> None:
    weekly = [session(3 * at, kg(12), 41, 20, 9) for at in range(6)]  # every ninth day
    today = DAY + timedelta(days=45 + 9)
    assert advise(ask(*weekly, today=today)).cautions == ()


def test_a_long_layoff_comes_back_lighter() -> None:
    steady = [session(2 + at, kg(12), 31, 15, 8) for at in range(4)]
    fine = rack(step=0.5)
    advice = advise(ask(*gentle(kg(12)), *steady, resistance=fine, today=DAY + timedelta(days=45)))
    assert advice.action is Action.LOWER
    assert 10 <= kilograms(advice) < 12


def test_after_an_illness_one_comes_back_easier() -> None:
    steady = [session(2 + at, kg(12), 31, 15, 8) for at in range(4)]
    advice = advise(ask(*gentle(kg(12)), *steady, resistance=rack(step=0.5), ill=True))
    assert advice.action is Action.LOWER
    assert advice.because.caution is Caution.ILL


def test_at_half_of_the_maximum_it_asks_for_a_new_test() -> None:
    strong = [session(2 + at, kg(20), 45, 22, 11) for at in range(4)]
    advice = advise(ask(*gentle(kg(20)), *strong))
    assert (advice.use, advice.because.reason) == (kg(20), Reason.HALF_OF_MAX)


def test_at_the_top_of_the_rack_it_says_so() -> None:
    strong = [session(2 + at, kg(12), 50, 25, 12) for at in range(4)]
    advice = advise(ask(*gentle(kg(12)), *strong, resistance=rack(high=12)))
    assert (advice.action, advice.because.reason) == (Action.HOLD, Reason.TOP_OF_EQUIPMENT)


def test_at_the_bottom_of_the_rack_it_says_so() -> None:
    weak = [session(2 + at, kg(12), 12, 6, 3) for at in range(4)]
    advice = advise(ask(*gentle(kg(12)), *weak, resistance=rack(low=12)))
    assert (advice.action, advice.because.reason) == (Action.HOLD, Reason.BOTTOM_OF_EQUIPMENT)


def test_a_load_not_owned_any_more_is_replaced_by_a_near_one() -> None:
    steady = [session(2 + at, kg(12), 31, 15, 8) for at in range(4)]
    travelling = rack(low=5, high=30, step=2.5)
    assert advise(ask(*gentle(kg(12)), *steady, resistance=travelling)).use == kg(12.5)


LADDER = Ladder((Rung("hands high", 0.41), Rung("knees", 0.49), Rung("hands low", 0.55)), 78)


def test_a_ladder_starts_at_its_easiest_rung_and_climbs() -> None:
    assert advise(Request("push-up", Scheme.OPEN, LADDER)).use == "hands high"
    climbing = tuple(session(at, "hands high", 48, 25, 14) for at in range(3))
    advice = advise(Request("push-up", Scheme.OPEN, LADDER, climbing))
    assert (advice.use, advice.action) == ("knees", Action.RAISE)


def test_a_ladder_without_fractions_is_climbed_all_the_same() -> None:
    bridges = Ladder((Rung("both legs"), Rung("feet raised"), Rung("one leg")))
    climbing = tuple(session(at, "both legs", 48, 25, 14) for at in range(3))
    assert advise(Request("hip bridge", Scheme.OPEN, bridges, climbing)).use == "feet raised"


BAD = [
    (lambda: session(0, kg(12), -1), "reps"),
    (lambda: session(0, kg(12), 10_000), "reps"),
    (lambda: session(0, kg(12)), "reps"),
    (lambda: session(0, kg(12), 30, reps_left=(3, 3)), "reps_left"),
    (lambda: session(0, kg(12), 30, tightness=float("nan")), "tightness"),
    (lambda: session(0, kg(12), 30, pain=11), "pain"),
    (lambda: session(0, kg(12), 30, effort=-1), "effort"),
    (lambda: session(0, kg(12), 30, refill_s=float("inf")), "refill_s"),
    (lambda: session(0, kg(12), 30, rest_s=(-5.0,)), "rest_s"),
    (lambda: ask(session(1, kg(12), 30), session(0, kg(12), 30)), "date"),
    (lambda: ask(session(1, kg(12), 30), today=DAY), "today"),
    (lambda: ask(planned=kg(12.3)), "planned"),
    (lambda: ask(session(0, "squat", 30)), "used"),
    (lambda: Request("push-up", Scheme.OPEN, LADDER, (session(0, "handstand", 9),)), "used"),
    (lambda: Request("push-up", Scheme.OPEN, LADDER, (session(0, kg(9), 9),)), "used"),
    (lambda: Request("", Scheme.OPEN, LADDER), "movement"),
    (lambda: Request("walk", Scheme.WALK, LADDER), "scheme"),
]


@pytest.mark.parametrize(("wrong", "named"), BAD)
def test_bad_input_names_its_field(wrong: object, named: str) -> None:
    with pytest.raises(ValueError, match=f"^{named}:"):
        wrong()  # type: ignore[operator]


@pytest.mark.parametrize(("reps", "tired"), [((45, 30, 20), True), ((45, 30, 20), False), ((3, 2, 1), True)])
def test_muscles_tired_from_elsewhere_move_no_load_either_way(reps: tuple[int, ...], tired: bool) -> None:
    advice = advise(ask(*gentle(kg(10)), session(2, kg(10), *reps, tired=tired)))
    assert (advice.action is Action.HOLD) is tired
    assert (Caution.TRAINED_ELSEWHERE in advice.cautions) is tired


@pytest.mark.parametrize(
    ("reps", "reason"),
    [(40, Reason.IN_RANGE), (41, Reason.HIGH_ONCE), (25, Reason.IN_RANGE), (24, Reason.LOW_ONCE)],
)
def test_a_load_that_stays_after_a_set_outside_of_its_range_says_why(reps: int, reason: Reason) -> None:
    few = Loads((kg(10), kg(12.5)))
    steady = tuple(session(number, kg(10), 31, 15, 8) for number in (2, 3, 4))
    advice = advise(ask(*gentle(kg(10)), *steady, session(5, kg(10), reps, 15, 8), resistance=few))
    assert (advice.action, advice.because.reason) == (Action.HOLD, reason)
