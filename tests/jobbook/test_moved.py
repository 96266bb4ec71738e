"""What a survey moved, in the hang schedule and in the findings. All plans are invented."""

from fractions import Fraction as F

from planlang.compiler import compile_plan
from planlang.jobbook.blocks import Paragraph
from planlang.jobbook.sections.moved import moved_points
from planlang.manual.example import small_plan

GRID = "place grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600"
ROW = "place row of 2, gap 500, right edge at 200, lowest edge at 1600"


def compiled(folder, reading, place=GRID):
    text = small_plan()
    assert GRID in text
    (folder / ".planlang").touch()
    survey = f'survey 2026-12-03 by "x" {{\n  {reading}\n}}\n'
    (folder / "main.plan").write_text(text.replace(GRID, place) + "\n" + survey)
    return compile_plan(folder / "main.plan")


def test_points_as_drawn_as_surveyed_and_the_difference(tmp_path):
    """The row hangs from the east wall, which was found 12 nearer."""
    compilation = compiled(tmp_path, "floor 4988 x 4000", ROW)
    assert compilation.ok, compilation.findings
    table = moved_points(compilation.compiled, "ceiling")[0]
    assert [column.head for column in table.columns][1:4] == [
        "Across, drawn, mm", "Across, surveyed, mm", "Across, difference, mm",
    ]  # fmt: skip
    point = compilation.compiled.layout.panels[0].points[0]
    assert point.across == F(4988 - 200 - 1700 + 6)
    assert table.rows[0] == ("K1.a", "3106", "3094", "-12", str(point.up), str(point.up), "0")
    assert len(table.rows) == 8


def test_where_a_survey_moved_nothing_that_is_said(tmp_path):
    compilation = compiled(tmp_path, "door d1, at 505")
    assert compilation.ok, compilation.findings
    said = moved_points(compilation.compiled, "ceiling")
    assert said == [Paragraph("Hang points on ceiling are where they are drawn: no survey moved one.")]


def test_a_panel_that_is_no_longer_there_is_named(tmp_path):
    compilation = compiled(tmp_path, "floor 4900 x 4000", "place as many as fit, gap 1250, margin 350")
    drawn = compilation.compiled.drawn.panels
    here = compilation.compiled.layout.panels
    assert len(drawn) > len(here) > 0
    assert moved_points(compilation.compiled, "ceiling")[0].words.startswith("Drawn, and not there as surveyed: K")


def test_what_no_longer_fits_is_an_error_that_names_the_survey(tmp_path):
    compilation = compiled(tmp_path, "floor 4888 x 4000", ROW.replace("right edge at 200", "left edge at 3200"))
    found = [finding for finding in compilation.findings if finding.is_error]
    assert [finding.code for finding in found] == ["panel-off-surface"]
    assert found[0].message == "K2 sticks out of ceiling by 12 mm; as drawn it fits, as surveyed it does not"
    assert found[0].mend == "move the whole array 'clouds' 12 mm west"


def test_what_does_not_fit_as_drawn_is_not_laid_to_the_survey(tmp_path):
    compilation = compiled(tmp_path, "floor 4950 x 4000", ROW.replace("right edge at 200", "left edge at 3400"))
    found = next(finding for finding in compilation.findings if finding.is_error)
    assert found.message == "K2 sticks out of ceiling by 150 mm"


def test_members_found_one_by_one_are_what_points_land_on(tmp_path):
    """Eyes at 1700 and 2700 up; the joists run across."""
    on_them = compiled(tmp_path, "members of ceiling found at 1204, 1703, 2204, 2697")
    landed = [point.lands_on for point in on_them.compiled.layout.panels[0].points]
    assert landed == ["joist 2", "joist 2", "joist 4", "joist 4"]
    beside = compiled(tmp_path, "members of ceiling found at 1204, 1733, 2204, 2697")
    found = [finding for finding in beside.findings if finding.code == "point-misses-member"]
    assert found[0].message.endswith("as drawn it fits, as surveyed it does not")
