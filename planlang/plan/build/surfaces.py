"""The names of a room's surfaces."""

from __future__ import annotations

from collections.abc import Iterator

from planlang.plan import messages
from planlang.plan.build.names import Unknown
from planlang.plan.kinds import WALLS, Name
from planlang.plan.values import nearest_name
from planlang.syntax.diagnostics import Diagnostic


class Surfaces:
    """What surfaces a room has: floor, four walls, and the planes of its ceiling.

    Not `sure`: the name of a plane could not be read, so that a surface which isn't known may be that plane.
    """

    def __init__(self, planes: list[str], sink: list[Diagnostic], sure: bool = True) -> None:
        self.known = ["floor", *WALLS, *planes]
        self.sink = sink
        self.sure = sure

    def one(self, name: Name) -> str:
        """A single surface.

        Raises:
            Unknown: there is none of that name; it has been reported.
        """
        if name.text in self.known:
            return name.text
        if not self.sure:
            raise Unknown
        near = nearest_name(name.text, self.known)
        self.sink.append(messages.unknown_name(name.span, "surface", name.text, near, self.known))
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
