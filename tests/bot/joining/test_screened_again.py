"""When the health questions come again, what opens then, and a blood pressure that is typed at any time."""

from datetime import timedelta

import pytest

from conversations.health_news import told
from core.facts import BandsOff, Cleared, CoachDid, Detail, ScreeningAnswer, ScreeningDone
from core.store import duties, facts
from tests.bot.coach_room import COACH, RUTA, Room

HEALTHY = {"weigh": "70 kg", "tall": "172 cm", "half an hour": "yes", "latest blood pressure": "124/78"}


@pytest.fixture
def room() -> Room:
    return Room()


def heard(room: Room, number: int) -> list[str]:
    return [message.text for message in room.messages(number) if message.text]


def ruta(room: Room, tier: str = "clear", **said: str) -> int:
    """Ruta, screened with these answers a minute ago; cleared unless she must not start."""
    client = room.client(RUTA, "Ruta", cleared="")
    for question, answer in said.items():
        room.put(client, ScreeningAnswer(room.now, "1", question, answer))
    room.put(client, ScreeningDone(room.now, "1", tier, "", ",".join(said)))
    room.stage.clock.skip_to(room.now + timedelta(minutes=1))
    if tier == "clear":
        room.put(client, Cleared(room.now, "1", "cleared", "arms,legs", room.person(COACH).id))
    return client


def screened(room: Room, **other: str) -> None:
    """Ruta answers the health questions as a healthy person would, but for these."""
    given = {**HEALTHY, **{name.replace("_", " "): answer for name, answer in other.items()}}
    for _ in range(40):
        asked = room.says(RUTA)
        if asked.startswith("Thank you"):
            return
        room.types(RUTA, next((answer for name, answer in given.items() if name in asked), "no"))
    raise AssertionError(f"no end: {room.says(RUTA)}")


def test_a_new_medicine_brings_the_health_questions_at_once_and_nothing_starts_before_the_coach(
    room: Room,
) -> None:
    ruta(room)
    room.types(RUTA, "start")
    room.taps(RUTA, "Yes")
    room.types(RUTA, "a tablet for my blood pressure")
    assert any(
        text.startswith("Something changed, so the few health questions again") for text in heard(room, RUTA)
    )
    room.types(RUTA, "34")
    screened(room, any_heart="yes")
    room.types(RUTA, "start")
    assert "looks at" in room.says(RUTA)
    assert not any("Set 1 of" in text for text in heard(room, RUTA))


def test_the_coach_decides_with_the_age_that_was_told_at_the_beginning(room: Room) -> None:
    room.put(ruta(room), Detail(room.now, "age", "74"))
    room.types(RUTA, "start")
    room.taps(RUTA, "Yes")
    room.types(RUTA, "a new tablet")
    screened(room)
    assert any("74 years, " in text for text in heard(room, COACH))


def test_questions_that_were_left_come_first_also_after_the_coach_settled_the_alert(room: Room) -> None:
    client = ruta(room)
    room.types(RUTA, "start")
    room.taps(RUTA, "Yes")
    room.types(RUTA, "a new tablet")
    room.types(RUTA, "cancel")
    with room.store.transaction():
        for alert in duties.open_alerts(room.store, client):
            duties.settle_alert(room.store, alert.id, "cleared", room.now)
    room.types(RUTA, "start")
    assert "Something changed" in "\n".join(heard(room, RUTA)[-3:])


def test_a_slip_that_forbids_everything_is_asked_again_and_decided_on_anew(room: Room) -> None:
    ruta(room, "do_not_start", birth="yes")
    room.types(COACH, "ruta")
    room.taps(COACH, "Clearance")
    assert "other side" not in "\n".join(heard(room, COACH))
    room.taps(COACH, "Ask them again")
    room.types(COACH, "on the phone: a wrong button")
    assert "The health questions once more" in "\n".join(heard(room, RUTA))
    room.types(RUTA, "34")
    screened(room)
    room.types(RUTA, "start")
    assert "looks at" in room.says(RUTA)
    room.taps(COACH, "Clear, arms and legs")
    room.types(COACH, "rang her, all well")
    asked, decided = facts.current(room.store, CoachDid, room.person(RUTA).id)[-2:]
    assert (asked.action, asked.note, decided.action) == (
        "asked_again",
        "on the phone: a wrong button",
        "decided_cleared",
    )


def test_at_night_the_coachs_wish_to_ask_again_waits_for_the_morning(room: Room) -> None:
    ruta(room, "do_not_start", birth="yes")
    room.stage.clock.skip_to(room.now.replace(hour=23, minute=30))
    room.types(COACH, "ruta")
    room.taps(COACH, "Clearance")
    room.taps(COACH, "Ask them again")
    room.taps(COACH, "No note")
    assert "The health questions once more" not in "\n".join(heard(room, RUTA))
    room.later(hours=9)
    assert "The health questions once more" in "\n".join(heard(room, RUTA))


@pytest.mark.parametrize(("days", "asked"), [(83, False), (84, True)])
def test_after_twelve_weeks_the_questions_come_before_the_session(room: Room, days: int, asked: bool) -> None:
    ruta(room)
    room.stage.clock.skip_to(room.now + timedelta(days=days))
    room.types(RUTA, "start")
    assert any("It has been twelve weeks" in text for text in heard(room, RUTA)[-3:]) is asked


# --- a screening that said "do not start" may be taken again where it may have passed -------------------------
def test_a_pressure_that_came_down_is_for_the_coach_to_look_at_and_opens_by_the_coach_only(
    room: Room,
) -> None:
    ruta(room, "do_not_start", blood_pressure="185/112", pressure_signs="no", pressure_again="184/110")
    room.types(RUTA, "start")
    assert "once more" in room.says(RUTA)
    room.taps(RUTA, "Ask me again")
    room.types(RUTA, "34")
    screened(room)
    assert "the answers before these said: do not start" in "\n".join(heard(room, COACH))
    room.types(RUTA, "start")
    assert "looks at them" in room.says(RUTA)
    room.taps(COACH, "Clear, arms and legs")
    room.types(COACH, "Measured three days in a row, all below 135/85")
    room.types(RUTA, "start")
    assert not any("Session 1" in text for text in heard(room, RUTA)) or "no plan" not in room.says(RUTA)


def test_a_past_clot_is_not_asked_again(room: Room) -> None:
    ruta(room, "do_not_start", any_clots="yes", past_clot="yes")
    room.types(RUTA, "start")
    assert "once more" not in room.says(RUTA)
    assert "Ask me again" not in room.labels(RUTA)


def test_a_grave_answer_in_questions_that_were_left_is_looked_at_though_it_is_denied_afterwards(
    room: Room,
) -> None:
    """Once the second answers alone reached the coach, as if nothing had been said."""
    room.client(RUTA, "Ruta", cleared="")
    room.types(RUTA, "start")
    room.types(RUTA, "34")
    for _ in range(20):
        if "Have you ever had a blood clot" in room.says(RUTA):
            break
        room.types(
            RUTA,
            next(
                (
                    answer
                    for name, answer in {**HEALTHY, "Blood clots": "yes"}.items()
                    if name in room.says(RUTA)
                ),
                "no",
            ),
        )
    room.types(RUTA, "yes")
    room.types(RUTA, "cancel")
    room.types(RUTA, "start")
    room.types(RUTA, "34")
    screened(room)
    assert "the answers before these said: do not start" in "\n".join(heard(room, COACH))


# --- typed at any time ----------------------------------------------------------------------------------------
def test_a_very_high_pressure_typed_later_gets_advice_for_today_and_bars_training(room: Room) -> None:
    client = ruta(room)
    room.types(RUTA, "my blood pressure is 185/112 this morning")
    said = room.says(RUTA)
    assert all(
        word in said
        for word in ("No training", "measure again", "call your doctor today", "emergency number")
    )
    assert [(one.cause, one.tier) for one in duties.open_alerts(room.store, client)] == [
        ("pressure_high", "today")
    ]
    assert any("185/112" in text for text in heard(room, COACH))
    room.types(RUTA, "start")
    assert "Your coach first needs to look" in room.says(RUTA)


def test_with_a_sign_it_is_emergency_words_at_once_with_bands_off_first(room: Room) -> None:
    client = ruta(room)
    room.in_a_set(RUTA)
    room.types(RUTA, "it says 190/115 and my head is pounding")
    assert any(
        text.startswith("Bands off now. Call your local emergency number now.") for text in heard(room, RUTA)
    )
    assert "now" in {one.tier for one in duties.open_alerts(room.store, client)}


def test_without_a_sign_but_with_bands_on_they_come_off_first(room: Room) -> None:
    client = ruta(room)
    room.in_a_set(RUTA)
    room.types(RUTA, "185/112 on my monitor")
    assert any(
        text.startswith("Bands off now. No training with that blood pressure") for text in heard(room, RUTA)
    )
    room.types(RUTA, "off")
    assert facts.current(room.store, BandsOff, client) or "off" in room.says(RUTA).lower()


# --- news told between sessions -------------------------------------------------------------------------------
NEWS = (
    "I am pregnant",
    "I think I might be pregnant",
    "I have a new medicine, a beta blocker",
    "the doctor has put me on blood thinners",
    "I started taking a statin",
    "I was in hospital last week",
    "had an operation on my knee",
    "doctor says I have diabetes",
    "I've been diagnosed with something",
    "Can I train when pregnant?",
    "doctor said it is fine but has put me on blood thinners",
    "the consultant said it's ok now, I have a new prescription",
)
NO_NEWS = (
    "I'm not pregnant",
    "no new medicine",
    "I work in a hospital",
    "my niece moved here",
    "never been in hospital",
    "I bought new shoes",
    "the doctor says all fine",
    "my doctor dr smith said it is fine until june",
    "the physio says I can train, no limits",
    "GP said yes",
)


@pytest.mark.parametrize(
    ("text", "is_news"), [*((one, True) for one in NEWS), *((one, False) for one in NO_NEWS)]
)
def test_what_may_be_health_news_is_known(text: str, is_news: bool) -> None:
    assert told(text) is is_news


@pytest.mark.parametrize("yes", ["tap", "yes"])
def test_health_news_told_at_any_time_bars_training_until_they_were_screened_again(
    room: Room, yes: str
) -> None:
    client = ruta(room)
    room.types(RUTA, "I am pregnant")
    assert room.says(RUTA).startswith("Thank you for saying so. Is that about you")
    room.taps(RUTA, "Yes") if yes == "tap" else room.types(RUTA, "yes")
    assert [one.cause for one in duties.open_alerts(room.store, client)] == ["today_changed"]
    assert any("I am pregnant" in text for text in heard(room, COACH))
    assert any(text.startswith("Something changed") for text in heard(room, RUTA))
    room.types(RUTA, "34")
    screened(room, pregnant="yes")
    room.types(RUTA, "start")
    assert not any("Bands on" in text for text in heard(room, RUTA))


def test_news_of_somebody_else_changes_nothing(room: Room) -> None:
    client = ruta(room)
    room.types(RUTA, "my daughter is pregnant")
    room.taps(RUTA, "No")
    assert room.says(RUTA) == "Good. Then all stays as it is. Shall I send what you wrote to Vera?"
    room.types(RUTA, "yes")
    assert any("my daughter is pregnant" in text for text in heard(room, COACH))
    room.types(RUTA, "start")
    assert "Anything new" in room.says(RUTA)
    assert not duties.open_alerts(room.store, client)


def test_news_that_was_sent_is_not_raised_twice(room: Room) -> None:
    client = ruta(room)
    room.types(RUTA, "I am pregnant")
    room.taps(RUTA, "Yes")
    before = len(heard(room, COACH))
    message = next(one for one in room.messages(RUTA) if one.text.startswith("Thank you for saying so"))
    room.stage.phones[RUTA].taps(message.id, "Yes")
    room.settle()
    assert len(heard(room, COACH)) == before
    assert [one.count for one in duties.open_alerts(room.store, client)] == [1]


@pytest.mark.parametrize("asked", ["settings", "bands", "my details"])
def test_health_news_told_while_something_else_is_asked_is_asked_about_too(room: Room, asked: str) -> None:
    client = ruta(room)
    room.types(RUTA, asked)
    room.types(RUTA, "I am pregnant")
    room.types(RUTA, "yes")
    assert [one.cause for one in duties.open_alerts(room.store, client)] == ["today_changed"]


@pytest.mark.parametrize("answers", [0, 1, 2])
def test_health_news_told_among_the_questions_before_a_session_is_the_answer_to_the_first(
    room: Room, answers: int
) -> None:
    """Once it was "is something wrong right now?"."""
    client = ruta(room)
    room.types(RUTA, "start")
    for _ in range(answers):
        room.types(RUTA, "no")
    room.types(RUTA, "I have started blood thinners")
    assert [one.cause for one in duties.open_alerts(room.store, client)] == ["today_changed"]
    assert any("blood thinners" in text for text in heard(room, COACH))
    assert any(text.startswith("Something changed") for text in heard(room, RUTA))
