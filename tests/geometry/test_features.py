from fractions import Fraction as F

from planlang.geometry.model import Box
from tests import builders
from tests.geometry.rooms import codes, feature, lamp, only, rooms_of, slope


def room_with(*features, planes=None):
    return rooms_of(*(planes or (builders.flat(),)), features=features)


def test_a_feature_has_the_box_round_its_centre():
    placed = room_with(feature("w1", "east wall", (1900, 1450), (1600, 1100))).value.features
    assert placed[0].box == Box(F(1100), F(900), F(2700), F(2000))


def test_a_door_stands_on_the_floor_edge():
    assert room_with(feature("d1", "west wall", (700, 1025), (900, 2050), kind="door")).diagnostics == ()


def test_a_feature_that_sticks_out():
    found = only(room_with(feature("d1", "west wall", (430, 1025), (900, 2050), kind="door")), "feature-off-surface")
    assert found.message == "door d1 sticks out of west wall by 20 mm"
    assert found.mend == "move it 20 mm right"


def test_a_window_over_a_slanting_edge():
    """Under a rise of 3 in 4 the distance to the slanting edge is 4/5 of the height over it: elementary geometry."""
    planes = (slope("pitch", "south", 1000, rise=0.75),)
    window = feature("w1", "west wall", (1000, 1500), (1000, 1000), kind="window")
    found = only(room_with(window, planes=planes), "feature-off-surface")  # upper left at (500, 2000), edge at 1375
    assert found.message.endswith("by 500 mm")
    assert found.mend == "move it 625 mm down"  # 833 mm right would do as well: the lesser is named
    assert (
        "too large"
        in room_with(feature("w2", "west wall", (1000, 900), (5000, 100)), planes=planes).diagnostics[0].mend
    )


def test_a_round_feature_is_a_disc():
    lamps = (lamp("L1", (1000, 1000), 100), lamp("L2", (1071, 1071), 100))  # boxes overlap, discs are 0.4 mm apart
    assert room_with(*lamps).diagnostics == ()
    assert codes(room_with(lamp("L1", (1000, 1000), 100), lamp("L2", (1070, 1070), 100))) == ["features-overlap"]
    only(room_with(lamp("L1", (40, 1000), 100)), "feature-off-surface")


def test_features_that_overlap():
    both = (feature("R1", "ceiling", (1000, 1000), (500, 500)), feature("R2", "ceiling", (1480, 1100), (500, 500)))
    found = only(room_with(*both), "features-overlap")
    assert found.message == "rooflight R2 overlaps rooflight R1 on ceiling by 20 mm"
    touching = (both[0], feature("R2", "ceiling", (1500, 1100), (500, 500)))
    assert room_with(*touching).diagnostics == ()


def test_a_feature_on_no_surface():
    assert "no such surface" in only(room_with(lamp("L1", (1, 1), surface="roof")), "surface-unknown").message


def test_a_feature_on_a_refused_plane_is_not_reported_again():
    outcome = room_with(lamp("L1", (500, 500), surface="upper"), planes=(builders.flat(), builders.flat("upper", 3000)))
    only(outcome, "ceiling-plane-hidden")
