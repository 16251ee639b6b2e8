"""Whatever can be asked for names its action, and is refused to whoever may not."""

import re
from itertools import count, product
from pathlib import Path

import pytest

from bot.engine import acts, buttons, gate, menus
from bot.engine.coach import menu
from conversations.catalogue import CATALOGUE
from core.access import ALLOWED, Action, Actor, may
from core.store import people, threads
from core.store.people import Person, Role
from core.store.threads import Button
from tests.practice import CLIENT, COACH, OTHER, SECOND, START, Practice

ROOT = Path(__file__).parents[2]
THIRD = 1003
NUMBERS = count(10**12)  # of updates that no phone made


def test_every_dialogue_names_its_action() -> None:
    assert set(gate.TALKS) == set(CATALOGUE)


def test_every_act_menu_entry_and_button_names_an_action() -> None:
    tables = (acts.ACTS, menus.CLIENT_MENU, menu.PLAIN, menu.ABOUT_CLIENT, menu.WITH_DETAIL, buttons.BUTTONS)
    actions = [entry[0] for table in tables for entry in table.values()]
    assert len(actions) > 40
    assert all(isinstance(action, Action) for action in actions)


def test_every_act_that_a_dialogue_asks_for_is_known() -> None:
    sources = [path.read_text() for path in (ROOT / "conversations").rglob("*.py")]
    asked = {name for text in sources for name in re.findall(r'\bDo\("(\w+)"', text)}
    assert asked
    assert asked == set(acts.ACTS)


def test_every_button_and_command_that_is_offered_leads_somewhere() -> None:
    known = set(menu.PLAIN) | set(menu.ABOUT_CLIENT) | set(menu.WITH_DETAIL) | set(menus.CLIENT_MENU)
    sources = [
        path.read_text() for package in ("bot", "conversations") for path in (ROOT / package).rglob("*.py")
    ]
    offered = {name for text in sources for name in re.findall(r'"menu:(\w+)', text)}
    assert len(offered) > 15
    assert offered <= known


def test_every_action_is_somebodys_and_nobody_may_do_what_is_not_in_the_table() -> None:
    assert {action for actions in ALLOWED.values() for action in actions} == set(Action)
    for actor, action in product(Actor, Action):
        assert may(actor, action) is (action in ALLOWED[actor])


def test_a_client_and_a_stranger_never_get_what_is_a_coachs() -> None:
    coachs = {action for table in (menu.ABOUT_CLIENT, menu.WITH_DETAIL) for action, *_ in table.values()}
    for action in coachs | {Action.INVITE, Action.DIGEST, Action.COVER, Action.TAKE_ALERT, Action.EXPORT}:
        assert not may(Actor.STRANGER, action)
        assert not may(Actor.CLIENT, action) or action is Action.RELAY


def taps_token(practice: Practice, number: int, token: str) -> None:
    """A tap with this token, whoever it was made for."""
    sender = {"id": number, "is_bot": False, "first_name": "X"}
    body = {"id": "1", "from": sender, "chat_instance": "1", "data": token}
    practice.stage.engine.receive([(next(NUMBERS), {"callback_query": body})])
    practice.settle()


def press(practice: Practice, number: int, value: str) -> list[str]:
    """A person presses a button that carries this value; what they hear. (No such button was ever theirs.)"""
    engine = practice.stage.engine
    person = people.by_chat(engine.store, number)
    assert person is not None
    [token] = threads.add_buttons(engine.store, [Button(person.id, None, None, value)], START)
    before = len(practice.heard(number))
    taps_token(practice, number, token)
    return practice.heard(number)[before:]


def third(practice: Practice) -> Person:
    """A coach of the same practice who has nothing to do with this client."""
    store = practice.stage.engine.store
    practice.stage.add(THIRD, "Third", lambda message, now: None)
    return people.by_id(store, people.add(store, THIRD, "Third", Role.COACH, "Europe/Lisbon", START))


ABOUT = sorted(set(menu.ABOUT_CLIENT) | set(menu.WITH_DETAIL))


@pytest.mark.parametrize("entry", ABOUT)
def test_a_button_about_a_client_works_for_their_coach_and_for_no_other(
    practice: Practice, entry: str
) -> None:
    third(practice)
    store = practice.stage.engine.store
    value = f"menu:{entry}:{practice.client}/goblet_squat/12 kg"
    before = store.rows("SELECT count(*) AS n FROM coach_did")[0]["n"]
    for number in (THIRD, SECOND):
        assert press(practice, number, value) == ["That button isn't for this chat."]
    assert store.rows("SELECT count(*) AS n FROM coach_did")[0]["n"] == before
    assert "That button isn't for this chat." not in press(practice, COACH, value)


@pytest.mark.parametrize("entry", sorted({*ABOUT, *menu.PLAIN} - set(menus.CLIENT_MENU)))
def test_a_coachs_button_in_a_clients_hands_shows_the_clients_own_menu(
    practice: Practice, entry: str
) -> None:
    heard = press(practice, CLIENT, f"menu:{entry}:{practice.client}/x")
    assert heard == ["What would you like?"]


def test_an_alert_is_taken_by_its_coach_or_the_second_contact_only(practice: Practice) -> None:
    third(practice)
    practice.in_a_set()
    practice.types(CLIENT, "chest pain")
    row = practice.stage.engine.store.row("SELECT id FROM alert ORDER BY id DESC LIMIT 1")
    assert row is not None
    for act in ("take", "settle", "hold", "call"):
        assert press(practice, THIRD, f"alert:{act}:{row['id']}") == ["That button isn't for this chat."]
        assert press(practice, CLIENT, f"alert:{act}:{row['id']}") == ["That button isn't for this chat."]
    assert press(practice, THIRD, "alert:take:999") == ["That button isn't for this chat."]
    taken = practice.stage.engine.store.row("SELECT taken_by FROM alert WHERE id = ?", [row["id"]])
    assert taken is not None
    assert taken["taken_by"] is None
    assert "Third" not in " ".join(practice.heard(CLIENT))
    assert any("is on it" in text for text in press(practice, SECOND, f"alert:take:{row['id']}"))


def test_a_line_after_a_call_is_kept_only_while_the_client_is_still_theirs(practice: Practice) -> None:
    other = third(practice)
    practice.in_a_set()
    practice.types(CLIENT, "chest pain")
    practice.taps(COACH, "Call noted")
    people.hand_over(practice.stage.engine.store, practice.client, other.id)
    practice.types(COACH, "said it was nothing")
    assert "call_note" not in [
        row["action"] for row in practice.stage.engine.store.rows("SELECT action FROM coach_did")
    ]


def test_the_bands_off_button_of_somebody_else_takes_nobodys_bands_off(practice: Practice) -> None:
    practice.in_a_set()
    row = practice.stage.engine.store.row("SELECT id FROM watch")
    assert row is not None
    press(practice, COACH, f"bands_off:{row['id']}")
    assert practice.stage.engine.store.row("SELECT id FROM watch") is not None


def test_the_token_of_one_chat_is_worth_nothing_in_another(practice: Practice) -> None:
    practice.in_a_set()
    store = practice.stage.engine.store
    rows = store.rows("SELECT token, person FROM button")
    assert rows
    coach = people.by_chat(store, COACH)
    assert coach is not None
    for row in rows:
        number = COACH if row["person"] == practice.client else CLIENT
        before = practice.heard(number)
        taps_token(practice, number, row["token"])
        assert practice.heard(number)[len(before) :] == ["That button isn't for this chat."]
    assert practice.sets() == {}


@pytest.mark.parametrize(
    "token", ["", "x", "menu:invite", "alert:settle:1", "bands_off:1", "' OR 1=1 --", "é" * 32]
)
def test_a_forged_token_is_worth_nothing(practice: Practice, token: str) -> None:
    taps_token(practice, CLIENT, token)
    assert practice.heard(CLIENT) == ["That button isn't for this chat."]


def test_a_strangers_tap_is_refused_like_their_words(practice: Practice) -> None:
    practice.in_a_set()
    for row in practice.stage.engine.store.rows("SELECT token FROM button LIMIT 5"):
        taps_token(practice, OTHER, row["token"])
    assert len(practice.heard(OTHER)) == 1
    assert str(OTHER) in practice.heard(OTHER)[0]
