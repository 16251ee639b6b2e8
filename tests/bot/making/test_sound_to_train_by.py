"""The sound to train by, heard again: tones are found by their energy and stand where tempo and rest put them."""

import io
import wave
from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy
import pytest

from bot.making.beat import RATE, TONES, beat
from core.beat import LEAD_IN_S, Pattern, Tone, cues, length_s, pattern_of, rests_at
from core.facts import PlanGiven, SessionEnded, SessionStarted, SetDone
from core.plan_text import plan_to_text
from core.plans import FIXED_AIMS, OPEN_AIMS, Exercise, Plan, Region, Scheme, Side
from core.store import facts
from tests.practice import CLIENT, SQUAT, START, Practice

FRAME_S = 0.005
OPEN = Pattern((40, 20, 10), 4, 30)
FIXED = Pattern((30, 15, 15, 15), 4, 30)


@dataclass(frozen=True)
class Heard:
    """A tone: when it began (s), how long it was (s), how high (Hz)."""

    at: float
    seconds: float
    hertz: float


def samples(data: bytes) -> "numpy.ndarray[tuple[int], numpy.dtype[numpy.float64]]":
    """The sound around 0."""
    with wave.open(io.BytesIO(data)) as file:
        assert (file.getnchannels(), file.getsampwidth(), file.getframerate()) == (1, 1, RATE)
        found = numpy.frombuffer(file.readframes(file.getnframes()), dtype=numpy.uint8).astype(float) - 128
    return numpy.asarray(found)


def heard(data: bytes) -> list[Heard]:
    """The tones, by the energy of short frames; their pitch by how often they cross zero."""
    sound = samples(data)
    frame = round(FRAME_S * RATE)
    energy = (sound[: len(sound) // frame * frame].reshape(-1, frame) ** 2).mean(axis=1)
    loud = numpy.concatenate(([False], energy > 100, [False]))
    edges = numpy.flatnonzero(loud[1:] != loud[:-1])
    found = []
    for begin, end in zip(edges[::2], edges[1::2], strict=True):
        tone = sound[begin * frame : end * frame]
        crossings = numpy.count_nonzero(numpy.diff(numpy.sign(tone[tone != 0])))
        seconds = (end - begin) * FRAME_S
        found.append(Heard(float(begin * FRAME_S), float(seconds), float(crossings / 2 / seconds)))
    return found


def high(one: Heard) -> bool:
    return abs(one.hertz - TONES[Tone.UP][0]) < 40 and one.seconds < 0.12


def low(one: Heard) -> bool:
    return abs(one.hertz - TONES[Tone.DOWN][0]) < 40 and one.seconds < 0.12


def soon(one: Heard) -> bool:
    return abs(one.hertz - TONES[Tone.SOON][0]) < 40


@pytest.mark.parametrize("pattern", [OPEN, FIXED, replace(FIXED, tempo_s=6), replace(OPEN, rest_s=45)])
def test_every_rep_has_its_up_and_down_at_the_plans_tempo(pattern: Pattern) -> None:
    found = heard(beat(pattern))
    ups, downs = [one.at for one in found if high(one)], [one.at for one in found if low(one)]
    assert len(ups) == len(downs) == sum(pattern.reps)
    begin = float(LEAD_IN_S)
    wanted = []
    for reps in pattern.reps:
        wanted += [begin + rep * pattern.tempo_s for rep in range(reps)]
        begin += reps * pattern.tempo_s + pattern.rest_s
    assert ups == pytest.approx(wanted, abs=0.02)
    assert downs == pytest.approx([at + pattern.tempo_s / 2 for at in wanted], abs=0.02)


@pytest.mark.parametrize("pattern", [OPEN, FIXED, replace(OPEN, rest_s=45)])
def test_each_rest_is_as_long_as_the_plan_says_and_ends_with_three_beeps(pattern: Pattern) -> None:
    found = heard(beat(pattern))
    ends = [one for one in found if 0.7 < one.seconds < 1]
    assert [one.at for one in ends] == pytest.approx(list(rests_at(pattern)), abs=0.02)
    assert len(ends) == len(pattern.reps) - 1
    for rest in ends:
        inside = [one for one in found if rest.at < one.at < rest.at + pattern.rest_s - 0.1]
        assert all(soon(one) for one in inside)
        assert [one.at - rest.at for one in inside] == pytest.approx(
            [pattern.rest_s - before for before in (3, 2, 1)], abs=0.02
        )
        assert any(high(one) and abs(one.at - rest.at - pattern.rest_s) < 0.02 for one in found)


def test_it_begins_with_three_beeps_and_ends_with_the_longest_tone() -> None:
    found = heard(beat(FIXED))
    assert [one.at for one in found[:3]] == pytest.approx([1, 2, 3], abs=0.02)
    assert found[-1].seconds == max(one.seconds for one in found)
    assert len(samples(beat(FIXED))) == round(length_s(FIXED) * RATE)


def test_a_session_is_small_enough_to_load_on_the_way() -> None:
    assert len(beat(OPEN)) < 4_000_000


def test_two_sides_are_beaten_one_after_the_other_without_a_rest() -> None:
    pattern = Pattern((10, 5), 4, 30, sides=2)
    found = heard(beat(pattern))
    assert sum(high(one) for one in found) == 30
    assert rests_at(pattern) == (LEAD_IN_S + 80,)
    assert sum(cue.tone is Tone.SIDE for cue in cues(pattern)) == 2


@pytest.mark.parametrize("wrong", [{"reps": ()}, {"reps": (0,)}, {"tempo_s": 0}, {"rest_s": 0}])
def test_a_pattern_without_reps_or_time_is_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(ValueError, match="at least 1"):
        replace(OPEN, **wrong)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("exercise", "reps"),
    [
        (SQUAT, (40, 20, 10)),
        (replace(SQUAT, scheme=Scheme.FIXED, aims=FIXED_AIMS), (30, 15, 15, 15)),
        (Exercise("walk", Region.LEGS, Scheme.WALK, limit_min=10), None),
    ],
)
def test_each_scheme_has_its_own_sets(exercise: Exercise, reps: tuple[int, ...] | None) -> None:
    pattern = pattern_of(exercise)
    assert (pattern.reps if pattern else None) == reps


# --- played ------------------------------------------------------------------------------------------------
@pytest.fixture
def practice() -> Iterator[Practice]:
    made = Practice()
    yield made
    made.stage.close()


def trained_before(practice: Practice, sessions: int) -> None:
    store = practice.stage.engine.store
    with store.transaction():
        for number in range(sessions):
            name = f"old-{number}"
            done = SetDone(
                START, name, 1, "goblet_squat", 1, Side.BOTH, "10 kg", 30, False, START, None, 6, False
            )
            for fact in (
                SessionStarted(START, name, number + 1, ""),
                done,
                SessionEnded(START, name, "done"),
            ):
                facts.put(store, practice.client, fact, START)


def test_a_client_asks_for_a_sound_and_gets_it_with_how_to_use_it(practice: Practice) -> None:
    trained_before(practice, 3)
    practice.types(CLIENT, "plan")
    practice.taps(CLIENT, "Sound to train by")
    sent = practice.newest(CLIENT)
    assert sent.kind == "audio"
    assert sent.document_name == "beat.wav"
    assert "40, 20, 10 reps, 2 s up (high tone), 2 s down (low tone), 30 s rest" in sent.text
    assert "jump ahead to its rest: 2:44, 4:34" in sent.text
    assert sent.text.endswith("No message? Six slow breaths, then go.")
    assert sent.document == beat(OPEN)


def test_in_the_first_sessions_it_has_two_sets_only(practice: Practice) -> None:
    practice.types(CLIENT, "sound")
    sent = practice.newest(CLIENT).document
    assert sent == beat(Pattern((40, 20), 4, 30))


def test_movements_of_one_beat_share_a_file_and_others_have_their_own(practice: Practice) -> None:
    trained_before(practice, 3)
    store = practice.stage.engine.store
    curl = replace(SQUAT, movement="curl", region=Region.ARMS, aims=OPEN_AIMS)
    press = replace(curl, movement="floor_press", scheme=Scheme.FIXED, aims=FIXED_AIMS)
    with store.transaction():
        plan = plan_to_text(Plan("three", (SQUAT, curl, press)))
        facts.put(store, practice.client, PlanGiven(START, plan, 1), START)
    practice.types(CLIENT, "sound")
    sounds = [message for message in practice.messages(CLIENT) if message.kind == "audio"]
    assert [message.document for message in sounds] == [beat(OPEN), beat(FIXED)]
    assert " and " in sounds[0].text.split(":")[0]


def test_without_a_plan_with_reps_there_is_no_sound(practice: Practice) -> None:
    store = practice.stage.engine.store
    with store.transaction():
        walk = Plan("walks", (Exercise("walk", Region.LEGS, Scheme.WALK, limit_min=10, walk_min=10),))
        facts.put(store, practice.client, PlanGiven(START, plan_to_text(walk), 1), START)
    practice.types(CLIENT, "sound")
    assert practice.newest(CLIENT).text.startswith("There is no sound")
