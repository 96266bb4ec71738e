"""The section through a slope, against trigonometry and against what the checks of the layout say."""

import re
from math import cos, radians, sin
from xml.etree import ElementTree as ET

import pytest

from planlang.compiler import compile_plan
from planlang.jobbook.blocks import Figure, Table
from planlang.jobbook.drawings import profiles, slope_section
from planlang.jobbook.sections.hang import hang
from tests.plans import DEMOS

PITCH, WALL = radians(40), 1500.0  # as the plan of the loft states them


@pytest.fixture(scope="module")
def compiled():
    return compile_plan(DEMOS / "hollowbrook" / "loft.plan").compiled


@pytest.fixture(scope="module", params=["south-pitch", "north-pitch"])
def slope(request, compiled):
    return compiled.room.surface(request.param)


def on_slope(up, off):
    """Level distance from the wall and height of a place so far up a slope and so far off it, by trigonometry."""
    return up * cos(PITCH) + off * sin(PITCH), WALL + up * sin(PITCH) - off * cos(PITCH)


def test_corners_and_points_lie_where_the_pitch_puts_them(compiled, slope):
    (profile,) = profiles(compiled, slope)
    panel = compiled.layout.on(slope.name)[0]
    drop, depth = float(panel.array.hang.drop), float(panel.array.panel.depth)
    lower, upper = float(panel.box.lower), float(panel.box.upper)
    wanted = [
        on_slope(up, off) for up, off in ((lower, drop), (upper, drop), (upper, drop + depth), (lower, drop + depth))
    ]
    for found, place in zip(profile.corners, wanted, strict=True):
        assert found == pytest.approx(place, abs=1e-6)
    ups = sorted({float(point.up) for point in panel.points})
    for (on_surface, at_back, _), up in zip(profile.points, ups, strict=True):
        assert on_surface == pytest.approx(on_slope(up, 0), abs=1e-6)
        assert at_back == pytest.approx(on_slope(up, drop), abs=1e-6)
    assert profile.highest == pytest.approx(max(wanted, key=lambda place: place[1]), abs=1e-6)


def test_the_lowest_corner_is_the_one_that_the_headroom_warning_names(compiled, slope):
    (profile,) = profiles(compiled, slope)
    said = [found.message for found in compiled.warnings if found.code == "low-headroom"]
    heights = {int(re.search(r"is (\d+) mm above the floor", message)[1]) for message in said}
    assert heights == {1660}
    assert profile.lowest[1] == 1660


def test_the_table_and_the_drawing_have_the_same_figures(compiled, slope):
    blocks = hang(compiled)
    (table,) = (block for block in blocks if isinstance(block, Table) and block.caption == f"Heights on {slope.name}")
    drawing = slope_section(compiled, slope)
    assert any(isinstance(block, Figure) and block.drawing == drawing for block in blocks)
    texts = {element.text for element in ET.fromstring(drawing.svg).iter("{http://www.w3.org/2000/svg}text")}
    assert {figure for row in table.rows for figure in row[1:]} <= texts
    names = " ".join(row[0] for row in table.rows)
    panels = compiled.layout.on(slope.name)
    assert all(mark in names for panel in panels for mark in (panel.mark, *(point.name for point in panel.points)))


def test_the_room_is_closed_round_the_section(compiled, slope):
    lines = ET.fromstring(slope_section(compiled, slope).svg).iter("{http://www.w3.org/2000/svg}polyline")
    heavy = (line.attrib["points"] for line in lines if line.attrib["stroke-width"] == "0.7")
    ends = [place for points in heavy for place in points.split()]
    assert len(ends) == 12  # floor, two walls, two slopes, collar
    assert all(ends.count(place) == 2 for place in ends)


def test_level_ceilings_and_walls_have_none(compiled):
    names = [block.drawing.name for block in hang(compiled) if isinstance(block, Figure)]
    assert [name for name in names if name.startswith("section-")] == ["section-south-pitch", "section-north-pitch"]
