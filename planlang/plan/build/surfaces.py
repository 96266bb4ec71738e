"""The names of a room's surfaces."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import get_close_matches

from planlang.plan import messages
from planlang.plan.build.names import Unknown
from planlang.plan.kinds import Name
from planlang.syntax.diagnostics import Diagnostic

WALLS = ("south wall", "east wall", "north wall", "west wall")


class Surfaces:
    """What surfaces a room has: floor, four walls, and the planes of its ceiling."""

    def __init__(self, planes: list[str], sink: list[Diagnostic]) -> None:
        self.known = ["floor", *WALLS, *planes]
        self.sink = sink

    def one(self, name: Name) -> str:
        """A single surface.

        Raises:
            Unknown: there is none of that name; it has been reported.
        """
        if name.text in self.known:
            return name.text
        near = get_close_matches(name.text, self.known, 1, 0.6)
        self.sink.append(messages.unknown_name(name.span, "surface", name.text, near[0] if near else "", self.known))
        raise Unknown

    def named(self, given: tuple[Name, ...]) -> Iterator[tuple[Name, str, bool]]:
        """Each surface of a list, with whether it came from the group `walls`; unknown ones are reported."""
        for name in given:
            if name.text == "walls":
                for wall in WALLS:
                    yield name, wall, True
                continue
            try:
                yield name, self.one(name), False
            except Unknown:
                continue
