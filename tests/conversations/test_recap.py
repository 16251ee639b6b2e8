"""The recap: what was done, what comes next and why, a line each."""

from conversations.words.recap import NOTHING, TOMORROW, recap
from core.plans import Side

BOTH = [(Side.BOTH, reps) for reps in (33, 17, 8)]
WHY = "Your reps are climbing, so up a little: 13 kg should bring about 31."


def test_a_raise_says_from_what_to_what_and_why() -> None:
    text = recap([("Goblet squat", BOTH, "12 kg")], [("Goblet squat", "12 kg", "13 kg", WHY)])
    assert text.splitlines() == [
        "Goblet squat, 12 kg: 33, 17, 8 reps.",
        f"Next time, goblet squat: 12 kg to 13 kg. {WHY}",
        TOMORROW,
    ]


def test_a_load_that_stays_is_said_once() -> None:
    named = recap([], [("Curl", "4 kg", "4 kg", "4 kg fits.")]).splitlines()
    assert named[1] == "Next time, curl: 4 kg fits."
    named = recap([], [("Curl", "4 kg", "4 kg", "Your second time stays gentle: 4 kg.")]).splitlines()
    assert named[1] == "Next time, curl: your second time stays gentle: 4 kg."
    unnamed = recap([], [("Curl", "4 kg", "4 kg", "Ease off a little.")]).splitlines()
    assert unnamed[1] == "Next time, curl: 4 kg again. Ease off a little."


def test_a_walk_has_its_minutes_and_nothing_done_is_said_kindly() -> None:
    assert recap([], [], [10.2]).splitlines() == ["Walk with bands: 10 min.", TOMORROW]
    assert recap([], []).splitlines() == [NOTHING, TOMORROW]


def test_one_sided_work_has_a_count_for_each_side() -> None:
    done = [(Side.LEFT, 28), (Side.RIGHT, 31), (Side.LEFT, 15), (Side.RIGHT, 16)]
    assert recap([("Row", done, "6 kg")], []).splitlines()[0] == "Row, 6 kg: left 28, 15 / right 31, 16 reps."
