"""After "delete me" nothing is left that names the person, or that a later person of the same number could be hit by."""

from collections.abc import Iterator
from datetime import timedelta
from typing import Any

import pytest

from core.facts import Cleared, CoachDid, PlanGiven
from core.plan_text import plan_to_text
from core.plans import Plan
from core.safety.causes import Cause
from core.store import duties, facts, mail, people, threads
from core.store.connection import Store
from core.store.mail import Letter, Priority
from core.store.people import Person, Role
from core.store.threads import Button
from tests.practice import CLIENT, COACH, OTHER, SECOND, SQUAT, START, Practice

MARK = "Zmarkerq"


@pytest.fixture
def practice() -> Iterator[Practice]:
    made = Practice()
    people.rename(made.stage.engine.store, made.client, MARK)
    yield made
    made.stage.close()


def store_of(practice: Practice) -> Store:
    return practice.stage.engine.store


def leaves(practice: Practice) -> None:
    for said in ("cancel", "delete me", "yes", "delete"):
        practice.types(CLIENT, said)
    practice.later(minutes=2)
    assert people.by_chat(store_of(practice), CLIENT) is None


def stops_numb(practice: Practice) -> None:
    """An alert, answered as far as the client is asked."""
    practice.in_a_set()
    practice.types(CLIENT, "stop, my leg is numb")
    for _ in range(2):
        practice.taps(CLIENT, practice.newest(CLIENT).buttons[0][0][0])


def newcomer(practice: Practice) -> Person:
    """Somebody who joins afterwards and gets the number that is free again."""
    store = store_of(practice)
    coach = people.by_chat(store, COACH)
    assert coach is not None
    now = practice.stage.clock.now()
    with store.transaction():
        person = people.add(store, OTHER, "Aino", Role.CLIENT, "Europe/Lisbon", now, coach.id)
        facts.put(store, person, Cleared(now, "1", "cleared", "arms,legs", coach.id), now)
        facts.put(store, person, PlanGiven(now, plan_to_text(Plan("squats", (SQUAT,))), coach.id), now)
    assert person == practice.client, "SQLite gives the number again; else this test says nothing"
    return people.by_id(store, person)


def everything(store: Store) -> str:
    """Every value of every table, in lower case."""
    names = [row["name"] for row in store.rows("SELECT name FROM sqlite_schema WHERE type = 'table'")]
    return repr([tuple(row) for name in names for row in store.rows(f"SELECT * FROM {name}")]).lower()


def test_no_invitation_keeps_the_name(practice: Practice) -> None:
    """A first code that got lost: the second one was used."""
    store = store_of(practice)
    coach = people.by_chat(store, COACH)
    assert coach is not None
    people.invite(store, coach.id, MARK, "LOST", START - timedelta(hours=2))
    assert MARK.lower() in everything(store)
    leaves(practice)
    assert MARK.lower() not in everything(store)


def test_an_invitation_of_somebody_of_the_same_name_still_opens_the_door(practice: Practice) -> None:
    practice.later(hours=1)
    practice.types(COACH, "invite")
    practice.types(COACH, MARK)
    code = practice.newest(COACH).text.split("type ")[1].split(" ")[0].rstrip(".")
    leaves(practice)
    practice.types(OTHER, code)
    assert people.by_chat(store_of(practice), OTHER) is not None


def test_whoever_never_came_is_forgotten_when_the_code_has_run_out(practice: Practice) -> None:
    practice.types(COACH, "invite")
    practice.types(COACH, "Neverhere")
    for days, there in ((2, True), (4, False)):
        practice.stage.clock.skip_to(START + timedelta(days=days))
        while practice.stage.engine.work():
            pass
        names = [row["name"] for row in store_of(practice).rows("SELECT name FROM invitation")]
        assert ("Neverhere" in names) is there


def test_an_old_alerts_button_settles_no_later_persons_alert(practice: Practice) -> None:
    stops_numb(practice)
    assert any("numb" in text for text in practice.heard(COACH))
    practice.taps(COACH, "I am on it")
    leaves(practice)
    person = newcomer(practice)
    store = store_of(practice)
    alert = duties.raise_alert(
        store, person.id, Cause.CIRCULATION, "blue", "-", practice.stage.clock.now(), None
    )
    practice.taps(COACH, "Clear to train")
    found = duties.alert_by_id(store, alert)
    assert found is not None
    assert found.settled_at is None


def test_an_old_button_hands_no_later_person_over(practice: Practice) -> None:
    practice.types(SECOND, "hello")
    practice.types(COACH, MARK)
    practice.taps(COACH, "More")
    practice.taps(COACH, "Hand over")
    leaves(practice)
    person = newcomer(practice)
    practice.taps(COACH, "Second")
    assert people.by_id(store_of(practice), person.id).coach == person.coach


def test_a_reply_to_old_words_lands_in_nobody_elses_talk(practice: Practice) -> None:
    """The number of a talk that was erased goes to the next one, whosever it is."""
    practice.types(COACH, MARK)
    practice.taps(COACH, "Message")
    asked = practice.newest(COACH).id
    leaves(practice)
    newcomer(practice)
    practice.types(OTHER, "start")
    before = len(practice.messages(OTHER))
    practice.stage.phones[COACH].types("31", reply_to=asked)
    practice.settle()
    assert len(practice.messages(OTHER)) == before
    led = store_of(practice).rows("SELECT 1 FROM outbox WHERE chat = ? AND thread IS NOT NULL", [COACH])
    assert led == []


def test_turning_a_page_still_works_for_others(practice: Practice) -> None:
    """A page, and an alert of somebody else, may have the person's number."""
    store = store_of(practice)
    coach = people.by_chat(store, SECOND)
    assert coach is not None
    values = [f"menu:{what}:{practice.client}" for what in ("clients", "everybody", "alert", "client")]
    made = threads.add_buttons(store, [Button(coach.id, None, None, value) for value in values], START)
    leaves(practice)
    left = [
        value for token, value in zip(made, values, strict=True) if threads.button(store, token, coach.id)
    ]
    assert left == values[:3]


def said_elsewhere(**body: Any) -> dict[str, Any]:
    sender = {"id": CLIENT, "is_bot": False, "first_name": MARK}
    return {"date": int(START.timestamp()), "message_id": 1, "from": sender, "text": MARK} | body


@pytest.mark.parametrize(
    "update",
    [
        {"message": said_elsewhere(chat={"id": -55, "type": "group"})},
        {"edited_message": said_elsewhere(chat={"id": -55, "type": "group"}, edit_date=9)},
        {"inline_query": said_elsewhere(id="1", query=MARK, offset="")},
        {"callback_query": said_elsewhere(id="1", chat_instance="1", data="x")},
        {"message": said_elsewhere(chat=None)},
    ],
)
def test_what_was_said_in_a_group_or_behind_the_bots_name_goes_too(
    practice: Practice, update: dict[str, Any]
) -> None:
    practice.stage.engine.receive([(10**12, update)])
    practice.settle()
    assert MARK.lower() in everything(store_of(practice))
    leaves(practice)
    assert MARK.lower() not in everything(store_of(practice))


def waiting(practice: Practice, text: str) -> int:
    """A letter for the second coach that cannot go out for a while; its number."""
    now = practice.stage.clock.now()
    letter = mail.post(store_of(practice), Letter(SECOND, {"text": text}, priority=Priority.ALERT), now)
    mail.later(store_of(practice), letter, now + timedelta(days=2))
    return letter


def test_an_alert_about_somebody_whose_name_is_longer_goes_out_all_the_same(practice: Practice) -> None:
    store, now = store_of(practice), practice.stage.clock.now()
    people.rename(store, practice.client, "Ana")
    people.add(store, 2009, "Ana Silva", Role.CLIENT, "Europe/Lisbon", now)
    kept = [
        waiting(practice, f"{name}: chest pain\nAna Silva said so") for name in ("Anastasia", "Ana Silva")
    ]
    gone = [waiting(practice, text) for text in ("Ana: chest pain", "Open alerts:\nAna", "Ana's week")]
    leaves(practice)
    left = {
        row["id"] for row in store.rows("SELECT id FROM outbox WHERE chat = ? AND sent_at IS NULL", [SECOND])
    }
    assert left & {*kept, *gone} == set(kept)


def test_a_name_with_quotation_marks_is_found_in_what_waits(practice: Practice) -> None:
    people.rename(store_of(practice), practice.client, f'O"{MARK}\\')
    waiting(practice, f'O"{MARK}\\: chest pain')
    leaves(practice)
    assert MARK.lower() not in everything(store_of(practice))


def test_a_line_after_call_noted_is_kept_about_no_later_person(practice: Practice) -> None:
    stops_numb(practice)
    practice.taps(COACH, "Call noted")
    leaves(practice)
    person = newcomer(practice)
    practice.types(COACH, "said it is better")
    log = facts.current(store_of(practice), CoachDid, person.id)
    assert "call_note" not in [one.action for one in log]


def test_the_plan_of_a_later_person_is_not_what_save_as_template_means(practice: Practice) -> None:
    practice.types(COACH, MARK)
    leaves(practice)
    newcomer(practice)
    practice.types(COACH, "save as template base")
    assert store_of(practice).rows("SELECT 1 FROM template_saved") == []


def test_no_template_is_called_by_a_clients_name(practice: Practice) -> None:
    """A template is the coach's own and stays; both ways to save one ask for another name."""
    practice.types(COACH, MARK)
    practice.types(COACH, f"save as template {MARK.lower()}'s knee")
    assert f"without {MARK}'s" in practice.newest(COACH).text
    practice.taps(COACH, "The plan")
    practice.taps(COACH, "Save as template")
    practice.types(COACH, f"knee {MARK}")
    assert f"without {MARK}'s" in practice.newest(COACH).text
    practice.types(COACH, "knee")
    leaves(practice)
    assert [row["name"] for row in store_of(practice).rows("SELECT name FROM template_saved")] == ["knee"]
    assert MARK.lower() not in everything(store_of(practice))


def asks_to_leave(practice: Practice) -> None:
    """Twice yes; it is done in a minute."""
    for said in ("delete me", "yes", "delete"):
        practice.types(CLIENT, said)


def test_nobody_is_erased_with_bands_on(practice: Practice) -> None:
    """Somebody who changes their mind in that minute and trains: the watch over the bands must not go."""
    asks_to_leave(practice)
    practice.in_a_set()
    practice.later(minutes=2)
    assert duties.watches(store_of(practice), practice.client) != []
    practice.types(CLIENT, "stop")
    practice.taps(CLIENT, "Bands are off")
    practice.later(hours=25)
    assert people.by_chat(store_of(practice), CLIENT) is None


def test_an_alert_of_that_minute_rings_until_somebody_takes_it(practice: Practice) -> None:
    asks_to_leave(practice)
    practice.types(CLIENT, "my chest hurts")
    practice.later(minutes=20)
    rung = [text for text in practice.heard(COACH) if "chest" in text]
    assert len(rung) >= 3
    practice.taps(COACH, "I am on it")
    practice.later(minutes=10)
    assert people.by_chat(store_of(practice), CLIENT) is None


def test_nor_does_an_alert_that_nobody_takes_hold_it_up_for_more_than_a_day(practice: Practice) -> None:
    asks_to_leave(practice)
    practice.types(CLIENT, "my chest hurts")
    practice.later(hours=23)
    assert people.by_chat(store_of(practice), CLIENT) is not None
    practice.later(hours=2)
    assert people.by_chat(store_of(practice), CLIENT) is None


def test_words_that_a_coach_could_still_send_to_another_client_go_too(practice: Practice) -> None:
    store = store_of(practice)
    coach = people.by_chat(store, COACH)
    assert coach is not None
    with store.transaction():
        people.add(store, 5000, "Otto", Role.CLIENT, "Europe/Lisbon", START, coach.id)
    practice.types(COACH, f"otto {MARK} trains on monday too")
    assert MARK.lower() in everything(store)
    leaves(practice)
    assert MARK.lower() not in everything(store)
