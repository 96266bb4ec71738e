"""Ceiling and parts as DXF, read back by the library's own reader and held against the layout."""

import io
import os
import subprocess
import sys
from dataclasses import replace
from fractions import Fraction as F
from itertools import pairwise
from pathlib import Path

import pytest

from planlang.jobbook.dxf.ceiling import ceiling_dxf
from planlang.jobbook.dxf.parts import parts_dxf
from planlang.jobbook.dxf.sheet import Sheet
from planlang.plan.room import Solid
from planlang.syntax.span import NOWHERE
from tests import builders
from tests.jobbook.compiled import compiled_plan, with_every_text
from tests.jobbook.hostile import HOSTILE

ROOT = Path(__file__).parents[2]

try:
    import ezdxf
except ModuleNotFoundError:
    if os.environ.get("CI") == "true":
        raise
    pytest.skip("ezdxf is not installed (it is in the extras `cnc` and `test`)", allow_module_level=True)


def read(content):
    document = ezdxf.read(io.StringIO(content.decode("utf-8")))
    faults = document.audit()
    assert not faults.errors and not faults.fixes
    return document


def outlines(document, layer):
    found = document.modelspace().query(f'LWPOLYLINE[layer=="{layer}"]')
    assert all(line.closed for line in found)
    return [[(round(x, 3), round(y, 3)) for x, y in line.get_points("xy")] for line in found]


def texts(document):
    return [text.dxf.text for text in document.modelspace().query("TEXT")]


@pytest.fixture(scope="module")
def compiled():
    return compiled_plan()


@pytest.mark.parametrize("made", [ceiling_dxf, parts_dxf])
def test_units_are_millimetres_and_the_issue_is_in_it(made, compiled):
    document = read(made(compiled))
    assert document.header["$INSUNITS"] == 4
    assert any("Issue C." in text for text in texts(document))
    assert not any("NOT FOR HANGING" in text for text in texts(document))


def test_panels_on_the_ceiling_lie_where_the_layout_has_them(compiled):
    document = read(ceiling_dxf(compiled))
    panels = [panel for panel in compiled.layout.panels if panel.surface == "ceiling"]
    assert outlines(document, "PANELS") == [[(x, y) for x, y, _ in panel.corners_room] for panel in panels]
    centres = {
        tuple(round(v, 3) for v in (c.dxf.center.x, c.dxf.center.y))
        for c in document.modelspace().query('CIRCLE[layer=="HANG-POINTS"]')
    }
    assert centres == {tuple(point.room[:2]) for panel in panels for point in panel.points}
    (walls,) = outlines(document, "WALLS")
    room = compiled.plan.room
    assert walls[2] == (float(room.width), float(room.depth))


def test_marks_stand_in_the_middle_of_panels_and_beside_small_things(compiled):
    """Text of a height is taken to be as wide a letter: 80 for marks of panels, 40 for names of things."""
    document = read(ceiling_dxf(compiled))
    places = {}
    for text in document.modelspace().query("TEXT"):
        align, at, _ = text.get_placement()
        places[text.dxf.text] = (align.name, round(at.x, 3), round(at.y, 3))
    for panel in (panel for panel in compiled.layout.panels if panel.surface == "ceiling"):
        east, north = (sum(corner[axis] for corner in panel.corners_room) / 4 for axis in (0, 1))
        assert places[panel.mark] == ("MIDDLE_CENTER", round(east, 3), round(north, 3))


@pytest.mark.parametrize(("wide", "align", "x"), [(81, "MIDDLE_CENTER", 40.5), (80, "MIDDLE_LEFT", 100)])
def test_text_stands_beside_what_is_too_narrow_for_it(wide, align, x):
    sheet = Sheet()
    sheet.text_in([(0, 0), (wide, 0), (wide, 60), (0, 60)], "L1", 40)
    (text,) = read(sheet.content()).modelspace().query("TEXT")
    found, at, _ = text.get_placement()
    assert (found.name, at.x, at.y) == (align, x, 30)


def test_columns_have_their_names(compiled):
    corners = tuple((F(x), F(y)) for x, y in ((1000, 1000), (1300, 1000), (1300, 1300), (1000, 1300)))
    column = Solid(
        at=NOWHERE, kind="column", name="P7", corners=corners, faces=(), level=F(0), lining=builders.lining()
    )
    room = replace(compiled.plan.room, solids=(column,))
    document = read(ceiling_dxf(replace(compiled, plan=replace(compiled.plan, room=room))))
    (text,) = [text for text in document.modelspace().query("TEXT") if text.dxf.text == "P7"]
    assert (text.get_placement()[1].x, text.get_placement()[1].y) == (1150, 1150)


def test_each_part_is_a_rectangle_of_its_finished_size_on_the_layer_of_its_stock(compiled):
    document = read(parts_dxf(compiled))
    wanted = sorted(
        (part.sheet.name, float(part.length), float(part.width)) for b in compiled.materials.builds for part in b.parts
    )
    found = []
    for stock in {part.sheet.name for build in compiled.materials.builds for part in build.parts}:
        for (x0, y0), _, (x1, y1), _ in outlines(document, f"CUT-{stock}"):
            found.append((stock, x1 - x0, y1 - y0))
    assert sorted(found) == wanted


def test_outlines_of_parts_do_not_touch(compiled):
    boxes = [
        (points[0][1], points[2][1])
        for layer in read(parts_dxf(compiled)).layers
        if layer.dxf.name.startswith("CUT-")
        for points in outlines(read(parts_dxf(compiled)), layer.dxf.name)
    ]
    boxes.sort()
    assert all(one[1] < other[0] for one, other in pairwise(boxes))


@pytest.mark.parametrize("made", [ceiling_dxf, parts_dxf])
def test_it_says_when_nothing_may_be_hung(made):
    document = read(made(compiled_plan("fails")))
    (alarm,) = document.modelspace().query('TEXT[layer=="NOT-FOR-HANGING"]')
    assert alarm.dxf.text == "NOT FOR HANGING"


@pytest.mark.parametrize("made", [ceiling_dxf, parts_dxf])
@pytest.mark.parametrize("text", ["%%u%%c", "\\U+0041{\\H9;x}", "^I^J", *HOSTILE], ids=range(3 + len(HOSTILE)))
def test_hostile_text_is_a_line_of_text_and_nothing_else(made, text, compiled):
    calm, document = read(made(compiled)), read(made(with_every_text(compiled, text)))
    kinds = [entity.dxftype() for entity in calm.modelspace()]
    assert [entity.dxftype() for entity in document.modelspace()] == kinds
    assert not [words for words in texts(document) if "%%" in words or "\\" in words or len(words) > 250]


def test_bytes_do_not_depend_on_moment_process_or_hash_seed():
    script = (
        "import hashlib, sys; from planlang.jobbook.files import dxf_files\n"
        "from tests.jobbook.compiled import compiled_plan\n"
        "print([hashlib.sha256(content).hexdigest() for content in dxf_files(compiled_plan()).values()])"
    )
    runs = {
        subprocess.run(
            [sys.executable, "-c", script], cwd=ROOT, capture_output=True, check=True,
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT)},
        ).stdout
        for seed in ("1", "2")
    }  # fmt: skip
    assert len(runs) == 1
