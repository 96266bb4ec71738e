"""The kinds of panel, each with the function that resolves it into parts, pieces, fastenings and steps."""

from collections.abc import Callable, Mapping
from typing import Any

from planlang.materials.board import resolve_board
from planlang.materials.diffuser import resolve_diffuser
from planlang.materials.framed import resolve_framed
from planlang.materials.model import PanelBuild
from planlang.plan.panel import Diffuser, FramedAbsorber, PanelType, WrappedBoard
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Outcome

Resolved = Outcome[PanelBuild | None]
RESOLVERS: Mapping[type[PanelType], Callable[[Any, tuple[str, ...], TapeStyle], Resolved]] = {
    FramedAbsorber: resolve_framed,
    WrappedBoard: resolve_board,
    Diffuser: resolve_diffuser,
}


def resolve_panel(panel: PanelType, marks: tuple[str, ...], tape: TapeStyle) -> Resolved:
    """Resolve one panel type for the panels with these marks, as its kind is built; None when it can't be built."""
    return RESOLVERS[type(panel)](panel, marks, tape)
