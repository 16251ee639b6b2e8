"""The evening, the next morning and two days later: what is asked when, and where the answers lead."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.safety.aftercare import WHEN_YES, Route, Sign, leads, missing_sign, route
from core.safety.asking import After, Part, asked_after
from core.safety.causes import Cause

VIENNA = "Europe/Vienna"
OFF = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
DETAILS = list(WHEN_YES)


def said(**answers: str) -> dict[Sign, str]:
    return {
        Sign.ANYTHING: "yes",
        **dict.fromkeys(DETAILS, "no"),
        **{Sign(name): answer for name, answer in answers.items()},
    }


def test_all_fine_is_one_answer() -> None:
    assert missing_sign({}) is Sign.ANYTHING
    assert missing_sign({Sign.ANYTHING: "no"}) is None
    assert route({Sign.ANYTHING: "no"}) is Route.FINE
    assert route(said()) is Route.FINE


@pytest.mark.parametrize(
    ("sign", "wanted"),
    [
        ("chest_or_breath", Route.EMERGENCY),
        ("fainted", Route.EMERGENCY),
        ("one_sided", Route.EMERGENCY),
        ("dark_urine", Route.EMERGENCY),
        ("weakness", Route.EMERGENCY),
        ("swelling", Route.CLINICIAN_TODAY),
        ("numb_still", Route.CLINICIAN_TODAY),
        ("fever", Route.COACH),
        ("sore_beyond", Route.COACH),
    ],
)
def test_each_sign_has_its_route(sign: str, wanted: Route) -> None:
    assert route(said(**{sign: "yes"})) is wanted


def test_soreness_out_of_proportion_with_fever_or_swelling_goes_to_a_clinician_today() -> None:
    assert route(said(sore_beyond="yes", fever="yes")) is Route.CLINICIAN_TODAY
    found = leads(said(sore_beyond="yes", swelling="yes"))
    assert Cause.MUSCLE_SIGNS in {lead.cause for lead in found}


@pytest.mark.parametrize("sign", DETAILS)
def test_not_sure_goes_to_the_coach_or_for_grave_signs_to_a_clinician(sign: Sign) -> None:
    grave = WHEN_YES[sign][0] is Route.EMERGENCY
    assert route(said(**{sign: "not_sure"})) is (Route.CLINICIAN_TODAY if grave else Route.COACH)


def test_open_and_unknown_answers_are_refused() -> None:
    with pytest.raises(ValueError, match="chest_or_breath"):
        leads({Sign.ANYTHING: "yes"})
    with pytest.raises(ValueError, match="fever"):
        leads(said(fever="perhaps"))


@given(
    st.dictionaries(st.sampled_from(DETAILS), st.sampled_from(["yes", "no", "not_sure"])),
    st.sampled_from(DETAILS),
)
def test_one_more_yes_never_makes_the_route_milder(answers: dict[Sign, str], sign: Sign) -> None:
    base = {**said(), **answers}
    no, unsure, yes = (route({**base, sign: answer}).rank for answer in ("no", "not_sure", "yes"))
    assert no <= unsure <= yes


@given(st.dictionaries(st.sampled_from(DETAILS), st.sampled_from(["yes", "no", "not_sure"])))
def test_every_lead_names_a_source_and_the_strictest_comes_first(answers: dict[Sign, str]) -> None:
    found = leads({**said(), **answers})
    assert all(lead.sources for lead in found)
    assert [lead.route.rank for lead in found] == sorted((lead.route.rank for lead in found), reverse=True)


# --- when -------------------------------------------------------------------------------------------------------
def parts(after: After, ended: datetime = OFF) -> list[Part]:
    return [part for part, _ in asked_after(after, ended, VIENNA)]


@pytest.mark.parametrize(
    ("after", "wanted"),
    [
        (After(1), [Part.EVENING, Part.MORNING, Part.TWO_DAYS]),
        (After(2, 3), [Part.EVENING, Part.MORNING, Part.TWO_DAYS]),
        (After(3, 3), [Part.MORNING]),
        (After(9, 13), [Part.MORNING]),
        (After(9, 14), [Part.EVENING, Part.MORNING, Part.TWO_DAYS]),
        (After(9, 3, jump=0.10), [Part.MORNING]),
        (After(9, 3, jump=0.11), [Part.MORNING, Part.TWO_DAYS]),
        (After(9, 3, hot_or_feverish=True), [Part.EVENING, Part.MORNING, Part.TWO_DAYS]),
    ],
)
def test_which_questions_follow(after: After, wanted: list[Part]) -> None:
    assert parts(after) == wanted


def test_the_times_are_the_clients_also_over_a_clock_change() -> None:
    ended = datetime(2026, 3, 28, 9, 0, tzinfo=UTC)  # Saturday 10:00 in Vienna; clocks jump that night
    assert asked_after(After(1), ended, VIENNA) == (
        (Part.EVENING, datetime(2026, 3, 28, 17, 0, tzinfo=UTC)),
        (Part.MORNING, datetime(2026, 3, 29, 6, 0, tzinfo=UTC)),
        (Part.TWO_DAYS, ended + timedelta(hours=48)),
    )


@pytest.mark.parametrize(("hour", "evening"), [(15, 17), (17, 19), (18, 20), (19, None)])
def test_the_evening_question_waits_two_hours_and_never_comes_after_nine(
    hour: int, evening: int | None
) -> None:
    found = dict(asked_after(After(1), datetime(2026, 3, 2, hour, 0, tzinfo=UTC), VIENNA))
    wanted = None if evening is None else datetime(2026, 3, 2, evening, 0, tzinfo=UTC)
    assert found.get(Part.EVENING) == wanted


def test_after_midnight_the_same_morning_asks() -> None:
    ended = datetime(2026, 3, 2, 23, 30, tzinfo=UTC)  # half past midnight on 3 March in Vienna
    assert dict(asked_after(After(9, 3), ended, VIENNA))[Part.MORNING] == datetime(
        2026, 3, 3, 7, 0, tzinfo=UTC
    )


@given(st.integers(1, 50), st.none() | st.integers(0, 90), st.floats(0, 1), st.booleans())
def test_the_next_morning_is_always_asked(number: int, days: int | None, jump: float, hot: bool) -> None:
    asked = asked_after(After(number, days, jump, hot), OFF, VIENNA)
    assert Part.MORNING in dict(asked)
    assert all(at > OFF for _, at in asked)


# --- on each limit and on either side ---------------------------------------------------------------------------
TICK = timedelta(milliseconds=1)


@pytest.mark.parametrize(("after", "asked"), [(-TICK, True), (timedelta(0), True), (TICK, False)])
def test_the_evening_ends_at_nine(after: timedelta, asked: bool) -> None:
    """Two hours after a session that ended at 19:00."""
    parts = asked_after(After(1), datetime(2026, 3, 2, 19, tzinfo=UTC) + after, "UTC")
    assert (Part.EVENING in dict(parts)) is asked


@pytest.mark.parametrize(("after", "day"), [(-TICK, 2), (timedelta(0), 3), (TICK, 3)])
def test_a_session_before_four_in_the_morning_belongs_to_the_day_before(after: timedelta, day: int) -> None:
    parts = dict(asked_after(After(9, 2), datetime(2026, 3, 2, 4, tzinfo=UTC) + after, "UTC"))
    assert parts[Part.MORNING] == datetime(2026, 3, day, 8, tzinfo=UTC)
