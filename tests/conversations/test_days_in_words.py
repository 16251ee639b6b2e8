"""Days and times change in plain words, played as scripts."""

from datetime import UTC, date, datetime, time
from typing import Any

import msgspec
import pytest

from conversations import changing
from conversations.changing import Brief, is_change
from conversations.protocol import Do, Effect, Opened, Record, Said, Say
from conversations.words import changing as words
from conversations.words.dates import zone_name
from conversations.words.planning import named
from core.calendar.limits import USUAL, Bout
from core.calendar.recurrence import Weekday, weekly
from core.calendar.stored import when_from_text, when_to_text
from core.facts import CalendarChanged, CoachDid, Detail
from core.plans import Region

LISBON = "Europe/Lisbon"
NOW = datetime(2026, 1, 5, 10, tzinfo=UTC)  # a Monday morning in Lisbon
DAYS = when_to_text(weekly((Weekday.MON, Weekday.THU), time(19), LISBON, date(2025, 12, 1)))
LEGS = (("legs", False),)


def brief(said: str, **more: Any) -> Brief:
    """A client on Mondays and Thursdays at 19:00."""
    known: dict[str, Any] = {
        "client": 5,
        "client_name": "Ruta",
        "coach": 1,
        "zone": LISBON,
        "planned_when": DAYS,
    }
    known |= {"parts": LEGS, "date_order": "dd/mm", "said": said, "said_at": NOW}
    return Brief(**(known | more))


def play(begun: Brief, *texts: str) -> tuple[list[Say], list[Effect], bool]:
    """What was said and done, and whether it is over; states go through their stored form."""
    turn = changing.DIALOGUE.advance(None, Opened(NOW, begun), NOW)
    said, effects = list(turn.replies), list(turn.effects)
    for text in texts:
        assert turn.state is not None, f"over before {text!r}"
        state = msgspec.json.decode(msgspec.json.encode(turn.state), type=changing.DIALOGUE.state)
        turn = changing.DIALOGUE.advance(state, Said(NOW, text), NOW)
        said += turn.replies
        effects += turn.effects
    return said, effects, turn.state is None


def stored(effects: list[Effect]) -> CalendarChanged:
    """The one change that was stored."""
    [fact] = [
        one.fact for one in effects if isinstance(one, Record) and isinstance(one.fact, CalendarChanged)
    ]
    return fact


@pytest.mark.parametrize(
    ("said", "told"),
    [
        (
            "move thursday to friday same time",
            "Thursday 8 January 2026, 19:00 moves to Friday 9 January 2026, 19:00 (Lisbon time). Right?",
        ),
        ("not today", "No session on Monday 5 January 2026, 19:00 (Lisbon time). Right?"),
        (
            "skip this week",
            "No sessions from Monday 5 January 2026 to Sunday 11 January 2026 (2 of them: "
            "Monday 5 January 2026, 19:00, Thursday 8 January 2026, 19:00). Right?",
        ),
        (
            "tomorrow 6:30 instead",
            "Monday 5 January 2026, 19:00 moves to Tuesday 6 January 2026, 06:30 (Lisbon time). Right?",
        ),
        (
            "in 20 minutes",
            "Monday 5 January 2026, 19:00 moves to Monday 5 January 2026, 10:20 (Lisbon time). Right?",
        ),
        (
            "mon and thu 7pm from 3 jan for six weeks",
            "Every Monday and Thursday at 19:00 (Lisbon time), from Sunday 3 January 2027 to Saturday 13 February 2027; "
            "the first is Monday 4 January 2027, 19:00 (Lisbon time); until then it stays as it is. Right?",
        ),
        (
            "I am in Tokyo next week",
            "Tokyo time from Monday 12 January 2026 to Sunday 18 January 2026, then Lisbon time again; sessions keep "
            "their hour on the clock there. Right?",
        ),
        (
            "back in Helsinki",
            "Helsinki time from now on; sessions keep their hour on the clock there. Right?",
        ),
    ],
)
def test_what_was_understood_is_said_back_with_its_dates(said: str, told: str) -> None:
    heard, effects, over = play(brief(said))
    assert [one.text for one in heard] == [told]
    assert effects == []
    assert not over


def test_a_move_is_stored_once_it_is_confirmed_with_the_words_that_asked_for_it() -> None:
    _, effects, over = play(brief("move thursday to friday"), "Yes")
    assert over
    change = stored(effects)
    assert (change.by, change.said, change.limit) == (5, "move thursday to friday", "")
    when = when_from_text(change.when)
    assert "2026-01-09T19:00:00" in when_to_text(when)
    [act] = [one for one in effects if isinstance(one, Do)]
    assert act.act == "calendar_changed"
    assert act.details["told"].startswith("Thursday 8 January 2026, 19:00 moves to")


@pytest.mark.parametrize("answer", ["Leave it as it is", "never mind", "leave it"])
def test_left_as_it_is_stores_nothing(answer: str) -> None:
    heard, effects, over = play(brief("skip this week"), answer)
    assert over
    assert effects == []
    assert heard[-1].text == words.LEFT


def test_two_readings_are_asked_back_with_their_dates_and_the_tapped_one_holds() -> None:
    heard, effects, over = play(brief("wednesday 7am"))
    assert heard[0].text.splitlines() == [
        "Which one do you mean?",
        "1. Monday 5 January 2026, 19:00 moves to Wednesday 7 January 2026, 07:00 (Lisbon time).",
        "2. One more session: Wednesday 7 January 2026, 07:00 (Lisbon time).",
    ]
    assert [one.label for one in heard[0].choices] == ["1", "2", "Something else", "Leave it as it is"]
    assert not over
    _, effects, over = play(brief("wednesday 7am"), "1")
    assert over
    assert stored(effects).said == "wednesday 7am"


def test_next_friday_said_on_a_monday_has_two_dates() -> None:
    heard, _, _ = play(brief("move thursday to next friday"))
    assert "Friday 9 January 2026" in heard[0].text
    assert "Friday 16 January 2026" in heard[0].text


def test_which_way_round_dates_are_written_is_asked_once_when_it_first_matters() -> None:
    unknown = brief("skip 8/1", date_order="")
    heard, effects, _ = play(unknown)
    assert heard[0].text == words.ORDER
    assert effects == []
    heard, effects, _ = play(unknown, "3 April")
    assert effects == [Record(Detail(NOW, "date_order", "dd/mm"))]
    assert heard[-1].text.startswith("No session on Thursday 8 January 2026")
    assert play(brief("move thursday to friday", date_order=""))[0][0].text.endswith("Right?")


def test_nothing_planned_is_said_with_the_next_session() -> None:
    heard, _, over = play(brief("move wednesday to friday"))
    assert heard[0].text == "Nothing is planned then. Next: Monday 5 January 2026, 19:00 (Lisbon time)."
    assert not over
    heard, effects, _ = play(brief("move wednesday to friday"), "move thursday to friday", "yes")
    assert stored(effects).said == "move thursday to friday"


def test_a_date_with_a_session_takes_no_second_one() -> None:
    heard, _, _ = play(brief("move monday to thursday"))
    assert heard[0].text.startswith("There is a session on Thursday 8 January 2026 already")


def test_less_than_36_hours_are_advised_against_and_the_coach_is_asked() -> None:
    heard, effects, over = play(brief("move thursday to tuesday"))
    assert named(words.LIMITS["hours_apart"], USUAL) in heard[0].text
    assert [one.label for one in heard[0].choices] == ["Another time", "Ask my coach", "Leave it as it is"]
    _, effects, over = play(brief("move thursday to tuesday"), "Ask my coach")
    assert over
    [act] = effects
    assert isinstance(act, Do)
    assert act.act == "ask_coach_about_days"
    wish = brief("move thursday to tuesday", wish=True, by_coach=True, picked=act.details["picked"])
    heard, effects, over = play(wish, "Yes, all the same", "Light day, then two days off.")
    assert heard[0].text.startswith("Ruta would like: Thursday 8 January 2026, 19:00 moves to Tuesday 6")
    change = stored(effects)
    assert (change.by, change.limit, change.note) == (1, "hours_apart", "Light day, then two days off.")
    assert Record(CoachDid(NOW, 1, "overrode_limit", change.note), 5) in effects


def test_a_coach_who_declines_a_wish_lets_the_client_know() -> None:
    _, effects, over = play(brief("move thursday to tuesday", wish=True, by_coach=True), "Leave it as it is")
    assert over
    assert effects == [Do("wish_declined", {"client": 5})]


@pytest.mark.parametrize(("hour", "advised"), [(22, True), (23, False)])
def test_the_36_hours_count_from_what_was_done_as_well(hour: int, advised: bool) -> None:
    """Done on Monday at 11:00; Tuesday 22:00 is 35 h later, 23:00 is 36."""
    begun = brief(f"{hour}:00 tomorrow instead", done=(Bout(NOW.replace(hour=11), Region.LEGS),))
    assert ("36 hours" in play(begun)[0][0].text) is advised


def test_a_fourth_session_in_a_week_is_advised_against() -> None:
    three = when_to_text(weekly((Weekday.MON, Weekday.WED, Weekday.FRI), time(7), LISBON, date(2025, 12, 1)))
    heard, _, _ = play(brief("saturday 19:00", planned_when=three), "2")
    assert named(words.LIMITS["sessions_a_week"], USUAL) in heard[-1].text


def test_a_stretch_of_dates_alone_may_mean_training_or_none() -> None:
    heard, _, _ = play(brief("from 12 jan for two weeks"))
    assert heard[0].text.splitlines()[1].startswith("1. Every Monday and Thursday at 19:00")
    assert heard[0].text.splitlines()[2].startswith("2. No sessions from Monday 12 January 2026")


def test_without_fixed_days_one_time_is_one_session() -> None:
    heard, effects, _ = play(brief("tomorrow 6:30", planned_when=""), "yes")
    assert heard[0].text == "One more session: Tuesday 6 January 2026, 06:30 (Lisbon time). Right?"
    assert stored(effects).when == '{"kind":"once","at":"2026-01-06T06:30:00","zone":"Europe/Lisbon"}'


def test_a_place_that_several_share_is_asked_back() -> None:
    heard, _, _ = play(brief("I am in Birmingham"))
    assert "London time" in heard[0].text
    assert "Chicago time" in heard[0].text


@pytest.mark.parametrize(
    "text",
    [
        "move thursday to friday",
        "skip this week",
        "I am in Lisbon next week",
        "please skip tomorrow",
        "can we move thursday to friday",
    ],
)
def test_what_can_be_nothing_else_breaks_into_an_open_question(text: str) -> None:
    assert is_change(text, NOW, LISBON, asked=True)


@pytest.mark.parametrize(
    "text",
    ["7", "31", "0", "yes", "no", "in 20 minutes", "tomorrow 7am", "not today", "all fine", "I am in pain",
     "skip", "moved it a bit, fine now", "mon and thu 7pm", "good morning"],
)  # fmt: skip
def test_what_may_be_an_answer_does_not(text: str) -> None:
    assert not is_change(text, NOW, LISBON, asked=True)


@pytest.mark.parametrize(
    "text",
    [
        "in 20 minutes",
        "tomorrow 7am",
        "not today",
        "mon and thu 7pm",
        "skip 31 feb",
        "19:30",
        "7pm",
        "at 7",
        "3 jan 18:00",
    ],
)
def test_with_no_question_open_times_are_enough(text: str) -> None:
    assert is_change(text, NOW, LISBON, asked=False)


@pytest.mark.parametrize(
    "text",
    [
        "12",
        "hello",
        "good morning",
        "ok",
        "thanks",
        "how are you?",
        "no, 21",
        "20 15",
        "21 10",
        "12.5",
        "84.5",
        "I weigh 84.5 kg",
        "girth left leg 54.5 cm",
        "25:00",
        "what do I do now",
        "good night",
        "hi, good evening",
    ],
)
def test_small_talk_is_no_time(text: str) -> None:
    assert not is_change(text, NOW, LISBON, asked=False)


@pytest.mark.parametrize(
    ("text", "broken"),
    [("in 20 minutes", False), ("tomorrow 7am", False), ("not today", False), ("move it to friday", False),
     ("move thursday to friday", True), ("skip this week", True), ("mon and wed 7pm", True)],
)  # fmt: skip
def test_the_reminder_reads_times_of_its_own_session_itself(text: str, broken: bool) -> None:
    assert is_change(text, NOW, LISBON, asked=True, reminded=True) is broken


# --- a place whose clock holds already ---
STILL = "nothing changes, the days stay as they are."


@pytest.mark.parametrize(
    ("home", "said"),
    [
        (LISBON, "I am in Lisbon"),
        (LISBON, "back home in Lisbon"),
        (LISBON, "I am in Porto"),  # another place of the same zone
        ("Asia/Kolkata", "I am in Calcutta"),  # an old name of the same zone
        ("Europe/Berlin", "I am in Oslo"),  # one clock since 1970
    ],
)
def test_who_is_where_the_clock_holds_already_is_asked_nothing(home: str, said: str) -> None:
    heard, effects, over = play(brief(said, zone=home))
    assert [one.text for one in heard] == [f"That is {zone_name(home)}, as now: {STILL}"]
    assert (effects, over, heard[0].choices) == ([], True, ())


@pytest.mark.parametrize(
    ("said", "clock"),
    [
        ("I am in Lisbon next week", "That is Lisbon time, as now"),
        ("I am in Porto next week", "That is Lisbon time, as now"),
        ("I am in London next week", "London time and Lisbon time show the same then"),
        ("I am in Abidjan next week", "Abidjan time and Lisbon time show the same then"),  # in winter
    ],
)
def test_days_at_a_place_with_the_same_clock_change_nothing_and_a_travel_plan_is_offered(
    said: str, clock: str
) -> None:
    heard, effects, over = play(brief(said))
    assert heard[0].text == f"{clock}: {STILL} No equipment there? The travel plan goes without."
    assert [(one.label, one.value) for one in heard[0].choices] == [("Travel plan", "menu:travelling")]
    assert (effects, over) == ([], True)


def test_a_coach_gets_the_travel_plan_of_that_client() -> None:
    heard, _, _ = play(brief("I am in Lisbon next week", by_coach=True))
    assert heard[0].choices[0].value == "menu:travel:5"


@pytest.mark.parametrize(
    "said",
    [
        "I am in Abidjan from 20 march to 2 april",  # summer time begins in Lisbon on 29 March
        "I am in Abidjan",  # the same only in winter
        "I am in London",  # from now on: the days are said by London's clock
        "I am in Madrid next week",
    ],
)
def test_where_a_clock_differs_at_any_hour_it_is_a_change(said: str) -> None:
    heard, _, _ = play(brief(said))
    assert "sessions keep their hour" in heard[0].text


def at(day: int) -> datetime:
    return datetime(2026, 1, day, tzinfo=UTC)


TOKYO = "Asia/Tokyo"
NEXT_WEEK = ((at(12), TOKYO), (at(19), LISBON))


def test_at_home_a_trip_to_come_stays_and_is_called_off_only_for_its_own_days() -> None:
    heard, _, over = play(brief("I am in Lisbon", clock_moves=NEXT_WEEK))
    assert over
    heard, _, over = play(brief("I am in Lisbon this week", clock_moves=((at(20), TOKYO), (at(30), LISBON))))
    assert over
    heard, _, over = play(brief("I am in Lisbon next week", clock_moves=NEXT_WEEK))
    assert heard[0].text.startswith("Lisbon time from Monday 12 January 2026")
    assert not over


def test_who_stays_longer_away_still_comes_home() -> None:
    away = {"zone": TOKYO, "clock_moves": ((at(8), LISBON),)}
    heard, _, over = play(brief("I am in Tokyo until 20 jan", **away))
    assert "Tokyo time from" in heard[0].text
    assert "then Lisbon time again" in heard[0].text
    heard, _, over = play(brief("I am in Tokyo", **away))
    assert over


def test_which_way_round_dates_are_written_need_not_be_said() -> None:
    unknown = brief("skip 8/1", date_order="")
    heard, effects, over = play(unknown, "leave it")
    assert (heard[-1].text, effects, over) == (words.LEFT, [], True)
    heard, effects, _ = play(unknown, "move thursday to friday")
    assert heard[-1].text.endswith("Right?")
    assert effects == []


def test_a_coach_who_gives_no_reason_overrides_nothing() -> None:
    over_limit = brief("move thursday to tuesday", by_coach=True)
    heard, effects, over = play(over_limit, "Yes, all the same", "never mind")
    assert (heard[-1].text, effects, over) == (words.LEFT, [], True)
    heard, effects, over = play(over_limit, "Yes, all the same", "-")
    assert (heard[-1].text, effects, over) == (words.NOTE, [], False)


@pytest.mark.parametrize("said", ["monday 7pm", "move thursday to thursday 7pm", "today at 19:00"])
def test_a_session_does_not_move_to_where_it_is(said: str) -> None:
    heard, effects, over = play(brief(said))
    assert heard[-1].text.startswith("The session is on ")
    assert "nothing changes" in heard[-1].text
    assert (effects, over) == ([], True)


def test_the_next_session_is_left_out_whenever_it_is() -> None:
    heard, _, _ = play(brief("skip my next session"))
    assert heard[0].text.startswith("No session on Monday 5 January 2026, 19:00")
    heard, _, _ = play(brief("skip the next one", planned_when=""))
    assert heard[0].text.startswith("Nothing is planned then.")


def test_of_two_days_left_open_each_is_a_reading() -> None:
    heard, _, _ = play(brief("move thursday to friday or saturday"))
    assert "1. Thursday 8 January 2026, 19:00 moves to Friday 9" in heard[0].text
    assert "2. Thursday 8 January 2026, 19:00 moves to Saturday 10" in heard[0].text
