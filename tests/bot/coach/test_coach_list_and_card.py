"""The coach opens the chat between two appointments: who needs me, who is that, what can I do."""

from collections.abc import Iterator
from datetime import timedelta

import pytest

from bot.engine.days import calendar
from conversations.words import coach as words
from core.facts import Answered, Cleared, Detail, Paused, PlanEnded, Rated, ScreeningDone
from core.safety.causes import Cause
from core.store import duties, people
from core.store.people import Role
from tests.bot.coach_room import COACH, MILO, RUTA, SECOND, START, Room


@pytest.fixture
def room() -> Iterator[Room]:
    made = Room()
    yield made
    made.stage.close()


# --- the list --------------------------------------------------------------------------------------------
def test_who_needs_attention_stands_first_with_the_reason(room: Room) -> None:
    calm = room.client(RUTA, "Ruta")
    room.trained(calm, "1", (30, 15, 8), START)
    room.client(2003, "Aino", plan=None)
    held = room.client(2004, "Bea")
    room.put(held, Cleared(START, "1", "held", "", 1))
    waits = room.client(2005, "Dora", plan=None, cleared="")
    room.put(waits, ScreeningDone(START, "9", "coach_looks", "", ""))
    hurt = room.client(2006, "Zoe")
    with room.store.transaction():
        duties.raise_alert(room.store, hurt, Cause.NERVE, "numb", "off", START, None)
    room.types(COACH, "clients")
    assert room.says(COACH).splitlines() == [
        "5 clients, 4 need you.",
        "Zoe: an urgent alert is open",
        "Bea: on hold",
        "Dora: waits for your clearance",
        "Aino: cleared, no plan yet",
        "Ruta: 1 done",
    ]
    assert room.labels(COACH) == ["Zoe", "Bea", "Dora", "Aino", "Ruta"]


def test_sixty_clients_come_a_phone_screen_at_a_time(room: Room) -> None:
    coach = room.person(COACH)
    with room.store.transaction():
        for number in range(60):
            name = f"Client {number:02}"
            people.add(room.store, 3000 + number, name, Role.CLIENT, "UTC", START, coach.id)
    room.types(COACH, "clients")
    seen: list[str] = []
    for _ in range(12):
        assert len(room.says(COACH).splitlines()) <= 9
        assert len(room.labels(COACH)) <= 9
        seen += [label for label in room.labels(COACH) if label.startswith("Client")]
        forward = [label for label in room.labels(COACH) if label.startswith("Next")]
        if not forward:
            break
        room.taps(COACH, forward[0])
    assert seen == [f"Client {number:02}" for number in range(60)]


# --- finding ---------------------------------------------------------------------------------------------
def test_a_fragment_of_a_name_opens_the_card(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.client(MILO, "Milo")
    for typed in ("ru", "Ruta", "Ruta?", "client ru", "CLIENT ruta", "clients ru"):
        room.types(COACH, typed)
        assert room.says(COACH).startswith("Ruta"), typed


def test_two_fits_are_asked_about_with_both_names(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.client(MILO, "Rui")
    room.types(COACH, "ru")
    assert (room.says(COACH), room.labels(COACH)) == ("Which one?", ["Rui", "Ruta"])
    room.taps(COACH, "Rui")
    assert room.says(COACH).startswith("Rui")


def test_a_name_nobody_has_opens_the_menu_and_a_named_search_says_so(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "xyz")
    assert room.says(COACH) == "What would you like?"
    room.types(COACH, "client xyz")
    assert "'xyz'" in room.says(COACH)


def test_a_name_typed_into_an_open_question_answers_the_question(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "invite")
    room.types(COACH, "Ruta")
    assert "For Ruta: forward this." in room.says(COACH)


def test_two_of_one_name_are_told_apart_by_the_day_they_joined(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.later(days=3)
    second = room.client(MILO, "Ruta", plan=None)
    room.types(COACH, "ruta")
    assert room.labels(COACH) == ["Ruta (since 2 Mar 2026)", "Ruta (since 5 Mar 2026)"]
    room.types(COACH, "week")
    assert "Ruta (since 5 Mar 2026): cleared, no plan yet" in room.says(COACH)
    room.taps(COACH, "Ruta (since 5 Mar 2026)")
    assert "No plan." in room.says(COACH)
    room.put(second, Detail(room.now, "phone", "555"))


def test_two_of_one_name_and_one_day_get_a_number(room: Room) -> None:
    first, second = room.client(RUTA, "Ruta"), room.client(MILO, "ruta")
    room.types(COACH, "clients")
    wanted = [f"Ruta #{first}", f"ruta #{second}"]
    assert room.labels(COACH) == wanted


def test_a_client_gets_another_name(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.client(MILO, "Ruta")
    room.types(COACH, "ruta")
    room.taps(COACH, room.labels(COACH)[0])
    room.taps(COACH, "More")
    room.taps(COACH, "Rename")
    room.types(COACH, "Ruta K.")
    room.taps(COACH, "Back to Ruta K.")
    room.types(COACH, "clients")
    assert room.labels(COACH) == ["Ruta", "Ruta K."]


def test_a_coach_sees_only_their_own_clients(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(SECOND, "clients")
    assert "No clients yet" in room.says(SECOND)
    room.types(SECOND, "ruta")
    assert room.says(SECOND) == "What would you like?"
    room.types(SECOND, "client ruta")
    assert "I don't find" in room.says(SECOND)


# --- the card --------------------------------------------------------------------------------------------
def test_the_card_says_in_ten_seconds_what_a_coach_needs(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.put(client, ScreeningDone(START - timedelta(days=1), "1", "clear", "left_arm", ""))
    for day in range(4):
        room.trained(client, str(day), (28 + day, 14, 7), START + timedelta(days=day))
    room.put(client, Rated(START, "3", "pain", "during", 2))
    room.stage.clock.skip_to(START + timedelta(days=4))
    room.types(COACH, "ruta")
    text = room.says(COACH).splitlines()
    assert text == [
        "Ruta",
        "Cleared: right arm and legs; closed: left arm.",
        "Cleared by Vera, 2 Mar 2026.",
        "Goal: strength.",
        "Plan since 2 Mar 2026: Goblet squat 10 kg",
        "Last sessions:",
        "Thu 5 Mar: goblet squat 10 kg: 31, 14, 7, pain 2",
        "Wed 4 Mar: goblet squat 10 kg: 30, 14, 7",
        "Tue 3 Mar: goblet squat 10 kg: 29, 14, 7",
        "Goblet squat at 10 kg: set 1 up by 11 %, not yet a clear change.",
    ]
    assert room.labels(COACH) == [
        "Message", "Change the plan", "Pause", "Clearance", "Ask for a film", "Report", "The plan", "More"
    ]  # fmt: skip
    assert [message.kind for message in room.messages(COACH)[-2:]] == ["photo", "text"]


MOST_BUTTONS = 9  # with the way back: what a thumb reaches without scrolling far; own choice


@pytest.mark.parametrize("page", ["The plan", "More"])
def test_each_page_of_the_card_is_short_and_leads_back(room: Room, page: str) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    card = room.labels(COACH)
    room.taps(COACH, page)
    assert len(room.labels(COACH)) <= MOST_BUTTONS
    assert not set(room.labels(COACH)) & set(card)
    room.taps(COACH, "Back to Ruta")
    assert room.labels(COACH) == card


def test_a_client_without_a_plan_has_a_new_one_on_the_card(room: Room) -> None:
    room.client(RUTA, "Ruta", plan=None)
    room.types(COACH, "ruta")
    assert room.labels(COACH)[1] == "New plan"
    room.taps(COACH, "The plan")
    assert "Finish the plan" not in room.labels(COACH)


def test_the_chart_is_not_sent_again_while_nothing_new_was_trained(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.trained(client, "1", (30, 15, 8), START)
    for _ in range(3):
        room.types(COACH, "ruta")
    room.trained(client, "2", (31, 15, 8), START)
    room.types(COACH, "ruta")
    assert [message.kind for message in room.messages(COACH)].count("photo") == 2


def test_an_open_alert_stands_on_the_card_and_one_tap_shows_it_with_its_buttons(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    with room.store.transaction():
        duties.raise_alert(room.store, client, Cause.NERVE, "my foot is numb", "off", START, None)
    room.types(COACH, "ruta")
    assert "Open: tingling or numb." in room.says(COACH)
    room.taps(COACH, "Alert: tingling or numb")
    assert "my foot is numb" in room.says(COACH)
    assert "Clear to train" in room.labels(COACH)


def test_a_message_from_the_card_goes_out_as_the_coachs_words_and_stands_in_the_log(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    room.taps(COACH, "Message")
    room.types(COACH, "slower on the way down")
    assert room.says(RUTA) == "From your coach: slower on the way down"
    room.types(COACH, "ruta")
    room.taps(COACH, "More")
    room.taps(COACH, "Log")
    assert room.says(COACH).splitlines()[1] == "2 Mar 18:00 Vera: wrote: slower on the way down"


# --- pause, finish, resume -------------------------------------------------------------------------------
def test_a_pause_stops_reminders_and_sessions_and_ends_by_itself(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    room.taps(COACH, "Pause")
    room.taps(COACH, "One week")
    room.taps(COACH, "Holiday")
    assert "You have a pause until Sunday 8 March. Your coach says: a holiday." in room.says(RUTA)
    assert "Ruta pauses" in room.says(COACH)
    room.types(RUTA, "start")
    assert "You have a pause" in room.says(RUTA)
    heard = len(room.messages(RUTA))
    room.later(days=6, hours=1)  # Thursday's session lies in it
    assert len(room.messages(RUTA)) == heard
    room.types(COACH, "ruta")
    assert "Paused until 8 Mar 2026 (a holiday)." in room.says(COACH)
    room.later(hours=13)
    assert any("Your pause is over" in message.text for message in room.messages(RUTA))
    assert "Ruta's pause is over" in room.says(COACH)
    room.types(RUTA, "start")
    assert room.labels(RUTA)


def test_the_coachs_tap_ends_a_pause_before_its_time(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    room.taps(COACH, "Pause")
    room.types(COACH, "until 3 april")
    room.types(COACH, "let the knee settle")
    assert "until Friday 3 April. Your coach says: let the knee settle." in room.says(RUTA)
    room.types(COACH, "ruta")
    room.taps(COACH, "End the pause")
    assert any("Your pause is over" in message.text for message in room.messages(RUTA))
    assert duties.next_talk(room.store, client, "pause_over") is None
    coming = duties.next_talk(room.store, client, "reminding")
    assert coming is not None
    assert coming.due_at == START + timedelta(hours=1)


def test_a_pause_to_come_lets_the_sessions_before_it_be(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    room.taps(COACH, "Pause")
    room.types(COACH, "from 5 march to 11 march")
    room.taps(COACH, "No reason")
    assert "a pause from Thursday 5 March until Wednesday 11 March." in room.says(RUTA)
    coming = duties.next_talk(room.store, client, "reminding")
    assert coming is not None
    assert coming.due_at == START + timedelta(hours=1)
    room.types(RUTA, "start")
    assert "pause" not in room.says(RUTA)
    room.types(RUTA, "cancel")
    room.later(hours=30)
    coming = duties.next_talk(room.store, client, "reminding")
    assert coming is not None
    assert coming.due_at.date().isoformat() == "2026-03-12"


def test_a_pause_begun_in_mid_session_asks_for_the_bands_first(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.in_a_set(RUTA)
    room.types(COACH, "ruta")
    room.taps(COACH, "Pause")
    room.taps(COACH, "Two weeks")
    room.taps(COACH, "Ill")
    room.types(RUTA, "31")
    assert any("If bands are on, take them off" in message.text for message in room.messages(RUTA))
    room.taps(RUTA, "Bands are off")
    assert duties.watches(room.store, room.person(RUTA).id) == []


def test_finishing_gives_a_recap_suggests_the_review_and_can_be_taken_up_again(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.trained(client, "1", (30, 15, 8), START)
    room.types(COACH, "ruta")
    room.taps(COACH, "The plan")
    room.taps(COACH, "Finish the plan")
    assert "Finish Ruta's plan?" in room.says(COACH)
    room.taps(COACH, "Finish it")
    assert room.says(RUTA).splitlines()[0] == "This plan is done: 1 session."
    assert "6 to 8 weeks" in room.says(COACH)
    room.types(RUTA, "start")
    assert "no plan for you" in room.says(RUTA)
    assert duties.next_talk(room.store, client, "reminding") is None
    room.later(hours=1)
    room.taps(COACH, "Same plan again")
    assert "Your plan: squats" in room.says(RUTA)


@pytest.mark.parametrize(("days", "due"), [(41, False), (42, True)])
def test_a_plan_is_due_for_its_review_after_six_weeks(room: Room, days: int, due: bool) -> None:
    room.client(RUTA, "Ruta")
    room.stage.clock.skip_to(START + timedelta(days=days))
    room.types(COACH, "ruta")
    cards = [message.text for message in room.messages(COACH) if message.text.startswith("Ruta: ")]
    assert ("due for a review" in cards[-1]) is due


def test_missed_sessions_are_counted_from_the_plan(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.stage.clock.skip_to(START + timedelta(days=3))  # Monday's is over, Thursday's is today
    room.types(COACH, "ruta")
    assert "missed" not in room.says(COACH)
    room.stage.clock.skip_to(START + timedelta(days=4))
    room.types(COACH, "ruta")
    assert room.says(COACH).startswith("Ruta: missed sessions")
    room.put(client, PlanEnded(room.now, 1))
    room.types(COACH, "ruta")
    assert "missed" not in room.says(COACH)


def test_sessions_of_a_pause_are_not_missed(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    end = START + timedelta(days=10)
    room.put(client, Paused(START, START, end, 1))
    room.stage.clock.skip_to(end + timedelta(days=1))
    room.types(COACH, "ruta")
    assert "missed" not in room.says(COACH)
    room.stage.clock.skip_to(end + timedelta(days=8))  # Monday's and Thursday's after it
    room.types(COACH, "ruta")
    assert "missed sessions" in room.says(COACH)


def test_other_training_shows_beside_its_session(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.trained(client, "1", (30, 15, 8), START)
    room.put(client, Answered(START, "1", "before", "heavy", "yes"))
    room.types(COACH, "ruta")
    assert "30, 15, 8, trained hard elsewhere before" in room.says(COACH)
    room.put(client, Answered(START, "1", "before", "heavy", "no"))
    room.types(COACH, "ruta")
    assert "elsewhere" not in room.says(COACH)


# --- what is still to come -------------------------------------------------------------------------------
def test_the_card_shows_a_trip_a_pause_and_a_hold_that_are_still_to_come(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    room.taps(COACH, "Pause")
    for said in ("from 12 to 20 march", "No reason", "ruta"):
        room.types(COACH, said)
    assert "Next: Mon 2 Mar, 19:00." in room.says(COACH)
    assert "Paused from 12 Mar 2026 until 20 Mar 2026." in room.says(COACH)
    room.taps(COACH, "The plan")
    room.taps(COACH, "Travel plan")
    for said in ("from 22 to 29 march", "hold ruta", "until friday", "ruta"):
        room.types(COACH, said)
    assert "Without equipment from 22 Mar 2026 until 29 Mar 2026." in room.says(COACH)
    assert "On hold until 6 Mar 2026." in room.says(COACH)


def test_in_a_pause_no_session_is_named(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "pause ruta")
    for said in ("two weeks", "No reason", "ruta"):
        room.types(COACH, said)
    assert "Next:" not in room.says(COACH)


@pytest.mark.parametrize("typed", ["ruta", "Ruta Kaya", "milo"])
def test_a_clients_name_is_no_reason_but_opens_their_card(room: Room, typed: str) -> None:
    room.client(RUTA, "Ruta Kaya")
    room.client(MILO, "Milo")
    for said in ("pause ruta", "two weeks", typed):
        room.types(COACH, said)
    assert room.says(COACH).startswith("Milo" if typed == "milo" else "Ruta Kaya")
    assert not any("Your coach says" in message.text for message in room.messages(RUTA))
    room.types(COACH, "She is away.")  # the question is still open
    assert any("Your coach says: She is away." in message.text for message in room.messages(RUTA))


def test_a_name_that_is_asked_for_is_an_answer(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "invite")
    room.types(COACH, "ruta")
    assert "For ruta" in room.says(COACH) or "ruta" in room.says(COACH)
    assert "Cleared" not in room.says(COACH)


@pytest.mark.parametrize("last", ["28", "29", "30"])  # clocks go forward on 29 March: that day has 23 hours
def test_the_last_day_of_a_pause_is_the_one_that_was_said_over_summer_time_too(room: Room, last: str) -> None:
    room.client(RUTA, "Ruta")
    for said in ("pause ruta", f"from 22 to {last} march", "No reason", "ruta"):
        room.types(COACH, said)
    assert f"until {last} Mar 2026" in room.says(COACH)
    told = [message.text for message in room.messages(RUTA) if "pause" in message.text]
    assert f"{last} March" in told[-1]


def test_a_plan_that_was_never_trained_by_ends_without_praise_or_an_empty_report(room: Room) -> None:
    room.client(RUTA, "Ruta")
    room.types(COACH, "ruta")
    for label in ("The plan", "Finish the plan", "Finish it"):
        room.taps(COACH, label)
    assert room.says(RUTA).startswith("Your plan ends here, before its first whole session.")
    assert room.says(COACH) == "Ruta's plan ends before its first whole session; they know."
    told = [message.text for number in (RUTA, COACH) for message in room.messages(number)]
    assert not any("nothing to report" in text or "Well done" in text for text in told)


def test_where_nobody_needs_the_coach_the_list_says_so(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    room.trained(client, "1", (30, 15, 8), START)
    room.types(COACH, "clients")
    assert room.says(COACH).splitlines()[0] == "1 client, nobody needs you."


def test_a_part_that_fits_many_says_that_there_are_more(room: Room) -> None:
    for number in range(9):
        room.client(3000 + number, f"Ana {chr(ord('A') + number)}")
    room.types(COACH, "ana")
    assert room.says(COACH) == words.WHICH_OF_MANY.format(count=9, shown=7)
    room.types(COACH, "ana i")
    assert room.says(COACH).startswith("Ana I")


def test_on_hold_the_card_names_no_next_session(room: Room) -> None:
    client = room.client(RUTA, "Ruta")
    with room.store.transaction():
        calendar.remind_next(room.stage.engine, room.person(RUTA), room.now)
    room.types(COACH, "ruta")
    assert "Next: Mon 2 Mar, 19:00." in room.says(COACH)
    room.put(client, Cleared(room.now + timedelta(seconds=1), "2", "held", "", room.person(COACH).id))
    room.later(minutes=1)
    room.types(COACH, "ruta")
    assert "On hold" in room.says(COACH)
    assert "Next: " not in room.says(COACH)
