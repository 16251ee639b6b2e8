"""Numbers over a slow line: late, twice, several at once, corrected; none lands at a question nobody could have seen.

What is typed without a breath in between reaches the bot in one go, as after an outage.
"""

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta

import pytest

from core.facts import BandsOff, CuffChecked, Fact, PlanGiven, Rated, SessionEnded, SessionStarted, SetDone
from core.plan_text import plan_to_text
from core.plans import Plan, Region, Side
from core.store import duties, facts
from tests.practice import CLIENT, SQUAT, START, Practice

ROW = replace(SQUAT, movement="one_arm_row", region=Region.ARMS, sides=(Side.LEFT, Side.RIGHT))


class SlowLine(Practice):
    """A client whose words may come in one go, and who has trained before, so that all sets are done."""

    def trained(self, number: int = 5) -> None:
        """So many sessions in the weeks before."""
        with self.stage.engine.store.transaction():
            for no in range(number):
                at, session = START - timedelta(days=20 - 3 * no), f"x{no}"
                squats = SetDone(
                    at, session, 1, "goblet_squat", 1, Side.BOTH, "10 kg", 30, False, at, None, 6, False
                )
                began, ended = SessionStarted(at, session, no + 1, ""), SessionEnded(at, session, "done")
                self.put(began, squats, ended)

    def put(self, *those: Fact) -> None:
        """Facts of the client."""
        for one in those:
            facts.put(self.stage.engine.store, self.client, one, START)

    def types_at_once(self, *said: str | float) -> list[int]:
        """Words while nobody answers, and seconds between them; then all of it is heard. Their numbers."""
        clock, sent = self.stage.clock, []
        for one in said:
            if isinstance(one, str):
                sent.append(self.stage.phones[CLIENT].types(one))
            else:
                clock.skip_to(clock.now() + timedelta(seconds=one))
        self.settle()
        return sent

    def counts(self) -> dict[tuple[int, str], int]:
        """Reps of this session by set and side, each once."""
        now = [one for one in self.done() if not one.session.startswith("x")]
        found = {(one.set_no, one.side.value): one.reps for one in now}
        assert len(found) == len(now), "a set stands twice"
        return found

    def done(self) -> list[SetDone]:
        """All sets that count."""
        return facts.current(self.stage.engine.store, SetDone, self.client)

    def both(self) -> dict[int, int]:
        """Reps by set where both sides work at once."""
        return {no: reps for (no, _), reps in self.counts().items()}

    def labels(self, text: str) -> list[str]:
        """The buttons of the newest message that begins so."""
        shown = next(one for one in reversed(self.messages(CLIENT)) if one.text.startswith(text))
        return [label for row in shown.buttons for label, _ in row]

    def rests(self) -> None:
        """The rest goes by."""
        self.later(seconds=31)

    def reads(self, text: str) -> bool:
        """Whether the client was told this."""
        return any(one.startswith(text) for one in self.heard(CLIENT))


@pytest.fixture
def slow() -> Iterator[SlowLine]:
    """In set 1 of three."""
    made = SlowLine()
    made.trained()
    made.in_a_set()
    yield made
    made.stage.close()


@pytest.fixture
def gentle() -> Iterator[SlowLine]:
    """The very first session: in set 1 of two, with a look at the bands after it and a question about reps left."""
    made = SlowLine()
    made.in_a_set()
    yield made
    made.stage.close()


@pytest.fixture
def sided() -> Iterator[SlowLine]:
    """In set 1 of one-sided work, left before right."""
    made = SlowLine()
    made.trained()
    coach = made.stage.engine.store.rows("SELECT id FROM person WHERE role = 'coach'")[0]["id"]
    with made.stage.engine.store.transaction():
        made.put(PlanGiven(START, plan_to_text(Plan("rows", (ROW,))), coach))
    made.in_a_set()
    yield made
    made.stage.close()


# --- the same number twice, and taken back ---------------------------------------------------------------------------
def test_twice_and_taken_back_in_one_go_is_one_set(slow: SlowLine) -> None:
    slow.types_at_once("16", "16", "no, 17")
    assert slow.both() == {1: 17}


def test_twice_with_a_wait_is_asked_about_and_no_17_settles_it(slow: SlowLine) -> None:
    slow.types_at_once("16")
    slow.types_at_once(8.0, "16")
    assert slow.labels("16: set 1 again, or set 2?")[:2] == ["Set 1", "Set 2"]
    slow.types_at_once(3.0, "no, 17")
    assert slow.both() == {1: 17}
    slow.taps(CLIENT, "Set 2")  # the question is over
    assert slow.both() == {1: 17}


@pytest.mark.parametrize(
    "text",
    ["no, 17", "sorry 17", "17 I meant", "make that 17", "17*", "*17", "17 sorry", "17 not 16", "no 17 reps"],
)
@pytest.mark.parametrize("when", ["in the rest", "in the next set"])
def test_a_correction_in_any_words_changes_the_count_before(slow: SlowLine, text: str, when: str) -> None:
    slow.types(CLIENT, "16")
    if when == "in the next set":
        slow.rests()
        assert slow.newest(CLIENT).text.startswith("Go · set 2")
    slow.types(CLIENT, text)
    assert slow.both() == {1: 17}


def test_a_correction_while_the_next_count_is_asked_for_has_two_readings(slow: SlowLine) -> None:
    slow.types(CLIENT, "16")
    slow.rests()
    slow.types(CLIENT, "done")
    slow.types(CLIENT, "no, 17")
    assert slow.both() == {1: 16}
    assert slow.newest(CLIENT).text == "17: for set 1, or set 2?"
    slow.taps(CLIENT, "Set 1")
    assert slow.both() == {1: 17}
    slow.types(CLIENT, "12")
    assert slow.both() == {1: 17, 2: 12}


def test_a_correction_typed_before_the_next_count_was_asked_for_has_one(slow: SlowLine) -> None:
    slow.types(CLIENT, "16")
    slow.rests()
    slow.types_at_once("done", "no, 17", "12")
    assert slow.both() == {1: 17, 2: 12}


def test_it_was_17_is_an_answer_where_a_count_is_asked_for(slow: SlowLine) -> None:
    slow.types(CLIENT, "16")
    slow.rests()
    slow.types(CLIENT, "done")
    slow.types(CLIENT, "it was 17")
    assert slow.both() == {1: 16, 2: 17}


# --- several sets in one go ------------------------------------------------------------------------------------------
def test_no_22_after_set_1_was_corrected_is_still_about_set_1(slow: SlowLine) -> None:
    for count in ("28", "16"):
        slow.taps(CLIENT, "Set done")
        slow.types(CLIENT, count)
        slow.rests()
    slow.types(CLIENT, "set 1 was 21")
    slow.later(seconds=3)
    slow.types(CLIENT, "no, 22")
    assert slow.both() == {1: 22, 2: 16}


def test_three_sets_done_without_an_answer_are_three_sets_when_the_client_says_so(slow: SlowLine) -> None:
    slow.types_at_once("30", 90.0, "15", 90.0, "14")
    assert slow.both() == {1: 30}
    assert slow.labels("15, 14 came while") == ["Sets 2 and 3", "Set 1 is 14", "Leave it", "Stop"]
    slow.taps(CLIENT, "Sets 2 and 3")
    assert slow.both() == {1: 30, 2: 15, 3: 14}
    assert slow.newest(CLIENT).text.startswith("Done. Bands off now")


def test_or_the_last_one_was_a_correction(slow: SlowLine) -> None:
    slow.types_at_once("30", 20.0, "15", 20.0, "14")
    slow.taps(CLIENT, "Set 1 is 14")
    assert slow.both() == {1: 14}


def test_the_second_question_leaves_the_first_one_open(gentle: SlowLine) -> None:
    gentle.types_at_once("12", 20.0, "11", 7.0, "10")
    assert gentle.both() == {1: 12}
    first = next(one for one in gentle.messages(CLIENT) if one.text.startswith("11: set 1 again"))
    gentle.stage.phones[CLIENT].taps(first.id, "Set 2")
    gentle.settle()
    assert gentle.both() == {1: 12, 2: 11}


def test_no_14_takes_back_the_number_that_is_asked_about(slow: SlowLine) -> None:
    slow.types_at_once("30", 90.0, "15", 20.0, "no, 14")
    assert slow.both() == {1: 30}
    slow.taps(CLIENT, "Set 2")
    assert slow.both() == {1: 30, 2: 14}


def test_set_2_typed_answers_which_set(slow: SlowLine) -> None:
    slow.types(CLIENT, "30")
    slow.types(CLIENT, "15")
    slow.types(CLIENT, "set 2")
    assert slow.both() == {1: 30, 2: 15}


def test_two_sets_typed_in_the_rest_are_followed_by_the_third(slow: SlowLine) -> None:
    slow.types(CLIENT, "30")
    slow.types(CLIENT, "30 15")
    slow.rests()
    assert slow.newest(CLIENT).text.startswith("Go · set 3")
    slow.types(CLIENT, "9")
    assert slow.both() == {1: 30, 2: 15, 3: 9}


def test_a_number_before_go_could_be_read_is_not_the_next_sets(slow: SlowLine) -> None:
    slow.types(CLIENT, "30")
    slow.stage.outbox.paused_until = slow.stage.clock.now() + timedelta(seconds=40)
    slow.rests()
    slow.types(CLIENT, "29")  # set 2 runs by the clock, but its Go has not gone out
    slow.types(CLIENT, "done")
    assert slow.both() == {1: 30}
    slow.later(seconds=10)
    slow.settle()
    assert slow.labels("29: set 1 again, or set 2?")[:2] == ["Set 1", "Set 2"]
    slow.taps(CLIENT, "Set 1")
    slow.types(CLIENT, "15")
    assert slow.both() == {1: 29, 2: 15}


# --- replies and edits -----------------------------------------------------------------------------------------------
def test_a_reply_to_an_older_message_changes_that_set_whoever_wrote_it(slow: SlowLine) -> None:
    own = slow.types(CLIENT, "30")
    slow.rests()
    go = slow.newest(CLIENT).id
    slow.types(CLIENT, "15")
    slow.rests()
    phone = slow.stage.phones[CLIENT]
    phone.types("29", reply_to=own)
    phone.types("16", reply_to=go)
    slow.settle()
    assert slow.both() == {1: 29, 2: 16}


def test_an_edit_after_the_next_set_began_changes_its_own_set(slow: SlowLine) -> None:
    own = slow.types(CLIENT, "30")
    slow.rests()
    slow.stage.phones[CLIENT].edits(own, "29")
    slow.settle()
    assert slow.both() == {1: 29}
    slow.types(CLIENT, "15")
    slow.stage.phones[CLIENT].edits(own, "28*")
    slow.settle()
    assert slow.both() == {1: 28, 2: 15}


# --- sides -----------------------------------------------------------------------------------------------------------
def test_a_second_number_before_the_right_side_was_asked_for_has_two_readings(sided: SlowLine) -> None:
    sided.types(CLIENT, "done")
    sided.types_at_once("28", 2.0, "31")
    assert sided.counts() == {(1, "left"): 28}
    assert sided.labels("31: for right, or left again instead of 28?") == ["Right 31", "Left 31", "Stop"]
    sided.taps(CLIENT, "Left 31")
    assert sided.counts() == {(1, "left"): 31}
    sided.types(CLIENT, "29")
    assert sided.counts() == {(1, "left"): 31, (1, "right"): 29}


def test_the_same_number_before_the_right_side_was_asked_for_is_a_copy(sided: SlowLine) -> None:
    sided.types(CLIENT, "done")
    sided.types_at_once("28", "28")
    assert sided.counts() == {(1, "left"): 28}
    assert sided.newest(CLIENT).text == "Right: how many clean reps?"


def test_both_sides_at_once_twice_and_taken_back(sided: SlowLine) -> None:
    sided.types(CLIENT, "done")
    sided.types_at_once("28 left 31 right", "28 left 31 right", "sorry, 27 left 30 right")
    assert sided.counts() == {(1, "left"): 27, (1, "right"): 30}


def test_no_27_after_the_left_side_alone_is_the_left_side(sided: SlowLine) -> None:
    sided.types(CLIENT, "done")
    sided.types(CLIENT, "28")
    sided.types(CLIENT, "no, 27")
    assert sided.counts() == {(1, "left"): 27}
    assert sided.newest(CLIENT).text == "Right: how many clean reps?"


def test_two_sided_sets_without_an_answer_are_asked_about(sided: SlowLine) -> None:
    sided.types_at_once("28 left 31 right", 90.0, "15 left 16 right")
    assert sided.counts() == {(1, "left"): 28, (1, "right"): 31}
    sided.taps(CLIENT, "Set 2")
    assert sided.counts()[2, "left"] == 15
    assert sided.counts()[2, "right"] == 16


# --- counts and ratings: all are numbers -----------------------------------------------------------------------------
def looks_again(gentle: SlowLine) -> None:
    """Set 1 counted, and the bands are looked at before set 2."""
    gentle.types(CLIENT, "8")
    gentle.rests()
    assert gentle.newest(CLIENT).text.startswith("How tight are they")


def looks(gentle: SlowLine) -> int:
    """How many limbs were looked at."""
    return len(facts.current(gentle.stage.engine.store, CuffChecked, gentle.client))


@pytest.mark.parametrize("wait", [0.0, 3.0])
def test_tightness_twice_is_no_refill_of_six_seconds(gentle: SlowLine, wait: float) -> None:
    looks_again(gentle)
    if wait:
        gentle.types(CLIENT, "6")
    gentle.types_at_once(*(() if wait else ("6",)), wait, "6")
    assert gentle.newest(CLIENT).text.startswith("Left leg")
    assert gentle.both() == {1: 8}


def test_no_7_after_the_tightness_changes_the_tightness(gentle: SlowLine) -> None:
    looks_again(gentle)
    gentle.types(CLIENT, "6")
    gentle.types(CLIENT, "no, 7")
    assert gentle.newest(CLIENT).text.startswith("Left leg")
    for label in ("Under 2 seconds", "Under 2 seconds", "Fine"):
        gentle.taps(CLIENT, label)
    last = facts.latest(gentle.stage.engine.store, CuffChecked, gentle.client)
    assert last is not None
    assert last.tightness == 7
    assert gentle.both() == {1: 8}


@pytest.mark.parametrize(("text", "reps"), [("no, 9", 9), ("no, 19", 19)])
def test_a_correction_before_the_tightness_changes_the_count(gentle: SlowLine, text: str, reps: int) -> None:
    looks_again(gentle)
    gentle.types(CLIENT, text)
    assert gentle.both() == {1: reps}
    assert gentle.newest(CLIENT).text.startswith("How tight are they")


def test_a_number_too_high_for_a_rating_is_asked_about(gentle: SlowLine) -> None:
    looks_again(gentle)
    gentle.types(CLIENT, "18")
    assert gentle.labels("18: change set 1 from 8 to that?")[0] == "Set 1 is 18"
    assert gentle.newest(CLIENT).text.startswith("How tight are they")


def last_set(gentle: SlowLine) -> None:
    """In the last set of the first session."""
    looks_again(gentle)
    for label in ("6", "Under 2 seconds", "Under 2 seconds", "Fine"):
        gentle.taps(CLIENT, label)
    assert gentle.newest(CLIENT).text.startswith("Go · set 2")


def test_the_last_count_twice_is_not_what_was_left(gentle: SlowLine) -> None:
    last_set(gentle)
    gentle.types_at_once("6", "off", "6")
    assert gentle.newest(CLIENT).text == "Already noted: 6."
    assert [one.reps_left for one in gentle.done()] == [None, None]
    assert facts.latest(gentle.stage.engine.store, BandsOff, gentle.client) is not None


def to_the_questions_after(gentle: SlowLine, *left: str) -> None:
    """Bands off, and how many were left; more words may come with it."""
    last_set(gentle)
    gentle.types(CLIENT, "6")
    gentle.taps(CLIENT, "Bands are off")
    gentle.types_at_once(*left)


def ratings(gentle: SlowLine) -> dict[str, int]:
    """What was rated after the session."""
    found = facts.current(gentle.stage.engine.store, Rated, gentle.client, part="after")
    return {one.what: one.score for one in found}


def test_what_was_left_twice_is_no_rating_of_the_effort(gentle: SlowLine) -> None:
    to_the_questions_after(gentle, "4", "4")
    assert ratings(gentle) == {}
    assert gentle.reads("Already noted: 4."), "no word stays without an answer"
    assert gentle.newest(CLIENT).text.startswith("How hard was it")


def test_another_number_before_the_effort_was_asked_for_is_asked_about(gentle: SlowLine) -> None:
    to_the_questions_after(gentle, "4", "9")
    assert ratings(gentle) == {}
    gentle.taps(CLIENT, "Goblet squat: set 2 is 9")
    assert gentle.both() == {1: 8, 2: 9}
    gentle.types(CLIENT, "7")
    assert ratings(gentle) == {"effort": 7}


def test_no_9_before_any_rating_is_still_about_the_set(gentle: SlowLine) -> None:
    to_the_questions_after(gentle, "4")
    gentle.types(CLIENT, "no, 9")
    assert ratings(gentle) == {}
    assert gentle.both() == {1: 8, 2: 9}


@pytest.mark.parametrize("wait", [0.0, 2.0])
def test_the_effort_twice_is_no_pain_of_seven(gentle: SlowLine, wait: float) -> None:
    to_the_questions_after(gentle, "4")
    if wait:
        gentle.types(CLIENT, "7")
    gentle.types_at_once(*(() if wait else ("7",)), wait, "7")
    assert ratings(gentle) == {"effort": 7}


def test_no_6_after_the_effort_changes_it_and_the_pain_is_still_open(gentle: SlowLine) -> None:
    to_the_questions_after(gentle, "4")
    gentle.types_at_once("7", "7", "no, 6", "2")
    assert ratings(gentle) == {"effort": 6}
    assert gentle.newest(CLIENT).text.startswith("Any pain now")
    assert gentle.reads("“2” came before I asked this")
    gentle.types(CLIENT, "2")
    assert ratings(gentle) == {"effort": 6, "pain": 2}


@pytest.mark.parametrize(
    ("said", "is_a_sign"),
    [
        ("i feel dizzy", True),
        ("my foot is tingling", True),
        ("something is odd", False),
        ("there were little stars everywhere", False),
    ],
)
def test_a_sign_typed_before_the_next_question_could_be_read_is_never_left_out(
    gentle: SlowLine, said: str, is_a_sign: bool
) -> None:
    """A simulated month: it was sent together with the last words of the session, and "left out"."""
    to_the_questions_after(gentle, "4", said)
    alerts = duties.open_alerts(gentle.stage.engine.store, gentle.client)
    assert [one.said for one in alerts] == ([said] if is_a_sign else [])
    asked = any("Is something wrong right now?" in text for text in gentle.heard(CLIENT)[-3:])
    assert asked is not is_a_sign
    assert not gentle.reads("left it out")


def test_a_sign_between_two_of_the_questions_after_is_not_left_out_either(gentle: SlowLine) -> None:
    to_the_questions_after(gentle, "4")
    gentle.types_at_once("7", "i feel dizzy")
    assert [one.said for one in duties.open_alerts(gentle.stage.engine.store, gentle.client)] == [
        "i feel dizzy"
    ]
