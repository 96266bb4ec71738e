"""What the estimate says beyond decay times, in rooms whose answers are plain."""

from fractions import Fraction as F

import numpy as np
import pytest

from planlang.acoustics.air import air_state
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.estimate import estimate_acoustics
from planlang.acoustics.evenness import evenness
from planlang.acoustics.examine import examine_acoustics
from planlang.acoustics.limits import known_limits
from planlang.acoustics.low_end import MOST_MODES, THIRDS_END, listed_up_to
from planlang.acoustics.modes import box_modes
from planlang.acoustics.panel_rows import panel_row
from planlang.acoustics.ray_check import rays_for
from planlang.acoustics.rays import Rays
from planlang.acoustics.uncertainty import drawn, panel_draws
from planlang.geometry.model import Box, Layout, PlacedPanel
from planlang.geometry.room import build_room
from planlang.plan.figure import significant
from planlang.plan.panel import Core, Measured
from planlang.plan.room import Furniture, Place, Use
from planlang.plan.stock import OCTAVES
from planlang.syntax.span import NOWHERE
from tests import builders as make
from tests.acoustics.rooms import box, layout, lined, target, wall_array


def room_of(plan):
    return build_room(plan).value


def place(role, name, east, north, height):
    return Place(at=NOWHERE, role=role, name=name, east=F(east), north=F(north), height=F(height))


EMPTY = Layout((), (), ())
PLACES = (place("talker", "lectern", 1200, 1000, 1200), place("listener", "chair", 1950, 3000, 1200))


def plan_of(*arrays, use=None, **over):
    return make.plan(arrays=arrays, use=use or Use(at=NOWHERE, target=None, places=PLACES), **over)


def on_west_wall(array, left, lower, count=1):
    width, height = array.panel.width, array.panel.length
    boxes = [Box(F(left) + n * width, F(lower), F(left) + (n + 1) * width, F(lower) + height) for n in range(count)]
    return Layout(
        tuple(PlacedPanel(f"{array.mark}{n}", array, array.surface, box, (), (), "") for n, box in enumerate(boxes, 1)),
        (),
        (),
    )


def test_reflection_from_the_west_wall_by_hand_and_treated_by_a_panel():
    # the wall at east = 0: 4.648 ms later for c = 343.2, struck 1761.9 north; across runs from the wall's left end
    plan = plan_of()
    room = room_of(plan)
    bare = estimate_acoustics(plan, room, Layout((), (), ())).value
    (west,) = [each for each in bare.reflections if each.surface == "west wall"]
    assert 1000 * west.delay == pytest.approx(4.648, rel=0.002)
    assert west.treated_by == ""
    array = wall_array()
    layout = on_west_wall(array, west.across - 300, 600)
    treated = estimate_acoustics(plan_of(array), room, layout).value
    (struck,) = [each for each in treated.reflections if each.surface == "west wall"]
    assert struck.treated_by == "BW1"
    assert struck.level.value < west.level.value - 6
    assert struck.level.low < struck.level.value < struck.level.high


def test_monitoring_target_judges_early_reflections():
    plan = plan_of(use=Use(at=NOWHERE, target=target("bs-1116").target, places=PLACES))
    acoustics = estimate_acoustics(plan, room_of(plan), Layout((), (), ())).value
    assert any("ITU-R BS.1116" in line and "too strong" in line for line in acoustics.reflection_words)


def test_monitoring_target_goes_by_the_mean_of_the_thirds():
    plan = plan_of(use=Use(at=NOWHERE, target=target("ebu-3276").target, places=PLACES))
    acoustics = estimate_acoustics(plan, room_of(plan), Layout((), (), ())).value
    thirds = acoustics.decay_after.thirds
    chosen = [n for n, band in enumerate(thirds.bands) if 200 <= band <= 4000]
    assert len(chosen) == 14  # thirds from 200 Hz to 4 kHz
    mean, low, high = (
        significant(sum(each[n] for n in chosen) / 14) for each in (thirds.value, thirds.low, thirds.high)
    )
    assert any(f"with the panels there are {mean} s ({low} to {high} s)" in line for line in acoustics.beyond)


def test_a_batt_is_said_to_lie_beyond_the_fit_of_its_model():
    def lines(**facts):
        core = Core(at=NOWHERE, batt=make.batt(name="wool", **facts), layers=1, fit=F(0))
        panel = make.panel_type(core=core)
        found = layout((make.array(panel=panel), 1))
        even = evenness(box(lined("board", 0.1)), ())
        return [line for line in known_limits(found, even) if line.startswith("wool")]

    # 0.01 < f / sigma < 1: of 25 000 Pa.s/m2 from 250 Hz, of 2 000 up to 2 kHz
    (low,) = lines(flow_low=F(25_000), flow_high=F(25_000), density_kg_m3=F(60))
    assert "below 250 Hz" in low
    (high,) = lines(flow_low=F(2000), flow_high=F(2000), density_kg_m3=F(20))
    assert "above 2000 Hz" in high
    assert not lines(flow_low=F(8000), flow_high=F(12_000), density_kg_m3=F(60))
    (heavy,) = lines(flow_low=F(8000), flow_high=F(12_000), density_kg_m3=F(140))
    assert "140 kg/m3" in heavy


def test_further_target_has_its_own_verdicts():
    use = Use(
        at=NOWHERE,
        target=target("din-18041 A3").target,
        places=(),
        more_targets=(target("ansi-s12-60").target,),
    )
    plan = plan_of(use=use)
    acoustics = estimate_acoustics(plan, room_of(plan), Layout((), (), ())).value
    (other,) = acoustics.more_targets
    assert "S12.60" in other.words
    assert other.verdict_after[0] == "not asked"
    assert other.verdict_after[3] == "too long"


def two_arrays():
    array, second = wall_array(), wall_array(name="second", mark="S")
    layouts = [on_west_wall(array, 200, 600, 2), on_west_wall(second, 1600, 600, 1)]
    return plan_of(array, second), layouts, Layout(layouts[0].panels + layouts[1].panels, (), ())


def test_gains_of_arrays_alone_and_missed():
    plan, layouts, layout = two_arrays()
    room = room_of(plan)
    first, other = estimate_acoustics(plan, room, layout).value.gains
    assert (first.array, first.panels, other.panels) == ("back-wall", 2, 1)
    assert first.area == pytest.approx(2 * other.area)
    assert first.alone.value > other.alone.value > 0
    assert 0 < first.missed.value < first.alone.value
    assert first.alone.low < first.alone.value < first.alone.high
    alone = estimate_acoustics(plan, room, layouts[0]).value.gains[0]
    assert alone.alone.value == pytest.approx(first.alone.value)
    assert alone.missed.value == pytest.approx(alone.alone.value)


def test_one_more_panel_does_less_than_the_first_and_most_where_least_hangs():
    plan, _, layout = two_arrays()
    found = estimate_acoustics(plan, room_of(plan), layout).value
    values = [each.shortens.value for each in found.next_panels]
    assert values == sorted(values, reverse=True)
    (own,) = [each for each in found.next_panels if each.own and each.array == "second"]
    assert 0 < own.shortens.value < found.gains[1].missed.value
    # all panels hang on the west wall, so that another axis gains more by one of the same
    elsewhere = [each for each in found.next_panels if not each.own and each.array == "second"]
    assert {each.surface for each in elsewhere} and "west wall" not in {each.surface for each in elsewhere}
    assert found.next_panels[0].own is False


def test_laboratory_figures_win_and_are_printed_with_report_and_mounting():
    figures = dict.fromkeys(OCTAVES, F("0.9"))
    tested = Measured(at=NOWHERE, alphas=figures, report="an invented report 12", mounting="B")
    array = wall_array(panel=make.panel_type(measured=tested))
    plan, layout = plan_of(array), on_west_wall(array, 200, 600, 2)
    found = estimate_acoustics(plan, room_of(plan), layout).value
    assert found.after[-1].source == "measured: an invented report 12, mounting B"
    (line,) = [line for line in found.assumes if "win over the model" in line]
    assert "report an invented report 12, mounting B" in line and "no air behind them" in line


def test_what_is_built_of_the_standard_for_objects_is_said_where_the_plan_has_some():
    plan = plan_of()
    assert not any("annex D" in line for line in estimate_acoustics(plan, room_of(plan), EMPTY).value.assumes)
    table = Furniture(at=NOWHERE, count=2, name="table", size=(F(1600), F(800), F(750)))
    furnished = plan_of(room=make.room(furniture=(table,)))
    lines = estimate_acoustics(furnished, room_of(furnished), EMPTY).value.assumes
    assert any("Not built: annex D" in line for line in lines)


def test_bare_walls_flutter_and_are_named():
    plan = plan_of()
    acoustics = estimate_acoustics(plan, room_of(plan), Layout((), (), ())).value
    assert len(acoustics.flutter) == 3
    width = float(plan.room.width) / 1000
    (pair,) = [line for line in acoustics.flutter if "east wall and west wall" in line]
    assert f"{2 * width / 343.2 * 1000:.2g} ms" in pair


def test_what_panels_will_not_mend_is_said():
    plan = plan_of(wall_array())
    acoustics = estimate_acoustics(plan, room_of(plan), on_west_wall(wall_array(), 200, 600)).value
    assert any("dB" in line and "hardly noticed" in line for line in acoustics.beyond)
    assert any("direct sound prevails" in line for line in acoustics.beyond)


def test_examination_adds_modes_and_rays_and_repeats_itself():
    plan = plan_of(wall_array())
    room, layout = room_of(plan), on_west_wall(wall_array(), 200, 600, 3)
    acoustics = estimate_acoustics(plan, room, layout).value
    found = examine_acoustics(plan, room, layout, acoustics)
    assert acoustics.rays is None
    assert found.low_end.method.startswith("exact")
    sides = [float(plan.room.width), float(plan.room.depth)]
    assert found.low_end.modes[0].frequency == pytest.approx(343.2 / (2 * max(sides) / 1000))
    assert found.rays.source == "lectern"
    assert [each.listener for each in found.rays.listeners] == ["chair"]
    assert all(each.value > 0 for each in found.rays.t20)
    assert 2000 < found.rays.followed < found.rays.rays == 20_000  # bare plaster
    assert examine_acoustics(plan, room, layout, acoustics) == found


def test_in_a_hard_room_all_rays_start_and_fewer_go_on_to_the_end():
    room = Enclosure(60.0, 98.0, 343.2, np.zeros(0))
    # 34 dB of a decay of 60 dB in 0.5 s: 0.283 s, 97 m, mean free path 4 V / S = 2.45 m: 40 faces struck
    assert rays_for(room, 0.5, 20_000, 1_000_000) == Rays(20_000)
    # in 5 s: 397 faces struck. Half of 1 000 000 are spent after 25; one of 15 has the other half for 372
    hard = rays_for(room, 5.0, 20_000, 1_000_000)
    assert hard.until == pytest.approx(25 * 2.449 / 343.2, rel=0.001)
    assert hard.keep == 15
    # never followed for more than 12 s
    assert rays_for(room, 60.0, 20_000, 1_000_000) == rays_for(room, 600.0, 20_000, 1_000_000)


def test_decays_by_rays_have_a_range_of_absorption_and_scattering():
    plan = plan_of(wall_array())
    room, layout = room_of(plan), on_west_wall(wall_array(), 200, 600, 3)
    acoustics = estimate_acoustics(plan, room, layout).value
    rays = examine_acoustics(plan, room, layout, acoustics).rays
    for late, early in zip(rays.t20, rays.edt, strict=True):
        assert late.low <= 0.95 * late.value and 1.05 * late.value <= late.high
        assert early.low < early.value < early.high
        assert late.low < 0.8 * late.value and late.high > 1.2 * late.value  # the room's tables are as far off
    (chair,) = rays.listeners
    assert all(each.low <= each.value <= each.high for each in chair.clarity_50)
    assert any(each.high - each.low > 0.5 for each in chair.clarity_50)


def test_modes_of_a_hall_are_listed_only_as_far_up_as_there_are_so_many():
    assert listed_up_to((5.2, 3.9, 2.5), 343.2) == THIRDS_END
    highest = listed_up_to((60.0, 40.0, 12.0), 343.2)
    assert highest < THIRDS_END
    assert len(box_modes((60.0, 40.0, 12.0), 343.2, highest)) < 1.2 * MOST_MODES


def test_the_range_of_a_measured_panel_lies_about_its_laboratory_figures():
    lab = Measured(at=NOWHERE, alphas=dict.fromkeys(OCTAVES, F(11, 10)), report="LB-7", mounting="A")
    array = wall_array(panel=make.panel_type(measured=lab))
    row = panel_row(array, on_west_wall(array, 200, 600, 2).panels, air_state(20, 0.5))
    taken, _ = panel_draws(row, drawn((), 2000))
    assert row.taken / row.area == pytest.approx([1.1] * row.taken.size)
    assert taken.mean(axis=0) / row.area == pytest.approx(row.taken / row.area, abs=0.005)
    assert taken.min() / row.area == pytest.approx(1.0, abs=0.002)
    assert taken.max() / row.area == pytest.approx(1.2, abs=0.002)


def test_the_value_taken_of_a_modelled_panel_lies_in_the_middle_of_what_its_edges_add():
    array = wall_array()
    row = panel_row(array, on_west_wall(array, 200, 600).panels, air_state(20, 0.5))
    least, most = row.share
    assert row.edge.max() > 0.3
    assert row.taken == pytest.approx(row.area * (row.plain + (least + most) / 2 * row.edge))
    assert np.all(row.low < row.taken)
    assert np.all(row.taken < row.high)
