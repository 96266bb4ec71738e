"""The rules that ask how much there is room for: as many panels as fit, or as many as cover a share."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import product
from math import ceil

from planlang.geometry.model import Box
from planlang.geometry.placement import messages
from planlang.geometry.placement.along import block
from planlang.geometry.placement.slot import Site, Slot
from planlang.geometry.placement.taken import Taken
from planlang.geometry.polygon import chord, edges_of
from planlang.geometry.words import bare
from planlang.plan.model import Alignment
from planlang.plan.placement import MOST_TIMES_WANTED, Cover, Fit, how_many
from planlang.plan.tape import on_tape
from planlang.syntax.diagnostics import Outcome
from planlang.syntax.record import record

WAYS: tuple[Alignment, ...] = ("centred", "start", "end")
WORDS = {"centred": "centred", "start": "from the start", "end": "from the end"}
MOST_GRIDS = 100  # of columns and rows that are tried for a share


@record
class Try:
    """One way to fill a surface: the places that are free, and how many others are not."""

    boxes: tuple[Box, ...]
    taken: int
    words: str


def place_to_fit(fit: Fit, site: Site) -> Outcome[tuple[Slot, ...]]:
    """Rows of panels, as many as fit, each as long as the surface is wide there.

    Of nine ways (rows and columns centred, from the start, from the end) the one with most panels is taken, the first
    of equals. Places too near something on the surface, in a zone, or taken by earlier arrays are left out.
    Findings: nothing-fits.
    """
    taken = Taken(site, (fit.gap_across, fit.gap_up))
    tries = [_fill(fit, taken, across, up) for up, across in product(WAYS, WAYS)]
    best = max(tries, key=lambda one: len(one.boxes))
    if not best.boxes:
        return Outcome((), (messages.nothing_fits(site.array, site.panel_size, site.surface, site.tape),))
    words = f"{len(best.boxes)} fit, {best.words}"
    if best.taken:
        words += f", {best.taken} {'place' if best.taken == 1 else 'places'} left out for what is there"
    return Outcome(tuple(_slot(box, index, words, site) for index, box in enumerate(best.boxes)))


def place_to_cover(cover: Cover, site: Site) -> Outcome[tuple[Slot, ...]]:
    """The fewest columns and rows, with gaps and margins all equal each way, that cover the share.

    Places too near something are left out; then more columns or rows are tried, up to twice as many places as panels
    are wanted. Findings: cover-too-much.
    """
    width, height = site.panel_size
    each = width * height if site.pose is None else Fraction(site.pose.shape.area)
    wanted = ceil(cover.share * Fraction(site.surface.area_mm2) / each)
    least = max(cover.gap, site.array.edge_clear)
    taken = Taken(site, (least, least))
    most = 0
    for columns, rows in _grids(least, site, wanted):
        boxes = taken.free(_evenly(columns, rows, least, site))
        most = max(most, len(boxes))
        if len(boxes) >= wanted:
            share = float(len(boxes) * each) / site.surface.area_mm2
            words = (
                f"{float(cover.share * 100):g} % of {site.surface.area_mm2 / 1e6:.2f} m2 is {wanted} panels; "
                f"{columns} columns by {rows} rows in equal gaps cover {share:.1%}"
            )
            return Outcome(tuple(_slot(box, index, words, site) for index, box in enumerate(boxes)))
    return Outcome((), (messages.cover_too_much(site.array, cover, wanted, most, site.tape),))


def _slot(box: Box, index: int, words: str, site: Site) -> Slot:
    at = f"left edge at {on_tape(box.left, site.tape)}, lower edge at {bare(box.lower, site.tape)}"
    return Slot(box, f"place {index + 1}: {words}; {at}")


def _start(low: Fraction, high: Fraction, size: Fraction, way: Alignment) -> Fraction:
    if way == "start":
        return low
    return high - size if way == "end" else (low + high - size) / 2


def _fill(fit: Fit, taken: Taken, across: Alignment, up: Alignment) -> Try:
    site = taken.site
    _, height = site.panel_size
    margin = max(fit.margin, site.array.edge_clear)
    rows = how_many(site.surface.height - 2 * margin, height, fit.gap_up)
    first = _start(margin, site.surface.height - margin, block(rows, height, fit.gap_up), up)
    boxes: list[Box] = []
    for row in range(rows):
        lower = first + row * (height + fit.gap_up)
        aside = (site.panel_size[0] + fit.gap_across) / 2 if fit.staggered and row % 2 else Fraction(0)
        boxes += _row(fit.gap_across, margin, site, across, lower, aside=aside)
    free = taken.free(boxes)
    return Try(free, len(boxes) - len(free), f"rows {WORDS[up]} up and {WORDS[across]} across")


def _row(
    gap: Fraction, margin: Fraction, site: Site, across: Alignment, lower: Fraction, *, aside: Fraction
) -> Iterator[Box]:
    """The places of one row, as far as the surface is wide over all its height with the margin.

    A row that stands aside of the others has one place less where it would leave that width.
    """
    width, height = site.panel_size
    edges = edges_of(site.surface.outline)
    low, high = chord(edges, lower - margin, lower + height + margin, site.surface.width)
    low, high = low + margin, high - margin
    count = how_many(high - low, width, gap)
    left = _start(low, high, block(count, width, gap), across) + aside
    for index in range(count):
        at = left + index * (width + gap)
        if at + width <= high:
            yield Box(at, lower, at + width, lower + height)


def _grids(least: Fraction, site: Site, wanted: int) -> list[tuple[int, int]]:
    """Columns and rows of enough panels, the fewest first; of equals the ones whose gaps are most alike.

    Where there is no room for enough, the fullest there is.
    """
    width, height = site.panel_size
    surface = site.surface
    columns = how_many(surface.width - 2 * least, width, least)
    rows = how_many(surface.height - 2 * least, height, least)

    def unlike(grid: tuple[int, int]) -> tuple[int, Fraction, int]:
        gap_across = (surface.width - grid[0] * width) / (grid[0] + 1)
        gap_up = (surface.height - grid[1] * height) / (grid[1] + 1)
        return grid[0] * grid[1], abs(gap_across - gap_up), grid[1]

    grids = product(range(1, columns + 1), range(1, rows + 1))
    enough = [grid for grid in grids if wanted <= grid[0] * grid[1] <= MOST_TIMES_WANTED * wanted]
    return sorted(enough, key=unlike)[:MOST_GRIDS] or [(columns, rows)]


def _evenly(columns: int, rows: int, least: Fraction, site: Site) -> Iterator[Box]:
    """Places with equal gaps and margins up the surface, and in each row over what the surface is wide there.

    A row that is too narrow for so many with the least gap has fewer.
    """
    width, height = site.panel_size
    gap_up = (site.surface.height - rows * height) / (rows + 1)
    edges = edges_of(site.surface.outline)
    for row in range(rows):
        lower = gap_up + row * (height + gap_up)
        low, high = chord(edges, lower, lower + height, site.surface.width)
        count = min(columns, how_many(high - low - 2 * least, width, least))
        gap = (high - low - count * width) / (count + 1)
        for column in range(count):
            left = low + gap + column * (width + gap)
            yield Box(left, lower, left + width, lower + height)
