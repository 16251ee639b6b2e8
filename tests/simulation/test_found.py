"""What the simulation once found, as small stories of their own."""

from collections.abc import Iterator

import pytest

from bot.local.messages import ChatMessage
from core.store.times import moment
from tests.simulation import scene
from tests.simulation.people import Client
from tests.simulation.world import World


@pytest.fixture
def world() -> Iterator[World]:
    made = scene.practice(1, clients=1, calm=True)
    yield made
    made.close()


def asked(client: Client, words: str) -> ChatMessage:
    return next(message for message in reversed(client.heard) if words in message.text)


def mute(client: Client) -> None:
    """From now on this client does only what the test says."""
    client.hears = client.heard.append  # type: ignore[method-assign]


def until(world: World, client: Client, words: str) -> ChatMessage:
    """The client answers sensibly until the bot says these words."""
    hears = client.hears

    def stops(message: ChatMessage) -> None:
        if words in message.text:
            mute(client)
            client.heard.append(message)
        else:
            hears(message)

    client.hears = stops  # type: ignore[method-assign]
    while client.hears == stops:
        world.run(minutes=1)
    return asked(client, words)


def test_a_reminders_start_after_a_typed_start_goes_on_with_the_one_session(world: World) -> None:
    client = world.clients[0]
    reminder = until(world, client, "Time for")
    client.types("start")
    world.run(seconds=1)
    client.taps(reminder, "Start")
    world.run(seconds=1)
    live = world.store.rows("SELECT * FROM thread WHERE dialogue = 'before' AND state IS NOT NULL")
    assert len(live) == 1
    assert "Anything new since" in client.heard[-1].text


def test_bands_count_from_the_question_that_was_tapped_not_from_its_copy(world: World) -> None:
    client = world.clients[0]
    client.types("start")
    question = until(world, client, "Bands on:")
    world.kill(back=False)
    client.types("what do you mean?")  # which makes the bot ask again, once it is back
    tapped = world.clock.now()
    client.taps(question, "Bands are on")
    world.after(300, world.start)
    world.run(seconds=301)
    on = world.store.rows("SELECT at FROM bands_on")
    assert [moment(row["at"]) for row in on] == [question.at]
    assert question.at <= tapped
