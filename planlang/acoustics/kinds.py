"""The kinds of panel as absorbers: which have a model, and how it reads their layers."""

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from planlang.acoustics.panels import Buildup, board_layers, framed_face, framed_layers
from planlang.plan.panel import Diffuser, FramedAbsorber, PanelType, WrappedBoard
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


def model_of(panel: PanelType) -> Model | None:
    """The model of a panel's kind; the kinds that few plans have are looked up in a module of their own."""
    known = MODELS.get(type(panel))
    if known is not None or isinstance(panel, Diffuser):
        return known
    from planlang.acoustics.further_kinds import MODELS as FURTHER  # noqa: PLC0415 - few plans have one

    return FURTHER.get(type(panel))


def is_counted(panel: PanelType) -> bool:
    """Whether the estimate has a figure for what it absorbs: of a laboratory, or of a model."""
    return panel.measured is not None or model_of(panel) is not None


def has_row_of_its_own(panel: PanelType) -> bool:
    """Whether it isn't layers over its whole face, so that its kind has a formula of its own."""
    return panel.in_corner or panel.eyes_in_line


def buildup(panel: PanelType, drop: Fraction) -> Buildup:
    """The layers of a panel type; `drop` is from the surface to the panel's back, mm."""
    model = model_of(panel)
    if model is None:
        raise TypeError(f"no layers of a {panel.kind}")
    return model.layers(panel, drop)


def open_face(panel: PanelType) -> float:
    """Area of the face that lets sound in, m2; the whole face where only a laboratory knows."""
    model = model_of(panel)
    return model.face(panel) if model else whole_face(panel)
