"""Laws that hold for any room, whatever its figures."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.acoustics.air import AirState
from planlang.acoustics.estimate import estimate_acoustics
from planlang.acoustics.layers import absorption, air_gap, cloth_facing, porous_layer
from planlang.acoustics.porous import allard_champoux, miki
from planlang.acoustics.reverberation import arau_puchades, eyring, fitzroy, millington, sabine
from planlang.geometry.model import Layout
from tests import builders as make
from tests.acoustics.rooms import NAMES, box, layout, lined

volumes = st.floats(10, 5000)
alphas = st.floats(0.001, 0.98)
air = st.floats(0, 0.02)
metres = st.floats(2, 30)


def surface_of(sides):
    x, y, z = sides
    return 2 * (x * y + y * z + z * x)


@given(st.tuples(metres, metres, metres), alphas, st.floats(0, 0.5), air)
def test_more_absorption_never_lengthens_the_decay(sides, alpha, more, air_m):
    volume, surface = float(np.prod(sides)), surface_of(sides)
    less, most = alpha * surface, (alpha + more) * surface
    assert sabine(volume, most, air_m, 343.2) <= sabine(volume, less, air_m, 343.2)
    assert eyring(volume, surface, most, air_m, 343.2) <= eyring(volume, surface, less, air_m, 343.2)


@given(st.tuples(metres, metres, metres), alphas, air)
def test_eyring_is_never_longer_than_sabine(sides, alpha, air_m):
    volume, surface = float(np.prod(sides)), surface_of(sides)
    assert eyring(volume, surface, alpha * surface, air_m, 343.2) <= sabine(volume, alpha * surface, air_m, 343.2)


@given(st.tuples(metres, metres, metres), st.floats(1e-7, 1e-4), air)
def test_eyring_tends_to_sabine_as_absorption_vanishes(sides, alpha, air_m):
    volume, surface = float(np.prod(sides)), surface_of(sides)
    by_sabine = float(sabine(volume, alpha * surface, air_m, 343.2))
    assert float(eyring(volume, surface, alpha * surface, air_m, 343.2)) == pytest.approx(by_sabine, rel=1e-4)


@given(st.tuples(metres, metres, metres), st.tuples(alphas, alphas, alphas), air)
def test_order_of_the_formulas_for_uneven_rooms(sides, axis_alphas, air_m):
    # Arau's is the geometric, Fitzroy's the arithmetic mean of the same times; Millington's is at most Eyring's
    x, y, z = sides
    areas, values = 2 * np.array([y * z, x * z, x * y]), np.array(axis_alphas)
    volume = x * y * z
    by_eyring = float(eyring(volume, areas.sum(), areas @ values, air_m, 343.2))
    by_arau = float(arau_puchades(volume, areas, values, air_m, 343.2))
    assert by_arau <= float(fitzroy(volume, areas, values, air_m, 343.2)) * (1 + 1e-9)
    assert float(millington(volume, areas, values, air_m, 343.2)) <= by_eyring * (1 + 1e-9)


@given(
    lengths=st.tuples(st.floats(0.01, 0.3), st.floats(0.001, 0.5)),
    sigma=st.floats(1500, 60_000),
    cloth=st.floats(0, 3000),
    degrees=st.floats(0, 85),
    model=st.sampled_from([miki, allard_champoux]),
)
@settings(max_examples=60)
def test_passive_stacks_absorb_between_nothing_and_all(lengths, sigma, cloth, degrees, model):
    thickness, gap = lengths
    state, bands = AirState(343.2, 1.204), np.array([125.0, 250.0, 500.0, 1000.0, 2000.0, 4000.0])
    porous = porous_layer(model(bands, sigma, state), thickness)
    stack = [cloth_facing(bands, cloth), porous, air_gap(bands, gap, state)]
    values = absorption(stack, bands, np.array([np.radians(degrees)]), state)
    assert np.all(values >= 0)
    assert np.all(values <= 1 + 1e-12)


@given(st.lists(st.floats(0.01, 0.9).map(lambda value: round(value, 3)), min_size=6, max_size=6), st.integers(0, 12))
@settings(max_examples=25, deadline=None)
def test_estimates_keep_their_order(values, count):
    room = box({name: lined(f"lining-{name}", value) for name, value in zip(NAMES, values, strict=True)})
    panels = layout((make.array(), count)) if count else Layout((), (), ())
    acoustics = estimate_acoustics(make.plan(), room, panels).value
    for state in (acoustics.decay_before, acoustics.decay_after):
        assert np.all(np.array(state.low) <= np.array(state.value))
        assert np.all(np.array(state.value) <= np.array(state.high))
        assert all(value in [formula.times[n] for formula in state.formulas] for n, value in enumerate(state.value))
    before = acoustics.decay_before
    assert np.all(np.array(before.eyring) <= np.array(before.sabine) + 1e-12)
    assert np.all(np.array(acoustics.decay_after.sabine) <= np.array(acoustics.decay_before.sabine) + 1e-12)
