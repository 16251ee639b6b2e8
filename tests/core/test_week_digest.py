"""Who needs the coach, in which order, and the practice in numbers."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.words.digest import LONGEST, NO_CLIENTS, REASONS, render
from core.digest import ClientWeek, Need, digest, needs

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
    ],
)
def test_each_reason_on_its_threshold_and_below(change: dict[str, object], reasons: list[Need]) -> None:
    assert needs(replace(CALM, **change)) == reasons  # type: ignore[arg-type]  # a table of changes


def test_the_most_urgent_comes_first() -> None:
    quiet = replace(CALM, name="Aino", quiet_days=8)
    alert = replace(CALM, name="Milo", open_alert=True)
    held = replace(CALM, name="Bea", held=True, quiet_days=8)
    assert [name for name, _ in digest([quiet, CALM, held, alert]).needs_you] == ["Milo", "Bea", "Aino"]


def test_the_practice_in_numbers() -> None:
    other = ClientWeek("Milo", 3, 1, 2, [False, True], alerts_now=1, alerts_today=2)
    week = digest([CALM, other])
    assert (week.planned, week.done, week.loads_moved) == (5, 3, 3)
    assert (week.alerts_now, week.alerts_today, week.share_in_range) == (1, 2, 0.75)


def test_no_first_sets_give_no_share() -> None:
    assert digest([ClientWeek("Ruta", 0, 0)]).share_in_range is None


@given(st.lists(WEEKS, max_size=20))
def test_who_needs_the_coach_is_there_once_and_in_order(weeks: list[ClientWeek]) -> None:
    found = digest(weeks)
    order = list(Need)
    firsts = [order.index(reasons[0]) for _, reasons in found.needs_you]
    assert firsts == sorted(firsts)
    assert sorted(name for name, _ in found.needs_you) == sorted(week.name for week in weeks if needs(week))


@given(WEEKS)
def test_one_more_worry_never_takes_a_client_off_the_list(week: ClientWeek) -> None:
    worse = replace(week, open_alert=True)
    assert set(needs(week)) | {Need.OPEN_ALERT} == set(needs(worse))


# --- in words --------------------------------------------------------------------------------------------
def test_the_message_begins_with_who_needs_the_coach_and_why() -> None:
    text = render(digest([CALM, replace(CALM, name="Milo", pain_max=5, quiet_days=7)]))
    assert text.splitlines() == [
        "Your week.",
        "Who needs you:",
        "- Milo: pain above 3, quiet for a week",
        "Practice: 4 sessions done, 4 planned; set 1 in range 100%; loads moved 2; alerts: 0 urgent, 0 same day.",
        "Everybody:",
        "Ruta: 2 of 2, 2 of 2 in range, pain up to 1, nothing planned",
        "Milo: 2 of 2, 2 of 2 in range, pain up to 5, nothing planned",
    ]


def test_a_calm_practice_is_said_to_be_calm() -> None:
    assert "Nobody needs you." in render(digest([CALM]))


def test_a_practice_without_clients_is_no_error() -> None:
    assert render(digest([])) == NO_CLIENTS


def test_every_reason_has_its_words() -> None:
    assert set(REASONS) == set(Need)


def test_sixty_clients_fit_into_one_message() -> None:
    text = render(digest([replace(CALM, name=f"Client {number}") for number in range(60)]))
    assert len(text) <= LONGEST
    assert "Client 40: 2 of 2" in text


@pytest.mark.parametrize("clients", [1, 20, 21, 40, 80, 200, 1000])
def test_a_message_is_never_too_long_and_says_how_many_are_left_out(clients: int) -> None:
    weeks = [
        replace(CALM, name=f"{number:03}" + "m" * 30, held=True, quiet_days=9) for number in range(clients)
    ]
    text = render(digest(weeks))
    assert len(text) <= LONGEST
    lines = text.splitlines()
    shown = sum(line.startswith("- ") for line in lines)
    left_out = next((int(line.split()[1]) for line in lines if line.startswith("And ")), 0)
    assert shown == clients or shown + left_out == clients
    assert any(line.startswith("Practice:") for line in lines)


@given(st.lists(WEEKS, max_size=150))
def test_any_week_fits_into_one_message(weeks: list[ClientWeek]) -> None:
    assert len(render(digest(weeks))) <= LONGEST
