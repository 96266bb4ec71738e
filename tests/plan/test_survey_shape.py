"""Surveys of walked floors, columns, platforms and soffits: by hand from the drawn figures. All invented."""

import pytest

from planlang.geometry.room import build_room
from tests.plans import SMALL, read_text

WALKED = """floor walked, closing within 5 {
    leg  east 5000, called front
    leg  north 4000
    leg  west 2000, called step
    leg  north 1000
    leg  west 3000
    leg  south 5000
  }"""
BACKWARDS = """floor walked, closing within 5 {
    leg  north 5000
    leg  east 3000
    leg  south 1000
    leg  east 2000, called step
    leg  south 4000
    leg  west 5000, called front
  }"""
THINGS = """column P1 from 2000, 1800 to 2300, 2100, plaster
  platform stage from 0, 0 to 1000, 1500, 300 high, plaster
  soffit duct through 0, 3500, 1000, 3500, 1000, 5000, 0, 5000, underside at 2250, plaster
  door     d1"""


def surveyed(folder, readings, walk=WALKED):
    text = SMALL.replace("floor    rectangle 5000 x 4000", walk).replace("door     d1", THINGS)
    text = text.replace("on east wall at 500", "on front at 3500")
    return read_text(folder, text + f'\nsurvey 2026-12-03 by "invented" {{\n  {readings}\n}}\n')


def differences(plan):
    return [(each.subject, each.drawn, each.found) for each in plan.differences]


@pytest.mark.parametrize("walk", [WALKED, BACKWARDS])
def test_legs_by_their_walls_whichever_way_they_are_walked(tmp_path, walk):
    plan, findings = surveyed(tmp_path, "leg of front found 4990\n  leg of step found 1990", walk)
    assert findings == ()
    assert (plan.room.width, plan.room.depth) == (4990, 5000)
    corners = {(0, 0), (0, 5000), (3000, 4000), (3000, 5000), (4990, 0), (4990, 4000)}
    assert set(plan.room.floor.corners) == corners
    assert differences(plan) == [("front, length", 5000, 4990), ("step, length", 2000, 1990)]


def test_what_legs_as_found_miss_is_shared_out(tmp_path):
    plan, findings = surveyed(tmp_path, "leg of front found 5004")
    assert findings == ()
    assert plan.room.floor.missed == (4, 0)
    # 4 mm over 5004 + 2000 + 3000 mm that go east or west, from memory of the transit rule
    assert float(plan.room.width) == pytest.approx(5004 - 4 * 5004 / 10004)


def test_legs_as_found_that_do_not_close(tmp_path):
    plan, (finding,) = surveyed(tmp_path, "leg of front found 5040\n  leg of step found 2001")
    assert plan is None and finding.code == "walk-does-not-close"
    assert finding.message == "with the legs as surveyed, the walk ends 39 mm east of where it began"
    assert [words for words, _ in finding.also] == ["leg of front as found", "leg of step as found"]
    assert "it closes if leg 1 is 5001 mm long" in finding.mend
    mended, findings = surveyed(tmp_path, "leg of front found 5001\n  leg of step found 2001")
    assert findings == () and mended.room.width == 5001


def test_places_and_sizes_of_things_that_stand_and_hang(tmp_path):
    plan, findings = surveyed(
        tmp_path,
        "column P1 from 2003, 1798 to 2305, 2099\n  platform stage, 297 high\n"
        "  soffit duct through 0, 3496, 1000, 3500, 1000, 5000, 0, 5000, underside at 2244",
    )
    assert findings == ()
    column, stage, duct = plan.room.solids
    assert column.corners == ((2003, 1798), (2305, 1798), (2305, 2099), (2003, 2099))
    assert (stage.level, duct.level, duct.corners[0]) == (297, 2244, (0, 3496))
    assert differences(plan) == [
        ("P1, west edge", 2000, 2003), ("P1, south edge", 1800, 1798), ("P1, east edge", 2300, 2305),
        ("P1, north edge", 2100, 2099), ("stage, height", 300, 297), ("duct, corner 1, north", 3500, 3496),
        ("duct, underside", 2250, 2244),
    ]  # fmt: skip


def test_the_room_is_made_of_what_was_found(tmp_path):
    """By hand: the L less what the column, the stage and the soffit take of it."""
    plan, _ = surveyed(
        tmp_path,
        "leg of front found 4990\n  leg of step found 1990\n  column P1 from 2000, 1800 to 2310, 2100\n"
        "  platform stage, 290 high\n  soffit duct, underside at 2200",
    )
    room = build_room(plan).value
    whole = (4.99 * 4.0 + 3.0 * 1.0) * 2.6
    assert room.volume_m3 == pytest.approx(whole - 0.31 * 0.3 * 2.6 - 1.0 * 1.5 * 0.29 - 1.0 * 1.5 * 0.4, abs=1e-9)


@pytest.mark.parametrize(("reading", "code", "said"), [
    ("leg of frnt found 4990", "unknown-name", "frnt"),
    ("leg of ceiling found 4990", "unknown-name", "ceiling"),
    ("leg of front", "wrong-form", ""),
    ("column P2 from 0, 0 to 300, 300", "unknown-name", "there is no column `P2`"),
    ("soffit stage, underside at 300", "unknown-name", "there is no soffit `stage`"),
    ("column P1 from 300, 300 to 0, 600", "clauses-disagree", "backwards"),
    ("platform stage through 0, 0, 1000, 0, 1000, 1500", "clauses-disagree", "other faces"),
])  # fmt: skip
def test_a_reading_of_what_is_not_there(tmp_path, reading, code, said):
    _, (finding,) = surveyed(tmp_path, reading)
    assert finding.code == code and said in finding.message


def test_a_rectangle_has_no_legs_and_a_corner_no_length(tmp_path):
    text = '\nsurvey 2026-12-03 by "invented" {\n  leg of south wall found 4990\n}\n'
    _, (finding,) = read_text(tmp_path, SMALL + text)
    assert (finding.code, finding.message) == ("clauses-disagree", "the floor is a rectangle: it has no legs")
    corner = WALKED.replace("leg  north 1000", "leg  to 3000, 5000")
    _, (finding,) = surveyed(tmp_path, "leg of east wall 2 found 990", corner)
    assert finding.code == "clauses-disagree" and "goes to a corner" in finding.message


def test_what_no_longer_fits_is_found_on_the_room_as_surveyed(tmp_path):
    """The door ends at 4400 of a wall that was found 4300 long."""
    plan, findings = surveyed(tmp_path, "leg of front found 4300\n  leg of step found 1300")
    assert findings == ()
    assert [each.code for each in build_room(plan).diagnostics] == ["feature-off-surface"]
