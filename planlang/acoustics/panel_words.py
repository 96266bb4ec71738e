"""What the estimate takes for granted of panels, in plain words."""

from planlang.acoustics.air import air_state
from planlang.acoustics.constants import EDGE_SHARE, MEASURED_TOLERANCE
from planlang.acoustics.diffusers import LEAST_WELL, diffuser_range
from planlang.acoustics.kinds import buildup, has_row_of_its_own, is_counted
from planlang.acoustics.membranes import membrane_words
from planlang.acoustics.panels import Buildup
from planlang.geometry.model import Layout
from planlang.plan.figure import significant
from planlang.plan.model import Array
from planlang.plan.panel import Diffuser, Measured, PanelType
from planlang.plan.sequences import SPEED
from planlang.plan.stock import Cloth
from planlang.plan.tape import TapeStyle, on_tape

MOST_SHARE = 0.2


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
    panel = array.panel
    if not is_counted(panel):
        scatters = ", and what it scatters only in the check by rays" if isinstance(panel, Diffuser) else ""
        return (
            f"{array.name} ({panel.name}): not counted. What a {panel.kind} absorbs is not in the estimate{scatters}"
            f"{_diffuser_words(panel)}"
        )
    if panel.measured is not None:
        return _measured_words(array, panel.measured, tape)
    if has_row_of_its_own(panel):
        from planlang.acoustics.further_kinds import array_words  # noqa: PLC0415 - few plans have one

        return array_words(array, tape)
    layers = buildup(panel, array.hang.mean_drop)
    cloths = [use.stock for use in panel.uses if isinstance(use.stock, Cloth)]
    front, back = cloths[:1], cloths[1:]
    parts = [
        _openings_words(layers),
        _membrane_words(layers),
        _cloth_words("front cloth", front[0]) if front else "",
        _air_words("air behind it", layers, tape, front=True),
        f"batt {on_tape(layers.batt, tape)} of {_flow_words(layers)}" if layers.batt else "",
        _air_words("air behind the batt", layers, tape, front=False),
        _cloth_words("back cloth", back[0]) if back else "",
        "a back board, taken as hard as a wall" if layers.closed else "",
        f"{on_tape(layers.drop, tape)} of air to {array.surface}" if layers.drop > 0 else f"{array.surface}",
    ]
    return f"{array.name} ({array.panel.name}), front to back: {', '.join(part for part in parts if part)}"


def _diffuser_words(panel: PanelType) -> str:
    """From where to where a diffuser is made to work, by the formulas of its kind."""
    if not isinstance(panel, Diffuser):
        return ""
    wells = panel.wells
    reach = diffuser_range(wells.prime, float(wells.design), float(wells.width) / 1000, float(SPEED) / 1000)
    narrow = ", and wells as narrow as these absorb" if wells.width < 1000 * LEAST_WELL else ""
    return (
        f". It is made for {significant(reach.lowest)} to {significant(reach.highest)} Hz, above which a well is wider "
        f"than half a wavelength; at {significant(reach.flat)} Hz and its multiples all wells reflect alike, as a flat "
        f"plate would{narrow}"
    )


def _openings_words(layers: Buildup) -> str:
    if layers.openings is None:
        return ""
    found = layers.openings
    shape = "slots" if found.slotted else "holes"
    beyond = "; its formula is made for shares under 20 %" if found.share > MOST_SHARE else ""
    return (
        f"a facing with {significant(100 * found.share)} % of {shape} (Ingard 1953; Cox and D'Antonio, ch. 7; "
        f"tolerance twice that of other panels{beyond})"
    )


def _membrane_words(layers: Buildup) -> str:
    if layers.membrane is None:
        return ""
    from planlang.acoustics.further_kinds import resonance_words  # noqa: PLC0415 - few plans have one

    return f"{membrane_words(layers.membrane)}; {resonance_words(layers, air_state(20.0, 0.5))}"


def _measured_words(array: Array, measured: Measured, tape: TapeStyle) -> str:
    return (
        f"{array.name} ({array.panel.name}): laboratory figures, report {measured.report}, mounting "
        f"{measured.mounting}, win over the model, +-{MEASURED_TOLERANCE.value} each; they hold for panels hung as "
        f"in that mounting, and here there is {_behind(array, tape)}"
    )


def _behind(array: Array, tape: TapeStyle) -> str:
    return f"{on_tape(array.hang.mean_drop, tape)} of air behind them" if array.hang.drop > 0 else "no air behind them"


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
    cloths = [use.stock for array in arrays for use in array.panel.uses if isinstance(use.stock, Cloth)]
    unknown = dict.fromkeys(cloth.name for cloth in cloths if cloth.resistance is None)
    return [
        f"the flow resistance of {name} is not stated: 0 is taken, as if it were not there; a dense or coated "
        "cloth would take away from the panels above 1 kHz"
        for name in unknown
    ]


def _on_hanging(arrays: tuple[Array, ...]) -> list[str]:
    lines = []
    if any(array.hang.drop == 0 for array in arrays):
        lines.append("a panel without a drop hides the surface behind it: that area is taken off the surface")
    tilted = ", ".join(array.name for array in arrays if array.hang.more)
    if tilted:
        lines.append(
            f"{tilted}: panels that hang tilted are reckoned as if they hung parallel to their surface at the mean of "
            "their drops, for absorption and for first reflections alike; where a tilted front sends sound is not "
            "reckoned"
        )
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
