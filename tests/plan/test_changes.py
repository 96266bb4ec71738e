"""Options, surveys, requirements and what is stated: from the text to the typed plan."""

from fractions import Fraction as F

import pytest

from planlang.plan.reader import check_statements, read_plan, type_plan
from planlang.syntax.project import read_project
from tests.plans import SMALL, read_text


def with_option(folder, text, option):
    (folder / ".planlang").touch()
    (folder / "main.plan").write_text(SMALL + text)
    outcome = read_plan(read_project(folder / "main.plan").value, option)
    return outcome.value, [finding.code for finding in outcome.diagnostics]


LEANER = """
option leaner {
  array clouds {
    place  grid 1 across by 1 up, centred across, lowest edge at 1600
  }
  panel cloud {
    depth  90
  }
  shop {
    markup  10 %
  }
}
option none {
  without clouds
}
"""


def test_an_option_changes_what_it_states_and_nothing_else(tmp_path):
    plain, _ = with_option(tmp_path, LEANER, "")
    leaner, findings = with_option(tmp_path, LEANER, "leaner")
    assert findings == []
    assert plain.options == leaner.options == ("leaner", "none")
    assert (plain.arrays[0].placement.columns, leaner.arrays[0].placement.columns) == (2, 1)
    assert (plain.arrays[0].panel.depth, leaner.arrays[0].panel.depth) == (75, 90)
    assert leaner.arrays[0].hang == plain.arrays[0].hang
    assert (plain.rates.markup, leaner.rates.markup) == (0, F(1, 10))
    assert with_option(tmp_path, LEANER, "none")[0].arrays == ()


@pytest.mark.parametrize(
    ("text", "codes"),
    [
        ("option a {\n  without cloudz\n}\n", ["unknown-name"]),
        ("option a {\n  array cloudz {\n    turned long side up\n  }\n}\n", ["unknown-name"]),
        ("option a {\n}\noption a {\n}\n", ["name-twice"]),
        ("option a {\n  room box {\n  }\n}\n", ["unknown-statement"]),
    ],
)
def test_a_wrong_option_is_found_whether_or_not_it_is_built(tmp_path, text, codes):
    assert with_option(tmp_path, text, "")[1] == codes


SURVEY = """
survey 2026-12-03 by "second visit" {
  floor      5010 x 3990
  flat       ceiling at 2590
  door       d1, at 510
  thickness  of ply 11.7
  members    of ceiling first at 98
}
survey 2026-12-01 by "first visit" {
  flat       ceiling at 2595
}
"""


def test_readings_go_before_what_is_drawn_and_the_later_one_before_the_earlier(tmp_path):
    plan, findings = read_text(tmp_path, SMALL + SURVEY)
    assert findings == ()
    assert (plan.room.width, plan.room.depth, plan.room.ceiling[0].height) == (5010, 3990, 2590)
    assert plan.room.features[0].across == 510 + 450
    assert plan.arrays[0].panel.frame.sheet.thickness == F(117, 10)
    ceiling = next(each for each in plan.room.linings if each.surface == "ceiling")
    assert ceiling.members.first == 98
    assert [(each.subject, each.drawn, each.found) for each in plan.differences] == [
        ("thickness of ply", 12, F(117, 10)),
        ("ceiling, height", 2600, 2595),
        ("floor, east", 5000, 5010),
        ("floor, north", 4000, 3990),
        ("ceiling, height", 2595, 2590),
        ("d1, left edge", 500, 510),
        ("first of the joists of ceiling", 100, 98),
    ]


def test_a_reading_of_a_light_may_give_centre_size_and_edge(tmp_path):
    room = SMALL.replace("  door     d1", "  luminaire L1 on ceiling centred at 1000, 1100, 90 across\n  door     d1")
    plan, _ = read_text(
        tmp_path,
        room + 'survey 2026-12-03 by "x" {\n  luminaire L1, centred at 1010, 1090, 95 across\n'
        "  door d1, 890 x 1990, up 10\n}\n",
    )
    light, door = plan.room.features
    assert (light.across, light.up, light.width) == (1010, 1090, 95)
    assert (door.across, door.up, door.width, door.height) == (500 + 445, 10 + 995, 890, 1990)


def test_members_may_be_found_one_by_one(tmp_path):
    text = 'survey 2026-12-03 by "x" {\n  members of ceiling found at 98, 310, 495, 702\n}\n'
    plan, findings = read_text(tmp_path, SMALL + text)
    assert findings == ()
    members = next(each for each in plan.room.linings if each.surface == "ceiling").members
    assert (members.measured, members.centres, members.first) == ((98, 310, 495, 702), 0, 98)
    drawn = [(each.subject, each.drawn, each.found) for each in plan.differences]
    step = drawn[1][1] - drawn[0][1]
    assert drawn[0] == ("joist 1 of ceiling", 100, 98)
    assert drawn[3] == ("joist 4 of ceiling", 100 + 3 * step, 702)


@pytest.mark.parametrize(
    ("reading", "code"),
    [
        ("members of ceiling found at 98, 99", "clauses-disagree"),
        ("members of ceiling found at 98, 310, 600 centres", "clauses-disagree"),
        ("members of floor found at 98, 310", "clauses-disagree"),
        ("door d9, at 3", "unknown-name"),
        ("flat cieling at 3", "unknown-name"),
        ("thickness of plyy 3", "unknown-name"),
        ("members of floor first at 3", "clauses-disagree"),
        ("floor 3", "wrong-form"),
    ],
)
def test_a_reading_of_what_is_not_there_is_found(tmp_path, reading, code):
    _plan, findings = read_text(tmp_path, SMALL + f'survey 2026-12-03 by "x" {{\n  {reading}\n}}\n')
    assert [finding.code for finding in findings] == [code]


def test_requirements_are_typed(tmp_path):
    text = """
require {
  decay     250 Hz to 2000 Hz within the target, over the whole range
  decay     500 Hz at most 0.6 s
  gap       in clouds at least 300
  margin    at every hang point at least 1.5
  weight    of every panel at most 10 kg
  headroom  at least 2000
  cost      total at most 900 GBP
}
"""
    plan, findings = read_text(tmp_path, SMALL + text)
    assert findings == ()
    assert [(r.subject, r.sense, r.bound, r.low, r.high, r.over_range) for r in plan.requirements] == [
        ("decay", "target", None, 250, 2000, True),
        ("decay", "most", F(6, 10), 500, 500, False),
        ("gap", "least", 300, 0, 0, False),
        ("margin", "least", F(3, 2), 0, 0, False),
        ("weight", "most", 10, 0, 0, False),
        ("headroom", "least", 2000, 0, 0, False),
        ("cost", "most", 900, 0, 0, False),
    ]


STATED = """
region "England"
rule sprinkler-cover ask, says "fire officer"
phase first hangs clouds, from 2026-12-07 to 2026-12-11
"""


def test_a_built_panel_may_state_its_size(tmp_path):
    fix = "  fix     lag-eye"
    plan, findings = read_text(tmp_path, SMALL.replace(fix, f"  made K1 on 2026-12-01, 600 x 1200 x 75\n{fix}"))
    assert findings == ()
    assert plan.arrays[0].made[0].size == (600, 1200, 75)


@pytest.mark.parametrize("built", ["600 x 1200 x 75, sides 1080, 1200", "sides 1080, 1200, 600 x 1200 x 75"])
def test_built_panels_may_state_the_heights_of_their_sides(tmp_path, built):
    fix = "  fix     lag-eye"
    plan, findings = read_text(tmp_path, SMALL.replace(fix, f"  made K1 on 2026-12-01, {built}\n{fix}"))
    assert findings == ()
    (made,) = plan.arrays[0].made
    assert (made.size, made.sides) == ((600, 1200, 75), (1080, 1200))


@pytest.mark.parametrize(
    ("place", "codes"),
    [
        ("place row of 2, margin 300, lowest edge at 1600", []),
        ("place row of 1, margin 300, lowest edge at 1600", ["clauses-disagree"]),
        ("place row of 2, margin 300, gap 100, lowest edge at 1600", ["clauses-disagree"]),
        ("place row of 2, margin 300, left edge at 100, lowest edge at 1600", ["clauses-disagree"]),
    ],
)
def test_a_row_between_margins_has_no_other_word_on_gaps(tmp_path, place, codes):
    before = next(line.strip() for line in SMALL.splitlines() if line.strip().startswith("place"))
    plan, findings = read_text(tmp_path, SMALL.replace(before, place))
    assert [finding.code for finding in findings] == codes
    if not codes:
        assert (plan.arrays[0].placement.margin, plan.arrays[0].placement.gap) == (300, None)


def test_a_zone_may_be_all_of_a_surface(tmp_path):
    zone = '  zone old on all of ceiling, no drilling, says "owner"\n  door     d1'
    plan, findings = read_text(tmp_path, SMALL.replace("  door     d1", zone))
    assert findings == ()
    made = plan.room.zones[0]
    assert (made.surface, made.whole, made.forbids, made.author) == ("ceiling", True, "drilling", "owner")


def test_what_is_stated_is_carried(tmp_path):
    text = SMALL.replace(
        "  door     d1",
        '  zone flue on ceiling from 100, 200 to 300, 400, no drilling, says "sweep"\n'
        '  allows ceiling screws, eyes, says "owner"\n  allows purlins of ceiling clamps\n'
        '  keep-free ladder from 1200, 800 to 2000, 1600, heights 0 to 2400, for movement, says "owner"\n  door     d1',
    )
    text = text.replace("  depth     75\n", "  depth     75\n  size-rule whole-batts\n")
    text = text.replace("  fix     lag-eye", "  made K1, K2 on 2026-12-01\n  fix     lag-eye")
    plan, findings = read_text(tmp_path, text + STATED)
    assert findings == ()
    assert (plan.room.zones[0].right, plan.room.zones[0].forbids, plan.room.zones[0].author) == (
        300,
        "drilling",
        "sweep",
    )
    assert [(each.members, each.fixings) for each in plan.room.allowances] == [
        ("", ("screws", "eyes")), ("purlins", ("clamps",)),
    ]  # fmt: skip
    (space,) = plan.room.spaces
    assert (space.low, space.high, space.purpose) == ((1200, 800, 0), (2000, 1600, 2400), "movement")
    assert plan.arrays[0].panel.size_rule == "whole-batts"
    assert plan.arrays[0].made[0].panels == ("K1", "K2")
    assert (plan.region, plan.rules[0].answer, plan.phases[0].arrays) == ("England", "ask", ("clouds",))


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        (
            "  door     d1",
            '  zone z on ceiling from 3, 2 to 1, 4, no heat, says "x"\n  door     d1',
            "clauses-disagree",
        ),
        (
            "  door     d1",
            '  keep-free z from 3, 2 to 4, 2, heights 0 to 9, for sight, says "x"\n  door     d1',
            "clauses-disagree",
        ),
        ("  door     d1", "  allows ceiling nothing, glue\n  door     d1", "clauses-disagree"),
        ("  fix     lag-eye", "  made Z1 on 2026-12-01\n  fix     lag-eye", "clauses-disagree"),
        ("array clouds", "phase a hangs cloudz\narray clouds", "unknown-name"),
        ("array clouds", "phase a hangs clouds, from 2026-12-07 to 2026-12-01\narray clouds", "clauses-disagree"),
        ("array clouds", "require {\n  decay 300 Hz at most 1 s\n}\narray clouds", "out-of-range"),
        ("array clouds", "require {\n  gap in cloudz at least 3\n}\narray clouds", "unknown-name"),
    ],
)
def test_what_is_stated_wrongly_is_found(tmp_path, old, new, code):
    assert [finding.code for finding in read_text(tmp_path, SMALL.replace(old, new, 1))[1]] == [code]


TAKES = SMALL.replace("  absorber  framed\n", "  takes     width 600\n  absorber  framed\n").replace(
    "600 x 1200", "width x 1200", 2
)


def test_a_type_takes_figures_from_its_array(tmp_path):
    text = TAKES.replace("size              width x 1200", "size              1200 x 600")
    usual, findings = read_text(tmp_path, text)
    assert findings == ()
    assert (usual.arrays[0].panel.name, usual.arrays[0].panel.width) == ("cloud", 600)
    narrow, findings = read_text(tmp_path, text.replace("panel   cloud\n", "panel   cloud, with width 450\n"))
    assert findings == ()
    panel = narrow.arrays[0].panel
    assert (panel.name, panel.mark, panel.width) == ("cloud-width-450", "C450", 450)
    assert panel.core == usual.arrays[0].panel.core


def test_a_figure_that_a_type_does_not_take_is_found(tmp_path):
    _, findings = read_text(tmp_path, SMALL.replace("panel   cloud\n", "panel   cloud, with width 450\n"))
    assert [finding.code for finding in findings] == ["unknown-name"]


def test_one_reading_serves_every_option(tmp_path):
    (tmp_path / ".planlang").touch()
    (tmp_path / "main.plan").write_text(SMALL + LEANER + SURVEY)
    checked = check_statements(read_project(tmp_path / "main.plan").value)
    first = type_plan(checked, "")
    type_plan(checked, "leaner")
    type_plan(checked, "none")
    assert type_plan(checked, "") == first
