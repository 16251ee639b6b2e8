"""Properties draw the same examples on every run, so that green stays green; sweeps draw new ones.

`HYPOTHESIS_PROFILE=sweep bash deploy/test.sh` draws afresh and more; what it finds becomes a test of its own.
"""

import gc
import os
from collections.abc import Generator

import pytest
from hypothesis import HealthCheck, settings

from tests import played, schema

# How long an example takes is no finding: the machine may have other things to do.
UNTIMED = {"deadline": None, "suppress_health_check": [HealthCheck.too_slow]}
settings.register_profile("same", max_examples=60, derandomize=True, **UNTIMED)
settings.register_profile("sweep", max_examples=1000, **UNTIMED)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "same"))

schema.copied()


def pytest_runtest_setup(item: pytest.Item) -> None:
    """What a test puts in the code's place must meet the opening, too."""
    played.patched = "monkeypatch" in getattr(item, "fixturenames", ())


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Generator[None, object, object]:
    """Nothing that is collected becomes garbage: to look through it again and again took a quarter of the time."""
    gc.disable()
    try:
        return (yield)
    finally:
        gc.freeze()
        gc.enable()
