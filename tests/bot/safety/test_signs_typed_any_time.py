"""Signs typed at any time: days later with nothing open, at the morning question, in the middle of a set."""

import pytest

from conversations.words import safety
from conversations.words import trouble as words
from core.safety.causes import Cause
from core.store import duties
from tests.practice import CLIENT, COACH, Practice

WRONG = words.ASK_WRONG


@pytest.fixture
def room() -> Practice:
    return Practice()


def causes(room: Practice) -> list[Cause]:
    """What the coach was told about."""
    return [alert.cause for alert in duties.open_alerts(room.stage.engine.store, room.client)]


def open_morning(room: Practice) -> None:
    """The question of the next morning is open."""
    from bot.engine import turns
    from core.store import people

    engine = room.stage.engine
    with engine.store.transaction():
        client = people.by_id(engine.store, room.client)
        turns.begin(engine, client, "morning", {"session": "1"}, engine.clock())
    room.settle()


SIGNS = [
    ("legs are weak", Cause.WEAKNESS),
    ("cant lift my arm", Cause.WEAKNESS),
    ("my pee is brown", Cause.URINE),
    ("my pee is like cola", Cause.URINE),
    ("fever", Cause.FEVER_AFTER),
]


@pytest.mark.parametrize(("typed", "cause"), SIGNS)
def test_a_sign_typed_days_later_with_nothing_open_finds_its_way(
    room: Practice, typed: str, cause: Cause
) -> None:
    room.later(days=3)
    room.types(CLIENT, typed)
    assert causes(room) == [cause]
    assert any(text.startswith(safety.TOLD[cause][:20]) for text in room.heard(CLIENT))
    assert any(typed in text for text in room.heard(COACH))


@pytest.mark.parametrize(("typed", "cause"), [*SIGNS, ("so sore I can hardly move", Cause.SORE)])
def test_a_sign_typed_at_the_morning_question_finds_its_way(room: Practice, typed: str, cause: Cause) -> None:
    open_morning(room)
    room.types(CLIENT, typed)
    assert causes(room) == [cause]
    assert any(typed in text for text in room.heard(COACH))


@pytest.mark.parametrize("typed", ["very sore", "so sore I can hardly move"])
def test_very_sore_is_asked_about_and_far_more_reaches_the_coach(room: Practice, typed: str) -> None:
    room.later(days=2)
    room.types(CLIENT, typed)
    assert room.newest(CLIENT).text == words.SORE
    assert causes(room) == []
    room.taps(CLIENT, "Far more")
    assert causes(room) == [Cause.SORE]


def test_ordinary_soreness_is_no_alert_and_a_silence_about_it_is_one(room: Practice) -> None:
    room.types(CLIENT, "very sore")
    room.taps(CLIENT, "Ordinary soreness")
    assert causes(room) == []
    room.types(CLIENT, "really sore")
    room.later(minutes=20)
    assert causes(room) == [Cause.SORE]


@pytest.mark.parametrize("typed", ["my arm looks like a badger", "darling I feel like an old tree"])
def test_what_is_told_at_the_morning_question_is_followed_up(room: Practice, typed: str) -> None:
    open_morning(room)
    room.types(CLIENT, typed)
    assert room.newest(CLIENT).text == WRONG
    room.taps(CLIENT, words.WRONG_NO)
    room.taps(CLIENT, "Something else")
    room.types(CLIENT, "none of that but the band left a mark")
    assert Cause.OTHER_AFTER in causes(room)


@pytest.mark.parametrize(
    "typed", ["my legs are weak", "the ceiling looks odd and far away", "mano kojos kaip medines"]
)
def test_in_a_set_words_that_fit_nothing_are_asked_about_bands_off_first(room: Practice, typed: str) -> None:
    room.in_a_set()
    room.types(CLIENT, typed)
    assert room.newest(CLIENT).text == WRONG
    room.taps(CLIENT, words.WRONG_NO)
    assert "Set 1" in room.newest(CLIENT).text


def test_nobody_who_mistypes_a_count_is_asked_whether_something_is_wrong(room: Practice) -> None:
    room.in_a_set()
    room.types(CLIENT, "thrity")
    assert WRONG not in room.heard(CLIENT)


@pytest.mark.parametrize(
    "typed", ["me duele el pecho", "skauda krūtinę", "болит грудь", "meine Brust tut weh"]
)
def test_a_chest_that_hurts_is_an_emergency_in_other_languages_too(room: Practice, typed: str) -> None:
    room.in_a_set()
    room.types(CLIENT, typed)
    assert causes(room) == [Cause.EMERGENCY]


def test_a_fall_of_yesterday_waits_for_the_coach_wherever_it_is_told(practice: Practice) -> None:
    practice.types(CLIENT, "I fell on the stairs yesterday")
    assert practice.newest(CLIENT).text.startswith("Then your coach looks at that first")
    assert practice.newest(COACH).text.startswith("Ruta: something new in their health")
    practice.types(CLIENT, "start")
    assert "No bands until then" in practice.newest(CLIENT).text


def test_a_fall_told_before_the_session_is_something_new(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    practice.types(CLIENT, "I fell on the stairs yesterday")
    assert "I fell on the stairs yesterday" in practice.newest(COACH).text
    assert any("No bands today" in text for text in practice.heard(CLIENT)[-3:])


def test_a_fall_told_in_a_set_reaches_the_coach_also_when_nothing_is_wrong_now(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "I fell on the stairs yesterday")
    assert practice.newest(CLIENT).text.endswith("Is something wrong right now?")
    assert practice.newest(COACH).text == "Ruta: I fell on the stairs yesterday"
    practice.types(CLIENT, "no")
    assert practice.newest(CLIENT).text.startswith("Set 1 of")


def test_sides_typed_where_both_work_at_once_are_no_count_and_no_bug(practice: Practice) -> None:
    practice.in_a_set()
    practice.types(CLIENT, "left leg 20 right leg 18")
    assert practice.sets() == {}
    assert practice.newest(CLIENT).text.startswith("Tap Set done")
