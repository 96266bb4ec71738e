"""From text to the typed plan, and what is said of a plan that is wrong."""

from fractions import Fraction as F

import pytest

from planlang.plan.model import Bays, Grid, Row
from planlang.plan.panel import Cleats, Eyes
from planlang.plan.quantity import INCH
from planlang.plan.reader import read_plan
from planlang.syntax.project import read_project
from tests.plans import DEMO_PLANS, DEMOS, SMALL, findings_after, read_text


@pytest.mark.parametrize("path", DEMO_PLANS, ids=lambda path: path.stem)
def test_the_demos_are_read_without_a_finding(path):
    project = read_project(path)
    plan = read_plan(project.value)
    assert (project.diagnostics, plan.diagnostics) == ((), ())
    assert plan.value is not None


def demo(name):
    return read_plan(read_project(DEMOS / name).value).value


def test_the_loft_is_read_as_it_is_written():
    plan = demo("hollowbrook/loft.plan")
    assert plan.room.ceiling[1].foot == "south wall"
    assert [(f.name, f.across, f.up) for f in plan.room.features if f.kind == "rooflight"] == [
        ("R1", 1200, 890), ("R2", 3590, 890), ("R3", 6000, 890),  # R2 was drawn at 3600 and found at 3590
    ]  # fmt: skip
    clouds = plan.arrays[0]
    assert isinstance(clouds.placement, Bays)
    assert clouds.placement.features == ("R1", "R2", "R3")
    assert isinstance(clouds.panel.hung_by, Eyes)
    assert [(keep.distance, keep.kind) for keep in clouds.keeps] == [(150, "rooflight"), (200, "luminaire")]
    assert isinstance(plan.arrays[1].placement, Row)
    assert isinstance(plan.arrays[2].panel.hung_by, Cleats)


def test_feet_and_inches_stay_exact():
    plan = demo("cello_room/teaching_room.plan")
    assert plan.room.ceiling[0].height == F(829, 8) * INCH
    assert plan.arrays[0].panel.frame.sheet.thickness == F(5, 8) * INCH
    assert isinstance(plan.arrays[0].placement, Grid)
    assert plan.arrays[0].placement.gap_up == plan.arrays[0].placement.gap_across == 8 * INCH


def test_positions_by_edge_and_by_centre(tmp_path):
    text = SMALL.replace(
        "  door     d1",
        "  luminaire A, B on ceiling centred at 1000, 1100, 3000, 1200, 90 across\n"
        "  luminaire C, D on ceiling centred at 1000, 3000, up 2000, 90 across\n"
        "  vent     V on ceiling centred at 500, 600, 300 x 200\n"
        "  window   W on south wall at 1000, 800 x 600, sill 900, plaster\n"
        "  window   X on south wall centred at 3000, 800 x 600, sill 900, plaster\n  door     d1",
    )
    plan, findings = read_text(tmp_path, text)
    assert findings == ()
    assert {f.name: (f.across, f.up) for f in plan.room.features} == {
        "A": (1000, 1100), "B": (3000, 1200), "C": (1000, 2000), "D": (3000, 2000), "V": (500, 600),
        "W": (1400, 1200), "X": (3000, 1200), "d1": (950, 1000),
    }  # fmt: skip


def test_what_is_left_out_is_assumed_and_listed(tmp_path):
    plan, findings = read_text(tmp_path, SMALL)
    assert findings == ()
    listed = {(each.subject, each.value) for each in plan.assumptions}
    assert ("air of the room", "air 20 C, 50 %") in listed
    assert ("shop", "kerf 3.2 mm") in listed
    assert ("array clouds", "turned long side up") in listed
    assert ("panel cloud", "lying flat") in listed
    assert ("job", 'client "not stated"') in listed
    assert all(each.reason for each in plan.assumptions)
    assert (plan.room.air.temperature_c, plan.room.air.humidity) == (20, F(1, 2))


def test_stock_that_nothing_uses_is_not_in_the_plan_nor_among_its_assumptions(tmp_path):
    extra = "batt spare {\n  size 1 x 1 x 1\n  density 1 kg/m3\n  flow-resistivity 1 Pa.s/m2\n}\ntimber other {\n}\n"
    plan, findings = read_text(tmp_path, SMALL + extra)
    assert findings == ()
    assert not any("other" in each.subject for each in plan.assumptions)


def test_like_takes_over_what_it_does_not_change(tmp_path):
    plan, _ = read_text(tmp_path, SMALL)
    anchor = plan.arrays[0].hang.anchor
    assert (anchor.rated_n, anchor.shank, anchor.rating_source) == (1000, 6, "invented")


def test_figures_are_used_in_values_and_across_files(tmp_path):
    text = SMALL.replace("gap 500", "gap 4 * margin").replace("units mm\n", 'units mm\nuse "figures.plan"\n')
    plan, findings = read_text(tmp_path, text, figures__plan="units cm\nfigure margin 12.5\n")
    assert findings == ()
    assert plan.arrays[0].placement.gap_across == 500


MISTAKES = [
    # what a builder under time pressure gets wrong, one at a time: (change, code)
    (("units mm\n", ""), "unit-not-stated"),
    (('plan "Small room"', 'plam "Small room"'), "unknown-statement"),
    (("issue  A of 2026-11-25", "issue  A"), "wrong-form"),
    (("  money  GBP\n", ""), "statement-missing"),
    (("680 kg/m3", "680 kg"), "wrong-kind"),
    (("680 kg/m3", "680 kg/m3\n  colour 3"), "unknown-statement"),
    (("2440 x 1220 x 12", "2440 x 1220"), "count-differs"),
    (("face      600 x 1200", "face      600 mn x 1200"), "unknown-unit"),
    (("face      600 x 1200", "face      600 x 0"), "out-of-range"),
    (("9000 Pa.s/m2 to 15000 Pa.s/m2", "9000 Pa.s/m2 to 1500 Pa.s/m2"), "clauses-disagree"),
    (("0.10, 0.08, 0.05, 0.03, 0.03, 0.03", "0.10, 0.08, 0.05"), "count-differs"),
    (("frame     ply, ends full, sides between", "frame     plyy, ends full"), "unknown-name"),
    (("frame     ply, ends full, sides between", "frame     wool, ends full"), "wrong-thing"),
    (("ends full, sides between", "ends full, ends between"), "clauses-disagree"),
    (("at mid-length, 60 wide, ", "60 wide, "), "clause-missing"),
    (("at mid-length, 60 wide, ", "at mid-length, "), "clause-missing"),
    (("set back 6 from the front", "set back 6 from the back"), "wrong-form"),
    (("eyes      4 of eye", "eyes      3 of eye"), "clauses-disagree"),
    (("wrapped 50", "wraped 50"), "unknown-clause"),
    (("  depth     75\n", "  depth     75\n  depth     80\n"), "stated-twice"),
    (("  depth     75\n", ""), "statement-missing"),
    (("  like    eye\n", "  like    eyee\n"), "unknown-name"),
    (("  like    eye\n", "  like    lag-eye\n"), "like-loop"),
    (("timber spruce {", "timber eye {\n}\n\ntimber spruce {"), "name-twice"),
    (("rectangle 5000 x 4000", "rectangle 5000 x 4000 +"), "broken-line"),
    (("flat  ceiling  at 2600", "flat  ceiling  at 2600, pitch 3 deg"), "unknown-clause"),
    (("joists 45 x 145 of spruce at 200", "joists 45 x 145 of spruce at 20"), "clauses-disagree"),
    (("first at 100, running across", "running across"), "clause-missing"),
    (("on east wall at 500", "on east wal at 500"), "wrong-form"),
    (("at 500, 900 x 2000", "at 500, 600, 900 x 2000"), "count-differs"),
    (("array clouds, mark K", "array clouds"), "clause-missing"),
    (("on      ceiling", "on      cieling"), "unknown-name"),
    (("gap 500, centred across", "centred across"), "clause-missing"),
    (("centred across, lowest", "centred across, left edge at 3, lowest"), "clauses-disagree"),
    (("from eyes on eye, drop 100", "on cleats"), "clauses-disagree"),
    (("from eyes on eye, drop 100", "from eyes on eye"), "clause-missing"),
    (("into joists", "into rafters"), "clauses-disagree"),
    (("fix     lag-eye", "fix     lag-eyes"), "unknown-name"),
    (("  fix     lag-eye into joists\n", "  fix     lag-eye into joists\n  keep 3 clear of windowz\n"), "unknown-name"),
    (('"invented"\n  thickness', "invented\n  thickness"), "wrong-form"),
    (("room box {", "room box {{"), "broken-line"),
]  # fmt: skip


@pytest.mark.parametrize(("change", "code"), MISTAKES, ids=[f"{code}: {change[1][:30]!r}" for change, code in MISTAKES])
def test_one_mistake_is_one_finding(tmp_path, change, code):
    assert [found for found, _ in findings_after(tmp_path, change)] == [code]


def test_many_mistakes_in_one_plan_are_as_many_findings(tmp_path):
    # one a line; left out are those that can't be known once another line is at fault
    hidden = ("units mm\n", 'plan "Small room"', "from eyes on eye, drop 100", "into joists")
    changes = [change for change, _ in MISTAKES if change[0] not in hidden]
    picked, lines = [], set()
    for change in changes:
        line = SMALL[: SMALL.index(change[0])].count("\n")
        if line not in lines and "\n" not in change[1] and change[1] != "":
            picked.append(change)
            lines.add(line)
    findings = findings_after(tmp_path, *picked)
    assert len(picked) >= 15
    assert len(findings) == len(picked)


@pytest.mark.parametrize(("change", "_"), MISTAKES)
def test_a_finding_stands_in_the_file_and_on_a_line_that_exists(tmp_path, change, _):
    text = SMALL.replace(*change, 1)
    _, findings = read_text(tmp_path, text)
    lines = text.splitlines()
    for finding in findings:
        assert finding.span.file == "main.plan"
        assert 1 <= finding.span.line <= len(lines)
        assert finding.span.column <= len(lines[finding.span.line - 1]) + 1


def test_an_empty_plan_is_told_what_it_needs(tmp_path):
    plan, findings = read_text(tmp_path, "")
    assert plan is None
    assert [finding.code for finding in findings] == ["statement-missing"] * 3


def test_what_the_estimate_takes_beside_decay_targets(tmp_path):
    text = SMALL.replace(
        "  braces    at mid-length",
        '  measured  0.3, 0.85, 1.1, 1.05, 1, 0.95, report "LB-7", mounting "A"\n  braces    at mid-length',
    )
    text = text.replace("  door     d1", "  furniture  shelf  1800 x 400 x 2000, 2 of them\n  door     d1")
    text = text.replace(
        '  source     "invented"\n  thickness', '  source     "invented"\n  scatters   30 %\n  thickness'
    )
    text += "\nuse-of-room {\n  target  din-18041 B3\n  target  bs-1116\n}\n"
    plan, findings = read_text(tmp_path, text)
    assert [finding.code for finding in findings if finding.is_error] == []
    (array,) = plan.arrays
    assert (array.panel.measured.report, array.panel.measured.mounting) == ("LB-7", "A")
    assert float(array.panel.measured.alphas[500]) == 1.1
    (shelf,) = plan.room.furniture
    assert (shelf.count, tuple(map(int, shelf.size))) == (2, (1800, 400, 2000))
    assert float(plan.room.linings[0].lining.scatters) == 0.3
    assert plan.use.target.rule == "din-18041 B3"
    assert [other.rule for other in plan.use.more_targets] == ["bs-1116"]
