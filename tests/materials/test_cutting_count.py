"""Counting sheets for a check gives what the layouts for the book use."""

from fractions import Fraction as F

from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.materials.cutting import Demand
from planlang.materials.cutting.counting import count_sheets
from planlang.materials.cutting.sheets import cut_sheets

DEMANDS = st.lists(
    st.builds(
        Demand,
        st.just("P"),
        st.integers(50, 1200).map(F),
        st.integers(20, 600).map(F),
        st.integers(1, 9),
        st.booleans(),
    ),
    max_size=6,
)


@settings(max_examples=40, deadline=None)
@given(DEMANDS)
def test_the_count_is_that_of_the_layouts(demands):
    stock = (F(1220), F(610), F(3), F(5))
    assert count_sheets(*stock, demands) == cut_sheets(*stock, (F(300), F(100)), demands).used
