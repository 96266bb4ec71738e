"""How rays find the piece of a face, and bands that scatter differently."""

import numpy as np
import pytest

from planlang.acoustics import rays
from planlang.acoustics.decay_curves import backward_integral, reverberation_time
from planlang.acoustics.faces import within
from planlang.acoustics.pieces import piece_map
from planlang.acoustics.rays import EARS, MOST_FLIGHTS, STEP, Rays, _Tracer, bands_alike, trace
from tests.reference.test_acoustics_rays import EAST, NORTH, SOURCE, UP, Face, Piece, box, face

EAR = np.array([4.0, 2.0, 1.2])


def first_that_fits(pieces, x, y):
    """Every piece asked in turn."""
    for number, ((left, lower, right, upper), is_round, outline) in enumerate(pieces):
        if is_round:
            across, up = (2 * x - left - right) / (right - left), (2 * y - lower - upper) / (upper - lower)
            if across**2 + up**2 <= 1:
                return number
        elif (
            left <= x < right
            and lower <= y < upper
            and (not outline or (x - left) * (upper - lower) <= (right - left) * (upper - y))
        ):
            return number
    return len(pieces)


def half(x, y, wide, high):
    """The half of a box below its falling diagonal."""
    return ((x, y), (x + wide, y), (x, y + high))


def test_pieces_are_found_as_if_each_were_asked_in_turn():
    chance = np.random.default_rng(3)
    corners = chance.uniform(0, 4, (30, 2))
    sizes = chance.uniform(0.2, 1.5, (30, 2))
    pieces = [
        ((x, y, x + wide, y + high), number % 4 == 1, half(x, y, wide, high) if number % 4 == 2 else ())
        for number, ((x, y), (wide, high)) in enumerate(zip(corners, sizes, strict=True))
    ]
    places = chance.uniform(-0.5, 6, (3000, 2))
    found = piece_map(pieces).at(places[:, 0], places[:, 1])
    assert list(found) == [first_that_fits(pieces, x, y) for x, y in places]
    assert len(set(found)) > 25


def test_a_face_without_pieces_is_all_rest():
    assert list(piece_map([]).at(np.array([0.0, 3.0]), np.array([1.0, 2.0]))) == [0, 0]


def scattering(shares):
    """A box with a treated ceiling, of which all faces scatter so, a value a band."""
    faces = []
    for each in box((6, 4, 2.7), (0.05, 0.05, 0.05, 0.05, 0.05, 0.8), 0.0, bands=len(shares)):
        (piece,) = each.pieces
        faces.append(Face(each.origin, each.across, each.up, each.inward, each.outline,
                          (Piece((), piece.kept, np.array(shares)),)))  # fmt: skip
    return faces


def test_bands_that_scatter_differently_take_ways_of_their_own():
    shares = (0.1, 0.7, 0.1)
    assert [list(bands) for bands in bands_alike(scattering(shares), 3)] == [[0, 2], [1]]
    together = trace(scattering(shares), SOURCE, [EAR], 343.2, np.zeros(3), 5, Rays(2000))
    for band, share in enumerate(shares):
        alone = trace(scattering((share,)), SOURCE, [EAR], 343.2, np.zeros(1), 5, Rays(2000))
        steps = min(len(alone.room), len(together.room))
        assert together.room[:steps, band] == pytest.approx(alone.room[:steps, 0], abs=1e-12)
        assert together.listeners[0, :steps, band] == pytest.approx(alone.listeners[0, :steps, 0], abs=1e-12)


def test_of_many_listeners_each_hears_as_much_as_one_alone():
    ears = [np.array([x, 2.0, 1.2]) for x in np.linspace(3.5, 4.5, 2 * EARS)]
    room = scattering((0.3,))
    many = trace(room, SOURCE, ears, 343.2, np.zeros(1), 5, Rays(8000)).listeners.sum(axis=(1, 2))
    for number in (0, 2 * EARS - 1):
        alone = trace(room, SOURCE, [ears[number]], 343.2, np.zeros(1), 5, Rays(8000)).listeners.sum()
        assert many[number] == pytest.approx(alone, rel=0.05)


def with_block(gap):
    """A box with a block on its floor, so far (m) from the south wall; with a back only where there is a gap."""
    x1, x2, y1, y2, top = 1.5, 3.5, gap, 0.6 + gap, 1.2
    sides = [
        ((x1, y2, 0), EAST, UP, NORTH, (x2 - x1, top)),
        ((x1, y1, 0), NORTH, UP, -EAST, (y2 - y1, top)),
        ((x2, y1, 0), NORTH, UP, EAST, (y2 - y1, top)),
        ((x1, y1, top), EAST, NORTH, UP, (x2 - x1, y2 - y1)),
    ]
    if gap:
        sides.append(((x1, y1, 0), EAST, UP, -NORTH, (x2 - x1, top)))
    return [*box((5, 4, 2.6), (0.1,) * 6, 0.3), *(face(*side, 0.1, 0.3) for side in sides)]


def test_a_slit_that_a_survey_leaves_takes_no_time_and_changes_nothing():
    source = np.array([4.2, 3.1, 1.4])
    times = []
    for gap in (0.0, 0.001):
        tracer = _Tracer(with_block(gap), source, [], 343.2, 3, 4000, np.zeros(1, dtype=np.intp))
        for window in (0.08, 0.16, 0.24, 0.32, 0.40):
            tracer.advance(window)
        assert tracer.bounce.max() < 5 * MOST_FLIGHTS
        assert tracer.lost == 0
        times.append(reverberation_time(backward_integral(tracer.remaining(200), STEP), STEP)[0])
    assert times[1] == pytest.approx(times[0], rel=0.03)


def test_few_rays_are_held_against_all_faces_together_and_many_against_each_with_the_same_outcome(monkeypatch):
    room = with_block(0.4)
    together = trace(room, SOURCE, [EAR], 343.2, np.zeros(1), 5, Rays(2000))
    monkeypatch.setattr(rays, "TOGETHER", 0)
    one_by_one = trace(room, SOURCE, [EAR], 343.2, np.zeros(1), 5, Rays(2000))
    assert np.array_equal(together.room, one_by_one.room)
    assert np.array_equal(together.listeners, one_by_one.listeners)


def test_a_rectangle_holds_what_its_outline_with_a_corner_more_holds():
    east, up = np.meshgrid(np.linspace(-0.5, 2.5, 13), np.linspace(-0.5, 1.5, 9))
    places = np.stack([east.ravel(), up.ravel(), np.zeros(east.size)])
    corners = ((0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0))
    plane = (np.zeros(3), np.eye(3)[0], np.eye(3)[1], np.eye(3)[2])
    plain, more = Face(*plane, corners, ()), Face(*plane, (*corners[:1], (1.0, 0.0), *corners[1:]), ())
    assert np.array_equal(within(plain, places), within(more, places))
    assert within(plain, places).any()
