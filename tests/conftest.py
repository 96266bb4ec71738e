"""What all tests share: how hypothesis draws, and what goes to one worker where several share the tests."""

import os

import pytest
from hypothesis import settings

# A busy machine is no failure, so no example has a deadline. CI draws the same examples each time, so that a red run
# tells of a change; new ones are drawn wherever else the tests run, and by `python -m tests.fuzz`.
settings.register_profile("project", deadline=None, derandomize=bool(os.environ.get("CI")))
settings.load_profile("project")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """All that look at a page go to one worker, so that one browser opens each book once (`--dist loadgroup`)."""
    for item in items:
        if item.get_closest_marker("browser"):
            item.add_marker(pytest.mark.xdist_group("browser"))
