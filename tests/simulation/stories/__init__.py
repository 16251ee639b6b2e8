"""Played scripts of all that people do with the bot, as ground for killing the process at any moment.

`STORIES` names them. Each begins a world with everything planned in it; whatever befalls the process, it must end
in the same rows (`ending.outcome`). To see one: `python -m tests.bench.crashes --aloud NAME`.
"""

from tests.simulation.stories.told import Story
from tests.simulation.stories.training import TRAINING
from tests.simulation.stories.with_clients import WITH_CLIENTS
from tests.simulation.stories.with_coaches import WITH_COACHES

STORIES: dict[str, Story] = {story.name: story for story in (*WITH_COACHES, *TRAINING, *WITH_CLIENTS)}
