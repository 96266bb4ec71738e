"""The kinds of panel, each with the function that resolves it into parts, pieces, fastenings and steps.

The kinds that few plans have are loaded when the first one is met, so that a check of the others doesn't wait for them.
"""

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from planlang.materials.framed import resolve_framed
from planlang.materials.model import PanelBuild
from planlang.plan.panel import Diffuser, FramedAbsorber, PanelType, WrappedBoard
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Outcome

if TYPE_CHECKING:
    from planlang.plan.outline import Outline

Resolved = Outcome[PanelBuild | None]


def _board(panel: WrappedBoard, marks: tuple[str, ...], tape: TapeStyle) -> Resolved:
    from planlang.materials.board import resolve_board  # noqa: PLC0415 - few plans have one

    return resolve_board(panel, marks, tape)


def _diffuser(panel: Diffuser, marks: tuple[str, ...], tape: TapeStyle) -> Resolved:
    from planlang.materials.diffuser import resolve_diffuser  # noqa: PLC0415 - few plans have one

    return resolve_diffuser(panel, marks, tape)


RESOLVERS: Mapping[type[PanelType], Callable[[Any, tuple[str, ...], TapeStyle], Resolved]] = {
    FramedAbsorber: resolve_framed,
    WrappedBoard: _board,
    Diffuser: _diffuser,
}


def resolve_panel(panel: PanelType, marks: tuple[str, ...], tape: TapeStyle) -> Resolved:
    """Resolve one panel type for the panels with these marks, as its kind is built; None when it can't be built."""
    known = RESOLVERS.get(type(panel))
    if known is None:
        from planlang.materials.further_kinds import RESOLVERS as FURTHER  # noqa: PLC0415 - few plans have one

        known = FURTHER[type(panel)]
    resolved = known(panel, marks, tape)
    return resolved if panel.outline is None else _outlined(panel, panel.outline, resolved, tape)


def _outlined(panel: PanelType, outline: "Outline", resolved: Resolved, tape: TapeStyle) -> Resolved:
    from planlang.materials.outlined_build import outlined_board, outlined_frame  # noqa: PLC0415 - few plans have one

    if isinstance(panel, FramedAbsorber):
        return outlined_frame(panel, outline, resolved, tape)
    return outlined_board(panel, outline, resolved, tape) if isinstance(panel, WrappedBoard) else resolved
