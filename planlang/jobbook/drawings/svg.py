"""SVG made from elements, in millimetres of paper: 180 wide, as high as the drawing needs.

Lines and text take the page's text colour (`currentColor`), so the drawings follow a dark page; what hides a line
behind a text has the class `paper`, white unless the page says otherwise.
"""

import re
from collections.abc import Sequence
from xml.etree import ElementTree as ET

from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.extent import Extent, backing, text_extent
from planlang.jobbook.drawings.ground import Ground
from planlang.jobbook.escape import unhidden
from planlang.syntax.record import record

PAPER_WIDTH = 180.0
TINY, SMALL, NORMAL, LARGE = 2.3, 2.6, 3.0, 3.8  # text sizes, mm
_FACE = "Helvetica, Arial, sans-serif"
_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")

Spot = tuple[float, float]


@record
class Pen:
    """A line: weight in mm, dashes in mm, and how strong the ink is."""

    weight: float
    dash: str = ""
    strength: float = 1.0


@record
class Fill:
    """What an area is filled with."""

    paint: str
    strength: float = 1.0
    css_class: str = ""


THICK, MEDIUM, FINE = Pen(0.7), Pen(0.35), Pen(0.18)
FAINT = Pen(0.18, "", 0.55)
HIDDEN = Pen(0.25, "1.8 0.9")
MEMBER = Pen(0.18, "1.2 1.2", 0.7)
LASER = Pen(0.3, "5 1 0.8 1")
NO_LINE = Pen(0.0)
EMPTY = Fill("none")
INK = Fill("currentColor")
PAPER = Fill("white", 1.0, "paper")
TINT = Fill("currentColor", 0.08)
SHADE = Fill("currentColor", 0.3)


def slug(words: str) -> str:
    """Words as part of an id: lower-case letters, digits and hyphens."""
    return re.sub(r"[^a-z0-9]+", "-", words.lower()).strip("-") or "unnamed"


def number(value: float) -> str:
    """A coordinate to 0.01 mm, without needless zeros."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


class Canvas:
    """A drawing in the making. It remembers the boxes of its texts, so that labels can keep clear of one another."""

    def __init__(self, name: str, title: str) -> None:
        self.name = name
        self.title = title
        self.texts = Ground()
        self.solids = Ground()
        self._defs = ET.Element("defs")
        self._ids: set[str] = set()
        self._body = ET.Element("g")
        self._letters = ET.Element("g", {"fill": "currentColor"})

    def line(self, start: Spot, end: Spot, pen: Pen) -> None:
        """A straight line."""
        ends = dict(zip(("x1", "y1", "x2", "y2"), map(number, (*start, *end)), strict=True))
        ET.SubElement(self._body, "line", {**ends, **_stroke(pen)})

    def polyline(self, points: Sequence[Spot], pen: Pen) -> None:
        """A line through several points."""
        ET.SubElement(self._body, "polyline", {"points": _points(points), "fill": "none", **_stroke(pen)})

    def polygon(self, points: Sequence[Spot], pen: Pen, fill: Fill = EMPTY) -> None:
        """A closed outline."""
        ET.SubElement(self._body, "polygon", {"points": _points(points), **_paint(fill), **_stroke(pen)})

    def rect(self, box: Extent, pen: Pen, fill: Fill = EMPTY) -> None:
        """A rectangle."""
        _rect(self._body, box, pen, fill)

    def circle(self, centre: Spot, radius: float, pen: Pen, fill: Fill = EMPTY) -> None:
        """A circle."""
        self.ellipse(centre, radius, radius, pen, fill)

    def ellipse(self, centre: Spot, across: float, down: float, pen: Pen, fill: Fill = EMPTY) -> None:
        """An ellipse with its half-axes along the paper's edges."""
        shape = {"cx": number(centre[0]), "cy": number(centre[1]), "rx": number(across), "ry": number(down)}
        ET.SubElement(self._body, "ellipse", {**shape, **_paint(fill), **_stroke(pen)})

    def text(
        self,
        at: Spot,
        words: str,
        size: float = SMALL,
        anchor: str = "start",
        turned: bool = False,
        bold: bool = False,
        backed: bool = False,
    ) -> Extent:
        """A text at its baseline point, above all lines; `turned` reads upwards, `backed` hides lines behind it."""
        words = _letters(words)
        box = text_extent(*at, words, size, anchor, turned)
        self.texts.add(box)
        if backed:
            _rect(self._letters, backing(*at, words, size, anchor, turned), NO_LINE, PAPER)
        place = {"x": number(at[0]), "y": number(at[1]), "font-size": number(size)}
        if anchor != "start":
            place["text-anchor"] = anchor
        if bold:
            place["font-weight"] = "bold"
        if turned:
            place["transform"] = f"rotate(-90 {place['x']} {place['y']})"
        ET.SubElement(self._letters, "text", place).text = words
        return box

    def text_if_free(self, at: Spot, words: str, anchor: str = "start", turned: bool = False) -> bool:
        """A small text, backed, if it would cover no other text, panel or feature; False where it would."""
        if not self.is_free(text_extent(*at, words, SMALL, anchor, turned).grown(0.2), of_solids=True):
            return False
        self.text(at, words, SMALL, anchor, turned, backed=True)
        return True

    def reserve(self, box: Extent) -> None:
        """Keep texts away from a box."""
        self.texts.add(box)

    def is_free(self, box: Extent, of_solids: bool = False) -> bool:
        """True when no text lies in the box; with `of_solids` no panel or feature either."""
        return not self.texts.holds(box) and not (of_solids and self.solids.holds(box))

    def hatch(self, gap: float, angle: int, weight: float = 0.18) -> Fill:
        """A fill of parallel lines, `gap` mm apart at `angle` degrees."""
        name = f"{self.name}-hatch-{number(gap).replace('.', '-')}-{angle}-{number(weight).replace('.', '-')}"
        if name not in self._ids:
            self._ids.add(name)
            size = {"width": number(gap), "height": number(gap), "patternTransform": f"rotate({angle})"}
            pattern = ET.SubElement(self._defs, "pattern", {"id": name, "patternUnits": "userSpaceOnUse", **size})
            ends = {"x1": "0", "y1": "0", "x2": "0", "y2": number(gap)}
            ET.SubElement(pattern, "line", {**ends, **_stroke(Pen(2 * weight))})  # half of it lies outside the tile
        return Fill(f"url(#{name})")

    def drawing(self, height: float, description: str) -> Drawing:
        """The finished drawing, `height` mm high."""
        ids = f"{self.name}-title", f"{self.name}-desc"
        root = ET.Element(
            "svg",
            {
                "xmlns": "http://www.w3.org/2000/svg", "viewBox": f"0 0 {number(PAPER_WIDTH)} {number(height)}",
                "width": "100%", "role": "img", "aria-labelledby": " ".join(ids), "class": "drawing",
                "font-family": _FACE, "stroke-linejoin": "round",
            },
        )  # fmt: skip
        ET.SubElement(root, "title", {"id": ids[0]}).text = _letters(self.title)
        ET.SubElement(root, "desc", {"id": ids[1]}).text = _letters(description)
        if len(self._defs):
            root.append(self._defs)
        root.extend((self._body, self._letters))
        ET.indent(root, space="")
        return Drawing(self.name, self.title, description, ET.tostring(root, encoding="unicode"))


def _letters(words: str) -> str:
    """What a text may hold: nothing hidden, and nothing that XML has no place for."""
    return _NOT_XML.sub("", unhidden(words))


def _rect(parent: ET.Element, box: Extent, pen: Pen, fill: Fill) -> None:
    shape = {
        "x": number(box.left), "y": number(box.top), "width": number(box.width), "height": number(box.height),
    }  # fmt: skip
    ET.SubElement(parent, "rect", {**shape, **_paint(fill), **_stroke(pen)})


def _points(points: Sequence[Spot]) -> str:
    return " ".join(f"{number(x)},{number(y)}" for x, y in points)


def _paint(fill: Fill) -> dict[str, str]:
    paint = {"fill": fill.paint}
    if fill.strength != 1:
        paint["fill-opacity"] = number(fill.strength)
    if fill.css_class:
        paint["class"] = fill.css_class
    return paint


def _stroke(pen: Pen) -> dict[str, str]:
    if not pen.weight:
        return {}
    stroke = {"stroke": "currentColor", "stroke-width": number(pen.weight)}
    if pen.dash:
        stroke["stroke-dasharray"] = pen.dash
    if pen.strength != 1:
        stroke["stroke-opacity"] = number(pen.strength)
    return stroke
