"""What the program itself suggests as an answer, copied word for word, is never taken for a sign of harm."""

import importlib
import pkgutil
import re
from collections.abc import Iterator
from typing import Any

import conversations.words
from conversations.heard import red_flag

EXAMPLES = re.compile(r"[Ll]ike:? ([^.;]*)")


def strings(value: Any) -> Iterator[str]:
    """All words in a value."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        yield from (found for one in value.values() for found in strings(one))
    elif isinstance(value, tuple | list | frozenset):
        yield from (found for one in value for found in strings(one))


def examples() -> set[str]:
    """Each example, and each of its parts."""
    names = [module.name for module in pkgutil.iter_modules(conversations.words.__path__)]
    modules = [importlib.import_module(f"conversations.words.{name}") for name in names]
    texts = (text for module in modules for value in list(vars(module).values()) for text in strings(value))
    found = {example for text in texts for example in EXAMPLES.findall(text)}
    parts = {part.strip(" '?\"") for example in found for part in re.split(r",| or ", example)}
    return {part for part in parts | found if part}


def test_no_example_of_ours_is_heard_as_a_sign_of_harm() -> None:
    found = examples()
    assert len(found) > 30
    assert [example for example in sorted(found) if red_flag(example.removeprefix("the ")) is not None] == []
