"""Panels taken apart: each part once, and the drawing, its description and the table say the same. Panels are
invented."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.jobbook.drawings import panel_drawing
from planlang.jobbook.drawings.exploded import exploded_drawing, item_words
from planlang.jobbook.sections.shop import shop
from planlang.materials.exploded import apart
from planlang.materials.kinds import resolve_panel
from planlang.materials.model import PanelBuild
from planlang.plan.outline import Outline
from planlang.plan.panel import PanelType, ShadowGap
from planlang.plan.tape import METRIC
from planlang.syntax.span import NOWHERE
from tests import builders as b
from tests.jobbook import drawing_samples as samples
from tests.jobbook.drawing_checks import faults, texts
from tests.materials.test_diffuser import diffuser, wells
from tests.materials.test_further_kinds import baffle, membrane, trap
from tests.materials.test_joints_and_backs import back_board, board_panel, facing
from tests.materials.test_outlined import HEXAGON, mitred, outline

LONG = "a sheet whose words go on and on, as the maker's catalogue has them, with a size and a colour"
KINDS: dict[str, PanelType] = {
    "framed": b.panel_type(),
    "framed, all of it": b.panel_type(depth=F(100), facing=facing(), back=None, board=back_board()),
    "joints": b.panel_type(length=F(2400), width=F(1300), front=b.panel_type().front),
    "long words": b.panel_type(frame=replace(b.panel_type().frame, sheet=b.sheet(words=LONG), full="sides")),
    "board": board_panel(),
    "shadow gap": b.panel_type(depth=F(92), gap=ShadowGap(at=NOWHERE, sheet=b.sheet(), width=F(40), inset=F(20))),
    "raking": mitred(),
    "hexagon": mitred(width=F(1000), length=F(866), outline=outline(HEXAGON)),
    "disc": board_panel(length=F(600), outline=Outline(at=NOWHERE, shape="circle", corners=((F(300), F(300)),),
                                                       radius=F(300))),
    "diffuser": diffuser(),
    "many wells": diffuser(wells=wells(periods=3), width=F(21 * 72 + 22 * 12)),
    "membrane": membrane(),
    "triangular": trap(),
    "square": trap(shape="square"),
    "baffle": baffle(),
    "tiny baffle": baffle(length=F(200), depth=F(100), hung_by=None),
}  # fmt: skip


def built(name: str) -> PanelBuild:
    outcome = resolve_panel(KINDS[name], ("W1", "W2"), METRIC)
    assert outcome.value is not None, outcome.diagnostics
    return outcome.value


@pytest.mark.parametrize("name", KINDS)
def test_each_part_and_piece_is_in_one_layer(name: str):
    build = built(name)
    shown = [mark for layer in apart(build) for mark in layer.marks]
    assert sorted(shown) == sorted(item.mark for item in (*build.parts, *build.pieces))
    assert all(layer.solids for layer in apart(build))


@pytest.mark.parametrize("name", KINDS)
def test_the_drawing_is_readable_and_says_what_the_table_says(name: str):
    build = built(name)
    drawing = exploded_drawing(samples.loft(), build)
    assert faults(drawing.svg) == []
    words = " ".join(texts(drawing.svg))
    height = float(drawing.svg.split('viewBox="0 0 180 ')[1].split('"')[0])
    assert height < 250, "an A4 page has 297 mm, less its margins and a caption"
    for number, layer in enumerate(apart(build), 1):
        assert f"{number} {', '.join(layer.marks)}" in words
        for item in layer.items:
            assert item_words(item) in words
            assert f"{item.per_panel} x {item.mark}, {item_words(item)}" in drawing.description


@pytest.mark.parametrize("name", ["shadow gap", "membrane", "triangular", "square", "baffle", "tiny baffle"])
def test_the_drawings_of_the_further_kinds_have_no_faults(name: str):
    drawing = panel_drawing(samples.loft(), built(name))
    assert faults(drawing.svg) == []
    assert KINDS[name].mark in drawing.title


def test_the_sides_of_another_outline_have_their_settings_in_the_table():
    # a raking panel of 600 x 1500 and 900: corners of 90, 90, 45 and 135 degrees, bevels 45, 45, 90 - 22.5 and 22.5
    found = [(each.mark, each.where.split(" end")[0], round(each.bevel_deg, 1)) for each in built("raking").settings]
    assert found == [
        ("C-S1", "both", 45),
        *(("C-S2", "one", 45), ("C-S2", "the other", 67.5)),
        *(("C-S3", "one", 22.5), ("C-S3", "the other", 67.5)),
        *(("C-S4", "one", 22.5), ("C-S4", "the other", 45)),
    ]
    assert {each.mark for each in built("raking").settings} <= {part.mark for part in built("raking").parts}
    assert [(each.mark, round(each.bevel_deg, 1)) for each in built("hexagon").settings] == [("C-S", 30)]


def test_solids_are_as_large_as_the_parts_that_they_stand_for():
    """Volume of all blocks of a layer against that of its parts, where none is a sheet of cloth."""
    build = built("framed, all of it")
    for layer in apart(build):
        if layer.sheet or "C-S" in layer.marks:
            continue
        drawn = sum((solid.end - solid.start) * area(solid.outline) for solid in layer.solids)
        cut = sum(item.per_panel * item.length * item.width * thickness(item) for item in layer.items)
        assert drawn == cut
    ring = next(layer for layer in apart(build) if "C-S" in layer.marks)
    drawn = sum((solid.end - solid.start) * area(solid.outline) for solid in ring.solids)
    assert drawn == sum(item.per_panel * item.length * item.width * thickness(item) for item in ring.items)


def thickness(item: object) -> F:
    return (getattr(item, "sheet", None) or item.stock).thickness  # type: ignore[attr-defined]


def area(outline: tuple[tuple[F, F], ...]) -> F:
    """By the shoelace formula."""
    pairs = zip(outline, (*outline[1:], outline[0]), strict=True)
    return sum((a[0] * c[1] - c[0] * a[1] for a, c in pairs), F(0)) / 2


def test_every_build_card_has_its_drawing_and_its_table():
    compiled = samples.loft()
    captions = [getattr(block, "caption", "") for block in shop(compiled)]
    for build in compiled.materials.builds:
        assert f"Taken apart, front to back: {build.type.name}" in captions
