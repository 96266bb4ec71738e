"""What fuzzing starts from: a plan with most kinds of block, and the demo plans with what they use. All invented."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from tests.plans import DEMO_PLANS, DEMOS, SMALL

Files = Mapping[str, bytes]
MAIN = "main.plan"

BASE = (
    SMALL.replace("  ceiling {\n", "  ceiling {\n    slope  pitched  from west wall at 1500, pitch 40 deg\n")
    .replace(
        "  door     d1",
        "  lining   pitched       plaster over rafters 45 x 145 of spruce at 400 centres, first at 100\n"
        "  rooflight  R1..R3    on pitched centred at 800, 2000, 3200, up 100, 400 x 300, plaster\n"
        "  luminaire  L1        on ceiling centred at 600, 600, 90 across\n"
        "  window   w1            on south wall at 900, 800 x 900, sill 900, plaster\n"
        "  vent     V1            on ceiling centred at 300, 2950, 200 x 200\n"
        '  zone     flue  on ceiling from 0, 0 to 200, 200, no drilling, says "sweep"\n'
        '  allows   ceiling screws, eyes, says "owner"\n'
        "  air      20 C, 45 %\n"
        "  occupied-by  4 person\n"
        "  door     d1",
    )
    .replace("  density  680 kg/m3\n", "  density  680 kg/m3\n  price    40 GBP per sheet\n")
    .replace("  density           45", "  price             5 GBP per each\n  density           45")
    .replace("  mass   300 g/m2\n", "  mass   300 g/m2\n  price  14 GBP per m\n")
    .replace("  mass    50 g\n", "  mass    50 g\n  price   2 GBP per each\n")
    .replace("panel cloud", "figure margin 2 * (50 + 25 mm)\nfigure edge least of (margin, 120)\n\npanel cloud")
    + """
timber batten {
  like     spruce
  section  70 x 70
  stick    3000
  price    9 GBP per stick
}

seating person {
  absorbs  0.1 m2, 0.2 m2, 0.3 m2, 0.4 m2, 0.4 m2, 0.4 m2
  source   "invented"
}

panel flag, mark F {
  takes     width 500
  absorber  framed
  face      width x 900
  depth     75
  frame     ply
  core      wool
  front     serge
  cleats    2 of eye, 60 below the top, inset 100 from the sides
}

array flags, mark G {
  panel   flag, with width 450
  on      south wall
  place   row of 2, gap margin, left edge at 2500, lowest edge at 900
  hang    on cleats
  fix     lag-eye into the lining, 2 each
  keep    edge clear of doors, 50 clear of edges
}

array drops, mark D {
  panel   cloud
  on      ceiling
  place   row of 2, equal gaps, highest edge at 300
  turned  long side across
  hang    from eyes on eye, drop 200
  fix     lag-eye into rails of batten held by lag-eye
  made    D1 by 2026-12-01
}

array lights, mark E {
  panel   cloud
  on      pitched
  place   one in each bay between R1..R3, highest edge at 50
  hang    from eyes on eye, drop 60
  fix     lag-eye into rails of batten held by lag-eye
}

shop {
  kerf          3.2
  trim          5
  keep-offcuts  from 300 x 100
  spare         10 % of cloth
  crew          bench at 34 GBP per h
  crew          fitters at 31 GBP per h, 2 hands
  work          "make" 1.4 h per panel by bench
  work          "hang" 0.2 h per hang-point by fitters
  margin        20 %
  tax           20 %
}

supplier northgate {
  prices   of 2026-11-02
  freight  20 GBP an order, free from 300 GBP
  tax      20 % reclaimed
  sells    ply, at 38 GBP per sheet
  sells    ply, 1525 x 1525, at 30 GBP per sheet, as of 2026-11-09
  sells    wool, pack of 4, at 21 GBP per pack
}

buying {
  from  least
  take  wool from northgate
}

offcuts 2 of ply, 1180 x 560

use-of-room {
  target    din-18041 A3
  listener  desk     at 3600, 2700, height 1200
  talker    counter  at 900, 2700, height 1500
}

require {
  decay     500 Hz to 2000 Hz at most 2 s
  gap       in clouds at least 300
  weight    of every panel at most 10 kg
  headroom  at least 1000
  cost      materials at most 900 GBP
}

option leaner {
  without  flags
  array clouds {
    place  grid 1 across by 1 up, centred across, lowest edge at 1600
  }
}

survey 2026-12-03 by "second visit" {
  floor      5010 x 3995
  slope      pitched, at 1490, pitch 39.5 deg
  rooflight  R2, centred at 2005
  luminaire  L1, centred at 610, 605
  thickness  of ply 11.8
  members    of ceiling first at 110
}

phase first hangs clouds, drops, from 2026-12-07 to 2026-12-11
region "Invented", rules of ireland

safety {
  timber-rules    nds
  factor          6 on hardware, "invented"
  factor          12 over people, "invented"
  damp            8 % more, "invented"
  second-support  for panels over 9 kg, "invented"
  inspect         every 6 months, "invented"
}

evidence serge-fire {
  covers  serge, cloud
  paper   "invented report 1"
  tested  "the cloth"
  says    "a class"
  until   2028-03-31
}

rule sprinkler-cover ask, says "fire officer"
"""
)


@dataclass(frozen=True)
class Source:
    """A plan with the files that it uses, by their paths below the project folder."""

    files: Files
    main: str


@cache
def sources() -> tuple[Source, ...]:
    """The base plan, twice as likely as each demo plan, and the demo plans with the shop's files."""
    base = Source({MAIN: BASE.encode()}, MAIN)
    shop = {path.relative_to(DEMOS).as_posix(): path.read_bytes() for path in sorted(DEMOS.glob("shop/*.plan"))}
    demos = [
        Source({**shop, path.relative_to(DEMOS).as_posix(): path.read_bytes()}, path.relative_to(DEMOS).as_posix())
        for path in DEMO_PLANS
    ]
    return (base, base, base, *demos)
