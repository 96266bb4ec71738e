"""What the estimate takes for granted of panels, in plain words."""

from planlang.acoustics.constants import EDGE_SHARE, MEASURED_TOLERANCE
from planlang.acoustics.fronts import front_words
from planlang.acoustics.panels import Buildup, buildup
from planlang.geometry.model import Layout
from planlang.plan.figure import significant
from planlang.plan.model import Array
from planlang.plan.stock import Cloth
from planlang.plan.tape import TapeStyle, on_tape


def on_panels(layout: Layout, tape: TapeStyle) -> list[str]:
    """A sentence each; none without panels."""
    arrays = _arrays(layout)
    if not arrays:
        return []
    lines = [*_on_models(), *(_on_array(array, tape) for array in arrays)]
    return [*lines, *_on_cloths(arrays), *_on_hanging(arrays)]


def _on_models() -> list[str]:
    least, most = EDGE_SHARE.value
    return [
        "what panels absorb is modelled unless the panel type states laboratory figures, which win: Miki's model of "
        "the batt, layers by transfer matrices, mean over directions from 0 to 78 degrees",
        f"a panel of finite size absorbs more for its area, up to beyond 1 (Thomasson): Sabine's formula takes "
        f"{50 * (least + most):.0f} % of that, for panels in a room stand near corners and each other; the others take "
        "panels without edges and coefficients of 0.99 at most. Panels nearer to each other than half a wavelength "
        "count as one larger panel",
        "the range of a modelled coefficient covers the batt's range of flow resistivity, Allard and Champoux's model "
        f"beside Miki's, {100 * least:.0f} to {100 * most:.0f} % of the edge effect, and +-0.15 up to 500 Hz, +-0.10 "
        "above; all modelled panels err together",
        "only the front of a panel between the wood of its frame and braces absorbs; edges and the wood itself count "
        "for nothing",
    ]


def _on_array(array: Array, tape: TapeStyle) -> str:
    measured = array.panel.measured
    if measured is not None:
        return (
            f"{array.name} ({array.panel.name}): laboratory figures, report {measured.report}, mounting "
            f"{measured.mounting}, win over the model, +-{MEASURED_TOLERANCE.value} each; they hold for panels hung as "
            f"in that mounting, and here there is {_behind(array, tape)}"
        )
    layers = buildup(array.panel, array.hang.drop)
    parts = [
        _cloth_words("front cloth", array.panel.front.cloth),
        front_words(layers.front) if layers.front is not None else "",
        _air_words("air behind it", layers, tape, front=True),
        f"batt {on_tape(layers.batt, tape)} of {_flow_words(layers)}",
        _air_words("air behind the batt", layers, tape, front=False),
        _cloth_words("back cloth", array.panel.back.cloth) if array.panel.back is not None else "",
        f"{on_tape(layers.drop, tape)} of air to {array.surface}" if layers.drop > 0 else f"{array.surface}",
    ]
    return f"{array.name} ({array.panel.name}), front to back: {', '.join(part for part in parts if part)}"


def _behind(array: Array, tape: TapeStyle) -> str:
    return f"{on_tape(array.hang.drop, tape)} of air behind them" if array.hang.drop > 0 else "no air behind them"


def _cloth_words(what: str, cloth: Cloth) -> str:
    if cloth.resistance is None:
        return f"{what} of no resistance"
    return f"{what} of {significant(cloth.resistance)} Pa.s/m"


def _air_words(what: str, layers: Buildup, tape: TapeStyle, front: bool) -> str:
    gap = layers.front_air if front else layers.back_air
    return f"{on_tape(gap, tape)} of {what}" if gap > 0 else ""


def _flow_words(layers: Buildup) -> str:
    if layers.flow_low == layers.flow_high:
        return f"{significant(layers.flow_low)} Pa.s/m2"
    ends = f"{significant(layers.flow_low)} to {significant(layers.flow_high)} Pa.s/m2"
    return f"{ends} ({significant(layers.flow_middle)} taken)"


def _on_cloths(arrays: tuple[Array, ...]) -> list[str]:
    coverings = [cover for array in arrays for cover in (array.panel.front, array.panel.back) if cover is not None]
    unknown = dict.fromkeys(cover.cloth.name for cover in coverings if cover.cloth.resistance is None)
    return [
        f"the flow resistance of {name} is not stated: 0 is taken, as if it were not there; a dense or coated "
        "cloth would take away from the panels above 1 kHz"
        for name in unknown
    ]


def _on_hanging(arrays: tuple[Array, ...]) -> list[str]:
    lines = []
    if any(array.hang.drop == 0 for array in arrays):
        lines.append("a panel without a drop hides the surface behind it: that area is taken off the surface")
    if any(array.hang.drop > 0 and array.panel.measured is None for array in arrays):
        lines.append(
            "a panel hung clear of a surface absorbs with its front over a gap as deep as the drop, as if the gap were "
            "closed at the sides; half of what may get in through the gap all round and be lost at its back is added, "
            "from nothing to all of it in the range. That is our own appraisal: a laboratory counts a free panel as an "
            "object of so many m2 (ISO 354:2003, 8.1.4), which no formula gives; figures of such a test, stated with "
            "the panel type, win over this. The surface behind it goes on counting, but not at the low end of its range"
        )
    return lines


def _arrays(layout: Layout) -> tuple[Array, ...]:
    return tuple({panel.array.name: panel.array for panel in layout.panels}.values())
