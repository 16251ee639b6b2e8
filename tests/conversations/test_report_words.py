"""What the report says in words."""

from dataclasses import replace

from conversations.words.report import in_short
from core.outcomes import Change, Week
from core.report import Checks, First, Movement, Pain, PainTrend, Report

SQUAT = Movement(
    "Goblet squat",
    (First("2026-01-05", 31, "10 kg", 25, 40), First("2026-02-26", 36, "12 kg", 25, 40)),
    8,
    378,
    5,
    8,
    0,
    0,
    6,
    7,
    "12 kg",
    12.4,
    True,
)
PAIN = (Pain("2026-01-05", 4, 2, None), Pain("2026-02-26", 1, None, 0))
MADE = Report(
    "2026-01-05",
    "2026-02-27",
    16,
    14,
    13,
    1,
    (),
    (SQUAT,),
    6,
    60.0,
    PAIN,
    PainTrend(4.0, 1.0, Change.DOWN),
    7.2,
    Checks(44, 43, 1, 0, 6.4),
)


def test_the_page_says_what_happened_in_plain_words() -> None:
    assert in_short(MADE) == [
        "Came to 14 of 16 planned sessions, one of them stopped early.",
        "Goblet squat: 8 sessions, 378 reps, 10 kg to 12 kg; set 1 up by 12 % at 12 kg, a clear change.",
        "Set 1 fell within the range wanted 5 of 8 times, within the expected range 6 of 7 times.",
        "Walks with bands: 6, 60 min in all.",
        "Pain before sessions: 4.0 at first, 1.0 lately; less, by the published rule. Highest pain on record: 4 of 10.",
        "Effort after sessions: 7.2 of 10 on average.",
        "Bands were checked 44 times (each limb counts): 43 fine, 1 loosened first, 0 taken off; felt tightness 6.4 of 10.",
        "A usual refill alone does not prove that a band sits right.",
        "Girth: not measured.",
    ]


def test_refills_that_could_not_be_seen_are_told_apart() -> None:
    said = in_short(replace(MADE, checks=Checks(4, 2, 0, 0, None, 2)))
    looked = "Bands were checked 4 times (each limb counts): 2 fine, 0 loosened first, 0 taken off"
    assert f"{looked}, 2 without a refill that can be seen." in said


def test_a_change_within_the_daily_spread_is_not_called_one() -> None:
    calm = replace(MADE, movements=(replace(SQUAT, percent=-3.0, sure=False),))
    assert "set 1 down by 3 % at 12 kg, not yet a clear change." in in_short(calm)[1]
    same = replace(MADE, movements=(replace(SQUAT, percent=0.2, sure=False),))
    assert "set 1 at 12 kg as before." in in_short(same)[1]


def test_without_pain_without_days_without_checks_it_says_so() -> None:
    bare = replace(
        MADE, planned=0, stopped=0, pain=(Pain("2026-01-05", 0, 0, 0),), checks=Checks(0, 0, 0, 0, None)
    )
    said = in_short(bare)
    assert said[0] == "13 sessions done; no fixed days."
    assert "No pain in 1 session; asked before, after, in the days after." in said
    assert "No band check on record." in said


def test_no_pain_is_said_only_of_what_was_asked() -> None:
    asked = replace(MADE, pain=(Pain("2026-01-05", 0, None, None), Pain("2026-01-08", 0, 0, None)))
    assert "No pain in 2 sessions; asked before, after." in in_short(asked)


def test_the_weekly_load_is_named_with_what_it_is_made_of() -> None:
    week = replace(MADE, last_week=Week(590.0, 0.86, 509.0), mean_week=520.0)
    assert (
        "Weekly load (effort x minutes): 590 in the last seven days, 520 a week on average; monotony 0.9, load x monotony 509."
        in in_short(week)
    )
    equal = replace(MADE, last_week=Week(210.0, None, None))
    assert "Weekly load (effort x minutes): 210 in the last seven days; every day was the same." in in_short(
        equal
    )
    none = replace(MADE, last_week=Week(0.0, None, None))
    assert "Weekly load (effort x minutes): 0 in the last seven days." in in_short(none)


def test_a_slow_variation_is_named_with_its_variation() -> None:
    slow = replace(SQUAT, firsts=(replace(SQUAT.firsts[0], doing="sit to stand, low chair, tempo 2/2"),))
    assert "at low chair, tempo 2/2" in in_short(replace(MADE, movements=(slow,)))[1]
