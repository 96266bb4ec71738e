"""Cutting: sheets and sticks used beside the proven bound, instance by instance, the lost ones too, and what peers use.

`python -m tests.bench.cutting [EFFORT] [SET ...]` prints every instance and the totals. Every layout, whoever made it,
passes the replay: ours cut by cut, a peer's by the independent check that its parts come free by cuts from edge to
edge. A peer has the time that we took on the same instance, and no less than a tenth of a second. `--one-in N` takes
every N-th instance of a set, which is some of each size; `--parts locked` or `free` one of the two ways; `--alone` asks
no peer. Seconds are those of the processor, of this process alone.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from planlang.materials.cutting import Budget, Demand, StickDemand
from planlang.materials.cutting.replay import Stock, check_sheets, check_sticks
from planlang.materials.cutting.sheets import cut_sheets
from planlang.materials.cutting.sticks import cut_sticks
from tests.bench.cutting_peers import PEERS, Peer
from tests.bench.measure import Line

TITLE = "cutting, sheets or sticks used beside the proven bound (the ratio), time for one list"
INSTANCES = Path(__file__).parent / "instances"
LOCKED, FREE, OWN = "locked", "free", "as listed"
SHEET_SETS = (
    ("classes", LOCKED),
    ("classes", FREE),
    ("workshop", OWN),
    ("cutting_stock", LOCKED),
    ("cutting_stock", FREE),
)
STICK_SETS = ("sticks_workshop", "sticks_falkenauer")
LEAST_OFFCUT = (Fraction(10**9), Fraction(10**9))
LEAST_SECONDS = 0.1


@dataclass(frozen=True)
class Result:
    """One instance: how many sheets or sticks, the bound, the seconds, and how many each peer used (0: no plan)."""

    name: str
    used: int
    least: int
    seconds: float
    peers: dict[str, int]


def rows(name: str) -> Iterator[dict[str, object]]:
    """The instances of a set; the first line of the file says where they are from."""
    with (INSTANCES / f"{name}.jsonl").open(encoding="utf-8") as lines:
        next(lines)
        yield from map(json.loads, lines)


def sheet_problem(row: dict, mode: str) -> tuple[Stock, list[Demand]]:
    """The stock and the demands of an instance, with all parts locked or free, or each as its row says."""
    length, width = map(Fraction, row["sheet"])
    demands = [
        Demand(f"P{at}", Fraction(part[0]), Fraction(part[1]), part[2], bool(part[3]) if mode == OWN else mode == FREE)
        for at, part in enumerate(row["parts"])
    ]
    return Stock(length, width, Fraction(row["kerf"]), Fraction(row["trim"]), LEAST_OFFCUT), demands


def lay_sheets(row: dict, mode: str, effort: int, peers: Sequence[Peer]) -> Result:
    """One instance by the engine and by the peers; the engine's layouts are replayed."""
    stock, demands = sheet_problem(row, mode)
    start = time.process_time()
    found = cut_sheets(*stock, demands, Budget(effort))
    seconds = time.process_time() - start
    problems = check_sheets(stock, demands, found)
    if problems or found.unplaced:
        raise ValueError(f"{row['name']}: {problems[:1]}")
    beside = {peer.name: peer.sheets(stock, demands, max(seconds, LEAST_SECONDS)) for peer in peers}
    return Result(str(row["name"]), found.used, found.bound.least, seconds, beside)


def lay_sticks(row: dict, effort: int) -> Result:
    """One list of sticks by the engine; its layouts are replayed."""
    length, kerf = Fraction(row["stick"]), Fraction(row["kerf"])
    demands = [StickDemand(f"P{at}", Fraction(piece[0]), piece[1]) for at, piece in enumerate(row["pieces"])]
    start = time.process_time()
    found = cut_sticks(length, kerf, demands, effort)
    seconds = time.process_time() - start
    problems = check_sticks(length, kerf, demands, found)
    if problems or found.unplaced:
        raise ValueError(f"{row['name']}: {problems[:1]}")
    return Result(str(row["name"]), found.used, found.bound.least, seconds, {})


def summed(title: str, results: Sequence[Result]) -> list[Line]:
    """The line of a set, and a line for each peer that could be asked."""
    used, least = sum(each.used for each in results), sum(each.least for each in results)
    proven = sum(each.used == each.least for each in results)
    times = sorted(each.seconds for each in results)
    what = f"{title}: {used} used, bound {least}, {proven} of {len(results)} proven, longest {times[-1]:.2f} s"
    lines = [Line(what, times[len(times) // 2], times[0], used / least)]
    for name in results[0].peers:
        told = [each for each in results if each.peers[name]]
        if not told:
            continue
        theirs, ours = sum(each.peers[name] for each in told), sum(each.used for each in told)
        lost = [each.name for each in told if each.peers[name] < each.used]
        words = f"  {name}: {theirs} where ours are {ours}, on {len(told)} instances with a plan; better on {len(lost)}"
        lines.append(Line(f"{words} {' '.join(lost)}".rstrip(), 0, 0, theirs / sum(each.least for each in told)))
    return lines


@dataclass(frozen=True)
class Choice:
    """What is measured: the sets (all where none is named), the ways parts lie, and which instances of each set."""

    sets: Sequence[str] = ()
    modes: Sequence[str] = (LOCKED, FREE, OWN)
    one_in: int = 1
    most: int | None = None
    alone: bool = False

    def rows(self, name: str) -> list[dict[str, object]]:
        """The instances chosen of a set."""
        return list(rows(name))[:: self.one_in][: self.most]


def measure(repetitions: int = 1, effort: int = 1, choice: Choice = Choice(), every: bool = False) -> list[Line]:
    """Each set once, for counted work doesn't vary: its line, with `every` a line for each instance before it."""
    peers = [] if choice.alone else [peer for peer in PEERS if not peer.absent]
    lines: list[Line] = [] if choice.alone else [peer.absent for peer in PEERS if peer.absent]
    for name, mode in SHEET_SETS:
        if mode in choice.modes and (not choice.sets or name in choice.sets):
            results = [lay_sheets(row, mode, effort, peers) for row in choice.rows(name)]
            lines += [*(each_line(each) for each in results if every), *summed(f"{name}, {mode}", results)]
    for name in STICK_SETS:
        if OWN in choice.modes and (not choice.sets or name in choice.sets):
            results = [lay_sticks(row, effort) for row in choice.rows(name)]
            lines += [*(each_line(each) for each in results if every), *summed(name, results)]
    return lines


def each_line(result: Result) -> Line:
    """The line of one instance."""
    beside = "".join(f", {name} {used or 'none'}" for name, used in result.peers.items())
    what = f"{result.name}: {result.used} used, bound {result.least}{beside}"
    return Line(what, result.seconds, result.seconds, result.used / result.least)


def main() -> int:
    """Run this benchmark alone."""
    from tests.bench.__main__ import as_text

    parser = argparse.ArgumentParser(prog="python -m tests.bench.cutting", description=TITLE)
    parser.add_argument("effort", nargs="?", type=int, default=1)
    parser.add_argument("sets", nargs="*", metavar="SET")
    parser.add_argument("--parts", choices=[LOCKED, FREE])
    parser.add_argument("--one-in", type=int, default=1, metavar="N")
    parser.add_argument("--alone", action="store_true")
    given = parser.parse_args()
    known = {*dict(SHEET_SETS), *STICK_SETS}
    if not known.issuperset(given.sets):
        parser.error(f"the sets are {', '.join(sorted(known))}")
    modes = [given.parts] if given.parts else [LOCKED, FREE, OWN]
    choice = Choice(given.sets, modes, given.one_in, alone=given.alone)
    print(as_text(f"{TITLE}, effort {given.effort}", measure(effort=given.effort, choice=choice, every=True)))
    return 0


if __name__ == "__main__":
    sys.exit(main())
