"""Pain and effort from 0 to 10: what the numbers are called, and where they turn."""

import statistics
from dataclasses import replace

import pytest

from conversations.words.after import EFFORT
from core.outcomes import MONOTONY_WARNING, PAIN_POINTS, PAIN_SHARE, Change, pain_change, session_load, week
from core.plans import HIGHEST_PAIN_CEILING, PAIN_CEILING
from core.progression import Action, advise
from core.safety.pain import SETTLED, PainDay, PainStep, pain_step
from core.walking import HARD_EFFORT
from tests.core.progression.scenes import ask, gentle, kg, session

# Session effort in words (Foster, second-hand) and Borg's CR10 (read).
FOSTER = {
    0: "rest",
    1: "very very easy",
    2: "easy",
    3: "moderate",
    4: "somewhat hard",
    5: "hard",
    7: "very hard",
    10: "maximal",
}
BORG = {
    0: "nothing",
    0.5: "extremely weak",
    1: "very weak",
    2: "weak",
    3: "moderate",
    4: "somewhat strong",
    5: "strong",
    7: "very strong",
    10: "extremely strong",
}


@pytest.mark.parametrize("score", [3, 5, 7])
def test_the_effort_question_names_its_numbers_as_the_published_scale_does(score: int) -> None:
    said = EFFORT.replace("is ", "")
    assert f"{score} {FOSTER[score]}" in said


def test_both_scales_put_moderate_and_very_strong_at_the_same_numbers() -> None:
    assert set(FOSTER) == set(BORG) - {0.5}
    assert BORG[3] == FOSTER[3]
    assert FOSTER[HARD_EFFORT] == "hard"  # walks stay as they are above it


@pytest.mark.parametrize("score", [-0.1, 10.1, float("nan")])
def test_the_scale_ends_at_ten(score: float) -> None:
    assert session_load(10, 1) == 10
    assert session_load(0, 1) == 0
    with pytest.raises(ValueError, match="effort"):
        session_load(score, 1)


def test_load_is_effort_times_minutes() -> None:
    """Foster et al. 2001, JSCR 15:109 (read): asked about 30 min after, stable from 1 min to 14 days."""
    assert (session_load(6, 30), session_load(8, 25), session_load(7, 30)) == (180, 200, 210)


@pytest.mark.parametrize(
    ("days", "total", "monotony", "product"),
    [
        ((180, 0, 200, 0, 210, 0, 0), 590, (0.80, 0.86), (471, 509)),
        ((180, 120, 200, 0, 210, 150, 0), 860, (1.38, 1.49), (1184, 1279)),
    ],
)
def test_monotony_by_either_standard_deviation(
    days: tuple[int, ...], total: int, monotony: tuple[float, float], product: tuple[int, int]
) -> None:
    """Derived: sample, population. The population's is used (mean over SD of the seven days; second-hand)."""
    mean, sample = statistics.mean(days), statistics.stdev(days)
    found = week(days)
    assert found.load == total
    assert found.monotony is not None
    assert found.load_x_monotony is not None
    assert (round(mean / sample, 2), round(found.monotony, 2)) == monotony
    assert (round(total * mean / sample), round(found.load_x_monotony)) == product


def test_the_worked_week_by_its_parts() -> None:
    """Derived: mean 84.29, SD 105.49 (sample), 97.67 (population)."""
    days = (180, 0, 200, 0, 210, 0, 0)
    found = (statistics.mean(days), statistics.stdev(days), statistics.pstdev(days))
    assert [round(one, 2) for one in found] == [84.29, 105.49, 97.67]


def test_monotony_warns_above_two() -> None:
    """From memory."""
    assert MONOTONY_WARNING == 2
    assert not week([100, 0, 100, 0, 100, 0, 0]).monotonous
    assert week([100, 90, 110, 95, 100, 100, 90]).monotonous


def test_a_change_of_pain() -> None:
    """2 points or 30 %: 2,724 patients, 10 trials (Farrar et al. 2001, Pain 94:149, read); in 1,661 others more than 2
    was needed on average (PMC9299931, read), so a change that counts is said and moves nothing by itself."""
    assert (PAIN_POINTS, PAIN_SHARE) == (2, 0.30)
    assert pain_change(10, 8.1) is Change.NONE
    assert pain_change(10, 8) is Change.DOWN


@pytest.mark.parametrize(
    ("during", "step"),
    [
        (2, PainStep.ACCEPTED),
        (3, PainStep.ACCEPTED),
        (4, PainStep.EASED),
        (5, PainStep.EASED),
        (6, PainStep.PAUSED),
    ],
)
def test_the_zones_in_use(during: int, step: PainStep) -> None:
    """Up to 3 safe, 4-5 not yet, above 5 not (clinic page after Silbernagel 2007, second-hand)."""
    assert (PAIN_CEILING, HIGHEST_PAIN_CEILING) == (3, 5)
    assert pain_step([PainDay(during)]) is step


def test_the_pain_monitoring_model_where_the_coach_allows_five() -> None:
    """0-2 safe, up to 5 acceptable, above 5 high risk; settled by the next morning (Thomee 1997, from memory)."""
    assert SETTLED == 2
    assert pain_step([PainDay(5, before=1, morning=2)], ceiling=5) is PainStep.ACCEPTED
    assert pain_step([PainDay(5, before=1, morning=3)], ceiling=5) is PainStep.EASED
    assert pain_step([PainDay(6, before=1, morning=2)], ceiling=5) is PainStep.PAUSED


@pytest.mark.parametrize(
    ("pain", "action"), [(2, Action.RAISE), (3, Action.HOLD), (5, Action.LOWER), (6, Action.PAUSE)]
)
def test_the_load_follows_the_same_zones(pain: int, action: Action) -> None:
    """After far too many reps. Chronic pain is called mild to 5, moderate 6-7, severe from 8 (Boonstra 2016, read):
    the load stops rising long before."""
    easy = [session(number, kg(10), 50, 25, 12, pain=pain) for number in (2, 3)]
    start = tuple(replace(one, pain=pain) for one in gentle(kg(10)))
    found = advise(ask(*start, *easy)).action
    assert found is action or (action is Action.LOWER and found in (Action.LOWER, Action.HOLD))
