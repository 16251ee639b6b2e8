"""Who may open what, and for how long; and the question before each session."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.screening import (
    Clearance,
    Consent,
    Due,
    News,
    Refusal,
    Route,
    Ruling,
    Today,
    assess,
    due,
    missing_today,
    refusal,
    route_today,
)
from tests.core.screening.people import somebody

DAY = date(2026, 3, 2)
HEALTHY = assess(somebody())
SMOKER = assess(somebody(smoking="yes"))
AFTER_CANCER = assess(somebody(cancer="yes"))
CLOT = assess(somebody(past_clot="yes"))
NO_LEFT_ARM = assess(somebody(lymph_nodes="left_arm"))
NO_ARMS = assess(somebody(wound="left_arm,right_arm"))
SAID = Consent("Dr. Invented", DAY, "no sets to failure", DAY + timedelta(weeks=8))


def ruled(ruling: Ruling, note: str = "", **more: object) -> Clearance:
    return Clearance(ruling, DAY, note, **more)  # type: ignore[arg-type]


@pytest.mark.parametrize("ruling", [Ruling.CLEARED, Ruling.LEGS_ONLY, Ruling.ARMS_ONLY])
def test_nobody_opens_do_not_start_not_even_with_a_clinician(ruling: Ruling) -> None:
    assert refusal(ruled(ruling, "I insist", consent=SAID), CLOT) is Refusal.NO_OVERRIDE


@pytest.mark.parametrize(
    ("consent", "wanted"),
    [
        (None, Refusal.NEEDS_CONSENT),
        (Consent("", DAY, "none", DAY + timedelta(days=9)), Refusal.CONSENT_INCOMPLETE),
        (Consent("Dr. Invented", DAY, " ", DAY + timedelta(days=9)), Refusal.CONSENT_INCOMPLETE),
        (
            Consent("Dr. Invented", DAY + timedelta(days=1), "none", DAY + timedelta(9)),
            Refusal.CONSENT_IN_FUTURE,
        ),
        (Consent("Dr. Invented", DAY - timedelta(days=9), "none", DAY), Refusal.CONSENT_EXPIRED),
        (Consent("Dr. Invented", DAY - timedelta(days=9), "none", DAY + timedelta(days=1)), None),
    ],
)
def test_clinician_first_needs_name_date_limits_and_expiry(
    consent: Consent | None, wanted: Refusal | None
) -> None:
    assert refusal(ruled(Ruling.CLEARED, "seen", consent=consent), AFTER_CANCER) is wanted


def test_where_the_coach_must_look_he_writes_a_note() -> None:
    assert refusal(ruled(Ruling.CLEARED, " "), SMOKER) is Refusal.NEEDS_NOTE
    assert refusal(ruled(Ruling.CLEARED, "smokes, knows the risk"), SMOKER) is None
    assert refusal(ruled(Ruling.CLEARED), HEALTHY) is None


@pytest.mark.parametrize(
    ("until", "wanted"), [(None, Refusal.NEEDS_DATE), (0, Refusal.NEEDS_DATE), (1, None)]
)
def test_a_hold_needs_a_day_to_come(until: int | None, wanted: Refusal | None) -> None:
    day = None if until is None else DAY + timedelta(days=until)
    assert refusal(ruled(Ruling.HELD_UNTIL, until=day), CLOT) is wanted


def test_declining_always_stands() -> None:
    assert refusal(ruled(Ruling.DECLINED), CLOT) is None


def test_a_decision_needs_a_limb_that_no_answer_closed() -> None:
    assert refusal(ruled(Ruling.ARMS_ONLY, "x"), NO_LEFT_ARM) is None
    assert refusal(ruled(Ruling.ARMS_ONLY, "x"), NO_ARMS) is Refusal.NO_OPEN_LIMB
    assert refusal(ruled(Ruling.LEGS_ONLY, "x"), NO_ARMS) is None


@pytest.mark.parametrize(("days", "wanted"), [(0, None), (83, None), (84, Due.TWELVE_WEEKS)])
def test_screening_is_due_after_twelve_weeks(days: int, wanted: Due | None) -> None:
    assert due(DAY, DAY + timedelta(days=days)) is wanted


@pytest.mark.parametrize("news", list(News))
def test_screening_is_due_after_any_news(news: News) -> None:
    assert due(DAY, DAY, [news]) is Due.NEWS
    assert due(None, DAY) is Due.NEVER_ASKED


# --- before each session ----------------------------------------------------------------------------------------
def today(**said: str) -> dict[Today, str]:
    details = {one: "no" for one in Today if one is not Today.ANYTHING}
    return {Today.ANYTHING: "yes", **details, **{Today(name): answer for name, answer in said.items()}}


def test_one_no_goes() -> None:
    assert missing_today({}) is Today.ANYTHING
    assert route_today({Today.ANYTHING: "no"}).route is Route.GO


@pytest.mark.parametrize(
    ("question", "route", "unsure"),
    [
        ("fever", Route.NOT_TODAY, Route.COACH_FIRST),
        ("alcohol", Route.NOT_TODAY, Route.COACH_FIRST),
        ("long_travel", Route.COACH_FIRST, Route.COACH_FIRST),
        ("pregnant", Route.SCREEN_AGAIN, Route.COACH_FIRST),
        ("new", Route.SCREEN_AGAIN, Route.COACH_FIRST),
        ("heat", Route.GENTLE, Route.GENTLE),
    ],
)
def test_each_answer_before_a_session_has_its_route(question: str, route: Route, unsure: Route) -> None:
    assert route_today(today(**{question: "yes"})).route is route
    assert route_today(today(**{question: "not_sure"})).route is unsure


def test_the_strictest_route_wins_and_says_why() -> None:
    found = route_today(today(heat="yes", fever="yes", new="yes"))
    assert found.route is Route.SCREEN_AGAIN
    assert found.because == (Today.NEW, Today.FEVER, Today.HEAT)


def test_open_and_unknown_answers_are_refused() -> None:
    with pytest.raises(ValueError, match="fever"):
        route_today({Today.ANYTHING: "yes"})
    with pytest.raises(ValueError, match="heat"):
        route_today(today(heat="perhaps"))


@given(
    st.dictionaries(
        st.sampled_from([t for t in Today if t is not Today.ANYTHING]),
        st.sampled_from(["yes", "no", "not_sure"]),
    )
)
def test_one_more_yes_today_never_makes_the_route_milder(said: dict[Today, str]) -> None:
    before = route_today({**today(), **said}).route
    for question in said:
        assert route_today({**today(), **said, question: "yes"}).route.rank >= before.rank
