"""Client and coach change days in the chat; reminders, quiet hours and absences follow."""

from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.engine import Engine
from bot.engine.days import calendar
from core.calendar.changing import in_zone
from core.calendar.recurrence import Weekday, weekly
from core.calendar.stored import when_from_text, when_to_text
from core.facts import CalendarChanged, CoachDid, Detail, PlanGiven, SessionEnded, SessionStarted
from core.plan_text import plan_to_text
from core.plans import Plan
from core.safety.causes import Cause
from core.store import duties, facts, people
from core.store.people import Person
from tests.practice import CLIENT, COACH, SQUAT, START, Practice

LISBON = "Europe/Lisbon"
DAYS = weekly((Weekday.MON, Weekday.THU), time(19), LISBON, date(2026, 3, 2))  # START: Monday 2 March, 18:00


class Days(Practice):
    """The practice, with a plan on Mondays and Thursdays at 19:00."""

    def __init__(self) -> None:
        super().__init__()
        store = self.stage.engine.store
        with store.transaction():
            plan = plan_to_text(Plan("squats", (SQUAT,), when=when_to_text(DAYS)))
            facts.put(store, self.client, PlanGiven(START, plan, 1), START)
            calendar.remind_next(self.stage.engine, self.ruta, START)

    @property
    def ruta(self) -> Person:
        """The client as she is now."""
        return people.by_id(self.stage.engine.store, self.client)

    @property
    def next_at(self) -> datetime | None:
        """When the next reminder is due."""
        talk = duties.next_talk(self.stage.engine.store, self.client, "reminding")
        return None if talk is None else talk.due_at

    def reminders(self) -> list[str]:
        """All that was said about sessions that were due."""
        begins = ("Time for", "I'm late", "At ", "Yesterday's", "I was away and did", "I was away, and")
        return [text for text in self.heard(CLIENT) if text.startswith(begins)]

    def set_detail(self, name: str, value: str, person: int | None = None) -> None:
        """A stored detail."""
        store, now = self.stage.engine.store, self.stage.clock.now()
        with store.transaction():
            facts.put(store, person or self.client, Detail(now, name, value), now)
            calendar.remind_next(self.stage.engine, self.ruta, now)

    def wakes_up_after(self, **time: float) -> None:
        """Nobody was running for so long."""
        self.stage.clock.skip_to(self.stage.clock.now() + timedelta(**time))
        self.stage.engine = Engine(self.stage.engine.store, self.stage.engine.config, self.stage.clock.now)
        self.settle()


@pytest.fixture
def days() -> Iterator[Days]:
    made = Days()
    yield made
    made.stage.close()


def utc(day: int, hour: int, minute: int = 0) -> datetime:
    """A time in March 2026, when Lisbon is on UTC until the 29th."""
    return datetime(2026, 3, day, hour, minute, tzinfo=UTC)


# --- phrases ---
def test_a_client_moves_a_session_and_the_coach_hears_one_line(days: Days) -> None:
    days.types(CLIENT, "move thursday to friday same time")
    assert "Friday 6 March 2026, 19:00 (Lisbon time). Right?" in days.newest(CLIENT).text
    assert days.heard(COACH) == []
    days.taps(CLIENT, "Yes")
    [told] = days.heard(COACH)
    assert told == (
        "Ruta changed days: Thursday 5 March 2026, 19:00 moves to Friday 6 March 2026, 19:00 (Lisbon time)."
    )
    days.later(hours=5)  # Monday's reminder, missed
    days.later(days=3, hours=20)
    assert days.stage.clock.now() == utc(6, 19)
    assert days.reminders()[-1].startswith("Time for goblet squat")


def test_not_today_leaves_today_out_and_the_next_reminder_is_thursdays(days: Days) -> None:
    days.types(CLIENT, "not today")
    days.taps(CLIENT, "Yes")
    assert days.next_at == utc(5, 19)


def test_a_change_ends_the_reminder_that_is_open(days: Days) -> None:
    days.later(hours=1)
    assert days.newest(CLIENT).text.startswith("Time for goblet squat")
    days.types(CLIENT, "skip this week")
    days.taps(CLIENT, "Yes")
    days.later(hours=5)
    assert not any("Still here" in text for text in days.heard(CLIENT))
    assert days.next_at == utc(9, 19)


def test_the_coach_changes_a_clients_days_and_words_to_the_client_stay_words(days: Days) -> None:
    days.types(COACH, "ruta: move thursday to friday")
    assert "Friday 6 March 2026" in days.newest(COACH).text
    days.taps(COACH, "Yes")
    assert days.newest(CLIENT).text.startswith("Your coach changed your days: Thursday 5 March 2026")
    did = facts.latest(days.stage.engine.store, CoachDid, days.client)
    assert did is not None
    assert did.action == "changed_days"
    days.types(COACH, "to ruta: move thursday to friday")
    assert days.newest(CLIENT).text == "From your coach: move thursday to friday"
    assert len(facts.current(days.stage.engine.store, CalendarChanged, days.client)) == 1


def test_what_the_coach_says_of_a_client_and_is_no_time_is_not_passed_on(days: Days) -> None:
    days.types(COACH, "ruta: well done")
    assert days.newest(COACH).text.startswith("I couldn't read a day or time for Ruta")
    assert days.heard(CLIENT) == []
    days.types(COACH, "skip this week")
    assert days.newest(COACH).text == "For whom? Like: Ruta: skip this week"


def test_too_near_goes_to_the_coach_who_overrides_with_a_note(days: Days) -> None:
    days.types(CLIENT, "move thursday to tuesday")
    days.taps(CLIENT, "Ask my coach")
    assert days.newest(COACH).text.startswith(
        "Ruta would like: Thursday 5 March 2026, 19:00 moves to Tuesday 3"
    )
    days.taps(COACH, "Yes, all the same")
    days.types(COACH, "Light session.")
    change = facts.latest(days.stage.engine.store, CalendarChanged, days.client)
    assert change is not None
    assert (change.limit, change.note) == ("hours_apart", "Light session.")
    assert days.newest(CLIENT).text.startswith("Your coach changed your days")


def test_another_time_at_the_reminder_moves_the_session_itself(days: Days) -> None:
    days.later(hours=1)
    days.taps(CLIENT, "Other time")
    days.types(CLIENT, "tomorrow 7am")
    days.taps(CLIENT, "Yes")
    assert days.next_at == utc(3, 7)
    plan = [one for one in facts.current(days.stage.engine.store, CalendarChanged, days.client)]
    assert "2026-03-03T07:00:00" in plan[-1].when


def test_another_time_that_is_too_near_is_told_before_it_holds(days: Days) -> None:
    days.later(hours=1)
    days.types(CLIENT, "wednesday 19:00")
    days.taps(CLIENT, "Yes")
    assert "less than 36 hours" in days.newest(CLIENT).text
    assert facts.current(days.stage.engine.store, CalendarChanged, days.client) == []


# --- elsewhere ---
def test_a_trip_moves_the_clock_for_its_days_and_then_back(days: Days) -> None:
    days.types(CLIENT, "I am in Tokyo next week")
    days.taps(CLIENT, "Yes")
    assert days.ruta.zone == LISBON
    days.later(days=6, hours=2)
    assert days.ruta.zone == "Asia/Tokyo"
    assert days.next_at == datetime(2026, 3, 9, 10, tzinfo=UTC)  # 19:00 in Tokyo
    days.later(days=7, hours=12)
    assert days.ruta.zone == LISBON
    assert days.next_at == utc(16, 19)


def test_a_new_zone_does_not_remind_of_the_same_session_twice(days: Days) -> None:
    days.later(hours=1, minutes=1)
    assert len(days.reminders()) == 1
    days.taps(CLIENT, "Not today")
    days.types(CLIENT, "I am in New York")
    days.taps(CLIENT, "Yes")
    days.later(hours=10)
    assert len(days.reminders()) == 1


# --- reminders ---
def test_a_reminder_ahead_of_time_says_how_long_there_is(days: Days) -> None:
    days.set_detail("remind_before", "30")
    days.later(minutes=31)
    assert days.newest(CLIENT).text == "At 19:00: goblet squat. Start when you're ready."


def test_one_gentle_repeat_and_no_more(days: Days) -> None:
    days.later(hours=3)
    assert sum("Still here" in text for text in days.heard(CLIENT)) == 1


def test_a_session_in_quiet_hours_is_reminded_of_at_its_own_time_but_not_ahead(days: Days) -> None:
    days.set_detail("quiet_hours", "18:45-07:00")
    days.set_detail("remind_before", "10")
    days.later(minutes=59)
    assert days.reminders() == []
    days.later(minutes=1)
    assert days.reminders() == ["Time for goblet squat. Start when you're ready."]
    days.later(hours=11)  # and the repeat does not come at night
    assert not any("Still here" in text for text in days.heard(CLIENT))


def test_who_trained_already_today_is_not_reminded(days: Days) -> None:
    store = days.stage.engine.store
    with store.transaction():
        facts.put(store, days.client, SessionStarted(START, "9-1", 1, "squats"), START)
    days.later(hours=2)
    assert days.reminders() == []
    assert days.next_at == utc(5, 19)


def test_a_missed_session_is_asked_about_the_next_day_and_two_go_to_the_coachs_list(days: Days) -> None:
    days.later(hours=17)
    assert days.newest(CLIENT).text.startswith("Yesterday's goblet squat didn't happen; that's fine.")
    days.taps(CLIENT, "Drop it")
    assert duties.open_alerts(days.stage.engine.store, days.client) == []
    days.later(days=3)
    [alert] = duties.open_alerts(days.stage.engine.store, days.client)
    assert alert.cause is Cause.MISSED
    assert days.heard(COACH) == []
    days.types(COACH, "week")
    assert any("Ruta: missed sessions" in text for text in days.heard(COACH))


def test_after_ten_days_away_there_is_one_honest_message_about_sessions(days: Days) -> None:
    days.wakes_up_after(days=10)
    assert len(days.reminders()) == 1
    assert days.reminders()[0].startswith("I was away, and 3 sessions passed without a word from me")
    assert "Monday 9 March 2026, 19:00" in days.reminders()[0]
    assert days.next_at == utc(12, 19)
    days.later(hours=1, minutes=5)
    assert days.reminders()[-1].startswith("Time for goblet squat")


def test_after_an_absence_that_hid_a_question_about_a_missed_session_there_is_one_message(days: Days) -> None:
    days.later(hours=5)  # Monday's lapsed: tomorrow at ten it is asked about
    before = len(days.reminders())
    days.wakes_up_after(days=3, hours=14)  # Friday at 13:00
    assert len(days.reminders()) == before + 1
    assert days.reminders()[-1].startswith("I was away, and 2 sessions passed")


@pytest.mark.parametrize(
    ("minutes", "text"),
    [(10, "Time for goblet squat"), (11, "I'm late, sorry: goblet squat was due at 19:00")],
)
def test_a_reminder_that_comes_late_says_so(days: Days, minutes: int, text: str) -> None:
    days.wakes_up_after(hours=1, minutes=minutes)
    assert days.newest(CLIENT).text.startswith(text)


@pytest.mark.parametrize(
    ("hours", "text"), [(3, "I'm late, sorry"), (3.01, "I was away and did not remind you")]
)
def test_three_hours_late_it_is_no_reminder_any_more(days: Days, hours: float, text: str) -> None:
    days.set_detail("quiet_hours", "00:00-00:00")
    days.wakes_up_after(hours=1 + hours)
    assert days.newest(CLIENT).text.startswith(text)


def test_what_passed_during_an_absence_is_not_said_at_night(days: Days) -> None:
    days.wakes_up_after(days=4, hours=5)  # Friday at 23:00
    assert days.reminders() == []
    days.later(hours=8)
    assert len(days.reminders()) == 1
    assert days.reminders()[0].startswith("I was away, and 2 sessions passed")


def test_a_clock_that_is_set_back_reminds_of_a_session_once(days: Days) -> None:
    days.later(hours=1, minutes=1)
    assert len(days.reminders()) == 1
    engine = days.stage.engine
    with engine.store.transaction():
        calendar.remind_next(engine, days.ruta, utc(2, 18, 30))
    assert days.next_at == utc(5, 19)


def test_over_the_change_of_the_clocks_each_local_date_has_one_reminder_at_its_hour(days: Days) -> None:
    every_day = weekly(tuple(Weekday), time(1, 30), LISBON, date(2026, 3, 27))
    store = days.stage.engine.store
    with store.transaction():
        facts.put(store, days.client, CalendarChanged(START, when_to_text(every_day), 1, "x"), START)
        calendar.remind_next(days.stage.engine, days.ruta, START)
    days.later(days=29)
    done = store.rows(
        "SELECT json_extract(about, '$.session_day') AS day, due_at FROM planned"
        " WHERE dialogue = 'reminding' AND done_at IS NOT NULL ORDER BY due_at"
    )
    assert [row["day"] for row in done] == [
        "2026-03-27",
        "2026-03-28",
        "2026-03-29",
        "2026-03-30",
        "2026-03-31",
    ]
    assert [datetime.fromtimestamp(row["due_at"] / 1000, UTC).strftime("%H:%M") for row in done] == (
        ["01:30", "01:30", "01:30", "00:30", "00:30"]  # 01:30 does not exist on the 29th: 02:30 summer time
    )


# --- quiet hours ---
def test_words_wait_for_the_end_of_quiet_hours_on_both_sides(days: Days) -> None:
    days.later(hours=4)  # 22:00
    days.types(COACH, "to ruta: well done")
    assert days.newest(COACH).text == "It is quiet hours for Ruta; it goes out at 07:00 there."
    days.types(CLIENT, "coach thank you")
    assert "quiet hours are over" in days.newest(CLIENT).text
    days.later(hours=8, minutes=59)
    assert not any("well done" in text for text in days.heard(CLIENT))
    days.later(minutes=1)
    assert days.newest(CLIENT).text == "From your coach: well done"
    assert days.newest(COACH).text == "Ruta: thank you"


def test_an_alert_never_waits_for_quiet_hours(days: Days) -> None:
    days.later(hours=4)
    days.types(CLIENT, "chest pain")
    assert "chest pain" in days.newest(COACH).text


# --- what was planned ---
def test_what_was_planned_counts_each_session_once_by_the_days_that_held(days: Days) -> None:
    days.types(CLIENT, "move thursday to friday")
    days.taps(CLIENT, "Yes")
    planned = calendar.planned_between(days.stage.engine, days.ruta, START, START + timedelta(days=14))
    assert [f"{one.at:%a %d}" for one in planned] == ["Mon 02", "Fri 06", "Mon 09", "Thu 12"]
    moved = in_zone(when_from_text(when_to_text(DAYS)), LISBON)
    assert moved == DAYS


# --- the week ---
def test_every_week_the_client_reads_what_was_done_one_thing_to_try_and_the_next_dates(days: Days) -> None:
    store = days.stage.engine.store
    with store.transaction():
        facts.put(store, days.client, SessionStarted(START, "9-1", 1, "squats"), START)
        facts.put(store, days.client, SessionEnded(START, "9-1", "done"), START)
    days.later(days=6, hours=14)  # Monday at 8:00
    [text] = [text for text in days.heard(CLIENT) if text.startswith("Your week")]
    assert text.splitlines() == [
        "Your week: 1 of 2 sessions.",
        "Loads stayed where they are; steady counts.",
        "One thing to try: if a day doesn't suit, move it: 'move thursday to friday'. A moved session counts in full.",
        "Next: Monday 9 March 2026, 19:00 (Lisbon time); Thursday 12 March 2026, 19:00 (Lisbon time).",
    ]


def test_the_recap_waits_for_the_clients_morning(days: Days) -> None:
    days.set_detail("quiet_hours", "21:00-09:30")
    days.later(days=6, hours=14)  # the coach's Monday began at 7:00
    assert not any("that happens" in text for text in days.heard(CLIENT))
    days.later(hours=2)
    assert any(text.startswith("No session this week; that happens.") for text in days.heard(CLIENT))


def test_the_plan_shows_the_session_and_not_its_reminder_as_the_client_writes_times(days: Days) -> None:
    days.set_detail("remind_before", "30")
    days.set_detail("clock_face", "12")
    days.types(CLIENT, "plan")
    assert "Next time: Monday 2 March 2026, 7:00 pm (Lisbon time)." in days.newest(CLIENT).text
    assert "\nEvery Monday and Thursday at 7:00 pm.\n" in days.newest(CLIENT).text


DEEDS = st.lists(
    st.sampled_from(["an hour", "a day", "back", "skip", "move", "tokyo", "home", "away"]),
    min_size=4,
    max_size=10,
)


@settings(max_examples=12)
@given(DEEDS)
def test_whatever_happens_no_session_is_reminded_of_twice_and_there_is_always_a_next_one(
    deeds: list[str],
) -> None:
    days = Days()
    try:
        for deed in deeds:
            do(days, deed)
        rows = days.stage.engine.store.rows(
            "SELECT json_extract(about, '$.name') AS name FROM planned WHERE dialogue = 'reminding'"
            " AND done_at IS NOT NULL AND json_extract(about, '$.again') IS NULL"
        )
        names = [row["name"] for row in rows]
        assert len(names) == len(set(names))
        assert days.next_at is not None
        assert days.next_at >= days.stage.clock.now()
    finally:
        days.stage.close()


def do(days: Days, deed: str) -> None:
    """One thing that happens to a calendar."""
    engine, now = days.stage.engine, days.stage.clock.now()
    said = {
        "skip": "skip tomorrow",
        "move": "move it to tomorrow 11:00",
        "tokyo": "I am in Tokyo",
        "home": "back in Lisbon",
    }
    match deed:
        case "an hour":
            days.later(hours=1)
        case "a day":
            days.later(days=1)
        case "away":
            days.wakes_up_after(days=2, hours=7)
        case "back":  # the clock was wrong by hours, and something plans the next reminder anew
            with engine.store.transaction():
                calendar.remind_next(engine, days.ruta, now - timedelta(hours=5))
                calendar.remind_next(engine, days.ruta, now)
        case _:
            days.types(CLIENT, said[deed])
            if any(label == "Yes" for row in days.newest(CLIENT).buttons for label, _ in row):
                days.taps(CLIENT, "Yes")


def test_the_same_plan_again_keeps_the_days_to_which_it_was_changed(days: Days) -> None:
    days.types(CLIENT, "wed and sat 7am")
    days.taps(CLIENT, "Yes")
    days.types(COACH, "client ruta")
    days.taps(COACH, "The plan")
    days.taps(COACH, "Finish the plan")
    days.taps(COACH, "Finish it")
    assert days.next_at is None
    days.later(minutes=1)
    days.taps(COACH, "Same plan again")
    planned = calendar.planned_between(days.stage.engine, days.ruta, START + timedelta(hours=2), utc(8, 0))
    assert [f"{one.at:%a %H:%M}" for one in planned] == ["Wed 07:00", "Sat 07:00"]


def test_at_home_a_place_of_the_same_clock_changes_nothing_and_offers_the_travel_plan(days: Days) -> None:
    before = days.next_at
    days.types(CLIENT, "I am in Porto next week")
    assert "nothing changes" in days.newest(CLIENT).text
    days.taps(CLIENT, "Travel plan")
    assert "Without equipment, meanwhile" in days.newest(CLIENT).text
    days.later(days=6, hours=2)
    assert (days.ruta.zone, days.next_at is not None, before is not None) == (LISBON, True, True)
    assert not any("changed days" in text for text in days.heard(COACH))


def test_a_second_trip_leaves_the_first_one_alone_and_both_lead_home(days: Days) -> None:
    for said in ("I am in Tokyo from 9 to 11 march", "I am in Madrid from 12 to 14 march"):
        days.types(CLIENT, said)
        days.taps(CLIENT, "Yes")
    zones = []
    for _ in range(14):
        days.later(days=1)
        zones.append(days.ruta.zone)
    assert list(dict.fromkeys(zones)) == [LISBON, "Asia/Tokyo", "Europe/Madrid"]
    assert zones[-1] == LISBON


def test_who_stays_longer_where_they_are_comes_home_after_it(days: Days) -> None:
    days.types(CLIENT, "I am in Tokyo until friday")
    days.taps(CLIENT, "Yes")
    days.later(days=1)
    assert days.ruta.zone == "Asia/Tokyo"
    days.types(CLIENT, "I am in Tokyo until 12 march")
    days.taps(CLIENT, "Yes")
    days.later(days=6)
    assert days.ruta.zone == "Asia/Tokyo"
    days.later(days=4)
    assert days.ruta.zone == LISBON


def test_another_time_at_the_reminder_is_read_on_the_clients_own_clock(days: Days) -> None:
    days.set_detail("clock_face", "12")
    days.later(hours=1, minutes=1)
    days.taps(CLIENT, "Other time")
    days.types(CLIENT, "tomorrow 6:30")
    days.taps(CLIENT, "Tuesday 3 March 2026, 6:30 pm (Lisbon time)")
    assert days.next_at == utc(3, 18, 30)


def test_a_reminder_ahead_of_time_is_still_true_when_it_is_asked_again(days: Days) -> None:
    days.set_detail("remind_before", "45")
    days.later(minutes=16)
    asked = days.newest(CLIENT).text
    days.later(minutes=46)
    assert days.newest(CLIENT).text == asked
    assert "minutes" not in asked


def test_another_time_that_is_the_sessions_own_moves_nothing(days: Days) -> None:
    days.set_detail("remind_before", "45")
    days.later(minutes=16)
    days.taps(CLIENT, "Other time")
    days.types(CLIENT, "19:00")
    days.taps(CLIENT, "Yes")
    assert "Monday 2 March 2026, 19:00" in days.newest(CLIENT).text
    assert days.next_at == utc(2, 19)
    assert not facts.current(days.stage.engine.store, CalendarChanged, days.client)


def test_a_session_that_was_to_move_and_did_not_is_asked_about_the_next_day(days: Days) -> None:
    days.later(hours=1, minutes=1)
    days.taps(CLIENT, "Other time")
    days.types(CLIENT, "wednesday 7pm")
    days.taps(CLIENT, "Yes")
    assert "less than 36 hours" in days.newest(CLIENT).text
    days.later(hours=16)
    assert days.newest(CLIENT).text.startswith("Yesterday's goblet squat didn't happen")


MISSED = "Yesterday's goblet squat didn't happen"


def too_near(days: Days) -> None:
    """At the reminder another time is wished for that a usual limit advises against."""
    days.later(hours=1, minutes=1)
    days.taps(CLIENT, "Other time")
    days.types(CLIENT, "wednesday 7pm")
    days.taps(CLIENT, "Yes")


@pytest.mark.parametrize("choice", ["Leave it as it is", "Ask my coach"])
def test_a_session_left_where_it_was_is_asked_about_the_next_day(days: Days, choice: str) -> None:
    too_near(days)
    days.taps(CLIENT, choice)
    days.later(hours=16)
    assert days.newest(CLIENT).text.startswith(MISSED)


def test_a_session_left_where_it_was_and_done_is_not_asked_about(days: Days) -> None:
    too_near(days)
    days.taps(CLIENT, "Leave it as it is")
    with days.stage.engine.store.transaction():
        now = days.stage.clock.now()
        facts.put(days.stage.engine.store, days.client, SessionStarted(now, "1", 1, "squats"), now)
    days.later(hours=16)
    assert not any(text.startswith(MISSED) for text in days.heard(CLIENT))


def test_a_session_that_the_coach_let_move_is_not_asked_about_on_its_old_day(days: Days) -> None:
    too_near(days)
    days.taps(CLIENT, "Ask my coach")
    days.taps(COACH, "Yes, all the same")
    days.types(COACH, "Light session.")
    days.later(hours=16)
    assert not any(text.startswith(MISSED) for text in days.heard(CLIENT))


def test_a_missed_session_that_is_left_is_not_asked_about_twice(days: Days) -> None:
    days.later(hours=17)
    assert days.newest(CLIENT).text.startswith(MISSED)
    days.taps(CLIENT, "Other time")
    days.types(CLIENT, "wednesday 7pm")
    days.taps(CLIENT, "Yes")
    days.taps(CLIENT, "Leave it as it is")
    days.later(hours=26)
    assert sum(text.startswith(MISSED) for text in days.heard(CLIENT)) == 1


@pytest.mark.parametrize("no", ["no", "No thanks.", "no, leave it", "never mind"])
def test_a_no_where_no_day_could_be_read_leaves_the_days(days: Days, no: str) -> None:
    days.types(CLIENT, "skip 31 feb")
    days.types(CLIENT, no)
    assert days.newest(CLIENT).text == "All right, everything stays as it was."
