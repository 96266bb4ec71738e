"""Parts out of sheets of several sizes with prices of their own, and out of offcuts that are there already.

Offcuts are filled first, the smallest first; where that isn't proven cheapest, a few full sheets are tried before them.
For the rest each size is tried by itself, then mixes: sheet after sheet
of the size that gives most area of parts for its price; the fullest sheets of one size with another for the rest; and
rounds that take the worst sheets out and buy again for their parts. What is found stands beside `price_bound`.
"""

from collections import Counter, deque
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from planlang.materials.cutting.demand import LARGE_OFFCUT, Aims, Demand, canonical
from planlang.materials.cutting.handy import handier
from planlang.materials.cutting.place import STYLES, Divide, Placement, Sheet, fill_sheet, kinds_on
from planlang.materials.cutting.price_bound import Size, price_bound
from planlang.materials.cutting.problem import Kind, Problem, state
from planlang.materials.cutting.rows import fill_rows
from planlang.materials.cutting.search import search, work_limit
from planlang.materials.cutting.sheets import Label, label_queues, write_plan
from planlang.materials.cutting.work import LEAST, Budget, Draw, Work
from planlang.materials.model import SheetLayout
from planlang.syntax.record import record

ROUNDS = 60
"""Rounds of taking sheets out and buying again, with the least effort."""
SHEETS_BEFORE = 4
"""Fewer full sheets than these are tried before the shelf."""
PREFIXES = 6
"""So many shares of one size's fullest sheets are tried with another size for the rest."""

Parts = Counter[Kind]


class Bought(NamedTuple):
    """One sheet of a size, by its place in the list of sizes, with what is cut from it."""

    size: int
    sheet: Sheet


Mix = list[Bought]


@record
class MixedResult:
    """Layouts by size, in the order in which the sizes were given; what they cost and the least that any mix costs."""

    layouts: tuple[tuple[SheetLayout, ...], ...]
    price: Fraction
    least_price: Fraction
    unplaced: tuple[Demand, ...]

    @property
    def used(self) -> tuple[int, ...]:
        """How many sheets of each size."""
        return tuple(sum(layout.sheets for layout in layouts) for layouts in self.layouts)

    @property
    def proven_least(self) -> bool:
        """True when no mix could cost less."""
        return self.price == self.least_price


class Saw(NamedTuple):
    """Kerf, trim and the least offcut worth keeping, mm."""

    kerf: Fraction
    trim: Fraction
    least_offcut: tuple[Fraction, Fraction]


def cut_mixed(
    sizes: Sequence[Size], saw: Saw, demands: Sequence[Demand], budget: Budget = LEAST, aims: Aims = LARGE_OFFCUT
) -> MixedResult:
    """Lay the demands out on sheets of several sizes. Sizes with a `most` are offcuts: as many as there are, free.

    Demands that no size without a `most` can hold come back in `unplaced`.
    """
    demands = sorted(demands, key=canonical)
    beside = [side for size in sizes for side in (size.length, size.width)]
    stated = [state(size.length, size.width, saw.kerf, saw.trim, demands, beside) for size in sizes]
    for_sale = [set(unplaced) for size, (_, unplaced) in zip(sizes, stated, strict=True) if size.most is None]
    lost = set.intersection(*for_sale) if for_sale else set(demands)
    if lost:
        kept = [demand for demand in demands if demand not in lost]
        found = cut_mixed(sizes, saw, kept, budget, aims)
        return replace(found, unplaced=tuple(sorted(lost, key=canonical)))
    problems = [replace(problem, budget=budget) for problem, _ in stated]
    wanted: Parts = Counter()
    for problem in problems:
        wanted |= Counter(dict(zip(problem.kinds, problem.counts, strict=True)))
    least = price_bound(sizes, problems)
    mix = Mixing(sizes, problems, least).best(wanted)
    queues = label_queues(problems[0], [demand for demand in demands if demand.count > 0]) if problems else {}
    return MixedResult(_written(problems, mix, queues, saw, aims), price_of(sizes, mix), least, ())


def price_of(sizes: Sequence[Size], mix: Mix) -> Fraction:
    """What a mix costs."""
    return sum((sizes[bought.size].price for bought in mix), Fraction(0))


def _written(
    problems: Sequence[Problem], mix: Mix, queues: Mapping[Kind, deque[Label]], saw: Saw, aims: Aims
) -> tuple[tuple[SheetLayout, ...], ...]:
    found = []
    for at, problem in enumerate(problems):
        plan = [bought.sheet for bought in mix if bought.size == at]
        found.append(write_plan(problem, handier(problem, plan, aims), queues, saw.least_offcut) if plan else ())
    return tuple(found)


class Mixing:
    """The search for a cheap mix, in counted work."""

    def __init__(self, sizes: Sequence[Size], problems: Sequence[Problem], least: Fraction) -> None:
        self._sizes, self._problems, self._least = sizes, problems, least
        self._at = [{kind: at for at, kind in enumerate(problem.kinds)} for problem in problems]
        self._for_sale = [at for at, size in enumerate(sizes) if size.most is None]
        self._work = Work(3 * max(map(work_limit, problems), default=0))

    def best(self, wanted: Parts) -> Mix:
        """The cheapest mix found; offcuts are left on the shelf only where using them costs more."""
        shelf, left = self._from_shelf(wanted)
        mixes = [shelf + self._bought(left)]
        if shelf and price_of(self._sizes, mixes[0]) > self._least:
            mixes += [
                self._shelf_after(at, count, wanted) for at in self._for_sale for count in range(1, SHEETS_BEFORE)
            ]
            mixes.append(self._downgraded(self._by_worth(wanted)))
        return min(mixes, key=lambda mix: price_of(self._sizes, mix))

    def _shelf_after(self, size: int, count: int, wanted: Parts) -> Mix:
        """A few full sheets of a size, the shelf for what is left, and whatever is cheapest for the rest."""
        left, mix = wanted.copy(), list[Bought]()
        for _ in range(count):
            if sheet := self._fullest(size, left):
                mix.append(Bought(size, sheet))
                left -= self._held(size, sheet)
        shelf, left = self._from_shelf(left)
        return self._downgraded(mix + shelf + self._by_worth(left))

    def _from_shelf(self, wanted: Parts) -> tuple[Mix, Parts]:
        left, mix = wanted.copy(), list[Bought]()
        shelf = [at for at, size in enumerate(self._sizes) if size.most is not None]
        for at in sorted(shelf, key=lambda at: (self._problems[at].area, at)):
            for _ in range(self._sizes[at].most or 0):
                sheet = self._fullest(at, left)
                if sheet:
                    mix.append(Bought(at, sheet))
                    left -= self._held(at, sheet)
        return mix, left

    def _bought(self, wanted: Parts) -> Mix:
        if not wanted:
            return []
        mixes = [mix for at in self._for_sale if (mix := self._of_one_size(at, wanted)) is not None]
        if len(self._for_sale) > 1:
            mixes.append(self._by_worth(wanted))
            mixes += self._prefixes(min(mixes, key=self._rank), wanted)
        mix = self._downgraded(min(mixes, key=self._rank))
        return self._rounds(mix) if len(self._for_sale) > 1 else mix

    def _rank(self, mix: Mix) -> tuple[Fraction, int]:
        return price_of(self._sizes, mix), len(mix)

    def _held(self, at: int, sheet: Sheet) -> Parts:
        return Counter(self._problems[at].kinds[kind] for kind in kinds_on(sheet))

    def _counts(self, at: int, left: Parts) -> list[int]:
        return [left.get(kind, 0) for kind in self._problems[at].kinds]

    def _fullest(self, at: int, left: Parts) -> Sheet:
        """One sheet of a size with as much area of the parts left as any constructor brings onto it."""
        problem, counts = self._problems[at], self._counts(at, left)
        order = sorted((kind for kind, count in enumerate(counts) if count), key=lambda kind: -problem.areas[kind])
        ways = [(kind, way) for kind in order for way in problem.ways[kind]]
        sheets = [fill_sheet(problem, ways, counts, style, self._work) for style in STYLES[:10:2]]
        sheets += [fill_rows(problem, ways, counts, rip, self._work) for rip in (True, False)]
        return max(sheets, key=lambda sheet: self._area(at, sheet))

    def _area(self, at: int, sheet: Sheet) -> int:
        return sum(self._problems[at].areas[kind] for kind in kinds_on(sheet))

    def _of_one_size(self, at: int, wanted: Parts) -> Mix | None:
        """Everything on one size by the full search; None where a part doesn't fit."""
        if any(kind not in self._at[at] for kind in wanted):
            return None
        problem = self._problems[at]
        kept = [kind for kind, count in enumerate(self._counts(at, wanted)) if count]
        part = replace(
            problem,
            kinds=tuple(problem.kinds[kind] for kind in kept),
            counts=tuple(wanted[problem.kinds[kind]] for kind in kept),
            ways=tuple(problem.ways[kind] for kind in kept),
            areas=tuple(problem.areas[kind] for kind in kept),
        )
        plan = search(part)[0][0]
        return [Bought(at, tuple(_renamed(step, kept) for step in sheet)) for sheet in plan]

    def _by_worth(self, wanted: Parts, first: int | None = None) -> Mix:
        """Sheet after sheet of the size that gives most area of parts for its price; the last one the cheapest.

        With a size to be bought `first`, the first sheets are of it.
        """
        left, mix = wanted.copy(), list[Bought]()
        while left:
            sizes = self._for_sale if mix or first is None else [first]
            sheets = [Bought(at, sheet) for at in sizes if (sheet := self._fullest(at, left))]
            if not sheets:
                first = None
                continue
            enough = [bought for bought in sheets if self._held(*bought) == left]
            best = min(enough or sheets, key=self._price if enough else self._price_of_area)
            held = self._held(*best)
            times = min(left[kind] // count for kind, count in held.items())
            mix += [best] * times
            left -= Counter({kind: count * times for kind, count in held.items()})
        return mix

    def _price(self, bought: Bought) -> tuple[Fraction, int]:
        return self._sizes[bought.size].price, bought.size

    def _price_of_area(self, bought: Bought) -> tuple[Fraction, int]:
        return self._sizes[bought.size].price / self._area(*bought), bought.size

    def _prefixes(self, mix: Mix, wanted: Parts) -> Iterator[Mix]:
        """The best-used sheets of a mix with the rest bought anew."""
        ordered = sorted(mix, key=self._price_of_area)
        for share in range(1, PREFIXES):
            kept = ordered[: len(ordered) * share // PREFIXES]
            if kept and self._work.left:
                yield kept + self._by_worth(self._without(wanted, kept))

    def _without(self, wanted: Parts, mix: Mix) -> Parts:
        left = wanted.copy()
        for bought in mix:
            left -= self._held(*bought)
        return left

    def _downgraded(self, mix: Mix) -> Mix:
        """Each sheet in the cheapest size that holds all its parts."""
        known: dict[Bought, Bought] = {}
        for bought in dict.fromkeys(mix):
            held, best = self._held(*bought), bought
            for at in self._for_sale if self._sizes[bought.size].most is None else ():
                if self._sizes[at].price < self._sizes[best.size].price:
                    sheet = self._fullest(at, held)
                    if sheet and self._held(at, sheet) == held:
                        best = Bought(at, sheet)
            known[bought] = best
        return [known[bought] for bought in mix]

    def _rounds(self, mix: Mix) -> Mix:
        """Take out the worst sheet and some drawn by lot, buy again for their parts, and keep what costs less."""
        draw, budget = Draw(), self._problems[0].budget
        for _ in range(ROUNDS * budget.effort // budget.share):
            if price_of(self._sizes, mix) <= self._least or len(mix) < 2 or not self._work.left:
                return mix
            out = sorted(mix, key=self._price_of_area)
            again = [out.pop()]
            again += [out.pop(draw.below(len(out))) for _ in range(min(1 + draw.below(4), len(out)))]
            parts: Parts = Counter()
            for bought in again:
                parts += self._held(*bought)
            at = self._for_sale[draw.below(len(self._for_sale))]
            new = [self._downgraded(self._by_worth(parts, first)) for first in (None, at)]
            cheapest = min(new, key=self._rank)
            if self._rank(cheapest) < self._rank(again):
                mix = out + cheapest
        return mix


def _renamed(step: Placement | Divide, kept: Sequence[int]) -> Placement | Divide:
    return step._replace(kind=kept[step.kind]) if isinstance(step, Placement) else step
