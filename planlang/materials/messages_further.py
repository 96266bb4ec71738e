"""What the workshop engine has to say about membranes, corner traps and baffles: one small function a code."""

from fractions import Fraction

from planlang.plan.further_panels import Baffle, CornerTrap, MembraneAbsorber
from planlang.plan.panel import Core
from planlang.plan.tape import TapeStyle, on_tape, size_on_tape
from planlang.syntax.diagnostics import Diagnostic


def batt_at_plate(panel: MembraneAbsorber, core: Core, gap: Fraction, least: Fraction, tape: TapeStyle) -> Diagnostic:
    """The batts leave the plate no room to swing."""
    said = f"leave {on_tape(gap, tape)} of air" if gap > 0 else f"are {on_tape(-gap, tape)} thicker than the cavity"
    if gap == 0:
        said = "touch the plate"
    return Diagnostic(
        "batt-at-plate",
        f"panel '{panel.name}': the batts {said}; the plate needs {on_tape(least, tape)} of air to swing",
        core.at,
        f"make it at least {on_tape(panel.depth + least - gap, tape)} deep, or take thinner batts or none",
    )


def filling_too_small(panel: CornerTrap, piece: Fraction, tape: TapeStyle) -> Diagnostic:
    """A piece that fills the corner doesn't come out of one batt."""
    batt = panel.filling
    most = panel.width - piece + min(batt.length, batt.width)
    return Diagnostic(
        "filling-too-small",
        f"panel '{panel.name}': a piece of {size_on_tape((piece, piece), tape)} doesn't come out of {batt.words}, "
        f"{size_on_tape((batt.length, batt.width), tape)}",
        panel.filling_at,
        f"a larger batt, or a corner of at most {on_tape(most, tape)}",
    )


def filling_left_loose(panel: CornerTrap, tape: TapeStyle) -> Diagnostic:
    """Two formers stand so near that nothing fits between them."""
    return Diagnostic(
        "panel-too-small",
        f"panel '{panel.name}' is {on_tape(panel.length, tape)} long; its two ends leave nothing between them",
        panel.at,
        f"make it longer than {on_tape(2 * panel.boards.thickness, tape)}",
    )


def core_not_baffle(panel: Baffle, tape: TapeStyle) -> Diagnostic:
    """The batts are thicker than the baffle."""
    thick = panel.core.layers * panel.core.batt.thickness
    return Diagnostic(
        "baffle-too-thin",
        f"panel '{panel.name}' is {on_tape(panel.width, tape)} thick, its batts are {on_tape(thick, tape)}: they press "
        "the cloth out on both faces",
        panel.core.at,
        f"make it at least {on_tape(thick, tape)} thick, or take thinner batts",
    )
