"""How far a build is, on a terminal, once it takes over a second; nothing anywhere else."""

from __future__ import annotations

import os
from collections.abc import Sequence
from types import TracebackType
from typing import TYPE_CHECKING, TextIO

if TYPE_CHECKING:
    import threading

FIRST, AGAIN = 1.0, 0.25  # seconds until it shows, and between looks
_BAR = 24  # characters


class Progress:
    """Called with each stage as it begins. Shows while it is entered as a context, and then leaves the line empty.

    A thread of its own draws, so that the line appears in the middle of a stage that takes long.
    """

    def __init__(self, stages: Sequence[str], stream: TextIO) -> None:
        self._stages = tuple(stages)
        self._stream = stream
        self._now = 0
        self._wait = FIRST
        self._done: threading.Event | None = None
        self._thread: threading.Thread | None = None

    def __call__(self, stage: str) -> None:
        """A stage begins."""
        self._now = self._stages.index(stage)

    def __enter__(self) -> Progress:
        if not is_terminal(self._stream):
            return self
        import threading

        self._done = threading.Event()
        self._thread = threading.Thread(target=self._draw, daemon=True)
        self._thread.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._done is None or self._thread is None:
            return
        self._done.set()
        self._thread.join()
        self._done = self._thread = None

    def _draw(self) -> None:
        assert self._done is not None
        shown = 0
        while not self._done.wait(self._wait):
            words = line(self._stages, self._now, columns(self._stream))
            self._stream.write("\r" + words.ljust(shown))
            self._stream.flush()
            self._wait, shown = AGAIN, len(words)
        if shown:
            self._stream.write("\r" + " " * shown + "\r")
            self._stream.flush()


def line(stages: Sequence[str], now: int, width: int) -> str:
    """The bar, filled by the stages that are done, and the stage that is under way; cut to the terminal's width."""
    filled = round(_BAR * now / len(stages))
    return f"[{'#' * filled}{'.' * (_BAR - filled)}] {now + 1} of {len(stages)}: {stages[now]}"[: max(width - 1, 0)]


def is_terminal(stream: TextIO) -> bool:
    """True for a terminal on which a line can be written over."""
    return stream.isatty() and os.environ.get("TERM") != "dumb"


def columns(stream: TextIO) -> int:
    """The width of the terminal."""
    try:
        return os.get_terminal_size(stream.fileno()).columns or 80
    except OSError:
        return 80
