"""What keeps a search the same on every machine: work that is counted, and numbers that are fixed."""

from typing import NamedTuple


class Budget(NamedTuple):
    """How much a search may work: `effort` times the least, and so much less as `share` others share the time."""

    effort: int = 1
    share: int = 1


LEAST = Budget()


class Work:
    """Counts the work done, so that a search ends at the same point on every machine."""

    def __init__(self, limit: int) -> None:
        self._done = 0
        self.limit = limit
        self._whole: Work | None = None

    @property
    def done(self) -> int:
        """The work done so far."""
        return self._done

    @done.setter
    def done(self, done: int) -> None:
        if self._whole is not None:
            self._whole.done += done - self._done
        self._done = done

    @property
    def left(self) -> bool:
        """True while the limit is not reached."""
        return self._done < self.limit and (self._whole is None or self._whole.left)

    def part(self, limit: int) -> "Work":
        """A share of this work, which ends with it and counts in it."""
        part = Work(limit)
        part._whole = self
        return part


class Draw:
    """A fixed sequence of numbers that look drawn by lot, the same on every machine (a linear congruence)."""

    def __init__(self) -> None:
        self._state = 20_220_725

    def below(self, limit: int) -> int:
        """The next number from 0 up to, not including, `limit`."""
        self._state = (self._state * 6_364_136_223_846_793_005 + 1_442_695_040_888_963_407) % 2**64
        return (self._state >> 33) % limit
