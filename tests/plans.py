"""Plans as text, for tests of the language: a small plan that is right, and ways to make it wrong."""

from __future__ import annotations

from pathlib import Path

from planlang.plan.model import Plan
from planlang.plan.reader import read_plan
from planlang.syntax.diagnostics import Diagnostic, in_order
from planlang.syntax.project import read_project

DEMOS = Path(__file__).parents[1] / "plans_demo"
DEMO_PLANS = tuple(sorted(path for path in DEMOS.glob("*/*.plan") if path.parent.name != "shop"))

SMALL = """\
plan "Small room"
units mm

job {
  issue  A of 2026-11-25
  money  GBP
}

sheet ply {
  size     2440 x 1220 x 12
  density  680 kg/m3
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
  bolts   2 of 5
}

hardware lag-eye {
  like    eye
  shank   6
  thread  60
}

timber spruce {
  specific-gravity  0.42, "invented"
}

lining plaster {
  absorbs    0.10, 0.08, 0.05, 0.03, 0.03, 0.03
  source     "invented"
  thickness  12.5
}

panel cloud, mark C {
  absorber  framed
  face      600 x 1200
  depth     75
  frame     ply, ends full, sides between
  core      wool
  braces    at mid-length, 60 wide, set back 6 from the front
  front     serge, wrapped 50
  eyes      4 of eye, inset 100 from the ends
}

room box {
  floor    rectangle 5000 x 4000
  ceiling {
    flat  ceiling  at 2600
  }
  lining   walls, floor  plaster
  lining   ceiling       plaster over joists 45 x 145 of spruce at 200 centres, first at 100, running across
  door     d1            on east wall at 500, 900 x 2000, plaster
}

array clouds, mark K {
  panel   cloud
  on      ceiling
  place   grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600
  hang    from eyes on eye, drop 100
  fix     lag-eye into joists
}
"""


def read_text(folder: Path, text: str, **others: str) -> tuple[Plan | None, tuple[Diagnostic, ...]]:
    """Read a plan given as text; `others` are further files, `__` standing for a dot in their names."""
    (folder / ".planlang").touch()
    for name, content in others.items():
        (folder / name.replace("__", ".")).write_text(content, encoding="utf-8")
    path = folder / "main.plan"
    path.write_text(text, encoding="utf-8")
    project = read_project(path)
    plan = read_plan(project.value)
    return plan.value, in_order([*project.diagnostics, *plan.diagnostics])


def findings_after(folder: Path, *changes: tuple[str, str]) -> list[tuple[str, int]]:
    """The code and line of every finding, after changes to the small plan, each of which must apply."""
    text = SMALL
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    return [(finding.code, finding.span.line) for finding in read_text(folder, text)[1]]
