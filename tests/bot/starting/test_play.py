"""`cuffline play`: three invented people who answer as people do, and a coach who reads it all."""

import asyncio
from collections.abc import Iterator
from dataclasses import replace

import pytest

from bot.play import COACH, START, ZONE, perform
from bot.play.people import Client
from bot.play.stage import Stage
from conversations.words import common, engine
from conversations.words import session as words
from conversations.words.advice import QUESTIONS
from conversations.words.asking import ABOUT
from conversations.words.morning import STOPPED

DAYS = 3


@pytest.fixture(scope="module")
def stage() -> Iterator[Stage]:
    stage = Stage(START, (COACH,), ZONE, lambda *_: None)
    asyncio.run(perform(stage, DAYS, 9))
    yield stage
    stage.close()


def heard(stage: Stage) -> list[str]:
    return [one.text for phone in stage.phones.values() for one in phone.history if not one.mine]


def test_nobody_taps_what_they_have_tapped_already(stage: Stage) -> None:
    assert not {words.STALE, engine.FINISHED, common.ALREADY_NOTED} & set(heard(stage))


def test_no_question_is_left_so_long_that_it_is_put_again(stage: Stage) -> None:
    assert common.STILL_THERE not in heard(stage)


def test_the_week_is_told_once(stage: Stage) -> None:
    assert len([text for text in heard(stage) if text.startswith("Your week.")]) == 1


def test_everybody_gives_their_own_answers(stage: Stage) -> None:
    said = {phone.name: {one.text for one in phone.history if one.mine} for phone in stage.phones.values()}
    assert "911" in said["Milo"]
    assert "61 kg" in said["Aino"]


@pytest.mark.parametrize("question", [*QUESTIONS.values(), STOPPED.format(said="stop")])
def test_whatever_may_be_asked_after_a_session_has_an_answer(question: str, stage: Stage) -> None:
    client = stage.minds[2001]
    assert isinstance(client, Client)
    asked = replace(stage.phones[2001].history[-1], text=_as_put(question))
    assert client.answer(asked, START) is not None


def _as_put(question: str) -> str:
    return (
        question
        if question.startswith("You stopped")
        else ABOUT.format(name="squat", both="", question=question)
    )


def test_fixed_sets_end_at_their_number(stage: Stage) -> None:
    client = stage.minds[2002]
    assert isinstance(client, Client)
    assert client.ends_at("Go · set 2 · 15") == 15
    assert client.ends_at("Go · set 2 · 10-20") is None
