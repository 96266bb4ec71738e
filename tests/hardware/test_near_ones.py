"""The nearest panel among many, against a look at each of them exactly."""

from fractions import Fraction as F

from hypothesis import given
from hypothesis import strategies as st

from planlang.hardware.clearances import near_ones, nearest
from tests.hardware.scenes import ceiling_array, hung, surface
from tests.hardware.test_words_of_safety import feature

PLACES = st.lists(st.tuples(st.integers(0, 5000), st.integers(0, 3000)), min_size=1, max_size=12)


@given(PLACES, st.integers(0, 6000), st.integers(0, 4000), st.booleans())
def test_the_nearest_is_never_left_out(places, across, up, is_round):
    array, face = ceiling_array(), surface()
    panels = [hung(array, face, left=left, lower=lower, number=n) for n, (left, lower) in enumerate(places)]
    thing = feature("luminaire", across=across, up=up, round=is_round, width=F(310, 3))
    few = near_ones(panels, [panel.box.rough for panel in panels], thing)
    assert nearest(few, thing)[1] == nearest(panels, thing)[1]
