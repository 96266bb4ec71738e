"""The estimate's assumptions and cautions in plain words."""

from planlang.acoustics.absorbers import lying_flat
from planlang.acoustics.bands import IN_OCTAVES
from planlang.acoustics.constants import (
    AIR_RANGE_C,
    DIN_18041_OCCUPIED,
    LEAST_ALPHA,
    MOST_FURNITURE,
    MOST_PROPORTION,
    SIZE_TOLERANCE,
    SLOPED_FACTOR,
    TABLE_SHARE,
    TABLE_STEP,
    VERY_DEAD,
)
from planlang.acoustics.evenness import AXES, Evenness
from planlang.acoustics.fibres import mineral_wool_range
from planlang.acoustics.formulas import FURNISHED
from planlang.acoustics.model import Decay
from planlang.acoustics.panel_words import on_panels
from planlang.acoustics.reflections import in_sight, pairs, position
from planlang.acoustics.targets import din_use, targets_of
from planlang.acoustics.uncertainty import DRAWS, SHARE
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.figure import significant
from planlang.plan.model import Array, Plan
from planlang.plan.stock import OCTAVES, Batt


def assumptions(plan: Plan, room: RoomGeometry, layout: Layout) -> tuple[str, ...]:
    """Everything that the estimate takes for granted, a sentence each."""
    lines = [*_on_the_room(plan, room), *_on_tables(), *_on_objects(plan), *on_panels(layout, plan.job.tape)]
    return (*lines, *_on_targets(plan), *_on_what_is_left_out(room))


def cautions(plan: Plan, room: RoomGeometry, even: Evenness, schroeder: float, after: Decay) -> tuple[str, ...]:
    """What to be wary of in the estimate with the panels, a sentence each."""
    found = [*_below_schroeder(schroeder), *_uneven(even), *_very_dead(after.mean_alpha)]
    found += _too_long_a_room(room, after)
    coldest, warmest = AIR_RANGE_C.value
    if not coldest <= plan.room.air.temperature_c <= warmest:
        found.append(
            f"the air is at {significant(plan.room.air.temperature_c)} C; the accuracy of ISO 9613-1 is stated for "
            f"{coldest:.0f} to {warmest:.0f} C"
        )
    return (*found, *_out_of_sight(plan, room), *_odd_batts(plan.arrays))


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
            f"people: {', '.join(people)}, before and after, +-{100 * TABLE_SHARE.value:.0f} %, in no one "
            "place: they absorb wherever sound goes, as the air does"
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


def _on_objects(plan: Plan) -> list[str]:
    """What is built of EN 12354-6, where the plan states furniture, and what is not."""
    if not plan.room.furniture:
        return []
    return [
        "furniture by EN 12354-6:2003, formulas (1) and (5): hard pieces absorb V^(2/3) of the box that each fills "
        "(from memory) and take from the volume of air, in which alone the air absorbs; built for pieces that fill "
        f"less than {100 * MOST_FURNITURE.value:.0f} % of the room. Not built: annex D (uneven rooms, "
        "for which the formulas by axes and the check by rays stand instead), the standard's own tables "
        "of objects, and rows of objects; "
        "people and hung panels count by their absorption areas and take nothing from the volume"
    ]


def _on_targets(plan: Plan) -> list[str]:
    if not any(din_use(target) for target in targets_of(plan)):
        return []
    return [
        f"DIN 18041 asks for the room with {100 * DIN_18041_OCCUPIED.value:.0f} % of its people in it, and its "
        "tolerance by bands; both are stated from memory and must be checked against the standard"
    ]


def _out_of_sight(plan: Plan, room: RoomGeometry) -> list[str]:
    hidden = [
        f"{talker.name} to {listener.name}"
        for talker, listener in pairs(plan.use.places)
        if not in_sight(room, position(talker), position(listener))
    ]
    if not hidden:
        return []
    return [
        f"a wall or another face stands between {', '.join(hidden)}: there is no direct sound to hold reflections "
        "against; what arrives comes round the corner"
    ]


def _on_what_is_left_out(room: RoomGeometry) -> list[str]:
    lines = [
        "furniture, curtains, shelves and reveals count for nothing unless the plan states them as furniture, "
        "linings or people"
    ]
    small = [placed.feature.name for placed in lying_flat(room) if placed.feature.lining is None]
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
            lines.append(
                f"{_bands(heavy)}: {axis} hold over 60 % of the absorption; between the other, bare walls the decay "
                "can be two to three times what the formulas say, unless furniture or shelves scatter the sound. "
                f"The range is drawn up to {_longest(even)}"
            )
    for index, axis in enumerate(AXES):
        lopsided = tuple(
            pair == index and heavy < 0
            for pair, heavy in zip(even.lopsided_pair[IN_OCTAVES], even.heavy_axis[IN_OCTAVES], strict=True)
        )
        if any(lopsided):
            lines.append(
                f"{_bands(lopsided)}: of {axis}, one absorbs over three times what the other does; the formulas may "
                "read short, and the decay between bare walls can be two to three times as long. "
                f"The range is drawn up to {_longest(even)}"
            )
    return lines


def _longest(even: Evenness) -> str:
    return "Fitzroy's time" if even.box else f"{SLOPED_FACTOR.value} times Fitzroy's time by axes"


def _too_long_a_room(room: RoomGeometry, after: Decay) -> list[str]:
    corners = [surface.in_room(*corner) for surface in room.surfaces for corner in surface.outline]
    sides = [max(places) - min(places) for places in zip(*corners, strict=True)] if corners else [1.0]
    if FURNISHED not in after.leads or max(sides) <= MOST_PROPORTION.value * max(min(sides), 1e-9):
        return []
    return [
        f"the room is over {MOST_PROPORTION.value:.0f} times as long as it is wide or high: the formula of EN "
        "12354-6 is not made for it (from memory)"
    ]


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
