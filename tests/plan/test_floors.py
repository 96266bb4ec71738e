"""Floors that are walked: what closes, what doesn't and which leg would mend it, and the names of walls."""

from fractions import Fraction as F

import pytest

from tests.plans import SMALL, read_text

FLOOR = next(line for line in SMALL.splitlines() if line.strip().startswith("floor  "))
DOOR = next(line for line in SMALL.splitlines() if line.strip().startswith("door "))
L_ROOM = ("east 6000", "north 2400", "west 2000", "north 2600", "west 4000", "south 5000")


def walked(folder, *legs, start="", more=()):
    lines = [f"  floor walked{start} {{", *(f"    leg {leg}" for leg in legs), "  }", *(f"  {line}" for line in more)]
    return read_text(folder, SMALL.replace(FLOOR, "\n".join(lines)).replace(DOOR, ""))


def floor(folder, *legs, start=""):
    plan, findings = walked(folder, *legs, start=start)
    assert findings == ()
    return plan.room.floor


def finding(folder, *legs, start="", more=()):
    _, findings = walked(folder, *legs, start=start, more=more)
    assert len(findings) == 1, findings
    return findings[0]


def test_corners_and_names_of_an_l(tmp_path):
    found = floor(tmp_path, *L_ROOM)
    assert found.corners == ((0, 0), (6000, 0), (6000, 2400), (4000, 2400), (4000, 5000), (0, 5000))
    assert found.walls == ("south wall", "east wall 1", "north wall 1", "east wall 2", "north wall 2", "west wall")


def test_turns_and_corners_say_the_same(tmp_path):
    by_turns = floor(tmp_path, "east 6000", "left 2400", "left 2000", "right 2600", "left 4000", "left 5000")
    corners = ("to 6000, 0", "to 6000, 2400", "to 4000, 2400", "to 4000, 5000", "to 0, 5000", "to 0, 0")
    assert by_turns.corners == floor(tmp_path, *L_ROOM).corners == floor(tmp_path, *corners).corners


def test_slanting_legs_to_a_thousandth(tmp_path):
    found = floor(
        tmp_path,
        "east 5000",
        "bearing 0 deg for 4000",
        "west 4000",
        "left by 45 deg for 1414.2136, called splay",
        "south 3000",
    )
    assert found.walls == ("south wall", "east wall", "north wall", "splay", "west wall")
    assert found.corners[4] == (0, pytest.approx(3000, abs=1e-3))
    assert found.corners[3] == (1000, 4000)


def test_a_walk_the_other_way_round_is_turned(tmp_path):
    found = floor(
        tmp_path, "north 5000", "east 4000", "south 2600, called hall-side", "east 2000", "south 2400", "west 6000"
    )
    assert found.corners == ((0, 0), (6000, 0), (6000, 2400), (4000, 2400), (4000, 5000), (0, 5000))
    assert found.walls[3] == "hall-side"
    assert found.walls[0] == "south wall"


def test_what_is_missed_is_shared_out_and_kept(tmp_path):
    legs = ("east 6000", "north 4000", "west 5992", "south 3996")
    found = floor(tmp_path, *legs, start=", closing within 10")
    assert found.missed == (8, 4)
    (x1, y1), (x2, y2) = found.corners[1:3]
    assert x1 == x2 == 6000 - F(6000 * 8, 11992)
    assert (y1, y2) == (0, 4000 - F(4000 * 4, 7996))


@pytest.mark.parametrize(
    ("change", "said", "mends"),
    [
        ((5, "south 4800"), "200 mm north", ("leg 6 is 5000 mm long", "leg 2 is 2200 mm long")),
        ((2, "west 200"), "1800 mm east", ("leg 3 is 2000 mm long", "leg 5 is 5800 mm long")),
        ((3, "south 2600"), "5200 mm south", ("leg 4 goes the other way",)),
        ((0, "east 600"), "5400 mm west", ("leg 1 is 6000 mm long", "a leg is missing that goes 5400 mm east")),
    ],
)
def test_a_walk_that_does_not_close(tmp_path, change, said, mends):
    legs = list(L_ROOM)
    legs[change[0]] = change[1]
    found = finding(tmp_path, *legs)
    assert found.code == "walk-does-not-close"
    assert f"ends {said} of where it began" in found.message
    assert [mend for mend in mends if mend not in found.mend] == []


def test_a_wrong_turn_is_found(tmp_path):
    """Left and right changed at one leg turns all that follow."""
    right = ("east 6000", "left 2400", "left 2000", "right 2600", "left 4000", "left 5000")
    wrong = (*right[:3], "left 2600", *right[4:])
    found = finding(tmp_path, *wrong)
    assert found.mend.startswith("it closes if leg 4 goes the other way")


def test_each_mend_mends(tmp_path):
    legs = ("east 6000", "north 2400", "west 2000", "north 2600", "west 4000", "south 4800")
    for number, length in ((6, 5000), (2, 2200), (4, 2400)):
        assert f"leg {number} is {length} mm long" in finding(tmp_path, *legs).mend
        changed = list(legs)
        changed[number - 1] = f"{changed[number - 1].split()[0]} {length}"
        assert floor(tmp_path, *changed)


@pytest.mark.parametrize(
    ("legs", "code"),
    [
        (("east 5000", "west 5000"), "floor-legs-count"),
        (("east 5000", "north 4000", "west 2000", "south 4500", "west 3000", "north 500"), "floor-crosses-itself"),
        (("east 5000", "north 4000", "east 0.001", "south 2000", "west 5000", "south 2000"), "floor-crosses-itself"),
        (("west 5000", "south 4000", "east 5000", "north 4000"), "floor-off-datum"),
        (("left 5000", "left 4000", "left 5000", "left 4000"), "clauses-disagree"),
        (("east 5000, called a", "north 4000, called a", "west 5000", "south 4000"), "name-twice"),
    ],
)
def test_floors_that_cannot_be(tmp_path, legs, code):
    assert finding(tmp_path, *legs).code == code


def test_a_wall_that_is_not_there_has_a_mend(tmp_path):
    found = finding(tmp_path, *L_ROOM, more=("socket P1 on east wall 3 centred at 500, up 300, 80 x 80",))
    assert (found.code, found.mend) == ("unknown-name", "did you mean `east wall 2`?")


def test_what_stands_in_the_room_has_faces(tmp_path):
    things = (
        "column P1 from 1000, 1000 to 1300, 1300, plaster",
        "soffit duct through 0, 0, 6000, 0, 6000, 500, 0, 400, underside at 2300, plaster",
        "socket K1 on P1 east face centred at 150, up 300, 80 x 80",
        "lining duct north face, duct plaster",
    )
    plan, findings = walked(tmp_path, *L_ROOM, more=things)
    assert findings == ()
    assert plan.room.solids[0].faces == ("P1 south face", "P1 east face", "P1 north face", "P1 west face")
    assert plan.room.solids[1].level == 2300
    assert plan.room.features[0].surface == "P1 east face"


def test_places_are_inside_the_walls(tmp_path):
    text = SMALL.replace(FLOOR, "  floor walked {\n" + "\n".join(f"    leg {leg}" for leg in L_ROOM) + "\n  }")
    use = "\nuse-of-room {\n  listener desk at 5000, 3000, height 1200\n}\n"
    _, findings = read_text(tmp_path, text.replace(DOOR, "") + use)
    assert [each.code for each in findings] == ["out-of-range"]
