"""The questions before a session, played as scripts."""

from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from conversations.protocol import (
    Alert,
    Begin,
    Cancelled,
    Corrected,
    Effect,
    Event,
    Opened,
    Record,
    Said,
    Say,
    WentBack,
    Woke,
)
from conversations.training.before import DIALOGUE, MOST_DRILLS, Brief
from conversations.words import before as words
from conversations.words import safety
from core.facts import Answered, Noticed, Rated, SessionEnded
from core.safety.causes import Cause

START = datetime(2026, 3, 2, 6, 0, tzinfo=UTC)
FIRST = Brief("7-1", 1, emergency_number="112")
LATER = replace(FIRST, session="7-9", number=9, drill_done=True)
FIT = ("no", "no", "0", "no")  # nothing new, well, no pain, nothing heavy


@dataclass
class Played:
    """One talk: everything said and done so far; the state goes through its stored form every time."""

    brief: Brief
    now: datetime = START
    stored: bytes = b""
    said: list[Say] = field(default_factory=list)
    effects: list[Effect] = field(default_factory=list)
    over: bool = False

    def give(self, event: Event) -> "Played":
        """One event; what the state needs to go on must survive a restart."""
        state = msgspec.json.decode(self.stored, type=DIALOGUE.state) if self.stored else None
        turn = DIALOGUE.advance(state, event, self.now)
        self.stored = msgspec.json.encode(turn.state)
        self.said += turn.replies
        self.effects += turn.effects
        self.over = turn.state is None
        return self

    def say(self, *texts: str) -> "Played":
        """The client types or taps."""
        for text in texts:
            assert not self.over, f"over before {text!r}"
            self.give(Said(self.now, text, None, len(self.effects)))
        return self

    def wait(self, **time: float) -> "Played":
        """Time passes and the timer rings."""
        self.now += timedelta(**time)
        return self.give(Woke(self.now))

    @property
    def asked(self) -> str:
        """The step that is open."""
        return (self.said[-1].asks or "").partition(".")[0]

    @property
    def facts(self) -> list[object]:
        """What was stored."""
        return [effect.fact for effect in self.effects if isinstance(effect, Record)]

    @property
    def alerts(self) -> list[Alert]:
        """What the coach was told."""
        return [effect for effect in self.effects if isinstance(effect, Alert)]

    @property
    def begun(self) -> list[Begin]:
        """What follows."""
        return [effect for effect in self.effects if isinstance(effect, Begin)]

    @property
    def ended(self) -> list[str]:
        """Why the session ended, if it did."""
        return [fact.why for fact in self.facts if isinstance(fact, SessionEnded)]


def played(brief: Brief, *texts: str) -> Played:
    """Opened, and answered so far."""
    return Played(brief).give(Opened(START, brief)).say(*texts)


def test_a_fit_client_goes_from_the_drill_to_the_session() -> None:
    play = played(FIRST, *FIT)
    assert play.asked == "drill"
    play.say("Off in under 10 seconds")
    assert play.asked == "sound"
    play.say("Heard it", "Done")
    assert play.begun == [Begin("session", {"session": "7-1"})]
    assert play.over
    assert not play.alerts
    assert not play.ended


def test_the_client_is_told_at_the_start_never_to_wait() -> None:
    first = played(replace(LATER, plan_name="Knees", first_lines=("Slow on the way down.",))).said
    assert "If I go quiet, take the bands off when the movement is done. Never wait for me." in first[0].text
    assert "Knees" in first[0].text
    assert first[1].text == "Slow on the way down."


def test_who_did_the_drill_is_not_asked_again_and_the_sound_check_can_be_spared() -> None:
    assert played(LATER, *FIT).asked == "sound"
    assert played(replace(LATER, sound_check=False), *FIT).asked == "warm"


def test_every_answer_is_a_fact_with_its_time() -> None:
    play = played(FIRST, *FIT, "done", "heard", "done")
    answers = {fact.question: fact.answer for fact in play.facts if isinstance(fact, Answered)}
    wanted = {"news": "no", "today": "no", "pain": "0", "heavy": "no"}
    assert answers == wanted | {"drill": "done", "sound": "done", "warm": "done"}
    assert all(
        fact.part == "before" and fact.at == START for fact in play.facts if isinstance(fact, Answered)
    )
    assert Rated(START, "7-1", "pain", "before", 0, "joint") in play.facts


@pytest.mark.parametrize(
    ("reply", "what", "screened"),
    [
        ("yes", "Started blood thinners on Monday", True),
        ("not sure", "Started blood thinners on Monday", True),  # plainly a new medicine
        ("yes", "A letter that puzzles me", True),
        ("not sure", "A letter that puzzles me", False),
    ],
)
def test_something_new_goes_to_the_coach_in_the_client_s_words(reply: str, what: str, screened: bool) -> None:
    play = played(LATER, reply)
    assert play.asked == "news_what"
    assert not play.alerts
    play.say(what)
    assert [alert.cause for alert in play.alerts] == [Cause.TODAY_CHANGED]
    assert what in play.alerts[0].said
    assert play.said[-1].text == play.alerts[0].told == safety.told(Cause.TODAY_CHANGED, "112")
    assert play.ended == ["not_today"]
    assert [one.dialogue for one in play.begun] == (["screening"] if screened else [])


def test_something_new_reaches_the_coach_even_when_the_client_leaves_it_there() -> None:
    play = played(LATER, "yes").wait(hours=1).wait(hours=2)
    assert [alert.cause for alert in play.alerts] == [Cause.TODAY_CHANGED]
    assert play.ended == ["lapsed"]
    assert [alert.cause for alert in played(LATER, "yes").give(Cancelled(START)).alerts] == [
        Cause.TODAY_CHANGED
    ]


@pytest.mark.parametrize("which", ["Fever or ill", "alcohol", "Just unwell"])
def test_not_well_today_means_no_session_today(which: str) -> None:
    play = played(LATER, "no", "yes", which)
    assert [alert.cause for alert in play.alerts] == [Cause.UNWELL]
    assert "112" in play.said[-1].text
    assert play.ended == ["not_today"]


def test_after_a_long_trip_the_coach_looks_first() -> None:
    play = played(LATER, "no", "yes", "Sat over 4 hours on a trip")
    assert [alert.cause for alert in play.alerts] == [Cause.TODAY_CHANGED]
    assert play.ended == ["not_today"]


def test_great_heat_means_a_gentle_session() -> None:
    play = played(LATER, "no", "yes", "Very hot where I train")
    assert play.alerts == []
    assert play.asked == "pain"


def test_a_yes_that_was_none_of_these_goes_on() -> None:
    assert played(LATER, "no", "yes", "None of these").asked == "pain"


def test_possible_pregnancy_and_news_lead_to_the_health_questions_again() -> None:
    for answers in (("no", "yes", "Possibly pregnant"), ("yes", "a new blood pressure tablet")):
        play = played(LATER, *answers)
        assert [alert.cause for alert in play.alerts] == [Cause.TODAY_CHANGED]
        assert play.begun == [Begin("screening", {"due": "news"})]
        assert play.ended == ["not_today"]


def test_not_being_sure_whether_something_is_new_is_for_the_coach() -> None:
    play = played(LATER, "not sure", "my doctor rang, I don't know yet")
    assert [alert.cause for alert in play.alerts] == [Cause.TODAY_CHANGED]
    assert play.begun == []


@pytest.mark.parametrize(
    ("ceiling", "pain", "trains"), [(3, 2, True), (3, 3, True), (3, 4, False), (5, 5, True)]
)
def test_pain_up_to_the_ceiling_trains_and_above_does_not(ceiling: int, pain: int, trains: bool) -> None:
    play = played(replace(LATER, pain_ceiling=ceiling), "no", "no", str(pain))
    assert (not play.over) is trains
    assert [alert.cause for alert in play.alerts] == ([] if trains else [Cause.PAIN_BEFORE])
    assert play.ended == ([] if trains else ["not_today"])


def test_a_slow_drill_is_tried_again_and_not_on_record_as_done() -> None:
    play = played(FIRST, *FIT, "It took longer")
    assert play.said[-1].text == words.DRILL_AGAIN.format(where=words.DRILL_PAIR[""])
    assert "drill" not in {fact.question for fact in play.facts if isinstance(fact, Answered)}
    assert play.say("Off in under 10 seconds").asked == "sound"


def test_a_drill_too_slow_too_often_or_stuck_ends_it() -> None:
    slow = played(FIRST, *FIT, *["It took longer"] * (MOST_DRILLS - 1))
    assert not slow.over
    slow.say("It took longer")
    stuck = played(FIRST, *FIT, "I can't get them off")
    for play in (slow, stuck):
        assert [alert.cause for alert in play.alerts] == [Cause.DRILL_FAILED]
        assert play.ended == ["not_today"]
        assert "drill" not in {fact.question for fact in play.facts if isinstance(fact, Answered)}
    # The coach reads how it went, not the question with its gaps.
    assert [play.alerts[0].said for play in (slow, stuck)] == [words.DRILL_SLOW_SAID, words.DRILL_STUCK_SAID]


def test_a_message_that_was_not_heard_is_sent_again() -> None:
    play = played(LATER, *FIT, "Didn't hear it")
    assert play.said[-1].text == words.SOUND_AGAIN
    assert play.say("Heard it").asked == "warm"


def test_a_red_flag_typed_instead_of_an_answer_ends_in_help() -> None:
    play = played(LATER, "no", "no", "my left hand is numb")
    assert [alert.cause for alert in play.alerts] == [Cause.NERVE]
    assert "112" in play.alerts[0].told
    assert [begin.dialogue for begin in play.begun] == ["trouble"]
    assert play.ended == ["not_today"]
    assert any(isinstance(fact, Noticed) and fact.kind == "said_nerve" for fact in play.facts)


def test_a_red_flag_in_what_is_new_is_a_red_flag() -> None:
    play = played(LATER, "yes", "since yesterday one calf is swollen")
    assert [alert.cause for alert in play.alerts] == [Cause.SWELLING]
    assert play.ended == ["not_today"]


def test_an_unclear_answer_is_asked_again() -> None:
    assert played(LATER, "purple").asked == "news"


def test_three_silent_hours_end_it_and_one_minute_less_does_not() -> None:
    assert not played(LATER).wait(hours=1).wait(minutes=119).over
    assert played(LATER).wait(hours=1).wait(minutes=120).ended == ["lapsed"]


def test_leaving_ends_the_session() -> None:
    assert played(LATER, "no").give(Cancelled(START)).ended == ["cancelled"]


def test_back_asks_again_and_a_corrected_pain_above_the_ceiling_ends_it() -> None:
    assert played(LATER, "no", "no").give(WentBack(START)).asked == "today"
    play = Played(LATER).give(Opened(START, LATER)).say("no", "no")
    play.give(Said(START, "1", None, 77)).give(Corrected(START, "7", 77))
    assert [alert.cause for alert in play.alerts] == [Cause.PAIN_BEFORE]
    assert play.over


WRONG = {0: ["yes", "flu last week"], 1: ["yes", "alcohol"], 2: ["9"]}


@given(st.sets(st.sampled_from(sorted(WRONG)), min_size=1), st.booleans())
def test_nothing_that_speaks_against_it_ends_in_a_session(wrong: set[int], drilled: bool) -> None:
    play = played(replace(LATER, drill_done=drilled))
    for number, fit in enumerate((*FIT, *([] if drilled else ["done"]), "heard", "done")):
        for text in WRONG[number] if number in wrong else [fit]:
            if not play.over:
                play.say(text)
    assert play.ended == ["not_today"]
    assert len(play.alerts) == 1
    assert "session" not in [one.dialogue for one in play.begun]
