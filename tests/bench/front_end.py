"""The front end, text to typed plan, against bare lark on the same text with the same grammar, in the same run.

The plans are generated: a room with many things in it, stock, figures, types of panel and arrays, all of it valid and
all of it invented. `python -m tests.bench.front_end` prints lines a second and how time grows with size.
"""

from __future__ import annotations

import gc
import math
import statistics
import sys
import time
from collections.abc import Callable

from lark import Lark

from planlang.cli import prepare_process
from planlang.plan.model import Plan
from planlang.plan.reader import read_plan
from planlang.syntax.parser import parse_file
from planlang.syntax.project import Project
from planlang.syntax.tables import grammar_text
from tests.bench.measure import REPETITIONS, Line

TITLE = "front end, text to typed plan, against bare lark LALR on the same text"
SIZES = (1_000, 10_000, 100_000)
MOST_TIMES = 2.0
STEEPEST = 1.05

HEAD = """\
# A generated plan: everything in it is invented.
plan "Generated plan"
units mm

job {
  client  "Nobody"
  issue   A of 2026-11-25
  money   GBP
}

sheet ply {
  size     2440 x 1220 x 12
  density  680 kg/m3
  price    62 GBP per sheet
}

batt wool {
  size              1200 x 600 x 50
  density           45 kg/m3
  flow-resistivity  9000 Pa.s/m2 to 15000 Pa.s/m2
}

cloth serge {
  width  1500
  mass   300 g/m2
}

hardware eye {
  rated   1000 N, "invented"
  mass    50 g
}

timber spruce {
  specific-gravity  0.42, "invented"
}

lining plaster {
  absorbs    0.10, 0.08, 0.05, 0.03, 0.03, 0.03
  source     "invented"
  thickness  12.5
}

"""

ROOM = """\
room hall {
  floor    rectangle 900000 x 900000
  ceiling {
    flat  ceiling  at 3000
  }
  lining   walls, floor  plaster
  lining   ceiling       plaster over joists 45 x 145 of spruce at 400 centres, first at 200
"""

# One unit of a plan: what a builder writes for one more array, with the things in the room around it.
FEATURES = """\
  luminaire  L{n}         on ceiling centred at {across}, 900, 90 across
  window     w{n}         on south wall at {across}, 600 x 1100, sill 900, plaster
"""

UNIT = """\
figure margin-{n}  {gap} mm + 2 * 12.5

hardware eye-{n} {{
  like    eye
  mass    45 g + 1/2 g
}}

panel cloud-{n}, mark C{n}x {{
  absorber  framed
  face      600 x {length}          # two of them make a row
  depth     75
  frame     ply, ends full, sides between
  core      wool
  braces    at mid-length, 60 wide, set back 6 from the front
  front     serge, wrapped 50
  eyes      4 of eye-{n}, inset 100 from the ends
}}

array clouds-{n}, mark K{n}x {{
  panel   cloud-{n}
  on      ceiling
  place   grid 2 across by 1 up, gap margin-{n}, left edge at {across}, lowest edge at 1600
  turned  long side up
  hang    from eyes on eye-{n}, drop 5 1/2"
  fix     eye into joists
  keep    100 clear of luminaires, 150 clear of w{n}
}}

"""


def generated(lines: int) -> str:
    """A valid plan of about so many lines."""
    units = (lines - HEAD.count("\n") - ROOM.count("\n")) // (UNIT + FEATURES).count("\n")
    numbers = [
        {"n": n, "across": 200 + (n * 137) % 700_000, "gap": 100 + n % 400, "length": 1200 + n % 300}
        for n in range(1, units + 1)
    ]
    things = [FEATURES.format(**each) for each in numbers]
    return "".join([HEAD, ROOM, *things, "}\n\n", *(UNIT.format(**each) for each in numbers)])


def front_end(text: str) -> Plan:
    """Text to typed plan; the text must be right."""
    parsed = parse_file("generated.plan", text)
    typed = read_plan(Project((parsed.value,)))
    findings = [*parsed.diagnostics, *typed.diagnostics]
    if typed.value is None or findings:
        raise ValueError(f"the generated plan is at fault: {findings[:1]}")
    return typed.value


def bare_parser() -> Callable[[str], object]:
    """Lark alone: the same grammar and lexer, a plain tree."""
    return Lark(grammar_text(), parser="lalr", lexer="basic", start="plan", maybe_placeholders=False).parse


def seconds(run: Callable[[str], object], text: str) -> float:
    """The processor's time for a run, with nothing left over from the one before."""
    gc.collect()
    start = time.process_time()
    run(text)
    return time.process_time() - start


def rounds(lines: int, repetitions: int) -> int:
    """Fewer repetitions of what takes long."""
    return max(3, min(repetitions, repetitions * 2_000 // lines))


def times(text: str, repetitions: int) -> tuple[list[float], list[float]]:
    """Bare lark and the front end in turn, after one of each to warm up, with the settings of the commands."""
    prepare_process()
    bare, own = bare_parser(), front_end
    bare(text[: len(HEAD)])
    own(generated(200))
    taken = [(seconds(bare, text), seconds(own, text)) for _ in range(repetitions)]
    return [first for first, _ in taken], [second for _, second in taken]


def exponent(sizes: list[int], taken: list[float]) -> float:
    """The power with which time grows with size: the slope of a line fitted through both as logarithms."""
    across, up = [math.log(size) for size in sizes], [math.log(each) for each in taken]
    middle_across, middle_up = statistics.fmean(across), statistics.fmean(up)
    over = sum((a - middle_across) * (b - middle_up) for a, b in zip(across, up, strict=True))
    return over / sum((a - middle_across) ** 2 for a in across)


def measure(repetitions: int = REPETITIONS, sizes: tuple[int, ...] = SIZES) -> list[Line]:
    """Time both at each size. The last line's ratio is the growth exponent of the front end."""
    lines: list[Line] = []
    counts: list[int] = []
    middles: list[float] = []
    for size in sizes:
        text = generated(size)
        count = text.count("\n")
        bare, own = times(text, rounds(size, repetitions))
        middle_bare, middle = statistics.median(bare), statistics.median(own)
        lines.append(Line(f"lark, {count:,} lines, {count / middle_bare:,.0f} lines/s", middle_bare, min(bare), 1.0))
        what = f"front end, {count:,} lines, {count / middle:,.0f} lines/s"
        lines.append(Line(what, middle, min(own), middle / middle_bare, MOST_TIMES))
        counts.append(count)
        middles.append(middle)
    lines.append(Line("growth exponent", middles[-1], middles[-1], exponent(counts, middles), STEEPEST))
    return lines


def main() -> int:
    """Run this benchmark alone."""
    from tests.bench.__main__ import as_text

    lines = measure(int(sys.argv[1]) if len(sys.argv) > 1 else REPETITIONS)
    print(as_text(TITLE, lines))
    return 0 if all(line.holds for line in lines) else 1


if __name__ == "__main__":
    sys.exit(main())
