"""Eurocode 5 for screws in shear, and in pull and shear together, against the equations as the standard prints them.

EN 1995-1-1:2004 8.6, 8.9, 8.14, 8.15, 8.28, from memory. The plans are invented.
"""

import math
from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planlang.hardware.eurocode import bearing, combined, design, eurocode_lateral
from planlang.hardware.withdrawal import eurocode_axial, eurocode_declared
from tests import builders as b
from tests.hardware.scenes import ceiling_array, check, codes, hung, members, rail, rail_runs, surface, wall_array

sizes = st.tuples(st.floats(4, 12), st.floats(20, 120), st.floats(15, 60), st.floats(290, 420), st.floats(290, 420))
EC5 = {"timber_rules": "ec5"}


def effective(shank):
    """1.1 times the root (8.7.1), which is taken as three quarters of the shank."""
    return 1.1 * 2 / 3 * shank


def moment(diameter):
    return 0.3 * 400 * diameter**2.6


def printed_timber_to_timber(shank, t2, t1, f2, f1):
    """8.6 (a) to (f), with the factors of 1.05 and 1.15, without the rope effect."""
    d = effective(shank)
    yields, ratio, thick = moment(d), f2 / f1, t2 / t1
    wide = math.sqrt(ratio + 2 * ratio**2 * (1 + thick + thick**2) + ratio**3 * thick**2) - ratio * (1 + thick)
    first = math.sqrt(2 * ratio * (1 + ratio) + 4 * ratio * (2 + ratio) * yields / (f1 * d * t1**2)) - ratio
    second = math.sqrt(2 * ratio**2 * (1 + ratio) + 4 * ratio * (1 + 2 * ratio) * yields / (f1 * d * t2**2)) - ratio
    both = math.sqrt(2 * ratio / (1 + ratio)) * math.sqrt(2 * yields * f1 * d)
    rigid = (f1 * t1 * d, f2 * t2 * d, f1 * t1 * d / (1 + ratio) * wide)
    hinged = (f1 * t1 * d / (2 + ratio) * first, f1 * t2 * d / (1 + 2 * ratio) * second)
    return min(rigid + hinged + (both,)), min((*rigid, 1.05 * hinged[0], 1.05 * hinged[1], 1.15 * both))


@given(sizes)
def test_timber_to_timber_is_the_printed_formula_without_its_factors(size):
    shank, main, side, main_density, side_density = size
    diameter = effective(shank)
    bare, full = printed_timber_to_timber(
        shank, main, side, bearing(main_density, diameter), bearing(side_density, diameter)
    )
    ours = eurocode_lateral(shank, main, main_density, 0.0, (side, side_density))
    assert ours == pytest.approx(bare, rel=1e-9)
    assert ours <= full * (1 + 1e-9)


@given(sizes)
def test_a_thin_plate_is_the_printed_formula_without_its_factor(size):
    shank, main, _, density, _ = size
    diameter = effective(shank)
    strength = bearing(density, diameter)
    # 8.9 (a) and (b)
    crushed, bent = 0.4 * strength * main * diameter, math.sqrt(2 * moment(diameter) * strength * diameter)
    ours = eurocode_lateral(shank, main, density)
    assert ours == pytest.approx(min(crushed, bent), rel=1e-9)
    assert ours <= min(crushed, 1.15 * bent) * (1 + 1e-9)


@given(sizes, st.floats(0, 30))
def test_what_lies_between_never_helps(size, gap):
    shank, main, side, main_density, side_density = size
    for other in (None, (side, side_density)):
        assert eurocode_lateral(shank, main, main_density, gap, other) <= eurocode_lateral(
            shank, main, main_density, 0.0, other
        ) * (1 + 1e-9)


# Worked by hand, 350 kg/m3: d 4: 0.082 x 350 x 4^-0.3 = 18.93; d 8 across: 0.082 x 0.92 x 350 / 1.47 = 17.96;
# d 10: 0.082 x 0.9 x 350 / 1.5 = 17.22.
@pytest.mark.parametrize(("diameter", "strength"), [(4, 18.935), (6, 16.767), (8, 17.962), (10, 17.22)])
def test_bearing_strength(diameter, strength):
    assert bearing(350, diameter) == pytest.approx(strength, abs=0.01)


# 8.28 by hand: a pull of 3 of 5 and a shear of 4 of 5 use 0.36 + 0.64 of what is allowed.
def test_pull_and_shear_together():
    found = combined(1000.0, 1000.0, 30.0)
    assert found == pytest.approx(1000)
    angle = math.degrees(math.atan2(3, 4))
    assert combined(5.0, 5.0, angle) == pytest.approx(5.0)
    assert combined(6.0, 3.0, 90.0) == pytest.approx(6.0)
    assert combined(6.0, 3.0, 0.0) == pytest.approx(3.0)


@given(st.floats(1, 1e4), st.floats(1, 1e4), st.floats(0, 90))
def test_the_two_parts_use_up_exactly_one(withdrawal, lateral, angle):
    force = combined(withdrawal, lateral, angle)
    pull, shear = force * math.sin(math.radians(angle)), force * math.cos(math.radians(angle))
    assert (pull / withdrawal) ** 2 + (shear / lateral) ** 2 == pytest.approx(1)


# --- in the load path ----------------------------------------------------------------------------------------


def c24(**over):
    base = {"characteristic_density": F(350), "characteristic_source": "invented stamp"}
    return b.timber(**{**base, **over})


def wall(**over):
    return surface("wall", members=members(timber=c24(), width=F(63), **over))


def screw(**over):
    base = {"name": "screw-6", "words": "wood screw 6 x 80", "rated_n": None, "shank": F(6), "thread": F(65)}
    return b.hardware(**{**base, **over})


def last(outcome):
    (load,) = outcome.value.panels
    return load.steps[-1]


def test_a_cleat_on_a_wall_goes_by_eurocode_with_pull_and_shear():
    outcome = check(wall_array(anchor=screw()), wall(), rules=EC5)
    assert codes(outcome) == []
    step = last(outcome)
    counts = 65 - 13 - 6
    pulled = eurocode_axial(6, counts, 350).design * 2**0.9 / 2
    sheared = design(eurocode_lateral(6, counts, 350, 13))
    pull, down = (float(value) for value in _pull_and_shear(outcome))
    angle = math.degrees(math.atan2(pull, down))
    assert float(step.allowed.value) == pytest.approx(combined(pulled, sheared, angle) / 1.35, rel=1e-6)
    assert "Eurocode 5" in step.allowed.how
    assert "NDS" not in step.allowed.source


def _pull_and_shear(outcome):
    """What pulls and what shears one point, from the weight alone: W e / z, W."""
    (load,) = outcome.value.panels
    kilos = sum(item.kg for item in load.masses)
    off = sum(item.kg * item.height_mm for item in load.masses) / kilos + 15
    weight = float(load.share.value)
    return weight * off / 1440, weight


def test_a_screw_under_6_mm_holds_by_what_its_maker_declares_and_not_without():
    thin = {"shank": F(5), "thread": F(60)}
    assert codes(check(wall_array(anchor=screw(**thin)), wall(), rules=EC5)) == ["screw-outside-ec5"]
    declared = screw(**thin, withdraws=(F(11), F(350)), withdraws_source="invented declaration")
    outcome = check(wall_array(anchor=declared), wall(), rules=EC5)
    assert codes(outcome) == []
    assert "invented declaration" in last(outcome).allowed.source
    expected = eurocode_declared(11, 350, 5, 60 - 13 - 5, 350)
    assert dict(last(outcome).allowed.inputs)["characteristic withdrawal"] == f"{math.floor(expected)} N"


@pytest.mark.parametrize(
    ("piece", "timber"),
    [
        ({"withdraws": (F(11), F(350)), "withdraws_source": "assumed"}, {}),
        ({}, {"characteristic_source": "assumed"}),
        ({}, {"characteristic_source": ""}),
    ],
)
def test_what_nobody_stands_for_never_holds(piece, timber):
    face = surface("wall", members=members(timber=c24(**timber), width=F(63)))
    assert last(check(wall_array(anchor=screw(**piece)), face, rules=EC5)).status == "not verified"


def test_the_lowest_class_needs_nobody():
    lowest = c24(characteristic_density=F(290), characteristic_source="assumed: the lowest class")
    face = surface("wall", members=members(timber=lowest, width=F(63)))
    assert last(check(wall_array(anchor=screw()), face, rules=EC5)).status == "holds"


def test_a_rail_states_its_density_where_its_screws_are_sheared():
    face = surface(pitch=20.0, members=members(timber=c24(), width=F(63)), origin=(0.0, 0.0, 1000.0))
    bare = rail(timber=b.timber(section=(F(95), F(95))))
    dense = rail(timber=c24(section=(F(95), F(95))))

    def screws_of(one):
        array = ceiling_array(into="rail", rail=one)
        panel = hung(array, face, lands_on="rail 1")
        return check(array, face, (panel,), rail_runs(panel), rules=EC5)

    assert "characteristic-density-missing" in codes(screws_of(bare))
    assert "characteristic-density-missing" not in codes(screws_of(dense))
