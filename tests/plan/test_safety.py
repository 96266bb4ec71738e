"""What a plan says of its loads: stricter rules, second supports, what is added, papers. All plans are invented."""

from fractions import Fraction as F

import pytest

from tests.plans import SMALL, findings_after, read_text

FIX = ("  fix     lag-eye into joists\n", "  fix     lag-eye into joists\n  {}\n")
TIE = (
    'hardware tie {\n  breaks at 3 kN, 80 % left at its ends, "invented"\n  mass 40 g\n  stretch 10 under 1000 N\n'
    "  length 240 to 300\n}\n"
)


def hanging(line):
    return FIX[0], FIX[1].format(line)


def read(tmp_path, more="", line="keep 100 clear of edges"):
    plan, findings = read_text(tmp_path, SMALL.replace(*hanging(line)) + more)
    assert findings == ()
    return plan


def safety(line):
    return ("room box {", f"safety {{\n  {line}\n}}\n\nroom box {{")


def test_without_a_word_the_defaults_count(tmp_path):
    rules = read(tmp_path).safety
    assert (rules.hardware_factor, rules.people_factor, rules.second_kg, rules.second_height) == (5, 10, 10, 3000)
    assert (rules.tolerance, rules.damp, rules.dynamic, rules.inspect_months) == (F(15, 100), F(5, 100), 1, 12)
    assert (rules.timber_rules, rules.changed) == ("nds", ())


def test_every_figure_can_be_made_stricter_for_a_reason(tmp_path):
    lines = (
        "timber-rules ec5", 'factor 6 on hardware, "old stock"',
        'factor 12 over people, "a school hall"', 'masses 20 % more, "uneven batts"', 'damp 10 % more, "a bath"',
        'blows 1.2 times the load, "ball games"', 'second-support for panels over 5 kg, "asked for"',
        'second-support for points over 2500, "asked for"', 'inspect every 6 months, "a bath"',
    )  # fmt: skip
    rules = read(tmp_path, "safety {\n" + "\n".join(lines) + "\n}\n").safety
    assert rules.timber_rules == "ec5"
    assert (rules.hardware_factor, rules.people_factor) == (6, 12)
    assert (rules.tolerance, rules.damp, rules.dynamic) == (F(1, 5), F(1, 10), F(6, 5))
    assert (rules.second_kg, rules.second_height, rules.inspect_months) == (5, 2500, 6)
    assert [each.reason for each in rules.changed][:2] == ["old stock", "a school hall"]


@pytest.mark.parametrize(
    "line",
    [
        'factor 4 on hardware, "cheaper"', 'factor 9.9 over people, "cheaper"', 'masses 10 % more, "weighed"',
        'damp 0 % more, "dry"', 'blows 0.9 times the load, "still"', 'second-support for panels over 11 kg, "no"',
        'second-support for points over 3001, "no"', 'inspect every 13 months, "no"',
    ],
)  # fmt: skip
def test_no_figure_can_be_made_looser(tmp_path, line):
    assert [code for code, _ in findings_after(tmp_path, safety(line))] == ["out-of-range"]


@pytest.mark.parametrize("line", ["factor 6 on hardware", "damp 10 % more", "inspect every 6 months"])
def test_a_stricter_figure_needs_its_reason(tmp_path, line):
    assert [code for code, _ in findings_after(tmp_path, safety(line))] == ["clause-missing"]


def test_a_second_support_and_its_parts(tmp_path):
    second = read(tmp_path, TIE, "second-support 2 of tie from eye, to lag-eye, slack 10").arrays[0].second_support
    assert (second.count, second.tie.name, second.eye.name, second.anchor.name) == (2, "tie", "eye", "lag-eye")
    assert (second.slack, second.tie.stretch) == (10, (10, 1000))
    assert (second.tie.breaks_n, second.tie.ends_left, second.tie.reach) == (3000, F(4, 5), (240, 300))


def test_what_is_added_on_site(tmp_path):
    added = read(tmp_path, line='adds 900 g of "light strip" at 300, 750').arrays[0].added
    assert [(one.words, one.mass_kg, one.across, one.up) for one in added] == [("light strip", F(9, 10), 300, 750)]


def test_sharing_by_another_rule_needs_a_reason(tmp_path):
    assert [c for c, _ in findings_after(tmp_path, hanging("share by springs"))] == ["clause-missing"]
    hang = read(tmp_path, line='share by adjusted, "turnbuckles, felt by hand"').arrays[0].hang
    assert (hang.share, hang.share_reason) == ("adjusted", "turnbuckles, felt by hand")


def test_links_lean_no_more_than_45_degrees(tmp_path):
    drop = ("on eye, drop 100", "on eye, drop 100, leaning 46 deg")
    assert [c for c, _ in findings_after(tmp_path, drop)] == ["out-of-range"]


UP_TIE = "up-slope-tie 2 of eye from eye, to eye on 4 of lag-eye, reaching 300"
SQUARE = ("on eye, drop 100", "on eye, drop 100, square to the slope")


def test_links_square_to_a_slope_and_their_tie(tmp_path):
    plain = read(tmp_path).arrays[0]
    assert (plain.hang.square, plain.up_slope_tie) == (False, None)
    (tmp_path / "square").mkdir()
    text = SMALL.replace(*SQUARE).replace(*hanging(UP_TIE))
    array = read_text(tmp_path / "square", text)[0].arrays[0]
    tie = array.up_slope_tie
    assert array.hang.square
    assert (tie.count, tie.tie.name, tie.plate.name, tie.screws, tie.screw.name, tie.reach) == (
        2, "eye", "eye", 4, "lag-eye", 300,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ((hanging(UP_TIE),), "clauses-disagree"),
        ((("drop 100", "drop 100, leaning 5 deg, square to the slope"),), "clauses-disagree"),
        ((SQUARE, hanging('share by adjusted, "felt by hand"')), "clauses-disagree"),
        ((SQUARE, hanging(UP_TIE.replace("2 of eye", "0 of eye"))), "out-of-range"),
        ((SQUARE, hanging(UP_TIE.replace("4 of", "0 of"))), "out-of-range"),
        ((SQUARE, hanging(UP_TIE.replace("from eye", "from nothing"))), "unknown-name"),
        ((SQUARE, hanging(UP_TIE.replace(", reaching 300", ""))), "clause-missing"),
    ],
)
def test_square_links_and_ties_that_make_no_sense(tmp_path, changes, code):
    assert [c for c, _ in findings_after(tmp_path, *changes)] == [code]


FIXED = ("on eye, drop 100", "on eye, drop 100, fixed to the slope")


def test_stand_offs_fix_a_panel_to_a_slope(tmp_path):
    hang = read_text(tmp_path, SMALL.replace(*FIXED))[0].arrays[0].hang
    assert (hang.fixed, hang.square, hang.drop) == (True, False, 100)


@pytest.mark.parametrize(
    "changes",
    [
        (("drop 100", "drop 100, leaning 5 deg, fixed to the slope"),),
        (("drop 100", "drop 100, square to the slope, fixed to the slope"),),
        (FIXED, hanging('share by adjusted, "felt by hand"')),
        (FIXED, ("lag-eye into joists", "lag-eye into the lining")),
        (FIXED, ("lag-eye into joists", "lag-eye into joists, in their end grain")),
        (FIXED, hanging(UP_TIE)),
    ],
    ids=["leaning", "square", "shared", "into the lining", "end grain", "tied"],
)
def test_stand_offs_that_make_no_sense(tmp_path, changes):
    assert [c for c, _ in findings_after(tmp_path, *changes)] == ["clauses-disagree"]


def test_a_piece_is_marked_or_breaks_not_both(tmp_path):
    both = ("  mass    50 g\n", '  mass    50 g\n  breaks  at 3 kN, 80 % left at its ends, "invented"\n')
    assert "clauses-disagree" in {code for code, _ in findings_after(tmp_path, both)}


def test_what_the_ends_of_a_wire_leave_is_stated_and_never_taken(tmp_path):
    line = ("  rated   1000 N", "  breaks  at 3 kN")
    assert [c for c, _ in findings_after(tmp_path, line)] == ["clause-missing"]


def test_a_region_may_name_whose_questions_are_asked(tmp_path):
    plan = read(tmp_path, 'region "an invented county", rules of great-britain\n')
    assert (plan.region, plan.rules_of) == ("an invented county", "great-britain")
    assert read(tmp_path, 'region "an invented county"\n').rules_of is None


def test_papers_cover_stock_and_panels(tmp_path):
    paper = (
        'evidence serge-fire {{\n  covers {}\n  paper "invented report 12"\n  tested "the cloth"\n  says "class"\n}}\n'
    )
    (evidence,) = read(tmp_path, paper.format("serge, cloud")).evidence
    assert (evidence.covers, evidence.paper, evidence.until) == (("serge", "cloud"), "invented report 12", "")
    _, findings = read_text(tmp_path, SMALL + paper.format("serg"))
    assert [(f.code, f.mend) for f in findings] == [("unknown-name", "did you mean `serge`?")]


def test_heads_signs_and_boxes_stand_where_they_are(tmp_path):
    things = (
        "  sprinkler S1 on ceiling centred at 2500, 300, 60 across, deflector 40 below\n"
        "  detector D1 on ceiling centred at 2500, 3700, 110 across\n"
        "  luminaire L1 on ceiling centred at 300, 300, 90 across, fitted recessed\n"
        "  socket B1 on north wall centred at 600, up 300, 86 x 86\n  door"
    )
    plan, findings = read_text(tmp_path, SMALL.replace("  door", things, 1))
    assert findings == ()
    features = {feature.name: feature for feature in plan.room.features}
    assert (features["S1"].kind, features["S1"].below, features["L1"].fitting) == ("sprinkler", 40, "recessed")
    assert {feature.kind for feature in plan.room.features} >= {"detector", "socket"}


def test_a_survey_finds_a_detector_elsewhere(tmp_path):
    text = SMALL.replace("  door", "  detector D1 on ceiling centred at 2500, 3700, 110 across\n  door", 1)
    survey = 'survey 2026-11-26 by "invented" {\n  detector D1, centred at 2490, 3690\n}\n'
    plan, findings = read_text(tmp_path, text + survey)
    assert findings == ()
    (detector,) = (feature for feature in plan.room.features if feature.name == "D1")
    assert (detector.across, detector.up) == (2490, 3690)
    assert [(each.drawn, each.found) for each in plan.differences] == [(2500, 2490), (3700, 3690)]


def test_end_grain_is_stated_and_only_of_members(tmp_path):
    into = ("lag-eye into joists", "lag-eye into joists, in their end grain")
    plan, findings = read_text(tmp_path, SMALL.replace(*into))
    assert findings == ()
    assert plan.arrays[0].hang.end_grain
    (tmp_path / "b").mkdir()
    lining = ("lag-eye into joists", "lag-eye into the lining, in their end grain")
    assert [c for c, _ in findings_after(tmp_path / "b", lining)] == ["clauses-disagree"]
