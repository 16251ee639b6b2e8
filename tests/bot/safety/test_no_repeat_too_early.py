"""How early a repeat may go out: never before its time, and with another alert's only when that is near."""

import asyncio
from datetime import datetime, timedelta
from itertools import pairwise

import pytest

from bot.engine import Engine
from core.store import duties
from core.store.connection import Store
from tests.practice import CLIENT, COACH, SECOND, Practice

SECOND_LONG = timedelta(seconds=1)
ROUNDS = [timedelta(minutes=after) for after in (5, 15, 30, 60, 120, 240, 480, 720)]  # after it was raised
WORDS = ("chest pain", "i feel dizzy", "my calf is swollen")  # numbness would ask again after ten minutes
NEAR, NEAR_LATER = timedelta(minutes=5), timedelta(minutes=30)  # own caution, no source
LATER = 4  # sendings of both, from which on the wider one counts


def goes_to(practice: Practice, at: datetime) -> None:
    """Let time pass until then."""
    asyncio.run(practice.stage.run(at))


def repeats(practice: Practice, who: int) -> list[datetime]:
    """When somebody got an alert once more."""
    return [one.at for one in practice.messages(who) if "not answered yet" in one.text]


def raised(practice: Practice) -> list[datetime]:
    """When the open alerts were raised, oldest first."""
    found = duties.open_alerts(practice.stage.engine.store, practice.client)
    return [one.raised_at for one in found if one.tier == "now"]


def says(practice: Practice, words: str) -> None:
    """A sign, and that it is better: worse, or no answer, would be one more alert."""
    practice.types(CLIENT, words)
    practice.taps(CLIENT, "Better")


def apart(practice: Practice, gaps_s: tuple[float, ...]) -> list[datetime]:
    """One cause after the other."""
    says(practice, WORDS[0])
    first = raised(practice)[0]
    for words, gap_s in zip(WORDS[1:], gaps_s, strict=False):
        goes_to(practice, first + timedelta(seconds=gap_s))
        says(practice, words)
    assert [(at - first).total_seconds() for at in raised(practice)] == [0, *gaps_s]
    return raised(practice)


@pytest.mark.parametrize("number", range(len(ROUNDS)))
def test_a_second_before_its_time_nothing_goes_out_and_at_its_time_it_does(
    practice: Practice, number: int
) -> None:
    (first,) = apart(practice, ())
    goes_to(practice, first + ROUNDS[number] - SECOND_LONG)
    assert repeats(practice, COACH) == [first + after for after in ROUNDS[:number]]
    goes_to(practice, first + ROUNDS[number])
    assert repeats(practice, COACH) == [first + after for after in ROUNDS[: number + 1]]
    assert repeats(practice, SECOND) == repeats(practice, COACH)


def test_the_client_hears_that_nobody_could_be_reached_at_15_minutes_and_no_second_before(
    practice: Practice,
) -> None:
    (first,) = apart(practice, ())
    goes_to(practice, first + timedelta(minutes=15) - SECOND_LONG)
    assert not any("could not be reached" in text for text in practice.heard(CLIENT))
    goes_to(practice, first + timedelta(minutes=15))
    assert sum("could not be reached" in text for text in practice.heard(CLIENT)) == 1


# Seconds from the first alert to the second -> minutes and seconds of the repeats, from the first alert.
@pytest.mark.parametrize(
    ("gap_s", "times"),
    [
        # 4:59 and 5:00 later: due within five minutes of the first one's, so it goes with that.
        (299, ["5:00", "15:00", "30:00", "60:00"]),
        (300, ["5:00", "10:00", "15:00", "30:00", "60:00"]),
        # 5:01 later: each by its own clock.
        (301, ["5:00", "10:01", "15:00", "20:01", "30:00", "35:01", "60:00"]),
    ],
)
def test_in_the_first_hour_a_repeat_speaks_for_another_that_is_due_within_five_minutes(
    practice: Practice, gap_s: float, times: list[str]
) -> None:
    first, _ = apart(practice, (gap_s,))
    goes_to(practice, first + timedelta(minutes=64))
    assert [shown(at - first) for at in repeats(practice, COACH)] == times


@pytest.mark.parametrize(
    ("gap_s", "times"),
    [
        # The second is due at 89:59, 90:00 and 90:01; the first at 120:00, which is more than, just, and less
        # than half an hour away.
        (1799, ["89:59", "120:00"]),
        (1800, ["90:00", "150:00"]),
        (1801, ["90:01", "150:01"]),
    ],
)
def test_later_a_repeat_speaks_for_another_that_is_due_within_half_an_hour(
    practice: Practice, gap_s: float, times: list[str]
) -> None:
    first, _ = apart(practice, (gap_s,))
    goes_to(practice, first + timedelta(minutes=170))
    found = [at for at in repeats(practice, COACH) if at > first + timedelta(minutes=70)]
    assert [shown(at - first) for at in found] == times


def shown(span: timedelta) -> str:
    """Minutes and seconds."""
    return f"{span // timedelta(minutes=1)}:{span.seconds % 60:02}"


@pytest.mark.parametrize(
    "gaps_s",
    [(0,), (1,), (60,), (299,), (301,), (840,), (901,), (1740,), (2160,), (5400,), (60, 400), (1200, 2400)],
)
def test_each_of_several_keeps_its_own_clock_but_for_what_is_near(
    practice: Practice, monkeypatch: pytest.MonkeyPatch, gaps_s: tuple[float, ...]
) -> None:
    """Counts every sending of each alert, whatever the message says."""
    sent = noted_sendings(practice.stage.engine, monkeypatch)
    began = apart(practice, gaps_s)
    goes_to(practice, began[0] + timedelta(hours=20))
    assert len(sent) == len(began)
    for at, mine in zip(began, sent.values(), strict=True):
        assert mine[0] == at
        for number, (sending, after) in enumerate(zip(mine[1:], ROUNDS, strict=False), start=1):
            others = [sum(one < sending for one in other) for other in sent.values() if other is not mine]
            near = NEAR_LATER if min([number, *others]) >= LATER else NEAR
            assert at + after - (near if others else timedelta(0)) <= sending <= at + after + NEAR
    assert all(one < later for one, later in pairwise(repeats(practice, COACH)))


def noted_sendings(engine: Engine, monkeypatch: pytest.MonkeyPatch) -> dict[int, list[datetime]]:
    """By alert, when it was sent."""
    found: dict[int, list[datetime]] = {}
    right = duties.alert_sent

    def noted(store: Store, alert: int, next_at: datetime | None) -> None:
        found.setdefault(alert, []).append(engine.clock())
        right(store, alert, next_at)

    monkeypatch.setattr(duties, "alert_sent", noted)
    return found
