"""Fixings into the ends of members: three quarters for lag screws by the NDS, refused else. All plans are invented."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.hardware.lateral import lag_combined, lateral_allowable
from planlang.hardware.withdrawal import withdrawal_per_mm
from tests import builders as b
from tests.hardware.scenes import ceiling_array, check, codes, members, second_support, surface, wall_array

EYE = b.screw_eye(words="forged lag eye 8 x 80", shank=F(8), thread=F(60))
FACE = surface(
    exposed=True,
    members=members(width=F(70), timber=b.timber(characteristic_density=F(290), characteristic_source="lowest class")),
)


def thread_of(outcome):
    (load,) = outcome.value.panels
    return load.steps[-1]


def test_a_lag_screw_keeps_three_quarters():
    side, end = (thread_of(check(ceiling_array(anchor=EYE, end_grain=way), FACE)) for way in (False, True))
    assert float(side.allowed.value) == pytest.approx(withdrawal_per_mm(8, 0.36) * 52 / 2)
    assert float(end.allowed.value) == pytest.approx(0.75 * float(side.allowed.value))
    assert "in end grain" in end.allowed.how


def test_with_shear_each_part_keeps_its_own():
    screw = b.hardware(name="lag-8", words="lag screw 8 x 80", rated_n=None, shank=F(8), thread=F(70))
    wall = surface("wall", members=members(width=F(63)))
    outcome = check(wall_array(anchor=screw, end_grain=True), wall)
    counts = 70 - 13 - 8
    withdrawal = 0.75 * withdrawal_per_mm(8, 0.36) * counts
    lateral = 0.67 * lateral_allowable(8, counts, 0.36, 13)
    (load,) = outcome.value.panels
    angle = float(load.steps[-1].allowed.how.split("pulled at ")[1].split(" deg")[0])
    assert float(load.steps[-1].allowed.value) == pytest.approx(lag_combined(withdrawal, lateral, angle), rel=5e-3)


@pytest.mark.parametrize(
    ("shank", "face", "rules", "code"),
    [
        (8, FACE, None, []),
        (F(635, 100), FACE, None, []),
        (6, FACE, None, ["end-grain-refused"]),
        (8, FACE, {"timber_rules": "ec5"}, ["end-grain-refused"]),
        (8, surface(pitch=20.0, origin=(0.0, 0.0, 1000.0), members=members(width=F(63))), None, ["end-grain-refused"]),
    ],
)
def test_what_has_no_rule_is_refused_and_never_hangable(shank, face, rules, code):
    outcome = check(ceiling_array(anchor=replace(EYE, shank=F(shank)), end_grain=True), face, rules=rules)
    assert codes(outcome) == code
    assert outcome.value.hangable is not bool(code)


def test_a_second_support_into_the_same_ends_is_reduced_too():
    second = second_support()
    side, end = (
        check(ceiling_array(anchor=EYE, second=second, end_grain=way), FACE).value.panels[0].second_steps[-1]
        for way in (False, True)
    )
    assert float(end.allowed.value) == pytest.approx(0.75 * float(side.allowed.value))
