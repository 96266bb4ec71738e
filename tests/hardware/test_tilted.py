"""What the load engine says of panels on links of unequal drops. All figures are invented."""

from fractions import Fraction as F

import pytest

from planlang.plan.safety import Added
from tests import builders as b
from tests.hardware.scenes import ceiling_array, check, codes, surface
from tests.reference.test_loads_tilted import tilted


def array_of(link=(40, 60), more=40, drop=60, row="upper", **over):
    """Eyes of 5 mm on panel and ceiling, and links as long as is given."""
    eye = b.hardware(name="plate", words="plate", bolts=(2, F(5)), reach=(F(5), F(5)), **over)
    anchor = b.screw_eye(words="lag eye", thread=F(60), reach=(F(5), F(5)))
    reach = (F(link[0]), F(link[1]))
    hang = {"anchor": anchor, "link": b.hardware(reach=reach), "drop": F(drop), "more": F(more), "more_at": row}
    return ceiling_array(b.panel_type(hung_by=b.eyes(hardware=eye)), **hang)


def found(array, face=None):
    face = face or surface()
    return check(array, face, (tilted(array, face),))


@pytest.mark.parametrize(
    ("link", "times"),
    [((48, 92), 0), ((48, 87), 1), ((53, 92), 1), ((60, 80), 2)],  # wanted: 60 and 100 less the eyes, 2 mm to spare
)
def test_the_links_must_reach_the_drop_of_every_row(link, times):
    outcome = found(array_of(link))
    assert codes(outcome).count("drop-out-of-reach") == times


def test_the_eyes_of_the_panel_are_pulled_aside_by_its_slant_to_level():
    def eye(array, face=None):
        (load,) = found(array, face).value.panels
        return next(step for step in load.steps if step.words == "plate on the panel")

    level, steep = (float(eye(array_of(more=more)).allowed.value) for more in (1, 600))
    assert steep < level  # 27 deg, and less of an eye's mark counts
    slope = surface(pitch=27.4857)
    back = eye(array_of(more=600), slope)  # sin 27.4857 deg = 600 / 1300: it hangs level again
    assert float(back.allowed.value) == pytest.approx(level)


def test_the_site_is_told_that_the_links_differ():
    outcome = found(array_of())
    assert any("set to the drop of its own point, the upper row lower" in line for line, _ in outcome.value.confirm)


def test_a_light_at_one_end_is_counted_where_it_hangs():
    lamp = {"words": "lamp", "mass_kg": F(2), "across": F(300), "up": F(1400), "below_front": F(0)}
    added = b.make(Added, lamp, {})
    one, other = (ceiling_array(added=(added,), more=F(200), more_at=row, drop=F(150)) for row in ("upper", "lower"))
    shares = [float(found(array).value.panels[0].share.value) for array in (one, other)]
    # above, the lamp's end is the lower or the higher one; what hangs below the eyes moves to the higher one
    assert shares[1] > shares[0]
