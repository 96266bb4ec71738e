from dataclasses import replace
from fractions import Fraction as F

from hypothesis import given
from hypothesis import strategies as st

from planlang.materials.cores import CoreLay, lay_core, runs
from planlang.plan.panel import PanelType
from planlang.plan.tape import METRIC
from planlang.syntax.diagnostics import Outcome, Severity
from tests.builders import batt, panel_type


def lay(**over: object) -> Outcome[CoreLay]:
    return lay_core(panel_type(**over), 1, METRIC)


def core(**over: object):
    base = panel_type().core
    return replace(base, **over)


def sizes(outcome: Outcome[CoreLay]) -> list[tuple[F, F, int]]:
    return [(piece.length, piece.width, piece.per_panel) for piece in outcome.value.pieces]


def test_whole_batts_first_and_the_rest_last():
    outcome = lay(length=F(3000))
    assert sizes(outcome) == [(1200, 576, 2), (576, 576, 1)]
    assert outcome.value.joints == (1212, 2412)
    assert outcome.diagnostics == ()


def test_layers_multiply_the_pieces():
    assert [count for *_, count in sizes(lay(core=core(layers=2)))] == [2, 2]


def test_fit_is_added_to_length_and_width():
    assert sizes(lay(core=core(fit=F(6)))) == [(1200, 582, 1), (282, 582, 1)]


def test_a_core_that_fits_a_batt_exactly_has_no_joint():
    outcome = lay(length=F(1224), width=F(624))
    assert sizes(outcome) == [(1200, 600, 1)]
    assert outcome.value.joints == ()


def test_batt_is_turned_when_that_saves_a_joint_along_the_panel():
    outcome = lay(width=F(1000), length=F(1100))
    assert outcome.value.turned
    assert outcome.value.seams == ()
    assert outcome.value.joints == (612,)
    assert sizes(outcome) == [(600, 976, 1), (476, 976, 1)]


def test_joint_along_the_panel_is_a_warning_with_braces_and_an_error_without():
    wide = {"width": F(1400), "length": F(2000)}
    (warning,) = lay(**wide).diagnostics
    assert (warning.code, warning.severity) == ("core-seam", Severity.WARNING)
    assert "at 1212 mm from its side, carried only where it crosses a brace" in warning.message
    assert "at most 1224 mm wide" in warning.mend
    (error,) = lay(**wide, braces=None).diagnostics
    assert (error.code, error.severity) == ("core-seam", Severity.ERROR)


def test_sliver_is_a_warning():
    (warning,) = lay(length=F(1234)).diagnostics
    assert warning.code == "core-sliver"
    assert "a strip of 10 mm" in warning.message
    assert not warning.is_error


sixteenths = st.integers(1, 3000).map(lambda count: F(count, 16) * F(127, 5))


@given(total=sixteenths, step=sixteenths)
def test_runs_fill_the_length_exactly(total: F, step: F):
    pieces = runs(total, step)
    assert sum(pieces) == total
    assert all(0 < piece <= step for piece in pieces)
    assert all(piece == step for piece in pieces[:-1])


@given(
    length=st.integers(300, 3000).map(F),
    width=st.integers(200, 1500).map(F),
    layers=st.integers(1, 3),
    fit=st.integers(-4, 8).map(F),
)
def test_pieces_fill_the_inside_and_come_out_of_a_batt(length: F, width: F, layers: int, fit: F):
    panel: PanelType = panel_type(length=length, width=width, core=core(layers=layers, fit=fit))
    outcome = lay_core(panel, 1, METRIC)
    area = sum(piece.length * piece.width * piece.per_panel for piece in outcome.value.pieces)
    assert area == layers * (length - 24 + fit) * (width - 24 + fit)
    stock = batt()
    for piece in outcome.value.pieces:
        longer, shorter = max(piece.length, piece.width), min(piece.length, piece.width)
        assert longer <= stock.length
        assert shorter <= stock.width
