"""The loft with one slip at a time, as people make them: each is one error with a mend, and nothing follows from it."""

from __future__ import annotations

import shutil

import pytest

from planlang.compiler import compile_plan
from tests.plans import DEMOS

LOFT = (DEMOS / "hollowbrook" / "loft.plan").read_text(encoding="utf-8")
SLIPS = [
    ("issue   C of 2026-11-25", "issue   C"),
    ("issue   C of", "issue C on"),
    ("money   GBP", "money   gbp"),
    ("money   GBP", "currency GBP"),
    ("job {", "jobs {"),
    ("job {", "job"),
    ("shop {", "shop"),
    ("shop {", "stop {"),
    ("kerf          3.2", "kerf 3,2"),
    ("spare         10 % of cloth", "spare 10 of cloth"),
    ("spare         10 % of cloth", "spare 10% cloth"),
    ("labour        34 GBP per h", "labour £34 per h"),
    ("labour        34 GBP per h", "labour 34 GBP an hour"),
    ("making        1.4 h per panel", "making 1.4 per panel"),
    ("floor  rectangle 7200 x 5400", "floor 7200 x 5400"),
    ("floor  rectangle 7200 x 5400", "floor rectangle 7200, 5400"),
    ("floor  rectangle 7200 x 5400", "floor rectangle 7.2 x 5.4 m"),
    ("floor  rectangle 7200 x 5400", "rectangle 7200 x 5400"),
    ("flat   collar       at 3000", "flat   collar       3000"),
    ("flat   collar       at 3000", "flat at 3000"),
    ("slope  south-pitch  from south wall at 1500, pitch 40 deg", "slope south-pitch from south at 1500, pitch 40 deg"),
    ("slope  south-pitch  from south wall at 1500, pitch 40 deg", "slope south-pitch from south wall at 1500, 40 deg"),
    ("slope  south-pitch  from south wall at 1500, pitch 40 deg", "slope south-pitch from south wall at 1500"),
    (
        "slope  south-pitch  from south wall at 1500, pitch 40 deg",
        "slope south-pitch from south wall at 1500, pitch 40",
    ),
    ("slope  south-pitch", "slop south-pitch"),
    ("slope  south-pitch", "slope south_pitch"),
    ("ceiling {", "cieling {"),
    ("lining       floor   wood-floor", "lining floor wood floor"),
    ("lining       floor   wood-floor", "lining wood-floor"),
    ("over joists 45 x 120", "over joist 45 x 120"),
    ("at 600 centres,\n                 first at 300\n", "at 600 centres, first 300\n"),
    ("door         d1      on west wall at 1900", "door d1 west wall at 1900"),
    ("door         d1      on west wall at 1900", "door on west wall at 1900"),
    ("door         d1      on west wall at 1900", "door d1 on west at 1900"),
    ("900 x 2050, solid-door", "900 x 2050"),
    ("900 x 2050, solid-door", "900 by 2050, solid-door"),
    ("900 x 2050, solid-door", "900 x 2050 solid door"),
    ("rooflight    R1..R3", "rooflight R1-R3"),
    ("rooflight    R1..R3", "rooflight R1...R3"),
    ("rooflight    R1..R3", "rooflight R1 to R3"),
    ("rooflight    R1..R3", "rooflights R1..R3"),
    ("1200, 3600, 6000, up 500", "1200 3600 6000, up 500"),
    ("1200, 3600, 6000, up 500", "1200, 3600, up 500"),
    ("1200, 3600, 6000, up 500", "1 200, 3 600, 6 000, up 500"),
    ("90 across,", "diameter 90,"),
    ("air          20 C, 45 %", "air 20, 45"),
    ("occupied-by  12 seated-people", "occupied-by seated-people"),
    ("occupied-by  12 seated-people", "occupied by 12 seated-people"),
    ("target    din-18041 A3", "target A3"),
    ("listener  desk     at 3600, 2700, height 1200", "listener desk at 3600 x 2700, height 1200"),
    ("listener  desk     at 3600, 2700, height 1200", "listener desk at 3600, 2700"),
    ("array south-clouds, mark SC {", "array south-clouds {"),
    ("array south-clouds, mark SC {", "array south clouds, mark SC {"),
    ("array south-clouds, mark SC {", "arrey south-clouds, mark SC {"),
    ("array south-clouds, mark SC {", "array, mark SC {"),
    ("array south-clouds, mark SC {", "array mark SC {"),
    ("panel   cloud-1500\n  on      south-pitch", "panel   cloud1500\n  on      south-pitch"),
    ("on      south-pitch", "on south pitch"),
    ("one in each bay between R1..R3", "1 in each bay between R1..R3"),
    ("one in each bay between R1..R3", "one in each bay R1..R3"),
    ("one in each bay between R1..R3", "one per bay between R1..R3"),
    ("one in each bay between R1..R3", "one in each bay between R1 and R3"),
    ("row of 5, gap 600", "row of five, gap 600"),
    ("row of 5, gap 600", "5 in a row, gap 600"),
    ("row of 5, gap 600", "row of 5 gaps 600"),
    (
        "grid 1 across by 1 up, left edge at 322, lowest edge at 900  #",
        "grid 1 x 1, left edge at 322, lowest edge at 900  #",
    ),
    ("left edge at 322, lowest edge at 900  #", "left at 322, lowest at 900  #"),
    (
        "hang    on cleats\n  fix     cleat-screw-5x80 into studs, 2 each\n  keep    100 clear of w1",
        "hang    from cleats\n  fix     cleat-screw-5x80 into studs, 2 each\n  keep    100 clear of w1",
    ),
    ("keep    100 clear of w1", "keep 100 from w1"),
    ("keep    100 clear of w1", "keep clear of w1 100"),
    ("keep    100 clear of w1", "keep    100 clear of w2"),
    (
        "turned  long side up the slope",
        "turned  long side up slope",
    ),
    ("decay   500 Hz to 2000 Hz at most 1 s", "decay 500 to 2000 Hz at most 1 s"),
    ("decay   500 Hz to 2000 Hz at most 1 s", "decay 500 Hz - 2000 Hz at most 1 s"),
    ("decay   500 Hz to 2000 Hz at most 1 s", "decay 500 Hz to 2 kHz < 1 s"),
    ("gap     in north-clouds at least 300", "gap in north-cloud at least 300"),
    ("gap     in north-clouds at least 300", "gap in north-clouds min 300"),
    ("weight  of every panel at most 10 kg", "weight at most 10 kg"),
    ("cost    materials at most 900 GBP", "cost materials at most 900"),
    ("without  west-wall", "without west wall"),
    ("option leaner {", "option {"),
    ('survey 2026-12-03 by "second visit, invented" {', 'survey 3 Dec 2026 by "x" {'),
    ('survey 2026-12-03 by "second visit, invented" {', "survey 2026-12-03 {"),
    ("rooflight  R2, centred at 3590", "rooflight R4, centred at 3590"),
    ('use "../shop/stock.plan"\n', "use ../shop/stock.plan\n"),
    ('use "../shop/stock.plan"\n', 'use "../shop/stok.plan"\n'),
    ("units  mm\n", ""),
    ("units  mm\n", "units millimetres\n"),
    ("units  mm\n", "unit mm\n"),
    ("units  mm\n", "units\n"),
    ("room loft {", "room {"),
    ("room loft {", "room loft\n{"),
    ("room loft {", "rom loft {"),
    ("}\n\nuse-of-room {", "\nuse-of-room {"),
    ("use-of-room {", "use of room {"),
    ('plan   "Reading room, Hollowbrook village library"', "plan Reading room"),
    ('plan   "Reading room, Hollowbrook village library"', 'title "Reading room"'),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new"), SLIPS, ids=[new[:40].replace("\n", " ") for _, new in SLIPS])
def test_one_slip_is_one_error_with_a_mend(tmp_path, old, new):
    assert old in LOFT
    shutil.copytree(DEMOS, tmp_path / "plans")
    plan = tmp_path / "plans" / "hollowbrook" / "loft.plan"
    plan.write_text(LOFT.replace(old, new, 1), encoding="utf-8")
    errors = [finding for finding in compile_plan(plan, for_book=False).findings if finding.is_error]
    assert len(errors) == 1
    assert errors[0].mend
