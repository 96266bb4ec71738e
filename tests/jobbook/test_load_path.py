"""The drawing of a load path says what its table says, marks the weakest step, and shows what doesn't hold."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planlang.jobbook import words
from planlang.jobbook.blocks import Figure, Table
from planlang.jobbook.drawings import load_path
from planlang.jobbook.sections.loads import loads
from tests import builders as b
from tests.jobbook.compiled import compiled_plan, loads_of, studio
from tests.jobbook.drawing_checks import parse, texts, words_of

MM = b.style("mm", 1)
POUNDS = b.style("in", b.inches(0, 1, 16))


def first_load(status="holds"):
    return loads_of(studio(), status).panels[0], studio().arrays[0]


def bars(svg):
    """The frames of the bars and what fills them, by their widths, mm."""
    rects = [element for element in parse(svg).iter() if element.tag.endswith("rect") and element.get("x") == "110"]
    return [float(rect.get("width", "0")) for rect in rects if "class" not in rect.attrib]


@pytest.mark.parametrize("status", ["holds", "fails", "not verified"])
@pytest.mark.parametrize("tape", [MM, POUNDS])
def test_every_cell_of_the_table_that_has_a_figure_stands_in_the_drawing(status, tape):
    compiled = compiled_plan(status)
    compiled = replace(compiled, plan=replace(compiled.plan, job=replace(compiled.plan.job, tape=tape)))
    blocks = loads(compiled)
    for load in compiled.loads.panels:
        caption, name = f"Steps from panel to structure, {load.array}", f"load-path-{load.array}"
        table = next(block for block in blocks if isinstance(block, Table) and block.caption == caption)
        drawing = next(one.drawing for one in blocks if isinstance(one, Figure) and one.drawing.name == name)
        said = texts(drawing.svg)
        for step, allowed, _, asked, ratio, stands, _ in table.rows:
            assert f"{asked} of {allowed}" + (f": {stands}" if stands != "holds" else "") in said
            assert ratio in said
            assert str(step).split()[0] in " ".join(said)


def test_the_panel_is_below_and_the_building_above():
    load, array = first_load()
    places = {word.words: word.y for word in words_of(load_path(load, array, MM).svg)}
    downwards = (f"The building at {array.surface}", "eye in joist", "quick link 3.5", "One panel, 4 hang points")
    assert [places[word] for word in downwards] == sorted(places[word] for word in downwards)
    assert places["2"] < places["1"]


def test_the_weakest_of_all_is_marked_once():
    load, array = first_load()
    said = texts(load_path(load, array, MM).svg)
    assert said.count("— weakest step") == 1
    assert said.index("eye in joist") + 1 == said.index("— weakest step")


def test_where_the_second_support_is_weaker_each_chain_says_so():
    load, array = first_load()
    weak = replace(load.steps[0], words="second support: tie", ratio=1.01)
    load = replace(load, second_steps=(weak,), weakest=2)
    assert "— weakest of this chain" in texts(load_path(load, array, MM).svg)
    assert "— weakest step" in texts(load_path(load, array, MM, second=True).svg)


def test_the_bar_is_filled_by_the_share_that_is_asked():
    load, array = first_load()
    step = replace(load.steps[0], ratio=4.0)
    asked, frame = bars(load_path(replace(load, steps=(step,), weakest=0), array, MM).svg)
    assert asked == pytest.approx(frame / 4)
    more, frame = bars(load_path(replace(load, steps=(replace(step, ratio=0.97),), weakest=0), array, MM).svg)
    assert more == pytest.approx(frame / 0.97, abs=0.01)


def test_without_a_figure_there_is_a_frame_and_nothing_in_it():
    load, array = first_load("not verified")
    svg = load_path(replace(load, steps=load.steps[1:], weakest=0), array, MM).svg
    assert len(bars(svg)) == 1
    assert "unknown" in texts(svg)


def test_the_drop_is_dimensioned_where_there_is_one():
    load, array = first_load()
    assert f"drop {words.length(array.hang.drop, MM)}" in texts(load_path(load, array, MM).svg)
    flat = replace(array, hang=replace(array.hang, drop=array.hang.drop * 0))
    assert not any(word.startswith("drop") for word in texts(load_path(load, flat, MM).svg))
