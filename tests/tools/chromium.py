"""Headless Chromium for the tests and the picture: the one that the machine has, never one that is downloaded."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Browser

COMMANDS = ("chromium", "chromium-browser")
FLAGS = ("--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--font-render-hinting=none")


class NoBrowser(Exception):
    """Chromium or what drives it is not installed; says which."""


def chromium_path() -> str:
    """Where Chromium is."""
    found = next(filter(None, map(shutil.which, COMMANDS)), None)
    if found is None:
        raise NoBrowser(f"no Chromium: none of {', '.join(COMMANDS)} is on the path")
    return found


@contextmanager
def chromium() -> Iterator[Browser]:
    """A running browser.

    Raises:
        NoBrowser: Chromium or playwright is not installed.
    """
    path = chromium_path()
    try:
        from playwright.sync_api import sync_playwright
    except ImportError as fault:
        raise NoBrowser("the Python package playwright is not installed (it is in the `test` extra)") from fault
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=path, args=list(FLAGS))
        try:
            yield browser
        finally:
            browser.close()
