"""The drawing of one panel type, by its kind."""

from collections.abc import Callable, Mapping
from typing import Any

from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.diffuser import diffuser_drawing
from planlang.jobbook.drawings.framed import framed_drawing
from planlang.jobbook.drawings.further import baffle_drawing, corner_drawing, membrane_drawing
from planlang.jobbook.drawings.layered import layered_drawing
from planlang.jobbook.drawings.outlined import outlined_drawing
from planlang.materials.model import PanelBuild
from planlang.plan.further_panels import Baffle, CornerTrap, MembraneAbsorber
from planlang.plan.panel import Diffuser, FramedAbsorber, PanelType, WrappedBoard

DRAWN: Mapping[type[PanelType], Callable[[CompiledPlan, PanelBuild, Any], Drawing]] = {
    FramedAbsorber: framed_drawing,
    WrappedBoard: layered_drawing,
    Diffuser: diffuser_drawing,
    MembraneAbsorber: membrane_drawing,
    CornerTrap: corner_drawing,
    Baffle: baffle_drawing,
}


def panel_drawing(compiled: CompiledPlan, build: PanelBuild) -> Drawing:
    """Draw one panel type."""
    if build.type.outline is not None:
        return outlined_drawing(compiled, build, build.type.outline)
    return DRAWN[type(build.type)](compiled, build, build.type)
