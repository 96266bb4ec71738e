"""First reflections against the image sources of pyroomacoustics (a general-purpose room acoustics library), and
against plane geometry done by hand."""

import math

import numpy as np
import pytest

from planlang.geometry.polygon import edges_of, point_clearance
from planlang.geometry.reflections import first_between, mirror_image, reflection
from planlang.geometry.room import build_room
from tests import builders
from tests.geometry.rooms import floor_of, rooms_of, slope

pra = pytest.importorskip("pyroomacoustics")

SOURCE, EAR = (1300.0, 900.0, 1500.0), (4100.0, 2600.0, 1200.0)  # mm, invented


def images_of_box():
    """Image sources of order one in a box 6 x 4 x 2.5 m, in mm."""
    room = pra.ShoeBox([6.0, 4.0, 2.5], fs=16000, max_order=1)
    room.add_source([coordinate / 1000 for coordinate in SOURCE])
    room.add_microphone([coordinate / 1000 for coordinate in EAR])
    room.image_source_model()
    source = room.sources[0]
    return source.images[:, source.orders == 1].T * 1000


def test_mirror_images_in_a_box_are_those_of_the_library():
    room = build_room(builders.plan()).value
    ours = sorted(tuple(round(x, 6) for x in mirror_image(surface, SOURCE)) for surface in room.surfaces)
    theirs = sorted(tuple(round(float(x), 6) for x in image) for image in images_of_box())
    assert len(ours) == len(theirs) == 6
    # the library computes in single precision
    assert np.allclose(ours, theirs, atol=0.01)


def test_path_lengths_in_a_box_are_those_of_the_library():
    room = build_room(builders.plan()).value
    ours = sorted(reflection(surface, SOURCE, EAR).path for surface in room.surfaces)
    theirs = sorted(math.dist(image, EAR) for image in images_of_box())
    assert ours == pytest.approx(theirs, abs=0.01)


def test_a_reflection_point_is_on_its_surface_with_equal_angles():
    planes = (slope("south-pitch", "south", 1500, 40), slope("north-pitch", "north", 1500, 40))
    room = rooms_of(*planes).value
    for surface in room.surfaces:
        found = reflection(surface, SOURCE, EAR)
        spot = surface.in_room(found.across, found.up)
        incoming = np.subtract(spot, SOURCE) / math.dist(spot, SOURCE)
        outgoing = np.subtract(EAR, spot) / math.dist(spot, EAR)
        normal = np.array(surface.inward)
        assert incoming @ normal == pytest.approx(-(outgoing @ normal))
        assert found.path == pytest.approx(math.dist(SOURCE, spot) + math.dist(spot, EAR))


def test_a_polyhedral_room_of_the_library_gives_the_same_images_of_slopes():
    """A gable 4 m wide, walls 1.5 m, pitch 45 degrees, 6 m long, as a polyhedron."""
    planes = (slope("south-pitch", "south", 1500, 45), slope("north-pitch", "north", 1500, 45))
    room = rooms_of(*planes).value
    walls = []
    for surface in room.surfaces:
        corners = np.array([surface.in_room(x, y) for x, y in surface.outline]).T / 1000
        normal = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 1])
        if normal @ np.array(surface.inward) > 0:  # the library wants normals that point out
            corners = corners[:, ::-1]
        walls.append(pra.wall_factory(corners, [0.1], [0.1]))
    theirs = pra.Room(walls, fs=16000, max_order=1)
    theirs.add_source([coordinate / 1000 for coordinate in SOURCE])
    theirs.add_microphone([coordinate / 1000 for coordinate in EAR])
    theirs.image_source_model()
    source = theirs.sources[0]
    seen = {tuple(np.round(image * 1000, 1)) for image in source.images[:, source.orders == 1].T}
    ours = {tuple(round(x, 1) for x in mirror_image(surface, SOURCE)) for surface in room.surfaces}
    assert seen
    for image in seen:
        assert min(math.dist(image, own) for own in ours) < 0.5
    for name in ("south-pitch", "north-pitch"):
        own = mirror_image(room.surface(name), SOURCE)
        assert min(math.dist(image, own) for image in seen) < 0.5


L_SHAPE = [(0, 0), (6000, 0), (6000, 2500), (2500, 2500), (2500, 5000), (0, 5000)]


@pytest.mark.parametrize(
    "places",
    [
        ((1200.0, 4200.0, 1500.0), (5000.0, 1200.0, 1200.0)),
        ((1000.0, 1000.0, 1500.0), (5200.0, 1900.0, 1200.0)),
        ((1900.0, 4700.0, 1500.0), (1300.0, 3100.0, 1200.0)),
    ],
)
def test_what_is_seen_round_an_inner_corner_is_what_the_library_sees(places):
    """An L-room, ends of it out of sight of one another: the library keeps the images that the ear can see."""
    source, ear = places
    room = rooms_of(builders.flat(height=2500), floor=floor_of(*L_SHAPE)).value
    theirs = pra.Room.from_corners(np.array(L_SHAPE).T / 1000, fs=16000, max_order=1)
    theirs.extrude(2.5)
    theirs.add_source([coordinate / 1000 for coordinate in source])
    theirs.add_microphone([coordinate / 1000 for coordinate in ear])
    theirs.image_source_model()
    kept = theirs.sources[0]
    visible = np.asarray(theirs.visibility[0][0], dtype=bool)
    seen = sorted(tuple(np.round(image * 1000)) for image in kept.images[:, (kept.orders == 1) & visible].T)
    ours = []
    for surface in room.surfaces:
        found = reflection(surface, source, ear)
        if found is None or point_clearance(edges_of(surface.outline), found.across, found.up) < 0:
            continue
        spot = surface.in_room(found.across, found.up)
        if all(first_between(room.surfaces, surface, end, spot) is None for end in (source, ear)):
            ours.append(tuple(np.round(mirror_image(surface, source))))
    assert seen
    assert sorted(ours) == seen
