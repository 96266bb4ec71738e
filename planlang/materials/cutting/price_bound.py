"""A lower bound on the price of sheets of several sizes, in exact whole numbers and fractions.

Whatever mix of sheets is bought, two things hold of every set of sizes: the parts that fit on no other size need their
area of it, and as many sheets as they would need if each sheet were as long as the longest and as wide as the widest of
them. The cheapest whole numbers of sheets that meet all of these can't be beaten.
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from planlang.materials.cutting.problem import Kind, Problem, ways_of
from planlang.materials.cutting.sheet_bounds import sheet_bound

MOST_MIXES = 200_000


class Size(NamedTuple):
    """A size of sheet at a price; no more than `most` of it where that isn't None."""

    length: Fraction
    width: Fraction
    price: Fraction
    most: int | None = None


class Need(NamedTuple):
    """At least `least`, as the sum over all sizes of their sheets times `each`."""

    each: tuple[int, ...]
    least: int


def price_bound(sizes: Sequence[Size], problems: Sequence[Problem]) -> Fraction:
    """The least price of any mix; `problems` state all parts on each size, in one unit and with one kerf."""
    needs = needs_of(problems)
    rest = [_less_free(need, sizes) for need in needs]
    rest = [need for need in rest if need.least > 0]
    paid = [at for at, size in enumerate(sizes) if size.most is None]
    if not rest:
        return Fraction(0)
    by_one = max(need.least * _cheapest(need, sizes, paid) for need in rest)
    return max(by_one, _by_whole_sheets(sizes, rest, paid) or by_one)


def needs_of(problems: Sequence[Problem]) -> list[Need]:
    """What the parts need: one pair for all parts, and one for each set of sizes that some parts are bound to."""
    homes: dict[Kind, set[int]] = {}
    counts: dict[Kind, int] = {}
    for at, problem in enumerate(problems):
        for kind, count in zip(problem.kinds, problem.counts, strict=True):
            homes.setdefault(kind, set()).add(at)
            counts[kind] = count
    sets = {frozenset(home) for home in homes.values()} | {frozenset(range(len(problems)))}
    needs = []
    for group in sorted(sets, key=sorted):
        room = _union([problems[at] for at in sorted(group)])
        kinds = tuple(sorted((kind for kind in homes if homes[kind] <= group), reverse=True))
        whole = replace(
            room,
            kinds=kinds,
            counts=tuple(counts[kind] for kind in kinds),
            ways=tuple(ways_of(kind, room.length, room.width) for kind in kinds),
            areas=tuple(kind.length * kind.width for kind in kinds),
        )
        material = sum(area * count for area, count in zip(whole.areas, whole.counts, strict=True))
        inside = range(len(problems))
        needs.append(Need(tuple(problems[at].area if at in group else 0 for at in inside), material))
        needs.append(Need(tuple(int(at in group) for at in inside), sheet_bound(whole).least))
    return needs


def _union(problems: Sequence[Problem]) -> Problem:
    return replace(
        problems[0],
        length=max(problem.length for problem in problems),
        width=max(problem.width for problem in problems),
    )


def _less_free(need: Need, sizes: Sequence[Size]) -> Need:
    """What remains of a need when all that lies on the shelf serves it."""
    free = sum(each * size.most for each, size in zip(need.each, sizes, strict=True) if size.most is not None)
    return Need(need.each, need.least - free)


def _cheapest(need: Need, sizes: Sequence[Size], paid: Sequence[int]) -> Fraction:
    """The least price of one of what is needed."""
    return min((sizes[at].price / need.each[at] for at in paid if need.each[at]), default=Fraction(0))


def _by_whole_sheets(sizes: Sequence[Size], needs: Sequence[Need], paid: Sequence[int]) -> Fraction | None:
    """The least price of whole numbers of sheets that meet every need; None where there are too many to try."""
    most = [max((-(-need.least // need.each[at]) for need in needs if need.each[at]), default=0) for at in paid]
    mixes = 1
    for count in most[:-1]:
        mixes *= count + 1
    if not paid or mixes > MOST_MIXES:
        return None
    best: list[Fraction] = []

    def go_on(place: int, price: Fraction, left: tuple[int, ...]) -> None:
        if best and price >= best[0]:
            return
        if all(each <= 0 for each in left):
            best[:] = [price]
            return
        if place == len(paid):
            return
        at = paid[place]
        last = place == len(paid) - 1
        wanted = [-(-each // need.each[at]) for each, need in zip(left, needs, strict=True) if each > 0 < need.each[at]]
        for count in [max(wanted, default=0)] if last else range(most[place], -1, -1):
            after = tuple(each - count * need.each[at] for each, need in zip(left, needs, strict=True))
            go_on(place + 1, price + count * sizes[at].price, after)

    go_on(0, Fraction(0), tuple(need.least for need in needs))
    return best[0] if best else None
