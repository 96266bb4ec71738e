"""The low end of a room: its modes by the way that fits its shape, how they lie, and what panels can do about it."""

from collections.abc import Sequence
from itertools import pairwise

from planlang.acoustics.evenness import is_box
from planlang.acoustics.floors import doubled_area
from planlang.acoustics.model import LowEnd, Mode, Reflection
from planlang.acoustics.modes import (
    BONELLO_THIRDS,
    bonello,
    boundary_dip,
    box_modes,
    coincident,
    count_in_thirds,
    half_power_width,
    mode_count,
    ratios_suit_monitoring,
    widest_gap,
)
from planlang.acoustics.plan_modes import plan_frequencies, room_frequencies
from planlang.acoustics.shape_modes import eigenfrequencies, room_cloud
from planlang.geometry.model import RoomGeometry, Surface
from planlang.plan.figure import significant

SHOWN = 15
ORDER = 8
DIPS = (30.0, 300.0)  # Hz: dips outside are not listed
THIRDS_END = 224.0  # Hz: above the third at 200 Hz
MOST_MODES = 3000  # of a hall: its modes are listed only as far up as there are so many
PLAN_MODES = 30
EXACT = "exact, for hard walls: (c/2) sqrt((l/X)^2 + (m/Y)^2 + (n/Z)^2)"
BY_PLAN = "finite elements on the plan, times the height, for hard walls; within about 0.5 %"
BY_CORNERS = (
    f"one finite element of order {ORDER} over the whole room, for hard walls; its inner corners may raise "
    "them by 4 % and more"
)
BY_ROOM = f"one finite element of order {ORDER} over the room under its slopes, for hard walls; within about 0.5 %"


def low_end(
    room: RoomGeometry, speed: float, decay_time: float, schroeder: float, reflections: Sequence[Reflection]
) -> LowEnd:
    """Modes, their spacing, and words. `decay_time` is at 125 Hz, s; `schroeder` in Hz."""
    method, modes, complete = _modes(room, speed)
    frequencies = [mode.frequency for mode in modes]
    counts = count_in_thirds(frequencies, complete)
    words = [*_on_spacing(room, frequencies, counts), *_on_dips(reflections, speed)]
    words.append(_on_panels(schroeder, decay_time))
    return LowEnd(method, modes[:SHOWN], BONELLO_THIRDS[: len(counts)], counts, tuple(words))


def _modes(room: RoomGeometry, speed: float) -> tuple[str, tuple[Mode, ...], float]:
    """How the modes were found, the modes, and the frequency (Hz) up to which none is missing.

    Of a box with beams they are those of the box.
    """
    ceiling = [surface for surface in room.surfaces if surface.kind == "ceiling"]
    floors = [surface for surface in room.surfaces if surface.kind == "floor"]
    if is_box(room):
        highest = listed_up_to(_sides(room), speed)
        return EXACT, box_modes(_sides(room), speed, highest), highest
    floor = _from_above(room.surfaces[0])
    if all(surface.pitch_deg == 0 for surface in ceiling) and len(ceiling) == len(floors) == 1:
        height = ceiling[0].in_room(0.0, 0.0)[2] / 1000
        plan = plan_frequencies([(east, north) for east, north, _ in floor], PLAN_MODES, speed)
        highest = min(THIRDS_END, plan[-1])
        return BY_PLAN, tuple(Mode(f) for f in room_frequencies(plan, height, speed, highest)), highest
    tops = [
        [(east / 1000, north / 1000, top / 1000) for (east, north), top in zip(prism.corners, prism.tops, strict=True)]
        for prism in room.prisms
    ]
    cloud = room_cloud(tops, ORDER + 1, [prism.low / 1000 for prism in room.prisms])
    found = eigenfrequencies(cloud, SHOWN, ORDER, speed)
    method = BY_ROOM if room.convex else BY_CORNERS
    return method, tuple(Mode(f) for f in found), 0.0


def listed_up_to(sides: tuple[float, float, float], speed: float) -> float:
    """Up to which frequency the modes of a box are listed, Hz."""
    x, y, z = sides
    highest = THIRDS_END
    while mode_count(x * y * z, 2 * (x * y + y * z + z * x), 4 * (x + y + z), highest, speed) > MOST_MODES:
        highest /= 2
    return highest


def _sides(room: RoomGeometry) -> tuple[float, float, float]:
    floor, ceiling = room.surfaces[0], next(face for face in room.surfaces if face.kind == "ceiling")
    return float(floor.width) / 1000, float(floor.height) / 1000, ceiling.origin[2] / 1000


def _from_above(surface: Surface) -> list[tuple[float, float, float]]:
    """Corners in the room, m, anticlockwise as seen from above."""
    places = [surface.in_room(*corner) for corner in surface.outline]
    corners = [(east / 1000, north / 1000, height / 1000) for east, north, height in places]
    return corners if doubled_area([(east, north) for east, north, _ in corners]) > 0 else corners[::-1]


def _on_spacing(room: RoomGeometry, frequencies: Sequence[float], counts: Sequence[int]) -> list[str]:
    lines = []
    lower, upper = widest_gap(frequencies)
    if upper:
        step = f"{significant(lower, 3)} to {significant(upper, 3)} Hz"
        lines.append(
            f"the widest step between neighbouring modes is from {step}; "
            "notes between them are weak, notes on them boom"
        )
    failing = bonello(counts)
    if failing:
        bands = ", ".join(f"{band}" for band in failing)
        lines.append(
            f"fewer modes than in the third below at {bands} Hz (Bonello, J. Audio Eng. Soc. 29 (1981) 597): the "
            "room's sides favour single notes, which no panel changes"
        )
    elif counts:
        lines.append("modes thicken from third to third, as Bonello's criterion asks")
    together = coincident(frequencies)
    if together:
        shown = ", ".join(significant(f, 3) for f in together[:5])
        lines.append(f"two or more modes fall together at {shown} Hz: these notes stand out most")
    if is_box(room):
        width, length = sorted(_sides(room)[:2])
        suit = "lie" if ratios_suit_monitoring(width, length, _sides(room)[2]) else "do not lie"
        lines.append(f"the sides {suit} within the rule of EBU Tech 3276 for monitoring rooms (from memory)")
    return lines


def _on_dips(reflections: Sequence[Reflection], speed: float) -> list[str]:
    found = [(boundary_dip(each.extra, speed), each) for each in reflections if each.extra > 0]
    shown = sorted((dip, each.talker, each.listener, each.surface) for dip, each in found if DIPS[0] <= dip <= DIPS[1])
    if not shown:
        return []
    cases = "; ".join(
        f"{talker} to {listener} by {surface}: {significant(dip)} Hz" for dip, talker, listener, surface in shown
    )
    close = [b for a, b in pairwise(shown) if b[0] <= 1.2 * a[0] and a[1:3] == b[1:3]]
    deeper = ", and deeper where two lie close together" if close else ""
    return [
        f"near surfaces cancel the direct sound at c/(2 D), D the longer way{deeper}: {cases}. Moving the talker, "
        "loudspeaker or listener moves the dip; a panel helps only where its depth with the air behind it is about a "
        "tenth of the wavelength or more"
    ]


def _on_panels(schroeder: float, decay_time: float) -> str:
    return (
        f"below about {significant(schroeder)} Hz (Schroeder's frequency) single modes decide, each about "
        f"{significant(half_power_width(decay_time))} Hz wide at the decay of the 125 Hz octave; panels as "
        f"deep as a hand "
        "shorten them little, and never move them. What helps there is depth (300 mm and more, in corners), resonators "
        "made for the frequency, or other places for loudspeaker and listener"
    )
