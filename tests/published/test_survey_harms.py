"""What surveys of users and practitioners counted as harm: each has a question, a sign that is read, or a route."""

import pytest

from conversations.stopwords import Kind, read
from core.safety.aftercare import Route, Sign, route
from core.screening import Tier, assess
from tests.core.screening.people import somebody
from tests.published.test_screening_lists import details

USERS = (12_462, 12_642)  # as a clinic page prints it; as remembered, fairly sure


@pytest.mark.parametrize("users", USERS)
@pytest.mark.parametrize(("percent", "people"), [(0.055, 7), (0.008, 1)])
def test_shares_of_the_first_survey_are_few_people(users: int, percent: float, people: int) -> None:
    """Nakajima et al. 2006 (second-hand): clot in a vein 0.055 %, in the lung 0.008 %, muscle breakdown 0.008 %;
    counts derived, the same with either number of users."""
    assert round(users * percent / 100) == people


@pytest.mark.parametrize(
    ("sign", "led"),
    [
        (Sign.ONE_SIDED, Route.EMERGENCY),  # clot in a vein 0.055 %
        (Sign.CHEST_OR_BREATH, Route.EMERGENCY),  # clot in the lung 0.008 %
        (Sign.DARK_URINE, Route.EMERGENCY),  # muscle breakdown 0.008 %
        (Sign.FAINTED, Route.EMERGENCY),  # 0.28 % of users; fainting or dizziness 14.6 % of practitioners
        (Sign.NUMB_STILL, Route.CLINICIAN_TODAY),  # 1.3 %; 18.5 % of practitioners
        (
            Sign.SORE_BEYOND,
            Route.COACH,
        ),  # soreness 39.2 % of practitioners: only beyond what fits the session
    ],
)
def test_every_harm_of_the_surveys_is_asked_about_afterwards_and_leads_somewhere(
    sign: Sign, led: Route
) -> None:
    """Nakajima et al. 2006 (second-hand; numbness, fainting from memory, fairly sure); Patterson and Brandner 2018,
    J Sports Sci (read): what 115 practitioners saw."""
    assert route(details(**{sign.value: "yes"})) is led


@pytest.mark.parametrize(
    ("said", "kind"),
    [
        ("my fingers are numb", Kind.NERVE),
        ("my hand feels cold", Kind.CIRCULATION),  # cold 0.13 % of users, from memory, fairly sure
        ("i feel dizzy", Kind.FAINT),
        ("i am bleeding under the skin", Kind.INJURY),  # 13.1 % of users, from memory, fairly sure
        ("my arm is bruised", Kind.UNSURE),  # bruising 13.1 % of practitioners: asked about
    ],
)
def test_and_is_heard_in_words_at_any_time(said: str, kind: Kind) -> None:
    """The same two surveys."""
    assert read(said).kind is kind


def test_who_bruises_easily_is_seen_by_the_coach_before_a_band_goes_on() -> None:
    """The same: bleeding under the skin was the most frequent of all."""
    assert assess(somebody(fragile_skin="yes")).tier is Tier.COACH_LOOKS
