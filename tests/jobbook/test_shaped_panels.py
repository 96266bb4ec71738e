"""Panels of other shapes and turns all the way: a plan of our own, invented, through the phases and on to drawings."""

from pathlib import Path
from shutil import copytree

import pytest

from planlang.compiler import compile_plan
from planlang.jobbook.data.layout import PanelData
from planlang.jobbook.drawings import ceiling_plan, panel_drawing, surface_drawing

SHOP = Path(__file__).parents[2] / "plans_demo" / "shop"
PLAN = """\
plan   "Shapes"
note   "An invented room."
units  mm

use "shop/stock.plan"
use "shop/surfaces.plan"
use "shop/panels.plan"

job {
  issue  A of 2026-11-25
  money  GBP
}

timber batten {
  section           63 x 63
  stick             4800
  specific-gravity  0.36, "invented"
  price             9 GBP per stick
}

hardware rail-screw {
  like  cleat-screw-5x80
  head  13
}

panel hex, mark H {
  absorber  framed
  face      1000 x 866
  outline   hexagon
  depth     80
  frame     birch-ply-12, mitre joints
  core      mineral-wool-60
  braces    at every batt joint, 60 wide, set back 6 from the front
  front     wool-serge, wrapped 50
  back      muslin
  eyes      4 of eye-plate-m5, inset 100 from the ends, on the side rails
}

panel round, mark O {
  absorber    board
  face        900 x 900
  outline     circle
  core        mineral-wool-60
  front       wool-serge, wrapped 50
  back-board  birch-ply-12, 1 smaller on every side
  cleats      2 of z-cleat-100, 200 below the top, inset 124 from the sides
}

panel gable, mark G {
  absorber  framed
  face      700 x 2400
  depth     80
  frame     birch-ply-12, mitre joints
  core      mineral-wool-60
  braces    at every batt joint, 60 wide, set back 6 from the front
  front     wool-serge, wrapped 50
  cleats    2 of z-cleat-100, 700 below the top, inset 100 from the sides
}

room shed {
  floor  rectangle 5400 x 4200
  ceiling {
    flat   collar       at 2700
    slope  south-pitch  from south wall at 1500, pitch 40 deg
    slope  north-pitch  from north wall at 1500, pitch 40 deg
  }
  lining  walls   plasterboard-on-studs over studs 45 x 95 of stud-timber at 600 centres, first at 22
  lining  floor   wood-floor
  lining  collar  plasterboard-on-joists over joists 45 x 120 of rafter-timber at 600 centres, first at 300
  lining  south-pitch, north-pitch  pine-boards-20 over rafters 45 x 145 of rafter-timber at 600 centres,
            first at 300
  air     19 C, 50 %
}

array hexes, mark HX {
  panel   hex
  on      collar
  place   row of 2, gap 900, centred across, centred up
  turned  long side up, 20 deg clockwise
  hang    from eyes on quick-link-4, drop 78
  fix     lag-eye-6x80 into rails of batten held by rail-screw
}

array gables, mark GB {
  panel   gable, top 60 below the slope
  on      west wall
  place   row of 4, gap 200, centred across, lowest edge at 600
  turned  long side up
  hang    on cleats
  fix     cleat-screw-5x80 into the lining, 2 each
}

array rounds, mark RO {
  panel   round
  on      east wall
  place   at points 2100, 1000
  turned  long side up
  hang    on cleats
  fix     cleat-screw-5x80 into the lining, 2 each
}
"""


@pytest.fixture(scope="module")
def compiled(tmp_path_factory):
    folder = tmp_path_factory.mktemp("shapes")
    copytree(SHOP, folder / "shop")
    (folder / "shapes.plan").write_text(PLAN, encoding="utf-8")
    found = compile_plan(folder / "shapes.plan", for_book=False)
    assert {each.code for each in found.findings if each.is_error} == set(), found.findings
    assert found.compiled is not None
    return found.compiled


def test_each_panel_has_its_own_footprint(compiled):
    shapes = {panel.mark: panel.shape for panel in compiled.layout.panels}
    assert [len(shapes[mark].corners) for mark in ("HX1", "GB1", "GB2", "RO1")] == [6, 4, 5, 1]
    assert shapes["RO1"].radius == 450
    assert shapes["HX1"].area == pytest.approx(1000 * 866 * 0.75, abs=1e-3)


def test_each_gable_panel_is_built_by_itself_and_mirrored_ones_have_the_same_parts(compiled):
    parts = {build.type.mark: {(p.length, p.how) for p in build.parts} for build in compiled.materials.builds}
    assert {mark for mark in parts if mark.startswith("G")} == {"GGB1", "GGB2", "GGB3", "GGB4"}
    assert parts["GGB1"] == parts["GGB4"]
    assert parts["GGB1"] != parts["GGB2"]


def test_drawings_and_data_have_the_true_outlines(compiled):
    drawn = {build.type.mark: panel_drawing(compiled, build).svg for build in compiled.materials.builds}
    assert drawn["H"].count("<polygon") >= 6
    assert "<ellipse" in drawn["O"]
    assert surface_drawing(compiled, "west wall").svg.count("<polygon") > 4
    assert "<ellipse" in surface_drawing(compiled, "east wall").svg
    assert ceiling_plan(compiled).svg.count("<polygon") >= 2 + 3
    data = PanelData.model_validate(compiled.layout.panels[0]).model_dump()
    assert (len(data["outline_mm"]), data["turned_deg"]) == (6, -20)
