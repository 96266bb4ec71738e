"""Every drawing: well-formed, within its paper, no text over another, nothing a page's policy would forbid."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.jobbook.drawings import (
    absorption_chart,
    ceiling_plan,
    decay_chart,
    load_path,
    panel_drawing,
    ray_curves,
    roll_drawing,
    sheet_drawing,
    surface_drawing,
)
from tests import builders as b
from tests.jobbook import compiled
from tests.jobbook import drawing_samples as samples
from tests.jobbook.drawing_checks import faults, parse, text_faults, texts

MM = b.style("mm", 1)
SIXTEENTHS = b.style("in", b.inches(0, 1, 16))
FEET = b.style("ft-in", b.inches(0, 1, 16))
LONG = "a stock whose words go on and on, as the maker's catalogue has them, with sizes 1200 x 600 and a colour" * 2
HOSTILE = '<script>alert("x")</script>&amp;\u202e\x00\x1b]]>'


def wall_build():
    hung = b.panel_type(name="wall", mark="W", hung_by=b.cleats(), length=F(1200), braces=None)
    return samples.build(hung, braces=(), joints=(), panels=("BW1",))


def long_words_build():
    return samples.build(b.panel_type(core=replace(b.panel_type().core, batt=b.batt(words=LONG))))


def load_of(status, added="", second=False):
    array = compiled.studio().arrays[0]
    load = compiled.loads_of(compiled.studio(), status).panels[0]
    steps = tuple(replace(step, words=step.words + added) for step in load.steps)
    if second:
        return load_path(replace(load, second_steps=steps), array, MM, second=True)
    return load_path(replace(load, steps=steps), array, SIXTEENTHS if added else MM)


DRAWINGS = {
    "plan of the loft": lambda: ceiling_plan(samples.loft()),
    "plan of the lesson room": lambda: ceiling_plan(samples.lesson_room()),
    "plan of the hall": lambda: ceiling_plan(samples.hall()),
    "plan of the small room": lambda: ceiling_plan(samples.small_room()),
    "slope": lambda: surface_drawing(samples.loft(), "south-pitch"),
    "gable wall": lambda: surface_drawing(samples.loft(), "west wall"),
    "bare wall": lambda: surface_drawing(samples.loft(), "east wall"),
    "imperial ceiling": lambda: surface_drawing(samples.lesson_room(), "ceiling"),
    "crowded ceiling": lambda: surface_drawing(samples.hall(), "ceiling"),
    "more crowded ceiling": lambda: surface_drawing(samples.hall(14, 5), "ceiling"),
    "small ceiling": lambda: surface_drawing(samples.small_room(), "ceiling"),
    "cloud": lambda: panel_drawing(samples.loft(), samples.build()),
    "imperial cloud": lambda: panel_drawing(samples.lesson_room(), samples.tape_build()),
    "wall panel": lambda: panel_drawing(samples.loft(), wall_build()),
    "panel with long words": lambda: panel_drawing(samples.loft(), long_words_build()),
    "sheet": lambda: sheet_drawing(samples.cutting(), 0, MM),
    "sheet in feet": lambda: sheet_drawing(samples.cutting(), 0, FEET),
    "roll": lambda: roll_drawing(samples.roll(), MM),
    "long roll": lambda: roll_drawing(samples.roll(31), SIXTEENTHS),
    "decay": lambda: decay_chart(samples.acoustics()),
    "absorption": lambda: absorption_chart(samples.acoustics()),
    "load path": lambda: load_of("holds"),
    "load path that fails": lambda: load_of("fails"),
    "load path with no figure": lambda: load_of("not verified"),
    "second support": lambda: load_of("holds", second=True),
    "load path with long words": lambda: load_of("holds", LONG * 40),
    "decay curves": lambda: ray_curves(samples.acoustics(), samples.rays()),
}


@pytest.mark.parametrize("name", DRAWINGS)
def test_drawing_has_no_faults(name: str):
    drawing = DRAWINGS[name]()
    assert faults(drawing.svg) == []
    assert drawing.description
    assert drawing.title


@pytest.mark.parametrize("name", DRAWINGS)
def test_ids_are_prefixed_and_drawing_is_named(name: str):
    drawing = DRAWINGS[name]()
    root = parse(drawing.svg)
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    assert ids
    assert all(identity.startswith(f"{drawing.name}-") for identity in ids)
    assert root[0].text == drawing.title
    assert root[1].text == drawing.description


def test_the_checker_finds_overlaps_and_overruns():
    drawing = DRAWINGS["slope"]().svg
    first, second = texts(drawing)[:2]
    same_place = drawing.replace(
        "</svg>", '<text x="5" y="5" font-size="3">one</text><text x="6" y="5" font-size="3">two</text></svg>'
    )
    assert "'one' covers 'two'" in text_faults(same_place)
    assert text_faults(drawing.replace("</svg>", '<text x="179" y="5" font-size="3">off</text></svg>'))
    assert first != second


def test_two_runs_give_the_same_bytes():
    program = (
        "from tests.jobbook.test_drawings import DRAWINGS; import hashlib; "
        "print(hashlib.sha256(''.join(make().svg for make in DRAWINGS.values()).encode()).hexdigest())"
    )
    runs = [
        subprocess.run(
            [sys.executable, "-c", program],
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": "."},
            capture_output=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    ]
    assert runs[0] == runs[1]


def test_words_of_the_plan_stay_words():
    plan = samples.loft()
    placed = plan.room.features[0]
    named = replace(placed, feature=replace(placed.feature, name=HOSTILE))
    plan = replace(plan, room=replace(plan.room, features=(named, *plan.room.features[1:])))
    cutting = replace(samples.cutting(), stock=b.sheet(words=HOSTILE, name=HOSTILE))
    for drawing in (surface_drawing(plan, "south-pitch"), sheet_drawing(cutting, 0, MM)):
        assert faults(drawing.svg) == []
        assert "<script" not in drawing.svg
        assert any('<script>alert("x")' in words for words in texts(drawing.svg))
        assert any("‹U+202E›" in words for words in texts(drawing.svg))
        assert "\u202e" not in drawing.svg


def test_a_stranger_surface_is_an_error():
    with pytest.raises(KeyError):
        surface_drawing(samples.loft(), "moon")
