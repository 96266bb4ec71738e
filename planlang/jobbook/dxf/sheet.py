"""A DXF drawing in millimetres: the few shapes that the job book needs, on layers with the plan's words."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from importlib.util import find_spec
from typing import Any

from planlang.jobbook.escape import visible

CAUTION = "Aid to planning, no structural design. The job book goes with it; its safety part first."
NOTES, ALARM = "NOTES", "NOT-FOR-HANGING"
_GREY, _RED = 8, 1
_MILLIMETRES, _METRIC = 4, 1


class NoLibrary(Exception):
    """The library that writes DXF isn't installed; says what would help."""


def require_library() -> None:
    """Make sure, before any work, that DXF can be written.

    Raises:
        NoLibrary: ezdxf is not installed.
    """
    if not _installed("ezdxf"):
        raise NoLibrary("DXF needs the library ezdxf, which is not installed: pip install 'planlang[cnc]'")


def _installed(library: str) -> bool:
    try:
        return find_spec(library) is not None
    except ValueError:
        return False


class Sheet:
    """A drawing to be filled. Its bytes depend on what is drawn alone: no date, no name of a machine."""

    def __init__(self) -> None:
        with _steady() as library:
            self._document: Any = library.new("R2010")
        self._document.header["$INSUNITS"] = _MILLIMETRES
        self._document.header["$MEASUREMENT"] = _METRIC
        self._space: Any = self._document.modelspace()
        self.layer(NOTES, _GREY)

    def layer(self, name: str, colour: int = 7) -> str:
        """A layer of that name, made when it isn't there; returns the name as the file has it."""
        safe = re.sub(r"[^\w\-]+", "-", visible(name)).strip("-")[:100] or "UNNAMED"
        if safe not in self._document.layers:
            self._document.layers.add(safe, color=colour)
        return safe

    def outline(self, points: Sequence[tuple[float, float]], layer: str) -> None:
        """A closed outline, mm."""
        self._space.add_lwpolyline(points, close=True, dxfattribs={"layer": layer})

    def circle(self, centre: tuple[float, float], radius: float, layer: str) -> None:
        """A circle, mm."""
        self._space.add_circle(centre, radius, dxfattribs={"layer": layer})

    def text(self, at: tuple[float, float], words: str, height: float, layer: str = NOTES) -> None:
        """A line of text from its lower left corner; what would be a code of the format is broken up."""
        self._write(at, words, height, layer)

    def text_in(self, box: Sequence[tuple[float, float]], words: str, height: float, layer: str = NOTES) -> None:
        """A line of text in the middle of what has these corners; to its right where that is too narrow for it."""
        low, high = ([pick(at[axis] for at in box) for axis in (0, 1)] for pick in (min, max))
        middle = (low[1] + high[1]) / 2
        if high[0] - low[0] > len(words) * height:
            self._write(((low[0] + high[0]) / 2, middle), words, height, layer, "MIDDLE_CENTER")
        else:
            self._write((high[0] + height / 2, middle), words, height, layer, "MIDDLE_LEFT")

    def _write(self, at: tuple[float, float], words: str, height: float, layer: str, align: str = "LEFT") -> None:
        plain = visible(words).replace("%%", "% %").replace("\\", "/").replace("^", " ")[:250]
        text = self._space.add_text(plain, height=height, dxfattribs={"layer": layer, "insert": at})
        if align != "LEFT":
            from ezdxf.enums import TextEntityAlignment  # noqa: PLC0415 - an extra, and only this loads it

            text.set_placement(at, align=TextEntityAlignment[align])

    def notes(self, at: tuple[float, float], lines: Sequence[str], height: float, hangable: bool) -> None:
        """What the drawing is, downwards from `at`, and the caution; in large letters when nothing may be hung."""
        x, y = at
        if not hangable:
            self.text((x, y + 2 * height), "NOT FOR HANGING", 4 * height, self.layer(ALARM, _RED))
        for n, line in enumerate((*lines, CAUTION)):
            self.text((x, y - (n + 1) * 1.7 * height), line, height)

    def content(self) -> bytes:
        """The file."""
        text = io.StringIO()
        with _steady():
            self._document.write(text)
        return text.getvalue().encode("utf-8", "backslashreplace")


@contextmanager
def _steady() -> Iterator[Any]:
    """The library, which meanwhile writes no date, version or number of its own making into a file."""
    import ezdxf  # noqa: PLC0415 - an extra, and only this loads it

    options: Any = vars(ezdxf)["options"]
    kept = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield ezdxf
    finally:
        options.write_fixed_meta_data_for_testing = kept
