"""The kinds of panel as absorbers: which have a model, and how it reads their layers."""

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from planlang.acoustics.panels import Buildup, board_layers, framed_face, framed_layers
from planlang.plan.panel import FramedAbsorber, PanelType, WrappedBoard
from planlang.syntax.record import record


@record
class Model:
    """How one kind absorbs: its layers over a drop (mm), and the area of its face that is open to them, m2."""

    layers: Callable[[Any, Fraction], Buildup]
    face: Callable[[Any], float]


def whole_face(panel: PanelType) -> float:
    """Area of the face, m2."""
    return float(panel.face) / 1e6


MODELS: Mapping[type[PanelType], Model] = {
    FramedAbsorber: Model(framed_layers, framed_face),
    WrappedBoard: Model(board_layers, whole_face),
}


def is_counted(panel: PanelType) -> bool:
    """Whether the estimate has a figure for what it absorbs: of a laboratory, or of a model."""
    return panel.measured is not None or type(panel) in MODELS


def buildup(panel: PanelType, drop: Fraction) -> Buildup:
    """The layers of a panel type; `drop` is from the surface to the panel's back, mm."""
    return MODELS[type(panel)].layers(panel, drop)


def open_face(panel: PanelType) -> float:
    """Area of the face that lets sound in, m2; the whole face where only a laboratory knows."""
    model = MODELS.get(type(panel))
    return model.face(panel) if model else whole_face(panel)
