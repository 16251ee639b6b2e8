"""The recap: what was done, what comes next and why, a line each."""

from conversations.words.recap import NOTHING, TOMORROW, recap

WHY = "Your reps are climbing, so up a little: 13 kg should bring about 31."


def test_a_raise_says_from_what_to_what_and_why() -> None:
    text = recap([("Goblet squat", [33, 17, 8], "12 kg")], [("Goblet squat", "12 kg", "13 kg", WHY)])
    assert text.splitlines() == [
        "Goblet squat, 12 kg: 33, 17, 8 reps.",
        f"Next time, goblet squat: 12 kg to 13 kg. {WHY}",
        TOMORROW,
    ]


def test_a_load_that_stays_is_said_once() -> None:
    named = recap([], [("Curl", "4 kg", "4 kg", "4 kg fits.")]).splitlines()
    assert named[1] == "Next time, curl: 4 kg fits."
    unnamed = recap([], [("Curl", "4 kg", "4 kg", "Ease off a little.")]).splitlines()
    assert unnamed[1] == "Next time, curl: 4 kg again. Ease off a little."


def test_a_walk_has_its_minutes_and_nothing_done_is_said_kindly() -> None:
    assert recap([], [], [10.0]).splitlines() == ["Walk with bands: 10 min.", TOMORROW]
    assert recap([], []).splitlines() == [NOTHING, TOMORROW]
