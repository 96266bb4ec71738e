"""Where things lie on the paper: boxes in paper millimetres (y runs down), and how wide a text is."""

from collections.abc import Iterable
from functools import lru_cache

from planlang.syntax.record import record

ASCENT = 0.76
DESCENT = 0.22
_NARROW = frozenset(" .,:;'|!ijltf()[]/-")


@record
class Extent:
    """A box on the paper."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """Size across the paper, mm."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Size down the paper, mm."""
        return self.bottom - self.top

    @property
    def centre(self) -> tuple[float, float]:
        """The middle of the box."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    def overlaps(self, other: "Extent") -> bool:
        """True when the boxes share an area."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def inside(self, other: "Extent") -> bool:
        """True when this box lies wholly in the other one."""
        return (
            self.left >= other.left
            and self.right <= other.right
            and self.top >= other.top
            and self.bottom <= other.bottom
        )

    def grown(self, by: float) -> "Extent":
        """The box with `by` mm more on every side."""
        return Extent(self.left - by, self.top - by, self.right + by, self.bottom + by)


def around(points: Iterable[tuple[float, float]]) -> Extent:
    """The box that bounds some points."""
    points = tuple(points)
    across = [x for x, _ in points]
    down = [y for _, y in points]
    return Extent(min(across), min(down), max(across), max(down))


def text_width(words: str, size: float) -> float:
    """Estimate of a text's width in a sans-serif face: 0.6 em a character, more where capitals prevail."""
    return size * _ems(words)


@lru_cache(maxsize=4096)
def _ems(words: str) -> float:
    by_class = sum(0.32 if c in _NARROW else 0.74 if c.isupper() else 0.58 for c in words)
    return max(by_class, 0.6 * len(words))


def text_extent(x: float, y: float, words: str, size: float, anchor: str, turned: bool) -> Extent:
    """The box of a text at its baseline point; `turned` text reads upwards."""
    width = text_width(words, size)
    before = {"start": 0.0, "middle": width / 2, "end": width}[anchor]
    if turned:
        return Extent(x - ASCENT * size, y - width + before, x + DESCENT * size, y + before)
    return Extent(x - before, y - ASCENT * size, x - before + width, y + DESCENT * size)


def backing(x: float, y: float, words: str, size: float, anchor: str, turned: bool) -> Extent:
    """The area to clear behind a text: closer to the letters than the box that keeps other texts away."""
    box = text_extent(x, y, words, size, anchor, turned)
    slack = 0.09 * max(box.width, box.height)
    across, down = (0.0, slack) if turned else (slack, 0.0)
    if anchor == "middle":
        return Extent(box.left + across, box.top + down, box.right - across, box.bottom - down)
    if turned:
        low, high = (slack, 0.0) if anchor == "start" else (0.0, slack)
        return Extent(box.left, box.top + low, box.right, box.bottom - high)
    left, right = (0.0, slack) if anchor == "start" else (slack, 0.0)
    return Extent(box.left + left, box.top, box.right - right, box.bottom)


def wrapped(words: str, size: float, width: float) -> tuple[str, ...]:
    """Break a text into lines no wider than `width`; a single word too long for a line is broken inside."""
    lines = [""]
    for word in words.split(" "):  # no-break spaces hold
        for piece in _pieces(word, size, width):
            longer = f"{lines[-1]} {piece}".strip()
            if text_width(longer, size) <= width:
                lines[-1] = longer
            else:
                lines.append(piece)
    return tuple(line for line in lines if line)


def shortened(words: str, size: float, width: float) -> str:
    """The words, or as many of their characters as fit a width, with an ellipsis."""
    if text_width(words, size) <= width:
        return words
    fitting = (count for count in range(len(words), 0, -1) if text_width(f"{words[:count]}…", size) <= width)
    return f"{words[: next(fitting, 0)].rstrip()}…"


def _pieces(word: str, size: float, width: float) -> Iterable[str]:
    most = max(int(width / (0.74 * size)), 1)
    if text_width(word, size) <= width:
        return (word,)
    return tuple(word[start : start + most] for start in range(0, len(word), most))
