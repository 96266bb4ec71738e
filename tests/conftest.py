"""What all tests share: how hypothesis draws."""

import os

from hypothesis import settings

# A busy machine is no failure, so no example has a deadline. CI draws the same examples each time, so that a red run
# tells of a change; new ones are drawn wherever else the tests run, and by `python -m tests.fuzz`.
settings.register_profile("project", deadline=None, derandomize=bool(os.environ.get("CI")))
settings.load_profile("project")
