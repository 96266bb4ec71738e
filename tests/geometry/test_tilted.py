"""Panels whose links have unequal drops: bodies, eyes, anchors, and what is refused. All plans are invented."""

import math
from fractions import Fraction as F

import pytest

from planlang.geometry.checks.depth import body_corners, through_members
from planlang.geometry.checks.light import beam_reach
from planlang.manual.example import changed, compiled, small_plan
from planlang.plan.tape import METRIC
from tests.geometry.rooms import feature
from tests.hardware.scenes import ceiling_array, members, surface
from tests.reference.test_loads_tilted import tilted

FLAT, SLOPE = "flat ceiling at 2800", "slope ceiling from south wall at 2600, pitch 20 deg"
CENTRES = "lining ceiling plaster over joists 45 x 145 of spruce at 200 centres, first at 100, running across"
CLOSE = "lining ceiling plaster over joists 45 x 145 of spruce at 60 centres, first at 100, running across"


def made(words, *changes):
    return compiled(changed(small_plan(), (("drop 100", f"drop 100{words}"), *changes)))


def first(compilation):
    return compilation.compiled.layout.panels[0]


def surface_of(compilation, panel):
    return compilation.compiled.room.surface(panel.surface)


def codes(compilation):
    return [finding.code for finding in compilation.findings]


@pytest.mark.parametrize(
    ("row", "lower"), [("upper", "cd"), ("lower", "ab"), ("right", "bc"), ("left", "ad")], ids=lambda each: each
)
def test_the_row_that_is_named_hangs_lower_and_each_point_has_its_own_drop(row, lower):
    panel = first(made(f", 120 more at the {row} eyes"))
    drops = {point.name[-1]: point.drop for point in panel.points}
    assert drops == {letter: F(220 if letter in lower else 100) for letter in "abcd"}


def test_under_a_flat_ceiling_the_rows_of_anchors_are_the_root_apart_and_the_panel_takes_less_of_its_surface():
    panel = first(made(", 120 more at the upper eyes"))
    up = sorted({point.up for point in panel.points})
    assert float(up[1] - up[0]) == pytest.approx(math.sqrt(1000**2 - 120**2), abs=1e-6)
    # 1200 mm of panel and 75 mm of depth, sin 0.12
    wanted = 1200 * math.sqrt(1 - 0.12**2) + 75 * 0.12
    assert float(panel.box.height) == pytest.approx(wanted, abs=1e-5)
    assert panel.box.width == 600 and panel.box.lower == 1600


@pytest.mark.parametrize("ceiling", [FLAT, SLOPE])
@pytest.mark.parametrize("row", ["upper", "lower", "right", "left"])
def test_the_body_is_rigid_and_anchors_are_plumb_over_its_eyes_but_for_the_way_of_the_higher_row(row, ceiling):
    compilation = made(f", 120 more at the {row} eyes", (FLAT, ceiling))
    panel = first(compilation)
    own = surface_of(compilation, panel)
    back, front = panel.corners_room, body_corners(panel, own)[4:]
    sides = [math.dist(one, other) for one, other in zip(back, (*back[1:], back[0]), strict=True)]
    assert sides == pytest.approx([600, 1200, 600, 1200], abs=1e-4)
    assert [math.dist(one, other) for one, other in zip(back, front, strict=True)] == pytest.approx([75] * 4)
    diagonals = math.dist(back[0], back[2]), math.dist(front[1], back[3])
    assert diagonals == pytest.approx((math.hypot(600, 1200), math.hypot(600, 1200, 75)), abs=1e-4)
    # the box on the surface holds exactly the body, seen square to it
    seen = [
        tuple(
            sum((p - o) * w for p, o, w in zip(at, own.origin, way, strict=True))
            for way in (own.across_dir, own.up_dir)
        )
        for at in (*back, *front)
    ]
    box = panel.box
    found = (*(min(at[axis] for at in seen) for axis in (0, 1)), *(max(at[axis] for at in seen) for axis in (0, 1)))
    assert found == pytest.approx([float(edge) for edge in (box.left, box.lower, box.right, box.upper)], abs=1e-4)
    # plumb: from eye to anchor the level way is the same for all, that of the higher row's drop along the slope
    rail = 6.0
    places = [(rail, 100), (600 - rail, 100), (600 - rail, 1100), (rail, 1100)]
    eyes = [
        tuple(a + (b - a) * x / 600 + (d - a) * y / 1200 for a, b, d in zip(back[0], back[1], back[3], strict=True))
        for x, y in places
    ]
    aside = [(point.room[0] - eye[0], point.room[1] - eye[1]) for point, eye in zip(panel.points, eyes, strict=True)]
    assert all(way == pytest.approx(aside[0], abs=1e-4) for way in aside)
    pitch = math.radians(own.pitch_deg)
    assert math.hypot(*aside[0]) == pytest.approx(100 * math.sin(pitch), abs=1e-4)
    # each eye is its own drop off the surface
    off = [sum((e - o) * n for e, o, n in zip(eye, own.origin, own.inward, strict=True)) for eye in eyes]
    assert off == pytest.approx([float(point.drop) for point in panel.points], abs=1e-4)


def test_under_a_slope_a_panel_can_hang_level():
    # spacing 1000: sin 20 deg = 0.342020; level, its anchors are 1000 / cos 20 deg apart
    compilation = made(", 342.020143 more at the upper eyes", (FLAT, SLOPE))
    panel = first(compilation)
    heights = {round(height, 4) for _, _, height in panel.corners_room}
    assert len(heights) == 1
    up = sorted({point.up for point in panel.points})
    assert float(up[1] - up[0]) == pytest.approx(1000 / math.cos(math.radians(20)), abs=1e-3)
    assert panel.tilt.slant_deg == pytest.approx(0, abs=1e-3)
    assert panel.tilt.angle_deg == pytest.approx(20, abs=1e-4)


def test_headroom_is_that_of_the_lowest_corner_of_the_tilted_body():
    low = ("flat ceiling at 2800", "flat ceiling at 2320")
    assert "low-headroom" not in codes(made("", low, (CENTRES, CLOSE)))
    compilation = made(", 220 more at the upper eyes", low, (CENTRES, CLOSE))
    message = next(finding.message for finding in compilation.findings if finding.code == "low-headroom")
    # back edge: 100 + 1100 x 0.22 = 342 below the ceiling, front 75 x cos = 73.16 lower: 2320 - 415.16
    assert "1904" in message


def test_the_higher_end_may_not_go_through_the_ceiling_and_the_tilt_is_bounded():
    through = made(", 500 more at the upper eyes", ("inset 100 from the ends", "inset 260 from the ends"))
    assert "tilt-too-steep" in codes(through)  # 500 over 680
    through = made(", 300 more at the upper eyes", ("inset 100 from the ends", "inset 260 from the ends"))
    found = [finding for finding in through.findings if finding.code == "tilt-through-ceiling"]
    assert "115 mm" in found[0].message  # 260 x 300 / 680 = 114.7
    assert found[0].mend == "drop 115 mm or more"
    right = ("inset 100 from the ends", "inset 260 from the ends"), ("drop 100, 300", "drop 115, 300")
    assert "tilt-through-ceiling" not in codes(made(", 300 more at the upper eyes", *right))


def test_exposed_members_are_held_against_the_higher_end_of_the_back():
    # 150 of drop, and 100 of panel beyond the eyes, at sin 0.1: the end is 140 off the ceiling, rafters stand 145 out
    face = surface(exposed=True, members=members(first=F(600)))
    array = ceiling_array(drop=F(150), more=F(130), more_at="upper")
    (finding,) = through_members(array, face, (tilted(array, face),), METRIC)
    assert "SC1 hangs 140 mm from ceiling at its higher end" in finding.message
    deeper = ceiling_array(drop=F(156), more=F(130), more_at="upper")
    assert through_members(deeper, face, (tilted(deeper, face),), METRIC) == ()


def test_a_beam_of_light_is_held_against_the_lowest_end():
    lamp = feature("L1", "ceiling", (500, 500), (90, 90), kind="luminaire", beam_deg=F(45))
    array = ceiling_array(drop=F(150), more=F(130), more_at="upper")
    panel = tilted(array, surface())
    assert beam_reach(array, lamp) > panel.most_front > array.hang.drop + array.panel.depth


def test_a_row_of_the_sides_is_the_width_less_the_rails_apart():
    assert "tilt-too-steep" not in codes(made(", 294 more at the right eyes"))  # 588 between the rails
    assert "tilt-too-steep" in codes(made(", 295 more at the right eyes"))


REFUSED = [
    (", 0 more at the upper eyes", "out-of-range"),
    (", 50 more at the upper eyes, leaning 5 deg", "clauses-disagree"),
    (", 50 more at the upper eyes, square to the slope", "clauses-disagree"),
    (", 50 more at the upper eyes, fixed to the slope", "clauses-disagree"),
]


@pytest.mark.parametrize(("words", "code"), REFUSED)
def test_what_is_not_reckoned_beside_it_is_refused_at_the_hang(words, code):
    findings = made(words).findings
    assert [(finding.code, finding.span.line) for finding in findings] == [(code, 83)]


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("turned long side up", "turned long side up 10 deg clockwise", "turned by an angle"),
        ("fix lag-eye into joists", "fix lag-eye into rails of spruce held by lag-eye", "rails"),
        ("fix lag-eye into joists", 'fix lag-eye into joists\n  share by springs, "why not"', "springs"),
        (
            "fix lag-eye into joists",
            "fix lag-eye into joists\n  second-support 2 of eye from eye, to lag-eye, slack 5",
            "second support",
        ),
    ],
)
def test_what_is_not_reckoned_elsewhere_in_the_array_is_refused(old, new, said):
    findings = made(", 50 more at the upper eyes", (old, new)).findings
    found = [finding for finding in findings if finding.code == "clauses-disagree" and said in finding.message]
    assert len(found) == 1 and found[0].mend


def test_cleats_have_no_unequal_drops():
    changes = (
        ("eyes 4 of eye, inset 100 from the ends", "cleats 2 of eye, 60 below the top, inset 100 from the sides"),
    )
    text = changed(
        small_plan(), (*changes, ("hang from eyes on eye, drop 100", "hang on cleats, 50 more at the upper eyes"))
    )
    assert [finding.code for finding in compiled(text).findings][:1] == ["clauses-disagree"]
