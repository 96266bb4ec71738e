"""The kinds of panel that few plans have, each with the function that resolves it."""

from collections.abc import Callable, Mapping
from typing import Any

from planlang.materials.baffle import resolve_baffle
from planlang.materials.corner_trap import resolve_corner
from planlang.materials.membrane import resolve_membrane
from planlang.materials.model import PanelBuild
from planlang.plan.further_panels import Baffle, CornerTrap, MembraneAbsorber
from planlang.plan.panel import PanelType
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Outcome

RESOLVERS: Mapping[type[PanelType], Callable[[Any, tuple[str, ...], TapeStyle], Outcome[PanelBuild | None]]] = {
    MembraneAbsorber: resolve_membrane,
    CornerTrap: resolve_corner,
    Baffle: resolve_baffle,
}
