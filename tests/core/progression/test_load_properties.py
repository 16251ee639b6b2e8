"""What must hold for any client: the rules that no history may break."""

import math
from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from core.plans import Rung, Scheme
from core.progression import Action, Request, SessionRecord, advise
from core.progression.client import known
from core.resistance import Ladder, Loads
from core.units import KG_PER_LB, Load, Unit
from tests.core.progression.scenes import DAY, kg

STEPS = st.sampled_from(["0.5", "1.25", "2.5"])
REPS = st.lists(st.integers(0, 120), min_size=1, max_size=4).map(tuple)
MAYBE_SCORE = st.one_of(st.none(), st.integers(0, 10))


@st.composite
def racks(draw: st.DrawFn) -> Loads:
    step = Decimal(draw(STEPS))
    first = draw(st.integers(1, 10))
    count = draw(st.integers(1, 40))
    one_rm = draw(st.one_of(st.none(), st.integers(5, 150)))
    loads = tuple(Load(step * (first + at)) for at in range(count))
    return Loads(loads, None if one_rm is None else kg(one_rm))


@st.composite
def requests(draw: st.DrawFn, scheme: Scheme | None = None) -> Request:
    rack = draw(racks())
    day, sessions = DAY, []
    for _ in range(draw(st.integers(0, 7))):
        day += timedelta(days=draw(st.integers(0, 20)))
        sessions.append(_session(draw, rack, day))
    return Request(
        "curl",
        scheme or draw(st.sampled_from([Scheme.OPEN, Scheme.FIXED])),
        rack,
        tuple(sessions),
        today=draw(st.one_of(st.none(), st.just(day + timedelta(days=draw(st.integers(0, 40)))))),
        ill=draw(st.booleans()),
    )


def _session(draw: st.DrawFn, rack: Loads, day: object) -> SessionRecord:
    reps = draw(REPS)
    return SessionRecord(
        day,  # type: ignore[arg-type]
        draw(st.sampled_from(rack.available)),
        reps,
        tightness=draw(MAYBE_SCORE),
        refill_s=draw(st.one_of(st.none(), st.floats(0, 10))),
        pain=draw(st.one_of(st.none(), st.integers(0, 4))),
        reps_left=draw(st.one_of(st.none(), st.just((4,) * len(reps)))),
        stopped=draw(st.sampled_from([None, None, None, "tired"])),
        rough=draw(st.booleans()),
    )


def kilograms(request: Request) -> float:
    used = advise(request).use
    assert isinstance(used, Load)
    return used.kilograms


def test_a_client_who_did_no_rep_at_all_has_a_chance_of_nothing_and_not_less() -> None:
    load = Load(Decimal("0.5"))
    none = SessionRecord(DAY, load, (0,))
    advice = advise(Request("curl", Scheme.FIXED, Loads((load,)), (none,)))
    assert 0 <= advice.chance_in_range < 1e-6


@given(requests())
def test_advice_is_always_a_reachable_load(request_: Request) -> None:
    advice = advise(request_)
    assert isinstance(request_.resistance, Loads)
    assert advice.use in request_.resistance.available
    low, high = advice.first_set_80
    assert 0 <= low <= high <= 200
    assert 0 <= advice.chance_in_range <= 1
    assert all(count >= 1 for count in advice.expected_reps)


@given(requests(), st.integers(0, 6), st.integers(1, 80))
@settings(max_examples=120)
def test_more_reps_in_any_session_never_lower_the_next_load(request_: Request, at: int, more: int) -> None:
    if not request_.sessions:
        return
    at %= len(request_.sessions)
    old = request_.sessions[at]
    better = replace(old, reps=(old.reps[0] + more, *old.reps[1:]))
    sessions = (*request_.sessions[:at], better, *request_.sessions[at + 1 :])
    if len(set(sessions)) == len(set(request_.sessions)):
        assert kilograms(replace(request_, sessions=sessions)) >= kilograms(request_)


@given(requests(Scheme.FIXED), st.integers(0, 3), st.integers(1, 30))
def test_more_reps_in_any_fixed_set_never_lower_the_next_load(
    request_: Request, set_no: int, more: int
) -> None:
    if not request_.sessions:
        return
    last = request_.sessions[-1]
    reps = list(last.reps)
    reps[set_no % len(reps)] += more
    sessions = (*request_.sessions[:-1], replace(last, reps=tuple(reps)))
    if len(set(sessions)) == len(set(request_.sessions)):
        assert kilograms(replace(request_, sessions=sessions)) >= kilograms(request_)


@given(requests())
def test_a_heavier_load_never_raises_expected_reps(request_: Request) -> None:
    client = known(request_)
    middles = [client.forecast(at).middle for at in range(len(client.places.x))]
    assert middles == sorted(middles, reverse=True)


@given(requests())
def test_the_same_session_told_twice_counts_once(request_: Request) -> None:
    doubled = tuple(one for session in request_.sessions for one in (session, session))
    assert advise(replace(request_, sessions=doubled)) == advise(request_)


@given(requests(), st.randoms(use_true_random=False))
def test_the_order_of_equipment_changes_nothing(request_: Request, random: object) -> None:
    rack = request_.resistance
    assert isinstance(rack, Loads)
    mixed = list(rack.available) * 2
    random.shuffle(mixed)  # type: ignore[attr-defined]
    assert advise(replace(request_, resistance=Loads(tuple(mixed), rack.one_rm))) == advise(request_)


def in_pounds(load: Load | str) -> Load:
    assert isinstance(load, Load)
    return Load(load.value / KG_PER_LB, Unit.LB)


@given(requests())
def test_units_change_nothing(request_: Request) -> None:
    rack = request_.resistance
    assert isinstance(rack, Loads)
    one_rm = None if rack.one_rm is None else in_pounds(rack.one_rm)
    pounds = Loads(tuple(in_pounds(load) for load in rack.available), one_rm)
    sessions = tuple(replace(one, used=in_pounds(one.used)) for one in request_.sessions)
    ours = advise(request_)
    theirs = advise(replace(request_, resistance=pounds, sessions=sessions))
    assert isinstance(theirs.use, Load)
    assert theirs.use.unit is Unit.LB
    assert theirs.use == in_pounds(ours.use)
    assert (theirs.action, theirs.first_set_80) == (ours.action, ours.first_set_80)


@given(requests())
def test_a_raise_stays_within_its_bounds(request_: Request) -> None:
    if not request_.sessions:
        return
    advice, last = advise(request_), request_.sessions[-1].used
    assert isinstance(advice.use, Load)
    assert isinstance(last, Load)
    if advice.action is Action.RAISE:
        assert advice.use.kilograms <= 1.30 * last.kilograms * (1 + 1e-9)
        assert not advice.cautions
    assert isinstance(request_.resistance, Loads)
    one_rm = request_.resistance.one_rm
    if one_rm is not None and advice.action is not Action.PAUSE:
        assert advice.use.kilograms <= 0.50 * one_rm.kilograms * (1 + 1e-9)


@given(requests())
def test_nothing_is_raised_on_an_irritated_joint(request_: Request) -> None:
    if not request_.sessions:
        return
    sore = replace(request_.sessions[-1], pain=4)
    advice = advise(replace(request_, sessions=(*request_.sessions[:-1], sore)))
    assert advice.action is not Action.RAISE
    assert advice.cautions


@given(st.lists(st.integers(5, 90), min_size=2, max_size=6, unique=True), st.integers(0, 120))
def test_a_ladder_is_climbed_one_rung_at_a_time(percents: list[int], reps: int) -> None:
    rungs = tuple(Rung(f"rung {at}", percent / 100) for at, percent in enumerate(sorted(percents)))
    used = rungs[0].name
    sessions = (SessionRecord(DAY, used, (reps, 5, 5)),)
    advice = advise(Request("push-up", Scheme.OPEN, Ladder(rungs, 80), sessions))
    assert advice.use in (rungs[0].name, rungs[1].name)
    too_far = math.log((rungs[1].fraction or 1) / (rungs[0].fraction or 1)) > math.log(1.30) + 1e-9
    assert not (too_far and advice.use == rungs[1].name)
