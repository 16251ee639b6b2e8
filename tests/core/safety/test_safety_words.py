"""What is said when something may be wrong: bands off first, whom to call, no names of illnesses."""

import pytest

from conversations.stopwords import Kind, cause_of
from conversations.words import morning
from conversations.words import safety as words
from core.safety.aftercare import WHEN_YES, Sign
from core.safety.causes import NOW, Cause, Tier, tier_of

ALL_WORDS = [*words.TOLD.values(), *words.TOLD_SINCE.values()]
# The bands may be on when this happens: the client's words begin with taking them off.
WITH_BANDS = frozenset(
    {
        Cause.EMERGENCY,
        Cause.FAINT,
        Cause.STUCK,
        Cause.NERVE,
        Cause.CIRCULATION,
        Cause.INJURY,
        Cause.SWELLING,
        Cause.URINE,
        Cause.SOMETHING_WRONG,
        Cause.NO_WORD,
        Cause.STOPPED,
        Cause.TOO_TIGHT,
        Cause.HURTS,
        Cause.BANDS_HURT,
        Cause.CHECKS_FAILED,
        Cause.UNSEEN_REFILL,
        Cause.BANDS_ON,
        Cause.QUIET_SET,
        Cause.MAYBE_ON,
        Cause.AWAY,
        Cause.BROKEN,
    }
)


def test_every_stored_name_has_words() -> None:
    assert set(words.TOLD) | words.COACH_ONLY == set(Cause)
    assert not set(words.TOLD) & words.COACH_ONLY
    assert set(words.COACH_READS) == set(Cause)
    assert set(morning.WHATS) == set(WHEN_YES) - {Sign.SORE_BEYOND}


@pytest.mark.parametrize("cause", sorted(WITH_BANDS))
def test_where_bands_may_be_on_the_first_words_take_them_off(cause: Cause) -> None:
    assert words.TOLD[cause].startswith("Bands off")


@pytest.mark.parametrize(
    "cause", [Cause.EMERGENCY, Cause.SIGNS_AFTER, Cause.PRESSURE_EMERGENCY, Cause.CLOT_SIGNS]
)
def test_emergencies_name_the_local_emergency_number(cause: Cause) -> None:
    assert "112 (your local emergency number)" in words.told(cause, words.emergency("112"))
    assert "your local emergency number" in words.told(cause, words.emergency(None))


@pytest.mark.parametrize(
    "cause", sorted(NOW - {Cause.CHECKS_FAILED, Cause.BANDS_ON, Cause.AWAY, Cause.BROKEN, Cause.NERVE})
)
def test_every_sign_of_danger_says_whom_to_ask_besides_the_coach(cause: Cause) -> None:
    assert "doctor" in words.TOLD[cause] or "{number}" in words.TOLD[cause] or "looked" in words.TOLD[cause]


@pytest.mark.parametrize("text", ALL_WORDS)
def test_only_known_gaps_and_no_words_that_are_not_used_here(text: str) -> None:
    assert text.format(number="112")
    avoided = ("dialled", "readiness", "strain", "useless", "thrombosis", "rhabdo", "normal", "don't worry")
    assert not [word for word in avoided if word in text.lower()]


def test_every_reading_but_a_question_has_a_cause() -> None:
    asked = {Kind.NONE, Kind.UNSURE}
    assert {kind for kind in Kind if cause_of(kind) is None} == asked
    red = [
        cause
        for kind in Kind
        if kind not in (Kind.STOP, Kind.HURTS, Kind.TIGHT, Kind.SORE, Kind.FEVER, Kind.HURT_LATELY)
        and (cause := cause_of(kind))
    ]
    assert {tier_of(cause) for cause in red} == {Tier.NOW}
