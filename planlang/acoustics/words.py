"""The estimate's assumptions and cautions in plain words."""

from planlang.acoustics.bands import IN_OCTAVES
from planlang.acoustics.constants import (
    AIR_RANGE_C,
    DIN_18041_OCCUPIED,
    EDGE_SHARE,
    LEAST_ALPHA,
    SIZE_TOLERANCE,
    TABLE_SHARE,
    TABLE_STEP,
    UNEVEN_FACTOR,
    VERY_DEAD,
)
from planlang.acoustics.diffusers import LEAST_WELL, diffuser_range
from planlang.acoustics.evenness import AXES, Evenness
from planlang.acoustics.fibres import mineral_wool_range
from planlang.acoustics.kinds import MODELS, buildup, is_counted
from planlang.acoustics.panels import Buildup
from planlang.acoustics.targets import din_use, targets_of
from planlang.acoustics.uncertainty import DRAWS, SHARE
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.figure import significant
from planlang.plan.model import Array, Plan
from planlang.plan.panel import Diffuser, PanelType
from planlang.plan.sequences import SPEED
from planlang.plan.stock import OCTAVES, Batt, Cloth
from planlang.plan.tape import TapeStyle, on_tape

MOST_SHARE = 0.2


def assumptions(plan: Plan, room: RoomGeometry, layout: Layout) -> tuple[str, ...]:
    """Everything that the estimate takes for granted, a sentence each."""
    arrays = _arrays(layout)
    lines = [*_on_the_room(plan, room), *_on_tables()]
    if arrays:
        lines += _on_panels()
        lines += [_on_array(array, plan.job.tape) for array in arrays]
        lines += _on_cloths(arrays)
        lines += _on_hanging(arrays)
    return (*lines, *_on_targets(plan), *_on_what_is_left_out(room))


def cautions(plan: Plan, even: Evenness, schroeder: float, mean_alpha: tuple[float, ...]) -> tuple[str, ...]:
    """What to be wary of in the estimate with the panels, a sentence each."""
    found = [*_below_schroeder(schroeder), *_uneven(even), *_very_dead(mean_alpha)]
    coldest, warmest = AIR_RANGE_C.value
    if not coldest <= plan.room.air.temperature_c <= warmest:
        found.append(
            f"the air is at {significant(plan.room.air.temperature_c)} C; the accuracy of ISO 9613-1 is stated for "
            f"{coldest:.0f} to {warmest:.0f} C"
        )
    return (*found, *_odd_batts(plan.arrays))


def _odd_batts(arrays: tuple[Array, ...]) -> list[str]:
    """Batts whose flow resistivity no mineral wool of their density has."""
    lines = []
    batts = {use.stock.name: use.stock for array in arrays for use in array.panel.uses if isinstance(use.stock, Batt)}
    for batt in batts.values():
        least, most = mineral_wool_range(float(batt.density_kg_m3))
        if batt.flow_high < least or batt.flow_low > most:
            lines.append(
                f"{batt.name} of {significant(batt.density_kg_m3)} kg/m3: its flow resistivity is not one of glass or "
                f"stone wool of that density, which lies within {significant(least)} to {significant(most)} Pa.s/m2; "
                "see that the maker's sheet gives it by ISO 9053-1"
            )
    return lines


def _on_the_room(plan: Plan, room: RoomGeometry) -> list[str]:
    air = plan.room.air
    lines = [
        f"air at {significant(air.temperature_c)} C, {significant(100 * air.humidity)} % relative humidity and "
        "101.325 kPa; its absorption by ISO 9613-1 at the exact middle of each octave",
        "coefficients are stated in octaves; between the middles of octaves they run in straight lines over the "
        "logarithm of the frequency, below 125 Hz and above 4 kHz they keep the end value (a guess: hardly any table "
        "goes lower)",
        "sound spreads evenly through the room, as the formulas take it",
        f"the range holds {100 * SHARE:.0f} % of {DRAWS} draws, the same at every run; drawn, each evenly over its "
        f"whole range, are the room's size (+-{100 * SIZE_TOLERANCE.value} % on lengths), each lining, people, "
        "furniture, the batts' flow resistivity, the model of the batt, its tolerance, the edges of panels, and where "
        "between the shortest and the longest formula the room lies. It does not cover what the plan doesn't state, "
        "nor single modes at low frequency",
    ]
    people = [
        f"{group.count} x {group.seating.words or group.seating.name}" for group in plan.room.occupants if group.count
    ]
    if people:
        lines.append(
            f"people: {', '.join(people)}, before and after, +-{100 * TABLE_SHARE.value:.0f} %, in no one place"
        )
    else:
        lines.append("nobody is in the room")
    if any(surface.exposed for surface in room.surfaces):
        lines.append(
            "exposed members count as flat lining: their sides count for nothing, their scattering only in the check "
            "by rays"
        )
    return lines


def _on_tables() -> list[str]:
    return [
        f"each tabulated coefficient may be off by {100 * TABLE_SHARE.value:.0f} % or {TABLE_STEP.value}, whichever is "
        f"more, though not below {LEAST_ALPHA.value}; surfaces of one lining err together, different linings "
        "independently (root of the sum of squares)",
        "Sabine's formula and that of EN 12354-6 take coefficients as they are; the others 0.99 at most",
    ]


def _on_panels() -> list[str]:
    least, most = EDGE_SHARE.value
    return [
        "what panels absorb is modelled unless the panel type states laboratory figures: Miki's model of the batt, "
        "layers by transfer matrices, mean over directions from 0 to 78 degrees",
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
        return (
            f"{array.name} ({panel.name}): not counted. What a {panel.kind} absorbs and how it scatters is not in the "
            f"estimate{_diffuser_words(panel)}"
        )
    if type(panel) not in MODELS:
        return f"{array.name} ({panel.name}): only as measured"
    layers = buildup(panel, array.hang.drop)
    front, *back = [use.stock for use in panel.uses if isinstance(use.stock, Cloth)]
    parts = [
        _openings_words(layers),
        _cloth_words("front cloth", front),
        _air_words("air behind it", layers, tape, front=True),
        f"batt {on_tape(layers.batt, tape)} of {_flow_words(layers)}",
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
    if any(array.hang.drop > 0 for array in arrays):
        lines.append(
            "a panel hung clear of a surface absorbs with its front over a gap as deep as the drop, as if the gap were "
            "closed at the sides; half of what may get in through the gap all round and be lost at its back is added, "
            "from nothing to all of it in the range (own appraisal: a laboratory would count the panel as an object, "
            "ISO 354); the surface behind it goes on counting, but not at the low end of its range"
        )
    return lines


def _on_targets(plan: Plan) -> list[str]:
    if not any(din_use(target) for target in targets_of(plan)):
        return []
    return [
        f"DIN 18041 asks for the room with {100 * DIN_18041_OCCUPIED.value:.0f} % of its people in it, and its "
        "tolerance by bands; both are stated from memory and must be checked against the standard"
    ]


def _on_what_is_left_out(room: RoomGeometry) -> list[str]:
    lines = [
        "furniture, curtains, shelves and reveals count for nothing unless the plan states them as furniture, "
        "linings or people"
    ]
    small = [placed.feature.name for placed in room.features if placed.feature.lining is None]
    if small:
        lines.append(f"no lining is stated for {', '.join(small)}: the surface there counts as if they were not there")
    return lines


def _below_schroeder(schroeder: float) -> list[str]:
    below = tuple(band < schroeder for band in OCTAVES)
    doubtful = tuple(schroeder <= band < 2 * schroeder for band in OCTAVES)
    frequency = f"{significant(schroeder)} Hz"
    lines = []
    if any(below):
        lines.append(
            f"{_bands(below)}: an index, not a prediction; below about {frequency} (Schroeder's frequency) single "
            "modes of the room decide, and no decay formula holds"
        )
    if any(doubtful):
        lines.append(
            f"{_bands(doubtful)}: uncertain, being less than an octave above Schroeder's frequency of {frequency}"
        )
    return lines


def _uneven(even: Evenness) -> list[str]:
    lines = []
    for index, axis in enumerate(AXES):
        heavy = tuple(found == index for found in even.heavy_axis[IN_OCTAVES])
        if any(heavy):
            longest = "Fitzroy's time" if even.box else f"{UNEVEN_FACTOR.value:.0f} times Sabine's"
            lines.append(
                f"{_bands(heavy)}: {axis} hold over 60 % of the absorption; between the other, bare walls the decay "
                "can be two to three times what the formulas say, unless furniture or shelves scatter the sound. "
                f"The range is drawn up to {longest}"
            )
    for index, axis in enumerate(AXES):
        lopsided = tuple(
            pair == index and heavy < 0
            for pair, heavy in zip(even.lopsided_pair[IN_OCTAVES], even.heavy_axis[IN_OCTAVES], strict=True)
        )
        if any(lopsided):
            longest = "Fitzroy's time" if even.box else f"{UNEVEN_FACTOR.value:.0f} times Sabine's"
            lines.append(
                f"{_bands(lopsided)}: of {axis}, one absorbs over three times what the other does; the formulas may "
                "read short, and the decay between bare walls can be two to three times as long. "
                f"The range is drawn up to {longest}"
            )
    return lines


def _very_dead(mean_alpha: tuple[float, ...]) -> list[str]:
    dead = tuple(alpha >= VERY_DEAD.value for alpha in mean_alpha)
    if not any(dead):
        return []
    return [
        f"{_bands(dead)}: very dead, with a mean absorption coefficient of {VERY_DEAD.value} or more; read the upper "
        "end of the range as 'below this' and nothing finer"
    ]


def _bands(chosen: tuple[bool, ...]) -> str:
    bands = [band for band, wanted in zip(OCTAVES, chosen, strict=True) if wanted]
    return ", ".join(f"{band}" for band in bands) + " Hz"


def _arrays(layout: Layout) -> tuple[Array, ...]:
    return tuple({panel.array.name: panel.array for panel in layout.panels}.values())
