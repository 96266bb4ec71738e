"""Looks at a page in the browser: each function returns what is wrong, in words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page

TOO_WIDE = """() => {
  const wide = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth <= wide && document.body.scrollWidth <= wide) return [];
  const scrolls = e => ['auto', 'scroll', 'hidden'].includes(getComputedStyle(e).overflowX);
  const held = e => e !== document.body && (scrolls(e) || held(e.parentElement));
  const right = e => Math.round(e.getBoundingClientRect().right);
  const words = e => e.textContent.trim().replace(/\\s+/g, ' ').slice(0, 40);
  return [...document.body.querySelectorAll('*')]
    .filter(e => right(e) > wide && !held(e.parentElement))
    .map(e => `${e.tagName} #${e.id} to ${right(e)} of ${wide} px: ${words(e)}`)
    .slice(0, 10).concat([`page is ${document.documentElement.scrollWidth} px wide, not ${wide}`]);
}"""

# What a box cuts off at its right. On a screen a box may scroll, on paper nothing does.
CUT_OFF = """ways => {
  const words = e => e.textContent.trim().replace(/\\s+/g, ' ').slice(0, 40);
  return [...document.body.querySelectorAll('*')]
    .filter(e => ways.includes(getComputedStyle(e).overflowX) && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 1)
    .map(e => `${e.tagName} #${e.id} shows ${e.clientWidth} of ${e.scrollWidth} px: ${words(e)}`);
}"""

# What doesn't depend on the width: links that lead nowhere, ids given twice, the headings, and all that could act, but
# for the one script at the end of the page that keeps the ticks.
PAGE = """() => {
  const all = [...document.querySelectorAll('*')], ids = all.map(e => e.id).filter(Boolean), seen = new Set();
  const links = [...document.querySelectorAll('a')].map(a => a.getAttribute('href'));
  const active = [
    ...document.querySelectorAll('script:not(body > script:last-child), iframe, object, embed, link, base, img, form')
  ];
  return {
    links: links.length,
    dead: links.filter(to => !to || !to.startsWith('#') || !document.getElementById(decodeURIComponent(to.slice(1)))),
    twice: ids.filter(id => seen.size === seen.add(id).size),
    headings: [...document.querySelectorAll('h1,h2,h3,h4,h5,h6')].map(h => [Number(h.tagName[1]), h.textContent]),
    active: active.map(e => e.tagName).concat(all.flatMap(e => [...e.attributes])
      .filter(a => a.name.startsWith('on') || /^\\s*javascript:/i.test(a.value)).map(a => `${a.name}=${a.value}`)),
  };
}"""

# Where the ink of each text of each drawing lies on the screen. Across, the text's own box; up and down, what its
# letters reach above and below their line, for a box is as high as the font's tallest letter with its accents. All is
# measured in the text's coordinates and put through the matrix that the browser draws with.
TEXTS = """() => {
  const pen = document.createElement('canvas').getContext('2d');
  const ink = t => {
    const style = getComputedStyle(t), box = t.getBBox(), line = t.getStartPositionOfChar(0).y;
    pen.font = `${style.fontStyle} ${style.fontWeight} 100px ${style.fontFamily}`;
    const reach = pen.measureText(t.textContent), scale = parseFloat(style.fontSize) / 100;
    return [box.x, line - reach.actualBoundingBoxAscent * scale,
            box.x + box.width, line + reach.actualBoundingBoxDescent * scale];
  };
  return [...document.querySelectorAll('svg')].filter(svg => !svg.parentElement.closest('svg')).map(svg => {
    const paper = svg.getBoundingClientRect();
    const texts = [...svg.querySelectorAll('text')].filter(t => t.textContent.trim()).map(t => {
      const [left, top, right, bottom] = ink(t), m = t.getScreenCTM();
      const xs = [], ys = [];
      for (const x of [left, right]) for (const y of [top, bottom]) {
        const p = new DOMPoint(x, y).matrixTransform(m); xs.push(p.x); ys.push(p.y);
      }
      return [t.textContent, Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
    });
    const title = svg.querySelector('title');
    return [title ? title.textContent : '', [paper.left, paper.top, paper.right, paper.bottom], texts];
  });
}"""

# The size of the type of every text of a drawing, as it is set on the page, px.
LETTERS = """() => [...document.querySelectorAll('svg text')]
  .map(t => parseFloat(getComputedStyle(t).fontSize) * Math.hypot(t.getScreenCTM().a, t.getScreenCTM().b))"""


@dataclass(frozen=True)
class Box:
    """The ink of a text on the screen, px."""

    words: str
    left: float
    top: float
    right: float
    bottom: float

    def shared_with(self, other: Box) -> tuple[float, float]:
        """Width and height of what both cover; below zero where they are apart."""
        across = min(self.right, other.right) - max(self.left, other.left)
        return across, min(self.bottom, other.bottom) - max(self.top, other.top)


@dataclass(frozen=True)
class Sheet:
    """A drawing on the screen with its texts."""

    title: str
    paper: Box
    texts: tuple[Box, ...]


def drawings(page: Page) -> list[Sheet]:
    """Every drawing of the page."""
    return [
        Sheet(title, Box(title, *paper), tuple(Box(*text) for text in texts))
        for title, paper, texts in page.evaluate(TEXTS)
    ]


def heading_faults(levels: Iterable[tuple[int, str]]) -> list[str]:
    """Headings that skip a level, or a page that doesn't start with its one title."""
    found, before = [], 0
    for level, words in levels:
        if level > before + 1 or (level == 1 and before):
            found.append(f"h{level} after h{before}: {words}")
        before = level
    return found if before else ["no headings"]


def overlaps(sheet: Sheet, least: float) -> list[str]:
    """Texts of a drawing that cover one another by more than `least` px both ways."""
    found = []
    for one, other in combinations(sheet.texts, 2):
        across, down = one.shared_with(other)
        if across > least and down > least:
            found.append(f"{sheet.title}: '{one.words}' and '{other.words}' share {across:.1f} x {down:.1f} px")
    return found


def outside(sheet: Sheet, least: float) -> list[str]:
    """Texts that stick out of their drawing by more than `least` px."""
    paper = sheet.paper
    return [
        f"{sheet.title}: '{text.words}' sticks out"
        for text in sheet.texts
        if text.left < paper.left - least
        or text.top < paper.top - least
        or text.right > paper.right + least
        or text.bottom > paper.bottom + least
    ]
