"""Free places on a drawing, against a look at every box."""

from hypothesis import given
from hypothesis import strategies as st

from planlang.jobbook.drawings.extent import Extent
from planlang.jobbook.drawings.ground import Ground

BOXES = st.builds(
    lambda left, top, width, height: Extent(left, top, left + width, top + height),
    st.floats(-50, 200), st.floats(-50, 200), st.floats(0, 60), st.floats(0, 60),
)  # fmt: skip


@given(st.lists(BOXES, max_size=20), BOXES)
def test_what_is_taken_is_found_wherever_it_lies(taken, box):
    ground = Ground()
    ground.add_all(taken)
    assert ground.holds(box) == any(box.overlaps(other) for other in taken)
