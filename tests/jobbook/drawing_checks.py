"""Reads an SVG drawing back and finds what is wrong with it, with its own estimate of where texts lie."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import combinations
from xml.etree import ElementTree as ET

SPACE = "{http://www.w3.org/2000/svg}"
ALLOWED = {
    "svg", "title", "desc", "defs", "pattern", "g", "line", "polyline", "polygon", "rect", "ellipse", "text",
}  # fmt: skip
LEAST_TEXT = 2.2


@dataclass(frozen=True)
class Word:
    words: str
    x: float
    y: float
    size: float
    left: float
    top: float
    right: float
    bottom: float

    def covers(self, other: Word) -> bool:
        across = min(self.right, other.right) - max(self.left, other.left)
        down = min(self.bottom, other.bottom) - max(self.top, other.top)
        return across > 0.01 and down > 0.01


def parse(svg: str) -> ET.Element:
    return ET.fromstring(svg)


def words_of(svg: str) -> list[Word]:
    return [_word(element) for element in parse(svg).iter(f"{SPACE}text")]


def texts(svg: str) -> list[str]:
    return [word.words for word in words_of(svg)]


def _word(element: ET.Element) -> Word:
    words = element.text or ""
    x, y, size = (float(element.get(key, "nan")) for key in ("x", "y", "font-size"))
    long = 0.6 * size * len(words)
    before = {"start": 0.0, "middle": long / 2, "end": long}[element.get("text-anchor", "start")]
    up, down = 0.75 * size, 0.2 * size
    turn = element.get("transform")
    if turn is None:
        return Word(words, x, y, size, x - before, y - up, x - before + long, y + down)
    assert turn == f"rotate(-90 {element.get('x')} {element.get('y')})"
    return Word(words, x, y, size, x - up, y - long + before, x + down, y + before)


def faults(svg: str) -> list[str]:
    root = parse(svg)
    found = [f"element {element.tag}" for element in root.iter() if element.tag.removeprefix(SPACE) not in ALLOWED]
    for element in root.iter():
        found += [f"attribute {key}" for key in element.attrib if key.startswith("on") or key in ("style", "href")]
        found += [f"outside: {value}" for value in element.attrib.values() if re.search(r"//(?!www\.w3\.org)", value)]
        found += [f"not a number: {value}" for value in element.attrib.values() if re.search(r"\b(nan|inf)\b", value)]
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    found += [f"id twice: {name}" for name in ids if ids.count(name) > 1]
    used = set(re.findall(r"url\(#([^)]+)\)", svg)) | set((root.get("aria-labelledby") or "").split())
    found += [f"no such id: {name}" for name in sorted(used - set(ids))]
    if root.get("role") != "img" or root.get("width") != "100%":
        found.append("role or width")
    return found + text_faults(svg)


def text_faults(svg: str) -> list[str]:
    _, _, width, height = map(float, (parse(svg).get("viewBox") or "").split())
    words = words_of(svg)
    found = [f"small: {word.words}" for word in words if word.size < LEAST_TEXT]
    for word in words:
        if word.left < -0.01 or word.top < -0.01 or word.right > width + 0.01 or word.bottom > height + 0.01:
            found.append(f"outside the paper: {word.words}")
    found += [f"'{one.words}' covers '{other.words}'" for one, other in combinations(words, 2) if one.covers(other)]
    return found
