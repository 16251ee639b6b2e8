"""Who needs the coach, in which order, and the practice in numbers."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.words.coach import REASONS, cut, whole_parts
from conversations.words.digest import A_PAGE, MOST_NEEDING, NO_CLIENTS, everybody, pages, render
from core.alert_use import AlertSeen, by_tier, idle_causes, led_to
from core.digest import ClientWeek, Need, digest, needs
from core.facts import CoachDid
from core.safety.causes import Cause, Tier

CALM = ClientWeek("Ruta", planned=2, done=2, loads_moved=1, in_range=[True, True], pain_max=1)

WEEKS = st.builds(
    ClientWeek,
    name=st.text(min_size=1, max_size=40),
    planned=st.integers(0, 7),
    done=st.integers(0, 9),
    loads_moved=st.integers(0, 9),
    in_range=st.lists(st.booleans(), max_size=6),
    alerts_now=st.integers(0, 3),
    alerts_today=st.integers(0, 3),
    pain_max=st.none() | st.integers(0, 10),
    quiet_days=st.integers(0, 30),
    held=st.booleans(),
    open_alert=st.booleans(),
    missed_in_a_row=st.integers(0, 4),
)


def test_a_calm_week_needs_nobody() -> None:
    assert needs(CALM) == []


@pytest.mark.parametrize(
    ("change", "reasons"),
    [
        ({"open_alert": True}, [Need.OPEN_ALERT]),
        ({"held": True}, [Need.HELD]),
        ({"alerts_now": 1}, [Need.ALERTED]),
        ({"alerts_today": 1}, [Need.ALERTED]),
        ({"pain_max": 3}, []),
        ({"pain_max": 4}, [Need.PAIN]),
        ({"in_range": [False]}, []),
        ({"in_range": [False, True]}, []),
        ({"in_range": [False, False, True]}, [Need.LOADS_OFF]),
        ({"done": 1}, []),
        ({"done": 0}, [Need.MISSED]),
        ({"missed_in_a_row": 1}, []),
        ({"missed_in_a_row": 2}, [Need.MISSED]),
        ({"done": 5}, []),
        ({"quiet_days": 6}, []),
        ({"quiet_days": 7}, [Need.QUIET]),
        ({"quiet_days": 9, "open_alert": True}, [Need.OPEN_ALERT, Need.QUIET]),
        ({"urgent": True, "open_alert": True, "alerts_now": 1}, [Need.URGENT]),
        ({"waiting": True}, [Need.CLEARANCE]),
        ({"no_plan": True}, [Need.NO_PLAN]),
        ({"no_plan": True, "finished": True}, []),
        ({"done": 0, "quiet_days": 9, "paused": True}, []),
        ({"loads_asked": 1}, [Need.LOAD_ASKED]),
        ({"screening_due": True, "review_due": True}, [Need.SCREENING_DUE, Need.REVIEW_DUE]),
    ],
)
def test_each_reason_on_its_threshold_and_below(change: dict[str, object], reasons: list[Need]) -> None:
    assert needs(replace(CALM, **change)) == reasons  # type: ignore[arg-type]  # a table of changes


def test_the_most_urgent_comes_first() -> None:
    quiet = replace(CALM, name="Aino", quiet_days=8)
    alert = replace(CALM, name="Milo", open_alert=True)
    held = replace(CALM, name="Bea", held=True, quiet_days=8)
    found = digest([quiet, CALM, held, alert]).needs_you
    assert [week.name for week, _ in found] == ["Milo", "Bea", "Aino"]


def test_of_two_with_the_same_first_reason_the_one_with_another_comes_first() -> None:
    one = replace(CALM, name="Ana", open_alert=True)
    more = replace(CALM, name="Zoe", open_alert=True, quiet_days=9)
    assert [week.name for week, _ in digest([one, more]).needs_you] == ["Zoe", "Ana"]


def test_the_practice_in_numbers() -> None:
    other = ClientWeek("Milo", 3, 1, 2, [False, True], alerts_now=1, alerts_today=2)
    week = digest([CALM, other])
    assert (week.planned, week.done, week.loads_moved) == (5, 3, 3)
    assert week.share_in_range == 0.75


def test_no_first_sets_give_no_share() -> None:
    assert digest([ClientWeek("Ruta", 0, 0)]).share_in_range is None


@given(st.lists(WEEKS, max_size=20))
def test_who_needs_the_coach_is_there_once_and_in_order(weeks: list[ClientWeek]) -> None:
    found = digest(weeks)
    order = list(Need)
    firsts = [order.index(reasons[0]) for _, reasons in found.needs_you]
    assert firsts == sorted(firsts)
    named = sorted(week.name for week, _ in found.needs_you)
    assert named == sorted(week.name for week in weeks if needs(week))


@given(WEEKS)
def test_one_more_worry_never_takes_a_client_off_the_list(week: ClientWeek) -> None:
    worse = replace(week, open_alert=True)
    assert set(needs(week)) - {Need.ALERTED} | {Need.OPEN_ALERT} == set(needs(worse))


# --- in words --------------------------------------------------------------------------------------------
def test_the_message_begins_with_who_needs_the_coach_and_why() -> None:
    milo = replace(CALM, name="Milo", pain_max=5, quiet_days=7, off_expected=[-3, -1])
    seen = [
        AlertSeen(Cause.HURTS, Tier.TODAY, False),
        AlertSeen(Cause.NERVE, Tier.NOW, True),
        AlertSeen(Cause.LAPSED, Tier.WEEKLY, False),
    ]
    text = render(digest([CALM, milo], seen, [Cause.HURTS]))
    assert text.splitlines() == [
        "Your week.",
        "Who needs you (1 of 2):",
        "- Milo: pain above 3, quiet for a week",
        "Sessions: 4 of 4 planned.",
        "Set 1 in range: 100%, 2.0 reps below what was expected.",
        "Loads moved: 2.",
        "Alerts: 1 urgent (1 led to something), 1 same day (0), 1 weekly (0).",
        "Never led to anything in eight weeks: pain.",
    ]


def test_a_calm_practice_is_said_to_be_calm() -> None:
    text = render(digest([CALM]))
    assert "Nobody needs you." in text
    assert "No new alerts." in text


def test_a_practice_without_clients_is_no_error() -> None:
    assert render(digest([])) == NO_CLIENTS


def test_every_reason_has_its_words() -> None:
    assert set(REASONS) == set(Need)


@pytest.mark.parametrize(
    ("off", "said"),
    [([-1, 0], "0.5 reps below"), ([0, 0], "as expected"), ([1, 0], "0.5 reps above"), ([], "100%.")],
)
def test_expected_against_actual_is_said_from_half_a_rep_on(off: list[int], said: str) -> None:
    assert said in render(digest([replace(CALM, off_expected=off)]))


@given(st.lists(WEEKS, max_size=80))
def test_any_week_fits_on_one_screen(weeks: list[ClientWeek]) -> None:
    lines = render(digest(weeks)).splitlines()
    assert len(lines) <= MOST_NEEDING + 8
    assert all(len(line) <= 80 for line in lines)


def test_reasons_that_do_not_fit_are_counted_and_never_cut_in_the_middle() -> None:
    """60 characters, about two lines on a phone: "on hold, waits for your cl..." said another thing."""
    three = ["on hold", "waits for your clearance", "missed sessions"]
    assert whole_parts("Margarita", three, 60) == "Margarita: on hold, waits for your clearance and 1 more"
    all_of_it = "M: on hold, waits for your clearance, missed sessions"
    assert whole_parts("M", three, len(all_of_it)) == all_of_it
    assert whole_parts("M", three, len(all_of_it) - 1) == "M: on hold, waits for your clearance and 1 more"
    assert whole_parts("Margarita", three, 1) == "Margarita: on hold and 2 more"


@pytest.mark.parametrize(
    ("longest", "shown"),
    [(27, "weekly load 1234, pain up 2"), (26, "weekly load 1234, pain up…"), (16, "weekly load…")],
)
def test_a_line_is_cut_between_words_so_that_no_number_becomes_another(longest: int, shown: str) -> None:
    assert cut("weekly load 1234, pain up 2", longest) == shown


@pytest.mark.parametrize("count", [1, A_PAGE, A_PAGE + 1, 60])
def test_everybody_stands_on_one_page_and_only_there(count: int) -> None:
    made = digest([replace(CALM, name=f"Client {number:02}", client=number) for number in range(count)])
    lines = [line for page in range(pages(made)) for line in everybody(made, page).splitlines()[1:]]
    assert [line.partition(":")[0] for line in lines] == [f"Client {number:02}" for number in range(count)]


def test_a_line_says_how_the_week_was() -> None:
    line = everybody(digest([CALM]), 0).splitlines()[1]
    assert line == "Ruta: 2 of 2, 2 of 2 in range, pain up to 1, nothing planned"


def test_the_line_of_a_client_ends_with_the_weekly_load() -> None:
    """Effort x minutes of the seven days."""
    rated = replace(CALM, pain_max=None, load=590.0, paused=True)
    assert everybody(digest([rated]), 0).splitlines()[1] == (
        "Ruta: 2 of 2, 2 of 2 in range, paused, weekly load 590"
    )


# --- alerts that lead to something -----------------------------------------------------------------------
@pytest.mark.parametrize(("count", "idle"), [(2, []), (3, [Cause.HURTS])])
def test_a_cause_is_named_after_three_alerts_that_led_to_nothing(count: int, idle: list[Cause]) -> None:
    assert idle_causes([AlertSeen(Cause.HURTS, Tier.TODAY, False)] * count) == idle


def test_an_alert_had_its_day_before_it_counts_as_idle() -> None:
    seen = [AlertSeen(Cause.HURTS, Tier.TODAY, False)] * 2
    assert idle_causes([*seen, AlertSeen(Cause.HURTS, Tier.TODAY, False, ripe=False)]) == []
    assert idle_causes([*seen, AlertSeen(Cause.HURTS, Tier.TODAY, True, ripe=False)]) == []


RAISED = datetime(2026, 3, 2, 18, tzinfo=UTC)
DAY, TICK = timedelta(hours=24), timedelta(milliseconds=1)


@pytest.mark.parametrize(
    ("action", "note", "after", "led"),
    [
        ("wrote", "", -TICK, False),
        ("wrote", "", timedelta(0), True),
        ("wrote", "", DAY, True),
        ("wrote", "", DAY + TICK, False),
        ("changed_plan", "", DAY, True),
        # said again three days later
        ("wrote", "", 3 * DAY - TICK, False),
        ("wrote", "", 3 * DAY, True),
        ("wrote", "", 4 * DAY, True),
        ("wrote", "", 4 * DAY + TICK, False),
        # by its own button, whenever
        ("alert_hold", "nerve", 20 * DAY, True),
        ("alert_call", "nerve", 20 * DAY, True),
        ("alert_settle_seen", "nerve", DAY, True),
        ("alert_hold", "nerve", -TICK, False),
        ("alert_hold", "sore", TICK, False),
        # only read
        ("alert_take", "nerve", TICK, False),
        ("alert_settle", "nerve", TICK, False),
        # of its own
        ("load_used", "", TICK, False),
        ("renamed", "", TICK, False),
        ("reviewed", "", TICK, False),
    ],
)
def test_what_an_alert_led_to(action: str, note: str, after: timedelta, led: bool) -> None:
    """Own caution, no source: on each limit and on either side."""
    did = [CoachDid(RAISED + after, 1, action, note)]
    assert led_to(Cause.NERVE, RAISED, RAISED + 3 * DAY, did) is led


def test_clear_to_train_decides_only_where_it_was_the_question() -> None:
    did = [CoachDid(RAISED, 1, "alert_settle", cause.value) for cause in Cause]
    assert [cause for cause in Cause if led_to(cause, RAISED, RAISED, did)] == [Cause.UNSEEN_REFILL]


def test_nothing_done_is_nothing_led_to() -> None:
    assert not led_to(Cause.NERVE, RAISED, RAISED, [])


@given(st.lists(st.builds(AlertSeen, st.sampled_from(list(Cause)[:3]), st.sampled_from(Tier), st.booleans())))
def test_a_cause_that_once_led_to_an_action_is_never_called_idle(alerts: list[AlertSeen]) -> None:
    assert not set(idle_causes(alerts)) & {alert.cause for alert in alerts if alert.acted}
    counted = [by_tier(alerts, tier) for tier in Tier]
    assert sum(count for count, _ in counted) == len(alerts)
    assert sum(acted for _, acted in counted) == sum(alert.acted for alert in alerts)
