"""Members behind a surface, and whether a hang point lands on one.

A point may be off a member's centre line by half the member's width less an edge distance of one and a half shanks of
the anchor (common practice, no source; a code or the anchor's maker may ask for more).
"""

from bisect import bisect_left
from collections.abc import Iterable, Sequence
from fractions import Fraction

from planlang.geometry.hanging.points import Place
from planlang.geometry.model import Surface
from planlang.plan.room import Members

EDGE_DISTANCE_IN_SHANKS = Fraction(3, 2)


def allowed_off_centre(width: Fraction, shank: Fraction) -> Fraction:
    """How far an anchor may be off the centre line of a member, mm; negative: the member is too narrow for it."""
    return width / 2 - EDGE_DISTANCE_IN_SHANKS * shank


def along_pitch(members: Members, place: Place) -> Fraction:
    """The coordinate of a point that counts for landing: across, if the members run up."""
    return place[0] if members.runs == "up" else place[1]


def centre_lines(members: Members, surface: Surface) -> tuple[Fraction, ...]:
    """The centre lines of all members behind a surface, mm from its datum."""
    if members.measured:
        return members.measured
    extent = surface.width if members.runs == "up" else surface.height
    if members.centres <= 0:
        return (members.first,)
    count = (extent - members.first) // members.centres + 1
    return tuple(members.first + index * members.centres for index in range(max(count, 1)))


def nearest_member(members: Members, lines: Sequence[Fraction], at: Fraction) -> tuple[int, Fraction]:
    """Index of the member nearest to a coordinate, and the distance from its centre line, mm (signed)."""
    if members.centres <= 0:
        after = bisect_left(lines, at)
        index = min((max(after - 1, 0), min(after, len(lines) - 1)), key=lambda near: abs(at - lines[near]))
        return index, at - lines[index]
    index = round((at - members.first) / members.centres)
    index = min(max(index, 0), len(lines) - 1)
    return index, at - lines[index]


def landing_shifts(members: Members, coordinates: Iterable[Fraction], allowed: Fraction) -> tuple[Fraction, ...]:
    """Shifts that would bring all coordinates within `allowed` of a centre line, least first.

    The coordinates, less the first centre line and modulo the centres, are places on a circle: a shift exists when they
    all lie on an arc of at most twice `allowed`; the best one brings the middle of the arc to a centre line.
    """
    centres = members.centres
    places = sorted({(at - members.first) % centres for at in coordinates})
    shifts: set[Fraction] = set()
    for index, start in enumerate(places):
        end = places[index - 1] + (centres if index else 0)
        if end - start <= 2 * allowed:
            middle = (start + end) / 2 % centres
            shifts |= {-middle, centres - middle}
    return tuple(sorted(shifts, key=lambda shift: (abs(shift), shift)))


def shifts_onto(
    lines: Sequence[Fraction], coordinates: Iterable[Fraction], allowed: Fraction
) -> tuple[tuple[Fraction, Fraction], ...]:
    """The stretches of shifts, least first, that bring every coordinate within `allowed` of one of the centre lines.

    For one coordinate these are the lines less the coordinate, `allowed` to each side; for all of them what these have
    in common. Lines rise and are further apart than twice `allowed`.
    """
    common: list[tuple[Fraction, Fraction]] | None = None
    for at in sorted(set(coordinates)):
        own = [(line - allowed - at, line + allowed - at) for line in lines]
        common = own if common is None else _in_both(common, own)
    return tuple(sorted(common or (), key=lambda stretch: (_from_zero(stretch), stretch)))


def least_shift(stretches: Iterable[tuple[Fraction, Fraction]], most: Fraction) -> Fraction | None:
    """The shift of at most `most` mm that lands all points best; 0 where they land as they are, None where none does.

    Within a stretch the middle is best; it is left only as far as `most` asks.
    """
    for low, high in stretches:
        if low <= 0 <= high:
            return Fraction(0)
        shift = min(max((low + high) / 2, -most), most)
        if low <= shift <= high:
            return shift
    return None


def _from_zero(stretch: tuple[Fraction, Fraction]) -> Fraction:
    return max(stretch[0], -stretch[1], Fraction(0))


def _in_both(
    first: Sequence[tuple[Fraction, Fraction]], second: Sequence[tuple[Fraction, Fraction]]
) -> list[tuple[Fraction, Fraction]]:
    """What two rising rows of stretches have in common."""
    shared: list[tuple[Fraction, Fraction]] = []
    i = j = 0
    while i < len(first) and j < len(second):
        low, high = max(first[i][0], second[j][0]), min(first[i][1], second[j][1])
        if low <= high:
            shared.append((low, high))
        if first[i][1] < second[j][1]:
            i += 1
        else:
            j += 1
    return shared
