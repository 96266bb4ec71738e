"""What the drawings say: values from the datum, in the right place and at the right scale."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.geometry.footprint import Footprint
from planlang.jobbook.drawings import (
    ceiling_plan,
    decay_chart,
    panel_drawing,
    ray_curves,
    roll_drawing,
    sheet_drawing,
    surface_drawing,
)
from planlang.jobbook.drawings.cut_lines import cut_lines
from planlang.jobbook.drawings.surface import _begins
from planlang.materials.cutting.demand import Demand
from planlang.materials.cutting.sheets import cut_sheets
from planlang.materials.model import Cutting, SheetLayout
from planlang.plan.room import Solid
from planlang.plan.tape import on_tape
from planlang.syntax.span import NOWHERE
from tests import builders as b
from tests.jobbook import drawing_samples as samples
from tests.jobbook.drawing_checks import SPACE, faults, parse, texts, words_of

MM = b.style("mm", 1)


def rects(svg: str) -> list[tuple[float, float, float, float]]:
    return [
        tuple(float(rect.get(key, "nan")) for key in ("x", "y", "width", "height"))
        for rect in parse(svg).iter(f"{SPACE}rect")
        if rect.get("stroke")
    ]


def test_surface_says_every_edge_and_hang_point_from_the_datum():
    words = texts(surface_drawing(samples.loft(), "south-pitch").svg)
    for edge in ("1700", "2300", "3300", "3900", "4900", "5500", "400", "1900"):
        assert words.count(edge) == 1, edge
    for hang in ("1706", "2294", "3306", "3894", "4906", "5494", "500", "1800"):
        assert words.count(hang) == 1, hang
    for mark in ("SC1", "SC2", "SC3", "R1", "R4"):
        assert mark in words
    assert words.count("a") == words.count("d") == 3


def test_imperial_lengths_are_on_the_tape():
    words = texts(surface_drawing(samples.lesson_room(), "ceiling").svg)
    assert '22 5/16"' in words
    assert '154 5/16"' in words


def test_panels_are_drawn_to_the_scale_that_is_named():
    svg = surface_drawing(samples.loft(), "south-pitch").svg
    ratio = float(re.search(r"1\u00a0:\u00a0([\d.]+) where", " ".join(texts(svg)))[1])
    sizes = [(width, height) for _, _, width, height in rects(svg)]
    wanted = (600 / ratio, 1500 / ratio)
    alike = [size for size in sizes if size == pytest.approx(wanted, abs=0.011)]
    assert len(alike) == 3


def test_labels_stand_at_what_they_measure():
    svg = surface_drawing(samples.loft(), "south-pitch").svg
    at = {word.words: word.x for word in words_of(svg)}
    assert (at["5500"] - at["1700"]) == pytest.approx((5500 - 1700) / 50, abs=0.02)
    assert at["1700"] < at["2300"] < at["3300"]


def test_ceiling_plan_has_level_dimensions_and_says_so():
    svg = ceiling_plan(samples.loft()).svg
    words = texts(svg)
    assert {"N", "SC1", "L1", "d1", "w1", "1700", "345", "1494"} <= set(words)
    assert "slope" in " ".join(words)
    assert "slope" not in " ".join(texts(ceiling_plan(samples.lesson_room()).svg))


def test_ceiling_plan_puts_the_south_slope_below_the_north_slope():
    at = {word.words: word for word in words_of(ceiling_plan(samples.loft()).svg)}
    assert at["south-pitch"].y > at["collar"].y > at["north-pitch"].y
    assert at["w1"].x > at["d1"].x


def test_every_mark_is_written_or_named_as_left_out():
    plan = samples.hall(14, 5)
    words = texts(surface_drawing(plan, "ceiling").svg)
    said = " ".join(words)
    for panel in plan.layout.panels:
        assert re.search(rf"\b{panel.mark}\b", said), panel.mark


def test_panel_says_where_braces_joints_eyes_and_layers_are():
    words = texts(panel_drawing(samples.lesson_room(), samples.tape_build()).svg)
    for value in ('24"', '36"', '48"', '48 5/8"', '72"', '4"', '68"', '1/4"', '7/8"', '3 7/8"'):
        assert value in words, value
    assert any("1/8" in line and "free" in line for line in words)


def test_cleats_are_measured_from_the_upper_edge():
    hung = b.panel_type(name="wall", mark="W", hung_by=b.cleats(), length=F(1200))
    words = texts(panel_drawing(samples.loft(), samples.build(hung, panels=("BW1",))).svg)
    assert {"60", "100", "500", "Back, as it hangs"} <= set(words)


def test_roll_is_folded_only_where_no_piece_is_cut():
    svg = roll_drawing(samples.roll(21), MM).svg
    words = texts(svg)
    assert words.count("C-F 1760 x 760") + words.count("C-F  1760 x 760") == 11
    assert "19360" in words


def test_sheet_numbers_its_cuts_and_sizes_its_offcuts():
    words = texts(sheet_drawing(samples.cutting(), 0, MM).svg)
    assert {str(number) for number in range(1, 13)} <= set(words)
    assert "2440 x 722" in words


DEMANDS = (
    Demand("S", F(1476), F(80), 10, False),
    Demand("E", F(600), F(80), 10, False),
    Demand("B", F(576), F(60), 8, False),
    Demand("T", F(500), F(333), 3, True),
)


@pytest.mark.parametrize("trim", [0, 5])
def test_cut_lines_follow_the_cuts_of_a_real_layout(trim: int):
    result = cut_sheets(F(2440), F(1220), F(3), F(trim), (F(300), F(100)), DEMANDS)
    assert result.layouts
    for layout in result.layouts:
        lines = cut_lines(layout, F(2440), F(1220))
        assert [line.number for line in lines] == [cut.number for cut in layout.cuts]
        assert not any(_goes_through(line, part) for line in lines for part in layout.parts)
        assert _edges_cut(layout, lines, trim)
    cutting = Cutting(b.sheet(), result.layouts, result.used, 1, F(0))
    for index in range(len(result.layouts)):
        assert faults(sheet_drawing(cutting, index, MM).svg) == []


def _reach(part) -> tuple[F, F]:
    return (part.width, part.length) if part.turned else (part.length, part.width)


def _goes_through(line, part) -> bool:
    along, across = _reach(part)
    if line.y1 == line.y2:
        return part.y < line.y1 < part.y + across and line.x1 < part.x + along and part.x < line.x2
    return part.x < line.x1 < part.x + along and line.y1 < part.y + across and part.y < line.y2


def _edges_cut(layout: SheetLayout, lines, trim: int) -> bool:
    """Every part's far edges lie on a cut or on the sheet's edge."""
    across = {(line.y1) for line in lines if line.y1 == line.y2} | {F(1220), F(1220 - trim)}
    along = {(line.x1) for line in lines if line.x1 == line.x2} | {F(2440), F(2440 - trim)}
    ends = [(part.x + _reach(part)[0], part.y + _reach(part)[1]) for part in layout.parts]
    return all(x in along and y in across for x, y in ends)


def test_decay_chart_draws_ranges_beyond_the_scale_and_unknown_values():
    base = samples.acoustics()
    wild = replace(base.decay_before, high=(float("inf"),) * 6, sabine=(float("inf"), *base.decay_before.sabine[1:]))
    drawing = decay_chart(replace(base, decay_before=wild))
    assert faults(drawing.svg) == []


def test_decay_chart_has_the_figures_as_words():
    words = texts(decay_chart(samples.acoustics()).svg)
    assert {
        "125 Hz",
        "4 kHz",
        "now, s",
        "with panels, s",
        "wanted, s",
        "0.42 to 0.62",
        "at least 0.35",
        "not asked",
    } <= set(words)


def test_decay_curves_by_rays_say_when_they_are_down_by_so_much():
    drawing = ray_curves(samples.acoustics(), samples.rays())
    words = texts(drawing.svg)
    # 60 dB in 0.2 to 0.4 s: 10, 20, 30 dB in a sixth, a third, a half of that
    assert {"to −10 dB, s", "0.033 to 0.067", "0.066 to 0.14", "0.10 to 0.20", "not read"} <= set(words)
    assert "30 dB: 125 Hz in 0.10 to 0.20" in drawing.description


def test_ceiling_plan_gives_lights_and_vents_their_own_running_dimensions():
    room = samples.lesson_room()
    placed = [one for one in room.room.features if one.feature.surface == "ceiling"]
    assert placed
    svg = ceiling_plan(room).svg
    at = {word.words: word for word in words_of(svg)}
    for one in placed:
        for centre in (one.feature.across, one.feature.up):
            assert on_tape(centre, room.plan.job.tape, with_unit=False) in at
    assert faults(svg) == []


def test_a_line_out_begins_where_the_panel_is_on_that_edge():
    """A raking top: its highest corner is on the right, the line to the dimension on the left begins there."""
    room = samples.loft()
    one = room.layout.panels[0]
    box = one.box
    corners = ((box.left, box.lower), (box.right, box.lower), (box.right, box.upper), (box.left, box.upper - 500))
    raking = replace(one, shape=Footprint(corners))
    assert _begins(one, 1, box.upper) == float(box.left) and _begins(raking, 1, box.upper) == float(box.right)
    assert _begins(raking, 1, box.lower) == float(box.left) and _begins(raking, 0, box.left) == float(box.lower)
    disc = replace(one, shape=Footprint((((box.left + box.right) / 2, (box.lower + box.upper) / 2),), box.width / 2))
    assert _begins(disc, 0, box.left - 1) == float(box.lower)


def test_columns_are_named_on_the_ceiling_and_its_plan():
    room = samples.hall()
    ceiling = next(surface for surface in room.room.surfaces if surface.kind == "ceiling")
    corners = tuple((F(x), F(y)) for x, y in ((50, 50), (650, 50), (650, 650), (50, 650)))
    column = Solid(at=NOWHERE, kind="column", name="P7", corners=corners, faces=(), level=F(0), lining=b.lining())
    east, north = ceiling.origin[:2]
    hole = [(float(x) - east, float(y) - north) for x, y in corners]
    start = ceiling.outline[0]
    cut = replace(ceiling, outline=(*ceiling.outline, start, *hole[::-1], hole[-1]))
    surfaces = tuple(cut if each is ceiling else each for each in room.room.surfaces)
    changed = replace(
        room,
        plan=replace(room.plan, room=replace(room.plan.room, solids=(column,))),
        room=replace(room.room, surfaces=surfaces),
    )
    for drawing in (ceiling_plan(changed), surface_drawing(changed, ceiling.name)):
        assert "P7" in texts(drawing.svg) and faults(drawing.svg) == []
    assert "P7" not in texts(surface_drawing(room, ceiling.name).svg)
