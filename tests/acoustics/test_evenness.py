from dataclasses import replace
from fractions import Fraction as F
from math import sqrt

import numpy as np
import pytest

from planlang.acoustics.absorbers import Covered, room_rows
from planlang.acoustics.bands import ALL_BANDS
from planlang.acoustics.estimate import estimate_acoustics
from planlang.acoustics.evenness import evenness
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.room import Occupants
from planlang.plan.stock import OCTAVES, Seating
from planlang.syntax.span import NOWHERE
from tests import builders as make
from tests.acoustics.rooms import NAMES, box, layout, lined, surface

HARD = lined("plaster", 0.05)


def check(room):
    return evenness(room, room_rows(room, (), Covered({}, {})))


def with_lining(**names):
    return {**dict.fromkeys(NAMES, HARD), **{name.replace("_", " "): lining for name, lining in names.items()}}


def test_even_room_is_even_though_floor_and_ceiling_are_large():
    # 10 x 8 x 2.4 m: floor and ceiling are 65 % of the area
    found = check(box(HARD, size=(10_000, 8000, 2400)))
    assert not any(found.uneven)
    assert found.box


def test_absorbing_ceiling_makes_the_upright_axis_heavy():
    found = check(box(with_lining(ceiling=lined("tiles", 0.85)), size=(7000, 5000, 3000)))
    assert set(found.heavy_axis) == {2}
    assert found.alphas[2] == pytest.approx([0.45] * len(ALL_BANDS.columns))


def test_one_absorbing_wall_is_lopsided_before_it_is_heavy():
    found = check(box(with_lining(north_wall=lined("felt", 0.2))))
    assert set(found.heavy_axis) == {-1}
    assert set(found.lopsided_pair) == {1}


def test_hard_surfaces_are_not_lopsided():
    assert not any(check(box(with_lining(floor=lined("tile", 0.01)))).uneven)


def test_clouds_count_with_the_surface_that_they_hang_from():
    panels = layout((make.array(), 10))
    acoustics = estimate_acoustics(make.plan(), box(HARD), panels).value
    assert any("floor and ceiling hold over 60 %" in line for line in acoustics.warnings)
    assert all(
        high >= 2 * time
        for high, time in zip(acoustics.decay_after.high[1:], acoustics.decay_after.sabine[1:], strict=True)
    )


def test_box_reaches_fitzroy():
    room = box(with_lining(ceiling=lined("tiles", 0.85)), size=(7000, 5000, 3000))
    decay = estimate_acoustics(make.plan(arrays=()), room, Layout((), (), ())).value.decay_after
    # Fitzroy without air is 1.276 s at c = 343; air shortens it a little
    assert decay.high[0] >= 1.2


def sloped(**linings):
    flat = box(with_lining(**linings))
    ceiling = surface("ceiling", 6000, 4000, linings.get("ceiling", HARD), pitch=20.0)
    return RoomGeometry((*flat.surfaces[:-1], ceiling), (), flat.volume_m3)


@pytest.mark.parametrize("alpha", [0.2, 0.5, 0.9])
@pytest.mark.parametrize("name", ["north_wall", "ceiling", "floor"])
def test_an_uneven_room_that_is_no_box_goes_by_axes_among_which_its_slopes_are_shared(name, alpha):
    room = sloped(**{name: lined("felt", alpha)})
    assert not check(room).box
    decay = estimate_acoustics(make.plan(arrays=()), room, Layout((), (), ())).value.decay_after
    times = {formula.name: np.array(formula.times) for formula in decay.formulas}
    assert set(decay.leads) == {"Arau-Puchades"}
    assert decay.least == pytest.approx(np.stack(list(times.values())).min(axis=0))
    assert np.all(times["Norris-Eyring"] <= np.array(decay.value) * (1 + 1e-9))
    assert np.all(np.array(decay.value) <= times["Fitzroy"] * (1 + 1e-9))
    assert np.all(np.array(decay.high) >= times["Fitzroy"])


def test_a_slope_is_shared_by_the_squares_of_its_cosines():
    # 30 degrees, falling to the north: cos2 = 3/4 upright, sin2 = 1/4 level
    flat = box(HARD)
    slope = replace(surface("ceiling", 6000, 4000, HARD, pitch=30.0), inward=(0.0, -0.5, -sqrt(0.75)))
    room = RoomGeometry((*flat.surfaces[:-1], slope), (), flat.volume_m3)
    assert check(room).shares_of("ceiling") == pytest.approx({1: 0.25, 2: 0.75})
    assert check(room).shares_of("floor") == {2: 1.0}
    assert check(room).shares_of("") == {3: 1.0}
    assert check(room).areas.sum() == pytest.approx(sum(each.area_mm2 for each in room.surfaces) / 1e6)


def test_people_count_as_the_air_does():
    # in an even box K V / T is -S ln(1 - a) + 4 m V, and of 10 people of 0.5 m2 each 5 m2 more, by every formula
    people = Seating(at=NOWHERE, name="sitting", words="", absorption_m2=dict.fromkeys(OCTAVES, F(1, 2)), source="")
    occupied = make.room(occupants=(Occupants(at=NOWHERE, count=10, seating=people),))
    room = box(HARD)
    empty = estimate_acoustics(make.plan(arrays=()), room, Layout((), (), ())).value.decay_after
    full = estimate_acoustics(make.plan(arrays=(), room=occupied), room, Layout((), (), ())).value.decay_after
    constant = 24 * np.log(10) / 343.2 * room.volume_m3
    for without, with_them in zip(empty.formulas, full.formulas, strict=True):
        more = constant / np.array(with_them.times) - constant / np.array(without.times)
        assert more == pytest.approx([5.0] * 6, rel=0.01), with_them.name


def test_the_formula_that_leads_with_the_panels_leads_without_them_too():
    """Else a panel that makes a room uneven would seem to lengthen its decay."""
    acoustics = estimate_acoustics(make.plan(), sloped(ceiling=lined("board", 0.1)), layout((make.array(), 1))).value
    before, after = acoustics.decay_before, acoustics.decay_after
    assert "Arau-Puchades" in before.leads
    assert before.leads == after.leads
    assert all(then < now for now, then in zip(before.value, after.value, strict=True))


def test_an_even_room_that_is_no_box_goes_by_a_formula():
    decay = estimate_acoustics(make.plan(arrays=()), sloped(), Layout((), (), ())).value.decay_after
    assert set(decay.leads) == {"Sabine"}
    assert decay.least == decay.value


def test_bare_surfaces_divide_by_nothing():
    room = box(dict.fromkeys(NAMES))
    assert not any(check(room).uneven)
    outcome = estimate_acoustics(make.plan(arrays=(), note="", room=make.room(width=F(6000))), room, Layout((), (), ()))
    assert len(outcome.diagnostics) == 6
    assert np.all(np.isfinite(outcome.value.decay_before.high))
