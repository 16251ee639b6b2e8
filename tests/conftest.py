"""Properties draw the same examples on every run, so that green stays green; sweeps draw new ones.

`HYPOTHESIS_PROFILE=sweep bash deploy/test.sh` draws afresh and more; what it finds becomes a test of its own.
"""

import os

from hypothesis import settings

settings.register_profile("same", max_examples=60, derandomize=True, deadline=None)
settings.register_profile("sweep", max_examples=1000, deadline=None)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "same"))
