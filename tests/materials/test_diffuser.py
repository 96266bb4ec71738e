"""Diffusers as they are built, worked by hand. Panels are invented."""

from collections import Counter
from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planlang.materials.diffuser import support_height, supports_each, width_of
from planlang.materials.kinds import resolve_panel
from planlang.materials.model import PanelBuild
from planlang.plan.panel import BackBoard, Diffuser, Wells
from planlang.plan.sequences import exact_depths, primitive_roots, quadratic_residues
from planlang.plan.tape import METRIC
from planlang.syntax.span import NOWHERE
from tests.builders import cleats, make, sheet

PRIMES = (3, 5, 7, 11, 13, 17, 19, 23)


def wells(**over: object) -> Wells:
    base = {"sequence": "quadratic-residue", "prime": 7, "root": 0, "width": F(72), "design": F(700), "periods": 1}
    return make(Wells, base, over)


def diffuser(**over: object) -> Diffuser:
    thin = sheet(name="ply-6", words="birch ply 6", thickness=F(6), density_kg_m3=F(700))
    base = {
        "name": "residues-7", "words": "", "mark": "Q", "width": F(600), "length": F(1200), "depth": F(160),
        "wells": wells(), "fins": sheet(density_kg_m3=F(700)), "bottoms": thin,
        "board": BackBoard(at=NOWHERE, sheet=thin, less=F(0)), "hung_by": cleats(),
    }  # fmt: skip
    return make(Diffuser, base, over)


def built(panel: Diffuser) -> PanelBuild:
    outcome = resolve_panel(panel, ("EQ1", "EQ2"), METRIC)
    assert outcome.value is not None, outcome.diagnostics
    return outcome.value


def test_depths_by_hand():
    # 343.2 m/s / (2 x 7 x 700 Hz) = 35.0204... mm a step: exactly 1716/49
    step = F(1716, 49)
    assert wells().depths == (0, step, 4 * step, 2 * step, 2 * step, 4 * step, step)
    # primitive roots of 7: 3^n mod 7 = 3, 2, 6, 4, 5, 1; Cox and D'Antonio, Acoustic Absorbers and Diffusers, ch. 10
    roots = wells(sequence="primitive-root", root=3)
    assert roots.steps == (3, 2, 6, 4, 5, 1)
    assert roots.depths == (3 * step, 2 * step, 6 * step, 4 * step, 5 * step, step)


@given(prime=st.sampled_from(PRIMES), design=st.integers(100, 4000))
def test_no_well_is_deeper_than_half_a_wavelength(prime: int, design: int):
    depths = exact_depths(quadratic_residues(prime), prime, F(design))
    assert all(0 <= depth < F(343_200, 2 * design) for depth in depths)
    assert depths[1:] == depths[:0:-1], "quadratic residues read alike from both sides"
    assert all(depth * 2 * prime * design % 343_200 == 0 for depth in depths), "a whole number of exact steps"


@pytest.mark.parametrize("prime", PRIMES)
def test_a_primitive_root_diffuser_has_every_depth_once(prime: int):
    for root in primitive_roots(prime):
        steps = wells(sequence="primitive-root", prime=prime, root=root).steps
        assert sorted(steps) == list(range(1, prime))


def test_parts_by_hand():
    build = built(diffuser())
    parts = {part.mark: (part.per_panel, part.length, part.width) for part in build.parts}
    step = F(1716, 49)
    # fins and ends are 160 - 6 wide; fins and bottoms lose two ends of 12
    assert parts["Q-F"] == (8, 1176, 154)
    assert parts["Q-E"] == (2, 600, 154)
    assert parts["Q-W"] == (7, 1176, 72)
    assert parts["Q-P"] == (1, 1200, 600)
    # a support is what 154 leaves behind the bottom: 154 - depth - 6; 4 under each bottom of 1176, one each 400
    assert parts["Q-S0"] == (4, 72, 148)
    assert parts["Q-S1"] == (8, 72, 148 - step)
    assert parts["Q-S2"] == (8, 72, 148 - 2 * step)
    assert parts["Q-S4"] == (8, 72, 148 - 4 * step)
    assert build.stack[-1].depth == 160


def test_supports_are_never_farther_apart_than_400():
    assert [supports_each(F(inside)) for inside in (400, 401, 800, 1176)] == [2, 3, 3, 4]


def test_a_deepest_bottom_may_lie_on_the_back_board():
    step = F(1716, 49)
    panel = diffuser(depth=4 * step + 6 + 6)
    assert support_height(panel, 4 * step) == 0
    build = built(panel)
    assert "Q-S4" not in {part.mark for part in build.parts}
    assert "left to the back board" not in {line.words for line in build.stack}


def test_weight_by_hand():
    weights = {item.words: item.kg for item in built(diffuser()).masses}
    assert weights["fins"] == pytest.approx(8 * 1.176 * 0.154 * 0.012 * 700)
    assert weights["ends"] == pytest.approx(2 * 0.600 * 0.154 * 0.012 * 700)
    assert weights["well bottoms"] == pytest.approx(7 * 1.176 * 0.072 * 0.006 * 700)
    assert weights["back board"] == pytest.approx(1.2 * 0.6 * 0.006 * 700)


def test_periods_repeat_the_wells():
    once, twice = built(diffuser()), built(diffuser(wells=wells(periods=2), width=F(14 * 72 + 15 * 12)))
    count = Counter({part.mark: part.per_panel for part in once.parts})
    again = Counter({part.mark: part.per_panel for part in twice.parts})
    assert again["Q-W"] == 2 * count["Q-W"] and again["Q-F"] == 15 and again["Q-S4"] == 2 * count["Q-S4"]


@pytest.mark.parametrize(
    ("over", "code", "words"),
    [
        ({"width": F(590)}, "diffuser-width", "7 wells of 72 mm and 8 fins of 12 mm are 600 mm"),
        ({"depth": F(150)}, "diffuser-too-shallow", "takes 152 mm"),
        ({"length": F(24)}, "panel-too-small", "its two ends take 24 mm"),
    ],
)
def test_what_does_not_go_together_is_said(over: dict[str, F], code: str, words: str):
    found = resolve_panel(diffuser(**over), ("EQ1",), METRIC)
    assert found.value is None
    assert [finding.code for finding in found.diagnostics] == [code]
    assert words in found.diagnostics[0].message


def test_the_mends_mend():
    # 593 less 8 fins of 12 is 497, a seventh of which is 71; of 590 a seventh can't be set on a rule
    assert resolve_panel(diffuser(width=F(593)), ("EQ1",), METRIC).diagnostics[0].mend == (
        "make it 600 mm wide, or the wells 71 mm"
    )
    assert width_of(diffuser(width=F(593), wells=wells(width=F(71)))) == 593
    assert resolve_panel(diffuser(width=F(590)), ("EQ1",), METRIC).diagnostics[0].mend == "make it 600 mm wide"
    assert resolve_panel(diffuser(depth=F(153)), ("EQ1",), METRIC).diagnostics == ()
