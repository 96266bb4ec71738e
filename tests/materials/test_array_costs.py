"""What the materials of each array come to. Prices are invented."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.geometry.model import Layout
from planlang.materials.layouts import Detail
from planlang.materials.workshop import resolve_materials
from tests.builders import array, hang, hardware, panel_type, plan, price
from tests.materials.layouts import layout, place

SMALL = panel_type(name="small", mark="S", length=F(900))


def costs(of, placed):
    materials = resolve_materials(of, placed).value
    return materials, {each.array: each for each in materials.by_array}


def test_the_shares_of_all_arrays_add_up_to_the_order():
    of = plan(arrays=(array(), array(name="walls", mark="BW", panel=SMALL)))
    materials, found = costs(of, layout(of, 3))
    spent = sum(line.cost.amount for line in materials.purchases if line.cost)
    assert sum(each.cost.amount for each in found.values()) == spent
    assert found["clouds"].cost.amount > found["walls"].cost.amount > 0


def test_arrays_of_one_type_bear_it_by_their_panels():
    first, second = array(), array(name="more", mark="NC")
    placed = Layout((*place(first, 3), *place(second, 1)), (), ())
    _, found = costs(plan(arrays=(first, second)), placed)
    assert found["clouds"].cost.amount == 3 * found["more"].cost.amount


def test_hardware_goes_to_the_array_that_uses_it_and_not_by_the_face():
    dear = hardware(name="dear", words="dear link", price=price(100, "each"))
    first, second = array(), array(name="more", mark="NC", hang=replace(hang(), link=dear))
    placed = Layout((*place(first, 2), *place(second, 2)), (), ())
    materials, found = costs(plan(arrays=(first, second)), placed)
    links = {line.name: line.cost.amount for line in materials.purchases if line.cost}
    apart = found["more"].cost.amount - found["clouds"].cost.amount
    assert apart == links["dear"] - links[first.hang.link.name]


def test_an_array_that_uses_something_without_a_price_has_no_cost_and_says_what():
    unpriced = hardware(name="bare", words="bare link", price=None)
    first, second = array(), array(name="more", mark="NC", hang=replace(hang(), link=unpriced))
    placed = Layout((*place(first, 2), *place(second, 2)), (), ())
    _, found = costs(plan(arrays=(first, second)), placed)
    assert found["more"].cost is None
    assert found["more"].unpriced == ("bare link",)
    assert found["clouds"].cost is not None


@pytest.mark.parametrize("detail", [Detail.COUNTED, Detail.BY_AREA])
def test_a_check_leaves_it_out(detail):
    assert resolve_materials(plan(), layout(plan()), detail).value.by_array == ()
