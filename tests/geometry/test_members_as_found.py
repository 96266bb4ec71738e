"""Members that were measured one by one, and panels that move a little to meet them."""

from fractions import Fraction as F

from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.hanging.members import least_shift, nearest_member, shifts_onto
from tests import builders
from tests.geometry.rooms import codes, layout_of, lined, members, only, row

FOUND = (F(310), F(705), F(1098), F(1512), F(1905), F(2290))  # some 400 apart, as in an old house; invented


def ceiling(**over):
    return (lined("ceiling", members=members(**{"measured": FOUND, "centres": F(0), "first": FOUND[0], **over})),)


def clouds(count=1, gap=0, start=94, **over):
    """Eyes at start + 6 and start + 794."""
    panel = builders.panel_type(width=F(800))
    return builders.array(panel=panel, placement=row(count, gap, across=builders.along("start", start)), **over)


def test_points_land_on_what_was_found():
    outcome = layout_of(clouds(start=302), linings=ceiling())
    assert codes(outcome) == []
    landed = [(point.lands_on, point.off_centre) for point in outcome.value.panels[0].points]
    assert landed == [("joist 1", 2), ("joist 3", 2), ("joist 3", 2), ("joist 1", 2)]


def test_a_miss_names_the_shift_that_mends_it_or_the_rails():
    found = only(layout_of(clouds(start=340), linings=ceiling()), "point-misses-member")
    assert found.mend == "move the whole array 36 mm west"  # 346 and 1134 from 310 and 1098: 36 each
    narrow = (lined("ceiling", members=members(measured=(F(310), F(705)), centres=F(0), first=F(310))),)
    found = only(layout_of(clouds(), linings=narrow), "point-misses-member")
    assert found.mend == "use rails across the joists, up at 1350 mm and 2650 mm"


def test_each_panel_snaps_by_itself_and_the_arithmetic_says_so():
    """Two panels with a gap of 400, 30 to 40 off what was found."""
    hang = builders.hang(snap=F(40))
    outcome = layout_of(clouds(2, 400, start=335, hang=hang), linings=ceiling())
    assert codes(outcome) == []
    first, second = outcome.value.panels
    # the eyes at 341 and 1129 are 31 off 310 and 1098; those at 1541 and 2329 are 29 and 39 off 1512 and 2290
    assert first.box.left == 335 - 31
    assert second.box.left == 335 + 1200 - 34
    assert "moved 31 mm west to 304 mm, so that its points land on the joists" in first.how
    assert max(point.off_centre for point in second.points) == 5


def test_a_panel_that_would_move_too_far_stays_and_says_so():
    hang = builders.hang(snap=F(10))
    outcome = layout_of(clouds(start=335, hang=hang), linings=ceiling())
    found = only(outcome, "point-misses-member")
    assert found.message.endswith("; no move of at most 10 mm lands it")
    assert outcome.value.panels[0].box.left == 335


def test_points_that_land_are_not_moved():
    hang = builders.hang(snap=F(10))
    assert layout_of(clouds(start=300, hang=hang), linings=ceiling()).value.panels[0].box.left == 300


LINES = st.lists(st.integers(1, 60), min_size=1, max_size=8).map(
    lambda steps: tuple(F(sum(steps[: index + 1]) * 10) for index in range(len(steps)))
)


@settings(max_examples=80, deadline=None)
@given(LINES, st.lists(st.integers(0, 3000), min_size=1, max_size=4), st.integers(0, 4), st.integers(0, 200))
def test_the_least_shift_is_what_trying_every_millimetre_finds(lines, coordinates, allowed, most):
    places = [F(at) for at in coordinates]

    def lands(shift):
        return all(min(abs(line - at - shift) for line in lines) <= allowed for at in places)

    found = least_shift(shifts_onto(lines, places, F(allowed)), F(most))
    tried = [shift for shift in range(-most, most + 1) if lands(shift)]
    assert (found is None) == (not tried)
    if found is not None:
        assert lands(found)
        assert abs(found) <= most
        assert (found == 0) == lands(0)


@given(LINES, st.integers(-100, 6000))
def test_the_nearest_member_is_the_nearest(lines, at):
    index, off = nearest_member(members(measured=lines, centres=F(0)), lines, F(at))
    assert abs(off) == min(abs(F(at) - line) for line in lines)
    assert lines[index] + off == at
