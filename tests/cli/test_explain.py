"""`planlang explain`: what it answers, and what it says when it can't."""

from __future__ import annotations

from pathlib import Path

from tests.cli.command import DEMOS, LOFT, break_plan, copy_of_demos, files_in, planlang


def test_a_figure_is_explained_and_nothing_is_written(tmp_path: Path) -> None:
    done = planlang("explain", DEMOS / LOFT, "sheets", "birch-ply-12", cwd=tmp_path)
    assert (done.status, done.said) == (0, "")
    assert done.out.startswith("sheets birch-ply-12: 2\n  formula  ")
    assert "shop/stock.plan:6  sheet birch-ply-12 {" in done.out
    assert files_in(tmp_path) == {}


def test_left_out_all_names_are_listed_and_each_can_be_asked_for(tmp_path: Path) -> None:
    names = planlang("explain", DEMOS / LOFT, cwd=tmp_path).out.splitlines()
    assert len(names) > 100
    for name in (names[0], names[40], names[-1]):
        assert planlang("explain", DEMOS / LOFT, *name.split(), cwd=tmp_path).out.startswith(f"{name}: ")


def test_a_misspelt_one_is_answered_with_what_is_near(tmp_path: Path) -> None:
    done = planlang("explain", DEMOS / LOFT, "hang", "SC2.bb", "across", cwd=tmp_path)
    assert (done.status, done.out) == (2, "")
    assert "the book has no figure `hang SC2.bb across`; did you mean `hang SC2.b across`" in done.said


def test_with_an_option_and_without_one_that_there_is(tmp_path: Path) -> None:
    done = planlang("explain", DEMOS / LOFT, "panel", "NC2", "--option", "leaner", cwd=tmp_path)
    assert (done.status, "row of 3" in done.out) == (0, True)
    assert planlang("explain", DEMOS / LOFT, "panel", "NC2", "--option", "richer", cwd=tmp_path).status == 2


def test_a_plan_with_errors_says_them_instead(tmp_path: Path) -> None:
    plan = copy_of_demos(tmp_path) / LOFT
    break_plan(plan)
    done = planlang("explain", plan, "decay", cwd=tmp_path)
    assert (done.status, done.out) == (1, "")
    assert "there is no surface `south-pich`" in done.said
