"""The names of a room's surfaces."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planlang.plan import messages
from planlang.plan.build.names import Unknown
from planlang.plan.kinds import Name
from planlang.plan.values import nearest_name
from planlang.syntax.diagnostics import Diagnostic


class Surfaces:
    """What surfaces a room has: floor, walls, the planes of its ceiling, and the faces of what stands in it.

    Not `sure`: a name could not be read, so that a surface which isn't known may be that one.
    """

    def __init__(
        self, walls: Sequence[str], planes: Sequence[str], faces: Sequence[str], sink: list[Diagnostic], sure: bool
    ) -> None:
        self.walls = tuple(walls)
        self.known = ["floor", *walls, *planes, *faces]
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

    def wall(self, name: Name) -> str:
        """A single wall.

        Raises:
            Unknown: there is none of that name; it has been reported.
        """
        if name.text in self.walls or not self.sure:
            return name.text
        near = nearest_name(name.text, self.walls)
        self.sink.append(messages.unknown_name(name.span, "wall", name.text, near, self.walls))
        raise Unknown

    def named(self, given: tuple[Name, ...]) -> Iterator[tuple[Name, str, bool]]:
        """Each surface of a list, with whether it came from the group `walls`; unknown ones are reported."""
        for name in given:
            if name.text == "walls":
                for wall in self.walls:
                    yield name, wall, True
                continue
            try:
                yield name, self.one(name), False
            except Unknown:
                continue
