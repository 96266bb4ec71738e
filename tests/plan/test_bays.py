"""Sizes from the place: panels cut to the bays that they hang in."""

from fractions import Fraction as F

import pytest

from planlang.compiler import compile_plan
from planlang.jobbook.book import write_book
from tests.plans import SMALL, read_text

CHANGES = (
    ("  absorber  framed\n", "  takes     width 600\n  absorber  framed\n"),
    ("face      600 x 1200", "face      width x 1200"),
    ("  door     d1", "  luminaire L1..L4 on ceiling centred at 1000, 1700, 2500, 3200, up 2800, 100 across\n door d1"),
    ("grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600", "one in each bay between L1..L4, "
     "lowest edge at 1400"),
    ("  panel   cloud\n", "  panel   cloud, with width bay less 12\n"),
    ("  hang    from eyes on eye", "  turned  long side up\n  hang    from eyes on eye"),
)  # fmt: skip


def text_of(*more):
    text = SMALL
    for old, new in (*CHANGES, *more):
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return text


def test_each_panel_is_its_bay_less_what_the_plan_says(tmp_path):
    plan, findings = read_text(tmp_path, text_of())
    assert findings == ()
    # by hand: from 1000 + 50 to 1700 - 50 are 600, to 2500 - 50 from 1700 + 50 are 700, and 600 again
    assert [(a.name, a.family, a.first, a.panel.width, a.panel.mark, a.placement.features) for a in plan.arrays] == [
        ("clouds-1", "clouds", 1, 588, "C588", ("L1", "L2")),
        ("clouds-2", "clouds", 2, 688, "C688", ("L2", "L3")),
        ("clouds-3", "clouds", 3, 588, "C588", ("L3", "L4")),
    ]
    assert [(cut.bay, cut.less) for array in plan.arrays for cut in array.cut_to] == [(600, 12), (700, 12), (600, 12)]
    assert len(set(plan.assumptions)) == len(plan.assumptions)


def test_bays_that_are_alike_make_one_array(tmp_path):
    plan, findings = read_text(tmp_path, text_of(("1000, 1700, 2500, 3200", "1000, 1700, 2400, 3100")))
    assert findings == ()
    assert [(array.name, array.panel.width) for array in plan.arrays] == [("clouds", 588)]
    assert len(plan.arrays[0].cut_to) == 3


def test_a_survey_moves_the_bays_and_so_the_cuts(tmp_path):
    survey = '\nsurvey 2026-12-03 by "second visit, invented" {\n  luminaire L2, centred at 1704.5\n}\n'
    plan, findings = read_text(tmp_path, text_of() + survey)
    assert findings == ()
    assert [array.panel.width for array in plan.arrays] == [F(1185, 2), F(1367, 2), 588]


def test_the_whole_book_is_made_of_the_cut_sizes(tmp_path):
    (tmp_path / "a.plan").write_text(text_of() + "\nrequire {\n  gap in clouds at least 100\n}\n")
    compilation = compile_plan(tmp_path / "a.plan")
    assert compilation.findings == () or not any(finding.is_error for finding in compilation.findings)
    compiled = compilation.compiled
    assert [panel.mark for panel in compiled.layout.panels] == ["K1", "K2", "K3"]
    assert [(panel.box.left, panel.box.right) for panel in compiled.layout.panels] == [
        (1056, 1644), (1756, 2444), (2556, 3144),
    ]  # fmt: skip
    ends = {part.mark: part.length for build in compiled.materials.builds for part in build.parts if part.role == "end"}
    assert ends == {"C588-E": 588, "C688-E": 688}
    assert [(held.holds, held.found) for held in compiled.held] == [(True, "112 mm")]


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (("bay less 12", "bay less 600"), "bay-too-small"),
        (("with width bay", "with widht bay"), "unknown-name"),
        (("one in each bay between L1..L4, lowest", "row of 3, gap 20, lowest"), "clauses-disagree"),
        (("one in each bay between L1..L4", "two in each bay between L1..L4, gap 20"), "clauses-disagree"),
        (("between L1..L4", "between L1..L5"), "unknown-name"),
        (("bay less 12", "bay les 12"), "wrong-form"),
        (("bay less 12", "bay less 12, with width 450"), "stated-twice"),
        (("bay less 12", "bay less 12, with width bay less 20"), "stated-twice"),
    ],
)
def test_what_is_wrong_with_it_is_said_once(tmp_path, change, code):
    assert [finding.code for finding in read_text(tmp_path, text_of(change))[1]] == [code]


def test_the_book_lists_each_bay_with_its_cut(tmp_path):
    (tmp_path / "a.plan").write_text(text_of())
    book = write_book(compile_plan(tmp_path / "a.plan").compiled).markdown
    assert "| clouds | L1 to L2 | 600 mm | 12 mm | width 588 mm | C588 |" in book
    assert "| clouds | L2 to L3 | 700 mm | 12 mm | width 688 mm | C688 |" in book
