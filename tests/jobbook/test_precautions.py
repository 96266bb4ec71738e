"""Notes on saws, fibres, staples and glue stand in the book only where its steps use them."""

from dataclasses import replace

import pytest

from planlang.compiler import compile_plan
from planlang.jobbook.sections import precautions
from planlang.jobbook.sections.precautions import before_work
from tests.plans import SMALL


@pytest.fixture(scope="module")
def compiled(tmp_path_factory):
    folder = tmp_path_factory.mktemp("precautions")
    (folder / ".planlang").touch()
    (folder / "small.plan").write_text(SMALL, encoding="utf-8")
    return compile_plan(folder / "small.plan").compiled


def test_a_framed_panel_is_sawn_filled_stapled_and_hung_overhead(compiled):
    lines = before_work(compiled)
    wanted = ("SAW", "SHEET_DUST", "STAPLES", "GLUE", "OVERHEAD", "ON_LINKS", "LIFTING", "INTO_MEMBERS", "BOARD")
    assert [name for name in wanted if getattr(precautions, name) not in lines] == []
    assert sum(line in lines for line in (precautions.FIBRE, precautions.FIBRE_WHOLE)) == 1


@pytest.mark.parametrize(
    ("without", "gone"),
    [
        ({"sheets": (), "sticks": ()}, ("SAW", "SHEET_DUST")),
        ({"batts": ()}, ("FIBRE", "FIBRE_WHOLE")),
        ({"builds": ()}, ("STAPLES", "GLUE")),
    ],
)
def test_what_no_step_does_is_not_warned_of(compiled, without, gone):
    lines = before_work(replace(compiled, materials=replace(compiled.materials, **without)))
    assert not any(getattr(precautions, name) in lines for name in gone)
    assert len(lines) >= len(before_work(compiled)) - len(gone)


def test_glue_and_staples_are_told_apart(compiled):
    (build,) = compiled.materials.builds
    dry = replace(build, glue_m=0, steps=())
    loose = replace(build, fastenings=tuple(each for each in build.fastenings if "staple" not in each[0]))
    for made, has, has_not in ((dry, "STAPLES", "GLUE"), (loose, "GLUE", "STAPLES")):
        lines = before_work(replace(compiled, materials=replace(compiled.materials, builds=(made,))))
        assert getattr(precautions, has) in lines
        assert getattr(precautions, has_not) not in lines
