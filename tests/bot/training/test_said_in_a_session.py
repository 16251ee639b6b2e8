"""What a client says in a session that is no answer: it goes where it is meant to, or waits, and the count is still asked for."""

import pytest

from bot.engine import turns
from conversations.words import changing as day_words
from conversations.words import engine as words
from conversations.words import session as session_words
from conversations.words import trouble
from core.store import duties, people, threads
from tests.practice import CLIENT, COACH, Practice

LINE = "my niece moved here"


@pytest.fixture
def counting(practice: Practice) -> Practice:
    """At the question for the reps of set 1."""
    practice.in_a_set()
    practice.taps(CLIENT, "Set done")
    return practice


def still_counts(practice: Practice) -> bool:
    """Whether a number is taken as the count."""
    practice.types(CLIENT, "31")
    return practice.sets() == {1: 31}


def session_over(practice: Practice) -> None:
    """The bands come off, and nothing is asked any more."""
    practice.types(CLIENT, "stop")
    practice.taps(CLIENT, "Bands are off")
    for _ in range(12):
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        answer = next((one for one in ("Better", "No", "0", "None of these", "Fine") if one in labels), None)
        if answer is None:
            break
        practice.taps(CLIENT, answer)
    practice.later(hours=3)


@pytest.mark.parametrize(
    ("line", "read"),
    [
        ("tell my coach I did it", "I did it"),
        ("please tell coach that I was late today", "I was late today"),
        ("let my coach know I was late", "I was late"),
        ("can you ask my coach if friday works", "can you ask my coach if friday works"),
        ("message the coach: see you soon", "see you soon"),
        ("coach see you soon", "see you soon"),
    ],
)
def test_words_for_the_coach_go_out_and_the_count_is_still_asked_for(
    counting: Practice, line: str, read: str
) -> None:
    counting.types(CLIENT, line)
    assert counting.newest(COACH).text == f"Ruta: {read}"
    assert counting.newest(CLIENT).text == "Sent to Coach."
    assert still_counts(counting)


@pytest.mark.parametrize("line", ["tell my coach", "tell my coach please", "coach"])
def test_no_empty_words_go_to_the_coach(practice: Practice, line: str) -> None:
    heard = practice.heard(COACH)
    practice.types(CLIENT, line)
    assert practice.heard(COACH) == heard


def test_a_sign_of_harm_told_to_the_coach_stops_the_session_first(counting: Practice) -> None:
    counting.types(CLIENT, "tell my coach my foot is numb")
    assert threads.live_in(counting.stage.engine.store, counting.client, "session") is None
    assert counting.newest(COACH).text.startswith("Ruta: tingling or numb")


@pytest.mark.parametrize(
    "line", ["move thursday to friday", "skip this week", "please move monday to tuesday"]
)
def test_days_are_kept_and_asked_about_after_the_session(counting: Practice, line: str) -> None:
    counting.types(CLIENT, line)
    counting.types(CLIENT, line)
    assert counting.newest(CLIENT).text == day_words.AFTER_SESSION
    assert still_counts(counting)
    session_over(counting)
    assert threads.live_in(counting.stage.engine.store, counting.client, "changing") is not None
    assert duties.planned(counting.stage.engine.store, counting.client, "changing") == []


def test_prose_is_kept_with_the_open_question_and_offered_to_the_coach_afterwards(counting: Practice) -> None:
    counting.types(CLIENT, LINE)
    kept, question = counting.heard(CLIENT)[-2:]
    assert kept == session_words.SAID_KEPT
    assert "clean reps" in question
    assert still_counts(counting)
    session_over(counting)
    assert f'In the session you wrote: "{LINE}". Shall I send that to Coach?' in counting.heard(CLIENT)
    counting.taps(CLIENT, "Send it")
    counting.later(hours=12)
    assert f"Ruta: {LINE}" in counting.heard(COACH)


def test_what_was_nothing_bad_after_all_is_kept_too(counting: Practice) -> None:
    counting.types(CLIENT, "the cupboard dances a jig")
    assert counting.newest(CLIENT).text == trouble.ASK_WRONG
    counting.taps(CLIENT, "No, all fine")
    assert trouble.GOOD_KEPT in counting.heard(CLIENT)
    counting.types(CLIENT, LINE)
    session_over(counting)
    offers = [text for text in counting.heard(CLIENT) if text.startswith("In the session you wrote")]
    assert offers == [
        f'In the session you wrote: "the cupboard dances a jig\n{LINE}". Shall I send that to Coach?'
    ]


@pytest.mark.parametrize("line", ["lots", "20 or so, maybe 21 of them"])
def test_what_was_meant_for_a_count_is_asked_again_and_not_kept(counting: Practice, line: str) -> None:
    counting.types(CLIENT, line)
    assert session_words.SAID_KEPT not in counting.heard(CLIENT)


@pytest.mark.parametrize("typed", ["settings", "bands", "my details", "travelling"])
def test_no_question_of_the_menu_takes_the_count(counting: Practice, typed: str) -> None:
    counting.types(CLIENT, typed)
    assert counting.newest(CLIENT).text == words.LATER_THAT.format(typed=typed)
    assert still_counts(counting)


def test_write_to_my_coach_says_how_in_a_session(counting: Practice) -> None:
    counting.types(CLIENT, "write to my coach")
    assert counting.newest(CLIENT).text == words.TELL_IN_SESSION
    assert still_counts(counting)


def test_days_are_moved_at_once_among_the_questions_before_a_session(practice: Practice) -> None:
    practice.types(CLIENT, "start")
    practice.types(CLIENT, "move thursday to friday")
    assert threads.live_in(practice.stage.engine.store, practice.client, "changing") is not None


@pytest.mark.parametrize("asked", ["how many more sets", "How many sets are left?", "how much more to go"])
def test_how_many_sets_are_left_is_answered(counting: Practice, asked: str) -> None:
    counting.types(CLIENT, asked)
    answer, question = counting.heard(CLIENT)[-2:]
    assert answer == "1 of 2 sets done, 1 to go."
    assert "clean reps" in question
    assert still_counts(counting)


def test_what_was_kept_waits_for_the_questions_after_the_session(counting: Practice) -> None:
    counting.types(CLIENT, LINE)
    counting.types(CLIENT, "move thursday to friday")
    counting.types(CLIENT, "31")
    with counting.stage.engine.store.transaction():
        engine = counting.stage.engine
        client = people.by_id(engine.store, counting.client)
        turns.end_training(engine, client, "done", engine.clock())
        turns.begin(engine, client, "after", {"session": "s1", "why": "done"}, engine.clock())
    counting.later(minutes=10)
    assert threads.live_in(counting.stage.engine.store, counting.client, "changing") is None
    assert not any(text.startswith("In the session you wrote") for text in counting.heard(CLIENT))


@pytest.mark.parametrize("line", ["tell my coach", "coach", "message my coach"])
def test_to_my_coach_without_words_asks_for_them(practice: Practice, line: str) -> None:
    practice.types(CLIENT, line)
    practice.types(CLIENT, "see you soon")
    assert practice.newest(COACH).text == "Ruta: see you soon"


@pytest.mark.parametrize("line", ["tell my coach the ribs in the oven", "coach the ribs in the oven"])
def test_what_touches_the_body_goes_to_the_coach_and_is_asked_about_while_bands_are_on(
    counting: Practice, line: str
) -> None:
    counting.types(CLIENT, line)
    assert "Ruta: the ribs in the oven" in counting.heard(COACH)
    assert counting.newest(CLIENT).text == trouble.ASK_WRONG
    counting.taps(CLIENT, "No, all fine")
    assert trouble.GOOD in counting.heard(CLIENT), "they are sent already"
    assert still_counts(counting)
